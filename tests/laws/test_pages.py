"""Laws of printed pages: cutting loses nothing, what fits is never split, tiles laid together are the piece again."""

from __future__ import annotations

from itertools import combinations, product
from math import inf

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from patternforge.drawing.clip import clipped_path
from patternforge.drawing.extent import extent
from patternforge.drawing.header import head_height
from patternforge.drawing.model import Dot, Figure, Page, Role, Stroke, Text
from patternforge.drawing.paper import A4, LETTER
from patternforge.drawing.printing import PrintSettings, printable_area
from patternforge.drawing.shelves import Room, Size, packed
from patternforge.drawing.tile import pages
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import Path
from patternforge.geometry.point import Bounds, Point
from patternforge.geometry.segment import Segment
from patternforge.geometry.transform import rotation, translation

FAR = 1e4  # mm, beyond everything drawn here
SETTINGS = PrintSettings("Sleeve", "A")

lengths = st.floats(5, 120)
angles = st.floats(0, 360)


@st.composite
def outlines(draw: st.DrawFn) -> Path:
    width, height = draw(lengths), draw(lengths)
    radius = draw(st.floats(0.05, 0.45)) * min(width, height)
    shift = translation(draw(st.floats(-60, 60)), draw(st.floats(-60, 60)))
    return rotation(draw(angles)).then(shift).path(rounded_rectangle(0, 0, width, height, radius))


@st.composite
def windows(draw: st.DrawFn) -> Bounds:
    x0, y0 = draw(st.floats(-80, 60)), draw(st.floats(-80, 60))
    return Bounds(x0, y0, x0 + draw(st.floats(1, 90)), y0 + draw(st.floats(1, 90)))


def around(window: Bounds) -> list[Bounds]:
    """The window and the eight that surround it."""
    xs, ys = (-FAR, window.x0, window.x1, FAR), (-FAR, window.y0, window.y1, FAR)
    return [Bounds(xs[i], ys[j], xs[i + 1], ys[j + 1]) for i, j in product(range(3), range(3))]


def runs_along_an_edge(side: Segment, window: Bounds) -> bool:
    (x0, y0), (x1, y1) = (side.start.x, side.start.y), (side.end.x, side.end.y)
    upright = any(max(abs(x0 - x), abs(x1 - x)) < 1e-6 for x in (window.x0, window.x1))
    level = any(max(abs(y0 - y), abs(y1 - y)) < 1e-6 for y in (window.y0, window.y1))
    return upright or level


def distance_outside(window: Bounds, p: Point) -> float:
    return max(window.x0 - p.x, p.x - window.x1, window.y0 - p.y, p.y - window.y1)


def samples(path: Path, count: int = 24) -> list[Point]:
    return [path.point_at(path.length * i / count) for i in range(count + 1)]


@given(outlines(), windows())
@settings(max_examples=100, deadline=None)
def test_parts_inside_and_outside_add_up_to_the_whole(outline: Path, window: Bounds) -> None:
    # A straight side that runs along an edge of the window belongs to both sides of it.
    assume(not any(runs_along_an_edge(side, window) for side in outline.segments))
    total = sum(part.length for one in around(window) for part in clipped_path(outline, one))
    assert total == pytest.approx(outline.length, abs=1e-6)


@given(outlines(), windows())
@settings(max_examples=100, deadline=None)
def test_parts_lie_in_the_window_and_on_the_path_and_end_on_the_edge(outline: Path, window: Bounds) -> None:
    for part in clipped_path(outline, window):
        for p in samples(part):
            assert distance_outside(window, p) <= 1e-7
            assert outline.distance_to(p) <= 1e-7
        if not part.closed:
            assert max(abs(distance_outside(window, p)) for p in (part.start, part.end)) <= 1e-7


@given(outlines(), windows())
@settings(max_examples=100, deadline=None)
def test_every_point_of_the_path_inside_the_window_is_on_a_part(outline: Path, window: Bounds) -> None:
    parts = clipped_path(outline, window)
    for p in samples(outline, 60):
        if distance_outside(window, p) < -1e-6:
            assert min((part.distance_to(p) for part in parts), default=inf) <= 1e-7


@given(st.lists(st.builds(Size, st.floats(5, 200), st.floats(5, 200)), max_size=12), st.floats(0, 10))
@settings(max_examples=100, deadline=None)
def test_packed_cells_keep_the_gap_stay_in_the_room_and_off_the_notch(cells: list[Size], gap: float) -> None:
    room = Room(Size(190, 260), Size(6, 100), gap)
    fitting = [cell for cell in cells if room.takes(cell)]
    placed = [
        (spot.page, Bounds(spot.x, spot.y, spot.x + cell.width, spot.y + cell.height))
        for spot, cell in zip(packed(fitting, room), fitting, strict=True)
    ]
    for page, box in placed:
        assert min(box.x0, box.y0) >= 0
        assert box.x1 <= 190 + 1e-6
        assert box.y1 <= 260 + 1e-6
        assert _apart(box, Bounds(0, 0, 6, 100)) >= gap - 1e-6
        assert page < len(fitting)
    for (page, one), (other_page, other) in combinations(placed, 2):
        assert page != other_page or _apart(one, other) >= gap - 1e-6


def _apart(one: Bounds, other: Bounds) -> float:
    return max(other.x0 - one.x1, one.x0 - other.x1, other.y0 - one.y1, one.y0 - other.y1)


