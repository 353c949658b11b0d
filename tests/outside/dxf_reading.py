"""A small reader of DXF files by group codes alone, so that what was written is judged by no library that wrote it.

A DXF file is pairs of lines, a group code and its value (DXF reference, "Group codes in numerical order"): 0 names an
entity, 8 its layer, 10/20 and 11/21 its points, 40 a radius, 42 a bulge, 70 bit 1 a closed polyline. Points are
complex numbers: x + iy in mm.
"""

from __future__ import annotations

from cmath import exp, phase
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from math import atan, hypot, pi

__all__ = ["Contour", "Cut", "CutPiece", "arc_of", "cut_pieces", "cuts", "header_value", "layer_colours", "radii"]

QUARTERS = (0.0, pi / 2, pi, -pi / 2)


@dataclass(frozen=True, slots=True)
class Contour:
    """Vertices each with the bulge of the stretch that leaves it; the last one leads back to the first if closed."""

    points: tuple[complex, ...]
    bulges: tuple[float, ...]
    closed: bool

    @property
    def stretches(self) -> list[tuple[complex, complex, float]]:
        """Start, end and bulge of every line and arc."""
        ends = (*self.points[1:], self.points[0]) if self.closed else self.points[1:]
        return list(zip(self.points, ends, self.bulges, strict=False))

    @property
    def box(self) -> tuple[float, float, float, float]:
        """x0, y0, x1, y1, the bows of arcs included."""
        reached = [*self.points, *(at for stretch in self.stretches for at in _extremes(*stretch))]
        xs, ys = [at.real for at in reached], [at.imag for at in reached]
        return min(xs), min(ys), max(xs), max(ys)

    def flattened(self, steps: int = 32) -> list[complex]:
        """The vertices and ``steps`` points along every arc."""
        return [at for stretch in self.stretches for at in _along(*stretch, steps)]


@dataclass(frozen=True, slots=True)
class Cut:
    """One entity: its kind and layer as the file names them, its contour, or centre and radius of a circle."""

    kind: str
    layer: str
    contour: Contour
    radius: float = 0.0

    @property
    def centre(self) -> complex:
        """Centre of a circle, middle of a line."""
        return sum(self.contour.points) / len(self.contour.points)


@dataclass(frozen=True, slots=True)
class CutPiece:
    """What is cut of one piece, in the order of the file, the lower left corner of its outline at the origin."""

    cuts: tuple[Cut, ...]

    @property
    def outline(self) -> Contour:
        """The last cut of a piece is its outline."""
        return self.cuts[-1].contour

    @property
    def holes(self) -> tuple[Cut, ...]:
        """Circles and slits to sew through, pricked ones included."""
        return tuple(cut for cut in self.cuts if cut.layer in ("STITCH-HOLE", "MARK"))


def arc_of(start: complex, end: complex, bulge: float) -> tuple[complex, float, float]:
    """Centre, angle of the start and sweep of an arc, radians; bulge = tan(sweep / 4)."""
    centre = (start + end) / 2 + 1j * (end - start) * (1 - bulge * bulge) / (4 * bulge)
    return centre, phase(start - centre), 4 * atan(bulge)


def cuts(text: str) -> tuple[Cut, ...]:
    """Every entity of the ENTITIES section in file order; the vertices of an old polyline are part of it."""
    found: list[Cut] = []
    for kind, groups in _entities(text):
        if kind == "VERTEX":
            found[-1] = _with_vertex(found[-1], groups)
        elif kind != "SEQEND":
            found.append(_cut(kind, groups))
    return tuple(found)


def cut_pieces(entities: Iterable[Cut]) -> tuple[CutPiece, ...]:
    """The entities parted after every outline, each part moved to the origin. ValueError if one has no outline."""
    pieces: list[CutPiece] = []
    waiting: list[Cut] = []
    for cut in entities:
        waiting.append(cut)
        if cut.layer == "OUTLINE":
            x0, y0, _, _ = cut.contour.box
            pieces.append(CutPiece(tuple(_moved(each, -complex(x0, y0)) for each in waiting)))
            waiting = []
    if waiting:
        raise ValueError(f"{len(waiting)} entities after the last outline")
    return tuple(pieces)


