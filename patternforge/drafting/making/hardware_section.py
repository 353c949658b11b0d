"""Hardware: every set with its halves, what is punched for them, and where."""

from __future__ import annotations

from collections.abc import Iterator

from patternforge.drafting.making.facts import MakingFacts
from patternforge.drawing.document import Blank, Cell, Column, Paragraph, Section, Table, Tone
from patternforge.drawing.model import Align
from patternforge.leather.hardware import Hardware, Setting, hardware
from patternforge.units import mm
from patternforge.wallet.pattern import FittingHole, Pattern, Piece
from patternforge.wallet.spec import Fitting

__all__ = ["hardware_section", "kind_told"]


def hardware_section(facts: MakingFacts) -> Section | None:
    """A row for every half that is set; None for a wallet without hardware."""
    pattern = facts.pattern
    if not pattern.design.fittings:
        return None
    columns = (
        Column(""),
        Column("what"),
        Column("kind"),
        Column("sets", Align.RIGHT),
        Column("half"),
        Column("on piece"),
        Column("how"),
    )
    rows = tuple(row for fitting in pattern.design.fittings for row in _rows(pattern, fitting))
    sources = dict.fromkeys(f"{known.title}: {known.source}" for known in _known(pattern))
    notes = tuple(Paragraph(f"Sizes of {source}. Measure your own.", Tone.SMALL) for source in sources)
    return Section("Hardware", (Table("", columns, rows), *notes))


def _known(pattern: Pattern) -> Iterator[Hardware]:
    kinds = hardware()
    yield from (kinds[fitting.kind] for fitting in pattern.design.fittings if fitting.kind in kinds)


def kind_told(fitting: Fitting) -> str:
    """What it is sold as, or the word the design has for it."""
    known = hardware().get(fitting.kind)
    return known.title if known else fitting.kind


def _rows(pattern: Pattern, fitting: Fitting) -> Iterator[tuple[Cell, ...]]:
    """The sets are counted in the first row alone."""
    halves = [(piece, hole) for piece in pattern.pieces for hole in piece.fittings if hole.fitting == fitting.name]
    told = (fitting.name, kind_told(fitting), "1")
    if not halves:
        yield (Blank.TICK, *told, "-", "-", "-")
    for number, (piece, hole) in enumerate(sorted(halves, key=lambda each: each[1].half)):
        yield (Blank.TICK, *(told if number == 0 else ("", "", "")), *_half(fitting, piece, hole))


def _half(fitting: Fitting, piece: Piece, hole: FittingHole) -> tuple[str, str, str]:
    known = hardware().get(fitting.kind)
    words = known.halves if known and len(known.halves) >= hole.half else ("first half", "second half")
    if fitting.setting is Setting.COVERED:
        how = f"glue in behind it, {mm(2 * hole.reach)} mm wide, {mm(fitting.thickness)} mm thick"
    else:
        how = f"punch {mm(hole.diameter)} mm"
    return words[hole.half - 1], piece.name, how
