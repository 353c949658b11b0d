"""Pictures of steps made smaller until they go on the page."""

from __future__ import annotations

import pytest

from patternforge.drafting.making.steps import within
from patternforge.drawing.model import Figure, Role, Sheet, Stroke, Text
from patternforge.errors import DraftError
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.point import Point


def picture(name: str) -> Sheet:
    """An oblong of 120 x 80 mm with a name of letters 2.2 mm high beside it."""
    oblong = Stroke(Role.OUTLINE, rounded_rectangle(0.0, 0.0, 120.0, 80.0, 0.0))
    return Sheet("a-step-2", 120.0, 80.0, (Figure("a", "", (oblong, Text(Role.LABEL, Point(0.0, 0.0), 2.2, name))),))


@pytest.mark.parametrize("letters", [1.0, 1.4])
def test_the_drawing_gives_way_and_its_letters_stay_as_high_as_can_be_read(letters: float) -> None:
    small = within(picture("shell"), 60.0, 60.0, letters)
    assert small.width <= 60.0
    heights = [ink.height for figure in small.figures for ink in figure.inks if isinstance(ink, Text)]
    assert heights == [pytest.approx(2.0 * letters)]


def test_a_name_longer_than_the_page_is_wide_is_refused_with_what_to_do() -> None:
    with pytest.raises(DraftError, match=r"names in the picture 'a-step-2' .* 60 x 60 mm .* shorten the names"):
        within(picture("a name of a piece that goes on and on and on and on"), 60.0, 60.0)
