"""Room for the beam: contours moved aside by half the width it burns away, so that what is left has its net size.

A beam of width k that follows a contour takes away k/2 on either side of it. Outlines therefore grow and openings
shrink by k/2, and a hole or slit is drawn k shorter than it is to become.
"""

from __future__ import annotations

from patternforge.errors import DraftError, GeometryError
from patternforge.geometry.offset import Join, offset_one
from patternforge.geometry.path import Path

__all__ = ["opening_cut", "outline_cut", "width_cut"]


def outline_cut(outline: Path, kerf: float, piece: str, allowance: float = 0.0) -> Path:
    """The path the beam takes round a piece, half of ``kerf`` mm outside its outline; the outline itself for 0.

    With an ``allowance`` so many mm more, which are to come off at the bench. Lines stay lines and arcs keep their
    centres; sharp corners stay sharp. DraftError, naming the piece, when the outline closes in on itself (a notch
    narrower than the kerf).

    >>> from patternforge.geometry.corners import rounded_rectangle
    >>> round(outline_cut(rounded_rectangle(0, 0, 90, 60, 5), 0.2, "shell").bounds.width, 9)
    90.2
    """
    left_on = f" and {allowance:g} mm left on" if allowance else ""
    refusal = f"piece '{piece}': its outline cannot be cut with a kerf of {kerf:g} mm{left_on}"
    return _moved(outline, kerf / 2 + allowance, refusal)


def opening_cut(opening: Path, kerf: float, piece: str) -> Path:
    """The path the beam takes in an opening, half of ``kerf`` mm inside its edge; DraftError when none is left.

    >>> from patternforge.geometry.corners import rounded_rectangle
    >>> round(opening_cut(rounded_rectangle(0, 0, 30, 20, 3).cw(), 0.2, "shell").bounds.width, 9)
    29.8
    """
    return _moved(opening, -kerf / 2, f"piece '{piece}': an opening is too small for a kerf of {kerf:g} mm")


def width_cut(width: float, kerf: float, piece: str) -> float:
    """The diameter or length, mm, a stitch hole of ``width`` mm is drawn with; DraftError when nothing is left.

    >>> round(width_cut(1.0, 0.2, "shell"), 9)
    0.8
    """
    if kerf == 0:
        return width
    if width - kerf <= 0:
        raise DraftError(
            f"piece '{piece}': a stitch hole of {width:g} mm vanishes under a kerf of {kerf:g} mm;"
            " make the hole larger, or only mark it"
        )
    return width - kerf


def _moved(path: Path, distance: float, refusal: str) -> Path:
    if distance == 0:
        return path
    try:
        return offset_one(path, distance, Join.SHARP)
    except GeometryError as error:
        raise DraftError(f"{refusal}: {error}") from error
