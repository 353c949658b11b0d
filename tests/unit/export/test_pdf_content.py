"""The operators of one page."""

from __future__ import annotations

import re
from math import hypot

import pytest

from patternforge.drawing.model import Align, Dot, Ink, Page, Role, Stroke, Text
from patternforge.errors import DraftError
from patternforge.export.pdf_content import content, layer_name
from patternforge.geometry.path import Path, polygon, polyline
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment


def operators(*inks: Ink, x_factor: float = 1.0) -> list[str]:
    return content(Page("1", 210.0, 297.0, inks, x_factor=x_factor)).decode("ascii").splitlines()


def test_one_change_of_coordinates_makes_every_number_mm() -> None:
    lines = operators(Stroke(Role.OUTLINE, polyline([Point(0, 0), Point(85.6, 53.98)])))
    assert [line for line in lines if " cm" in line] == ["2.8346456693 0 0 2.8346456693 0 0 cm 1 J 1 j"]
    assert "0 0 m 85.6 53.98 l S" in lines


def test_a_correction_goes_into_the_change_of_coordinates_alone() -> None:
    ring = Dot(Role.HOLE, Point(10, 10), 3.0)
    plain, corrected = operators(ring), operators(ring, x_factor=1.004)
    assert corrected[0] == "2.845984252 0 0 2.8346456693 0 0 cm 1 J 1 j"
    assert corrected[1:] == plain[1:]


def test_a_closed_path_is_closed_and_not_drawn_back_by_a_line() -> None:
    square = polygon([Point(0, 0), Point(10, 0), Point(10, 10), Point(0, 10)])
    assert "0 0 m 10 0 l 10 10 l 0 10 l h S" in operators(Stroke(Role.OUTLINE, square))


@pytest.mark.parametrize(("bulge", "pieces"), [(0.19, 1), (0.2, 2), (1.0, 4), (-1.0, 4), (3.0, 7)])
def test_arcs_are_cut_into_pieces_of_at_most_45_degrees(bulge: float, pieces: int) -> None:
    arc = Path((Segment(Point(0, 0), Point(10, 0), bulge),), closed=False)
    (line,) = [line for line in operators(Stroke(Role.OUTLINE, arc)) if line.endswith("S")]
    assert line.count(" c") == pieces


def test_a_circle_of_100_mm_radius_is_round_within_a_micrometre() -> None:
    (line,) = [line for line in operators(Dot(Role.OUTLINE, Point(0, 0), 200.0)) if line.endswith("S")]
    pieces = re.findall(r"((?:-?[\d.]+ ){6})c", line)
    assert len(pieces) == 8
    start = (100.0, 0.0)
    for piece in pieces:
        x1, y1, x2, y2, x3, y3 = map(float, piece.split())
        for t in (0.0, 0.2, 0.35, 0.5, 0.8):
            weights = (1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3
            x = sum(w * v for w, v in zip(weights, (start[0], x1, x2, x3), strict=True))
            y = sum(w * v for w, v in zip(weights, (start[1], y1, y2, y3), strict=True))
            assert hypot(x, y) == pytest.approx(100, abs=1e-3)
        start = (x3, y3)


def test_runs_of_one_role_share_a_marked_group() -> None:
    dots = [Dot(role, Point(1, 1), 1.0) for role in (Role.HOLE, Role.HOLE, Role.MARK, Role.HOLE)]
    lines = operators(*dots)
    groups = [line for line in lines if line.endswith("BDC")]
    assert groups == ["/OC /stitch_hole BDC", "/OC /mark BDC", "/OC /stitch_hole BDC"]
    assert lines.count("EMC") == 3


def test_layer_names_are_plain_words() -> None:
    assert all(re.fullmatch(r"[a-z_]+", layer_name(role)) for role in Role)
    assert len({layer_name(role) for role in Role}) == len(Role)


def test_letters_are_solid_in_a_role_that_is_dashed() -> None:
    lines = operators(Text(Role.GUIDE, Point(0, 0), 2.0, "I"), Dot(Role.GUIDE, Point(5, 5), 2.0))
    letter = next(i for i, line in enumerate(lines) if line.endswith("l S"))
    assert lines[letter - 1].endswith(" w [] 0 d")
    # What is set between q and Q ends with Q (ISO 32000-1, 8.4.2): the ring is dashed again.
    assert "[12 1.5] 0 d" in lines[lines.index("q") - 1]
    assert lines[letter + 1] == "Q"


def test_words_lie_unseen_over_their_strokes() -> None:
    lines = operators(Text(Role.LABEL, Point(20, 30), 2.0, "é", align=Align.RIGHT))
    (words,) = [line for line in lines if line.startswith("BT")]
    assert words.startswith("BT 3 Tr /F1 2 Tf ")
    assert words.endswith("Tm <e9> Tj ET")


def test_the_unseen_words_are_as_long_as_their_strokes() -> None:
    (words,) = [line for line in operators(Text(Role.LABEL, Point(0, 0), 2.1, "II")) if line.startswith("BT")]
    stretch = float(words.split(" Tz")[0].split()[-1])
    assert 2 * 0.6 * 2.1 * stretch / 100 == pytest.approx(2 * 8 * 0.1, abs=1e-4)  # two letters of 8 units of 0.1 mm


def test_words_beyond_the_west_european_letters_are_strokes_alone() -> None:
    lines = operators(Text(Role.LABEL, Point(0, 0), 2.0, "łódź"))
    assert not any(line.startswith("BT") for line in lines)
    assert any(line.endswith("S") for line in lines)


def test_an_empty_text_draws_nothing() -> None:
    assert not any("Tj" in line for line in operators(Text(Role.LABEL, Point(0, 0), 2.0, "")))


def test_a_text_without_strokes_is_refused() -> None:
    with pytest.raises(DraftError, match="HIRAGANA"):
        operators(Text(Role.LABEL, Point(0, 0), 2.0, "あ"))
