"""SVG files drawn by resvg, an independent renderer, and measured in its picture against millimetres.

At 508 dots per inch (20 dots per mm) a line is found to half a dot or better, 0.025 mm.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from io import BytesIO
from math import atan2, cos, degrees, hypot, radians, sin
from xml.etree import ElementTree

import pytest
import resvg_py
from PIL import Image

from patternforge.drawing.model import Role, Sheet
from patternforge.export.svg import PENS, SvgOptions, svg_bytes
from patternforge.geometry.point import Bounds, Point
from tests import figures
from tests.figures import PANEL_AT, PANEL_SIZE, POCKET_AT, POCKET_SIZE, SHEET_SIZE

DOTS_PER_MM = 20
DOTS_PER_INCH = DOTS_PER_MM * 25.4
DOT = 1 / DOTS_PER_MM
LINE = 4 * DOT
Spot = tuple[int, int]


def picture(sheet: Sheet, *roles: Role) -> Image.Image:
    """What the renderer shows of ``roles``: black on white, lines four whole dots wide, the size set by the file."""
    pens = {role: replace(pen, colour="#000000", width=LINE) for role, pen in PENS.items()}
    data = svg_bytes(sheet, SvgOptions(roles=roles, pens=pens))
    drawn = resvg_py.svg_to_bytes(svg_string=data.decode(), background="#ffffff", dpi=DOTS_PER_INCH)
    return Image.open(BytesIO(drawn)).convert("L")


def spots(image: Image.Image) -> set[Spot]:
    """The dots that are more black than white."""
    width, _ = image.size
    return {(i % width, i // width) for i, value in enumerate(image.tobytes()) if value < 128}


def islands(dark: set[Spot]) -> list[list[Spot]]:
    """Dark dots that hang together, corner to corner, as separate groups."""
    left, found = set(dark), []
    while left:
        queue = [left.pop()]
        for x, y in queue:
            near = {(x + i, y + j) for i in (-1, 0, 1) for j in (-1, 0, 1)} & left
            left -= near
            queue.extend(near)
        found.append(queue)
    return found


def place(spot: Spot) -> Point:
    """The middle of a dot on the sheet: mm, y up."""
    return Point((spot[0] + 0.5) * DOT, SHEET_SIZE[1] - (spot[1] + 0.5) * DOT)


def centre(island: Iterable[Spot]) -> Point:
    places = [place(spot) for spot in island]
    return Point(sum(p.x for p in places) / len(places), sum(p.y for p in places) / len(places))


def rim(island: Iterable[Spot]) -> Bounds:
    """From the outer edge of the outermost dots to the other, mm."""
    places = [place(spot) for spot in island]
    xs, ys = [p.x for p in places], [p.y for p in places]
    return Bounds(min(xs) - DOT / 2, min(ys) - DOT / 2, max(xs) + DOT / 2, max(ys) + DOT / 2)


def by_place(found: list[list[Spot]]) -> list[list[Spot]]:
    return sorted(found, key=lambda island: centre(island).x)


def test_the_picture_has_the_size_of_the_sheet_in_millimetres() -> None:
    image = picture(figures.sheet(), Role.OUTLINE)
    assert image.size == (SHEET_SIZE[0] * DOTS_PER_MM, SHEET_SIZE[1] * DOTS_PER_MM)


def test_each_piece_has_its_size_and_stands_in_its_place() -> None:
    panel, pocket = by_place(islands(spots(picture(figures.sheet(), Role.OUTLINE))))
    for island, at, (width, height) in ((panel, PANEL_AT, PANEL_SIZE), (pocket, POCKET_AT, POCKET_SIZE)):
        drawn = rim(island)
        assert [drawn.x0 + LINE / 2, drawn.y0 + LINE / 2] == pytest.approx([at.x, at.y], abs=DOT / 2)
        assert [drawn.width - LINE, drawn.height - LINE] == pytest.approx([width, height], abs=DOT / 2)


def test_round_holes_and_slits_are_as_many_and_where_they_were_drawn() -> None:
    found = by_place(islands(spots(picture(figures.sheet(), Role.HOLE))))
    drawn = [PANEL_AT + hole for hole in figures.PANEL_HOLES] + [POCKET_AT + slit for slit in figures.SLIT_CENTRES]
    assert len(found) == len(drawn)
    assert max(centre(island).distance_to(at) for island, at in zip(found, drawn, strict=True)) < DOT / 2


def test_slits_slant_the_way_they_were_drawn() -> None:
    found = by_place(islands(spots(picture(figures.sheet(), Role.HOLE))))
    for island in found[len(figures.PANEL_HOLES) :]:
        places = sorted((place(spot) for spot in island), key=lambda p: p.x)
        run = places[-1] - places[0]
        assert degrees(atan2(run.y, run.x)) == pytest.approx(figures.SLIT_ANGLE, abs=5)


def test_arcs_bulge_to_the_right_side_with_their_true_radius() -> None:
    # The middle of the line, found from all dots near the arc, lies at the radius; single dots stray by half a dot.
    dark = [place(spot) for spot in spots(picture(figures.sheet(), Role.OUTLINE))]
    corner = PANEL_AT + Point(figures.PANEL_RADIUS, figures.PANEL_RADIUS)
    for middle, radius, angles in (
        (corner, figures.PANEL_RADIUS, range(185, 266, 10)),
        (POCKET_AT + figures.NOTCH_CENTRE, figures.NOTCH_RADIUS, range(190, 351, 10)),
    ):
        for angle in angles:
            near = middle + Point(cos(radians(angle)), sin(radians(angle))) * radius
            reached = [hypot(p.x - middle.x, p.y - middle.y) for p in dark if p.distance_to(near) < 0.4]
            assert sum(reached) / len(reached) == pytest.approx(radius, abs=DOT / 2)


def test_dots_are_circles_in_place_for_another_reader_of_the_file() -> None:
    top = ElementTree.fromstring(svg_bytes(figures.sheet()))
    circles = [element.attrib for element in top.iter("{http://www.w3.org/2000/svg}circle")]
    drawn = [PANEL_AT + hole for hole in figures.PANEL_HOLES]
    assert [(float(each["cx"]), SHEET_SIZE[1] - float(each["cy"])) for each in circles] == [
        pytest.approx((at.x, at.y)) for at in drawn
    ]
    assert {float(each["r"]) for each in circles} == {figures.HOLE_DIAMETER / 2}
