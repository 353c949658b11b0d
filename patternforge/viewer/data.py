"""What the page is told of a wallet: its bodies, and where plates stand and layers bend at even steps of closing."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from patternforge.fit.posed.model import Body, Ground, Model, Plate
from patternforge.fit.posed.pose import pose
from patternforge.units import mm
from patternforge.viewer.tones import Tone

__all__ = ["wallet_text"]

_STEPS = 30  # moments from one fold to the next; between them the page blends evenly

_Value = str | int | bool | float | Sequence["_Value"] | Mapping[str, "_Value"]


def wallet_text(model: Model, tones: Mapping[str, Tone], look: Sequence[float], share: float) -> str:
    """The data of the page as JSON that may stand in a script element: lengths in mm, angles in radians."""
    poses = [pose(model, at / (_STEPS * model.steps)) for at in range(_STEPS * model.steps + 1)]
    turns = [[v for t in p.turns for v in (t.x, t.z, t.angle)] for p in poses]
    arcs = [[v for a in p.arcs for v in (a.heading, a.curvature, a.length, a.before, a.after)] for p in poses]
    return _json(
        {
            "plates": [_plate(plate) for plate in model.plates],
            "tracks": [[model.crossings[t.crossing].plate, _short(t.low), _short(t.high)] for t in model.tracks],
            "bodies": [_body(body, tones[body.leather]) for body in model.bodies],
            "turns": _exact(turns),
            "arcs": _exact(arcs),
            "still": model.still,
            "turned": model.turned,
            "steps": model.steps,
            "look": list(look),
            "share": share,
        }
    )


def _plate(plate: Plate) -> Mapping[str, _Value]:
    hinge = plate.hinge
    if hinge is None:
        return {"parent": -1}
    way = _exact([[hinge.way.x, hinge.way.y]])[0]
    return {"parent": hinge.parent, "at": [hinge.at.x, hinge.at.y], "way": way, "zone": hinge.zone}


def _body(body: Body, tone: Tone) -> Mapping[str, _Value]:
    return {
        "name": body.name,
        "tone": list(tone),
        "flat": [[c.plate, c.track, _short(c.low), _short(c.high), *_ground(c.ground)] for c in body.flat],
        "bent": [[c.track, _short(c.low), _short(c.high), *_ground(c.ground)] for c in body.bent],
        "marks": [[m.plate, m.track, _short(m.low), _short(m.high), m.at.x, m.at.y] for m in body.marks],
    }


def _ground(ground: Ground) -> tuple[_Value, _Value, _Value]:
    return _flat(ground.corners), _flat(ground.triangles), _flat(ground.rim)


def _flat(rows: Iterable[Sequence[float]]) -> list[_Value]:
    return [value for row in rows for value in row]


def _short(value: float) -> float:
    return round(value, 3)


class _Exact(float):
    """A number that is told to six decimals."""


def _exact(rows: Sequence[Sequence[float]]) -> list[list[_Value]]:
    return [[_Exact(value) for value in row] for row in rows]


def _json(value: _Value) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, int):
        return str(value)
    if isinstance(value, float):
        return _number(value, 6 if isinstance(value, _Exact) else 3)
    if isinstance(value, str):
        return _text(value)
    if isinstance(value, Mapping):
        return "{" + ",".join(f"{_text(key)}:{_json(each)}" for key, each in value.items()) + "}"
    return "[" + ",".join(map(_json, value)) + "]"


def _number(value: float, decimals: int) -> str:
    return mm(value, decimals).rstrip("0").rstrip(".")


def _text(text: str) -> str:
    """A JSON string in which nothing can end the script element it stands in."""
    import json

    return json.dumps(text).replace("<", "\\u003c").replace(">", "\\u003e").replace("&", "\\u0026")
