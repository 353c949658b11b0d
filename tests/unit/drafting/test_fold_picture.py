"""The picture of a fold being closed: nothing lies over the names of its panels."""

from __future__ import annotations

from dataclasses import replace

import pytest

from patternforge.drafting.fold_picture import fold_figures
from patternforge.drawing.lettering import text_width
from patternforge.drawing.model import Align, Area, Figure, Text
from patternforge.fit.layout import Layout, layout
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import Path
from patternforge.geometry.regions import region
from patternforge.geometry.transform import rotation, translation
from patternforge.wallet.assemble import drafted
from patternforge.wallet.spec import FoldSpec
from tests.unit.wallet.built import shell, wallet


def laid(widths: tuple[float, ...], turned: bool) -> Layout:
    design = wallet(shell(len(widths)), widths=widths, folds=(FoldSpec(),) * (len(widths) - 1), seams=())
    pattern = drafted(replace(design, body=replace(design.body, turned=turned)))
    return layout(pattern, {leather.role: leather for leather in pattern.design.leathers})


def letters(text: Text) -> Path:
    """The box of a name where it stands."""
    width = text_width(text.content, text.height)
    start = -width / 2 if text.align is Align.CENTRE else 0.0
    box = rounded_rectangle(start, 0.0, start + width, text.height, 0.0)
    return translation(text.at.x, text.at.y).path(rotation(text.angle).path(box))


def covered(figures: tuple[Figure, ...]) -> list[str]:
    """The names over which something drawn later lies."""
    inks = [ink for figure in figures for ink in figure.inks]
    found = []
    for index, ink in enumerate(inks):
        if isinstance(ink, Text):
            later = [each.paths[0] for each in inks[index + 1 :] if isinstance(each, Area)]
            found += [ink.content for path in later if region(path).common(region(letters(ink))).area > 1e-6]
    return found


@pytest.mark.parametrize("turned", [False, True], ids=["beside each other", "turned"])
@pytest.mark.parametrize("widths", [(90.0, 100.0), (60.0, 100.0), (55.0, 60.0, 65.0), (90.0, 4.0, 90.0)], ids=str)
def test_no_name_is_covered(widths: tuple[float, ...], turned: bool) -> None:
    found = laid(widths, turned)
    for fold in range(1, len(widths)):
        figures = fold_figures(found, tuple(range(1, fold)), fold)
        assert sum(isinstance(ink, Text) for figure in figures for ink in figure.inks) >= len(widths)
        assert covered(figures) == []
