"""Where each mark stands on its letter."""

from __future__ import annotations

import unicodedata

import pytest

from patternforge.drawing.accents import ACCENTS, accented
from patternforge.drawing.glyph import CAPITAL, Glyph

BOX = Glyph(20, (((4, 0), (16, 0), (16, CAPITAL), (4, CAPITAL), (4, 0)),))
BELOW = {"\N{COMBINING COMMA BELOW}", "\N{COMBINING CEDILLA}", "\N{COMBINING OGONEK}"}


@pytest.mark.parametrize("mark", sorted(ACCENTS), ids=unicodedata.name)
def test_a_mark_stands_clear_of_the_letter_on_its_own_side(mark: str) -> None:
    added = accented("X", BOX, mark).lines[1:]
    heights = [y for line in added for _, y in line]
    assert added
    if mark in BELOW:
        assert max(heights) <= 0
    else:
        assert min(heights) > CAPITAL


@pytest.mark.parametrize("mark", sorted(set(ACCENTS) - {"\N{COMBINING OGONEK}"}), ids=unicodedata.name)
def test_a_mark_stands_over_or_under_the_middle_of_its_letter(mark: str) -> None:
    xs = [x for line in accented("X", BOX, mark).lines[1:] for x, _ in line]
    assert (min(xs) + max(xs)) / 2 == pytest.approx(BOX.centre, abs=0.5)


def test_an_ogonek_hangs_from_the_right_foot() -> None:
    assert accented("X", BOX, "\N{COMBINING OGONEK}").lines[1][0] == (16, 0)


def test_a_tall_letter_carries_its_caron_as_a_tick_beside_it() -> None:
    stem = Glyph(8, (((4, CAPITAL), (4, 0)),))
    ticked = accented("l", stem, "\N{COMBINING CARON}")
    assert ticked.top == CAPITAL
    assert ticked.width > stem.width


def test_a_latvian_cedilla_is_drawn_as_a_comma() -> None:
    comma = accented("X", BOX, "\N{COMBINING COMMA BELOW}")
    assert accented("K", BOX, "\N{COMBINING CEDILLA}") == comma
    assert accented("C", BOX, "\N{COMBINING CEDILLA}") != comma
