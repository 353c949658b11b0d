"""Blanks laid flat: developed through every fold, turned showing face up, holed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from patternforge.errors import DraftError
from patternforge.geometry.path import Path, polyline
from patternforge.geometry.point import Bounds, Point
from patternforge.geometry.segment import Segment
from patternforge.geometry.transform import Transform, flipped_x, identity, rotation, translation
from patternforge.wallet.blank import Blank, Seat
from patternforge.wallet.body import Body
from patternforge.wallet.marked import PlaceMark
from patternforge.wallet.outline import Shape
from patternforge.wallet.pattern import (
    Development,
    DraftedFold,
    EdgeRole,
    FittingHole,
    Hole,
    Piece,
    Placement,
    SeamHole,
)
from patternforge.wallet.skived import skives_of
from patternforge.wallet.spec import HoleShape, Side, Stitching
from patternforge.wallet.turned_flat import cut_shape, mates_turned_in, turn_in, without_pierced

__all__ = ["Lay", "SewnThrough", "flat_piece", "slant_of", "slit_axis", "spread_development"]

_STRETCHED = 1e-9


@dataclass(frozen=True, slots=True)
class SewnThrough:
    """The holes of one seam that go through a piece, and how far beyond a fold zone the seam may stretch, mm."""

    name: str
    stitching: Stitching
    spread: float
    holes: tuple[SeamHole, ...]


@dataclass(frozen=True, slots=True)
class Lay:
    """How the pieces of a part are laid flat: their place from the outside in, and whether the row is turned."""

    part: str
    level: int
    turned: bool


def flat_piece(blank: Blank, lay: Lay, body: Body, seams: Sequence[SewnThrough]) -> Piece:
    """The piece of a blank with the holes of the seams that go through it.

    DraftError when an arc of its outline lies in a stretched fold zone.
    """
    developed = _developed(blank, blank.development)
    cut = cut_shape(blank, developed, body, lay.part)
    turn = _face_up(blank.showing, lay.turned)
    bounds = turn.path(cut.shape.path).bounds
    placement = Placement(blank.development, turn.then(translation(-bounds.x0, -bounds.y0)), blank.panels)
    onto = placement.onto_piece
    path, edges = _counter_clockwise(onto.path(cut.shape.path), cut.shape.edges)
    turned = turn_in(blank, developed, cut, body, lay.part, onto)
    holes = without_pierced([hole for seam in seams for hole in _holes(seam, placement)], turned)
    folds = [fold for fold in body.folds if {fold.number - 1, fold.number} <= set(blank.panels)]
    return Piece(
        name=blank.name,
        part=lay.part,
        leather=blank.leather,
        showing=blank.showing,
        visible=blank.visible,
        level=lay.level,
        outline=path,
        edges=edges,
        openings=tuple(_opening(blank.name, path, placement) for path in blank.openings),
        holes=holes,
        fold_lines=tuple(line for fold in folds for line in _fold_lines(fold, cut.shape.path, placement)),
        placement=placement,
        trims=blank.trims,
        fittings=tuple(_fitting_hole(seat, placement) for seat in blank.seats),
        lines=blank.lines,
        inscriptions=tuple(each.moved(_shifted(each.at, placement)) for each in blank.inscriptions),
        marks=tuple(
            PlaceMark(mark.name, _shifted(mark.path.start, placement).path(mark.path)) for mark in blank.marks
        ),
        skives=skives_of(blank, body, cut.shape.path, onto),
        turned=turned,
        turned_holes=mates_turned_in(blank, holes, turned, path),
    )


def _fitting_hole(seat: Seat, placement: Placement) -> FittingHole:
    return FittingHole(seat.fitting, seat.half, placement.to_piece(seat.at), seat.diameter, seat.reach)


def _opening(name: str, path: Path, placement: Placement) -> Path:
    """An opening in its piece, clockwise; where nothing stretches, development only moves it."""
    if _is_stretched(path.bounds, placement.development):
        raise DraftError(f"piece '{name}': an opening lies in a fold zone, where this layer would stretch it")
    return _shifted(path.start, placement).path(path).cw()


def _shifted(at: Point, placement: Placement) -> Transform:
    """Leads what lies on the panel of an assembly point to the piece; development only moves it there."""
    return translation(placement.development.flat(at.x) - at.x, 0.0).then(placement.onto_piece)


def slit_axis(hole: SeamHole, stitching: Stitching) -> float:
    """Degrees of a slit's long axis on the assembly: its slant is told as seen from the outside, so it turns over."""
    return hole.heading - slant_of(stitching)


