"""The picture of one step: what is brought together pulled apart, and how it lies once it is sewn."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from patternforge.drafting.assembly_pieces import NEW, Look, Thread, piece_figures
from patternforge.drafting.assembly_view import Seen, View, fitting_scale, laid_outline, plan, slanted
from patternforge.drafting.assembly_words import group_name
from patternforge.drafting.leaders import Beside, named_places, names_figure
from patternforge.drawing.extent import moved
from patternforge.drawing.model import Area, Figure, Ink, Role
from patternforge.drawing.stacked import room
from patternforge.fit.glue import glue_of
from patternforge.fit.layout import Layout
from patternforge.fit.making import MakingStep, Work
from patternforge.geometry.point import Bounds, joined_bounds
from patternforge.geometry.transform import translation

__all__ = ["step_figures"]

_ROOM = (66.0, 66.0)  # of one picture without names, mm
_LIFT = 22.0  # between what is brought together, mm of the picture
_APART = 8.0
_GLUE = 0.6


def step_figures(layout: Layout, steps: Sequence[MakingStep], number: int) -> tuple[Figure, ...]:
    """The figures of a step, nearest to the eye last; ``number`` counts from 0."""
    step = steps[number]
    sewn = {each.seam: Thread.SEWN for each in steps[:number] if each.work is Work.SEW}
    after = plan(layout)
    known = step.pieces or tuple(piece.name for piece in layout.pattern.pieces)
    tones = dict.fromkeys(step.new, NEW)
    after = _fitted(layout, after, known)
    threads = {**sewn, step.seam: Thread.NOW} if step.seam else sewn
    below = piece_figures(layout, after, Look(dict.fromkeys(known, 0.0), tones, threads, {}))
    if len(step.groups) < 2:
        return below
    return _beside(tuple(_apart(layout, step, sewn)), below)


def _fitted(layout: Layout, view: View, known: Sequence[str]) -> View:
    box = view.bounds(laid_outline(layout, layout.pattern.piece(name)) for name in known)
    return view.scaled(fitting_scale(box.width, box.height, *_ROOM))


def _apart(layout: Layout, step: MakingStep, sewn: dict[str, Thread]) -> Iterator[Figure]:
    """The groups of a step lifted off each other, with the glue between them."""
    view = _fitted(layout, slanted(layout), step.pieces)
    lifts = {name: i * _LIFT for i, group in enumerate(step.groups) for name in group}
    glue: dict[str, tuple[Ink, ...]] = {}
    for each in glue_of(layout, step):
        lower = each.outer if view.seen is Seen.INSIDE else each.inner
        patches = tuple(Area(Role.TINT, (view.path(path, lifts[lower]),), _GLUE) for path in each.patches)
        glue[lower] = (*glue.get(lower, ()), *patches)
    figures = piece_figures(layout, view, Look(lifts, dict.fromkeys(step.new, NEW), sewn, glue))
    yield from figures
    named = named_places(figures, {group[0]: group_name(group) for group in step.groups}, Beside.LEFT)
    yield names_figure(named, _box(figures))


def _box(figures: Sequence[Figure]) -> Bounds:
    return joined_bounds([room(figure.inks) for figure in figures])


def _beside(left: Sequence[Figure], right: Sequence[Figure]) -> tuple[Figure, ...]:
    """Two pictures side by side, their middles on one line."""
    a, b = _box(left), _box(right)
    shift = translation(a.x1 + _APART - b.x0, a.centre.y - b.centre.y)
    return (*left, *(moved(figure, shift) for figure in right))
