"""A piece as another program read it from a file, held against what ``pattern.json`` says of it."""

from __future__ import annotations

from cmath import phase
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from math import degrees, hypot, pi
from typing import Any

import shapely

from tests.outside.dxf_reading import Contour, arc_of

__all__ = [
    "TRUE",
    "ReadHole",
    "ReadPiece",
    "dense_outline",
    "described_holes",
    "described_outline",
    "differences",
    "unmatched",
]

TRUE = 0.01  # mm
_SLANT = 0.5  # degrees; over half a slit of 1 mm that is 0.01 mm
Json = Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class ReadHole:
    """Centre of a hole; its diameter, or the length and direction (a unit number) of a slit."""

    at: complex
    size: float
    axis: complex | None = None


@dataclass(frozen=True, slots=True)
class ReadPiece:
    """Points close together along the outline, and the holes, wherever they stood in the file."""

    outline: tuple[complex, ...]
    holes: tuple[ReadHole, ...]

    @property
    def at_origin(self) -> ReadPiece:
        """The piece with the lower left corner of its outline at the origin."""
        x0, y0 = min(at.real for at in self.outline), min(at.imag for at in self.outline)
        return self.moved(-complex(x0, y0))

    def moved(self, by: complex) -> ReadPiece:
        """The piece elsewhere."""
        holes = tuple(replace(hole, at=hole.at + by) for hole in self.holes)
        return ReadPiece(tuple(at + by for at in self.outline), holes)

    @property
    def turned(self) -> ReadPiece:
        """The piece turned back by 90 degrees clockwise."""
        holes = (replace(h, at=h.at * -1j, axis=h.axis * -1j if h.axis else None) for h in self.holes)
        return ReadPiece(tuple(at * -1j for at in self.outline), tuple(holes))


def described_outline(piece: Json) -> Contour:
    """The outline of ``pattern.json``."""
    points = tuple(complex(x, y) for x, y, _ in piece["outline"])
    return Contour(points, tuple(bulge for *_, bulge in piece["outline"]), True)


def dense_outline(piece: Json) -> tuple[complex, ...]:
    """Points close together along the outline of ``pattern.json``."""
    return tuple(described_outline(piece).flattened(64))


def described_holes(piece: Json) -> list[Json]:
    """The holes of a piece that are drawn, marks first as in every file."""
    drawn = [hole for key in ("holes", "turned_holes") for hole in piece[key] if hole["shape"] != "none"]
    return sorted(drawn, key=lambda hole: hole["shape"] != "mark")


def differences(json: Json, piece: Json, read: ReadPiece) -> list[str]:
    """All in which a piece as read is not, within 0.01 mm, what ``pattern.json`` describes."""
    own = read.at_origin
    return [*_sizes(piece, own), *_outlines(piece, own), *_arcs(piece, own), *_holes(json, piece, own)]


def unmatched(json: Json, pieces: Sequence[Json], read: Sequence[ReadPiece]) -> list[str]:
    """Names of described pieces that none of those read is, in whichever order; and how many are left over."""
    left = list(read)
    missing = []
    for piece in pieces:
        ways = (each for each in left for way in (each, each.turned) if not differences(json, piece, way))
        found = next(ways, None)
        if found is None:
            missing.append(str(piece["name"]))
        else:
            left.remove(found)
    return missing + [f"{len(left)} more than described"] * bool(left)


def _sizes(piece: Json, read: ReadPiece) -> Iterator[str]:
    width, height = max(at.real for at in read.outline), max(at.imag for at in read.outline)
    if abs(width - piece["width"]) > TRUE or abs(height - piece["height"]) > TRUE:
        yield f"{piece['name']}: {width:.3f} x {height:.3f}, not {piece['width']:.3f} x {piece['height']:.3f} mm"


def _outlines(piece: Json, read: ReadPiece) -> Iterator[str]:
    described, found = (_line(points) for points in (described_outline(piece).flattened(64), read.outline))
    strays = (
        shapely.distance(line, shapely.points(shapely.get_coordinates(other)))
        for line, other in ((described, found), (found, described))
    )
    off = max(float(each.max()) for each in strays)
    if off > TRUE:
        yield f"{piece['name']}: the outline strays by {off:.3f} mm"


def _line(points: Sequence[complex]) -> shapely.LinearRing:
    return shapely.LinearRing([(at.real, at.imag) for at in points])


def _arcs(piece: Json, read: ReadPiece) -> Iterator[str]:
    """Arcs whose points as read do not all stand off the centre by the radius, or that are no arcs at all."""
    for start, end, bulge in described_outline(piece).stretches:
        if not bulge:
            continue
        centre, angle, sweep = arc_of(start, end, bulge)
        radius = abs(start - centre)
        passed = [at for at in read.outline if _is_beside(at - centre, radius, angle, sweep)]
        off = max((abs(abs(at - centre) - radius) for at in passed), default=0.0)
        # A stretch of the arc drawn straight would show by its rise over the chord between two points.
        step = max(abs(sweep) / (len(passed) + 1), 0.0)
        if off > TRUE or radius * step * step / 8 > TRUE:
            yield f"{piece['name']}: radius {radius:.3f} mm is off by {off:.3f} mm, read at {len(passed)} points"


def _is_beside(way: complex, radius: float, angle: float, sweep: float) -> bool:
    turn = (phase(way) - angle) * (1 if sweep > 0 else -1) % (2 * pi)
    return 1e-3 < turn < abs(sweep) - 1e-3 and abs(abs(way) - radius) < 0.5


def _holes(json: Json, piece: Json, read: ReadPiece) -> Iterator[str]:
    described = described_holes(piece)
    if len(described) != len(read.holes):
        yield f"{piece['name']}: {len(read.holes)} holes, not {len(described)}"
        return
    kinds = {seam["name"]: seam["hole"] for seam in json["seams"]}
    left = list(read.holes)
    for hole in described:
        at = complex(hole["x"], hole["y"])
        found = min(left, key=lambda each: abs(each.at - at))
        left.remove(found)
        yield from (
            f"{piece['name']}, {hole['seam']} {hole['index']}: {fault}" for fault in _hole(hole, kinds, found)
        )


def _hole(hole: Json, kinds: Mapping[str, Json], found: ReadHole) -> Iterator[str]:
    off = hypot(found.at.real - hole["x"], found.at.imag - hole["y"])
    if off > TRUE:
        yield f"{off:.3f} mm off"
    if hole["shape"] == "mark":
        return
    kind = kinds[hole["seam"]]
    size = kind["length"] if hole["shape"] == "slit" else kind["diameter"]
    if abs(found.size - size) > TRUE:
        yield f"{found.size:.3f} mm large, not {size:.3f}"
    if (found.axis is not None) != (hole["shape"] == "slit"):
        yield "a slit that is none, or none that is one"
    if found.axis is not None and abs((degrees(phase(found.axis)) - hole["direction"] + 90) % 180 - 90) > _SLANT:
        yield f"slants {degrees(phase(found.axis)):.1f} degrees, not {hole['direction']:.1f}"
