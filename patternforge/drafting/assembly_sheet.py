"""Pictures for the bench: the pieces pulled apart, and how they come together step by step."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from patternforge.drafting.assembly_words import step_words
from patternforge.drafting.exploded import exploded_figures
from patternforge.drafting.folded_picture import (
    FoldedWallet,
    blank_figures,
    exploded_faces,
    flap_figures,
    folded_wallet,
)
from patternforge.drafting.folded_words import blank_words, filling_words, flap_words
from patternforge.drafting.step_picture import step_figures
from patternforge.drawing.extent import moved
from patternforge.drawing.model import Figure, Role, Sheet, Text
from patternforge.drawing.stacked import room
from patternforge.fit.layout import Layout
from patternforge.fit.making import making_steps
from patternforge.fit.order import SewingOrder
from patternforge.geometry.point import Point, joined_bounds
from patternforge.geometry.transform import translation

__all__ = ["StepSheet", "exploded_sheet", "step_sheets"]

_MARGIN = 5.0  # round a picture, mm
_HEADING, _LETTERS = 3.5, 2.2  # mm


@dataclass(frozen=True, slots=True)
class StepSheet:
    """One step: its ``number`` from 1, what is done in plain sentences, and a picture that a page of A4 takes."""

    number: int
    words: str
    sheet: Sheet


def exploded_sheet(name: str, title: str, laid: Layout) -> Sheet:
    """Every piece lifted off what it lies on, the outermost lowest, named, under a heading; a page of A4 takes it.

    Of a wallet folded from one piece the faces as they lie closed, the lowest seen from the inside first.
    """
    if laid.pattern.folded:
        return _sheet(name, exploded_faces(folded_wallet(laid.pattern)), f"{title}: faces as they lie closed")
    return _sheet(name, exploded_figures(laid), f"{title}: pieces from the outside in")


def step_sheets(name: str, title: str, laid: Layout, order: SewingOrder) -> tuple[StepSheet, ...]:
    """The steps of making a wallet in the order in which they can be done, each with its words and its picture.

    A wallet folded from one piece has no seams: its folds are its steps, in the order of closing.
    """
    if laid.pattern.folded:
        return _folded_sheets(name, title, folded_wallet(laid.pattern))
    steps = making_steps(laid, order)
    return tuple(
        StepSheet(
            number,
            step_words(laid, step),
            _sheet(f"{name}-{number:02d}", step_figures(laid, steps, number - 1), f"{title}: step {number}"),
        )
        for number, step in enumerate(steps, start=1)
    )


def _folded_sheets(name: str, title: str, wallet: FoldedWallet) -> tuple[StepSheet, ...]:
    numbers = range(1, len(wallet.closed.parts.folds) + 1)
    filled = filling_words(wallet)
    told = [
        (blank_words(wallet), blank_figures(wallet)),
        *((flap_words(wallet, number), flap_figures(wallet, number)) for number in numbers),
        *([(filled, exploded_faces(wallet))] if filled else ()),
    ]
    return tuple(
        StepSheet(number, words, _sheet(f"{name}-{number:02d}", figures, f"{title}: step {number}"))
        for number, (words, figures) in enumerate(told, start=1)
    )


def _sheet(name: str, figures: Sequence[Figure], heading: str) -> Sheet:
    """Figures that lie over each other as a sheet, under a heading."""
    box = joined_bounds([room(figure.inks) for figure in figures if figure.inks])
    shift = translation(_MARGIN - box.x0, _MARGIN - box.y0)
    top = box.height + 2 * _MARGIN
    words = Figure("heading", "", (Text(Role.LABEL, Point(_MARGIN, top), _HEADING, heading),))
    placed = tuple(moved(figure, shift) for figure in figures)
    width = max(box.width, room(words.inks).width) + 2 * _MARGIN
    return Sheet(name, width, top + _HEADING + _MARGIN, (*placed, words))
