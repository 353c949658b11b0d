"""What a table says reaches the layout and the writer of its format."""

from __future__ import annotations

from dataclasses import replace

import pytest

from patternforge.drafting.purpose import CutFace, FoldTicks, StitchHoles
from patternforge.drawing.course import Course
from patternforge.drawing.model import Role
from patternforge.errors import DraftError
from patternforge.export.dxf import COLOURS, DxfOptions, DxfVersion
from patternforge.export.hpgl import CHORDS, HpglOptions
from patternforge.export.hpgl import PENS as PLOT_PENS
from patternforge.export.svg import PENS, Pen, SvgOptions
from patternforge.machines.load import load_machine
from patternforge.machines.writing import cutter, writing_options
from tests.unit.machines.good_machine import GOOD, PLOT, VECTOR


def test_the_layout_takes_bed_gap_kerf_face_holes_and_both_allowances() -> None:
    laid_out = cutter(load_machine(GOOD, "shop.yaml"))
    laser = laid_out.laser
    assert (laser.kerf, laser.gap, laser.bed, laser.bed_height) == (0.2, 12.0, 600.0, 400.0)
    assert laser.allowance == pytest.approx(0.4)
    assert (laser.cut_face, laser.fold_ticks, laser.holes) == (CutFace.BACK, FoldTicks.SCORED, StitchHoles.MARKED)
    assert (laid_out.word, laid_out.kind, laid_out.chords) == ("shop", "dxf", 0.02)
    assert (laid_out.roles, laid_out.course) == ((Role.HOLE, Role.MARK, Role.OUTLINE), Course.OPERATIONS)


def test_a_dxf_file_takes_release_layers_colours_and_weights() -> None:
    options = writing_options(load_machine(GOOD, "shop.yaml"))
    assert isinstance(options, DxfOptions)
    assert options.version is DxfVersion.R2018
    assert [options.layer(role) for role in (Role.MARK, Role.HOLE, Role.OUTLINE)] == ["SCORE", "HOLES", "EDGE"]
    assert [options.colours[role] for role in (Role.MARK, Role.HOLE, Role.OUTLINE)] == [5, 6, 1]
    assert options.colours[Role.OPENING] == COLOURS[Role.OPENING]
    assert options.weights == {Role.MARK: 13, Role.OUTLINE: 50}


def test_an_svg_file_takes_colours_and_widths_and_classes() -> None:
    options = writing_options(load_machine(VECTOR, "shop.yaml"))
    assert isinstance(options, SvgOptions)
    assert options.pens[Role.MARK] == Pen("#0000ff", PENS[Role.MARK].dashes, 0.1)
    assert options.pens[Role.OUTLINE] == Pen("#ff8800", (), PENS[Role.OUTLINE].width)
    assert options.pens[Role.HOLE] == PENS[Role.HOLE]
    assert options.classes == {Role.OUTLINE: "EDGE"}


def test_a_plot_takes_pens_and_the_error_of_its_chords() -> None:
    machine = load_machine(PLOT, "shop.yaml")
    options = writing_options(machine)
    assert isinstance(options, HpglOptions)
    assert options.pens == {**PLOT_PENS, Role.MARK: 4, Role.OUTLINE: 3}
    assert options.chords == CHORDS
    coarse = writing_options(replace(machine, chords=0.05))
    assert isinstance(coarse, HpglOptions)
    assert coarse.chords == 0.05


def test_a_size_that_no_layout_takes_is_refused() -> None:
    with pytest.raises(DraftError, match="the kerf is 3 mm"):
        cutter(replace(load_machine(PLOT, "shop.yaml"), kerf=3.0))
