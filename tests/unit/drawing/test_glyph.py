"""Glyphs moved, scaled, turned over and set side by side."""

from __future__ import annotations

from patternforge.drawing.glyph import Glyph

HOOK = Glyph(10, (((2, 0), (2, 21), (7, 21)),))


def test_a_moved_glyph_keeps_its_width() -> None:
    assert HOOK.moved(3, -1) == Glyph(10, (((5, -1), (5, 20), (10, 20)),))


def test_a_scaled_glyph_takes_less_room() -> None:
    assert HOOK.scaled(0.5) == Glyph(5, (((1, 0), (1, 10.5), (3.5, 10.5)),))


def test_turning_over_twice_gives_the_glyph_back() -> None:
    assert HOOK.turned_over(7).turned_over(7) == HOOK
    assert HOOK.turned_over(7).lines[0][0] == (8, 14)


def test_the_right_neighbour_stands_after_the_width_less_what_it_comes_closer() -> None:
    pair = HOOK.beside(HOOK, closer=3)
    assert pair.width == 17
    assert pair.lines[1][0] == (9, 0)


def test_the_middle_of_a_blank_is_the_middle_of_its_width() -> None:
    assert Glyph(16, ()).centre == 8
    assert HOOK.centre == 4.5


def test_only_what_hangs_above_small_letters_is_a_dot() -> None:
    dotted = Glyph(8, (((4, 20), (4, 22)), ((4, 14), (4, 0))))
    assert dotted.without_dot() == Glyph(8, (((4, 14), (4, 0)),))
    assert HOOK.without_dot() == HOOK
