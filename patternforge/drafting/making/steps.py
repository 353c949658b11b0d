"""The steps of the work, each with its picture as large as the page allows."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from patternforge.drafting.assembly_sheet import StepSheet, step_sheets
from patternforge.drawing.document import Picture, Step
from patternforge.drawing.extent import moved
from patternforge.drawing.model import Figure, Sheet, Text
from patternforge.drawing.scaled import scaled_sheet
from patternforge.drawing.stacked import room
from patternforge.fit.layout import layout
from patternforge.fit.order import sewing_order
from patternforge.geometry.point import joined_bounds
from patternforge.geometry.transform import translation
from patternforge.wallet.pattern import Pattern

__all__ = ["making_steps_told", "within"]

_RIM = 1.0  # white round a picture, mm
_LEAST = 2.0  # height of letters, mm
_HEADING = "heading"  # the figure of a sheet that says what its page says already


def making_steps_told(pattern: Pattern, width: float, height: float) -> tuple[Step, ...]:
    """Every step in the order of the work; no picture is larger than ``width`` x ``height`` mm."""
    laid = layout(pattern, {leather.role: leather for leather in pattern.design.leathers})
    design = pattern.design
    return tuple(_steps(step_sheets(design.name, design.title, laid, sewing_order(laid)), width, height))


def _steps(sheets: tuple[StepSheet, ...], width: float, height: float) -> Iterator[Step]:
    for each in sheets:
        told = f"step {each.number}: {each.words}"
        yield Step(each.number, each.words, Picture(within(each.sheet, width, height), "", told))


def within(sheet: Sheet, width: float, height: float) -> Sheet:
    """The drawings of a sheet without its heading or white rim, made smaller where the page has less room."""
    figures = [figure for figure in sheet.figures if figure.name != _HEADING and figure.inks]
    box = joined_bounds([room(figure.inks) for figure in figures])
    shift = translation(_RIM - box.x0, _RIM - box.y0)
    placed: tuple[Figure, ...] = tuple(moved(figure, shift) for figure in figures)
    snug = replace(sheet, width=box.width + 2 * _RIM, height=box.height + 2 * _RIM, figures=placed)
    factor = min(1.0, width / snug.width, height / snug.height)
    return snug if factor == 1.0 else _readable(scaled_sheet(snug, factor))


def _readable(sheet: Sheet) -> Sheet:
    """No letters lower than what can be read on paper."""
    return replace(sheet, figures=tuple(_with_letters(figure) for figure in sheet.figures))


def _with_letters(figure: Figure) -> Figure:
    inks = (replace(ink, height=max(ink.height, _LEAST)) if isinstance(ink, Text) else ink for ink in figure.inks)
    return replace(figure, inks=tuple(inks))
