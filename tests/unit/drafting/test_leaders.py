"""Names led to what they name."""

from __future__ import annotations

from patternforge.drafting.leaders import Beside, named_places, names_figure
from patternforge.drawing.model import Area, Figure, Role, Text
from patternforge.drawing.stacked import room
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.point import Bounds


def plate(name: str, x0: float, y0: float, x1: float, y1: float) -> Figure:
    return Figure(name, "", (Area(Role.TINT, (rounded_rectangle(x0, y0, x1, y1, 0.0),), 0.0),))


LOW, HIGH = plate("low", 0.0, 0.0, 60.0, 20.0), plate("high", -5.0, -5.0, 30.0, 25.0)


def test_a_name_leads_to_a_place_that_nothing_covers() -> None:
    (low,) = named_places([LOW, HIGH], {"low": "low"}, Beside.LEFT)
    assert 30.0 < low.at.x < 60.0
    (bare,) = named_places([LOW], {"low": "low"}, Beside.LEFT)
    assert 0.0 < bare.at.x < 10.0


def test_names_stand_beside_the_picture_and_apart() -> None:
    figures = [plate(f"piece {i}", 0.0, i, 50.0, i + 20.0) for i in range(6)]
    drawn = names_figure(
        named_places(figures, {f.name: f"a long name of {f.name}" for f in figures}), Bounds(0, 0, 50, 26)
    )
    boxes = [room([ink]) for ink in drawn.inks if isinstance(ink, Text)]
    assert all(box.x1 < 0 or box.x0 > 50 for box in boxes)
    for i, one in enumerate(boxes):
        for other in boxes[i + 1 :]:
            assert one.y0 >= other.y1 or other.y0 >= one.y1 or one.x0 > other.x1 or other.x0 > one.x1
