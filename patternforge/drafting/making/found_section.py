"""What was found when the wallet was closed, as far as it wants the maker's eye."""

from __future__ import annotations

from patternforge.drafting.making.facts import MakingFacts
from patternforge.drawing.document import Block, Column, Paragraph, Section, Table, Tone
from patternforge.drawing.model import Align
from patternforge.fit.findings import Finding, Verdict, worst

__all__ = ["found_section"]

# A sign and a word: neither colour nor the sign alone has to be made out.
_SAID = {Verdict.NO: "× NO", Verdict.LOOK: "! LOOK"}


def found_section(facts: MakingFacts) -> Section | None:
    """Every finding that is not good, the worst first; None when all are good."""
    wanting = [found for verdict in _SAID for found in facts.findings if found.verdict is verdict]
    if not wanting:
        return None
    return Section("Look at this before you cut", (*_warning(facts), _table(wanting)))


def _warning(facts: MakingFacts) -> tuple[Block, ...]:
    if worst(facts.findings) is not Verdict.NO:
        return ()
    return (Paragraph("DOES NOT FIT: what reads NO would spoil the leather. Do not cut by this sheet.", Tone.LOUD),)


def _table(wanting: list[Finding]) -> Table:
    right = Align.RIGHT
    columns = (
        Column("verdict", Align.CENTRE),
        Column("what was measured"),
        Column("where"),
        Column("measured", right),
        Column("limit", right),
        Column("what to do"),
    )
    return Table("", columns, tuple(_row(found) for found in wanting))


def _row(found: Finding) -> tuple[str, ...]:
    limit, remedy = found.asked, found.remedy or "see for yourself"
    return (_SAID[found.verdict], found.what, found.where, found.size, limit, remedy)
