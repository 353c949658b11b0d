"""Sheets and pages as SVG: one group for each piece, in it one for each operation; a unit of the file is a mm."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from io import StringIO
from itertools import chain, count, groupby
from math import ceil, degrees
from types import MappingProxyType
from typing import TYPE_CHECKING, Any

from patternforge.drawing.model import Align, Area, Dot, Ink, Page, Role, Sheet, Stroke, Text
from patternforge.errors import DraftError
from patternforge.export.numbers import decimal
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment

if TYPE_CHECKING:
    from svgwrite import Drawing

__all__ = ["PENS", "Pen", "SvgOptions", "svg_bytes"]

DECIMALS = 4
# The radius of an arc near a half circle is badly set by its ends: a wider arc is written in equal parts.
WIDEST_ARC = 120.0
# Height of capitals over font size: 0.688 in Liberation Sans, 0.729 in DejaVu Sans.
CAPITALS = 0.7
_STRAY = "[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]"
ANCHORS = {Align.LEFT: "start", Align.CENTRE: "middle", Align.RIGHT: "end"}


@dataclass(frozen=True, slots=True)
class Pen:
    """How the lines of one operation look: colour, dashes and gaps in mm (none: unbroken), width in mm."""

    colour: str
    dashes: tuple[float, ...] = ()
    width: float = 0.2


# What is cut through is unbroken, since some cutting programs take dashes for separate cuts; letters and check
# squares are unbroken to be read and measured. Everything else can be told apart without colour.
PENS: Mapping[Role, Pen] = MappingProxyType(
    {
        Role.MARK: Pen("#7a6a00", (1.2, 0.4)),
        Role.HOLE: Pen("#00666e"),
        Role.OPENING: Pen("#23573a"),
        Role.OUTLINE: Pen("#1a1a1a", width=0.25),
        Role.FOLD: Pen("#8a3b12", (6.0, 1.5)),
        Role.SEAM: Pen("#5b4a8a", (2.0, 1.0)),
        Role.LABEL: Pen("#444444", width=0.18),
        Role.SIZE: Pen("#2f4f6f", width=0.13),
        Role.CHECK: Pen("#7d1f45"),
        Role.GUIDE: Pen("#8c8c8c", (5.0, 1.0, 0.5, 1.0)),
        Role.TINT: Pen("#503a28"),
    }
)


@dataclass(frozen=True, slots=True)
class SvgOptions:
    """What an SVG file is to hold: the roles written, the pen of each, a class where it is not the role's word."""

    roles: tuple[Role, ...] = tuple(Role)
    pens: Mapping[Role, Pen] = field(default_factory=lambda: PENS)
    classes: Mapping[Role, str] = field(default_factory=lambda: MappingProxyType({}))


def svg_bytes(drawing: Sheet | Page, options: SvgOptions | None = None) -> bytes:
    """``drawing`` as an SVG file: size in mm, one unit a mm, the same bytes on every day and machine.

    Each figure of a sheet is a group of class ``piece``, each of its operations a group whose class is its role with
    hyphens unless the options say another; a page has the groups of its operations alone. Arcs stay arcs, dots are
    circles, straight open strokes that follow one another in a role share one path. Texts are real text. DraftError
    for a text that holds a control character, which no XML file may.

    Lengths and ``viewBox``: SVG 1.1, sections 7.7 and 7.10; arcs: section 8.3.8.

    >>> from patternforge.drawing.model import Figure
    >>> ring = Figure("ring", "outer", (Dot(Role.OUTLINE, Point(15, 10), 20.0),))
    >>> b'<circle cx="15" cy="20" r="10" />' in svg_bytes(Sheet("sheet", 30, 30, (ring,)))
    True
    """
    from svgwrite import Drawing

    width, height = decimal(drawing.width, DECIMALS), decimal(drawing.height, DECIMALS)
    file = Drawing(size=(f"{width}mm", f"{height}mm"), viewBox=f"0 0 {width} {height}", debug=False)
    _add_content(_Board(file, drawing.height, options or SvgOptions()), drawing)
    stream = StringIO()
    file.write(stream)
    return stream.getvalue().encode("utf-8")


@dataclass(frozen=True, slots=True)
class _Board:
    """The file being drawn, and the one place where y is turned to run downwards."""

    file: Drawing
    height: float
    options: SvgOptions

    def place(self, point: Point) -> tuple[str, str]:
        return decimal(point.x, DECIMALS), decimal(self.height - point.y, DECIMALS)

    def turn(self, angle: float) -> str:
        return decimal(-angle, DECIMALS)

    def arc_flag(self, arc: Segment) -> int:
        return 0 if arc.bulge > 0 else 1


def _add_content(board: _Board, drawing: Sheet | Page) -> None:
    if isinstance(drawing, Page):
        board.file.set_desc(title=_lawful(drawing.label))
        _add_operations(board, board.file, drawing.inks, "")
        return
    board.file.set_desc(title=_lawful(drawing.name))
    names = _identifiers([figure.name for figure in drawing.figures])
    for figure, name in zip(drawing.figures, names, strict=True):
        piece = board.file.g(id=name, class_="piece")
        piece.set_desc(title=_lawful(figure.name))
        _add_operations(board, piece, figure.inks, f"{name}--")
        board.file.add(piece)


