"""Laws of letters: they stay in their box, read right on every face, and no bad place goes unfound."""

from __future__ import annotations

from dataclasses import replace
from math import hypot

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from patternforge.drafting.letters import letter_height, letter_inks
from patternforge.drawing.extent import extent
from patternforge.drawing.glyph import CAPITAL
from patternforge.drawing.lettering import letter_strokes, letters
from patternforge.drawing.model import Role, Stroke, Text
from patternforge.fit.findings import Finding, Verdict
from patternforge.fit.judge import fit
from patternforge.geometry.point import Point
from patternforge.geometry.transform import flipped_x
from patternforge.wallet.assemble import drafted
from patternforge.wallet.marked import Inscription
from patternforge.wallet.pattern import Pattern, Piece
from patternforge.wallet.spec import Edge, FoldSpec, Initials, Side, Spot, Stamp
from tests.shapes_built import strap_case
from tests.unit.wallet.built import shell, wallet

few = settings(max_examples=40)
SIGNS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789 &.-ÄÅÇÉÑÖØŠßłþ€½"
texts = st.text(SIGNS, min_size=0, max_size=8)
lengths = st.integers(5, 600).map(lambda tenths: tenths / 10)
ups = st.sampled_from((90.0, 0.0, 180.0, -90.0))
PLAIN = drafted(wallet(shell(1)))
CASE = drafted(strap_case())
FOLDS = (FoldSpec(),)
FLIP = flipped_x()


def bearing(pattern: Pattern, name: str, inscription: Inscription) -> Pattern:
    pieces = tuple(
        replace(piece, inscriptions=(inscription,)) if piece.name == name else piece for piece in pattern.pieces
    )
    return replace(pattern, pieces=pieces)


def strokes(piece: Piece) -> list[Stroke]:
    return [ink for ink in letter_inks(piece) if isinstance(ink, Stroke)]


@few
@given(texts, lengths, lengths, ups)
def test_strokes_never_leave_their_box(text: str, width: float, height: float, up: float) -> None:
    inscription = Inscription("name", text, Point(50.0, 40.0), up, width, height, 3.0)
    inks = letter_inks(bearing(PLAIN, "shell", inscription).pieces[0])
    assert bool(inks) is bool(text.strip())
    if inks:
        ink, box = extent(inks), inscription.box.bounds
        assert min(ink.x0 - box.x0, ink.y0 - box.y0, box.x1 - ink.x1, box.y1 - ink.y1) >= -1e-9
        assert 0 < (letter_height(inscription) or 0.0) <= height + 1e-9


@few
@given(texts.filter(bool), lengths, lengths, lengths, ups)
def test_a_stamping_guide_never_leaves_its_box(text: str, width: float, height: float, gap: float, up: float) -> None:
    count = len(letters(text))
    box = (count * width + (count - 1) * gap, height)
    inscription = Inscription("name", text, Point(50.0, 40.0), up, *box, 3.0, Stamp(width, height, gap))
    ink, bounds = extent(letter_inks(bearing(PLAIN, "shell", inscription).pieces[0])), inscription.box.bounds
    for a, b in ((ink.x0, bounds.x0), (ink.y0, bounds.y0), (ink.x1, bounds.x1), (ink.y1, bounds.y1)):
        assert a == pytest.approx(b, abs=1e-6)


def turning(paths: list[Stroke]) -> float:
    """Twice the area that the way through all points of the strokes goes round, mm2: negative in a mirror."""
    points = [Point(x, y) for stroke in paths for x, y, _ in stroke.path.vertices]
    return sum(a.cross(b) for a, b in zip(points, [*points[1:], points[0]], strict=True))