def figure(name: str, width: float, height: float) -> Figure:
    outline = rounded_rectangle(0, 0, width, height, min(width, height) / 5)
    return Figure(name, "outer", (Dot(Role.HOLE, Point(width / 2, height / 2), 1.0), Stroke(Role.OUTLINE, outline)))


def fits_letter(width: float, height: float) -> bool:
    """Beside the upright bars or below them, on Letter held either way, the piece turned or not."""
    across, up, bars, gap = 215.9 - 20, 279.4 - 20, Size(6.5, 101.6), 5.0
    head = head_height(SETTINGS.heading, across)
    for w, h in ((width, height), (height, width)):
        for page in (Size(across, up - head), Size(up, across - head)):
            beside = w <= page.width - bars.width - gap and h <= page.height
            below = w <= page.width and h <= page.height - bars.height - gap
            if beside or below:
                return True
    return False


@given(st.lists(st.tuples(st.floats(10, 300), st.floats(10, 300)), min_size=1, max_size=6))
@settings(max_examples=40, deadline=None)
def test_a_piece_is_split_only_if_it_fits_no_page_in_any_way(sizes: list[tuple[float, float]]) -> None:
    figures = [figure(f"piece {n}", *size) for n, size in enumerate(sizes)]
    made = pages(figures, LETTER, SETTINGS)
    split = {page.label.rsplit(" ", 1)[0] for page in made if not page.label.isdigit()}
    assert split == {one.name for one, size in zip(figures, sizes, strict=True) if not fits_letter(*size)}
    drawn = [ink.path for page in made for ink in page.inks if isinstance(ink, Stroke) and ink.role is Role.OUTLINE]
    assert sum(path.closed for path in drawn) == len(figures) - len(split)


@given(st.floats(10, 169), st.floats(10, 169))
@settings(max_examples=25, deadline=None)
def test_a_piece_that_fits_is_whole_beside_one_that_must_be_split(width: float, height: float) -> None:
    made = pages([figure("apron", 400, 330), figure("panel", width, height)], A4, SETTINGS)
    assert made[0].label == "1"
    (outline,) = [ink.path for ink in made[0].inks if isinstance(ink, Stroke) and ink.role is Role.OUTLINE]
    assert outline.closed
    assert (outline.bounds.width, outline.bounds.height) == pytest.approx((width, height), abs=1e-9)


@given(st.floats(120, 700), st.floats(120, 500), st.floats(5, 30), st.floats(5, 15))
@settings(max_examples=20, deadline=None)
def test_tiles_laid_cross_on_cross_are_the_piece_again(
    width: float, height: float, overlap: float, margin: float
) -> None:
    assume(max(width, height) > 300)
    made = pages([figure("apron", width, height)], A4, PrintSettings("Sleeve", overlap=overlap, margin=margin))
    shifts = _shifts(made)
    parts = [
        translation(shifts[page.label].x, shifts[page.label].y).path(ink.path)
        for page in made
        for ink in page.inks
        if isinstance(ink, Stroke) and ink.role is Role.OUTLINE
    ]
    box = extent([Stroke(Role.OUTLINE, part) for part in parts])
    assert (box.width, box.height) == pytest.approx((width, height), abs=1e-6)
    whole = translation(box.x0, box.y0).path(rounded_rectangle(0, 0, width, height, min(width, height) / 5))
    for part in parts:
        assert max(whole.distance_to(p) for p in samples(part)) <= 1e-6
    for p in samples(whole, 150):
        assert min(part.distance_to(p) for part in parts) <= 1e-6


def _shifts(made: tuple[Page, ...]) -> dict[str, Point]:
    """How far each page is moved so that crosses of one number fall together, starting from the first page."""
    numbers = {page.label: _cross_numbers(page) for page in made}
    shifts = {made[0].label: Point(0.0, 0.0)}
    while len(shifts) < len(made):
        known = {n: at + shifts[label] for label in shifts for n, at in numbers[label].items()}
        fresh = {label: found for label, found in numbers.items() if label not in shifts and set(found) & set(known)}
        assert fresh, "a page shares no cross with the others"
        for label, found in fresh.items():
            differences = [known[n] - at for n, at in found.items() if n in known]
            assert all(one.distance_to(differences[0]) <= 1e-9 for one in differences)
            shifts[label] = differences[0]
    return shifts


def _cross_numbers(page: Page) -> dict[str, Point]:
    """Where each cross is by its number; the plan of the pages has words that begin with a letter."""
    texts = (ink for ink in page.inks if isinstance(ink, Text) and ink.role is Role.GUIDE)
    return {ink.content: ink.at for ink in texts if ink.content.isdigit()}


@given(st.floats(20, 400), st.floats(20, 400), st.floats(0, 15), st.floats(0.97, 1.03), st.floats(0.97, 1.03))
@settings(max_examples=20, deadline=None)
def test_nothing_is_printed_in_the_printer_margin(
    width: float, height: float, margin: float, x: float, y: float
) -> None:
    chosen = PrintSettings("Sleeve", "A", margin=margin, x_correction=x, y_correction=y)
    for page in pages([figure("panel", width, height)], A4, chosen):
        paper = A4 if page.width < page.height else A4.turned()
        area, box = printable_area(paper, chosen), extent(page.inks)
        for corner in (Point(box.x0, box.y0), Point(box.x1, box.y1)):
            assert distance_outside(area, corner) <= 1e-7
        on_paper = box.x0 * page.x_factor, page.width - box.x1 * page.x_factor
        assert min(on_paper) >= margin - 1e-6
