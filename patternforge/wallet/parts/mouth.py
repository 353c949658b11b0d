"""Mouths: the edge an item goes in over, straight, dipped or slanted, with or without a thumb notch."""

from __future__ import annotations

from itertools import pairwise

from patternforge.errors import DraftError
from patternforge.geometry.point import Point
from patternforge.wallet.outline import Corner
from patternforge.wallet.pattern import EdgeRole
from patternforge.wallet.spec import MouthShape, MouthSpec, ThumbNotch

__all__ = ["EAR", "mouth_corners"]

EAR = 2.0
"""How far a mouth stays straight beyond the stitch line, mm, so that the holes meet it at its full height."""


def mouth_corners(
    right: float, height: float, lines: tuple[float, ...], mouth: MouthSpec, thumb: ThumbNotch | None
) -> list[Corner]:
    """Corners of a mouth at ``height`` from the right edge to the left one, the left corner not included.

    ``lines`` are the stitch lines from left to right: the mouth dips or is notched between each pair of them. A
    slanted mouth stands at ``height`` on the left and ``depth`` lower on the right.
    """
    if thumb and mouth.shape is not MouthShape.STRAIGHT:
        raise DraftError(f"a thumb notch is cut into a straight mouth only, not a {mouth.shape.value} one")
    if mouth.shape is MouthShape.SLANTED:
        return _slanted(right, height, lines, mouth.depth)
    corners = [Corner(Point(right, height), role=EdgeRole.MOUTH)]
    for a0, a1 in reversed(list(pairwise(lines))):
        corners += _between(a0, a1, height, mouth, thumb)
    return corners


def _slanted(right: float, height: float, lines: tuple[float, ...], depth: float) -> list[Corner]:
    return [
        Corner(Point(right, height - depth), role=EdgeRole.MOUTH),
        Corner(Point(lines[-1] - EAR, height - depth), role=EdgeRole.MOUTH),
        Corner(Point(lines[0] + EAR, height), role=EdgeRole.MOUTH),
    ]


def _between(a0: float, a1: float, height: float, mouth: MouthSpec, thumb: ThumbNotch | None) -> list[Corner]:
    if mouth.shape is MouthShape.DIPPED:
        return _bow(a0 + EAR, a1 - EAR, height, mouth.depth)
    if thumb:
        if thumb.width > a1 - a0 - 2 * EAR:
            raise DraftError(
                f"a thumb notch {thumb.width:.2f} mm wide does not fit between stitches {a1 - a0:.2f} mm apart"
            )
        middle = (a0 + a1) / 2
        return _bow(middle - thumb.width / 2, middle + thumb.width / 2, height, thumb.depth)
    return []


def _bow(low: float, high: float, height: float, depth: float) -> list[Corner]:
    """An arc cut into the mouth, run from right to left; bulge = 2 x sagitta / chord."""
    chord = high - low
    if chord <= 0 or depth > chord / 2 + 1e-9:
        raise DraftError(f"a cut {depth:.2f} mm deep does not fit a mouth of {chord:.2f} mm: at most half its width")
    return [
        Corner(Point(high, height), bulge=-2 * depth / chord, role=EdgeRole.MOUTH),
        Corner(Point(low, height), role=EdgeRole.MOUTH),
    ]
