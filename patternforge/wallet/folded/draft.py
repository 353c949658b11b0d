"""From a folded design to its pattern: faces, closed plan, folds, blank, slits, one flat piece."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import combinations

from patternforge.errors import DraftError
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import Path, polygon, polyline
from patternforge.geometry.point import Bounds, Point, bounds_of
from patternforge.geometry.regions import fault_of, overlap_area, region
from patternforge.geometry.segment import Segment, intersections
from patternforge.geometry.transform import Transform, flipped_x, identity, translation
from patternforge.wallet.folded.closing import Closed, closed_faces
from patternforge.wallet.folded.faces import Face, faces
from patternforge.wallet.folded.outline import Blank, blank_outline, face_outline, flap_frames
from patternforge.wallet.folded.pattern import DraftedFace, DraftedFolded, DraftedHinge, DraftedRoom, DraftedTab
from patternforge.wallet.folded.spec import FaceOpening, FoldedSpec, RoomSpec, TabSpec
from patternforge.wallet.folded.stack import Bend, bend, item_box, plies
from patternforge.wallet.folded.tabs import slit_length, slit_path, tab_root
from patternforge.wallet.pattern import Development, EdgeRole, Pattern, Piece, Placement
from patternforge.wallet.spec import Design, Edge, Side
from patternforge.wallet.sums import MEASURED, Sum, Term

__all__ = ["folded_pattern"]

_OVERLAP = 0.01  # mm2 that two faces may share in the blank through rounding alone
_NAME = "blank"

_OUT = {
    Edge.LEFT: Point(-1.0, 0.0),
    Edge.RIGHT: Point(1.0, 0.0),
    Edge.BOTTOM: Point(0.0, -1.0),
    Edge.TOP: Point(0.0, 1.0),
}


@dataclass(frozen=True, slots=True)
class _Plan:
    """A folded wallet planned: its faces by name, how they lie closed and in the blank, its folds by flap."""

    design: Design
    folded: FoldedSpec
    faces: Mapping[str, Face]
    closed: Closed
    bends: Mapping[str, Bend]
    frames: Mapping[str, Transform]
    blank: Blank

    def into_closed(self, face: str) -> Transform:
        """From the blank to the closed plan, where a face is concerned."""
        return self.frames[face].inverse().then(self.closed.plan[face])


def folded_pattern(design: Design, folded: FoldedSpec) -> Pattern:
    """The pattern of a wallet folded from one piece, for the middle of its leather's thickness.

    DraftError when a face has no size, something has no room on its edge, two faces overlap in the blank, a slit
    or an opening does not lie in its face, or the outline is not sound.
    """
    plan = _planned(design, folded)
    outline = _outline(plan)
    _check_apart(plan)
    tabs, slits = _tabs(plan)
    openings = (*slits, *_openings(plan))
    if fault := fault_of(outline, openings):
        raise DraftError(f"{design.file}: the blank: {fault}")
    hinges = _hinges(plan)
    piece = _piece(plan, outline, openings, hinges)
    bounds = outline.bounds
    return Pattern(
        design=design,
        width=bounds.width,
        height=bounds.height,
        height_sum=Sum("height of the blank", (Term("all faces and folds", bounds.height, (MEASURED,)),)),
        panels=(),
        folds=(),
        pieces=(piece,),
        pockets=(),
        seams=(),
        adjustments=(),
        folded=DraftedFolded(_faces(plan), hinges, tabs, _rooms(plan), _closed_bounds(plan)),
    )


def _outline(plan: _Plan) -> Path:
    try:
        return blank_outline(plan.blank)
    except DraftError as fault:
        raise DraftError(f"{plan.design.file}: the outline of the blank: {fault}") from fault


def _planned(design: Design, folded: FoldedSpec) -> _Plan:
    planned = faces(design, folded)
    by_name = {face.name: face for face in planned}
    closed = closed_faces(folded, planned)
    stack = plies(design, folded, by_name, closed)
    leather = design.leather(folded.leather)
    bends = {f.name: bend(f.root, f.name, stack, closed.plan[f.root.on], leather) for f in planned if f.root}
    blank = Blank(folded, by_name, {name: found.length for name, found in bends.items()})
    return _Plan(design, folded, by_name, closed, bends, flap_frames(blank), blank)


def _check_apart(plan: _Plan) -> None:
    """DraftError when two faces, each with the fold it hangs by, would be cut from the same leather."""
    grounds = {
        name: region(plan.frames[name].path(face_outline(plan.blank, face))) for name, face in plan.faces.items()
    }
    for name, face in plan.faces.items():
        if face.root:
            grounds[name] = grounds[name].united(region(plan.frames[face.root.on].path(_zone(plan, face))))
    for one, other in combinations(plan.faces, 2):
        shared = overlap_area(grounds[one], grounds[other])
        if shared > _OVERLAP:
            raise DraftError(
                f"{plan.design.file}:{plan.faces[other].spec.line}: faces '{one}' and '{other}' overlap in the blank"
                f" by {shared:.1f} mm2: make one narrower or shorter, or inset its hinge"
            )


def _zone(plan: _Plan, face: Face) -> Path:
    """The fold a face hangs by, laid flat, in the frame of the face it hangs on."""
    if face.root is None:
        raise TypeError("the base hangs on nothing")
    off = face.root.outward * plan.bends[face.name].length
    return polygon((face.root.end, face.root.start, face.root.start + off, face.root.end + off)).ccw()


def _faces(plan: _Plan) -> tuple[DraftedFace, ...]:
    return tuple(
        DraftedFace(
            name=name,
            outline=plan.frames[name].path(face_outline(plan.blank, face)),
            width=face.width,
            height=face.height,
            closed=plan.into_closed(name),
            level=plan.closed.order.index(name),
            turned=name in plan.closed.turned,
        )
        for name, face in plan.faces.items()
    )


def _hinges(plan: _Plan) -> tuple[DraftedHinge, ...]:
    found = []
    for number, name in enumerate(plan.folded.closing, start=1):
        face, bent = plan.faces[name], plan.bends[name]
        if face.root is None or face.spec.hinge is None or face.hung_by is None:
            continue
        on, own = plan.frames[face.root.on], face.side(face.hung_by)
        near = on.point(face.root.start), on.point(face.root.end)
        far = plan.frames[name].point(own.end), plan.frames[name].point(own.start)
        angle = face.spec.hinge.angle
        found.append(DraftedHinge(number, name, face.root.on, angle, bent.gap, bent.radius, bent.length, near, far))
    return tuple(found)


def _tabs(plan: _Plan) -> tuple[tuple[DraftedTab, ...], tuple[Path, ...]]:
    """Every tab with its slit, and the slits as openings of the blank, clockwise."""
    made = [_tab(plan, tab, number) for number, tab in enumerate(plan.folded.tabs)]
    return tuple(tab for tab, _ in made), tuple(slit for _, slit in made)


def _tab(plan: _Plan, tab: TabSpec, number: int) -> tuple[DraftedTab, Path]:
    """A tab and the slit that lies where the tab's root comes to lie once all is closed."""
    t = plan.design.leather(plan.folded.leather).t
    begin, end = tab_root(plan.faces[tab.face], tab)
    to_slit = plan.closed.plan[tab.face].then(plan.closed.plan[tab.into].inverse())
    at_begin, at_end = to_slit.point(begin), to_slit.point(end)
    middle, along = (at_begin + at_end) / 2, (at_end - at_begin).unit()
    length = slit_length(tab, t)
    try:
        slit = slit_path(middle, along, length, t)
        _check_inside(plan, tab.into, slit)
    except DraftError as fault:
        raise DraftError(f"{plan.design.file}:{tab.line}: tab '{tab.name}': its slit {fault}") from fault
    into = plan.frames[tab.into]
    ends = into.point(middle - along * (length / 2)), into.point(middle + along * (length / 2))
    root = plan.frames[tab.face].point(begin), plan.frames[tab.face].point(end)
    drafted = DraftedTab(tab.name, tab.face, tab.into, tab.width, tab.length, root, ends, number)
    return drafted, into.path(slit).cw()


