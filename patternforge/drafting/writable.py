"""Whether everything that a design has written on paper can be drawn with stroke letters."""

from __future__ import annotations

from collections.abc import Iterator

from patternforge.drawing.drawable import undrawable
from patternforge.wallet.pattern import Pattern

__all__ = ["unwritable"]


def unwritable(pattern: Pattern) -> tuple[str, ...]:
    """What no stroke letters can draw, one line each: the file, the line of a part, what bears the letter, and which.

    Looked at are the title, the revision, leathers, fittings, faces and pieces, of each part the first at fault.
    """
    return tuple(dict.fromkeys(f"{pattern.design.file}{line}" for line in _faults(pattern)))


def _faults(pattern: Pattern) -> Iterator[str]:
    design = pattern.design
    yield from _refusals(": the title", design.title)
    yield from _refusals(": the revision", design.revision)
    for leather in design.leathers:
        yield from _refusals(": the leather", leather.role)
        yield from _refusals(f": leather '{leather.role}', the name", leather.name)
    for fitting in design.fittings:
        yield from _refusals(f":{fitting.line}: the fitting", fitting.name)
    for initials in design.initials:
        yield from _refusals(f":{initials.line}: the initials", initials.name)
    for face in design.folded.faces if design.folded else ():
        yield from _refusals(f":{face.line}: the face", face.name)
    for part in design.parts:
        names = [piece.name for piece in pattern.pieces if piece.part == part.name]
        yield from [fault for name in names for fault in _refusals(f":{part.line}: the piece", name)][:1]


def _refusals(bearer: str, words: str) -> Iterator[str]:
    fault = undrawable(words)
    if fault:
        yield f"{bearer} '{words}' cannot be drawn on paper: {fault}"
