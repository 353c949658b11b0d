"""What lies on what in the closed wallet and how sharply every layer bends, from ``pattern.json`` alone.

The physics: the neutral fibre of a layer keeps its length. Closed by 180 degrees it runs a half circle between the
heights it has in the stack on either flank, so its radius is half the distance of these heights; at a corner it runs
an arc round the crossing layers inside it. A ring or bar in a fold lies inside all of them. A layer too stiff for its
gap keeps a hollow, and the layers round it go round that hollow too. How thick a part is, is measured on its pieces:
most leather and contents over any one point.
Panels and folds are counted from 0.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import radians

import numpy as np
import shapely

from tests.outside.cut_layers import Box, Json, Layer
from tests.outside.cut_strips import room_height

__all__ = ["Bend", "bends", "stacks"]

_SLIVER = 0.001  # mm; what is narrower is left of rounding
_POCKETS = ("bank", "pocket")
Stack = tuple[tuple[str, float], ...]  # parts and thicknesses from the outside in; contents have no part


@dataclass(frozen=True, slots=True)
class Bend:
    """A layer in a closed fold: the length its neutral fibre takes, and the least that any layer takes there."""

    length: float
    innermost: float


@dataclass(frozen=True, slots=True)
class _Standing:
    """A panel as it lies in a closed stack."""

    panel: int
    inside_up: bool


def bends(json: Json, layers: Sequence[Layer]) -> tuple[dict[str, Bend], ...]:
    """For each fold, the bend of every part that crosses it."""
    panels = tuple(stacks(json, layers, panel) for panel in range(len(json["panels"])))
    flanks = _flank_to_flank([fold["angle"] for fold in json["folds"]], json["inputs"]["body"]["closing"])
    found = []
    for fold, declared in enumerate(json["folds"]):
        crossing = [layer for layer in layers if {fold, fold + 1} <= set(layer.panels)]
        whole = abs(declared["angle"]) == 180
        gaps = (
            _gaps(panels, flanks[fold], fold, crossing) if whole else _corner_gaps(crossing, fold, declared["angle"])
        )
        core = json["inputs"]["body"]["folds"][fold]["around"]
        gaps = {part: gap + core for part, gap in gaps.items()}
        found.append(_nested(json, crossing, gaps, fold, radians(abs(declared["angle"]))))
    return tuple(found)


def stacks(json: Json, layers: Sequence[Layer], panel: int) -> Stack:
    """What lies over a panel from the outside in, as loaded: leathers under their part, contents under no name."""
    name = json["panels"][panel]["name"]
    order = [json["panels"][i]["name"] for i in range(len(json["panels"]))]
    found: list[tuple[str, float]] = []
    for part in json["inputs"]["parts"]:
        if part["kind"] == "loose":
            if part["panel"] == name:
                found.append(("", _content(json, part) * json["inputs"]["load"]["loose"]))
        elif part["kind"] == "gusset":
            if part["panel"] == name:
                found.append(("", room_height(json, part["name"])))
        elif part["kind"] != "layer":
            if part["panel"] == name:
                found.append((part["name"], _thickest(json, part["name"], layers)))
        elif order.index(part["first"]) <= panel <= order.index(part["last"]):
            rooms = [room for room in json["pockets"] if room["part"] == part["name"] and name in room["panels"]]
            found += [("", _content(json, room) * json["inputs"]["load"]["notes"]) for room in rooms]
            found.append((part["name"], _leather(json, part["leather"])["drafted_thickness"]))
    for layer in layers:
        if layer.rolled and panel in layer.panels:
            found = _with_turned_in(json, layers, layer, panel, found)
    return tuple(found)


def _with_turned_in(
    json: Json, layers: Sequence[Layer], layer: Layer, panel: int, stack: list[tuple[str, float]]
) -> list[tuple[str, float]]:
    """The stack with what a layer turns in behind all it is turned over, unless every pocket is highest beside it."""
    name = json["panels"][panel]["name"]
    pockets = [p["name"] for p in json["inputs"]["parts"] if p["kind"] in _POCKETS and p["panel"] == name]
    x0, y0, x1, y1 = layer.laid_box
    depths = {edge: rolled.reach + rolled.overlap for edge, rolled in layer.rolled.items()}
    left, bottom, right, top = (depths.get(edge, 0.0) for edge in ("left", "bottom", "right", "top"))
    inner = (x0 + left, y0 + bottom, x1 - right, y1 - top)
    frame = shapely.box(x0, y0, x1, y1).difference(shapely.box(*inner))
    ends = json["panels"][panel]
    frame = frame.intersection(shapely.box(ends["x0"], y0, ends["x1"], y1))
    under = [bool(shapely.contains_xy(frame, *_highest_places(json, part, layers, inner)).any()) for part in pockets]
    if frame.area < _SLIVER or not all(under):
        return stack
    over = {layer.part, *(part for rolled in layer.rolled.values() for part in rolled.over)}
    places = [i for i, (part, _) in enumerate(stack) if part in over]
    at = max(places) + 1 if layer.mirrored else min(places)
    thickness = max(rolled.thickness + rolled.core for rolled in layer.rolled.values())
    return [*stack[:at], ("", thickness), *stack[at:]]


def _highest_places(json: Json, part: str, layers: Sequence[Layer], lines: Box) -> tuple[np.ndarray, np.ndarray]:
    """Where most leather and items of a part lie over one another, asked on either side of some lines too."""
    x, y, over = _heights_of(json, part, layers, lines)
    highest = over > np.max(over) - 1e-9
    return x[highest], y[highest]


def _leather(json: Json, role: str) -> Json:
    return next(leather for leather in json["inputs"]["leathers"] if leather["role"] == role)


def _content(json: Json, room: Json) -> float:
    thickness = next(each["thickness"] for each in json["inputs"]["contents"] if each["as"] == room["content"])
    return float(room["count"] * thickness)


def _thickest(json: Json, part: str, layers: Sequence[Layer]) -> float:
    """Most leather and items of a bank or pocket over any one point of its ground, mm."""
    return float(np.max(_heights_of(json, part, layers)[2]))


def _heights_of(
    json: Json, part: str, layers: Sequence[Layer], lines: Box | tuple[()] = ()
) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Leather and items of a part over a place in each field that their edges and some lines part its ground into."""
    pieces = [layer for layer in layers if layer.part == part]
    rooms = [room for room in json["pockets"] if room["part"] == part]
    share = json["inputs"]["load"]["cards"]
    grounds = [(layer.ground, layer.json["thickness"]) for layer in pieces]
    grounds += [(shapely.box(*room["box"]), _content(json, room) * share) for room in rooms]
    boxes: list[Box] = [ground.bounds for ground, _ in grounds]
    corners = [point for layer in pieces for point in shapely.get_coordinates(layer.ground).tolist()]
    xs, ys = (
        _middles([*(box[i] for box in boxes), *(box[i + 2] for box in boxes), *(p[i] for p in corners), *lines[i::2]])
        for i in (0, 1)
    )
    x, y = np.meshgrid(xs, ys)
    covered = [shapely.contains_xy(ground, x, y) * thickness for ground, thickness in grounds]
    return x, y, np.sum(covered, axis=0)


