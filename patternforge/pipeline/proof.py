"""Cutting files proved before they are delivered: read back from their bytes by readers that did not write them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from math import pi

from patternforge.audit.flaws import Flaw
from patternforge.audit.model import CutFile, FileKind
from patternforge.audit.ordered import Ordered, OrderedLine, OrderedPiece
from patternforge.audit.proof import cut_flaws, file_flaws
from patternforge.audit.reading import cut_file
from patternforge.drafting.purpose import StitchHoles
from patternforge.drawing.model import Dot, Figure, Role, Sheet, Stroke
from patternforge.errors import AuditError, ReadingError
from patternforge.export.dxf import DxfOptions
from patternforge.export.hpgl import HpglOptions
from patternforge.export.svg import SvgOptions
from patternforge.pipeline.request import OnNo
from patternforge.units import mm
from patternforge.wallet.pattern import Pattern, Piece
from patternforge.wallet.spec import HoleShape

__all__ = ["Commission", "Options", "ordered", "prove"]

Options = DxfOptions | SvgOptions | HpglOptions

_CUT = (Role.HOLE, Role.OPENING, Role.OUTLINE)
_ANY = 1e6  # mm; how far a sharp corner is drawn on for a beam is not the pattern's to say
_STOPPED = "no file was written"
_OWN_FAULT = (
    f"{_STOPPED}. This is no fault of your design: please report it together with the design file; another release or"
    " kind of file may come out right meanwhile"
)
_OF_DESIGN = (
    f"{_STOPPED}. Look at that place in the files of '--for paper' and change the design there, or ask for all files"
    " as they are with --despite-findings"
)


@dataclass(frozen=True, slots=True)
class Commission:
    """A cutting file as it was asked for: its path, the sheet on it, what its writer is told, the pattern it is of.

    ``holes`` says what becomes of stitch holes, ``grown`` by how much kerf and allowance widen an outline, ``stray``
    how far chords may stray from arcs, mm.
    """

    path: str
    sheet: Sheet
    options: Options
    pattern: Pattern
    holes: StitchHoles = StitchHoles.CUT
    grown: float = 0.0
    stray: float = 0.0


def prove(files: Iterable[tuple[Commission, bytes]], on_no: OnNo = OnNo.STOP) -> None:
    """AuditError, naming file, place and what to do, for the first file that is not as it was asked for.

    A file that passes holds every line of its sheet, none besides, in order, in its place and on its layer, in mm and
    in its release, and as many as its pattern has. Nothing that is cut is doubled, crosses, or comes after its
    outline; that is judged once for files of one sheet, and left to the maker who wants the files despite findings.
    """
    judged: set[int] = set()
    for commission, data in files:
        wanted = ordered(commission)
        file = _read(commission.path, data)
        _refuse(commission.path, file, file_flaws(file, wanted), _OWN_FAULT)
        if on_no is OnNo.STOP and id(commission.sheet) not in judged:
            judged.add(id(commission.sheet))
            _refuse(commission.path, file, cut_flaws(file, wanted), _OF_DESIGN)


def _read(path: str, data: bytes) -> CutFile:
    try:
        return cut_file(data, path)
    except ReadingError as error:
        # What the reader advises is meant for files that are brought.
        what, _, only = str(error).rpartition("; ")
        raise AuditError(f"{what or only}; {_OWN_FAULT}") from error


def _refuse(path: str, file: CutFile, flaws: Iterable[Flaw], advice: str) -> None:
    flaw = next(iter(flaws), None)
    if flaw is None:
        return
    at = file.shown(flaw.at) if flaw.at is not None else None
    place = f" at {mm(at.x)}, {mm(at.y)} mm" if at else ""
    on = f" ({flaw.on})" if flaw.on else ""
    raise AuditError(f"{path}{place}: {flaw.what}{on}; {advice}")


def ordered(commission: Commission) -> Ordered:
    """What the file of a commission is to hold: its lines from the sheet, counts and sizes from the pattern."""
    sheet, options = commission.sheet, commission.options
    release = options.version.value if isinstance(options, DxfOptions) else ""
    return Ordered(
        _kind(options),
        release,
        tuple(_lines(sheet, options)),
        (sheet.width, sheet.height) if isinstance(options, SvgOptions) else None,
        _counts(commission),
        tuple(_pieces(commission)),
        commission.stray,
    )


def _kind(options: Options) -> FileKind:
    if isinstance(options, DxfOptions):
        return FileKind.DXF
    return FileKind.SVG if isinstance(options, SvgOptions) else FileKind.HPGL


def _lines(sheet: Sheet, options: Options) -> Iterator[OrderedLine]:
    marked = {role: _marked(options, role) for role in options.roles}
    for figure in sheet.figures:
        for ink in figure.inks:
            if isinstance(ink, Stroke | Dot) and ink.role in marked:
                yield _line(ink, *marked[ink.role])


def _marked(options: Options, role: Role) -> tuple[str, str]:
    """The layer, group or pen that the lines of a role have in the file, and their colour."""
    if isinstance(options, DxfOptions):
        return options.layer(role), str(options.colours[role])
    if isinstance(options, SvgOptions):
        return role.value.replace(" ", "-"), options.pens[role].colour
    return f"pen {options.pens[role]}", ""


def _line(ink: Stroke | Dot, layer: str, colour: str) -> OrderedLine:
    word, through = ink.role.value, ink.role in _CUT
    if isinstance(ink, Dot):
        x, y, r = ink.centre.x, ink.centre.y, ink.diameter / 2
        return OrderedLine(
            word, layer, colour, (x - r, y - r, x + r, y + r), 2 * pi * r, pi * r * r, True, r, through
        )
    path, box = ink.path, ink.path.bounds
    radius = min((segment.radius for segment in path.segments if segment.is_arc), default=None)
    corners = (box.x0, box.y0, box.x1, box.y1)
    area = path.area if path.closed else 0.0
    return OrderedLine(word, layer, colour, corners, path.length, area, path.closed, radius, through)


def _counts(commission: Commission) -> Mapping[str, int]:
    """How many lines of each role that is cut through the pattern has for the pieces on the sheet."""
    found: Counter[str] = Counter()
    pieces = _by_name(commission.pattern)
    for key, copies in _copies(commission.sheet).items():
        for role in _CUT:
            if role in commission.options.roles and key in pieces:
                found[role.value] += copies * _count(commission, pieces[key], role)
    return found


def _copies(sheet: Sheet) -> dict[tuple[str, str], int]:
    """How often each piece lies on the sheet; operation by operation it is parted into as many figures as it has."""
    lies = Counter((figure.name, figure.group, role) for figure in sheet.figures for role in _roles(figure))
    found: dict[tuple[str, str], int] = {}
    for (name, group, _), count in lies.items():
        found[name, group] = max(found.get((name, group), 0), count)
    return found


def _roles(figure: Figure) -> set[Role]:
    return {ink.role for ink in figure.inks}


def _count(commission: Commission, piece: Piece, role: Role) -> int:
    if role is not Role.HOLE:
        return len(piece.openings) if role is Role.OPENING else 1
    if commission.holes is not StitchHoles.CUT:
        return 0
    shapes = {seam.name: seam.stitching.hole.shape for seam in commission.pattern.seams}
    made = [hole.shape or shapes[hole.seam] for hole in (*piece.holes, *piece.turned_holes)]
    return sum(shape in (HoleShape.ROUND, HoleShape.SLIT) for shape in made)


def _pieces(commission: Commission) -> Iterator[OrderedPiece]:
    """The sizes of the outlines in the order of the file."""
    pieces, grown = _by_name(commission.pattern), commission.grown
    for figure in commission.sheet.figures:
        piece = pieces.get((figure.name, figure.group))
        if piece is not None and Role.OUTLINE in _roles(figure) and Role.OUTLINE in commission.options.roles:
            box = piece.outline.bounds
            yield OrderedPiece(piece.name, box.width + grown, box.height + grown, _ANY if grown else 0.0)


def _by_name(pattern: Pattern) -> dict[tuple[str, str], Piece]:
    return {(piece.name, piece.leather): piece for piece in pattern.pieces}