def header_value(text: str, name: str) -> str | None:
    """The first value of a header variable such as ``$INSUNITS``; None if the file has none."""
    pairs = _pairs(text)
    return next((value for (_, key), (_, value) in pairwise(pairs) if key == name), None)


def layer_colours(text: str) -> dict[str, int]:
    """The colour number (62) of every layer in the table of layers, by its name (2)."""
    pairs = _pairs(text)
    starts = [i for i, pair in enumerate(pairs) if pair == (0, "LAYER")]
    records = [dict(pairs[i + 1 : next(j for j in range(i + 1, len(pairs)) if pairs[j][0] == 0)]) for i in starts]
    return {record[2]: int(record[62]) for record in records}


def radii(stretches: Iterable[tuple[complex, complex, float]]) -> list[float]:
    """The radii of all arcs in order, positive where they turn left."""
    arcs = [(start, *arc_of(start, end, bulge)) for start, end, bulge in stretches if bulge]
    return [abs(start - centre) * (1 if sweep > 0 else -1) for start, centre, _, sweep in arcs]


def _pairs(text: str) -> list[tuple[int, str]]:
    lines = text.split("\n")
    return [(int(code), value.strip()) for code, value in zip(lines[::2], lines[1::2], strict=False)]


def _entities(text: str) -> Iterator[tuple[str, list[tuple[int, str]]]]:
    pairs = _pairs(text)
    at = pairs.index((2, "ENTITIES")) + 1
    while pairs[at] != (0, "ENDSEC"):
        end = next(i for i in range(at + 1, len(pairs)) if pairs[i][0] == 0)
        yield pairs[at][1], pairs[at + 1 : end]
        at = end


def _cut(kind: str, groups: Sequence[tuple[int, str]]) -> Cut:
    layer = next(value for code, value in groups if code == 8)
    if kind == "POLYLINE":  # its own 10, 20, 30 are no vertex
        return Cut(kind, layer, Contour((), (), _is_closed(groups)))
    points = (*_points(groups, 10), *_points(groups, 11))
    radius = next((float(value) for code, value in groups if code == 40), 0.0) if kind == "CIRCLE" else 0.0
    return Cut(kind, layer, Contour(points, _bulges(groups, len(points)), _is_closed(groups)), radius)


def _with_vertex(cut: Cut, groups: Sequence[tuple[int, str]]) -> Cut:
    known = cut.contour
    points, bulges = (*known.points, *_points(groups, 10)), (*known.bulges, *_bulges(groups, 1))
    return replace(cut, contour=Contour(points, bulges, known.closed))


def _is_closed(groups: Iterable[tuple[int, str]]) -> bool:
    return any(code == 70 and int(value) & 1 for code, value in groups)


def _points(groups: Iterable[tuple[int, str]], code: int) -> tuple[complex, ...]:
    xs = [float(value) for each, value in groups if each == code]
    ys = [float(value) for each, value in groups if each == code + 10]
    return tuple(complex(x, y) for x, y in zip(xs, ys, strict=True))


def _bulges(groups: Iterable[tuple[int, str]], count: int) -> tuple[float, ...]:
    """The bulge of every vertex; a vertex without one leaves in a straight line."""
    bulges = [0.0] * count
    at = -1
    for code, value in groups:
        at += code == 10
        if code == 42:
            bulges[at] = float(value)
    return tuple(bulges)


def _moved(cut: Cut, by: complex) -> Cut:
    points = tuple(at + by for at in cut.contour.points)
    return replace(cut, contour=replace(cut.contour, points=points))


def _along(start: complex, end: complex, bulge: float, steps: int) -> Iterator[complex]:
    yield start
    if bulge:
        centre, angle, sweep = arc_of(start, end, bulge)
        radius = abs(start - centre)
        yield from (centre + radius * exp(1j * (angle + sweep * i / steps)) for i in range(1, steps))


def _extremes(start: complex, end: complex, bulge: float) -> Iterator[complex]:
    """The points of an arc farthest right, up, left and down, those of them that it passes."""
    if not bulge:
        return
    centre, angle, sweep = arc_of(start, end, bulge)
    radius = hypot(start.real - centre.real, start.imag - centre.imag)
    for quarter in QUARTERS:
        turn = (quarter - angle) % (2 * pi) if sweep > 0 else (angle - quarter) % (2 * pi)
        if turn < abs(sweep):
            yield centre + radius * exp(1j * quarter)