def _middles(places: Sequence[float]) -> list[float]:
    return [(a + b) / 2 for a, b in pairwise(sorted(set(places))) if b - a > _SLIVER]


def _flank_to_flank(angles: Sequence[float], closing: Sequence[int]) -> dict[int, list[_Standing]]:
    """For each whole fold, the panels from one flank to the other, bottom to top, as they lie once it is closed."""
    groups = [[_Standing(panel, True)] for panel in range(len(angles) + 1)]
    found: dict[int, list[_Standing]] = {}
    for fold in (number - 1 for number in closing):
        if abs(angles[fold]) < 180:
            continue
        left, right = (next(g for g in groups if any(s.panel == p for s in g)) for p in (fold, fold + 1))
        over = _turned_over(_lying_inside_up(right, fold + 1))
        below = _lying_inside_up(left, fold)
        merged = [*below, *over] if angles[fold] > 0 else [*over, *below]
        groups = [g for g in groups if g is not left and g is not right] + [merged]
        at = sorted(i for i, standing in enumerate(merged) if standing.panel in (fold, fold + 1))
        found[fold] = merged[at[0] : at[1] + 1]
    return found


def _lying_inside_up(group: list[_Standing], panel: int) -> list[_Standing]:
    return group if _Standing(panel, True) in group else _turned_over(group)


def _turned_over(group: Sequence[_Standing]) -> list[_Standing]:
    return [_Standing(standing.panel, not standing.inside_up) for standing in reversed(group)]


def _gaps(
    panels: Sequence[Stack], standing: Sequence[_Standing], fold: int, crossing: Sequence[Layer]
) -> dict[str, float]:
    """Room between the facing sides of each layer's two flanks, read from heights in the closed stack."""
    heights = {(panel, part): (low, high) for panel, part, low, high in _heights(panels, standing)}
    gaps = {}
    for layer in crossing:
        lower, upper = sorted(heights[panel, layer.part] for panel in (fold, fold + 1))
        gaps[layer.part] = upper[0] - lower[1]
    return gaps


def _heights(panels: Sequence[Stack], standing: Sequence[_Standing]) -> Iterator[tuple[int, str, float, float]]:
    z = 0.0
    for each in standing:
        stack = panels[each.panel] if each.inside_up else panels[each.panel][::-1]
        for part, thickness in stack:
            yield each.panel, part, z, z + thickness
            z += thickness


def _corner_gaps(crossing: Sequence[Layer], fold: int, angle: float) -> dict[str, float]:
    """Nothing but crossing layers stands in a corner: each bends round those inside it, which lie on both flanks."""
    gaps, inside = {}, 0.0
    for layer in reversed(crossing) if angle > 0 else crossing:
        gaps[layer.part] = 2 * inside
        inside += layer.bent_thickness(fold)
    return gaps


def _nested(
    json: Json, crossing: Sequence[Layer], gaps: dict[str, float], fold: int, angle: float
) -> dict[str, Bend]:
    lengths, hollow = {}, 0.0
    for layer in sorted(crossing, key=lambda each: gaps[each.part]):
        leather, t = _leather(json, layer.json["leather"]), layer.bent_thickness(fold)
        half = gaps[layer.part] / 2
        radius = max(half + hollow, leather["min_radius"] * t)
        hollow = radius - half
        lengths[layer.part] = angle * (radius + leather["neutral"] * t)
    return {part: Bend(length, min(lengths.values())) for part, length in lengths.items()}
