"""The files of one machine: which pieces lie on which sheet, and in which order their lines are cut."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from patternforge.drafting.names import file_word, file_words
from patternforge.drafting.pieces import figures
from patternforge.drafting.purpose import CutFace, DraftingOptions, Files, LaserOptions, Purpose
from patternforge.drafting.sheets import Deliverable, own_width
from patternforge.drawing.arrange import arranged, on_beds
from patternforge.drawing.chords import in_chords
from patternforge.drawing.course import Course, in_roles
from patternforge.drawing.model import Figure, Role, Sheet
from patternforge.errors import DraftError
from patternforge.units import mm
from patternforge.wallet.pattern import Pattern

__all__ = ["Cutter", "cutter_sheets"]


@dataclass(frozen=True, slots=True)
class Cutter:
    """How the files of a machine are laid out.

    ``word`` goes into their names; ``kind`` is the kind of file. ``roles`` are written, in this order within a piece.
    ``chords`` is how far chords may stray from the arcs they stand for, mm; None keeps true arcs.
    """

    word: str
    kind: str
    laser: LaserOptions
    files: Files
    roles: tuple[Role, ...]
    course: Course
    chords: float | None


def cutter_sheets(pattern: Pattern, cutter: Cutter) -> tuple[Deliverable, ...]:
    """A sheet for each leather and one with every piece, on as many beds as they need; or each piece by itself.

    On sheets a piece wanted more than once lies as often; a file of its own it has once. What changes sizes stands in
    the file name: kerf, allowance, chords, cutting from the back. DraftError when a piece is too large for the bed,
    the kerf leaves nothing of a hole, or a sheet holds no line of the roles written.
    """
    drawn = figures(pattern, Purpose.LASER, DraftingOptions(cutter.laser))
    laid_out = _sheets if cutter.files is Files.SHEETS else _single
    named = laid_out(pattern, drawn, cutter)
    return tuple(Deliverable(sheet.name, cutter.kind, _as_cut(sheet, cutter)) for sheet in named)


def _sheets(pattern: Pattern, drawn: Sequence[Figure], cutter: Cutter) -> Iterator[Sheet]:
    wanted = [figure for figure, piece in zip(drawn, pattern.pieces, strict=True) for _ in range(piece.quantity)]
    leathers = list(dict.fromkeys(figure.group for figure in wanted))
    some = [[figure for figure in wanted if figure.group == leather] for leather in leathers]
    names = _names(pattern, cutter, [*leathers, "everything"])
    for name, together in zip(names, [*some, wanted], strict=True):
        yield from _laid_out(name, together, cutter.laser)


def _single(pattern: Pattern, drawn: Sequence[Figure], cutter: Cutter) -> Iterator[Sheet]:
    for name, figure in zip(_names(pattern, cutter, [figure.name for figure in drawn]), drawn, strict=True):
        yield from _laid_out(name, [figure], cutter.laser)


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


def _as_cut(sheet: Sheet, cutter: Cutter) -> Sheet:
    cut = in_roles(sheet, cutter.roles, cutter.course)
    if not cut.figures:
        words = ", no ".join(role.value for role in cutter.roles)
        raise DraftError(f"{sheet.name!r} holds nothing to write: no {words}")
    return in_chords(cut, cutter.chords) if cutter.chords else cut
