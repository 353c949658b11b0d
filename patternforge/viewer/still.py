"""A still picture of a posed wallet, for where no script runs: what is seen from above, from the lowest up."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from patternforge.fit.posed.model import BentCell, FlatCell, Ground, Model, Place
from patternforge.fit.posed.pose import Pose, bent_place, flat_place, pose, standing
from patternforge.units import mm
from patternforge.viewer.tones import Tone

__all__ = ["still_svg"]

_ROOM = 4.0  # mm round the wallet


@dataclass(frozen=True, slots=True)
class _Top:
    """The upper side of a prism on the picture: outlines, tone, and what it lies above."""

    rings: tuple[tuple[tuple[float, float], ...], ...]
    tone: Tone
    above: tuple[int, float]


def still_svg(model: Model, tones: Mapping[str, Tone], look: Sequence[float], share: float) -> str:
    """The picture as SVG text; ``look`` as the page's: turned about z, y and x by so many radians."""
    tops = sorted(_tops(model, tones, look, pose(model, share)), key=lambda top: top.above)
    points = [point for top in tops for ring in top.rings for point in ring]
    x0, y0 = (min(p[i] for p in points) - _ROOM for i in (0, 1))
    x1, y1 = (max(p[i] for p in points) + _ROOM for i in (0, 1))
    shapes = "".join(_shape(top, x0, y1) for top in tops)
    return (
        f'<svg viewBox="0 0 {mm(x1 - x0, 1)} {mm(y1 - y0, 1)}" role="img" aria-label="The wallet partly open" '
        f'stroke="#1c1a17" stroke-width="0.2" stroke-linejoin="round">{shapes}</svg>'
    )


def _shape(top: _Top, left: float, upper: float) -> str:
    ways = (" ".join(f"{mm(x - left, 1)},{mm(upper - y, 1)}" for x, y in ring) for ring in top.rings)
    tone = "rgb({},{},{})".format(*top.tone)
    # The columns of a bend are one leather: no lines part them.
    stroke = "" if top.above[0] else f' stroke="{tone}"'
    return f'<path fill="{tone}"{stroke} fill-rule="evenodd" d="{"".join(f"M{way}Z" for way in ways)}"/>'


def _tops(model: Model, tones: Mapping[str, Tone], look: Sequence[float], now: Pose) -> Iterator[_Top]:
    for body in model.bodies:
        for bent in body.bent:
            level = model.tracks[bent.track].low + bent.high
            yield _top(bent.ground, _bent(model, now, bent), tones[body.leather], look, (0, level))
        for flat in body.flat:
            yield _top(flat.ground, _flat(model, now, flat), tones[body.leather], look, (1, flat.high))


def _flat(model: Model, now: Pose, cell: FlatCell) -> list[Place]:
    places = ((x, y, cell.high) for x, y in cell.ground.corners)
    return [standing(model, now, flat_place(model, now, cell.plate, cell.track, place)) for place in places]


def _bent(model: Model, now: Pose, cell: BentCell) -> list[Place]:
    places = ((u, v, cell.high) for u, v in cell.ground.corners)
    return [standing(model, now, bent_place(model, now, cell.track, place)) for place in places]


def _top(
    ground: Ground, places: Sequence[Place], tone: Tone, look: Sequence[float], above: tuple[int, float]
) -> _Top:
    seen = [_seen(place, look) for place in places]
    edges = ground.rim if above[0] else _all_round(ground)
    return _Top(tuple(tuple(seen[i] for i in ring) for ring in _rings(edges)), tone, above)


def _all_round(ground: Ground) -> tuple[tuple[int, int], ...]:
    """The whole rim of a column of a bend, its cuts included."""
    edges = [edge for a, b, c in ground.triangles for edge in ((a, b), (b, c), (c, a))]
    return tuple((a, b) for a, b in edges if (b, a) not in edges)


def _rings(edges: Iterable[tuple[int, int]]) -> Iterator[list[int]]:
    after: dict[int, list[int]] = {}
    for a, b in edges:
        after.setdefault(a, []).append(b)
    while after:
        ring = [next(iter(after))]
        while ring[-1] in after:
            here = ring[-1]
            ring.append(after[here].pop())
            if not after[here]:
                del after[here]
        yield ring[:-1]


def _seen(place: Place, look: Sequence[float]) -> tuple[float, float]:
    x, y, z = place
    spin, over, tilt = look
    x, y = x * math.cos(spin) - y * math.sin(spin), x * math.sin(spin) + y * math.cos(spin)
    x, z = x * math.cos(over) + z * math.sin(over), z * math.cos(over) - x * math.sin(over)
    return x, y * math.cos(tilt) - z * math.sin(tilt)
