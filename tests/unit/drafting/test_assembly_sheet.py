"""The exploded picture and the pictures of the steps, read as drawings."""

from __future__ import annotations

from functools import cache
from itertools import pairwise

import pytest

from patternforge.drafting.assembly_pieces import NEW
from patternforge.drafting.assembly_sheet import StepSheet, exploded_sheet, step_sheets
from patternforge.drafting.fold_picture import moving_panels
from patternforge.drawing.model import Area, Dot, Figure, Role, Sheet, Stroke, Text
from patternforge.fit.layout import Layout, layout
from patternforge.fit.making import MakingStep, Work, making_steps
from patternforge.fit.order import sewing_order
from patternforge.geometry.path import Path
from patternforge.wallet.assemble import drafted
from patternforge.wallet.spec import BankPart, Design, FoldSpec, LayerPart, Side
from tests.designs_built import sleeve, two_fold
from tests.folded_built import dressed_envelope
from tests.unit.fit.found import small
from tests.unit.wallet.built import shell


def laid(design: Design) -> Layout:
    pattern = drafted(design)
    return layout(pattern, {leather.role: leather for leather in pattern.design.leathers})


@cache
def told() -> tuple[Layout, tuple[MakingStep, ...], tuple[StepSheet, ...]]:
    found = laid(two_fold())
    order = sewing_order(found)
    return found, making_steps(found, order), step_sheets("step", "Two-fold", found, order)


def areas(sheet: Sheet, role: Role, tone: float) -> list[Area]:
    inks = (ink for figure in sheet.figures for ink in figure.inks)
    return [ink for ink in inks if isinstance(ink, Area) and ink.role is role and ink.tone == tone]


def test_every_stitch_of_the_seam_of_a_step_is_drawn_bold_and_no_other() -> None:
    found, steps, sheets = told()
    for step, sheet in zip(steps, sheets, strict=True):
        if step.work is Work.SEW:
            (seam,) = [each for each in found.pattern.seams if each.name == step.seam]
            stitches = sum(a.run == b.run for a, b in pairwise(seam.holes))
            assert len(areas(sheet.sheet, Role.OUTLINE, 1.0)) == stitches
            assert f"{len(seam.holes)} holes" in sheet.words


def test_new_pieces_alone_are_toned_in_both_pictures_of_a_step() -> None:
    _, steps, sheets = told()
    for step, sheet in zip(steps, sheets, strict=True):
        if step.work is Work.SEW:
            toned = [f.name for f in sheet.sheet.figures if isinstance(f.inks[0], Area) and f.inks[0].tone == NEW]
            assert sorted(toned) == sorted([*step.new, *step.new])


def test_what_was_sewn_before_is_drawn_thin() -> None:
    _, steps, sheets = told()
    before = 0
    for step, sheet in zip(steps, sheets, strict=True):
        if step.work is Work.SEW:
            inks = [ink for figure in sheet.sheet.figures for ink in figure.inks]
            thin = [ink for ink in inks if isinstance(ink, Stroke) and ink.role is Role.SEAM]
            assert bool(thin) is (before > 0)
            before += 1
    assert before > 3


def test_the_words_name_every_new_piece_and_the_seam() -> None:
    _, steps, sheets = told()
    assert [sheet.number for sheet in sheets] == list(range(1, len(steps) + 1))
    for step, sheet in zip(steps, sheets, strict=True):
        assert all(name in sheet.words for name in step.new)
        assert step.seam in sheet.words
        assert sheet.words.endswith(".")


def test_a_page_of_a4_takes_every_picture() -> None:
    found, _, sheets = told()
    for sheet in (exploded_sheet("exploded", "Two-fold", found), *(each.sheet for each in sheets)):
        assert sheet.width <= 190.0
        assert sheet.height <= 250.0


def test_every_piece_is_pulled_apart_once_with_its_holes_and_its_name() -> None:
    found, _, _ = told()
    sheet = exploded_sheet("exploded", "Two-fold", found)
    pieces = [figure for figure in sheet.figures if figure.name not in ("names", "heading")]
    assert [figure.name for figure in pieces] == [piece.name for piece in found.pattern.pieces]
    for figure, piece in zip(pieces, found.pattern.pieces, strict=True):
        assert sum(isinstance(ink, Dot) for ink in figure.inks) == len(piece.holes)
    assert texts(sheet, "names") == {piece.name for piece in found.pattern.pieces}


def texts(sheet: Sheet, figure: str) -> set[str]:
    inks = (ink for each in sheet.figures if each.name == figure for ink in each.inks)
    return {ink.content for ink in inks if isinstance(ink, Text)}


def test_every_name_leads_to_a_place_of_its_piece_that_can_be_seen() -> None:
    found, _, _ = told()
    *drawn, names, _ = exploded_sheet("exploded", "Two-fold", found).figures
    grounds = {figure.name: ground(figure) for figure in drawn}
    said = [ink for ink in names.inks if isinstance(ink, Text)]
    dots = [ink for ink in names.inks if isinstance(ink, Dot)]
    for text, dot in zip(said, dots, strict=True):
        assert grounds[text.content].contains(dot.centre)
        above = drawn[list(grounds).index(text.content) + 1 :]
        assert not any(ground(each).contains(dot.centre) for each in above)


def ground(figure: Figure) -> Path:
    return next(ink.paths[0] for ink in figure.inks if isinstance(ink, Area))


def test_pockets_on_the_outside_are_shown_from_the_outside() -> None:
    bank = BankPart("cards", "inner", 0, "card", slots=2, step=12.0, show=12.0, facing=Side.OUTSIDE)
    found = laid(sleeve(parts=(bank, LayerPart("shell", "outer", 0, 0))))
    sheets = step_sheets("step", "Money clip", found, sewing_order(found))
    (first,) = [sheet for sheet in sheets if "Sew cards stop 2" in sheet.words]
    assert texts(first.sheet, "caption") == {"seen from the outside"}
    assert "Lay cards 2 on shell." in first.words


@pytest.mark.parametrize(
    ("widths", "fold", "moving"),
    [
        ((100.0, 100.0), 1, (1,)),
        ((60.0, 100.0), 1, (0,)),
        ((90.0, 95.0, 100.0), 1, (0,)),
        ((90.0, 95.0, 100.0), 2, (2,)),
    ],
)
def test_the_smaller_side_of_a_fold_is_turned_over(
    widths: tuple[float, ...], fold: int, moving: tuple[int, ...]
) -> None:
    pattern = small(shell(len(widths)), widths=widths, folds=(FoldSpec(),) * (len(widths) - 1), seams=())
    found = layout(pattern, {leather.role: leather for leather in pattern.design.leathers})
    assert moving_panels(found, fold) == moving


def test_a_folded_wallet_has_a_step_for_every_fold_in_the_order_of_closing() -> None:
    found = laid(dressed_envelope())
    folded = found.pattern.folded
    assert folded is not None
    sheets = step_sheets("step", "Envelope", found, sewing_order(found))
    for hinge, sheet in zip(folded.hinges, sheets[1:], strict=False):
        assert f"Fold {hinge.face} " in sheet.words
        assert areas(sheet.sheet, Role.OUTLINE, NEW)
    for tab in folded.tabs:
        (said,) = [
            sheet.number for sheet in sheets if f"Put {tab.name} through its slit in {tab.into}." in sheet.words
        ]
        closed = {hinge.face: hinge.number for hinge in folded.hinges}
        # The blank is the first step.
        assert said == 1 + max(closed.get(tab.face, 0), closed.get(tab.into, 0))
