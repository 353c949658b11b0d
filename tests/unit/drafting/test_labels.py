"""What labels say and where they stand; that they keep clear of cuts for any design is a law."""

from __future__ import annotations

from dataclasses import replace

import pytest

from patternforge.drafting.labels import label_inks
from patternforge.drafting.pieces import figures
from patternforge.drafting.purpose import Purpose
from patternforge.drafting.rooms import disc_barrier, floor, path_barriers, room
from patternforge.drafting.wording import block, facts, wording
from patternforge.drawing.lettering import letter_strokes, text_width
from patternforge.drawing.model import Ink, Role, Stroke, Text
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.point import Point
from patternforge.leather.material import Leather, MadeOf, Stretch, SurfaceFace, Thickness
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern, Piece
from patternforge.wallet.spec import BodySpec, Edge, FoldSpec, LayerPart, PanelSpec
from tests.designs_built import sleeve, two_fold
from tests.shapes_built import FILM, windowed


def dressed() -> Pattern:
    """A card sleeve whose back is of a leather with everything known about it."""
    known = Leather(
        "outer", Thickness(1.2, 1.6), name="shoulder", face=SurfaceFace.FLESH, stretch=Stretch.ACROSS, tolerance=0.1
    )
    return drafted(sleeve(leathers=(known, Leather("inner", Thickness(0.8, 0.8)))))


def words(inks: tuple[Ink, ...]) -> list[str]:
    return [ink.content for ink in inks if isinstance(ink, Text)]


def only(pattern: Pattern, width: float, height: float) -> Pattern:
    """A pattern of one bare piece of this size."""
    bare = replace(
        pattern.pieces[0], outline=rounded_rectangle(0, 0, width, height, 1.5), holes=(), fold_lines=(), name="tab"
    )
    return replace(pattern, pieces=(bare,))


def test_a_label_says_all_a_maker_must_know_of_a_piece() -> None:
    pattern = dressed()
    assert facts(pattern, pattern.pieces[0]) == (
        "cut 1 of outer",
        "leather: shoulder",
        "drafted for 1.40 mm",
        "flesh side up",
        "faces outside",
        "seen when made up",
        "tight way up and down",
        "stretch across",
        "revision A",
    )


def test_what_is_not_known_is_not_said() -> None:
    pattern = drafted(sleeve(revision=""))
    assert facts(pattern, replace(pattern.pieces[1], visible=False, quantity=2)) == (
        "cut 2 of inner",
        "leather: calf",
        "drafted for 0.80 mm",
        "grain side up",
        "faces inside",
        "hidden when made up",
    )


@pytest.mark.parametrize("made_of", [MadeOf.FILM, MadeOf.CLOTH, MadeOf.ELASTIC, MadeOf.STIFFENER])
def test_only_leather_has_a_grain_or_flesh_side(made_of: MadeOf) -> None:
    design = windowed()
    sheet = replace(FILM, made_of=made_of, name="clear")
    pattern = drafted(replace(design, leathers=(*design.leathers[:2], sheet)))
    assert facts(pattern, pattern.piece("window film")) == (
        "cut 1 of film",
        f"{made_of.value}: clear",
        "drafted for 0.20 mm",
        "lies behind cards 1",
        "faces inside",
        "seen when made up",
        "revision A",
    )
    assert any("grain side up" in fact for fact in facts(pattern, pattern.piece("cards 1")))


def test_the_tight_way_lies_across_the_stretch_in_words_and_arrow() -> None:
    for stretch, said, arrow in (
        (Stretch.ACROSS, {"tight way up and down", "stretch across"}, Point(0, 1)),
        (Stretch.ALONG, {"tight way across", "stretch along"}, Point(1, 0)),
    ):
        design = sleeve()
        stretched = tuple(replace(leather, stretch=stretch) for leather in design.leathers)
        pattern = drafted(replace(design, leathers=stretched))
        inks = label_inks(pattern, pattern.pieces[0])
        assert said <= set(words(inks))
        _up, tight = shafts(inks)
        assert abs(tight.path.tangent_at(0).dot(arrow)) == pytest.approx(1.0)


