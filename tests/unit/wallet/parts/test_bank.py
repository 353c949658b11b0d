"""Pieces, rooms and seams of banks and pockets on a panel of 100 x 80 mm, rim 4 mm off the edge."""

from __future__ import annotations

from dataclasses import replace
from math import pi

import pytest

from patternforge.errors import DraftError
from patternforge.geometry.point import Point
from patternforge.wallet.blank import Blank, PartBlanks
from patternforge.wallet.parts import part_blanks
from patternforge.wallet.pattern import EdgeRole
from patternforge.wallet.spec import (
    BankPart,
    BankShape,
    Edge,
    EdgeShape,
    FoldSpec,
    LayerPart,
    MouthShape,
    MouthSpec,
    PocketPart,
    Side,
    ThumbNotch,
)
from tests.unit.wallet.built import RIM, bank, body_of, pocket, shell, wallet

FOLD = FoldSpec(relief=5.0)
SPACING = 4.0


def blanks(part: BankPart | PocketPart, panels: int = 1, corner: float = 0.0, width: float = 100.0) -> PartBlanks:
    """The part drawn on its panel of a wallet with so many panels of that width."""
    parts = (shell(panels), part) if part.facing is Side.INSIDE else (part, shell(panels))
    design = wallet(*parts, widths=(width,) * panels, folds=(FOLD,) * (panels - 1), corner=corner)
    return part_blanks(design, body_of(design), part, SPACING)


def named(found: PartBlanks, name: str) -> Blank:
    return next(blank for blank in found.blanks if blank.name == name)


def vertices(blank: Blank) -> set[tuple[float, float]]:
    return {(round(x, 6), round(y, 6)) for x, y, _ in blank.shape.path.vertices}


def test_the_front_slot_is_full_and_square_to_the_floor() -> None:
    front = named(blanks(bank()), "bank 1")
    assert vertices(front) == {(0, 0), (100, 0), (100, 44), (0, 44)}
    assert front.shape.edges == (EdgeRole.SEWN, EdgeRole.SEWN, EdgeRole.MOUTH, EdgeRole.SEWN)


def test_the_front_slot_has_the_bodys_rounding_where_it_reaches_the_bodys_corner() -> None:
    front = named(blanks(bank(panel=0), panels=2, corner=6.0), "bank 1")
    # Rounded at the rim's corner, square at the fold, which it stops 5 mm short of.
    assert vertices(front) == {(6, 0), (95, 0), (95, 44), (0, 44), (0, 6)}


def test_the_front_slot_has_the_rounding_of_each_corner_of_the_body() -> None:
    part = bank()
    design = wallet(shell(1), part, corner=3.0)
    own = (((Edge.BOTTOM, Edge.LEFT), 12.0), ((Edge.TOP, Edge.RIGHT), 20.0))
    design = replace(design, body=replace(design.body, corners=own))
    upright = named(part_blanks(design, body_of(design), part, SPACING), "bank 1")
    assert vertices(upright) == {(12, 0), (97, 0), (100, 3), (100, 44), (0, 44), (0, 12)}
    # Turned to open at the left its floor lies along the right edge, between the corners of 3 and of 20 mm.
    sideways = replace(part, opening=Edge.LEFT)
    design = replace(design, parts=(shell(1), sideways))
    front = named(part_blanks(design, body_of(design), sideways, SPACING), "bank 1")
    assert {(97, 0), (100, 3), (100, 60), (80, 80)} < vertices(front)


def test_a_tee_is_wide_in_its_tab_and_stands_between_the_stitch_lines_below() -> None:
    # Slot 2: mouth 54, shoulder 36, floor 14, foot a margin below it at 10. Stitch lines at 4 and 96, the stem 4 mm
    # inside them: 8 to 92, its corners rounded by 2 mm.
    tee = named(blanks(bank()), "bank 2")
    assert vertices(tee) == {
        (10, 10), (90, 10), (92, 12), (92, 34), (94, 36),
        (100, 36), (100, 54), (0, 54), (0, 36),
        (6, 36), (8, 34), (8, 12),
    }  # fmt: skip


def test_a_tab_that_reaches_its_own_foot_is_a_plain_piece() -> None:
    # Shoulder at 54 - 10 - 34 = 10, the foot's height: nothing is left of the stem.
    plain = named(blanks(bank(overlap=34.0)), "bank 2")
    assert vertices(plain) == {(0, 10), (100, 10), (100, 54), (0, 54)}


