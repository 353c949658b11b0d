"""Sections as drawn."""

from __future__ import annotations

import itertools

import pytest

from patternforge.drafting.section_sheet import section_sheet
from patternforge.drawing.model import Area, Role, Sheet, Text
from patternforge.drawing.stacked import room
from patternforge.fit.close import closed_wallet
from patternforge.fit.layout import layout
from patternforge.fit.section import closed_section, open_section
from patternforge.wallet.assemble import drafted
from tests.designs_built import two_fold

PATTERN = drafted(two_fold())
LAID = layout(PATTERN, {leather.role: leather for leather in PATTERN.design.leathers})
SECTIONS = (open_section(LAID, 30.0), closed_section(LAID, closed_wallet(LAID), 30.0))


def sheet() -> Sheet:
    return section_sheet("section", "Two-fold", SECTIONS, ["outer", "inner"])


def test_every_strip_is_filled_at_true_size_in_the_tone_of_its_leather() -> None:
    drawn = sheet()
    legend = [ink.tone for ink in drawn.figures[1].inks if isinstance(ink, Area)]
    assert len(set(legend)) == 3
    for figure, section in zip(drawn.figures[2:], SECTIONS, strict=True):
        areas = [ink for ink in figure.inks if isinstance(ink, Area)]
        sizes = [(area.paths[0].bounds.width, area.paths[0].bounds.height) for area in areas]
        assert sizes == [
            pytest.approx((strip.path.bounds.width, strip.path.bounds.height)) for strip in section.strips
        ]
        by_leather = {strip.leather: area.tone for strip, area in zip(section.strips, areas, strict=True)}
        assert by_leather[""] < by_leather["inner"] < by_leather["outer"]
        assert set(by_leather.values()) == set(legend)


def test_the_thickness_of_each_section_stands_beside_it() -> None:
    for figure, section in zip(sheet().figures[2:], SECTIONS, strict=True):
        words = [ink.content for ink in figure.inks if isinstance(ink, Text)]
        assert f"{section.thickness:.2f} mm" in words
        assert any(section.name in word for word in words)


def test_sections_do_not_run_into_each_other() -> None:
    boxes = [room(figure.inks) for figure in sheet().figures]
    assert all(above.y0 > below.y1 for above, below in itertools.pairwise(boxes))
    assert all(ink.role in (Role.TINT, Role.LABEL, Role.GUIDE) for figure in sheet().figures for ink in figure.inks)