def shafts(inks: tuple[Ink, ...]) -> list[Stroke]:
    return [ink for ink in inks if isinstance(ink, Stroke) and len(ink.path.segments) == 1]


def test_the_up_arrow_points_up_with_its_head_at_the_upper_end() -> None:
    pattern = drafted(sleeve())
    inks = label_inks(pattern, pattern.pieces[0])
    (shaft,) = shafts(inks)
    (head,) = [ink for ink in inks if isinstance(ink, Stroke) and len(ink.path.segments) == 2]
    assert shaft.path.tangent_at(0) == Point(0.0, 1.0)
    tip = head.path.segments[0].end
    assert tip == shaft.path.end
    assert max(head.path.start.y, head.path.end.y) < tip.y


def test_trims_are_named_by_the_edge_of_the_piece_as_drawn() -> None:
    """A shell shows its outside: the left edge of the wallet laid open is the right edge of the drawn piece."""
    design = sleeve()
    back = design.parts[0]
    assert isinstance(back, LayerPart)
    trimmed = replace(back, trim=((Edge.LEFT, 1.5), (Edge.TOP, 1.0)))
    pattern = drafted(replace(design, parts=(trimmed, *design.parts[1:])))
    assert facts(pattern, pattern.pieces[0])[-2:] == (
        "trim 1.50 mm off the right once glued",
        "trim 1.00 mm off the top once glued",
    )


def test_words_that_run_on_break_between_facts_and_never_grow_wider_than_asked() -> None:
    lines = block(wording("left cards", ["cut 1 of inner", "revision A", "seen when made up"]), 2.0, 45.0)
    assert lines is not None
    assert [line for line, _, _ in lines.lines] == ["left cards", "cut 1 of inner; revision A", "seen when made up"]
    assert lines.width <= 45.0
    assert lines.width == pytest.approx(max(text_width(text, size) for text, size, _ in lines.lines))


def test_a_fact_wider_than_the_line_breaks_between_words_and_a_wider_word_is_given_up() -> None:
    broken = block(wording("a", ["grain side up, faces outside"]), 2.0, 28.0)
    assert broken is not None
    assert [line for line, _, _ in broken.lines] == ["a", "grain side up,", "faces outside"]
    assert block(wording("a", ["unbreakable-as-it-is-long"]), 2.0, 28.0) is None


def test_labels_shrink_to_small_pieces_but_never_below_two_mm() -> None:
    heights = []
    for height in (60.0, 32.0, 22.0):
        pattern = only(drafted(sleeve()), 90.0, height)
        texts = [ink for ink in label_inks(pattern, pattern.pieces[0]) if isinstance(ink, Text)]
        heights.append(min(text.height for text in texts if text.content != "up"))
    assert heights == sorted(heights, reverse=True)
    assert heights[0] > heights[-1] >= 2.0


def test_on_a_narrow_strap_the_label_stands_upright_and_its_arrow_still_points_up() -> None:
    pattern = only(drafted(sleeve()), 24.0, 150.0)
    inks = label_inks(pattern, pattern.pieces[0])
    assert {ink.angle for ink in inks if isinstance(ink, Text) and ink.content != "up"} == {90.0}
    (shaft,) = shafts(inks)
    assert shaft.path.tangent_at(0) == Point(0.0, 1.0)
    assert_inside(inks, pattern.pieces[0])


def test_on_a_small_upright_pocket_the_arrows_stand_under_the_words() -> None:
    pattern = only(drafted(sleeve()), 40.0, 70.0)
    inks = label_inks(pattern, pattern.pieces[0])
    up, *said = sorted((ink for ink in inks if isinstance(ink, Text)), key=lambda text: text.at.y)
    assert up.content == "up"
    assert {text.angle for text in said} == {0.0}
    assert shafts(inks)[0].path.bounds.y1 < min(text.at.y for text in said)