def test_full_pieces_all_run_down_to_the_edge() -> None:
    found = blanks(bank(shape=BankShape.FULL))
    assert [vertices(named(found, f"bank {j}")) for j in (1, 2, 3)] == [
        {(0, 0), (100, 0), (100, mouth), (0, mouth)} for mouth in (44, 54, 64)
    ]


@pytest.mark.parametrize(
    ("facing", "order"),
    [(Side.INSIDE, ["bank 3", "bank 2", "bank 1"]), (Side.OUTSIDE, ["bank 1", "bank 2", "bank 3"])],
)
def test_slot_one_is_in_front(facing: Side, order: list[str]) -> None:
    assert [blank.name for blank in blanks(bank(facing=facing)).blanks] == order


def test_a_single_slot_bears_the_parts_own_name() -> None:
    assert [blank.name for blank in blanks(bank(slots=1)).blanks] == ["bank"]


def test_trim_goes_beyond_the_edges_it_is_asked_at() -> None:
    trim = ((Edge.LEFT, 1.0), (Edge.BOTTOM, 2.0))
    front = named(blanks(bank(trim=trim)), "bank 1")
    assert vertices(front) == {(-1, -2), (100, -2), (100, 44), (-1, 44)}
    # From the lower left corner on: bottom, right, mouth, left.
    assert front.shape.edges == (EdgeRole.TRIMMED, EdgeRole.SEWN, EdgeRole.MOUTH, EdgeRole.TRIMMED)


@pytest.mark.parametrize(
    ("opening", "expected"),
    # A pocket of 40 mm from its seam, 44 mm from the edge, on the whole panel.
    [
        (Edge.TOP, {(0, 0), (100, 0), (100, 44), (0, 44)}),
        (Edge.BOTTOM, {(0, 36), (100, 36), (100, 80), (0, 80)}),
        (Edge.LEFT, {(56, 0), (100, 0), (100, 80), (56, 80)}),
        (Edge.RIGHT, {(0, 0), (44, 0), (44, 80), (0, 80)}),
    ],
)
def test_a_pocket_opens_to_any_side(opening: Edge, expected: set[tuple[float, float]]) -> None:
    found = blanks(pocket(opening=opening))
    assert vertices(named(found, "pocket")) == expected


@pytest.mark.parametrize(
    ("opening", "box"),
    # The card, 80 x 50, rests on the stitch line 4 mm inside the edge opposite, in the middle along the mouth.
    [
        (Edge.TOP, (10, 4, 90, 54)),
        (Edge.BOTTOM, (10, 26, 90, 76)),
        (Edge.LEFT, (46, 0, 96, 80)),
        (Edge.RIGHT, (4, 0, 54, 80)),
    ],
)
def test_a_card_pushed_home_lies_against_the_floor(opening: Edge, box: tuple[float, ...]) -> None:
    (room,) = blanks(pocket(opening=opening)).pockets
    assert room.box == pytest.approx(box)
    assert room.show == pytest.approx(10.0)
    assert room.opening is opening


def test_cards_of_a_bank_stand_a_step_above_each_other_in_every_column() -> None:
    found = blanks(bank(columns=2), width=200.0)
    # Columns between stitch lines 4, 100 and 196: middles at 52 and 148.
    boxes = {(room.piece, room.box[0]): room.box for room in found.pockets}
    assert boxes["bank 1", 12.0] == pytest.approx((12, 4, 92, 54))
    assert boxes["bank 3", 108.0] == pytest.approx((108, 24, 188, 74))
    assert len(boxes) == 6


def rows(found: PartBlanks) -> dict[str, tuple[float, float, float, float]]:
    return {run.name: (run.path.start.x, run.path.start.y, run.path.end.x, run.path.end.y) for run in found.runs}


def test_stop_rows_stand_at_the_floors_inside_the_stems() -> None:
    # Two margins inside the stitch lines at 4 and 96, floors at 14 and 24; the rim sews the sides.
    found = blanks(bank())
    assert rows(found) == {
        "bank stop 2": pytest.approx((12, 14, 88, 14)),
        "bank stop 3": pytest.approx((12, 24, 88, 24)),
    }
    passes = {run.name: run.through for run in found.runs}
    assert passes["bank stop 2"] == ("bank 2", "bank 3", "shell")
    assert passes["bank stop 3"] == ("bank 3", "shell")


