"""Pictures of a wallet folded from one piece: the blank, each fold before and after, the faces pulled apart."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from patternforge.drafting.assembly_pieces import NEW
from patternforge.drafting.assembly_view import Seen, View, arrow, heavy
from patternforge.drafting.leaders import named_places, names_figure
from patternforge.drafting.picture_names import name_on
from patternforge.drafting.rooms import Barrier
from patternforge.drawing.extent import moved
from patternforge.drawing.model import Area, Figure, Ink, Role, Stroke
from patternforge.drawing.scaling import plain_scale
from patternforge.drawing.stacked import room
from patternforge.fit.folded import closed_as_loaded
from patternforge.fit.folded_close import ClosedFolded, State
from patternforge.geometry.path import Path
from patternforge.geometry.point import Bounds, Point, joined_bounds
from patternforge.geometry.segment import Segment
from patternforge.geometry.transform import identity, translation
from patternforge.wallet.pattern import Pattern

__all__ = ["FoldedWallet", "blank_figures", "exploded_faces", "flap_figures", "folded_wallet"]

_ROOM, _WHOLE, _STACK = (82.0, 82.0), (150.0, 110.0), (120.0, 60.0)  # mm
_APART, _BOLD = 8.0, 0.8
_OUTSIDE = 0.12  # tone of a face that lies outside up
_LIFT = 14.0  # mm from face to face


@dataclass(frozen=True, slots=True)
class FoldedWallet:
    """A folded wallet closed fold after fold, and the openings of its blank by the face they lie in."""

    pattern: Pattern
    closed: ClosedFolded
    openings: Mapping[str, tuple[Path, ...]]


def folded_wallet(pattern: Pattern) -> FoldedWallet:
    """The wallet as drafted; TypeError for one that is not folded from one piece."""
    if pattern.folded is None:
        raise TypeError("this wallet is not folded from one piece")
    closed = closed_as_loaded(pattern, pattern.folded, {leather.role: leather for leather in pattern.design.leathers})
    piece = pattern.pieces[0]
    laid = [piece.placement.onto_piece.inverse().path(opening) for opening in piece.openings]
    openings = {
        face: tuple(opening for opening in laid if ground.contains(opening.start))
        for face, ground in closed.parts.faces.items()
    }
    return FoldedWallet(pattern, closed, openings)


def blank_figures(wallet: FoldedWallet) -> tuple[Figure, ...]:
    """The blank seen from the inside, its folds dashed, its slits and openings bold, every face named."""
    state = wallet.closed.states[0]
    view = _fitted(wallet, state, _WHOLE)
    inks = [*_faces(wallet, view, state, frozenset())]
    for fold in wallet.closed.parts.folds:
        for line in (fold.near, fold.far):
            inks.append(Stroke(Role.FOLD, view.path(Path((line,), closed=False))))
    for opening in (each for some in wallet.openings.values() for each in some):
        points = [Point(x, y) for x, y, _ in view.path(opening).vertices]
        inks += heavy([*points, points[0]], _BOLD)
    return Figure("blank", "", tuple(inks)), _names(wallet, view, state, state.plan)


def flap_figures(wallet: FoldedWallet, number: int) -> tuple[Figure, ...]:
    """The wallet before fold ``number`` (from 1), the flap toned and an arrow over its fold, and beside it after."""
    fold = wallet.closed.parts.folds[number - 1]
    before, after = wallet.closed.states[number - 1], wallet.closed.states[number]
    moving = wallet.closed.parts.hung_on(fold.face)
    view = _fitted(wallet, before, _ROOM)
    hinge = before.plan[fold.on].segment(fold.near)
    line = Segment(view.point(hinge.start), view.point(hinge.end))
    start = view.path(wallet.closed.ground(fold.face, before)).bounds.centre
    axis = _foot(start, line)
    end = axis + (axis - start) * 0.5
    over = (Barrier(start, end, 3 * _BOLD), Barrier(line.start, line.end, 2 * _BOLD))
    drawn = [
        Figure("before", "", tuple(_faces(wallet, view, before, moving))),
        _names(wallet, view, before, {fold.face, fold.on}, over),
        Figure("fold", "", (*heavy([line.start, line.end], _BOLD), *arrow(start, end, _BOLD))),
    ]
    closed = [
        Figure("after", "", tuple(_faces(wallet, view, after, moving))),
        _names(wallet, view, after, {fold.face, fold.on}),
    ]
    box, beside = _box(drawn), _box(closed)
    shift = translation(box.x1 + _APART - beside.x0, box.centre.y - beside.centre.y)
    return (*drawn, *(moved(figure, shift) for figure in closed))


def exploded_faces(wallet: FoldedWallet) -> tuple[Figure, ...]:
    """The closed wallet at a slant, each face lifted off the one below it, what it holds between them."""
    end = wallet.closed.end
    parts = [(float(level), face, wallet.closed.ground(face)) for face, level in end.level.items()]
    for load in wallet.closed.loads:
        words = f"{load.room.count} x {load.room.content}"
        parts.append((wallet.closed.load_level(load), words, wallet.closed.load_ground(load)))
    view = View(Seen.INSIDE, identity(), 0.34, 0.5)
    box = view.bounds(path for _, _, path in parts)
    view = view.scaled(plain_scale(box.width, box.height, *_STACK))
    levels = sorted({level for level, _, _ in parts})
    figures = []
    for level, name, path in sorted(parts, key=lambda part: (part[0], part[1])):
        outline = view.path(path, levels.index(level) * _LIFT)
        tone = 0.0 if name in end.level else NEW
        figures.append(Figure(name, "", (Area(Role.TINT, (outline,), tone), Stroke(Role.OUTLINE, outline))))
    named = named_places(figures, {figure.name: figure.name for figure in figures})
    return (*figures, names_figure(named, _box(figures)))


def _fitted(wallet: FoldedWallet, state: State, within: tuple[float, float]) -> View:
    view = View(Seen.INSIDE, identity(), 0.0, 1.0)
    box = view.bounds(wallet.closed.ground(face, state) for face in state.plan)
    return view.scaled(plain_scale(box.width, box.height, *within))


def _faces(wallet: FoldedWallet, view: View, state: State, moving: frozenset[str]) -> Iterator[Ink]:
    """Every face from the lowest up, with its openings and with the leather of its fold while that is open."""
    for face in sorted(state.plan, key=lambda each: (state.level[each], each)):
        plan = state.plan[face]
        tone = NEW if face in moving else _OUTSIDE if face in state.turned else 0.0
        for fold in wallet.closed.parts.folds:
            if fold.face == face and state.level[fold.face] == state.level[fold.on]:
                yield from _sheet(view.path(plan.path(fold.ground)), (), tone)
        openings = tuple(view.path(plan.path(opening)) for opening in wallet.openings[face])
        yield from _sheet(view.path(plan.path(wallet.closed.parts.faces[face])), openings, tone)


def _sheet(outline: Path, openings: Iterable[Path], tone: float) -> Iterator[Ink]:
    # All in one role, so that what lies higher covers what lies lower.
    yield Area(Role.OUTLINE, (outline, *openings), tone)
    yield from (Stroke(Role.OUTLINE, path) for path in (outline, *openings))


def _names(
    wallet: FoldedWallet, view: View, state: State, faces: Iterable[str], over: Sequence[Barrier] = ()
) -> Figure:
    """The names of those of some faces of which enough can be seen, clear of lines and of what is drawn ``over``."""
    inks: list[Ink] = []
    order = sorted(state.plan, key=lambda each: state.level[each])
    grounds = {face: view.path(wallet.closed.ground(face, state)) for face in order}
    for number, face in enumerate(order):
        if face in faces:
            openings = [view.path(state.plan[face].path(opening)) for opening in wallet.openings[face]]
            above = [grounds[other] for other in order[number + 1 :]]
            inks += name_on(face, grounds[face], openings, above, over)
    return Figure("names", "", tuple(inks))


def _foot(p: Point, line: Segment) -> Point:
    """The foot of the upright from a point to a line."""
    along = (line.end - line.start).unit()
    return line.start + along * (p - line.start).dot(along)


def _box(figures: Iterable[Figure]) -> Bounds:
    return joined_bounds([room(figure.inks) for figure in figures if figure.inks])
