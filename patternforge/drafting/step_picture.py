"""The picture of one step: what is brought together pulled apart, and how it lies once it is sewn."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from patternforge.drafting.assembly_pieces import NEW, Look, Thread, piece_figures
from patternforge.drafting.assembly_view import Seen, View, heavy, laid_outline, plan, slanted
from patternforge.drafting.assembly_words import base_of, group_name
from patternforge.drafting.bench_picture import bench_figures, is_on_bench
from patternforge.drafting.fold_picture import fold_figures
from patternforge.drafting.leaders import Beside, named_places, names_figure
from patternforge.drawing.extent import moved
from patternforge.drawing.model import Align, Area, Figure, Ink, Role, Text
from patternforge.drawing.scaling import plain_scale
from patternforge.drawing.stacked import room
from patternforge.fit.glue import glue_of
from patternforge.fit.layout import Layout
from patternforge.fit.making import MakingStep, Work
from patternforge.geometry.point import Bounds, Point, joined_bounds
from patternforge.geometry.transform import translation

__all__ = ["seen_from", "step_figures"]

_ROOM = (66.0, 66.0)  # of one of two pictures, mm
_WHOLE = (120.0, 80.0)  # of a picture that stands alone
_LIFT = 20.0  # between what is brought together, mm of the picture
_APART = 8.0
_GLUE = 0.6  # its tone
_LETTERS, _BOLD = 2.2, 0.8


def step_figures(layout: Layout, steps: Sequence[MakingStep], number: int) -> tuple[Figure, ...]:
    """The figures of a step, nearest to the eye last; ``number`` counts from 0."""
    step, before = steps[number], steps[:number]
    if step.work is Work.FOLD:
        return fold_figures(layout, [each.fold for each in before if each.work is Work.FOLD], step.fold)
    sewn = any(each.groups for each in before)
    if is_on_bench(step) and not (step.work is Work.SET and sewn):
        return bench_figures(layout, step)
    if len(step.groups) > 1:
        return _beside(tuple(_pulled_apart(layout, step, before)), _as_it_lies(layout, step, before, _ROOM))
    return _as_it_lies(layout, step, before, _WHOLE)


def seen_from(layout: Layout, step: MakingStep) -> Seen:
    """The side from which more shows of what is laid on the largest piece."""
    level = {piece.name: piece.level for piece in layout.pattern.pieces}
    if step.groups:
        area = {piece.name: piece.area for piece in layout.pattern.pieces}
        largest = max(step.groups[base_of(layout, step)], key=lambda name: area[name])
        some = [name for name in (step.new or step.pieces) if name != largest]
        outer = sum(level[name] < level[largest] for name in some)
        return Seen.OUTSIDE if 2 * outer > len(some) else Seen.INSIDE
    shows = [layout.pattern.piece(name).showing.value for name, _ in step.fittings]
    return Seen.OUTSIDE if shows and set(shows) == {"outside"} else Seen.INSIDE


def _as_it_lies(
    layout: Layout, step: MakingStep, before: Sequence[MakingStep], within: tuple[float, float]
) -> tuple[Figure, ...]:
    """All pieces of a step laid on each other, seen straight from above, and from which side."""
    seen = seen_from(layout, step)
    known = step.pieces if step.groups or step.work is Work.EDGES else _laid(before)
    view = _fitted(layout, plan(layout, seen), known, within)
    threads = _threads(before)
    if step.work is Work.SEW:
        threads = {**threads, step.seam: Thread.NOW}
    tones = dict.fromkeys(step.new, NEW)
    look = Look(dict.fromkeys(known, 0.0), tones, threads, {}, _turned((*before, step)))
    figures = piece_figures(layout, view, look)
    upon = Figure("upon", "", tuple(_upon(layout, view, step)))
    return (*figures, upon, _caption(figures, seen))


def _laid(before: Sequence[MakingStep]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(name for step in before if step.groups for name in step.pieces))


def _threads(before: Sequence[MakingStep]) -> Mapping[str, Thread]:
    return {step.seam: Thread.SEWN for step in before if step.work is Work.SEW}


def _turned(done: Sequence[MakingStep]) -> frozenset[str]:
    """The pieces whose edges are turned in by now."""
    return frozenset(name for step in done if step.work is Work.TURN for name in step.pieces)


def _upon(layout: Layout, view: View, step: MakingStep) -> Iterator[Ink]:
    """Places of hardware, or the edges to be finished, drawn bold over everything."""
    for name, half in step.fittings:
        at = view.point(layout.pattern.piece(name).placement.to_assembly(half.at))
        for arm in (Point(2.5, 0.0), Point(0.0, 2.5)):
            yield from heavy([at - arm, at + arm], _BOLD)
    if step.work is Work.EDGES:
        largest = max(layout.pattern.pieces, key=lambda piece: piece.area)
        outline = view.path(laid_outline(layout, largest))
        points = [Point(x, y) for x, y, _ in outline.vertices]
        yield from heavy([*points, points[0]], _BOLD)


def _caption(figures: Sequence[Figure], seen: Seen) -> Figure:
    box = _box(figures)
    words = f"seen from {seen.value}"
    at = Point(box.centre.x, box.y0 - 2 * _LETTERS)
    return Figure("caption", "", (Text(Role.LABEL, at, _LETTERS, words, 0.0, Align.CENTRE),))


def _fitted(layout: Layout, view: View, known: Sequence[str], within: tuple[float, float]) -> View:
    box = view.bounds(laid_outline(layout, layout.pattern.piece(name)) for name in known)
    return view.scaled(plain_scale(box.width, box.height, *within))


def _pulled_apart(layout: Layout, step: MakingStep, before: Sequence[MakingStep]) -> Iterator[Figure]:
    """The groups of a step lifted off each other, with the glue between them."""
    view = _fitted(layout, slanted(layout, seen_from(layout, step)), step.pieces, _ROOM)
    groups = step.groups if view.seen is Seen.INSIDE else step.groups[::-1]
    lifts = {name: i * _LIFT for i, group in enumerate(groups) for name in group}
    glue: dict[str, tuple[Ink, ...]] = {}
    for each in glue_of(layout, step):
        lower = each.outer if view.seen is Seen.INSIDE else each.inner
        patches = tuple(Area(Role.TINT, (view.path(path, lifts[lower]),), _GLUE) for path in each.patches)
        glue[lower] = (*glue.get(lower, ()), *patches)
    look = Look(lifts, dict.fromkeys(step.new, NEW), _threads(before), glue, _turned(before))
    figures = piece_figures(layout, view, look)
    yield from figures
    named = named_places(figures, {group[0]: group_name(layout, group) for group in step.groups}, Beside.LEFT)
    yield names_figure(named, _box(figures))


def _box(figures: Sequence[Figure]) -> Bounds:
    return joined_bounds([room(figure.inks) for figure in figures if figure.inks])


def _beside(left: Sequence[Figure], right: Sequence[Figure]) -> tuple[Figure, ...]:
    """Two pictures side by side, their middles on one line."""
    a, b = _box(left), _box(right)
    shift = translation(a.x1 + _APART - b.x0, a.centre.y - b.centre.y)
    return (*left, *(moved(figure, shift) for figure in right))
