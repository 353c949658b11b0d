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

from tests.outside.cut_layers import Json, Layer
from tests.outside.cut_strips import room_height

__all__ = ["Bend", "bends", "stacks"]

_SLIVER = 0.001  # mm; what is narrower is left of rounding
_POCKETS = ("bank", "pocket")
_NARROW = 0.5  # mm; what lies over no more of what is turned in gives way
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
            _gaps(_reached(json, layers, panels, fold), flanks[fold], fold, crossing)
            if whole
            else _corner_gaps(crossing, fold, declared["angle"])
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
    """The stack with what a layer turns in behind all it is turned over, as far as it rises above the pockets."""
    name = json["panels"][panel]["name"]
    pockets = [p["name"] for p in json["inputs"]["parts"] if p["kind"] in _POCKETS and p["panel"] == name]
    x0, y0, x1, y1 = layer.laid_box
    depths = {edge: rolled.reach + rolled.overlap for edge, rolled in layer.rolled.items()}
    left, bottom, right, top = (depths.get(edge, 0.0) for edge in ("left", "bottom", "right", "top"))
    inner = (x0 + left, y0 + bottom, x1 - right, y1 - top)
    ends = json["panels"][panel]
    here = shapely.box(ends["x0"], y0, ends["x1"], y1)
    frame = shapely.box(x0, y0, x1, y1).difference(shapely.box(*inner)).intersection(here)
    if frame.area < _SLIVER:
        return stack
    own = max(rolled.thickness + rolled.core for rolled in layer.rolled.values())
    peaks = sum(_thickest(json, part, layers) for part in pockets)
    rise = own + _highest_on(json, pockets, layers, frame, (*inner, *here.bounds)) - peaks
    if rise <= 0:
        return stack
    over = {layer.part, *(part for rolled in layer.rolled.values() for part in rolled.over)}
    places = [i for i, (part, _) in enumerate(stack) if part in over]
    at = max(places) + 1 if layer.mirrored else min(places)
    return [*stack[:at], ("", rise), *stack[at:]]


def _highest_on(
    json: Json, parts: Sequence[str], layers: Sequence[Layer], ground: shapely.Geometry, lines: Sequence[float]
) -> float:
    """Most leather and items of all the parts together over one place of a ground, half a millimetre wide or more."""
    grounds = [each for part in parts for each in _grounds(json, part, layers)]
    corners = [layer.undeveloped(at) for layer in layers if layer.part in parts for at in layer.contour.points]
    boxes = [edge for room in json["pockets"] if room["part"] in parts for edge in room["box"]]
    xs = _middles([*(at.real for at in corners), *boxes[::2], *lines[::2]], _NARROW)
    ys = _middles([*(at.imag for at in corners), *boxes[1::2], *lines[1::2]], _NARROW)
    x, y = np.meshgrid(xs, ys)
    covered = [shapely.contains_xy(each, x, y) * thickness for each, thickness in grounds]
    stands = np.sum(covered, axis=0) if covered else np.zeros_like(x)
    return float(np.max(stands[shapely.contains_xy(ground, x, y)], initial=0.0))


def _leather(json: Json, role: str) -> Json:
    return next(leather for leather in json["inputs"]["leathers"] if leather["role"] == role)


def _content(json: Json, room: Json) -> float:
    thickness = next(each["thickness"] for each in json["inputs"]["contents"] if each["as"] == room["content"])
    return float(room["count"] * thickness)


def _thickest(json: Json, part: str, layers: Sequence[Layer]) -> float:
    """Most leather and items of a bank or pocket over any one point of its ground, mm."""
    grounds = _grounds(json, part, layers)
    x, y = np.meshgrid(*(_middles(_ends(grounds, i), _SLIVER) for i in (0, 1)))
    over = sum(shapely.contains_xy(ground, x, y) * thickness for ground, thickness in grounds)
    return float(np.max(over))


def _grounds(json: Json, part: str, layers: Sequence[Layer]) -> list[tuple[shapely.Polygon, float]]:
    """What the pieces and items of a part cover, and how thick they are."""
    rooms = [room for room in json["pockets"] if room["part"] == part]
    share = json["inputs"]["load"]["cards"]
    pieces = [(layer.ground, float(layer.json["thickness"])) for layer in layers if layer.part == part]
    return pieces + [(shapely.box(*room["box"]), _content(json, room) * share) for room in rooms]


def _ends(grounds: Sequence[tuple[shapely.Polygon, float]], axis: int) -> list[float]:
    return [float(at[axis]) for ground, _ in grounds for at in shapely.get_coordinates(ground)]


def _middles(places: Sequence[float], least: float) -> list[float]:
    return [(a + b) / 2 for a, b in pairwise(sorted(set(places))) if b - a > least]


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


def _reached(json: Json, layers: Sequence[Layer], panels: Sequence[Stack], fold: int) -> tuple[Stack, ...]:
    """The stacks without the layers on a flank of the fold that the other flank, laid on it, leaves bare."""
    boxes = [(panel["x0"], panel["x1"]) for panel in json["panels"]]
    kinds = {part["name"]: part["kind"] for part in json["inputs"]["parts"]}
    (left, right), found = boxes[fold : fold + 2], list(panels)
    strips = {fold: (left[1] - (right[1] - right[0]), left[1]), fold + 1: (right[0], right[0] + left[1] - left[0])}
    for panel, (x0, x1) in strips.items():
        strip = shapely.box(x0, -1000.0, x1, 1000.0)
        bare = {part for part, kind in kinds.items() if kind == "layer"}
        bare -= {layer.part for layer in layers if layer.ground.intersection(strip).area > _SLIVER}
        found[panel] = tuple(each for each in panels[panel] if each[0] not in bare)
    return tuple(found)


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
