"""A wallet folded from one piece as plain data: what was asked for, and what was drafted."""

from __future__ import annotations

from typing import Any

from patternforge.drafting.plain import plain, trims
from patternforge.geometry.path import Path
from patternforge.geometry.point import Bounds, Point
from patternforge.geometry.transform import Transform
from patternforge.wallet.folded.pattern import DraftedFace, DraftedFolded, DraftedHinge, DraftedRoom, DraftedTab
from patternforge.wallet.folded.spec import FaceOpening, FaceSpec, FoldedSpec, HingeSpec, TabSpec
from patternforge.wallet.sums import Sum

__all__ = ["folded_description", "folded_inputs"]


def folded_inputs(folded: FoldedSpec) -> dict[str, Any]:
    """What a design asked for: lengths in mm, None for a size that follows from what a face holds."""
    return {
        **plain(folded),
        "faces": [_face_asked(face) for face in folded.faces],
        "tabs": [_tab_asked(tab) for tab in folded.tabs],
    }


def folded_description(folded: DraftedFolded) -> dict[str, Any]:
    """What was drafted: faces, folds, tabs and rooms in the blank, seen from the inside, and how they lie closed."""
    return {
        "faces": [_face(face) for face in folded.faces],
        "hinges": [_hinge(hinge) for hinge in folded.hinges],
        "tabs": [_tab(tab) for tab in folded.tabs],
        "rooms": [_room(room) for room in folded.rooms],
        "closed": _bounds(folded.closed),
    }


def _face_asked(face: FaceSpec) -> dict[str, Any]:
    corners = {" ".join(edge.value for edge in ends): radius for ends, radius in face.corners}
    shapes = {edge.value: plain(shape) for edge, shape in face.sides}
    thumb = face.thumb and {
        "width": face.thumb.width,
        "depth": face.thumb.depth,
        "edge": face.thumb_edge.value,
    }
    told = {key: value for key, value in plain(face).items() if key not in ("thumb_edge", "sides")}
    return {
        **told,
        "hinge": _hinge_asked(face.hinge) if face.hinge else None,
        "corners": corners,
        "shapes": shapes,
        "thumb": thumb,
        "openings": [_opening_asked(opening) for opening in face.openings],
    }


def _hinge_asked(hinge: HingeSpec) -> dict[str, Any]:
    return {**plain(hinge), "inset": trims(hinge.inset)}


def _opening_asked(opening: FaceOpening) -> dict[str, Any]:
    told = {key: value for key, value in plain(opening).items() if key not in ("beside", "above")}
    return {**told, "from": trims(pair for pair in (opening.beside, opening.above) if pair)}


def _tab_asked(tab: TabSpec) -> dict[str, Any]:
    told = {key: value for key, value in plain(tab).items() if key != "beside"}
    return {**told, "from": trims([tab.beside] if tab.beside else [])}


def _face(face: DraftedFace) -> dict[str, Any]:
    return {
        "name": face.name,
        "outline": _vertices(face.outline),
        "width": _sum(face.width),
        "height": _sum(face.height),
        "closed": _matrix(face.closed),
        "level": face.level,
        "turned": face.turned,
    }


def _hinge(hinge: DraftedHinge) -> dict[str, Any]:
    return {
        "number": hinge.number,
        "face": hinge.face,
        "on": hinge.on,
        "angle": hinge.angle,
        "gap": _sum(hinge.gap),
        "inside_radius": hinge.radius,
        "flat_length": hinge.length,
        "near": _line(hinge.near),
        "far": _line(hinge.far),
    }


def _tab(tab: DraftedTab) -> dict[str, Any]:
    return {
        "name": tab.name,
        "face": tab.face,
        "into": tab.into,
        "width": tab.width,
        "length": tab.length,
        "root": _line(tab.root),
        "slit": _line(tab.slit),
        "opening": tab.opening,
    }


def _room(room: DraftedRoom) -> dict[str, Any]:
    return {
        "name": room.name,
        "between": list(room.between),
        "content": room.content,
        "count": room.count,
        "box": [_point(corner) for corner in room.box],
        "opening": _point(room.opening),
    }


def _sum(total: Sum) -> dict[str, Any]:
    return {"value": total.value, "terms": [{"label": term.label, "value": term.value} for term in total.terms]}


def _vertices(path: Path) -> list[list[float]]:
    return [list(vertex) for vertex in path.vertices]


def _line(line: tuple[Point, Point]) -> list[list[float]]:
    return [_point(end) for end in line]


def _point(point: Point) -> list[float]:
    return [point.x, point.y]


def _matrix(transform: Transform) -> list[float]:
    t = transform
    return [t.a, t.b, t.c, t.d, t.e, t.f]


def _bounds(bounds: Bounds) -> list[float]:
    return [bounds.x0, bounds.y0, bounds.x1, bounds.y1]
