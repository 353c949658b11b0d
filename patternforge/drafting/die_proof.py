"""The proof of one die: at 1:1 on a page of its own, with its sizes, to be signed by both sides."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from patternforge.drafting.die_curves import curve_letters, curves
from patternforge.drafting.die_pack import DiePack
from patternforge.drafting.die_words import die_notes
from patternforge.drafting.dies import Die
from patternforge.drafting.signing import SIGNING, signing_inks
from patternforge.drawing.dimension import DIMENSION, size_inks
from patternforge.drawing.extent import extent, moved
from patternforge.drawing.header import UPRIGHT, Head, head_height, head_inks
from patternforge.drawing.model import Figure, Ink, Page
from patternforge.drawing.paper import Paper, larger
from patternforge.drawing.printing import PrintSettings, printable_area
from patternforge.drawing.prose import Note, notes_height, notes_inks
from patternforge.errors import DraftError
from patternforge.geometry.point import Bounds, Point
from patternforge.geometry.transform import identity, rotation, translation

__all__ = ["LEGEND", "MEASURE", "columns_in", "proof_page"]

LEGEND = ("Heavy lines: cut. Thin lines with arrows: sizes.", "Heavy: cut. Thin: sizes.")
MEASURE = "Measure the bars both ways before signing.", "Measure the bars."

_NOTES = 2.0  # height of letters, mm
_ROOM = 1.0  # right of and above the drawing, mm
_COLUMN = 80.0  # mm: the least width of a column of notes
_GAP = 4.0  # between drawing, notes and signatures, mm


@dataclass(frozen=True, slots=True)
class _Plan:
    """A proof on one kind of page: the area it may be drawn on, whether the die is turned, and the room for it."""

    paper: Paper
    area: Bounds
    turned: bool
    room: Bounds


def proof_page(pack: DiePack, die: Die, paper: Paper, settings: PrintSettings) -> Page:
    """The proof of ``die`` on ``paper`` held either way, on the next larger paper where its own cannot take it.

    The die is turned by 90 degrees, and the page says so, only where it fits in no other way. ``settings`` give what
    stands at the head of every page. DraftError when no paper, four sizes up, can take it.
    """
    number = pack.dies.index(die) + 1
    heading = f"Die {number} of {len(pack.dies)}: {die.name}. {settings.heading}"
    notes = die_notes(pack, die)
    plan = _plan(die.figure, notes, heading, paper, settings)
    head = Head(heading, _imprint(settings), _head_notes(plan, paper), settings.letters, LEGEND)
    shown = _drawing(die.figure, plan)
    below = _below(notes, plan, extent(shown.inks).y0, settings)
    inks = (*head_inks(head, plan.area), *_measured(shown), *below)
    label = f"die {number}"
    return Page(label, plan.paper.width, plan.paper.height, inks, settings.x_correction, settings.y_correction)


def _imprint(settings: PrintSettings) -> str:
    x, y = settings.x_correction, settings.y_correction
    how = "not fitted to the page" if x == y == 1 else f"printer correction x {round(x, 4):g} y {round(y, 4):g}"
    return f"Proof to be signed. Print at 100 %, {how}."


def _head_notes(plan: _Plan, paper: Paper) -> tuple[tuple[str, ...], ...]:
    own = {round(paper.width), round(paper.height)} == {round(plan.paper.width), round(plan.paper.height)}
    size = f"{plan.paper.width:g} x {plan.paper.height:g} mm"
    larger_page = (f"This page is larger than {paper.name}: {size}.", f"Page {size}.")
    turned = ("Turned by 90 degrees against the file.", "Turned 90 degrees.")
    return (MEASURE, *(() if own else (larger_page,)), *((turned,) if plan.turned else ()))


def _plan(figure: Figure, notes: tuple[Note, ...], heading: str, paper: Paper, settings: PrintSettings) -> _Plan:
    box = extent(figure.inks)
    for sheet in larger(paper):
        for turned in (False, True):
            width, height = (box.height, box.width) if turned else (box.width, box.height)
            for held in (sheet, sheet.turned()):
                room = _room(notes, heading, held, settings)
                if room.width >= width - 1e-9 and room.height >= height - 1e-9:
                    return _Plan(held, printable_area(held, settings), turned, room)
    raise DraftError(f"the die {figure.name!r} is too large for a proof, even on paper far larger than {paper.name}")


def _room(notes: tuple[Note, ...], heading: str, paper: Paper, settings: PrintSettings) -> Bounds:
    """Where a die may lie on a page: what head, bars, dimension lines, notes and signatures leave."""
    area = printable_area(paper, settings)
    own = _beside_bars(area)
    large = settings.letters.factor
    top = area.y1 - head_height(heading, area.width, settings.letters) - _ROOM
    words = notes_height(notes, own.width, columns_in(own.width), _NOTES * large)
    foot = area.y0 + SIGNING * large + _GAP + words + _GAP
    return Bounds(own.x0 + DIMENSION, foot + DIMENSION, area.x1 - _ROOM, top)


def _beside_bars(area: Bounds) -> Bounds:
    return Bounds(area.x0 + UPRIGHT.width + _GAP, area.y0, area.x1, area.y1)


def columns_in(width: float) -> int:
    """How many columns of notes a width takes."""
    return max(1, int(width / _COLUMN))


def _drawing(figure: Figure, plan: _Plan) -> Figure:
    """The die in the upper left of its room."""
    turn = rotation(90) if plan.turned else identity()
    box = extent(moved(figure, turn).inks)
    return moved(figure, turn.then(translation(plan.room.x0 - box.x0, plan.room.y1 - box.y1)))


def _measured(shown: Figure) -> Iterator[Ink]:
    """A die with its sizes and the letters of its curves."""
    yield from shown.inks
    yield from curve_letters(curves(shown))
    yield from size_inks(extent(shown.inks))


def _below(notes: tuple[Note, ...], plan: _Plan, lowest: float, settings: PrintSettings) -> Iterator[Ink]:
    """Notes under the drawing, whose ``lowest`` point it is, and the upright bars; under them the signatures."""
    own, large = _beside_bars(plan.area), settings.letters.factor
    size, columns = _NOTES * large, columns_in(own.width)
    top = lowest - DIMENSION - _GAP
    foot = top - notes_height(notes, own.width, columns, size) - _GAP
    yield from notes_inks(notes, Bounds(own.x0, foot, own.x1, top), columns, size)
    yield from signing_inks(Point(own.x0, foot), own.width, large)
