"""The wallet at one moment between laid open (0) and closed (1): where its plates stand, how its layers bend.

The layer that bends sharpest follows a circle that leaves one plate and meets the other smoothly; that places the
plates. Every other layer is an arc of its own flat length between the two plates. One that is longer than the circle
round the sharpest bows outwards, as the shell does laid open; one that is shorter lies on that circle and is drawn
along its plate by what it lacks.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from patternforge.errors import GeometryError
from patternforge.fit.posed.model import Crossing, Hinge, Model, Place, Track
from patternforge.geometry.band import half_angle

__all__ = ["Arc", "Pose", "Turn", "bent_place", "flat_place", "pose", "standing"]

_STRAIGHT = 1e-9
_END = 0.005  # mm; nearer than this to a tangent a layer looks the way of the plate there


@dataclass(frozen=True, slots=True)
class Turn:
    """Where a plate's tangent stands, ``x`` mm across and ``z`` above its parent's; its turn in radians."""

    x: float
    z: float
    angle: float


@dataclass(frozen=True, slots=True)
class Arc:
    """A track: it leaves its parent ``heading`` so many radians up and turns by ``curvature`` radians a mm.

    ``length`` is what the way from plate to plate takes up. ``before`` and ``after`` are how far the layer is drawn
    towards plate 0 ahead of the hinge and beyond it, mm.
    """

    heading: float
    curvature: float
    length: float
    before: float
    after: float


@dataclass(frozen=True, slots=True)
class Pose:
    """The turn of every plate (that of plate 0 is none) and the arc of every track."""

    turns: tuple[Turn, ...]
    arcs: tuple[Arc, ...]


def pose(model: Model, share: float) -> Pose:
    """The wallet at a ``share`` of its way from laid open (0) to closed (1)."""
    turns = tuple(_turn(plate.hinge, share) if plate.hinge else Turn(0.0, 0.0, 0.0) for plate in model.plates)
    drawn: list[tuple[float, float]] = []
    for crossing in model.crossings:
        before = drawn[crossing.before][1] if crossing.before >= 0 else 0.0
        drawn.append((before, before + _slip(model, crossing, turns[crossing.plate])))
    arcs = (_arc(model, track, turns, drawn[track.crossing]) for track in model.tracks)
    return Pose(turns, tuple(arcs))


def _turn(hinge: Hinge, share: float) -> Turn:
    part = min(max((share - hinge.start) / (hinge.end - hinge.start), 0.0), 1.0)
    angle = math.radians(hinge.angle) * part
    x, z = _smooth(hinge, angle)
    if hinge.closed is not None:
        # What holds the plates further apart than the bend, or lets them closer, comes in as they close.
        full = math.radians(hinge.angle)
        end, come = _smooth(hinge, full), (math.sin(angle / 2) / math.sin(full / 2)) ** 2
        x, z = x + come * (hinge.closed[0] - end[0]), z + come * (hinge.closed[1] - end[1])
    return Turn(x, z, angle)


def _smooth(hinge: Hinge, angle: float) -> tuple[float, float]:
    """Where the tangent stands when the sharpest fibre, ``zone`` mm long, turns evenly by an angle."""
    half = angle / 2
    chord = hinge.zone if abs(angle) < _STRAIGHT else 2 * hinge.zone / angle * math.sin(half)
    x, z = chord * math.cos(half), chord * math.sin(half)
    return x + hinge.high * math.sin(angle), z + hinge.low - hinge.high * math.cos(angle)


def _slip(model: Model, crossing: Crossing, turn: Turn) -> float:
    """How much shorter a layer is than its way through a hinge, mm; 0 where it is not."""
    hinge = model.plates[crossing.plate].hinge
    if hinge is None or not crossing.slips:
        return 0.0
    tracks = [model.tracks[number] for number in crossing.tracks]
    outside = 1.0 if hinge.angle > 0 else -1.0
    # The parts of a layer that lie deepest count; the others find room on a flatter arc.
    level = (hinge.low + hinge.high) / 2
    round_it = min(outside * (level - (track.low + track.high) / 2) for track in tracks)
    smooth = hinge.zone + abs(turn.angle) * round_it
    taut = max(math.hypot(*_chord(track, turn)) for track in tracks)
    return max(smooth, taut, crossing.length) - crossing.length


def _chord(track: Track, turn: Turn) -> tuple[float, float]:
    return (
        turn.x - track.high * math.sin(turn.angle),
        turn.z + track.high * math.cos(turn.angle) - track.low,
    )


def _arc(model: Model, track: Track, turns: Sequence[Turn], drawn: tuple[float, float]) -> Arc:
    crossing = model.crossings[track.crossing]
    hinge = model.plates[crossing.plate].hinge
    side = 1.0 if hinge and hinge.angle > 0 else -1.0
    x, z = _chord(track, turns[crossing.plate])
    chord = math.hypot(x, z)
    length = max(crossing.length + drawn[1] - drawn[0], chord)
    bow = side * half_angle(chord, length)
    return Arc(math.atan2(z, x) - bow, 2 * bow / length, length, *drawn)


def flat_place(model: Model, now: Pose, plate: int, track: int, at: Place) -> Place:
    """Where a place of a flat cell stands, in the space of plate 0."""
    x, y, z = at
    hinge = model.plates[plate].hinge
    if hinge is None:
        return at
    if track >= 0 and now.arcs[track].after > 0:
        arc = now.arcs[track]
        across = (x - hinge.at.x) * hinge.way.x + (y - hinge.at.y) * hinge.way.y - hinge.zone
        if across < arc.after:
            along = (y - hinge.at.y) * hinge.way.x - (x - hinge.at.x) * hinge.way.y
            fibre = model.tracks[track].high
            return _on_track(model, now, track, arc.length + across - arc.after, along, z - fibre)
        x, y = x - arc.after * hinge.way.x, y - arc.after * hinge.way.y
    return _lifted(model, now, plate, (x, y, z))


def bent_place(model: Model, now: Pose, track: int, at: Place) -> Place:
    """Where a place of a bent cell stands, in the space of plate 0."""
    return _on_track(model, now, track, at[0] - now.arcs[track].before, at[1], at[2])


def _on_track(model: Model, now: Pose, track: int, along: float, beside: float, above: float) -> Place:
    """The place so far along a track from its parent's tangent, along the hinge, and above the fibre."""
    arc, plate = now.arcs[track], model.crossings[model.tracks[track].crossing].plate
    hinge = model.plates[plate].hinge
    if hinge is None:
        raise GeometryError(f"no layer bends at plate {plate}, which hangs on none")
    x, z, heading = _along(arc, now.turns[plate].angle, along)
    x, z = x - above * math.sin(heading), model.tracks[track].low + z + above * math.cos(heading)
    px = hinge.at.x + hinge.way.x * x - hinge.way.y * beside
    py = hinge.at.y + hinge.way.y * x + hinge.way.x * beside
    return _lifted(model, now, hinge.parent, (px, py, z))


