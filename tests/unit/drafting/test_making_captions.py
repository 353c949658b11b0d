"""Pictures of a making sheet in large letters: captions stay clear of what they stand under."""

from __future__ import annotations

import pytest

from patternforge.drafting.bench_picture import name_under
from patternforge.drafting.making.steps import within
from patternforge.drawing.lettering import letter_bounds
from patternforge.drawing.model import Figure, Role, Sheet, Stroke, Text
from patternforge.geometry.corners import rounded_rectangle


@pytest.mark.parametrize("letters", [1.0, 1.6, 3.0])
@pytest.mark.parametrize("width", [200.0, 40.0])
def test_a_name_stays_under_its_piece_however_large_it_is(letters: float, width: float) -> None:
    piece = Figure("shell", "outer", (Stroke(Role.OUTLINE, rounded_rectangle(0, 0, 90, 60, 4)),))
    told = within(Sheet("step", 90.0, 70.0, (name_under(piece),)), width, 150.0, letters)
    outline, name = told.figures[0].inks
    assert isinstance(outline, Stroke)
    assert isinstance(name, Text)
    box = letter_bounds(name)
    assert box is not None
    assert box.y1 < outline.path.bounds.y0
