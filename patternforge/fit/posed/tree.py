"""A wallet folded from one piece as a model to be posed: its faces hang on each other and close one after another.

Faces lie flat over each other once closed, each on the highest of what lies under it. Where that ends short of a
fold, the leather of the fold is drawn up to it: it has no other way to go, for a face does not bend.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from patternforge.fit.folded_close import ClosedFold, ClosedFolded, Load
from patternforge.fit.folded_parts import Fold
from patternforge.fit.posed.ground import bent_grounds, ground
from patternforge.fit.posed.model import BentCell, Body, Crossing, FlatCell, Hinge, Model, Plate, Track
from patternforge.fit.posed.piles import STRAY
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.regions import Region, region
from patternforge.geometry.transform import Transform

__all__ = ["tree_model"]

_TOUCH = 0.5  # mm that two faces may overlap and still lie beside each other
_COLUMN = 15.0  # degrees of a bend that one flat facet stands for


@dataclass(frozen=True, slots=True)
class _Standing:
    """How high faces and loads stand in the closed wallet, by name and number, mm."""

    faces: Mapping[str, float]
    loads: Mapping[int, float]


def tree_model(wallet: ClosedFolded, openings: tuple[Path, ...]) -> Model:
    """The wallet to be posed; ``openings`` are cut out of its faces, in the blank."""
    names = _from_the_base(wallet)
    numbers = {name: number for number, name in enumerate(names)}
    standing = _standing(wallet)
    folds = {closed.fold.face: closed for closed in wallet.folds}
    plates = [
        Plate(name, _hinge(wallet, folds[name], numbers, standing) if name in folds else None) for name in names
    ]
    crossings = [Crossing(numbers[c.fold.face], c.fold.has, (i,), slips=False) for i, c in enumerate(wallet.folds)]
    tracks = [Track(i, *_fibre(wallet, c.fold)) for i, c in enumerate(wallet.folds)]
    bodies = (*_faces(wallet, names, openings), *_loads(wallet, numbers, standing))
    return Model(tuple(plates), tuple(crossings), tuple(tracks), bodies, 0, False, max(len(wallet.folds), 1))


def _from_the_base(wallet: ClosedFolded) -> list[str]:
    """The faces, each after the one it hangs on."""
    names = [wallet.parts.base]
    for name in names:
        names += [fold.face for fold in wallet.parts.folds if fold.on == name]
    return names


def _standing(wallet: ClosedFolded) -> _Standing:
    """From the lowest up, each on the highest of those under it."""
    t = wallet.leather.t
    plies: list[tuple[float, Region, float, str | int]] = [
        (level, region(wallet.ground(face), (), STRAY), t, face) for face, level in wallet.end.level.items()
    ]
    plies += [
        (wallet.load_level(load), region(wallet.load_ground(load)), load.thickness, number)
        for number, load in enumerate(wallet.loads)
        if load.thickness > 0
    ]
    lying: list[tuple[Region, float]] = []
    found: dict[str | int, float] = {}
    for _, area, thickness, name in sorted(plies, key=lambda ply: ply[0]):
        inner = area.shrunk(_TOUCH)
        z = max((top for under, top in lying if inner.common(under).area > 0), default=0.0)
        lying.append((area, z + thickness))
        found[name] = z
    faces = {name: z for name, z in found.items() if isinstance(name, str)}
    return _Standing(faces, {number: z for number, z in found.items() if isinstance(number, int)})


def _hinge(wallet: ClosedFolded, closed: ClosedFold, numbers: Mapping[str, int], standing: _Standing) -> Hinge:
    fold, count = closed.fold, len(wallet.folds)
    low, high = _fibre(wallet, fold)
    return Hinge(
        parent=numbers[fold.on],
        at=fold.near.start,
        way=fold.inward * -1.0,
        zone=fold.has,
        low=low,
        high=high,
        angle=fold.angle,
        closed=_laid_over(wallet, closed, standing),
        start=(fold.number - 1) / count,
        end=fold.number / count,
    )


def _laid_over(wallet: ClosedFolded, closed: ClosedFold, standing: _Standing) -> tuple[float, float]:
    """Where the flap's outer face comes to lie over that of the face it hangs on, and how far it slides on."""
    fold, t = closed.fold, wallet.leather.t
    outer = {name: z + (t if name in wallet.end.turned else 0.0) for name, z in standing.faces.items()}
    up = -1.0 if fold.on in wallet.end.turned else 1.0
    return closed.needs - fold.has, (outer[fold.face] - outer[fold.on]) * up


def _fibre(wallet: ClosedFolded, fold: Fold) -> tuple[float, float]:
    leather = wallet.leather
    level = (1 - leather.neutral if fold.angle > 0 else leather.neutral) * leather.t
    return level, level


def _faces(wallet: ClosedFolded, names: list[str], openings: tuple[Path, ...]) -> list[Body]:
    """Every face with the fold it hangs by."""
    t = wallet.leather.t
    bodies = []
    for number, name in enumerate(names):
        area = region(wallet.parts.faces[name], (), STRAY)
        for opening in openings:
            area = area.without(region(opening.ccw(), (), STRAY))
        track = next((i for i, c in enumerate(wallet.folds) if c.fold.face == name), -1)
        flat = FlatCell(number, track, ground(area), 0.0, t)
        bent = _bent(wallet, wallet.folds[track].fold, track) if track >= 0 else ()
        bodies.append(Body(name, wallet.leather.role, (flat,), bent))
    return bodies


def _bent(wallet: ClosedFolded, fold: Fold, track: int) -> tuple[BentCell, ...]:
    level, t = _fibre(wallet, fold)[0], wallet.leather.t
    area = region(_across(fold).path(fold.ground).ccw(), (), STRAY)
    columns = max(2, math.ceil(abs(fold.angle) / _COLUMN))
    cuts = bent_grounds(area, (0.0, fold.has), columns, lambda corner: corner)
    return tuple(BentCell(track, cut, -level, t - level) for cut in cuts)


def _across(fold: Fold) -> Transform:
    """From the blank to the fold: x across it towards the flap, y along it."""
    way, at = fold.inward * -1.0, fold.near.start
    along = Point(-way.y, way.x)
    return Transform(way.x, along.x, way.y, along.y, -at.dot(way), -at.dot(along))


def _loads(wallet: ClosedFolded, numbers: Mapping[str, int], standing: _Standing) -> list[Body]:
    return [
        Body(f"{load.room.content} in {load.room.name}", "", (_load(wallet, load, numbers[load.on]),), ())
        for number, load in enumerate(wallet.loads)
        if number in standing.loads
    ]


def _load(wallet: ClosedFolded, load: Load, plate: int) -> FlatCell:
    """Items on the face they lie on, on its inside or its outside."""
    above = wallet.load_level(load) > wallet.end.level[load.on]
    inside = above is not (load.on in wallet.end.turned)
    low = wallet.leather.t if inside else -load.thickness
    return FlatCell(plate, -1, ground(region(load.outline.ccw())), low, low + load.thickness)