def test_beside_a_fold_a_bank_brings_its_own_side_seam() -> None:
    # Stitch line 5 + 4 mm short of the fold. The front mouth at 44 lies mid-stitch: holes at 10, 14 ... 42, 46 ...;
    # one at 6 would stand 2 mm from the rim's hole at 4, less than 0.6 stitches. Half a stitch past the mouth at 64.
    found = rows(blanks(bank(), panels=2))
    assert found["bank right"] == pytest.approx((91, 10, 91, 66))
    assert set(found) == {"bank stop 2", "bank stop 3", "bank right"}


@pytest.mark.parametrize(
    ("opening", "slant", "side", "start", "end"),
    # A pocket's mouth at 44 falls by 8 on the right: its right seam wraps it at 36, its left one at 44.
    [(Edge.TOP, 8.0, "right", 10.0, 38.0), (Edge.TOP, 8.0, "left", 10.0, 46.0)],
)
def test_a_side_seam_wraps_a_slanted_mouth_where_it_stands(
    opening: Edge, slant: float, side: str, start: float, end: float
) -> None:
    mouth = MouthSpec(MouthShape.SLANTED, slant)
    found = rows(blanks(pocket(opening=opening, mouth=mouth, panel=1), panels=3))[f"pocket {side}"]
    assert (found[1], found[3]) == pytest.approx((start, end))


@pytest.mark.parametrize(("drop", "end"), [(30.0, 46.0), (31.9, 46.0), (32.1, 42.0), (35.0, 42.0)])
def test_a_side_seam_wraps_its_mouth_only_where_the_layer_behind_is_there(drop: float, end: float) -> None:
    # Mouth at 44: the stitch past it ends at 46 if the lining behind, 80 - drop high, reaches half a margin, 2 mm,
    # beyond that; else the seam ends below the mouth.
    lining = LayerPart("lining", "inner", 0, 1, drop=drop, exact=("drop",))
    part = pocket()
    design = wallet(shell(2), lining, part, widths=(100.0, 100.0), folds=(FOLD,))
    found = rows(part_blanks(design, body_of(design), part, SPACING))["pocket right"]
    assert found[3] == pytest.approx(end)


@pytest.mark.parametrize(("overlap", "stem"), [(28.9, True), (29.1, False)])
def test_a_stem_needs_five_millimetres(overlap: float, stem: bool) -> None:
    # Mouth 54, shoulder 44 - overlap, foot 10: 5.1 or 4.9 mm are left.
    tee = named(blanks(bank(overlap=overlap)), "bank 2")
    assert (len(vertices(tee)) == 12) is stem


def test_a_floor_beside_a_fold_keeps_a_stitch_off_the_rim_only() -> None:
    # Upside down on the left panel: the rim sews the left side, a seam of its own the right, 9 mm short of the fold.
    found = rows(blanks(pocket(opening=Edge.BOTTOM), panels=2))
    assert found["pocket floor"] == pytest.approx((91, 76, 8, 76))
    right = rows(blanks(pocket(opening=Edge.BOTTOM, panel=1), panels=2))["pocket floor"]
    start = body_of(wallet(shell(2), pocket(panel=1), widths=(100.0, 100.0), folds=(FOLD,))).panels[1].x0
    assert (right[0] - start, right[2] - start) == pytest.approx((92, 9))


@pytest.mark.parametrize(
    ("panel", "edge", "refused"),
    [
        (0, Edge.LEFT, True),
        (0, Edge.RIGHT, False),
        (1, Edge.RIGHT, True),
        (1, Edge.LEFT, False),
        (0, Edge.BOTTOM, True),
        (1, Edge.TOP, True),
    ],
)
def test_pockets_stand_on_straight_sides_only(panel: int, edge: Edge, refused: bool) -> None:
    part = pocket(panel=panel)
    design = wallet(shell(2), part, widths=(100.0, 100.0), folds=(FOLD,))
    shaped = replace(design, body=replace(design.body, shapes=((edge, EdgeShape(slant=3.0)),)))
    if refused:
        with pytest.raises(DraftError, match="'pocket': a pocket of its own needs straight sides"):
            part_blanks(shaped, body_of(shaped), part, SPACING)
    else:
        assert part_blanks(shaped, body_of(shaped), part, SPACING).blanks


