"""Areas of the plane: whether outlines are sound, and how areas lie over one another.

Soundness is judged on the exact lines and arcs. Areas laid over one another are cut by shapely, with arcs flattened
to a tolerance; it is loaded when first used.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations
from typing import TYPE_CHECKING

from patternforge.errors import GeometryError
from patternforge.geometry.boxes import loose_box, touching_pairs
from patternforge.geometry.flatten import flattened
from patternforge.geometry.path import Path, polygon
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment, intersections
from patternforge.geometry.transform import Transform

if TYPE_CHECKING:
    from shapely import Polygon
    from shapely.geometry.base import BaseGeometry

__all__ = ["Cell", "Patch", "Region", "fault_of", "overlap_area", "overlay", "patches", "region"]

SAME_VERTEX = 1e-7  # mm; neighbours that meet within this of their common vertex meet there only

SAME_CORNER = 1e-4  # mm; corners of cut areas closer than this come from rounding

Ring = tuple[Path, Sequence[Path]]


@dataclass(frozen=True, slots=True)
class Region:
    """An area that may have holes and several parts; made by ``region``."""

    shape: BaseGeometry

    @property
    def area(self) -> float:
        """The area in mm2."""
        return float(self.shape.area)

    @property
    def is_empty(self) -> bool:
        return bool(self.shape.is_empty)

    def contains(self, p: Point) -> bool:
        """Whether ``p`` lies inside or on the rim.

        >>> from patternforge.geometry.corners import rounded_rectangle
        >>> region(rounded_rectangle(0, 0, 10, 10, 2)).contains(Point(0.1, 0.1))
        False
        """
        import shapely

        return bool(self.shape.covers(shapely.Point(p.x, p.y)))

    def common(self, other: Region) -> Region:
        """What lies in both."""
        return Region(self.shape.intersection(other.shape))

    def united(self, other: Region) -> Region:
        """What lies in either."""
        return Region(self.shape.union(other.shape))

    def without(self, other: Region) -> Region:
        """What lies in this one and not in the other."""
        return Region(self.shape.difference(other.shape))

    def moved(self, transform: Transform) -> Region:
        """The area carried by an isometry."""
        from shapely.affinity import affine_transform

        t = transform
        return Region(affine_transform(self.shape, [t.a, t.c, t.b, t.d, t.e, t.f]))

    @property
    def paths(self) -> tuple[Path, ...]:
        """The outlines of all parts and of their holes, in straight lines; corners closer than 1e-4 mm are one."""
        import shapely

        # Areas that also touch along a line or in a point have that in common too.
        parts = (part for part in shapely.get_parts(self.shape) if part.geom_type == "Polygon")
        rings = (ring for part in parts for ring in (part.exterior, *part.interiors))
        apart = (_apart([Point(x, y) for x, y in ring.coords[:-1]]) for ring in rings)
        return tuple(polygon(points) for points in apart if len(points) > 2)

    def shrunk(self, by: float) -> Region:
        """What lies more than ``by`` mm inside the rim; it may be empty.

        >>> from patternforge.geometry.corners import rounded_rectangle
        >>> region(rounded_rectangle(0, 0, 20, 10, 0)).shrunk(2).area
        96.0
        """
        return Region(self.shape.buffer(-by, join_style="mitre"))

    def distance_to(self, other: Region) -> float:
        """The shortest distance between both, mm; 0 when they touch or overlap."""
        return float(self.shape.distance(other.shape))


@dataclass(frozen=True, slots=True)
class Cell:
    """A connected part of the plane that the same areas cover: which, their weights in all, mm2, a point in it."""

    covers: frozenset[int]
    weight: float
    area: float
    at: Point


@dataclass(frozen=True, slots=True)
class Patch:
    """A connected part of the plane that the same areas cover: which, the part itself, a point in it."""

    covers: frozenset[int]
    region: Region
    at: Point


def fault_of(outline: Path, openings: Iterable[Path] = ()) -> str | None:
    """Why an outline with openings encloses no proper area, in plain words; None if it does.

    Sound paths are closed, cross or touch neither themselves nor one another; openings lie in the outline and apart.

    >>> from patternforge.geometry.path import polygon
    >>> fault_of(polygon([Point(0, 0), Point(4, 0), Point(0, 4), Point(4, 4)]))
    'the outline crosses or touches itself at (2.00, 2.00)'
    """
    holes = [(f"opening {n}", path) for n, path in enumerate(openings, start=1)]
    for name, path in [("the outline", outline), *holes]:
        if fault := _own_fault(name, path):
            return fault
    for name, path in holes:
        if fault := _fault_inside(name, path, outline):
            return fault
    return next((fault for a, b in combinations(holes, 2) if (fault := _fault_between(*a, *b))), None)


def region(outline: Path, openings: Iterable[Path] = (), tolerance: float = 0.01) -> Region:
    """The area inside a closed outline and outside its openings, arcs flattened to ``tolerance`` mm.

    GeometryError with the reason when they enclose no proper area (see ``fault_of``).

    >>> from patternforge.geometry.corners import rounded_rectangle
    >>> region(rounded_rectangle(0, 0, 20, 10, 0), [rounded_rectangle(2, 2, 4, 4, 0)]).area
    196.0
    """
    return Region(_polygon(outline, tuple(openings), tolerance))


def overlap_area(a: Region, b: Region) -> float:
    """The area in mm2 that lies in both.

    >>> from patternforge.geometry.corners import rounded_rectangle
    >>> overlap_area(region(rounded_rectangle(0, 0, 4, 4, 0)), region(rounded_rectangle(3, 0, 9, 4, 0)))
    4.0
    """
    return a.common(b).area


def overlay(areas: Sequence[tuple[Path, Sequence[Path], float]], tolerance: float = 0.01) -> tuple[Cell, ...]:
    """The cells into which areas (outline, openings, weight) cut one another, from the lower left to the upper right.

    Arcs are flattened to ``tolerance`` mm, and slivers on average narrower than that are left out: they come from
    flattening. GeometryError when an area is not sound (see ``fault_of``).

    >>> from patternforge.geometry.corners import rounded_rectangle
    >>> left, right = rounded_rectangle(0, 0, 4, 4, 0), rounded_rectangle(3, 0, 9, 4, 0)
    >>> [(sorted(cell.covers), cell.weight, cell.area) for cell in overlay([(left, (), 1.2), (right, (), 0.8)])]
    [([0], 1.2, 12.0), ([0, 1], 2.0, 4.0), ([1], 0.8, 20.0)]
    """
    import shapely

    polygons = [_polygon(outline, tuple(openings), tolerance) for outline, openings, _ in areas]
    if not polygons:
        return ()
    edges = shapely.unary_union([polygon.boundary for polygon in polygons])
    faces = shapely.get_parts(shapely.polygonize([edges]))
    tree = shapely.STRtree(polygons)
    cells = []
    for face in faces:
        inner = face.representative_point()
        covers = frozenset(int(i) for i in tree.query(inner, predicate="within"))
        if covers and 2 * face.area > tolerance * face.length:
            weight = sum(areas[i][2] for i in sorted(covers))
            cells.append(Cell(covers, weight, float(face.area), Point(float(inner.x), float(inner.y))))
    return tuple(sorted(cells, key=lambda cell: (round(cell.at.x, 6), round(cell.at.y, 6))))


def patches(areas: Sequence[Region], sliver: float = 1e-6) -> tuple[Patch, ...]:
    """The connected parts into which areas cut one another, from the lower left to the upper right.

    Parts smaller than ``sliver`` mm2 are left out: they come from rounding.

    >>> from patternforge.geometry.corners import rounded_rectangle
    >>> one = region(rounded_rectangle(0, 0, 4, 4, 0))
    >>> [sorted(patch.covers) for patch in patches([one, region(rounded_rectangle(3, 0, 9, 4, 0))])]
    [[0], [0, 1], [1]]
    """
    import shapely

    shapes = [area.shape for area in areas]
    if not shapes:
        return ()
    faces = shapely.get_parts(shapely.polygonize([shapely.unary_union([shape.boundary for shape in shapes])]))
    tree = shapely.STRtree(shapes)
    found = []
    for face in faces:
        inner = face.representative_point()
        covers = frozenset(int(i) for i in tree.query(inner, predicate="within"))
        if covers and face.area > sliver:
            found.append(Patch(covers, Region(face), Point(float(inner.x), float(inner.y))))
    return tuple(sorted(found, key=lambda patch: (round(patch.at.x, 6), round(patch.at.y, 6))))


def _apart(points: list[Point]) -> list[Point]:
    """The points of a ring without those that fall together with the one before."""
    return [p for i, p in enumerate(points) if p.distance_to(points[i - 1]) > SAME_CORNER]


def _polygon(outline: Path, openings: tuple[Path, ...], tolerance: float) -> Polygon:
    import shapely

    if fault := fault_of(outline, openings):
        raise GeometryError(fault)
    rings = [[(p.x, p.y) for p in flattened(path, tolerance)] for path in (outline, *openings)]
    return shapely.Polygon(rings[0], rings[1:])


def _own_fault(name: str, path: Path) -> str | None:
    if not path.closed:
        return f"{name} is open"
    for p in _own_meetings(path.segments):
        return f"{name} crosses or touches itself at ({p.x:.2f}, {p.y:.2f})"
    return None


def _own_meetings(segments: Sequence[Segment]) -> Iterator[Point]:
    """Where segments of a closed path meet other than at the vertex between neighbours."""
    for i, j in touching_pairs([loose_box(s) for s in segments]):
        a, b = segments[i], segments[j]
        shared = [p for p, q in ((a.end, b.start), (a.start, b.end)) if p.distance_to(q) <= SAME_VERTEX]
        yield from (p for p in intersections(a, b) if all(p.distance_to(q) > SAME_VERTEX for q in shared))


def _meeting(a: Path, b: Path) -> Point | None:
    """A point where two paths meet."""
    segments = a.segments + b.segments
    count = len(a.segments)
    for i, j in touching_pairs([loose_box(s) for s in segments]):
        if (i < count) is not (j < count):
            for p in intersections(segments[i], segments[j]):
                return p
    return None


def _fault_inside(name: str, path: Path, outline: Path) -> str | None:
    if p := _meeting(path, outline):
        return f"{name} meets the outline at ({p.x:.2f}, {p.y:.2f})"
    return None if outline.contains(path.start) else f"{name} lies outside the outline"


def _fault_between(one: str, a: Path, other: str, b: Path) -> str | None:
    if p := _meeting(a, b):
        return f"{one} and {other} meet at ({p.x:.2f}, {p.y:.2f})"
    if a.contains(b.start):
        return f"{other} lies inside {one}"
    return f"{one} lies inside {other}" if b.contains(a.start) else None
