"""The outline of a face, or of the whole blank: walked counter-clockwise, out along every flap and back again."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

from patternforge.errors import DraftError, GeometryError
from patternforge.geometry.corners import filleted
from patternforge.geometry.path import Path, from_vertices
from patternforge.geometry.relief import reentrant, relieved
from patternforge.geometry.segment import Segment
from patternforge.geometry.transform import Transform, translation
from patternforge.wallet.border import CCW
from patternforge.wallet.folded.faces import Face
from patternforge.wallet.folded.spec import FoldedSpec, TabSpec
from patternforge.wallet.folded.tabs import tab_middle, tab_vertices
from patternforge.wallet.folded.vertex import Vertex
from patternforge.wallet.spec import Edge

__all__ = ["Blank", "blank_outline", "face_outline", "flap_frames"]

_SAME = 1e-7  # mm; nearer to each other two corners are one
_STRAIGHT = 1e-9  # radians; two lines that meet at less are one
_TURNS_IN = math.radians(30)  # what an outline must turn in by to be relieved


@dataclass(frozen=True, slots=True)
class Blank:
    """Everything an outline is walked by: faces, flat lengths of the folds by flap."""

    folded: FoldedSpec
    faces: Mapping[str, Face]
    lengths: Mapping[str, float]

    def flaps(self, face: Face) -> list[Face]:
        """What hangs on a face directly."""
        return [each for each in self.faces.values() if each.root and each.root.on == face.name]


@dataclass(frozen=True, slots=True)
class _Stop:
    """Something along a side, from ``first`` to ``last`` mm of it: what it is called, the corners it brings."""

    what: str
    first: float
    last: float
    corners: Callable[[Segment], list[Vertex]]


def flap_frames(blank: Blank) -> dict[str, Transform]:
    """How each face lies in the blank: from its own frame to the base's, every fold at its flat length."""
    frames: dict[str, Transform] = {}
    for face in blank.faces.values():
        if face.root is None:
            frames[face.name] = face.beside
        else:
            frames[face.name] = _laid(blank, face).then(frames[face.root.on])
    return frames


def blank_outline(blank: Blank) -> Path:
    """The outline of the whole blank, corners rounded, corners that turn in relieved.

    DraftError when something has no room on its edge or a corner none for its rounding.
    """
    base = next(iter(blank.faces.values()))
    return _finished(_walked(blank, base, _flap_stops), blank.folded.relief)


def face_outline(blank: Blank, face: Face) -> Path:
    """The outline of one face in its own frame, with its tabs and notch and its folds as straight edges."""
    return _finished(_walked(blank, face, _no_flaps), blank.folded.relief)


def _walked(blank: Blank, face: Face, flaps: Callable[[Blank, Face, Edge], list[_Stop]]) -> list[Vertex]:
    """The corners of a face, from the end of its own hinge round to its start; of the base all round."""
    begin = CCW.index(face.hung_by) + 1 if face.hung_by else 0
    edges = [CCW[(begin + i) % 4] for i in range(3 if face.hung_by else 4)]
    corners = [vertex for edge in edges for vertex in _side(blank, face, edge, flaps(blank, face, edge))]
    if face.hung_by:
        corners.append(Vertex(face.side(face.hung_by).start))
    return corners


def _side(blank: Blank, face: Face, edge: Edge, flaps: Sequence[_Stop]) -> list[Vertex]:
    side = face.side(edge)
    stops = sorted([*flaps, *_tab_stops(blank, face, edge), *_notch_stops(face, edge)], key=lambda stop: stop.first)
    _check_room(blank, face, edge, side, stops)
    first = Vertex(side.start, side.bulge, radius=_radius(blank, face, edge))
    return [first, *(vertex for stop in stops for vertex in stop.corners(side))]


def _check_room(blank: Blank, face: Face, edge: Edge, side: Segment, stops: Sequence[_Stop]) -> None:
    at = 0.0
    for stop in stops:
        if side.is_arc:
            raise DraftError(f"{stop.what} stands on the {edge.value} edge of '{face.name}', which is bowed")
        if stop.first < at - _SAME or stop.last > side.length + _SAME:
            raise DraftError(
                f"{stop.what} has no room on the {edge.value} edge of '{face.name}', which is {side.length:.2f} mm"
                " long: make it narrower or move it"
            )
        at = stop.last


def _no_flaps(blank: Blank, face: Face, edge: Edge) -> list[_Stop]:
    return []


def _flap_stops(blank: Blank, face: Face, edge: Edge) -> list[_Stop]:
    return [_flap_stop(blank, flap) for flap in blank.flaps(face) if flap.root and flap.root.edge is edge]


def _flap_stop(blank: Blank, flap: Face) -> _Stop:
    root = flap.root
    if root is None:
        raise TypeError("the base hangs on nothing")
    laid, what = _laid(blank, flap), f"the hinge of '{flap.name}'"

    def corners(side: Segment) -> list[Vertex]:
        own = (replace(v, at=laid.point(v.at)) for v in _walked(blank, flap, _flap_stops))
        return [Vertex(root.start, relief=what), *own, Vertex(root.end, relief=what)]

    return _Stop(what, root.first, root.last, corners)