def test_between_two_folds_a_pocket_sews_both_sides_and_the_rim_its_floor() -> None:
    found = rows(blanks(pocket(panel=1), panels=3))
    # The pocket and its card, 1.8 in all, lie in the first fold: the shell's radius is 0.9, its fibre at 1.5.
    start = 100.0 + 1.5 * pi
    assert found["pocket left"] == pytest.approx((start + 9, 10, start + 9, 46))
    assert found["pocket right"] == pytest.approx((start + 91, 10, start + 91, 46))
    assert set(found) == {"pocket left", "pocket right"}


def test_a_floor_without_the_rim_has_a_row_of_its_own_a_stitch_off_the_rim() -> None:
    # Upside down: the floor is at the top, which the rim leaves free; the rim sews both sides.
    found = rows(blanks(pocket(opening=Edge.BOTTOM)))
    assert found == {"pocket floor": pytest.approx((92, 76, 8, 76))}


def test_columns_are_divided_by_a_seam_through_every_mouth() -> None:
    found = blanks(bank(columns=2), width=200.0)
    assert rows(found)["bank divide 1"] == pytest.approx((100, 10, 100, 66))
    assert {"bank stop 2.1", "bank stop 2.2", "bank stop 3.1", "bank stop 3.2"} <= set(rows(found))
    # The foot of a stem lies mid-stitch of that seam: the highest of 44 - 4 n below 14 - 4 is 8.
    assert min(y for _, y in vertices(named(found, "bank 2"))) == pytest.approx(8.0)


def test_mouth_and_thumb_are_cut_into_every_slot() -> None:
    notched = blanks(bank(thumb=ThumbNotch(20.0, 10.0)))
    for j, mouth in ((1, 44), (2, 54), (3, 64)):
        assert {(40, mouth), (60, mouth)} <= vertices(named(notched, f"bank {j}"))
    dipped = named(blanks(bank(mouth=MouthSpec(MouthShape.DIPPED, 4.0))), "bank 1")
    assert dipped.shape.path.distance_to(Point(50, 40)) == pytest.approx(0.0, abs=1e-9)
    assert {(94, 44), (6, 44)} <= vertices(dipped)


@pytest.mark.parametrize(
    ("part", "words"),
    [
        (bank(show=50.0), "its items would stand out whole"),
        (bank(mouth=MouthSpec(MouthShape.DIPPED, 18.0)), "its mouth is cut 18.00 mm deep"),
        (bank(shape=BankShape.FULL, mouth=MouthSpec(MouthShape.SLANTED, 40.0)), "its mouth is cut 40.00 mm deep"),
        (pocket(thumb=ThumbNotch(80.0, 40.0)), "its mouth is cut 40.00 mm deep"),
        (pocket(depth=1.0), "too narrow or too shallow"),
        (bank(trim=((Edge.TOP, 1.0),)), "its mouth cannot be trimmed after gluing"),
        (pocket(trim=((Edge.RIGHT, 1.0),), opening=Edge.RIGHT), "its mouth cannot be trimmed after gluing"),
    ],
)
def test_what_cannot_be_drawn_is_refused_with_name_and_line(part: BankPart | PocketPart, words: str) -> None:
    line = f"small\\.yaml:{part.line}: '{part.name}': .*{words}"
    with pytest.raises(DraftError, match=line):
        blanks(replace(part, panel=1), panels=2)


def test_a_part_with_nothing_behind_it_is_refused() -> None:
    part = pocket()
    design = wallet(part, shell(1))
    with pytest.raises(DraftError, match=r"small\.yaml:7: 'pocket': no layer stands behind it to sew it to"):
        part_blanks(design, body_of(design), part, SPACING)


def test_a_pocket_on_another_layer_is_sewn_to_that_layer() -> None:
    lining = LayerPart("lining", "inner", 0, 0)
    part = pocket(opening=Edge.BOTTOM)
    design = wallet(shell(1), lining, part)
    (floor,) = part_blanks(design, body_of(design), part, SPACING).runs
    assert floor.through == ("pocket", "lining")
    assert floor.margin == RIM.margin