def test_where_no_label_fits_a_letter_stands_in_the_piece_and_the_words_below_it() -> None:
    pattern = only(drafted(sleeve()), 16.0, 9.0)
    key, heading, *rest = [i for i in label_inks(pattern, pattern.pieces[0]) if isinstance(i, Text)]
    assert (key.content, heading.content) == ("A", "A: tab")
    assert_inside((key,), pattern.pieces[0])
    assert all(stroke.path.bounds.y1 < 0 for text in (heading, *rest) for stroke in letter_strokes(text))
    said = " ".join(text.content for text in rest)
    assert "drafted for 1.20 mm" in said
    assert "revision A" in said


def test_where_not_even_a_letter_fits_the_words_below_still_name_the_piece() -> None:
    pattern = only(drafted(sleeve()), 12.0, 3.5)
    inks = label_inks(pattern, pattern.pieces[0])
    assert words(inks)[0] == "tab"
    assert any("up as drawn" in line for line in words(inks))
    assert all(stroke.path.bounds.y1 < 0 for ink in inks for stroke in letter_strokes(as_text(ink)))


def as_text(ink: Ink) -> Text:
    assert isinstance(ink, Text)
    return ink


def assert_inside(inks: tuple[Ink, ...], piece: Piece) -> None:
    drawn = [s for ink in inks for s in (letter_strokes(ink) if isinstance(ink, Text) else (ink,))]
    for stroke in drawn:
        assert isinstance(stroke, Stroke)
        assert all(piece.outline.contains(Point(x, y)) for x, y, _ in stroke.path.vertices)


def test_letters_of_pieces_go_on_after_z() -> None:
    pattern = only(drafted(sleeve()), 16.0, 9.0)
    many = replace(pattern, pieces=tuple(replace(pattern.pieces[0], level=i) for i in range(28)))
    keys = [words(label_inks(many, piece))[0] for piece in many.pieces]
    assert keys[0] == "A"
    assert keys[25:] == ["Z", "AA", "AB"]


def test_a_wallet_laid_on_its_side_keeps_its_labels_inside_and_its_arrows_up() -> None:
    design = two_fold()
    body = BodySpec((PanelSpec("left"), PanelSpec("right")), (FoldSpec(relief=4.0),), (1,), corner=6.0, turned=True)
    pattern = drafted(replace(design, body=body))
    for piece in pattern.pieces:
        inks = label_inks(pattern, piece)
        assert shafts(inks)[0].path.tangent_at(0) == Point(0.0, 1.0)
        assert_inside(inks, piece)


def test_room_is_found_beside_a_disc_and_never_over_it() -> None:
    walls = path_barriers(rounded_rectangle(0, 0, 60, 20, 1), 1.0, bounds=True)
    middle = disc_barrier(Point(30, 10), 4.0)
    box = room(floor([*walls, middle]), 20.0, 10.0)
    assert box is not None
    assert box.x1 <= 26.0 or box.x0 >= 34.0
    assert room(floor([*walls, middle]), 26.0, 10.0) is None
    assert room(floor(walls), 26.0, 10.0) is not None


def test_there_is_no_room_in_an_opening_nor_where_nothing_is_bounded() -> None:
    ring = [
        *path_barriers(rounded_rectangle(0, 0, 60, 40, 1), 1.0, bounds=True),
        *path_barriers(rounded_rectangle(10, 10, 50, 30, 1).cw(), 1.0, bounds=True),
    ]
    assert room(floor(ring), 30.0, 9.0) is None
    assert room(floor(ring), 30.0, 7.0) is not None
    assert room(floor([disc_barrier(Point(0, 0), 3.0)]), 1.0, 1.0) is None


def test_every_label_of_a_drawn_wallet_has_the_role_of_a_label() -> None:
    pattern = drafted(two_fold())
    for figure, piece in zip(figures(pattern, Purpose.PAPER), pattern.pieces, strict=True):
        texts = [ink for ink in figure.inks if isinstance(ink, Text)]
        assert {text.role for text in texts} == {Role.LABEL}
        assert piece.name in [text.content for text in texts]