def _check_inside(plan: _Plan, name: str, path: Path) -> None:
    outline = face_outline(plan.blank, plan.faces[name])
    if fault_of(outline, (path,)):
        at = path.bounds.centre
        off = outline.distance_to(at)
        where = f"{off:.2f} mm inside the edge of" if outline.contains(at) else f"{off:.2f} mm off"
        raise DraftError(f"does not lie within '{name}': its middle is {where} that face once closed")


def _openings(plan: _Plan) -> tuple[Path, ...]:
    found = []
    for name, face in plan.faces.items():
        for opening in face.spec.openings:
            path = _opening(face, opening)
            try:
                _check_inside(plan, name, path)
            except DraftError as fault:
                where = f"{plan.design.file}:{face.spec.line}: opening '{opening.name}'"
                raise DraftError(f"{where} reaches beyond face '{name}'") from fault
            found.append(plan.frames[name].path(path).cw())
    return tuple(found)


def _opening(face: Face, opening: FaceOpening) -> Path:
    """A cut-out in the frame of its face."""
    x, y = face.width.value / 2, face.height.value / 2
    if opening.beside:
        edge, distance = opening.beside
        x = distance if edge is Edge.LEFT else face.width.value - distance
    if opening.above:
        edge, distance = opening.above
        y = distance if edge is Edge.BOTTOM else face.height.value - distance
    w, h = opening.width / 2, opening.height / 2
    return rounded_rectangle(x - w, y - h, x + w, y + h, opening.corner)


