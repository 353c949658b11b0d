"""The flat strip of a gusset: how long, how wide, where its holes and folds lie."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from math import pi
from typing import Any

import pytest

from patternforge.errors import DraftError
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import EdgeRole, Piece
from patternforge.wallet.spec import Edge, HoleShape, HoleSpec, LayerPart, LoosePart, Mode, Side, Spot, Stitching
from tests.unit.wallet.built import wallet
from tests.unit.wallet.pouches import BACK, SIDE, accordion, pouch, seam, strip_placement, with_lower_corners

# Down from 6 mm below the top to the corner, 80 - 6 - 20 = 54, round it 16 x pi / 2, along 100 - 2 x 20 = 60.
SEWN = 2 * 54 + 60 + 16 * pi


def strip(**changes: Any) -> Piece:
    return drafted(pouch(replace(SIDE, **changes))).piece("side")


def test_a_strip_is_as_long_as_its_seam_and_flush_with_its_walls() -> None:
    piece = strip()
    assert piece.width == pytest.approx(SEWN + 2 * 6)
    assert piece.height == pytest.approx(2 * 5.8 + 17.6 + 0.8 * pi)
    assert list(piece.edges) == [EdgeRole.SEWN, EdgeRole.RAW, EdgeRole.SEWN, EdgeRole.RAW]


def test_a_strip_ends_short_of_its_walls_by_what_is_asked() -> None:
    piece = strip(short=2.5)
    assert piece.width == pytest.approx(SEWN + 2 * 3.5)
    assert piece.holes[0].at.x == pytest.approx(3.5)


def test_its_rows_stand_a_margin_inside_its_edges_and_mirror_each_other() -> None:
    piece = strip()
    rows = {name: [hole for hole in piece.holes if hole.seam == name] for name in ("back seam", "front seam")}
    assert {round(hole.at.y, 6) for hole in rows["back seam"]} == {4.0}
    assert {round(piece.height - hole.at.y, 6) for hole in rows["front seam"]} == {4.0}
    assert [h.at.x for h in rows["back seam"]] == pytest.approx([h.at.x for h in rows["front seam"]])
    assert [
        h.at.x + g.at.x for h, g in zip(rows["back seam"], rows["back seam"][::-1], strict=True)
    ] == pytest.approx([piece.width] * len(rows["back seam"]))


def test_its_bends_are_drawn_at_both_tangents_from_end_to_end() -> None:
    piece = strip()
    assert [line.start.y for line in piece.fold_lines] == pytest.approx(
        [5.8, 5.8 + 0.4 * pi, 23.4 + 0.4 * pi, 23.4 + 0.8 * pi]
    )
    assert all(line.length == pytest.approx(piece.width) for line in piece.fold_lines)


def test_every_hole_of_both_seams_comes_back_to_its_place() -> None:
    pattern = drafted(pouch())
    piece = pattern.piece("side")
    places = {(s.name, h.index): h.at for s in pattern.seams for h in s.holes}
    assert len(piece.holes) == len(places)
    for hole in piece.holes:
        assert piece.placement.to_assembly(hole.at).distance_to(places[hole.seam, hole.index]) < 1e-9


def test_a_strip_that_faces_inside_is_drawn_as_its_mirror_image() -> None:
    outside, inside = strip(), strip(showing=Side.INSIDE)
    assert strip_placement(inside).forward == -1.0
    for a, b in zip(outside.holes, inside.holes, strict=True):
        assert (b.at.x, b.at.y) == pytest.approx((outside.width - a.at.x, a.at.y))


def test_slits_slant_alike_seen_from_the_outside() -> None:
    slits = Stitching(pitch=4.0, hole=HoleSpec(HoleShape.SLIT, slant=30.0))
    seams = tuple(replace(each, stitching=slits) for each in pouch().seams)
    piece = drafted(pouch(seams=seams)).piece("side")
    told = {hole.seam: hole.direction for hole in piece.holes}
    # Told from the outside: the outer flange turns its face to the wallet's inside, the inner one to its outside.
    assert told == {"back seam": pytest.approx(-30.0), "front seam": pytest.approx(30.0)}


def test_a_strip_keeps_clear_of_the_seam_that_sews_its_walls_together() -> None:
    # The walls are sewn along the bottom 4 mm up, their holes of 0.5 mm and 1.5 mm of leather beside them end the
    # strip 6 mm up; the side seams go from 8 mm up to 8 mm below the top.
    piece = drafted(accordion()).piece("left 1")
    assert piece.width == pytest.approx(80 - 2 * 8 + 2 + 8)
    xs = [hole.at.x for hole in piece.holes if hole.seam == "left seam 1"]
    assert [min(xs), piece.width - max(xs)] == pytest.approx([8.0, 2.0])


def test_a_strip_ends_where_the_lower_of_its_walls_does() -> None:
    low = LayerPart("front", "outer", 0, 0, drop=5.0, exact=("drop",))
    seams = (seam("back seam", "back", "side", end=9.0), seam("front seam", "side", "front", end=9.0))
    piece = drafted(with_lower_corners(wallet(BACK, SIDE, low, seams=seams), 20.0)).piece("side")
    assert piece.holes[0].at.x == pytest.approx(4.0)


def test_seams_with_unlike_numbers_of_holes_are_refused_by_name() -> None:
    seams = (seam("back seam", "back", "side"), seam("front seam", "side", "front", end=14.0))
    with pytest.raises(
        DraftError, match=r"small.yaml:6: 'side': seam 'back seam' has \d+ holes and seam 'front seam' has \d+"
    ):
        drafted(pouch(seams=seams))


def test_a_seam_all_round_is_refused() -> None:
    round_about = (Edge.LEFT, Edge.BOTTOM, Edge.RIGHT, Edge.TOP)
    seams = (
        seam("back seam", "back", "side", along=round_about),
        seam("front seam", "side", "front", along=round_about),
    )
    with pytest.raises(DraftError, match="seam 'back seam' is not one unbroken line with two ends"):
        drafted(pouch(seams=seams))


def test_under_an_iron_the_strip_has_whole_pitches() -> None:
    iron = Stitching(pitch=4.0, mode=Mode.IRON)
    seams = tuple(replace(each, stitching=iron, along=(Edge.LEFT,)) for each in pouch().seams)
    piece = drafted(pouch(seams=seams, corner=0.0)).piece("side")
    xs = [hole.at.x for hole in piece.holes if hole.seam == "back seam"]
    assert [b - a for a, b in pairwise(xs)] == pytest.approx([4.0] * (len(xs) - 1))


def test_the_ends_of_a_strip_that_faces_inside_change_sides() -> None:
    outside, inside = (drafted(accordion(showing=side)).piece("left 1") for side in (Side.OUTSIDE, Side.INSIDE))
    assert min(hole.at.x for hole in outside.holes) == pytest.approx(8.0)
    assert min(hole.at.x for hole in inside.holes) == pytest.approx(2.0)
    assert outside.width == pytest.approx(inside.width)


def test_what_lies_loose_on_a_gusseted_front_lies_over_all_pieces() -> None:
    keys = LoosePart("keys", 0, "coins", Spot(0), line=8)
    design = pouch()
    pattern = drafted(replace(design, parts=(*design.parts, keys)))
    (loose,) = pattern.loose
    assert loose.order > max(piece.level for piece in pattern.pieces)