@few
@given(
    st.text("FGJLNPQRSZ2457", min_size=1, max_size=5),
    st.sampled_from(Side),
    st.booleans(),
    st.sampled_from((None, *Edge)),
    st.sampled_from((0, 1)),
)
def test_letters_read_right_on_every_face_of_every_row(
    text: str, showing: Side, turned: bool, up: Edge | None, panel: int
) -> None:
    """As drawn they are the letters as written, turned and enlarged, never their mirror image."""
    initials = Initials("name", text, "shell", Spot(panel, (Edge.LEFT, 40.0), (Edge.BOTTOM, 40.0)), 24.0, 9.0, up=up)
    design = wallet(replace(shell(2), showing=showing), widths=(100.0, 100.0), folds=FOLDS, initials=(initials,))
    (piece,) = drafted(replace(design, body=replace(design.body, turned=turned))).pieces
    written = list(letter_strokes(Text(Role.MARK, Point(0.0, 0.0), CAPITAL, text)))
    drawn, scale = strokes(piece), (letter_height(piece.inscriptions[0]) or 0.0) / CAPITAL
    assert [stroke.path.length for stroke in drawn] == pytest.approx([scale * s.path.length for s in written])
    assume(abs(turning(written)) > 1.0)
    assert turning(drawn) == pytest.approx(scale * scale * turning(written), rel=1e-6)


def test_a_mirror_image_would_be_noticed() -> None:
    written = list(letter_strokes(Text(Role.MARK, Point(0.0, 0.0), CAPITAL, "F")))
    mirrored = [replace(stroke, path=FLIP.path(stroke.path)) for stroke in written]
    assert turning(mirrored) == pytest.approx(-turning(written))
    assert abs(turning(written)) > 1.0


def spoilt(piece: Piece, box: tuple[float, float, float, float], clear: float) -> bool:
    """Whether anything on the strap case's shell lies nearer to a box than it asks, reckoned point by point."""
    x0, y0, x1, y1 = box
    rim = [p for segment in piece.outline.segments for p in sampled(segment.start, segment.end)]
    seams = [hole.at for hole in piece.holes]
    folds = [p for line in piece.fold_lines for p in sampled(line.start, line.end)]
    caps = [fitting.at for fitting in piece.fittings]
    reach = {0: clear, 1: clear + 0.5, 2: clear, 3: clear + 6.35}
    return any(
        hypot(max(x0 - p.x, 0.0, p.x - x1), max(y0 - p.y, 0.0, p.y - y1)) < reach[kind] - 0.02
        for kind, points in enumerate((rim, seams, folds, caps))
        for p in points
    )


def sampled(a: Point, b: Point) -> list[Point]:
    count = int(a.distance_to(b) / 0.5) + 1
    return [a + (b - a) * (i / count) for i in range(count + 1)]


def on_letters(pattern: Pattern) -> list[Finding]:
    return [found for found in fit(pattern) if found.what.startswith("letters clear")]


@few
@given(
    st.integers(0, 2100),
    st.integers(0, 740),
    st.integers(20, 400),
    st.integers(20, 300),
    st.sampled_from((0, 10, 30, 60)),
)
def test_a_box_in_a_bad_place_is_always_found(x: int, y: int, width: int, height: int, clear: int) -> None:
    """On the shell of the strap case: two panels, a fold, a rim round one of them, the strap's seam, half a snap."""
    piece = CASE.piece("shell")
    at, size = Point(x / 10, y / 10), (width / 10, height / 10)
    assume(piece.outline.contains(at))
    inscription = Inscription("name", "A", at, 90.0, *size, clear / 10)
    found = on_letters(bearing(CASE, "shell", inscription))
    box = inscription.box.bounds
    if spoilt(piece, (box.x0, box.y0, box.x1, box.y1), clear / 10):
        assert any(each.verdict is not Verdict.GOOD for each in found)


@few
@given(st.integers(0, 2100), st.integers(0, 740))
def test_a_box_far_from_everything_is_never_complained_of(x: int, y: int) -> None:
    """A millimetre further than it asks, for between two holes thread comes a little nearer than either."""
    piece, at = CASE.piece("shell"), Point(x / 10, y / 10)
    inscription = Inscription("name", "A", at, 90.0, 8.0, 4.0, 3.0)
    corners = [segment.start for segment in inscription.box.segments]
    assume(all(map(piece.outline.contains, corners)))
    box = inscription.box.bounds
    assume(not spoilt(piece, (box.x0, box.y0, box.x1, box.y1), 4.0))
    found = on_letters(bearing(CASE, "shell", inscription))
    assert [each.verdict for each in found] == [Verdict.GOOD] * 4
