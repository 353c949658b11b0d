"""One page as PDF operators (ISO 32000-1, 8.4 to 9.4): mm after a single change of coordinates."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import cache
from itertools import groupby, pairwise
from math import ceil, pi, tan
from unicodedata import normalize

from patternforge.drawing.glyph import Glyph
from patternforge.drawing.lettering import Lettering, lettering
from patternforge.drawing.model import Area, Dot, Ink, Page, Role, Stroke, Text
from patternforge.export.numbers import decimal
from patternforge.export.pdf_pens import PENS, Pen
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment, arc_segment

__all__ = ["POINTS_PER_MM", "content", "layer_name"]

POINTS_PER_MM = 72 / 25.4  # a PDF unit is 1/72 in

_MM = 5  # decimals of a length in mm
_MATRIX = 8  # decimals of what lengths are multiplied by: over a metre they leave it a hundredth of a micrometre off
_COURIER = 0.6  # advance of every Courier letter, in heights of the type
_WIDEST = pi / 4  # turn of one Bezier piece: at a radius of 100 mm it strays 0.4 micrometres


def layer_name(role: Role) -> str:
    """The name under which page content refers to the layer of a role.

    >>> layer_name(Role.HOLE)
    'stitch_hole'
    """
    return role.value.replace(" ", "_")


def content(page: Page) -> bytes:
    """The drawing operators of a page, one marked group for each run of inks of one role.

    DraftError for a text that has no stroke letters.

    >>> content(Page("1", 210.0, 297.0, (Dot(Role.HOLE, Point(5, 5), 1.0),))).splitlines()[1:3]
    [b'/OC /stitch_hole BDC', b'0.13 w 0 0.2 0.75 RG [] 0 d']
    """
    x, y = (decimal(POINTS_PER_MM * factor, 10) for factor in (page.x_factor, page.y_factor))
    lines = [f"{x} 0 0 {y} 0 0 cm 1 J 1 j"]
    for role, inks in groupby(page.inks, key=lambda ink: ink.role):
        lines += [f"/OC /{layer_name(role)} BDC", *_role_lines(PENS[role], inks), "EMC"]
    return ("\n".join(lines) + "\n").encode("ascii")


def _role_lines(pen: Pen, inks: Iterable[Ink]) -> Iterator[str]:
    yield f"{decimal(pen.width, 3)} w {_numbers(*pen.colour)} RG {_dash(pen.dash)}"
    for ink in inks:
        if isinstance(ink, Stroke):
            yield _path(ink.path)
        elif isinstance(ink, Dot):
            yield f"q 1 0 0 1 {_point(ink.centre)} cm\n{_ring(ink.diameter)}\nQ"
        elif isinstance(ink, Area):
            yield _filling(ink, pen)
        else:
            yield from _text(ink, pen)


def _dash(lengths: tuple[float, ...]) -> str:
    return f"[{_numbers(*lengths)}] 0 d"


def _text(text: Text, pen: Pen) -> Iterator[str]:
    """The letters as solid strokes, and the words unseen over them, to be found and copied."""
    written = lettering(text)
    if any(glyph.lines for glyph in written.glyphs):
        yield from ("q", _onto_line(written), f"{decimal(pen.width / written.scale, _MM)} w {_dash(())}")
        yield from _letters(written)
        yield "Q"
        words = _encoded(text.content)
        if words:
            yield _unseen(text, words, written)


def _onto_line(written: Lettering) -> str:
    """The change of coordinates from mm to the grid of the letters, which starts where their line does."""
    along = written.direction * written.scale
    turn = " ".join(decimal(value, _MATRIX) for value in (along.x, along.y, -along.y, along.x))
    return f"{turn} {_point(written.start)} cm"


def _letters(written: Lettering) -> Iterator[str]:
    """Each letter on its own grid, which steps along the line: the same letter is the same words every time."""
    stands = 0.0
    for at, glyph in written.placed():
        if glyph.lines:
            step = f"1 0 0 1 {decimal(at - stands, _MM)} 0 cm\n" if at != stands else ""
            yield f"{step}{_glyph(glyph)}"
            stands = at


@cache
def _glyph(glyph: Glyph) -> str:
    lines = (" l ".join(_numbers(x, y) for x, y in line).replace(" l ", " m ", 1) for line in glyph.lines)
    return " ".join(f"{line} l" for line in lines) + " S"


def _encoded(words: str) -> str:
    """The words as a PDF string in WinAnsi, empty when they hold a letter beyond it."""
    try:
        return f"<{normalize('NFC', words).encode('cp1252').hex()}>"
    except UnicodeEncodeError:
        return ""


def _unseen(text: Text, words: str, written: Lettering) -> str:
    """Courier stretched to the width of the strokes: the one base font whose widths need no table."""
    stretch = 100 * written.width / (_COURIER * text.height * len(text.content))
    cosine, sine = written.direction.x, written.direction.y
    matrix = " ".join(decimal(value, _MATRIX) for value in (cosine, sine, -sine, cosine))
    size = f"/F1 {decimal(text.height, _MM)} Tf {decimal(stretch, 3)} Tz"
    return f"BT 3 Tr {size} {matrix} {_point(written.start)} Tm {words} Tj ET"


@cache
def _ring(diameter: float) -> str:
    """A circle round the origin."""
    halves = (arc_segment(Point(0.0, 0.0), diameter / 2, turn, turn + pi) for turn in (0.0, pi))
    return _path(Path(tuple(halves), closed=True))


def _filling(area: Area, pen: Pen) -> str:
    """An area in the colour of its role, mixed with white to its tone, inside by the even-odd rule."""
    mixed = (1 + (part - 1) * area.tone for part in pen.colour)
    return " ".join([_numbers(*mixed), "rg", *(_traced(path) for path in area.paths), "f*"])


def _path(path: Path) -> str:
    return f"{_traced(path)} S"


def _traced(path: Path) -> str:
    steps = [f"{_point(path.start)} m"]
    steps += [step for segment in path.segments for step in _steps(segment)]
    if path.closed:
        steps[-1:] = ["h"] if not path.segments[-1].is_arc else [steps[-1], "h"]
    return " ".join(steps)


def _steps(segment: Segment) -> Iterator[str]:
    if not segment.is_arc:
        yield f"{_point(segment.end)} l"
        return
    count = ceil(abs(segment.sweep) / _WIDEST - 1e-9)
    marks = [segment.length * i / count for i in range(count + 1)]
    # Tangent lengths of the Bezier whose middle lies on the arc.
    handle = 4 / 3 * tan(abs(segment.sweep) / count / 4) * segment.radius
    for d0, d1 in pairwise(marks):
        first = segment.point_at(d0) + segment.tangent_at(d0) * handle
        second = segment.point_at(d1) - segment.tangent_at(d1) * handle
        yield f"{_point(first)} {_point(second)} {_point(segment.point_at(d1))} c"


def _point(p: Point) -> str:
    return f"{decimal(p.x, _MM)} {decimal(p.y, _MM)}"


def _numbers(*values: float) -> str:
    return " ".join([decimal(value, _MM) for value in values])
