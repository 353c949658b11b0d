"""Folds closed one after another: the panels before a fold is closed, with an arrow, and after."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from patternforge.drafting.assembly_pieces import NEW
from patternforge.drafting.assembly_view import View, arrow, heavy, plan
from patternforge.drawing.extent import moved
from patternforge.drawing.lettering import text_width
from patternforge.drawing.model import Align, Area, Figure, Ink, Role, Stroke, Text
from patternforge.drawing.scaling import plain_scale
from patternforge.drawing.stacked import room
from patternforge.fit.layout import Layout
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.transform import Transform, flipped_x, identity, rotation, translation

__all__ = ["fold_figures", "moving_panels"]

_ROOM = (78.0, 66.0)  # of each of the two pictures, mm
_APART, _LETTERS, _BOLD = 10.0, 2.2, 0.8
_OUTSIDE = 0.12  # tone of a panel whose outside is up
_ASIDE = 1.5  # mm that each panel of a stack is drawn aside, so that it can be seen


@dataclass(frozen=True, slots=True)
class _State:
    """The panels at some stage of closing: where each lies, which lie face down, and their order from below."""

    places: tuple[Transform, ...]
    down: frozenset[int]
    order: tuple[int, ...]


def moving_panels(layout: Layout, fold: int) -> tuple[int, ...]:
    """The panels turned over when a fold (by number from 1) is closed: the side with fewer of them.

    Of as many on either side the shorter one; of equal sides the right one, in a row laid on its side the lower one.
    """
    panels = layout.pattern.panels
    left, right = (
        (len(side), round(sum(panel.x1 - panel.x0 for panel in side), 3)) for side in (panels[:fold], panels[fold:])
    )
    return tuple(range(fold)) if left < right else tuple(range(fold, len(panels)))


def fold_figures(layout: Layout, closed: Sequence[int], fold: int) -> tuple[Figure, ...]:
    """The panels with the folds ``closed`` already, an arrow over those that move, and once ``fold`` is closed."""
    state = _start(layout)
    for number in closed:
        state = _folded(layout, state, number)
    after = _folded(layout, state, fold)
    view = _view(layout)
    before = Figure("before", "", tuple(_panels(layout, view, state, fold)))
    arrows = Figure("arrow", "", tuple(_arrow(layout, view, state, after, fold)))
    if after == state:
        return before, arrows
    closed_inks = Figure("after", "", tuple(_panels(layout, view, after, fold)))
    box, beside = room((*before.inks, *arrows.inks)), room(closed_inks.inks)
    shift = translation(box.x1 + _APART - beside.x0, box.centre.y - beside.centre.y)
    return before, arrows, moved(closed_inks, shift)


def _view(layout: Layout) -> View:
    view = plan(layout)
    box = view.bounds(_rectangle(layout, panel) for panel in range(len(layout.pattern.panels)))
    return view.scaled(plain_scale(box.width, box.height, *_ROOM))


def _rectangle(layout: Layout, panel: int) -> Path:
    drafted = layout.pattern.panels[panel]
    return rounded_rectangle(drafted.x0, 0.0, drafted.x1, layout.pattern.height, 0.0)


def _start(layout: Layout) -> _State:
    count = len(layout.pattern.panels)
    return _State((identity(),) * count, frozenset(), tuple(range(count)))


def _folded(layout: Layout, state: _State, number: int) -> _State:
    """The state once a fold of 180 degrees is closed, its bend taken as a line; any other leaves it as it is."""
    fold = layout.pattern.folds[number - 1]
    if abs(fold.angle) != 180:
        return state
    moving = moving_panels(layout, number)
    still = number - 1 if number in moving else number
    at = state.places[still].point(Point((fold.x0 + fold.x1) / 2, 0.0)).x
    places = tuple(p.then(flipped_x(at)) if i in moving else p for i, p in enumerate(state.places))
    group = tuple(panel for panel in reversed(state.order) if panel in moving)
    rest = tuple(panel for panel in state.order if panel not in moving)
    on_top = (fold.angle > 0) is not (still in state.down)
    return _State(places, state.down ^ set(moving), (*rest, *group) if on_top else (*group, *rest))


def _panels(layout: Layout, view: View, state: _State, fold: int) -> Iterator[Ink]:
    """Every panel from the lowest up, each of a stack a little aside; names of those that no later one covers."""
    moving = moving_panels(layout, fold)
    for height, panel in enumerate(state.order):
        outline = _path(layout, view, state, panel, height)
        tone = NEW if panel in moving else _OUTSIDE if panel in state.down else 0.0
        yield Area(Role.OUTLINE, (outline,), tone)
        yield Stroke(Role.OUTLINE, outline)
        name = _name(layout.pattern.panels[panel].name, outline)
        above = [_path(layout, view, state, *other) for other in _above(state, height)]
        if not any(path.contains(place) for path in above for place in _reached(name)):
            yield name


def _name(words: str, outline: Path) -> Text:
    """A panel's name in its lower half; upright in a panel narrower than the name, beside one lower than letters."""
    box = outline.bounds
    if box.height < 2 * _LETTERS:
        return Text(Role.OUTLINE, Point(box.x1 + _LETTERS, box.centre.y - _LETTERS / 2), _LETTERS, words)
    low = box.centre - Point(0.0, box.height / 4)
    if text_width(words, _LETTERS) <= box.width:
        return Text(Role.OUTLINE, low, _LETTERS, words, 0.0, Align.CENTRE)
    return Text(Role.OUTLINE, low + Point(_LETTERS / 2, 0.0), _LETTERS, words, 90.0, Align.CENTRE)


def _reached(name: Text) -> Iterator[Point]:
    """The corners of the letters of a name, and the middles of their long sides."""
    width, turned = text_width(name.content, name.height), rotation(name.angle)
    start = -width / 2 if name.align is Align.CENTRE else 0.0
    for along in (start, start + width / 2, start + width):
        yield from (name.at + turned.point(Point(along, rise)) for rise in (0.0, name.height))


def _above(state: _State, height: int) -> list[tuple[int, int]]:
    """The panels above a place in the stack, each with its own place."""
    return [(panel, place) for place, panel in enumerate(state.order) if place > height]


def _path(layout: Layout, view: View, state: _State, panel: int, height: int) -> Path:
    outline = view.path(state.places[panel].path(_rectangle(layout, panel)))
    aside = -_ASIDE * height if panel in state.down else 0.0
    return translation(-aside, aside).path(outline)


def _arrow(layout: Layout, view: View, state: _State, after: _State, fold: int) -> Iterator[Ink]:
    """An arrow from where what moves lies to where it goes, and the fold as a bold line."""
    drafted = layout.pattern.folds[fold - 1]
    moving = moving_panels(layout, fold)
    still = fold - 1 if fold in moving else fold
    middle, height = (drafted.x0 + drafted.x1) / 2, layout.pattern.height
    ends = [view.point(state.places[still].point(Point(middle, y))) for y in (0.0, height)]
    yield from heavy(ends, _BOLD)
    panel = fold if fold in moving else fold - 1
    beside_name = _rectangle(layout, panel).bounds.centre + Point(0.0, height / 4)
    start = view.point(state.places[panel].point(beside_name))
    axis = view.point(state.places[still].point(Point(middle, beside_name.y)))
    yield from arrow(start, axis + (axis - start) * 0.6, _BOLD)
