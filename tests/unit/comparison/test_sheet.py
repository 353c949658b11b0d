"""The picture of old over new: what is drawn of a piece that changes, and where the band along its new edge lies."""

from __future__ import annotations

from dataclasses import replace

import pytest

from patternforge.comparison.sets import compared
from patternforge.comparison.sheet import comparison_sheet
from patternforge.drawing.model import Area, Dot, Figure, Role, Stroke
from patternforge.errors import DraftError
from tests.designs_built import two_fold
from tests.unit.comparison.built import made

FOUND = compared(made(two_fold(outer=1.2)), made(two_fold(outer=1.6)))
SHEET = comparison_sheet(FOUND, "sheet")


def strokes(figure: Figure, role: Role) -> list[Stroke]:
    return [ink for ink in figure.inks if isinstance(ink, Stroke) and ink.role is role]


def test_only_what_changes_is_drawn_old_and_new_at_true_size() -> None:
    heading, shell = SHEET.figures
    assert (heading.name, shell.name) == ("heading", "shell")
    (new,), (old,) = strokes(shell, Role.OUTLINE), strokes(shell, Role.SEAM)
    (change,) = FOUND.other_die
    assert (old.path.bounds.width, new.path.bounds.width) == pytest.approx((change.old.width, change.new.width))
    assert old.path.bounds.x0 == pytest.approx(new.path.bounds.x0)


def test_the_band_lies_along_the_edge_that_moved_and_nowhere_else() -> None:
    shell = SHEET.figures[1]
    (new,) = strokes(shell, Role.OUTLINE)
    bands = [ink for ink in shell.inks if isinstance(ink, Area)]
    # The two corners of 6 mm and the side between them; along the top and the bottom the old edge lies under the new.
    assert min(path.bounds.x0 for ink in bands for path in ink.paths) > new.path.bounds.x1 - 6.0 - 2.0
    length = sum(path.bounds.height for ink in bands for path in ink.paths)
    assert length > new.path.bounds.height - 2.0


def test_holes_that_moved_are_drawn_twice_and_the_others_once() -> None:
    shell = SHEET.figures[1]
    (change,) = FOUND.other_die
    dots = [ink.role for ink in shell.inks if isinstance(ink, Dot)]
    assert dots.count(Role.HOLE) == change.holes.after
    assert dots.count(Role.SEAM) == change.holes.moved
    assert len(strokes(shell, Role.LABEL)) == change.holes.moved


def test_pieces_that_only_one_set_has_are_drawn_alone() -> None:
    fewer = replace(FOUND.old, pieces=FOUND.old.pieces[1:])
    for found, role in ((compared(fewer, FOUND.old), Role.OUTLINE), (compared(FOUND.old, fewer), Role.SEAM)):
        (_, shell) = comparison_sheet(found, "sheet").figures
        assert shell.name == "shell"
        assert [ink.role for ink in shell.inks if isinstance(ink, Stroke)] == [role]


def test_there_is_no_picture_of_nothing() -> None:
    with pytest.raises(DraftError):
        comparison_sheet(compared(FOUND.old, FOUND.old), "sheet")
