"""All steps of making a wallet on one sheet, one below the other, each under its words."""

from __future__ import annotations

from collections.abc import Sequence

from patternforge.drafting.assembly_sheet import StepSheet
from patternforge.drawing.album import broken_lines
from patternforge.drawing.extent import moved
from patternforge.drawing.model import Figure, Role, Sheet, Text
from patternforge.geometry.point import Point
from patternforge.geometry.transform import translation

__all__ = ["step_heading", "steps_sheet"]

_WIDTH, _MARGIN, _GAP = 190.0, 5.0, 6.0  # mm
_HEADING, _LETTERS, _PITCH = 3.5, 2.5, 3.8


def steps_sheet(name: str, title: str, steps: Sequence[StepSheet]) -> Sheet:
    """The steps from the top down; DraftError for a word wider than the sheet."""
    figures = [
        Figure("heading", "", (Text(Role.LABEL, Point(_MARGIN, -_HEADING), _HEADING, f"{title}: step by step"),))
    ]
    top = -_HEADING - _GAP
    for step in steps:
        lines = broken_lines(step_heading(step), _LETTERS, _WIDTH - 2 * _MARGIN)
        words = (
            Text(Role.LABEL, Point(_MARGIN, top - _PITCH * row), _LETTERS, line)
            for row, line in enumerate(lines, start=1)
        )
        figures.append(Figure(f"step {step.number}", "", tuple(words)))
        top -= _PITCH * len(lines)
        figures += (moved(figure, translation(0.0, top - step.sheet.height)) for figure in step.sheet.figures)
        top -= step.sheet.height + _GAP
    width = max(_WIDTH, *(step.sheet.width for step in steps))
    height = _MARGIN - top
    return Sheet(name, width, height, tuple(moved(figure, translation(0.0, height - _MARGIN)) for figure in figures))


def step_heading(step: StepSheet) -> str:
    """The words of a step after its number."""
    return f"{step.number}. {step.words}"
