"""The files of one machine: which pieces lie on which sheet, and in which order their lines are cut."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from patternforge.drafting.dies import Die, dies
from patternforge.drafting.names import file_word, file_words
from patternforge.drafting.pieces import figures
from patternforge.drafting.purpose import CutFace, DraftingOptions, Files, LaserOptions, Mirrors, Purpose
from patternforge.drafting.sheets import own_width
from patternforge.drawing.arrange import arranged, on_beds
from patternforge.drawing.chords import in_chords
from patternforge.drawing.course import Course, Travel, in_roles
from patternforge.drawing.model import Figure, Role, Sheet
from patternforge.drawing.shortest import shortest
from patternforge.drawing.travel import travel
from patternforge.errors import DraftError
from patternforge.units import mm
from patternforge.wallet.pattern import Pattern

__all__ = ["CutSheet", "Cutter", "cutter_dies", "cutter_sheets"]


@dataclass(frozen=True, slots=True)
class Cutter:
    """How the files of a machine are laid out.

    ``word`` goes into their names; ``kind`` is the kind of file. ``roles`` are written, in this order within a piece.
    ``chords`` is how far chords may stray from the arcs they stand for, mm; None keeps true arcs. ``travel`` says
    whether lines are put in another order to save way. Where pieces have a file each and ``mirrors`` is given, pieces
    that share a die have one file.
    """

    word: str
    kind: str
    laser: LaserOptions
    files: Files
    roles: tuple[Role, ...]
    course: Course
    chords: float | None
    travel: Travel = Travel.AS_DRAWN
    mirrors: Mirrors | None = None


@dataclass(frozen=True, slots=True)
class CutSheet:
    """A file to be cut by: its name without ending, the kind of file, the sheet, what is on it, and its travel.

    ``group`` is the leather whose pieces it holds, or empty where it holds all pieces of a wallet once more.
    ``as_drawn`` is the way between the lines, mm, in the order they were drawn in.
    """

    name: str
    kind: str
    sheet: Sheet
    group: str
    as_drawn: float

    @property
    def travel(self) -> float:
        """The way between the lines, mm, in the order of the file."""
        return travel(self.sheet)


def cutter_sheets(pattern: Pattern, cutter: Cutter) -> tuple[CutSheet, ...]:
    """A sheet for each leather and one with every piece, on as many beds as they need; or each piece by itself.

    On sheets a piece wanted more than once lies as often; a file of its own it has once. What changes sizes stands in
    the file name: kerf, allowance, chords, cutting from the back. DraftError when a piece is too large for the bed,
    the kerf leaves nothing of a hole, or a sheet holds no line of the roles written.
    """
    drawn = figures(pattern, Purpose.LASER, DraftingOptions(cutter.laser))
    laid_out = _sheets if cutter.files is Files.SHEETS else _single
    return tuple(_as_cut(sheet, group, cutter) for sheet, group in laid_out(pattern, drawn, cutter))


def _sheets(pattern: Pattern, drawn: Sequence[Figure], cutter: Cutter) -> Iterator[tuple[Sheet, str]]:
    wanted = [figure for figure, piece in zip(drawn, pattern.pieces, strict=True) for _ in range(piece.quantity)]
    leathers = list(dict.fromkeys(figure.group for figure in wanted))
    some = [[figure for figure in wanted if figure.group == leather] for leather in leathers]
    names = _names(pattern, cutter, [*leathers, "everything"])
    for name, group, together in zip(names, [*leathers, ""], [*some, wanted], strict=True):
        yield from ((sheet, group) for sheet in _laid_out(name, together, cutter.laser))


def _single(pattern: Pattern, drawn: Sequence[Figure], cutter: Cutter) -> Iterator[tuple[Sheet, str]]:
    shared = None if cutter.mirrors is None else [die.name for die in _dies(pattern, drawn, cutter, cutter.mirrors)]
    for name, figure in zip(_names(pattern, cutter, [figure.name for figure in drawn]), drawn, strict=True):
        if shared is None or figure.name in shared:
            yield from ((sheet, figure.group) for sheet in _laid_out(name, [figure], cutter.laser))


def cutter_dies(pattern: Pattern, cutter: Cutter) -> tuple[Die, ...]:
    """The dies whose files ``cutter_sheets`` gives, in its order; none for a cutter that is no die."""
    if cutter.mirrors is None:
        return ()
    drawn = figures(pattern, Purpose.LASER, DraftingOptions(cutter.laser))
    return _dies(pattern, drawn, cutter, cutter.mirrors)


def _dies(pattern: Pattern, drawn: Sequence[Figure], cutter: Cutter, mirrors: Mirrors) -> tuple[Die, ...]:
    written = [replace(each, inks=tuple(ink for ink in each.inks if ink.role in cutter.roles)) for each in drawn]
    return dies(pattern, written, mirrors)


def _names(pattern: Pattern, cutter: Cutter, words: Sequence[str]) -> list[str]:
    stem = f"{file_word(pattern.design.name)}-{file_word(cutter.word)}"
    return [f"{stem}-{word}{''.join(_changes(cutter))}" for word in file_words(words)]


def _changes(cutter: Cutter) -> Iterable[str]:
    """What a file has that another of the same piece has not, for the names."""
    laser = cutter.laser
    if laser.cut_face is CutFace.BACK:
        yield "-back"
    for word, size in (("kerf", laser.kerf), ("allowance", laser.allowance), ("chords", cutter.chords)):
        if size:
            yield f"-{word}-{mm(size, 3)}"


def _laid_out(name: str, some: Sequence[Figure], laser: LaserOptions) -> tuple[Sheet, ...]:
    width = laser.bed or own_width(some, laser.gap)
    if laser.bed_height is None:
        return (arranged(some, laser.gap, width, name),)
    return on_beds(some, laser.gap, width, laser.bed_height, name)


def _as_cut(sheet: Sheet, group: str, cutter: Cutter) -> CutSheet:
    cut = in_roles(sheet, cutter.roles, cutter.course)
    if not cut.figures:
        words = ", no ".join(role.value for role in cutter.roles)
        raise DraftError(f"{sheet.name!r} holds nothing to write: no {words}")
    found = shortest(cut, cutter.course) if cutter.travel is Travel.SHORTEST else cut
    chorded = in_chords(found, cutter.chords) if cutter.chords else found
    return CutSheet(sheet.name, cutter.kind, chorded, group, travel(cut))
