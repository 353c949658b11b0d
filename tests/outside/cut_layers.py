"""Pieces as cut, laid open again: mirror, turn and shift taken back, every fold zone drawn in from its own length.

Knows the cutting file and ``pattern.json`` and nothing of the program that wrote them. Points are complex numbers
x + iy in mm, as in ``dxf_reading``; panels and folds are counted from 0.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any

import shapely

from tests.outside.dxf_reading import Contour, Cut, CutPiece
from tests.outside.turned_in import Rolled, rolled_edges

__all__ = ["Box", "Json", "Layer", "Sewn", "cut_layers"]

_AT = 1e-6
Json = Mapping[str, Any]
Box = tuple[float, float, float, float]


@dataclass(frozen=True, slots=True)
class Sewn:
    """A hole as cut: seam and number, its place laid open but still flat, the direction of a slit (a unit number)."""

    seam: str
    index: int
    flat: complex
    axis: complex | None


@dataclass(frozen=True, slots=True)
class Zone:
    """A fold a layer crosses: its tangents on the assembly, and the layer's own flat length between them."""

    fold: int
    x0: float
    x1: float
    length: float

    @property
    def grown(self) -> float:
        """How much longer than on the assembly."""
        return self.length - (self.x1 - self.x0)


@dataclass(frozen=True)
class Layer:
    """One piece as cut, what ``pattern.json`` says of it, its panels, the folds it crosses, the edges it turns in."""

    json: Json
    cut: CutPiece
    panels: tuple[int, ...]
    zones: tuple[Zone, ...]
    rolled: Mapping[str, Rolled] = field(default_factory=dict)

    @property
    def name(self) -> str:
        """Its name."""
        return str(self.json["name"])

    @property
    def part(self) -> str:
        """The part it belongs to."""
        return str(self.json["part"])

    @cached_property
    def holes(self) -> tuple[Sewn, ...]:
        """The holes as cut, in the order of ``pattern.json``. ValueError when there are more or fewer."""
        return tuple(hole for hole, _, is_mate in self._drawn if not is_mate)

    @cached_property
    def mates(self) -> tuple[Sewn, ...]:
        """The holes cut in what is turned in."""
        return tuple(hole for hole, _, is_mate in self._drawn if is_mate)

    @property
    def cut_holes(self) -> tuple[tuple[Sewn, Cut], ...]:
        """Every hole with how it is cut, those in what is turned in too."""
        return tuple((hole, cut) for hole, cut, _ in self._drawn)

    @cached_property
    def passed(self) -> tuple[Sewn, ...]:
        """The holes that stitches go through: as cut, and those pierced once an edge is turned in, as described."""
        later = [hole for hole in self.json["holes"] if hole["shape"] == "none" and self.rolled]
        places = ((hole, self.laid_open(complex(hole["x"], hole["y"]))) for hole in later)
        return (*self.holes, *(Sewn(hole["seam"], hole["index"], at, None) for hole, at in places))

    def stack_at(self, flat: complex) -> float:
        """Leather over a place of the flat layer: as skived there, and with what is turned in over it."""
        left = [float(self.json["thickness"])]
        for skive in self.json["skives"]:
            x0, y0, x1, y1 = skive["box"]
            a, b = self.laid_open(complex(x0, y0)), self.laid_open(complex(x1, y1))
            within = min(a.real, b.real) <= flat.real <= max(a.real, b.real)
            if within and min(a.imag, b.imag) <= flat.imag <= max(a.imag, b.imag):
                left.append(skive["left"])
        x0, y0, x1, y1 = self.box
        off = {"left": flat.real - x0, "right": x1 - flat.real, "bottom": flat.imag - y0, "top": y1 - flat.imag}
        over = [edge for edge, rolled in self.rolled.items() if off[edge] <= rolled.reach + rolled.overlap]
        nearest = min(over, key=lambda edge: off[edge], default=None)
        turned_in = self.rolled[nearest].thickness + self.rolled[nearest].core if nearest else 0.0
        return min(left) + turned_in

    @cached_property
    def _drawn(self) -> tuple[tuple[Sewn, Cut, bool], ...]:
        all_of_it = [(hole, key == "turned_holes") for key in ("holes", "turned_holes") for hole in self.json[key]]
        drawn = [(hole, is_mate) for hole, is_mate in all_of_it if hole["shape"] != "none"]
        described = sorted(drawn, key=lambda each: each[0]["shape"] != "mark")  # marks are cut first
        if len(described) != len(self.cut.holes):
            raise ValueError(f"{self.name}: {len(self.cut.holes)} holes are cut, {len(described)} are described")
        pairs = zip(described, self.cut.holes, strict=True)
        return tuple((self._sewn(hole, cut), cut, is_mate) for (hole, is_mate), cut in pairs)

    @cached_property
    def contour(self) -> Contour:
        """The outline laid open, flat."""
        outline, sign = self.cut.outline, -1.0 if self.mirrored else 1.0
        points = tuple(self.laid_open(at) for at in outline.points)
        return Contour(points, tuple(sign * bulge for bulge in outline.bulges), outline.closed)

    @cached_property
    def box(self) -> Box:
        """x0, y0, x1, y1 of the flat layer once its edges are turned in: the cut edges less what the bends take."""
        x0, y0, x1, y1 = self.contour.box
        left, bottom, right, top = (
            self.rolled[edge].beyond if edge in self.rolled else 0.0 for edge in ("left", "bottom", "right", "top")
        )
        return x0 + left, y0 + bottom, x1 - right, y1 - top

    @cached_property
    def ground(self) -> shapely.Polygon:
        """What the piece covers on the assembly, its edges turned in."""
        places = [self.undeveloped(at) for at in self.contour.flattened()]
        cut = shapely.Polygon([(at.real, at.imag) for at in places])
        if not self.rolled:
            return cut
        within = cut.intersection(shapely.box(*self.laid_box))
        if not isinstance(within, shapely.Polygon):
            raise ValueError(f"{self.name}: falls apart where its edges are turned in")
        return within

    @property
    def laid_box(self) -> Box:
        """The box on the assembly."""
        low, high = self.undeveloped(complex(*self.box[:2])), self.undeveloped(complex(*self.box[2:]))
        return low.real, low.imag, high.real, high.imag

    def bent_thickness(self, fold: int) -> float:
        """Thickness of the layer in a fold: what is left where a skive takes in its whole zone."""
        start = next(z.x0 + sum(b.grown for b in self.zones if b.fold < fold) for z in self.zones if z.fold == fold)
        end = start + next(zone.length for zone in self.zones if zone.fold == fold)
        left = [float(self.json["thickness"])]
        for skive in self.json["skives"]:
            x0, y0, x1, y1 = skive["box"]
            a, b = self.laid_open(complex(x0, y0)), self.laid_open(complex(x1, y1))
            low, high = sorted((a.real, b.real))
            below, above = sorted((a.imag, b.imag))
            if low < start + _AT and high > end - _AT and below < self.box[1] + _AT and above > self.box[3] - _AT:
                left.append(skive["left"])
        return min(left)

    @property
    def mirrored(self) -> bool:
        """Whether it lies on the assembly the other way up than it was cut."""
        a, b, c, d, *_ = self.json["placement"]["onto_piece"]
        return bool(a * d - b * c < 0)

    def laid_open(self, at: complex) -> complex:
        """A point of the piece on the flat layer, whose first panel lies where it lies on the assembly."""
        *_, e, f = self.json["placement"]["onto_piece"]
        return self._turned_back(at - complex(e, f))

    def undeveloped(self, flat: complex, spread: float = 0.0) -> complex:
        """A point of the flat layer on the assembly; the stretch is shared out ``spread`` mm beyond every zone."""
        shift = 0.0
        for zone in self.zones:
            start = zone.x0 + shift - spread
            into = flat.real - start
            if into < 0:
                break
            if into <= zone.length + 2 * spread:
                share = into / (zone.length + 2 * spread)
                return complex(zone.x0 - spread + share * (zone.x1 - zone.x0 + 2 * spread), flat.imag)
            shift += zone.grown
        return complex(flat.real - shift, flat.imag)

    def _turned_back(self, way: complex) -> complex:
        a, b, *_ = self.json["placement"]["onto_piece"]
        way = way / complex(a, b)
        return way.conjugate() if self.mirrored else way

    def _sewn(self, hole: Json, cut: Cut) -> Sewn:
        axis = None
        if cut.kind == "LINE":
            start, end = cut.contour.points
            axis = self._turned_back((end - start) / abs(end - start))
        return Sewn(hole["seam"], hole["index"], self.laid_open(cut.centre), axis)


def cut_layers(json: Json, cuts: Sequence[CutPiece]) -> tuple[Layer, ...]:
    """Every piece that lies flat with what was cut of it, from the outside in. ValueError on another count."""
    number = {panel["name"]: i for i, panel in enumerate(json["panels"])}
    layers = []
    for piece, cut in zip(json["pieces"], cuts, strict=True):
        if "rows" in piece["placement"]:
            continue  # a gusset's strip stands between two walls
        panels = tuple(number[name] for name in piece["placement"]["panels"])
        zones = tuple(_zone(json, fold, piece["part"]) for fold in panels[:-1])
        layers.append(Layer(piece, cut, panels, zones, rolled_edges(json, piece)))
    return tuple(layers)


def _zone(json: Json, fold: int, part: str) -> Zone:
    lengths = {row["part"]: row["flat_length"] for row in json["folds"][fold]["layers"]}
    return Zone(fold, json["folds"][fold]["x0"], json["folds"][fold]["x1"], lengths[part])
