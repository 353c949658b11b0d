"""The smallest hole, gap and radius of what is cut, for a machine that cannot cut smaller ones."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from math import inf

from patternforge.drawing.extent import extent
from patternforge.drawing.model import Dot, Figure, Role, Stroke
from patternforge.geometry.clearance import box_gap, clearance, narrowest
from patternforge.geometry.path import Path

__all__ = ["Small", "Spot", "smallest"]

_CUT = (Role.HOLE, Role.OPENING, Role.OUTLINE)
_SAME = 1e-6  # mm between the centres of arcs of one circle


@dataclass(frozen=True, slots=True)
class Spot:
    """A size, mm, and the piece it is found on."""

    size: float
    piece: str


@dataclass(frozen=True, slots=True)
class Small:
    """The smallest of each kind; None where there is nothing of the kind.

    ``hole``: round stitch hole or opening, across. ``gap``: leather or room between two cuts, or between two sides of
    one. ``radius``: arc of an outline or opening, circles left out.
    """

    hole: Spot | None
    gap: Spot | None
    radius: Spot | None


def smallest(figures: Iterable[Figure]) -> Small:
    """The smallest hole, gap and radius of the ``figures``, each of which is one piece with all that is cut of it.

    >>> from patternforge.geometry.corners import rounded_rectangle
    >>> from patternforge.geometry.point import Point
    >>> edge = Stroke(Role.OUTLINE, rounded_rectangle(0, 0, 30, 20, 4))
    >>> found = smallest([Figure("tab", "outer", (Dot(Role.HOLE, Point(3, 10), 1.0), edge))])
    >>> found.hole.size, found.gap.size, round(found.radius.size, 9)
    (1.0, 2.5, 4.0)
    """
    pieces = list(figures)
    return Small(*(_least(measure, pieces) for measure in (_hole, _gap, _radius)))


def _least(measure: Callable[[Figure], float], pieces: Sequence[Figure]) -> Spot | None:
    spots = [Spot(measure(piece), piece.name) for piece in pieces]
    least = min(spots, key=lambda spot: spot.size, default=None)
    return least if least is not None and least.size < inf else None


def _hole(piece: Figure) -> float:
    round_openings = (_circle(path) for path in _paths(piece, Role.OPENING))
    across = [ink.diameter for ink in piece.inks if isinstance(ink, Dot) and ink.role in _CUT]
    return min([*across, *(2 * radius for radius in round_openings if radius)], default=inf)


def _radius(piece: Figure) -> float:
    paths = (*_paths(piece, Role.OPENING), *_paths(piece, Role.OUTLINE))
    return min((s.radius for path in paths if not _circle(path) for s in path.segments if s.is_arc), default=inf)


def _circle(path: Path) -> float:
    """The radius of a path that is one whole circle; 0 for any other."""
    first = path.segments[0]
    if not all(segment.is_arc for segment in path.segments):
        return 0.0
    same = all(segment.centre.distance_to(first.centre) < _SAME for segment in path.segments)
    return first.radius if same else 0.0


def _gap(piece: Figure) -> float:
    """The least of all gaps between two cuts of a piece and the narrow places of each."""
    cuts = [ink for ink in piece.inks if isinstance(ink, Stroke | Dot) and ink.role in _CUT]
    closed = (ink.path for ink in cuts if isinstance(ink, Stroke) and ink.path.closed and not _circle(ink.path))
    best = min((narrowest(path) for path in closed), default=inf)
    # From left to right, so that a cut is held against few others.
    boxed = sorted(((extent([ink]), ink) for ink in cuts), key=lambda pair: pair[0].x0)
    for i, (box, ink) in enumerate(boxed):
        for other_box, other in boxed[i + 1 :]:
            if other_box.x0 - box.x1 >= best:
                break
            if box_gap(box, other_box) < best:
                best = min(best, _between(ink, other))
    return best


def _between(a: Stroke | Dot, b: Stroke | Dot) -> float:
    """From the rim of one cut to the rim of the other, mm; 0 where they touch."""
    if isinstance(a, Stroke):
        return clearance(a.path, b.path) if isinstance(b, Stroke) else _between(b, a)
    if isinstance(b, Dot):
        return max(a.centre.distance_to(b.centre) - (a.diameter + b.diameter) / 2, 0.0)
    return max(b.path.distance_to(a.centre) - a.diameter / 2, 0.0)


def _paths(piece: Figure, role: Role) -> tuple[Path, ...]:
    return tuple(ink.path for ink in piece.inks if isinstance(ink, Stroke) and ink.role is role)
