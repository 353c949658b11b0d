"""Letters as ink: in their box, right way round, alike in height; a stamping guide; nothing of it on a die."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from patternforge.drafting.hardware import word_bounds
from patternforge.drafting.labels import label_inks
from patternforge.drafting.letters import letter_facts, letter_height, letter_inks, letter_notes, small_letters
from patternforge.drafting.pieces import figures
from patternforge.drafting.purpose import CutFace, DraftingOptions, Engraving, LaserOptions, Purpose
from patternforge.drawing.extent import extent
from patternforge.drawing.lettering import text_width
from patternforge.drawing.model import Figure, Ink, Role, Stroke, Text
from patternforge.errors import DraftError
from patternforge.fit.findings import Verdict
from patternforge.geometry.point import Point
from patternforge.wallet.assemble import drafted
from patternforge.wallet.marked import Inscription
from patternforge.wallet.pattern import Pattern, Piece
from patternforge.wallet.spec import Edge, Initials, Side, Spot, Stamp
from tests.unit.wallet.built import shell, wallet

STAMP = Stamp(6.0, 8.0, 0.5)
BOX = Inscription("name", "AB", Point(50.0, 40.0), 90.0, 30.0, 9.0, 3.0)


def bearing(*inscriptions: Inscription) -> Piece:
    return replace(drafted(wallet(shell(1))).pieces[0], inscriptions=inscriptions)


def inks(**changes: Any) -> tuple[Ink, ...]:
    return letter_inks(bearing(replace(BOX, **changes)))


def lines(found: tuple[Ink, ...]) -> list[tuple[float, float, float, float]]:
    """Straight strokes as (x0, y0, x1, y1) from the middle of the box, to the thousandth."""
    ends = [(ink.path.start, ink.path.end) for ink in found if isinstance(ink, Stroke)]
    shifted = [(a - Point(50.0, 40.0), b - Point(50.0, 40.0)) for a, b in ends]
    return [(_rounded(a.x), _rounded(a.y), _rounded(b.x), _rounded(b.y)) for a, b in shifted]


def _rounded(size: float) -> float:
    return round(size, 3) + 0.0


@pytest.mark.parametrize(("text", "height"), [("AB", 9.0), ("I", 9.0), ("-", 9.0), ("ABCDEFGHIJ", 30 / 8.5)])
def test_capitals_are_as_high_as_the_box_unless_the_text_is_wider(text: str, height: float) -> None:
    found = letter_height(replace(BOX, text=text))
    assert found is not None
    if text == "ABCDEFGHIJ":
        # Ink runs from the first letter's left to the last one's right, a little less than the room they take.
        assert found * text_width(text, 1.0) > 30.0 > found * (text_width(text, 1.0) - 0.6)
        assert extent(inks(text=text)).width == pytest.approx(30.0)
    else:
        assert found == pytest.approx(height)


def test_accents_and_tails_stay_in_the_box_too() -> None:
    box = extent(inks(text="ÅQj"))
    assert box.y0 >= 35.5 - 1e-9
    assert box.y1 == pytest.approx(44.5)


def test_ink_stands_in_the_middle_of_the_box_and_is_marked_only() -> None:
    box = extent(inks(text="AB"))
    assert box.centre.x == pytest.approx(50.0)
    assert (box.y0, box.y1) == pytest.approx((35.5, 44.5))
    assert {ink.role for ink in inks()} == {Role.MARK}


def test_letters_follow_where_up_is() -> None:
    # An L stands on its foot: upright its stem is at the left and its foot below.
    upright = lines(inks(text="L"))
    assert min(x0 for x0, *_ in upright) < 0
    sideways = lines(inks(text="L", up=0.0))
    turned = [(y, -x, v, -u) for x, y, u, v in upright]
    assert sideways == [pytest.approx(line) for line in turned]


@pytest.mark.parametrize("text", ["", "   "])
def test_without_letters_nothing_is_marked(text: str) -> None:
    assert inks(text=text) == ()
    assert letter_height(replace(BOX, text=text)) is None


def test_a_box_without_letters_is_drawn_on_paper_for_the_maker() -> None:
    (frame,) = letter_notes(bearing(replace(BOX, text="")))
    assert isinstance(frame, Stroke)
    assert (frame.role, frame.path) == (Role.LABEL, BOX.box)
    assert letter_notes(bearing(BOX)) == ()


def test_a_stamping_guide_is_a_base_line_with_a_frame_for_each_stamp() -> None:
    # Two stamps of 6 x 8 mm half a millimetre apart: 12.5 mm, from -6.25 to 6.25.
    assert lines(inks(stamp=STAMP)) == [
        (-6.25, -4.0, 6.25, -4.0),
        *((x, -4.0, x, 4.0) for x in (-6.25, -0.25, 0.25, 6.25)),
        (-6.25, 4.0, -0.25, 4.0),
        (0.25, 4.0, 6.25, 4.0),
    ]


def test_stamps_that_touch_share_the_line_between_them() -> None:
    drawn = lines(inks(stamp=replace(STAMP, spacing=0.0), text="ABC"))
    uprights = [line for line in drawn if line[0] == line[2]]
    assert [line[0] for line in uprights] == [-9.0, -3.0, 3.0, 9.0]
    assert len(set(drawn)) == len(drawn)


def test_the_notes_say_which_stamp_goes_where_in_letters_of_one_size() -> None:
    notes = letter_notes(bearing(replace(BOX, stamp=STAMP, text="I W")))
    texts = [note for note in notes if isinstance(note, Text)]
    # The blank takes a place and no letter; the W is widest: 0.6 of 6 mm.
    assert [note.content for note in texts] == ["I", "W"]
    assert [note.at.x for note in texts] == pytest.approx([50 - 6.5, 50 + 6.5])
    assert len({note.height for note in texts}) == 1
    assert all(note.role is Role.LABEL for note in notes)


def test_no_letter_too_small_to_be_read_is_written_in_a_stamp() -> None:
    assert letter_notes(bearing(replace(BOX, stamp=Stamp(2.0, 3.0, 0.5)))) == ()


@pytest.mark.parametrize("stamp", [Stamp(16.0, 8.0), Stamp(6.0, 9.5), Stamp(6.0, 8.0, 18.5)])
def test_stamps_beyond_their_box_are_refused(stamp: Stamp) -> None:
    with pytest.raises(DraftError, match=r"initials 'name': 2 stamps take .* their box is 30\.00 x 9\.00 mm"):
        inks(stamp=stamp)


@pytest.mark.parametrize(
    ("changes", "fact"),
    [
        ({}, "name: AB"),
        ({"text": ""}, "name: no letters yet"),
        ({"stamp": STAMP, "text": "A W"}, "name: stamp A   W, from the left"),
    ],
)
def test_the_label_proves_the_spelling(changes: dict[str, Any], fact: str) -> None:
    assert letter_facts(bearing(replace(BOX, **changes))) == (fact,)


@pytest.mark.parametrize(("height", "verdict"), [(3.0, Verdict.GOOD), (2.9, Verdict.LOOK), (0.5, Verdict.LOOK)])
def test_small_letters_want_a_look(height: float, verdict: Verdict) -> None:
    pattern = replace(drafted(wallet(shell(1))), pieces=(bearing(replace(BOX, height=height)),))
    (found,) = small_letters(pattern)
    assert found.measured == pytest.approx(height)
    assert (found.limit.good.low, found.verdict) == (3.0, verdict)
    assert bool(found.remedy) is (verdict is not Verdict.GOOD)
    stamped = replace(pattern, pieces=(bearing(replace(BOX, stamp=STAMP)),))
    assert list(small_letters(stamped)) == []


# On figures


def pattern(**changes: Any) -> Pattern:
    initials = Initials("name", "LF", "shell", Spot(0, (Edge.LEFT, 30.0), (Edge.BOTTOM, 25.0)), 24.0, 10.0)
    return drafted(wallet(shell(1), initials=(replace(initials, **changes),)))


def marks(figure: Figure) -> list[Ink]:
    return [ink for ink in figure.inks if ink.role is Role.MARK]


def engraved(engraving: Engraving, **options: Any) -> list[Ink]:
    chosen = DraftingOptions(laser=LaserOptions(engraving=engraving, **options))
    (figure,) = figures(pattern(), Purpose.LASER, chosen)
    return marks(figure)


def test_a_laser_engraves_letters_only_when_asked_and_before_it_cuts() -> None:
    assert engraved(Engraving.NONE) == []
    assert engraved(Engraving.INITIALS) == list(letter_inks(pattern().pieces[0]))
    (figure,) = figures(pattern(), Purpose.LASER, DraftingOptions(laser=LaserOptions(engraving=Engraving.INITIALS)))
    assert [ink.role for ink in figure.inks][: len(marks(figure))] == [Role.MARK] * len(marks(figure))


def test_letters_cannot_be_engraved_from_the_back() -> None:
    with pytest.raises(DraftError, match="showing face, which lies down"):
        engraved(Engraving.INITIALS, cut_face=CutFace.BACK)


def test_a_die_never_bears_letters() -> None:
    (figure,) = figures(pattern(), Purpose.DIE)
    assert marks(figure) == []


def test_paper_bears_letters_notes_and_labels_clear_of_the_box() -> None:
    (figure,) = figures(pattern(text=""), Purpose.PAPER)
    assert marks(figure) == []
    (lettered,) = figures(pattern(), Purpose.PAPER)
    assert len(marks(lettered)) == len(letter_inks(pattern().pieces[0]))


@pytest.mark.parametrize("showing", Side)
def test_words_keep_off_the_box(showing: Side) -> None:
    """A box that takes almost all of a piece leaves its label no room but beside and below it."""
    initials = Initials("name", "", "shell", Spot(0), 84.0, 60.0)
    wide = drafted(wallet(replace(shell(1), showing=showing), initials=(initials,)))
    (piece,) = wide.pieces
    boxes = [word_bounds(ink) for ink in label_inks(wide, piece) if isinstance(ink, Text)]
    box = piece.inscriptions[0].box.bounds
    assert len(boxes) > 2
    assert all(b.x1 < box.x0 or b.x0 > box.x1 or b.y1 < box.y0 or b.y0 > box.y1 for b in boxes)