def _along(arc: Arc, turned: float, along: float) -> tuple[float, float, float]:
    """Across and above the start of an arc, and the direction there; its ends look the way of the plates."""
    if along < _END:
        return along, 0.0, 0.0
    end = arc.heading + arc.curvature * along
    if abs(arc.curvature) < _STRAIGHT:
        x, z = along * math.cos(arc.heading), along * math.sin(arc.heading)
    else:
        x = (math.sin(end) - math.sin(arc.heading)) / arc.curvature
        z = (math.cos(arc.heading) - math.cos(end)) / arc.curvature
    return x, z, turned if along > arc.length - _END else end


def _lifted(model: Model, now: Pose, plate: int, at: Place) -> Place:
    """A place of a plate in the space of plate 0."""
    hinge = model.plates[plate].hinge
    while hinge is not None:
        turn, (x, y, z) = now.turns[plate], at
        dx, dy = x - hinge.at.x, y - hinge.at.y
        across, beside = dx * hinge.way.x + dy * hinge.way.y - hinge.zone, dy * hinge.way.x - dx * hinge.way.y
        cosine, sine = math.cos(turn.angle), math.sin(turn.angle)
        out = turn.x + across * cosine - z * sine
        at = (
            hinge.at.x + hinge.way.x * out - hinge.way.y * beside,
            hinge.at.y + hinge.way.y * out + hinge.way.x * beside,
            turn.z + across * sine + z * cosine,
        )
        plate = hinge.parent
        hinge = model.plates[plate].hinge
    return at


def standing(model: Model, now: Pose, at: Place) -> Place:
    """A place in the space of plate 0 as seen from the plate that stays where it is, a turned row on its side."""
    o, *axes = (_lifted(model, now, model.still, p) for p in ((0, 0, 0), (1, 0, 0), (0, 1, 0), (0, 0, 1)))
    off = [a - b for a, b in zip(at, o, strict=True)]
    x, y, z = (sum((e - b) * v for e, b, v in zip(axis, o, off, strict=True)) for axis in axes)
    return (y, -x, z) if model.turned else (x, y, z)