def _identifiers(names: Sequence[str]) -> list[str]:
    """One identifier for each name, in its plain letters and digits; a name used before is given a number."""
    taken: list[str] = []
    for name in names:
        plain = "-".join(["piece", *re.findall(r"[a-z0-9]+", name.lower())])
        numbered = (f"{plain}-{number}" for number in count(2))
        taken.append(next(each for each in chain([plain], numbered) if each not in taken))
    return taken


def _add_operations(board: _Board, parent: Any, inks: Iterable[Ink], prefix: str) -> None:
    by_role: dict[Role, list[Ink]] = {}
    for ink in inks:
        by_role.setdefault(ink.role, []).append(ink)
    for role, same in by_role.items():
        if role in board.options.roles:
            parent.add(_operation(board, role, same, prefix))


def _operation(board: _Board, role: Role, inks: Sequence[Ink], prefix: str) -> Any:
    pen, plain = board.options.pens[role], role.value.replace(" ", "-")
    word = board.options.classes.get(role, plain)
    look = {"fill": "none", "stroke": pen.colour, "stroke_width": decimal(pen.width, DECIMALS)}
    # Drawn on to a tip, the lines of a sharp corner would reach further than what is cut.
    look["stroke_linejoin"] = "round"
    if pen.dashes:
        look["stroke_dasharray"] = " ".join(decimal(length, DECIMALS) for length in pen.dashes)
    group = board.file.g(id=f"{prefix}{plain}", class_=word, **look)
    for element in _elements(board, inks):
        group.add(element)
    return group


def _elements(board: _Board, inks: Iterable[Ink]) -> Iterator[Any]:
    for plain, run in groupby(inks, key=_is_plain_line):
        if plain:
            yield board.file.path(d="".join(_path_data(board, ink.path) for ink in run if isinstance(ink, Stroke)))
        else:
            yield from (_element(board, ink) for ink in run)


def _is_plain_line(ink: Ink) -> bool:
    return isinstance(ink, Stroke) and len(ink.path.segments) == 1 and not ink.path.segments[0].is_arc


def _element(board: _Board, ink: Ink) -> Any:
    if isinstance(ink, Stroke):
        return board.file.path(d=_path_data(board, ink.path))
    if isinstance(ink, Dot):
        return board.file.circle(center=board.place(ink.centre), r=decimal(ink.diameter / 2, DECIMALS))
    if isinstance(ink, Area):
        return _filling(board, ink)
    return _lettering(board, ink)


def _filling(board: _Board, area: Area) -> Any:
    """An area in the colour of its role, mixed with white to its tone."""
    pen = board.options.pens[area.role].colour
    parts = (int(pen[i : i + 2], 16) for i in (1, 3, 5))
    mixed = "".join(f"{round(255 + (part - 255) * area.tone):02x}" for part in parts)
    data = "".join(_path_data(board, path) for path in area.paths)
    return board.file.path(d=data, fill=f"#{mixed}", fill_rule="evenodd", stroke="none")


def _path_data(board: _Board, path: Path) -> str:
    *others, last = path.segments
    closing_line = path.closed and not last.is_arc
    drawn = others if closing_line else path.segments
    steps = "".join(_step(board, part) for segment in drawn for part in _narrow_parts(segment))
    return f"M{_pair(board, path.start)}{steps}{'Z' if path.closed else ''}"


def _narrow_parts(segment: Segment) -> Iterator[Segment]:
    parts = max(1, ceil(abs(degrees(segment.sweep)) / WIDEST_ARC))
    if parts == 1:
        yield segment
    else:
        share = segment.length / parts
        yield from (segment.sub(i * share, (i + 1) * share) for i in range(parts))


def _step(board: _Board, segment: Segment) -> str:
    if not segment.is_arc:
        return f"L{_pair(board, segment.end)}"
    radius = decimal(segment.radius, DECIMALS)
    return f"A{radius} {radius} 0 0 {board.arc_flag(segment)} {_pair(board, segment.end)}"


def _pair(board: _Board, point: Point) -> str:
    return " ".join(board.place(point))


def _lettering(board: _Board, text: Text) -> Any:
    return board.file.text(
        _lawful(text.content),
        insert=board.place(text.at),
        font_family="sans-serif",
        font_size=decimal(text.height / CAPITALS, DECIMALS),
        text_anchor=ANCHORS[text.align],
        fill=board.options.pens[text.role].colour,
        stroke="none",
        transform=f"rotate({board.turn(text.angle)} {_pair(board, text.at)})",
    )


def _lawful(words: str) -> str:
    """``words`` if XML 1.0 (section 2.2) can hold every character of them."""
    # No stray character is printable; to compile the pattern takes longer than to write a sheet.
    stray = None if words.isprintable() else re.search(_STRAY, words)
    if stray:
        raise DraftError(f"the text {words!r} holds the control character {stray[0]!r}; take it out")
    return words
