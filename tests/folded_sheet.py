"""A folded wallet closed in space from what its files say: a stranger to the program, for tests of many kinds.

Every face is a stiff plate in the plane of its neutral fibre. A fold of flat length A bends that fibre round a half
circle of radius A / pi, so closing it turns the flap by 180 degrees about an axis A / pi above the tangent of the
face it hangs on and leaves the flap 2 A / pi above that face. Nothing is told where a face ought to lie: that comes
out, heights included.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from math import cos, pi, sin
from typing import Any

import numpy as np
import numpy.typing as npt
import shapely
from shapely import LineString, Polygon
from shapely.geometry.base import BaseGeometry

__all__ = ["Fold", "Sheet", "sheet"]

Json = Mapping[str, Any]
Array = npt.NDArray[np.float64]
_ANGLES = (*np.geomspace(0.01, 0.3, 16), *np.linspace(0.35, pi - 0.2, 24))
_LONG = 3000.0  # mm
_ON = 0.02  # mm; what a line is drawn longer to part an outline whose arcs are flattened
_TOUCH = 0.6  # mm that plates may overlap
_PLY = 0.3  # mm from face to face of a thin stack


@dataclass(frozen=True)
class Fold:
    """A fold: flap, face it hangs on, its sign, a point of the near tangent, unit vectors along it and out to the
    flap, and the length between the tangents as drawn."""

    face: str
    on: str
    inwards: bool
    at: Array
    along: Array
    out: Array
    length: float
    span: float


@dataclass(frozen=True)
class Sheet:
    """The blank seen from the inside: faces, folds in closing order, thickness, the items of its rooms."""

    faces: Mapping[str, Polygon]
    zones: Mapping[str, Polygon]
    folds: tuple[Fold, ...]
    thickness: float
    neutral: float
    rooms: tuple[Json, ...]
    loads: Mapping[str, float]

    @property
    def base(self) -> str:
        """The face that hangs on nothing."""
        (base,) = self.faces.keys() - {fold.face for fold in self.folds}
        return base

    def moved(self, name: str) -> set[str]:
        """A flap and all that hangs on it."""
        found = {name}
        for _ in self.folds:
            found |= {fold.face for fold in self.folds if fold.on in found}
        return found

    @cached_property
    def poses(self) -> tuple[dict[str, Array], ...]:
        """Where every face is before the first fold and after each: 4 x 4 matrices from the blank into space."""
        states = [{name: np.eye(4) for name in self.faces}]
        for fold in self.folds:
            turn = _half_turn(fold, pi)
            before = states[-1]
            lands = before[fold.on] @ turn @ np.linalg.inv(before[fold.on])
            moved = self.moved(fold.face)
            states.append({name: lands @ pose if name in moved else pose for name, pose in before.items()})
        return tuple(states)

    @property
    def closed(self) -> dict[str, Array]:
        """The closed wallet."""
        return self.poses[-1]

    @cached_property
    def levels(self) -> tuple[dict[str, int], ...]:
        """Which of the faces lies over which before the first fold and after each: what is folded lies outermost."""
        states = [dict.fromkeys(self.faces, 0)]
        for fold, poses in zip(self.folds, self.poses, strict=False):
            before, moved = states[-1], self.moved(fold.face)
            up = 1 if fold.inwards == (poses[fold.on][2, 2] > 0) else -1
            top = max(up * level for name, level in before.items() if name not in moved)
            low = max(up * before[name] for name in moved)
            turned = {name: up * (top + 1 + low - up * before[name]) for name in moved}
            states.append({**before, **turned})
        return tuple(states)

    @property
    def order(self) -> tuple[str, ...]:
        """The faces of the closed wallet from the lowest up."""
        return tuple(sorted(self.faces, key=self.levels[-1].__getitem__))

    def place(self, face: str, x: float, y: float) -> Array:
        """Where a point of the blank that belongs to a face lies in the closed wallet: x, y, z."""
        return np.asarray((self.closed[face] @ np.array([x, y, 0.0, 1.0]))[:3])

    def ground(self, face: str, state: int = -1) -> Polygon:
        """What a face covers, seen from above."""
        return _plan(self.faces[face], self.poses[state][face])

    def height(self, face: str, state: int = -1) -> float:
        """The height of the fibre of a face."""
        return float(self.poses[state][face][2, 3])

    def blocked(self) -> dict[str, set[tuple[str, str]]]:
        """For each fold by its flap, the plates that run through each other on the way: (moved, standing)."""
        return {fold.face: self._met(number, fold) for number, fold in enumerate(self.folds)}

    def slack(self, fold: Fold, depth: float, rim: float) -> float:
        """How far a closed flap lies above what is pressed between it and the face it hangs on, beside its fold, mm.

        0: it rests on it; below 0: it would have to lie inside of it. Items lie anywhere on their face. Leather that
        items on either side of it press upon counts wherever it lies.
        """
        down, up = sorted((fold.on, fold.face), key=self.order.index)
        strip = self._strip(fold, depth)
        plates = {
            name: (self.ground(name).buffer(-rim), self.thickness)
            for name in self.faces
            if self.order.index(down) < self.order.index(name) < self.order.index(up)
        }
        loads = self._loads(self.order.index(down), self.order.index(up))
        pinched = None
        if len(loads) > 1:
            levels = [level for _, level, _ in loads]
            low, high = loads[levels.index(min(levels))], loads[levels.index(max(levels))]
            inner = {n: p for n, p in plates.items() if low[1] < self.order.index(n) < high[1]}
            pinched = low[0].intersection(high[0]).union(strip)
            plates = {n: p for n, p in plates.items() if n not in inner}
            stack = _highest(list(inner.values()), pinched)
            stack += sum(t for _, level, t in loads if low[1] < level < high[1])
            loads = [low, high]
        else:
            stack = 0.0
        beside = [*plates.values(), *((ground.buffer(-rim), t) for ground, _, t in loads)]
        stack += _highest(beside, strip)
        return abs(self.height(up) - self.height(down)) - 2 * self.neutral * self.thickness - stack

    def _loads(self, low: float, high: float) -> list[tuple[Polygon, float, float]]:
        """Items between two levels: where they may lie, a level among the faces, how thick."""
        found = []
        for room in self.rooms:
            on, under = room["between"]
            step = 0.5 if self.order.index(under) > self.order.index(on) else -0.5
            level, thickness = self.order.index(on) + step, self.loads[room["name"]]
            if low < level < high and thickness > 0:
                found.append((self.ground(on), level, thickness))
        return found

    def _strip(self, fold: Fold, depth: float) -> Polygon:
        a, b = fold.at, fold.at + fold.along * fold.span
        inwards = fold.out * -depth
        return _plan(Polygon([a, b, b + inwards, a + inwards]), self.closed[fold.on])

    def _met(self, number: int, fold: Fold) -> set[tuple[str, str]]:
        moved = self.moved(fold.face)
        plates = {name: self._plates(name, number, fold) for name in self.faces}
        radius = _PLY / 2 * abs(self.levels[number + 1][fold.face] - self.levels[number + 1][fold.on])
        found = set()
        for name in moved:
            for other in self.faces.keys() - moved:
                if any(
                    _cross(plate, standing, radius, angle)
                    for plate in plates[name]
                    for standing in plates[other]
                    for angle in _ANGLES
                ):
                    found.add((name, other))
        return found

    def _plates(self, name: str, number: int, fold: Fold) -> list[tuple[Polygon, float]]:
        """A face, and the fold it hangs by while that is open, in the frame of a hinge: outline and height.

        Soft leather rises to lie on what it meets away from its folds, so heights are those of a stack of thin plies.
        """
        frame: Array = np.asarray(_hinge_frame(fold, self.poses[number][fold.on]))
        pose = np.linalg.inv(frame) @ self.poses[number][name]
        height = _PLY * (self.levels[number][name] - self.levels[number][fold.on]) * float(frame[2, 2])
        grounds = [self.faces[name]]
        if name in self.zones and name not in {each.face for each in self.folds[:number]}:
            grounds.append(self.zones[name])
        return [(_plan(ground, pose), height) for ground in grounds]


def sheet(json: Json, outline: Sequence[tuple[float, float]]) -> Sheet:
    """The sheet of a ``pattern.json``, cut along an outline given in the frame of its piece."""
    piece, folded = json["pieces"][0], json["folded"]
    back = _to_blank(piece["placement"]["onto_piece"])
    blank = Polygon([back(x, y) for x, y in outline])
    tangents = [[back(x, y) for x, y, _ in line] for line in piece["fold_lines"]]
    fields = _parted(blank, tangents)
    faces, zones, folds = {}, {}, []
    for hinge, near, far in zip(folded["hinges"], tangents[::2], tangents[1::2], strict=True):
        near_mid, far_mid = (LineString(line).interpolate(0.5, normalized=True) for line in (near, far))
        beside_near = [field for field in fields if field.distance(near_mid) < 1e-6]
        (zone,) = (field for field in beside_near if field.distance(far_mid) < 1e-6)
        (faces[hinge["on"]],) = (field for field in beside_near if field is not zone)
        (faces[hinge["face"]],) = (f for f in fields if f.distance(far_mid) < 1e-6 and f is not zone)
        zones[hinge["face"]] = zone
        folds.append(_fold(hinge, np.array(near), np.array(far)))
    items = {content["as"]: content["thickness"] for content in json["inputs"]["contents"]}
    share = json["inputs"]["load"]["cards"]
    loads = {room["name"]: room["count"] * share * items[room["content"]] for room in folded["rooms"]}
    neutral = next(each["neutral"] for each in json["inputs"]["leathers"] if each["role"] == piece["leather"])
    return Sheet(faces, zones, tuple(folds), piece["thickness"], neutral, tuple(folded["rooms"]), loads)


def _to_blank(matrix: Sequence[float]) -> Any:
    a, b, c, d, e, f = matrix
    inverse = np.linalg.inv(np.array([[a, c], [b, d]]))
    return lambda x, y: tuple(inverse @ np.array([x - e, y - f]))


def _parted(blank: Polygon, tangents: Sequence[Sequence[tuple[float, float]]]) -> list[Polygon]:
    """The fields that the tangents, a little longer than drawn, part the blank into."""
    lines = [_longer(np.array(line), _ON) for line in tangents]
    edges = shapely.union_all([blank.exterior, *lines])
    found = [field for field in shapely.get_parts(shapely.polygonize([edges])) if field.area > 1e-3]
    return [field for field in found if blank.contains(field.representative_point())]


def _longer(line: Array, by: float) -> LineString:
    way = (line[1] - line[0]) / np.linalg.norm(line[1] - line[0])
    return LineString([line[0] - way * by, line[1] + way * by])


def _fold(hinge: Json, near: Array, far: Array) -> Fold:
    span = float(np.linalg.norm(near[1] - near[0]))
    along = (near[1] - near[0]) / span
    out = np.array([along[1], -along[0]])
    length = float(np.mean((far - near[0]) @ out))
    if length < 0:
        out, length = -out, -length
    return Fold(hinge["face"], hinge["on"], hinge["angle"] > 0, near[0], along, out, length, span)


def _hinge_frame(fold: Fold, pose: Array) -> Array:
    """From the hinge into space: x out to the flap, y along the hinge, z to the side the flap is folded to."""
    up = 1.0 if fold.inwards else -1.0
    frame = np.eye(4)
    frame[:2, 0], frame[:2, 1], frame[2, 2], frame[:2, 3] = fold.out, fold.along, up, fold.at
    return np.asarray(pose @ frame)


def _half_turn(fold: Fold, angle: float) -> Array:
    """The flap drawn to its hinge by the length of the bend, then turned about the bend's middle."""
    frame, radius = _hinge_frame(fold, np.eye(4)), fold.length / pi
    draw, turn, lift = np.eye(4), np.eye(4), np.eye(4)
    draw[0, 3], lift[2, 3] = -fold.length, radius
    turn[0, 0], turn[0, 2], turn[2, 0], turn[2, 2] = cos(angle), -sin(angle), sin(angle), cos(angle)
    return np.asarray(frame @ lift @ turn @ np.linalg.inv(lift) @ draw @ np.linalg.inv(frame))


