"""Edges turned in, read from ``pattern.json``: how far beyond its finished line an edge must be cut.

The physics: the leather's neutral fibre keeps its length. It runs flat to where the bend begins, half a circle round
what the edge encloses, and flat again. The outermost of the bend, one inside radius and one thickness beyond its
beginning, is the finished edge. How thick the leather is there, is read off the boxes the piece is skived in.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from math import pi
from typing import Any

__all__ = ["Rolled", "rolled_edges"]

Json = Mapping[str, Any]
_AT = 1e-6
SIDES = {"left": -1 + 0j, "right": 1 + 0j, "bottom": -1j, "top": 1j}


@dataclass(frozen=True, slots=True)
class Rolled:
    """A turned edge: own thickness, inside radius, flat length of the bend, flat overlap; thickness of any core."""

    thickness: float
    radius: float
    arc: float
    overlap: float
    core: float
    over: tuple[str, ...]

    @property
    def reach(self) -> float:
        """Finished edge to where the bend begins."""
        return self.radius + self.thickness

    @property
    def beyond(self) -> float:
        """Finished line to cut edge on the flat piece."""
        return self.arc - self.reach + self.overlap

    def folded(self, beyond: float) -> float:
        """How far inside the finished edge lies what is cut so far beyond its line, once it is folded over."""
        return self.reach + (beyond + self.reach - self.arc)


def rolled_edges(json: Json, piece: Json) -> dict[str, Rolled]:
    """The turned edges of a piece by the edge of the assembly."""
    inputs = json["inputs"]
    part = next(each for each in inputs["parts"] if each["name"] == piece["part"])
    thickness = {leather["role"]: leather["drafted_thickness"] for leather in inputs["leathers"]}
    leather = next(each for each in inputs["leathers"] if each["role"] == piece["leather"])
    of_part = {each["name"]: each["leather"] for each in inputs["parts"] if "leather" in each}
    found = {}
    for group in part.get("turned", ()):
        enclosed = group["core"] + sum(thickness[of_part[name]] for name in group["over"])
        for edge in group["edges"]:
            t = _thickness_at(piece, edge)
            radius = max(enclosed / 2, leather["min_radius"] * t)
            arc = pi * (radius + leather["neutral"] * t)
            found[edge] = Rolled(t, radius, arc, group["overlap"], group["core"], tuple(group["over"]))
    return found


def _thickness_at(piece: Json, edge: str) -> float:
    """What is left of the leather along the whole of a cut edge."""
    a, b, c, d, *_ = piece["placement"]["onto_piece"]
    way = SIDES[edge]
    drawn = complex(a * way.real + c * way.imag, b * way.real + d * way.imag)
    whole = (0.0, 0.0, piece["width"], piece["height"])
    left = [piece["thickness"]]
    for skive in piece["skives"]:
        box = skive["box"]
        if _lies_along(box, whole, drawn):
            left.append(skive["left"])
    return float(min(left))


def _lies_along(box: list[float], whole: tuple[float, ...], drawn: complex) -> bool:
    """Whether a box reaches the side of the whole that lies that way, and is as long as that side."""
    across = abs(drawn.real) > 0.5
    at = (2 if drawn.real > 0 else 0) if across else (3 if drawn.imag > 0 else 1)
    low, high = (1, 3) if across else (0, 2)
    return abs(box[at] - whole[at]) < _AT and box[low] < whole[low] + _AT and box[high] > whole[high] - _AT
