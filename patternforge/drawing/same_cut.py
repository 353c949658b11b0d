"""Figures that are the same cut: one laid on another, line on line, in the plane or turned over."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from patternforge.drawing.extent import placed
from patternforge.drawing.model import Dot, Figure, Ink, Role, Stroke
from patternforge.geometry.congruent import laid_on, laid_over, lies_on
from patternforge.geometry.path import Path
from patternforge.geometry.transform import Transform

__all__ = ["is_same_cut", "is_same_cut_over", "is_symmetric"]

_Ways = Callable[[Path, Path, float], Iterator[Transform]]


def is_same_cut(one: Figure, other: Figure, tolerance: float) -> bool:
    """Whether ``one``, turned and shifted in the plane, is ``other`` within ``tolerance`` mm, every hole included.

    A figure without an outline is no cut that could be compared.
    """
    return _fits(one, other, tolerance, laid_on)


def is_same_cut_over(one: Figure, other: Figure, tolerance: float) -> bool:
    """Whether ``one`` turned over, and then turned and shifted, is ``other`` within ``tolerance`` mm."""
    return _fits(one, other, tolerance, laid_over)


def is_symmetric(figure: Figure, tolerance: float) -> bool:
    """Whether a figure is its own mirror image within ``tolerance`` mm: cut from either side it is the same.

    >>> from patternforge.geometry.corners import rounded_rectangle
    >>> is_symmetric(Figure("card", "inner", (Stroke(Role.OUTLINE, rounded_rectangle(0, 0, 86, 54, 3)),)), 0.01)
    True
    """
    return is_same_cut_over(figure, figure, tolerance)


def _fits(one: Figure, other: Figure, tolerance: float, ways: _Ways) -> bool:
    mine, theirs = _outline(one), _outline(other)
    if mine is None or theirs is None or len(one.inks) != len(other.inks):
        return False
    inner, wanted = _inner(one), _inner(other)
    return any(
        _same([placed(ink, turn) for ink in inner], wanted, tolerance)
        for turn in ways(mine.ccw(), theirs.ccw(), tolerance)
    )


def _outline(figure: Figure) -> Path | None:
    return next((ink.path for ink in figure.inks if isinstance(ink, Stroke) and ink.role is Role.OUTLINE), None)


def _inner(figure: Figure) -> list[Ink]:
    return [ink for ink in figure.inks if ink.role is not Role.OUTLINE]


def _same(one: Sequence[Ink], other: Sequence[Ink], tolerance: float) -> bool:
    """Whether each ink lies on one of the others, both ways."""
    there = all(any(_lies_on(ink, each, tolerance) for each in other) for ink in one)
    return there and all(any(_lies_on(ink, each, tolerance) for each in one) for ink in other)


def _lies_on(one: Ink, other: Ink, tolerance: float) -> bool:
    if one.role is not other.role:
        return False
    if isinstance(one, Dot) and isinstance(other, Dot):
        off = one.centre.distance_to(other.centre)
        return off <= tolerance and abs(one.diameter - other.diameter) <= tolerance
    if isinstance(one, Stroke) and isinstance(other, Stroke):
        return one.path.closed == other.path.closed and lies_on(one.path, other.path, tolerance)
    return False