def _plan(ground: Polygon, pose: Array) -> Polygon:
    a = pose
    return shapely.affinity.affine_transform(ground, [a[0, 0], a[0, 1], a[1, 0], a[1, 1], a[0, 3], a[1, 3]])


def _highest(plates: Sequence[tuple[BaseGeometry, float]], within: BaseGeometry) -> float:
    """The thickest stack over any place in ``within`` that is wider than a tenth of a millimetre."""
    here = [(ground.intersection(within), t) for ground, t in plates]
    here = [(ground, t) for ground, t in here if not ground.buffer(-0.05).is_empty]
    if not here:
        return 0.0
    rims = shapely.union_all([ground.boundary for ground, _ in here])
    spots = [
        f.representative_point()
        for f in shapely.get_parts(shapely.polygonize([rims]))
        if not f.buffer(-0.05).is_empty
    ]
    return max((sum(t for ground, t in here if ground.contains(spot)) for spot in spots), default=0.0)


def _cross(plate: tuple[Polygon, float], standing: tuple[Polygon, float], radius: float, angle: float) -> bool:
    """Whether a plate, swung up by ``angle`` about an axis ``radius`` over the hinge, runs through a standing one.

    Seen along the hinge each is a line; they meet in one point, and over it in a stretch along the hinge.
    """
    ground, height = plate
    other, level = standing
    u = (level - radius - (height - radius) * cos(angle)) / sin(angle)
    x = u * cos(angle) - (height - radius) * sin(angle)
    mine, theirs = _along(ground, u), _along(other, x)
    return bool(mine.intersection(theirs).length > _TOUCH) if not mine.is_empty and not theirs.is_empty else False


def _along(ground: Polygon, x: float) -> BaseGeometry:
    """The stretches of a plate on the line x = const, as lines on the axis of y."""
    cut = ground.buffer(-_TOUCH / 2).intersection(LineString([(x, -_LONG), (x, _LONG)]))
    return shapely.affinity.translate(cut, -x, 0.0)