def slant_of(stitching: Stitching) -> float:
    """Degrees by which a hole's long axis is turned against the way of sewing, seen from the outside; 0 if round."""
    return stitching.hole.slant if stitching.hole.shape is HoleShape.SLIT else 0.0


def spread_development(development: Development, spread: float) -> Development:
    """The development of an eased seam: the stretch of each fold zone shared out ``spread`` mm to either side."""
    sides = (-spread, spread)
    return Development(tuple((x + sides[i % 2], f + sides[i % 2]) for i, (x, f) in enumerate(development.breaks)))


def _face_up(showing: Side, turned: bool) -> Transform:
    turn = rotation(-90) if turned else identity()
    return turn.then(flipped_x()) if showing is Side.OUTSIDE else turn


def _developed(blank: Blank, development: Development) -> Shape:
    segments: list[Segment] = []
    edges: list[EdgeRole] = []
    for segment, role in zip(blank.shape.path.segments, blank.shape.edges, strict=True):
        laid = _arc(blank.name, segment, development) if segment.is_arc else _line(segment, development)
        segments += laid
        edges += [role] * len(laid)
    return Shape(Path(_chained(segments), True), tuple(edges))


def _is_stretched(bounds: Bounds, development: Development) -> bool:
    """Whether anything between these bounds is drawn out; zones only ever stretch, so nothing makes up for it."""
    return development.flat(bounds.x1) - development.flat(bounds.x0) - bounds.width > _STRETCHED


def _chained(segments: list[Segment]) -> tuple[Segment, ...]:
    """Segments whose ends meet to the last bit: each starts where the one before it ends."""
    return tuple(Segment(segments[i - 1].end, s.end, s.bulge) for i, s in enumerate(segments))


def _arc(name: str, arc: Segment, development: Development) -> list[Segment]:
    if _is_stretched(arc.bounds, development):
        raise DraftError(f"piece '{name}': an arc of its outline lies in a fold zone, where it would be stretched")
    return [Segment(_flat(arc.start, development), _flat(arc.end, development), arc.bulge)]


def _line(line: Segment, development: Development) -> list[Segment]:
    """A straight edge; one that slants across the end of a fold zone gets a corner there."""
    a, b = line.start, line.end
    if a.y == b.y or a.x == b.x:
        return [Segment(_flat(a, development), _flat(b, development))]
    between = sorted((x for x, _ in development.breaks if min(a.x, b.x) < x < max(a.x, b.x)), reverse=a.x > b.x)
    stops = [a, *(Point(x, a.y + (b.y - a.y) * (x - a.x) / (b.x - a.x)) for x in between), b]
    laid = [_flat(p, development) for p in stops]
    return [Segment(p, q) for p, q in pairwise(laid)]


def _flat(point: Point, development: Development) -> Point:
    return Point(development.flat(point.x), point.y)


def _counter_clockwise(path: Path, edges: tuple[EdgeRole, ...]) -> tuple[Path, tuple[EdgeRole, ...]]:
    return (path, edges) if path.is_ccw else (path.reversed(), edges[::-1])


def _holes(seam: SewnThrough, placement: Placement) -> list[Hole]:
    development = spread_development(placement.development, seam.spread)
    onto = placement.onto_piece
    return [
        Hole(
            seam.name,
            hole.index,
            onto.point(Point(development.flat(hole.at.x), hole.at.y)),
            onto.angle(slit_axis(hole, seam.stitching)),
        )
        for hole in seam.holes
    ]


def _fold_lines(fold: DraftedFold, outline: Path, placement: Placement) -> list[Path]:
    """The two tangents of a fold, drawn where they lie within the piece."""
    lines = []
    for x in (fold.x0, fold.x1):
        flat = placement.development.flat(x)
        bounds = outline.bounds
        ys = sorted(y for segment in outline.segments for y in _heights(segment, flat))
        low, high = (ys[0], ys[-1]) if len(ys) > 1 else (bounds.y0, bounds.y1)
        lines.append(polyline([placement.onto_piece.point(Point(flat, y)) for y in (low, high)]))
    return lines


def _heights(segment: Segment, x: float) -> list[float]:
    a, b = segment.start, segment.end
    if a.x == b.x or not min(a.x, b.x) <= x <= max(a.x, b.x):
        return []
    return [a.y + (b.y - a.y) * (x - a.x) / (b.x - a.x)]
