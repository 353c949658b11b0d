"""Pieces as cut, laid open again: mirror, turn and shift taken back, every fold zone drawn in from its own length.

Knows the cutting file and ``pattern.json`` and nothing of the program that wrote them. Points are complex numbers
x + iy in mm, as in ``dxf_reading``; panels and folds are counted from 0.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any

import shapely

from tests.outside.dxf_reading import Contour, Cut, CutPiece

__all__ = ["Box", "Json", "Layer", "Sewn", "cut_layers"]

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
    """One piece as cut, what ``pattern.json`` says of it, the panels it covers and the folds it crosses."""

    json: Json
    cut: CutPiece
    panels: tuple[int, ...]
    zones: tuple[Zone, ...]

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
        drawn = [hole for hole in self.json["holes"] if hole["shape"] != "none"]
        described = sorted(drawn, key=lambda hole: hole["shape"] != "mark")  # marks are cut first
        if len(described) != len(self.cut.holes):
            raise ValueError(f"{self.name}: {len(self.cut.holes)} holes are cut, {len(described)} are described")
        return tuple(self._sewn(hole, cut) for hole, cut in zip(described, self.cut.holes, strict=True))

    @cached_property
    def contour(self) -> Contour:
        """The outline laid open, flat."""
        outline, sign = self.cut.outline, -1.0 if self.mirrored else 1.0
        points = tuple(self.laid_open(at) for at in outline.points)
        return Contour(points, tuple(sign * bulge for bulge in outline.bulges), outline.closed)

    @cached_property
    def ground(self) -> shapely.Polygon:
        """What the piece covers on the assembly."""
        places = [self.undeveloped(at) for at in self.contour.flattened()]
        return shapely.Polygon([(at.real, at.imag) for at in places])

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
        layers.append(Layer(piece, cut, panels, zones))
    return tuple(layers)


def _zone(json: Json, fold: int, part: str) -> Zone:
    lengths = {row["part"]: row["flat_length"] for row in json["folds"][fold]["layers"]}
    return Zone(fold, json["folds"][fold]["x0"], json["folds"][fold]["x1"], lengths[part])
