"""Where a closed line may be begun: on its straight runs, away from corners, where a mark of the tool shows most."""

from __future__ import annotations

from patternforge.geometry.path import Path
from patternforge.geometry.segment import Segment

__all__ = ["begun_at", "starts"]

_CLEAR = 2.0  # mm from the ends of a straight run at least; common practice, no source


def starts(path: Path) -> tuple[float, ...]:
    """How far along a closed path, mm, it may be begun: in the middle of straight runs clear of both their ends.

    Of a path without such a run the longest straight one counts; of one that is all arcs its own beginning.

    >>> from patternforge.geometry.corners import rounded_rectangle
    >>> starts(rounded_rectangle(0, 0, 90, 60, 5))[0]
    40.0
    """
    runs = _straight(path)
    clear = [start + segment.length / 2 for start, segment in runs if segment.length >= 2 * _CLEAR]
    if clear or not runs:
        return tuple(clear) or (0.0,)
    start, longest = max(runs, key=lambda run: run[1].length)
    return (start + longest.length / 2,)


def begun_at(path: Path, along: float) -> Path:
    """The same closed path in the same direction, begun ``along`` mm from where it begins (0 to its length).

    The segment it is begun on is parted in two.

    >>> from patternforge.geometry.corners import rounded_rectangle
    >>> moved = begun_at(rounded_rectangle(0, 0, 90, 60, 5), 40.0)
    >>> moved.start, len(moved.segments)
    (Point(x=45.0, y=0.0), 9)
    """
    if along == 0:
        return path
    ahead = path.sub(along, path.length)
    return Path(ahead.segments + path.sub(0.0, along).segments, closed=True)


def _straight(path: Path) -> list[tuple[float, Segment]]:
    """Every straight segment after the distance along the path at which it begins, mm."""
    found, passed = [], 0.0
    for segment in path.segments:
        if not segment.is_arc:
            found.append((passed, segment))
        passed += segment.length
    return found
