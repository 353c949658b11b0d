"""Pieces made earlier and kept as they are: judged in other leathers, and held against what would be drafted anew."""

from __future__ import annotations

from collections.abc import Mapping, Set
from dataclasses import dataclass
from pathlib import Path

from patternforge.comparison.reading import Stored
from patternforge.comparison.sets import Comparison, compared
from patternforge.design.load import load_design
from patternforge.drafting.source import Source
from patternforge.errors import DraftError, ReadingError
from patternforge.fit.judge import fit_as_cut_over_range
from patternforge.leather.material import Leather
from patternforge.pipeline.made import other_pieces, source_of, stored_at, stored_of
from patternforge.pipeline.stages import Judged, on_letters, shown, text_at
from patternforge.wallet.assemble import drafted
from patternforge.wallet.spec import Design

__all__ = ["Kept", "kept"]


@dataclass(frozen=True, slots=True)
class Kept:
    """A wallet of kept pieces, the file they are from, and what would be other if it were drafted anew.

    ``anew`` is None where it cannot be drafted in these leathers at all.
    """

    wallet: Judged
    file: str
    anew: Comparison | None


def kept(design: Path, made: Path, settings: Mapping[str, str], texts: Mapping[str, str]) -> Kept:
    """The pieces of ``made``, a ``pattern.json``, judged in the leathers of ``design`` with ``settings``.

    Whatever else was set for these pieces stays set unless ``settings`` or ``texts`` say another. No piece is drafted
    anew: ReadingError where the design, in the leathers of then, would have other pieces, since more than a leather
    was changed. DesignError and DraftError as the stages raise them.
    """
    known = stored_at(made)
    source = source_of(known, made)
    values = _parameters(source, {leather.role for leather in known.drafted_for})
    now = Source(text_at(design), {**values, **settings}, {**source.initials, **texts})
    wanted = _design(now, design)
    _refuse_other_leathers(known, wanted, made)
    then = _then(now, known)
    pattern = drafted(_design(then, design))
    other = other_pieces(known, pattern, then)
    if other:
        raise ReadingError(
            f"{shown(made)}: {shown(design)} drafts other pieces even in the leathers that these are for"
            f" ({', '.join(other)}); keep pieces where nothing but leathers changes, or draft anew"
        )
    findings = (*fit_as_cut_over_range(pattern, wanted.leathers), *on_letters(pattern))
    is_same = _taken(wanted.leathers) == _taken(pattern.design.leathers)
    wallet = Judged(pattern, findings, then, () if is_same else wanted.leathers)
    return Kept(wallet, shown(made), _anew(known, wanted, now))


def _design(source: Source, path: Path) -> Design:
    return load_design(source.text, shown(path), source.settings, source.initials)


def _parameters(source: Source, roles: Set[str]) -> dict[str, str]:
    """What was set of parameters, leathers left out."""
    return {name: value for name, value in source.settings.items() if name.partition(".")[0] not in roles}


def _then(now: Source, known: Stored) -> Source:
    """The same with every leather set to what the pieces were drafted for."""
    leathers = known.drafted_for
    thickness = {leather.role: f"{leather.thickness:.9f} mm" for leather in leathers}
    neutral = {f"{leather.role}.neutral": f"{leather.neutral:.9f}" for leather in leathers}
    return Source(now.text, {**_parameters(now, set(thickness)), **thickness, **neutral}, now.initials)


def _taken(leathers: tuple[Leather, ...]) -> list[tuple[str, float, float, float]]:
    return [(own.role, round(own.t, 9), round(own.neutral, 9), round(own.min_radius, 9)) for own in leathers]


def _refuse_other_leathers(known: Stored, wanted: Design, made: Path) -> None:
    before, after = {each.role for each in known.drafted_for}, {each.role for each in wanted.leathers}
    if before != after:
        raise ReadingError(
            f"{shown(made)}: its pieces are of {', '.join(sorted(before))}, the design is of"
            f" {', '.join(sorted(after))}; keep pieces where the leathers have the same names"
        )


def _anew(known: Stored, wanted: Design, source: Source) -> Comparison | None:
    try:
        return compared(known.made, stored_of(drafted(wanted), source, wanted.file).made)
    except (DraftError, ReadingError):
        return None