def _rooms(plan: _Plan) -> tuple[DraftedRoom, ...]:
    return tuple(_room(plan, room) for room in plan.folded.rooms)


def _room(plan: _Plan, room: RoomSpec) -> DraftedRoom:
    frame = plan.frames[room.between[0]]
    a, b, c, d = (frame.point(p) for p in item_box(plan.design, plan.faces, room, plan.folded.ease))
    out = frame.direction(_OUT[room.opening])
    return DraftedRoom(room.name, room.between, room.content, room.count, (a, b, c, d), out)


def _closed_bounds(plan: _Plan) -> Bounds:
    """The closed wallet: every face where it lies, and the outside of every fold beyond its tangent."""
    points: list[Point] = []
    t = plan.design.leather(plan.folded.leather).t
    for name, face in plan.faces.items():
        box = plan.closed.plan[name].path(face_outline(plan.blank, face)).bounds
        points += [Point(box.x0, box.y0), Point(box.x1, box.y1)]
        if face.root:
            onto = plan.closed.plan[face.root.on]
            out = face.root.outward * (plan.bends[name].radius + t)
            points += [onto.point(face.root.start + out), onto.point(face.root.end + out)]
    return bounds_of(points)


def _piece(plan: _Plan, outline: Path, openings: tuple[Path, ...], hinges: tuple[DraftedHinge, ...]) -> Piece:
    turn = flipped_x() if plan.folded.showing is Side.OUTSIDE else identity()
    bounds = turn.path(outline).bounds
    onto = turn.then(translation(-bounds.x0, -bounds.y0))
    path = onto.path(outline).ccw()
    lines = [line for hinge in hinges for line in (hinge.near, hinge.far)]
    return Piece(
        name=_NAME,
        part=_NAME,
        leather=plan.folded.leather,
        showing=plan.folded.showing,
        visible=True,
        level=0,
        outline=path,
        edges=(EdgeRole.RAW,) * len(path.segments),
        openings=tuple(onto.path(opening).cw() for opening in openings),
        holes=(),
        fold_lines=tuple(onto.path(_trimmed(outline, line)) for line in lines),
        placement=Placement(Development(), onto, ()),
    )


def _trimmed(outline: Path, line: tuple[Point, Point]) -> Path:
    """A tangent as drawn: without what relief holes take of its ends."""
    whole = Segment(*line)
    met = [whole.nearest(p) for segment in outline.segments for p in intersections(whole, segment)]
    begin = max((d for d in met if d < whole.length / 2), default=0.0)
    end = min((d for d in met if d > whole.length / 2), default=whole.length)
    return polyline((whole.point_at(begin), whole.point_at(end)))
