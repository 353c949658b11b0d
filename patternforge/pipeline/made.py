"""Pieces made earlier, from their ``pattern.json``: read, and drafted again from what they were drafted from."""

from __future__ import annotations

import stat
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from types import MappingProxyType

from patternforge.comparison.reading import Stored, TakenLeather, stored
from patternforge.comparison.sets import compared
from patternforge.design.load import load_design
from patternforge.drafting.source import Source
from patternforge.errors import ReadingError
from patternforge.leather.material import Leather, Thickness
from patternforge.pipeline.stages import shown, text_at
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern

__all__ = ["is_made", "made_again", "made_anew", "other_pieces", "source_of", "stored_at", "stored_of"]

_LARGEST = 50_000_000  # bytes of a pattern.json
_NOTHING: Mapping[str, str] = MappingProxyType({})


def is_made(path: Path) -> bool:
    """Whether a path is that of a ``pattern.json``, under whatever name, and not that of a design file."""
    return path.suffix.lower() == ".json"


def stored_at(path: Path, label: str = "") -> Stored:
    """The ``pattern.json`` at ``path``; ReadingError when it cannot be read as one."""
    try:
        if not stat.S_ISREG(path.stat().st_mode):
            raise ReadingError(f"{shown(path)}: this is no file; give the path of a pattern.json")
        with path.open("rb") as stream:
            data = stream.read(_LARGEST + 1)
    except FileNotFoundError as error:
        raise ReadingError(
            f"{shown(path)}: there is no such file; 'draft' writes pattern.json into its folder"
        ) from error
    except OSError as error:
        raise ReadingError(
            f"{shown(path)}: the file cannot be read: {error.strerror}; see to it that it can"
        ) from error
    if len(data) > _LARGEST:
        raise ReadingError(f"{shown(path)}: the file is larger than 50 MB; a pattern.json has some hundred kB")
    return stored(data, shown(path), label)


def stored_of(pattern: Pattern, source: Source, label: str) -> Stored:
    """What would be read from the ``pattern.json`` of a pattern, to its last decimal."""
    from patternforge.drafting.description import description
    from patternforge.export.json import json_bytes
    from patternforge.fit.judge import fit

    return stored(json_bytes(description(pattern, fit(pattern), source=source)), pattern.design.file, label)


def made_anew(path: Path, settings: Mapping[str, str] = _NOTHING) -> tuple[Pattern, Source]:
    """The wallet of a design file, or that of a ``pattern.json`` with other values set, drafted now."""
    if is_made(path):
        made = stored_at(path)
        known = source_of(made, path)
        source = Source(known.text, {**known.settings, **settings}, known.initials)
        return drafted(load_design(source.text, made.file, source.settings, source.initials)), source
    source = Source(text_at(path), settings, {})
    return drafted(load_design(source.text, shown(path), settings)), source


def made_again(path: Path) -> Pattern:
    """The pattern of a ``pattern.json``, drafted again and proved to have the same pieces; in the leathers kept for.

    ReadingError where the file does not tell what it was drafted from, or another version of the program would draft
    other pieces.
    """
    known = stored_at(path)
    source = source_of(known, path)
    pattern = drafted(load_design(source.text, known.file, source.settings, source.initials))
    other = other_pieces(known, pattern, source)
    if other:
        raise ReadingError(
            f"{shown(path)}: the program as it is now drafts other pieces from the same design ({', '.join(other)});"
            " judge them with the version that made them, or draft anew"
        )
    kept = {leather.role: leather for leather in known.kept_for}
    leathers = tuple(_in_place_of(own, kept.get(own.role)) for own in pattern.design.leathers)
    return replace(pattern, design=replace(pattern.design, leathers=leathers))


def _in_place_of(own: Leather, kept: TakenLeather | None) -> Leather:
    if kept is None:
        return own
    thickness = Thickness(kept.thickness, kept.thickness)
    return replace(own, thickness=thickness, neutral=kept.neutral, min_radius=kept.min_radius)


def source_of(known: Stored, path: Path) -> Source:
    """What the pieces of a ``pattern.json`` were drafted from; ReadingError where it does not tell."""
    if known.source is None:
        raise ReadingError(f"{shown(path)}: the file does not tell what it was drafted from; draft it anew")
    return known.source


def other_pieces(known: Stored, pattern: Pattern, source: Source) -> tuple[str, ...]:
    """The names of pieces that are in only one of both sets, or whose dies or templates differ."""
    try:
        found = compared(known.made, stored_of(pattern, source, known.file).made)
    except ReadingError:
        return tuple(piece.name for piece in known.made.pieces)
    changed = (*found.other_die, *found.other_template)
    return (*(each.new.name for each in changed), *(piece.name for piece in (*found.added, *found.gone)))
