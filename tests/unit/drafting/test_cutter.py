"""The files of one machine."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from patternforge.drafting.cutter import CutSheet, Cutter, cutter_sheets
from patternforge.drafting.pieces import figures
from patternforge.drafting.purpose import CutFace, Files, FoldTicks, LaserOptions, Purpose, StitchHoles
from patternforge.drafting.sheets import laser_sheets
from patternforge.drawing.course import Course
from patternforge.drawing.extent import extent
from patternforge.drawing.model import Dot, Role, Stroke
from patternforge.errors import DraftError
from patternforge.export.dxf import CUT_ROLES
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import HoleShape, HoleSpec
from tests.designs_built import sleeve, two_fold, with_holes

PLAIN = Cutter("shop", "dxf", LaserOptions(), Files.SHEETS, CUT_ROLES, Course.PIECES, None)


@pytest.fixture(scope="module")
def two() -> Pattern:
    return drafted(two_fold())


def sheets(pattern: Pattern, cutter: Cutter = PLAIN, **laser: Any) -> tuple[CutSheet, ...]:
    return cutter_sheets(pattern, replace(cutter, laser=replace(cutter.laser, **laser)))


def everything(pattern: Pattern, cutter: Cutter = PLAIN, **laser: Any) -> CutSheet:
    return sheets(pattern, cutter, **laser)[-1]


def count(one: CutSheet, role: Role) -> int:
    return sum(ink.role is role for figure in one.sheet.figures for ink in figure.inks)


def test_a_plain_table_lays_out_what_a_laser_is_sent_without_one(two: Pattern) -> None:
    plain = [one for one in laser_sheets(two) if one.kind == "dxf"]
    for mine, usual in zip(sheets(two), plain, strict=True):
        assert mine.name == usual.name.replace("-laser-", "-shop-")
        assert [figure.inks for figure in mine.sheet.figures] == [figure.inks for figure in usual.sheet.figures]


def test_a_bed_of_small_height_takes_the_pieces_on_several_sheets(two: Pattern) -> None:
    some = [one for one in sheets(two, bed=260.0, bed_height=130.0) if "everything" in one.name]
    assert [one.name for one in some] == [f"two-fold-shop-everything-{i}" for i in range(1, len(some) + 1)]
    assert len(some) > 2
    assert all(one.sheet.width <= 260 and one.sheet.height <= 130 for one in some)
    assert [figure.name for one in some for figure in one.sheet.figures] == [piece.name for piece in two.pieces]


def test_a_piece_that_no_bed_takes_is_refused_by_name(two: Pattern) -> None:
    with pytest.raises(DraftError, match=r"'shell' is .* mm high"):
        sheets(two, bed_height=80.0)


def test_a_shop_that_is_sent_pieces_has_a_file_for_each(two: Pattern) -> None:
    one_by_one = sheets(two, replace(PLAIN, files=Files.PIECES))
    assert [one.name for one in one_by_one] == [
        f"two-fold-shop-{piece.name.replace(' ', '-')}" for piece in two.pieces
    ]
    assert all(len(one.sheet.figures) == 1 for one in one_by_one)


def test_what_changes_sizes_stands_in_the_name(two: Pattern) -> None:
    cutter = replace(PLAIN, chords=0.02)
    one = everything(two, cutter, kerf=0.15, allowance=0.3, cut_face=CutFace.BACK)
    assert one.name == "two-fold-shop-everything-back-kerf-0.150-allowance-0.300-chords-0.020"


def test_an_allowance_goes_round_the_outline_alone_and_adds_to_the_kerf(two: Pattern) -> None:
    net, grown = figures_by_name(everything(two)), figures_by_name(everything(two, kerf=0.2, allowance=0.5))
    for name, size in net.items():
        # Half the kerf and the allowance on both sides.
        assert grown[name][0] - size[0] == pytest.approx(1.2, abs=1e-9)
        assert grown[name][1] - size[1] == pytest.approx(1.2, abs=1e-9)


def figures_by_name(one: CutSheet) -> dict[str, tuple[float, float]]:
    boxes = {figure.name: extent(figure.inks) for figure in one.sheet.figures}
    return {name: (box.width, box.height) for name, box in boxes.items()}


def test_holes_are_cut_marked_or_left_out(two: Pattern) -> None:
    holes = sum(len(piece.holes) for piece in two.pieces)
    cut, marked, left = (everything(two, holes=each) for each in StitchHoles)
    assert (count(cut, Role.HOLE), count(cut, Role.MARK)) == (holes, 0)
    assert (count(marked, Role.HOLE), count(marked, Role.MARK)) == (0, holes)
    assert (count(left, Role.HOLE), count(left, Role.MARK)) == (0, 0)


@pytest.mark.parametrize("spec", [HoleSpec(), HoleSpec(HoleShape.SLIT, length=2.0), HoleSpec(HoleShape.MARK)])
def test_a_hole_that_is_marked_is_a_prick_whatever_its_shape_and_whatever_the_kerf(spec: HoleSpec) -> None:
    pattern = drafted(with_holes(sleeve(), spec))
    one = everything(pattern, holes=StitchHoles.MARKED, kerf=1.5)
    marks = [ink for figure in one.sheet.figures for ink in figure.inks if ink.role is Role.MARK]
    assert {ink.diameter for ink in marks if isinstance(ink, Dot)} == {0.3}
    assert len(marks) == sum(len(piece.holes) for piece in pattern.pieces)


def test_holes_the_design_does_not_draw_are_not_marked_either() -> None:
    pattern = drafted(with_holes(sleeve(), HoleSpec(HoleShape.NONE)))
    assert count(everything(pattern, holes=StitchHoles.MARKED), Role.MARK) == 0


def test_roles_that_are_not_written_are_left_out_and_the_layout_stays(two: Pattern) -> None:
    only = everything(two, replace(PLAIN, roles=(Role.OUTLINE,)))
    assert count(only, Role.HOLE) == 0
    outlines = [figure.inks[-1] for figure in everything(two).sheet.figures]
    assert [figure.inks[-1] for figure in only.sheet.figures] == outlines


def test_a_sheet_without_a_line_is_refused(two: Pattern) -> None:
    with pytest.raises(DraftError, match="holds nothing to write: no mark"):
        sheets(two, replace(PLAIN, roles=(Role.MARK,)))


def test_fold_ticks_are_marks(two: Pattern) -> None:
    assert count(everything(two, fold_ticks=FoldTicks.SCORED), Role.MARK) == 8  # two ticks on two lines of two layers


def test_chords_stray_no_further_than_they_may(two: Pattern) -> None:
    true, chorded = everything(two), everything(two, replace(PLAIN, chords=0.02))
    for before, after in zip(true.sheet.figures, chorded.sheet.figures, strict=True):
        assert len(before.inks) == len(after.inks)
        for arcs, lines in zip(before.inks, after.inks, strict=True):
            assert isinstance(lines, Stroke)
            assert not any(segment.is_arc for segment in lines.path.segments)
            if isinstance(arcs, Stroke):
                middles = [segment.point_at(segment.length / 2) for segment in lines.path.segments]
                assert max(arcs.path.distance_to(at) for at in middles) <= 0.02 + 1e-9


def test_every_machine_starts_from_the_pieces_of_a_laser(two: Pattern) -> None:
    cut = {figure.name: len(figure.inks) for figure in figures(two, Purpose.LASER)}
    assert {figure.name: len(figure.inks) for figure in everything(two).sheet.figures} == cut
