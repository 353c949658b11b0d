"""The basic shapes of SVG as runs of vertices and circles (SVG 1.1, chapter 9)."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from math import pi, sqrt
from types import MappingProxyType

from patternforge.audit.model import Odd
from patternforge.audit.shapes import Vertex, ellipse_points
from patternforge.audit.svg_path import Run, path_runs
from patternforge.audit.svg_tree import Element
from patternforge.audit.svg_values import numbers, user_length
from patternforge.geometry.point import Point

__all__ = ["SHAPES", "Round", "parts"]

_QUARTER = sqrt(2) - 1  # bulge of a quarter of a circle


@dataclass(frozen=True, slots=True)
class Round:
    """A circle."""

    centre: Point
    radius: float


def parts(element: Element, factor: float) -> list[Run | Round]:
    """What an element draws, in its own units; ``factor`` is mm to one of them."""
    if element.name == "path":
        return [*path_runs(element.get("d"), factor, element.line)]
    if element.name == "ellipse":
        return [_ellipse(element, factor)]
    return [_MAKERS[element.name](element)]


def _length(element: Element, name: str) -> float:
    return user_length(element.get(name))


def _line(element: Element) -> Run:
    ends = [(_length(element, f"x{i}"), _length(element, f"y{i}"), 0.0) for i in (1, 2)]
    return Run(ends)


def _circle(element: Element) -> Round:
    return Round(Point(_length(element, "cx"), _length(element, "cy")), abs(_length(element, "r")))


def _ellipse(element: Element, factor: float) -> Run | Round:
    centre = Point(_length(element, "cx"), _length(element, "cy"))
    rx, ry = abs(_length(element, "rx")), abs(_length(element, "ry"))
    if rx == ry:
        return Round(centre, rx)
    points = ellipse_points(centre, Point(rx, 0.0), Point(0.0, ry), 0.0, 2 * pi, factor)
    return Run([(p.x, p.y, 0.0) for p in points[:-1]], True, {Odd.ELLIPSE})


def _polygon(element: Element) -> Run:
    return Run(_points(element), True)


def _polyline(element: Element) -> Run:
    return Run(_points(element))


def _points(element: Element) -> list[Vertex]:
    given = numbers(element.get("points"))
    return [(x, y, 0.0) for x, y in zip(given[::2], given[1::2], strict=False)] or [(0.0, 0.0, 0.0)]


def _rectangle(element: Element) -> Run:
    x, y, width, height = (_length(element, name) for name in ("x", "y", "width", "height"))
    rx, ry = element.get("rx") or element.get("ry"), element.get("ry") or element.get("rx")
    across, up = min(user_length(rx), width / 2), min(user_length(ry), height / 2)
    if not across or not up:
        return Run([(x, y, 0.0), (x + width, y, 0.0), (x + width, y + height, 0.0), (x, y + height, 0.0)], True)
    if across != up:
        return _elliptic_rectangle(x, y, width, height, across, up)
    r, q = across, _QUARTER
    x1, y1 = x + width, y + height
    vertices = [(x + r, y, 0.0), (x1 - r, y, q), (x1, y + r, 0.0), (x1, y1 - r, q)]
    vertices += [(x1 - r, y1, 0.0), (x + r, y1, q), (x, y1 - r, 0.0), (x, y + r, q)]
    return Run(_without_touching(vertices), True)


def _without_touching(vertices: list[Vertex]) -> list[Vertex]:
    """A side that the corners use up has no length: its vertex is left out."""
    following = [*vertices[1:], vertices[0]]
    return [v for v, after in zip(vertices, following, strict=True) if v[2] or v[:2] != after[:2]]


def _elliptic_rectangle(x: float, y: float, width: float, height: float, rx: float, ry: float) -> Run:
    x1, y1 = x + width, y + height
    arc = f"A{rx!r} {ry!r} 0 0 1"
    words = f"M{x + rx!r} {y!r}H{x1 - rx!r}{arc}{x1!r} {y + ry!r}V{y1 - ry!r}{arc}{x1 - rx!r} {y1!r}"
    words += f"H{x + rx!r}{arc}{x!r} {y1 - ry!r}V{y + ry!r}{arc}{x + rx!r} {y!r}Z"
    return path_runs(words)[0]


_MAKERS: Mapping[str, Callable[[Element], Run | Round]] = MappingProxyType(
    {"line": _line, "circle": _circle, "polygon": _polygon, "polyline": _polyline, "rect": _rectangle}
)
SHAPES = frozenset((*_MAKERS, "path", "ellipse"))