def _laid(blank: Blank, flap: Face) -> Transform:
    """From a flap's frame to that of the face it hangs on, the fold between laid flat."""
    if flap.root is None:
        return flap.beside
    off = flap.root.outward * blank.lengths[flap.name]
    return flap.beside.then(translation(off.x, off.y))


def _tab_stops(blank: Blank, face: Face, edge: Edge) -> list[_Stop]:
    return [_tab_stop(face, tab) for tab in blank.folded.tabs if tab.face == face.name and tab.edge is edge]


def _tab_stop(face: Face, tab: TabSpec) -> _Stop:
    middle = tab_middle(face, tab)
    return _Stop(
        f"tab '{tab.name}'",
        middle - tab.width / 2,
        middle + tab.width / 2,
        lambda side: tab_vertices(tab, side, middle),
    )


def _notch_stops(face: Face, edge: Edge) -> list[_Stop]:
    notch = face.spec.thumb
    if notch is None or face.spec.thumb_edge is not edge:
        return []
    middle, half = face.side(edge).length / 2, notch.width / 2

    def corners(side: Segment) -> list[Vertex]:
        u = side.tangent_at(0.0)
        bulge = -notch.depth / half
        return [Vertex(side.start + u * (middle - half), bulge), Vertex(side.start + u * (middle + half))]

    return [_Stop("its thumb notch", middle - half, middle + half, corners)]


def _radius(blank: Blank, face: Face, edge: Edge) -> float:
    """The rounding of the corner that an edge begins at: its own, or that of all corners between free edges."""
    before = CCW[CCW.index(edge) - 1]
    for ends, radius in face.spec.corners:
        if set(ends) == {before, edge}:
            _refuse_at_fold(blank, face, before, edge)
            return radius
    return face.spec.corner if _is_free(blank, face, before) and _is_free(blank, face, edge) else 0.0


def _refuse_at_fold(blank: Blank, face: Face, before: Edge, edge: Edge) -> None:
    """DraftError when a flap's hinge reaches the corner between two edges."""
    length = face.side(before).length
    for flap in blank.flaps(face):
        root = flap.root
        at_start = root and root.edge is edge and root.first < _SAME
        at_end = root and root.edge is before and root.last > length - _SAME
        if at_start or at_end:
            raise DraftError(f"the hinge of '{flap.name}' reaches the corner that is to be rounded: inset it")


def _is_free(blank: Blank, face: Face, edge: Edge) -> bool:
    """Whether an edge has no fold."""
    folds = {flap.root.edge for flap in blank.flaps(face) if flap.root}
    return edge is not face.hung_by and edge not in folds


def _finished(corners: Sequence[Vertex], relief: float) -> Path:
    kept = _without_straights(_merged(corners))
    try:
        sharp = from_vertices([(v.at.x, v.at.y, v.bulge) for v in kept], closed=True)
        rounded = filleted(sharp, [v.radius for v in kept])
        turning = zip(kept, (sharp.segments[-1], *sharp.segments), sharp.segments, strict=False)
        inner = [v for v, before, after in turning if v.relief and _turns_in(before, after)]
    except GeometryError as fault:
        raise DraftError(str(fault)) from fault
    return _relieved(rounded, inner, relief)


def _relieved(path: Path, inner: Sequence[Vertex], radius: float) -> Path:
    """The path with its relief holes; DraftError, saying beside what, where one has no room."""
    for vertex in inner:
        try:
            path = relieved(path, [vertex.at], radius)
        except GeometryError as fault:
            raise DraftError(f"no room for a relief hole beside {vertex.relief}: {fault}") from fault
    return path


def _turns_in(before: Segment, after: Segment) -> bool:
    return reentrant(before.tangent_at(before.length), after.tangent_at(0.0)) > math.pi + _TURNS_IN


def _merged(corners: Sequence[Vertex]) -> list[Vertex]:
    """Corners in one place taken together."""
    kept: list[Vertex] = []
    for vertex in corners:
        if kept and kept[-1].at.distance_to(vertex.at) < _SAME:
            kept[-1] = kept[-1].joined(vertex)
        else:
            kept.append(vertex)
    if len(kept) > 1 and kept[-1].at.distance_to(kept[0].at) < _SAME:
        last = kept.pop()
        kept[0] = last.joined(kept[0])
    return kept


def _without_straights(corners: Sequence[Vertex]) -> list[Vertex]:
    """Corners at which nothing turns left out, so that a straight edge is one line."""
    kept = []
    for before, vertex, after in zip((corners[-1], *corners), corners, (*corners[1:], corners[0]), strict=False):
        u, v = (vertex.at - before.at).unit(), (after.at - vertex.at).unit()
        if before.bulge or vertex.bulge or abs(math.atan2(u.cross(v), u.dot(v))) > _STRAIGHT:
            kept.append(vertex)
    return kept
