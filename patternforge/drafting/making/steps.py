"""The steps of the work, each with its picture as large as the page allows."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import cos, radians, sin

from patternforge.drafting.assembly_sheet import StepSheet, exploded_sheet, step_sheets
from patternforge.drawing.document import Block, Picture, Step
from patternforge.drawing.extent import moved
from patternforge.drawing.model import Align, Figure, Sheet, Text
from patternforge.drawing.scaled import scaled_sheet
from patternforge.drawing.stacked import room
from patternforge.fit.layout import layout
from patternforge.fit.order import sewing_order
from patternforge.geometry.point import Point, joined_bounds
from patternforge.geometry.transform import translation
from patternforge.wallet.pattern import Pattern

__all__ = ["making_steps_told", "within"]

_RIM = 1.0  # white round a picture, mm
_LEAST = 2.0  # height of letters, mm
_LESS = 0.04  # by which a drawing is made smaller until it goes on the page
_APART = "The pieces from the outside in, pulled apart. No scale."
_HEADING = "heading"  # the figure of a sheet that says what its page says already


def making_steps_told(pattern: Pattern, width: float, height: float, letters: float = 1.0) -> tuple[Block, ...]:
    """The pieces pulled apart, then every step in the order of the work.

    No picture exceeds ``width`` x ``height`` mm; its letters are at least 2 mm high, times ``letters``.
    """
    laid = layout(pattern, {leather.role: leather for leather in pattern.design.leathers})
    name, title = pattern.design.name, pattern.design.title
    apart = Picture(within(exploded_sheet(name, title, laid), width, height, letters), _APART, f"{title}: {_APART}")
    return (apart, *_steps(step_sheets(name, title, laid, sewing_order(laid)), width, height, letters))


def _steps(sheets: tuple[StepSheet, ...], width: float, height: float, letters: float) -> Iterator[Step]:
    for each in sheets:
        told = f"step {each.number}: {each.words}"
        yield Step(each.number, each.words, Picture(within(each.sheet, width, height, letters), "", told))


def within(sheet: Sheet, width: float, height: float, letters: float = 1.0) -> Sheet:
    """The drawings of a sheet without its heading or white rim, made smaller where the page has less room.

    Letters stay as high as can be read, so that they take more of a smaller drawing.
    """
    figures = tuple(figure for figure in sheet.figures if figure.name != _HEADING and figure.inks)
    bare = replace(sheet, figures=figures)
    drawn = (
        _snug(_readable(scaled_sheet(bare, 1.0 - _LESS * step), _LEAST * letters))
        for step in range(round(1 / _LESS) - 1)
    )
    return next(each for each in drawn if each.width <= width and each.height <= height)


def _snug(sheet: Sheet) -> Sheet:
    box = joined_bounds([room(figure.inks) for figure in sheet.figures])
    shift = translation(_RIM - box.x0, _RIM - box.y0)
    placed = tuple(moved(figure, shift) for figure in sheet.figures)
    return replace(sheet, width=box.width + 2 * _RIM, height=box.height + 2 * _RIM, figures=placed)


def _readable(sheet: Sheet, least: float) -> Sheet:
    """No letters lower than what can be read on paper."""
    return replace(sheet, figures=tuple(_with_letters(figure, least) for figure in sheet.figures))


def _with_letters(figure: Figure, least: float) -> Figure:
    inks = (_grown(ink, least) if isinstance(ink, Text) and ink.height < least else ink for ink in figure.inks)
    return replace(figure, inks=tuple(inks))


def _grown(words: Text, height: float) -> Text:
    """Words in higher letters: a caption keeps its top, or it would grow into what it stands under.

    Names at a leader keep their middle.
    """
    down = (height - words.height) * (1.0 if words.align is Align.CENTRE else 0.5)
    turn = radians(words.angle)
    return replace(words, height=height, at=words.at + Point(sin(turn), -cos(turn)) * down)
