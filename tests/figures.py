"""Three made-up pieces as neutral drawings whose every number is known, to test arranging and writing with."""

from __future__ import annotations

from math import cos, radians, sin

from patternforge.drawing.arrange import arranged
from patternforge.drawing.extent import moved
from patternforge.drawing.model import Align, Dot, Figure, Role, Sheet, Stroke, Text
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import from_vertices, polyline
from patternforge.geometry.point import Point
from patternforge.geometry.transform import rotation

GAP = 10.0
PANEL_SIZE, PANEL_RADIUS = (95.0, 75.0), 4.0
PANEL_HOLES = tuple(Point(5.0 + 3.5 * i, 5.0) for i in range(12))
HOLE_DIAMETER = 1.0
WINDOW, WINDOW_RADIUS = (60.0, 30.0, 80.0, 45.0), 2.0
POCKET_SIZE = (85.0, 50.0)
NOTCH_CENTRE, NOTCH_RADIUS = Point(42.5, 50.0), 9.0
SLIT_CENTRES = tuple(Point(6.0 + 4.0 * i, 4.0) for i in range(10))
SLIT_LENGTH, SLIT_ANGLE = 2.0, 45.0
# Where the sheet puts the lower left corners of both pieces, and its size: one row, a gap all round.
PANEL_AT, POCKET_AT = Point(10.0, 10.0), Point(115.0, 10.0)
SHEET_SIZE = (210.0, 95.0)


def panel() -> Figure:
    """A panel with rounded corners, a clockwise window, round holes, a tick, and lines that are drawn only."""
    window = rounded_rectangle(*WINDOW, WINDOW_RADIUS).cw()
    return Figure(
        "panel",
        "outer",
        (
            Stroke(Role.MARK, polyline([Point(47.5, 71), Point(47.5, 74)])),
            *(Dot(Role.HOLE, centre, HOLE_DIAMETER) for centre in PANEL_HOLES),
            Stroke(Role.OPENING, window),
            Stroke(Role.OUTLINE, rounded_rectangle(0, 0, *PANEL_SIZE, PANEL_RADIUS)),
            Stroke(Role.FOLD, polyline([Point(47.5, 0), Point(47.5, 75)])),
            Stroke(Role.SEAM, from_vertices([(5, 60, 0), (5, 9, 0.41421356237309503), (9, 5, 0), (86, 5, 0)], False)),
            Text(Role.LABEL, Point(20, 40), 3.0, "Panel <A> & lining", 90.0, Align.CENTRE),
        ),
    )


def slit(centre: Point, angle: float = SLIT_ANGLE) -> Stroke:
    """A slit round ``centre`` whose direction is ``angle`` degrees counter-clockwise from the right."""
    half = Point(cos(radians(angle)), sin(radians(angle))) * (SLIT_LENGTH / 2)
    return Stroke(Role.HOLE, polyline([centre - half, centre + half]))


def pocket() -> Figure:
    """A pocket with a half-round notch in its upper edge and a row of slits."""
    outline = from_vertices(
        [(0, 0, 0), (85, 0, 0), (85, 50, 0), (51.5, 50, -1.0), (33.5, 50, 0), (0, 50, 0)], closed=True
    )
    return Figure("pocket", "inner", (*(slit(centre) for centre in SLIT_CENTRES), Stroke(Role.OUTLINE, outline)))


def tilted() -> Figure:
    """A rounded rectangle of 30 x 20 mm, radius 3, turned by 17 degrees: no coordinate of it is a round number."""
    straight = Figure("flap", "outer", (Stroke(Role.OUTLINE, rounded_rectangle(0, 0, 30, 20, 3)),))
    return moved(straight, rotation(17.0))


def sheet() -> Sheet:
    """Panel and pocket in one row."""
    return arranged([panel(), pocket()], gap=GAP)
