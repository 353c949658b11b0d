"""Single DXF entities as shapes in their own coordinates (DXF reference, ENTITIES)."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import isclose, radians, tau
from types import MappingProxyType

from patternforge.audit.affine import Affine
from patternforge.audit.dxf_splines import spline_points
from patternforge.audit.dxf_tags import Record
from patternforge.audit.model import Odd, Oddity
from patternforge.audit.shapes import Vertex, arc_vertices, ellipse_points
from patternforge.geometry.point import Point

__all__ = ["Figure", "figure", "plane"]

_LEVEL = 1e-6  # drawing units; less than this above the plane is on it
_SAME_ENDS = 1e-6  # drawing units

_WORDS = ("TEXT", "MTEXT", "ATTRIB", "ATTDEF", "RTEXT", "ARCALIGNEDTEXT")
_SIZES = ("DIMENSION", "ARC_DIMENSION", "LARGE_RADIAL_DIMENSION", "LEADER", "MULTILEADER", "MLEADER", "TOLERANCE")
_PICTURES = ("IMAGE", "OLEFRAME", "OLE2FRAME", "WIPEOUT", "PDFUNDERLAY", "DGNUNDERLAY", "DWFUNDERLAY", "UNDERLAY")
_ODD_KINDS: Mapping[str, Odd] = MappingProxyType(
    {
        **dict.fromkeys(_WORDS, Odd.TEXT),
        **dict.fromkeys(_SIZES, Odd.DIMENSION),
        **dict.fromkeys(_PICTURES, Odd.IMAGE),
        "HATCH": Odd.HATCH,
        "MPOLYGON": Odd.HATCH,
        "SOLID": Odd.HATCH,
        "TRACE": Odd.HATCH,
        "POINT": Odd.POINT,
    }
)


@dataclass(frozen=True, slots=True)
class Figure:
    """One entity in its own coordinates: where it begins, its vertices or its circle, what is odd about it.

    ``affine`` leads from its own plane to the drawing where it has one.
    """

    at: Point
    vertices: Sequence[Vertex] = ()
    closed: bool = False
    ring: tuple[Point, float] | None = None
    oddities: tuple[Oddity, ...] = ()
    affine: Affine | None = None
    width: float = 0.0


def figure(record: Record, parts: Sequence[Record] = (), scale: float = 1.0) -> Figure:
    """What an entity draws; ``parts`` are the vertices of an old polyline, ``scale`` is mm to a drawing unit."""
    reader = _READERS.get(record.kind)
    if reader is not None:
        return reader(record)
    if record.kind == "POLYLINE":
        return _polyline(record, parts)
    if record.kind == "SPLINE":
        return _spline(record, scale)
    if record.kind == "ELLIPSE":
        return _ellipse(record, scale)
    at = Point(record.number(10), record.number(20))
    return Figure(at, oddities=(Oddity(_ODD_KINDS.get(record.kind, Odd.FOREIGN), at, record.kind),))


def plane(record: Record) -> tuple[Affine | None, tuple[Oddity, ...]]:
    """How the plane of an entity lies in the drawing, seen from above; None for the drawing's own plane.

    The arbitrary axis algorithm of the DXF reference.
    """
    if 230 not in record:
        return None, ()
    x, y, z = (record.number(code, default) for code, default in ((210, 0.0), (220, 0.0), (230, 1.0)))
    norm = (x * x + y * y + z * z) ** 0.5
    if norm == 0 or (abs(x) <= _LEVEL * norm and abs(y) <= _LEVEL * norm and z > 0):
        return None, ()
    x, y, z = x / norm, y / norm, z / norm
    near = abs(x) < 1 / 64 and abs(y) < 1 / 64
    across = (z, 0.0, -x) if near else (-y, x, 0.0)
    length = (across[0] ** 2 + across[1] ** 2 + across[2] ** 2) ** 0.5
    ax, ay, az = (value / length for value in across)
    lift = record.number(38, record.number(30))
    up = (y * az - z * ay, z * ax - x * az)
    words = f"its plane faces {x:.3g}, {y:.3g}, {z:.3g} and not 0, 0, 1"
    return Affine(ax, ay, up[0], up[1], x * lift, y * lift), (Oddity(Odd.TILTED, None, words),)


def _line(record: Record) -> Figure:
    start, end = (Point(record.number(10 + i), record.number(20 + i)) for i in (0, 1))
    return Figure(start, [(start.x, start.y, 0), (end.x, end.y, 0)], oddities=_lifted(record, 30, 31))


def _circle(record: Record) -> Figure:
    centre = Point(record.number(10), record.number(20))
    affine, odd = plane(record)
    return Figure(centre, ring=(centre, abs(record.number(40))), oddities=_lifted(record, 30) + odd, affine=affine)


def _arc(record: Record) -> Figure:
    centre, radius = Point(record.number(10), record.number(20)), abs(record.number(40))
    affine, odd = plane(record)
    odd = _lifted(record, 30) + odd
    start, end = radians(record.number(50)), radians(record.number(51))
    sweep = (end - start) % tau
    if isclose(sweep, 0.0, abs_tol=1e-9) or isclose(sweep, tau, abs_tol=1e-9):
        return Figure(centre, ring=(centre, radius), oddities=odd, affine=affine)
    vertices = arc_vertices(centre, radius, start, sweep)
    return Figure(Point(*vertices[0][:2]), vertices, oddities=odd, affine=affine)


def _light(record: Record) -> Figure:
    runs = list(record.runs(10))
    vertices = [(run[10], run.get(20, 0.0), run.get(42, 0.0)) for run in runs]
    affine, odd = plane(record)
    odd = (*_lacking(record, runs), *_lifted(record, 38), *odd)
    return _polyline_figure(vertices, bool(record.whole(70) & 1), odd, affine, record)


def _lacking(record: Record, runs: Sequence[Mapping[int, float]]) -> Iterator[Oddity]:
    """Vertices that a light polyline says it has (group 90) and has not, and halves of vertices."""
    said = record.whole(90) if 90 in record else len(runs)
    if said != len(runs):
        yield Oddity(Odd.BROKEN, None, f"a polyline of {len(runs)} vertices that says it has {said}")
    for run in runs:
        if 20 not in run:
            yield Oddity(Odd.BROKEN, None, f"a polyline with a vertex at x {run[10]:g} that has no y")


def _polyline(record: Record, parts: Sequence[Record]) -> Figure:
    flags = record.whole(70)
    at = Point(parts[0].number(10), parts[0].number(20)) if parts else Point(0.0, 0.0)
    if flags & 80:  # bits 16 and 64: a mesh
        return Figure(at, oddities=(Oddity(Odd.FOREIGN, at, "POLYLINE of a mesh"),))
    drawn = [part for part in parts if not part.whole(70) & 16]  # bit 16: a control point of a curve
    vertices = [(part.number(10), part.number(20), part.number(42)) for part in drawn]
    heights = {round(part.number(30), 6) for part in drawn} | {round(record.number(30), 6)}
    odd = [Oddity(Odd.LIFTED, at, _height(max(heights, key=abs)))] if heights != {0.0} else []
    if flags & 4:
        odd.append(Oddity(Odd.SPLINE, at, "POLYLINE smoothed to a curve"))
    affine, tilted = (None, ()) if flags & 8 else plane(record)  # bit 8: vertices in space
    return _polyline_figure(vertices, bool(flags & 1), (*odd, *tilted), affine, record)


def _polyline_figure(
    vertices: list[Vertex], closed: bool, odd: tuple[Oddity, ...], affine: Affine | None, record: Record
) -> Figure:
    at = Point(*vertices[0][:2]) if vertices else Point(0.0, 0.0)
    if vertices and not closed and vertices[-1][2]:
        x, y, bulge = vertices[-1]
        odd = (*odd, Oddity(Odd.STRAY_BULGE, Point(x, y), f"{bulge:g}"))
        vertices = [*vertices[:-1], (x, y, 0.0)]
    width = max(record.number(43), record.number(40) if record.kind == "POLYLINE" else 0.0)
    return Figure(at, vertices, closed, oddities=odd, affine=affine, width=width)


def _spline(record: Record, scale: float) -> Figure:
    points = spline_points(record, scale)
    at = points[0] if points else Point(0.0, 0.0)
    closed = len(points) > 2 and points[0].distance_to(points[-1]) <= _SAME_ENDS
    vertices = [(p.x, p.y, 0.0) for p in (points[:-1] if closed else points)]
    return Figure(at, vertices, closed, oddities=(Oddity(Odd.SPLINE, at), *_lifted(record, 30)))


def _ellipse(record: Record, scale: float) -> Figure:
    centre, major = (Point(record.number(10 + i), record.number(20 + i)) for i in (0, 1))
    turn = -1.0 if record.number(230, 1.0) < 0 else 1.0
    minor = major.perpendicular() * (record.number(40, 1.0) * turn)
    start, end = record.number(41, 0.0), record.number(42, tau)
    whole = isclose((end - start) % tau, 0.0, abs_tol=1e-9) or isclose((end - start) % tau, tau, abs_tol=1e-9)
    end = start + (tau if whole else (end - start) % tau)
    points = ellipse_points(centre, major, minor, start, end, scale)
    vertices = [(p.x, p.y, 0.0) for p in (points[:-1] if whole else points)]
    return Figure(points[0], vertices, whole, oddities=(Oddity(Odd.ELLIPSE, points[0]), *_lifted(record, 30)))


def _lifted(record: Record, *codes: int) -> tuple[Oddity, ...]:
    heights = [record.number(code) for code in codes]
    highest = max(heights, key=abs)
    return (Oddity(Odd.LIFTED, None, _height(highest)),) if abs(highest) > _LEVEL else ()


def _height(height: float) -> str:
    return f"z is {height:g}"


_READERS: Mapping[str, Callable[[Record], Figure]] = MappingProxyType(
    {"LINE": _line, "CIRCLE": _circle, "ARC": _arc, "LWPOLYLINE": _light}
)
