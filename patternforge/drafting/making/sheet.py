"""The making sheet put together, section by section in the order of the work."""

from __future__ import annotations

from collections.abc import Iterator

from patternforge.drafting.cautions import ALWAYS, BLADE, DIE, LASER, SCRAP, UNSURE, is_unsure
from patternforge.drafting.making.costs_section import costs_section
from patternforge.drafting.making.cutting_list import cutting_section
from patternforge.drafting.making.facts import MakingFacts
from patternforge.drafting.making.finishing_section import finishing_section
from patternforge.drafting.making.found_section import found_section
from patternforge.drafting.making.hardware_section import hardware_section
from patternforge.drafting.making.leather_section import leather_section
from patternforge.drafting.making.letters_section import letters_section
from patternforge.drafting.making.sewing_section import sewing_section
from patternforge.drafting.making.tools_section import tools_section
from patternforge.drafting.making.wallet_section import wallet_section
from patternforge.drawing.document import Column, Document, Fields, Listing, Section, Table
from patternforge.drawing.model import Align
from patternforge.units import mm

__all__ = ["making_sheet"]


def making_sheet(facts: MakingFacts) -> Document:
    """All that the bench needs to make the wallet; sections that would be empty are left out."""
    design = facts.pattern.design
    revision = f"revision {design.revision}" if design.revision else "no revision"
    # The title comes last: where letters are large, what is cut off is the end of it.
    imprint = f"{_file(design.file)}, {revision}: {design.title}"
    subtitle = f"Making sheet, {revision}, drafted from {_file(design.file)}"
    return Document(design.title, subtitle, imprint, tuple(each for each in _sections(facts) if each))


def _file(path: str) -> str:
    """The name of the file alone: where it lay on the machine that drafted it says nothing at the bench."""
    return path.replace("\\", "/").rpartition("/")[2]


def _sections(facts: MakingFacts) -> Iterator[Section | None]:
    yield wallet_section(facts)
    yield found_section(facts)
    yield _cautions(facts)
    yield leather_section(facts)
    yield cutting_section(facts)
    yield finishing_section(facts)
    yield letters_section(facts)
    yield hardware_section(facts)
    yield sewing_section(facts)
    yield tools_section(facts)
    yield _moved(facts)
    yield Section("Step by step", facts.steps) if facts.steps else None
    yield costs_section(facts)
    yield Section("Finished", (Fields(("Finished by", "Date", "Seconds, spoilt pieces", "Remarks")),))


def _cautions(facts: MakingFacts) -> Section:
    unsure = any(is_unsure(leather) for leather in facts.pattern.design.leathers)
    return Section("Before you cut", (Listing((BLADE, DIE, LASER, *([UNSURE] if unsure else []), ALWAYS, SCRAP)),))


def _moved(facts: MakingFacts) -> Section | None:
    """Sizes that moved to meet the stitches, each with all parts that share it."""
    changes: dict[tuple[str, str, str, str], list[str]] = {}
    for each in facts.pattern.adjustments:
        key = (each.size, mm(each.asked), mm(each.drafted), each.reason)
        changes.setdefault(key, []).append(each.part)
    if not changes:
        return None
    columns = (
        Column("part"),
        Column("size"),
        Column("asked", Align.RIGHT),
        Column("drafted", Align.RIGHT),
        Column("why"),
    )
    rows = tuple((", ".join(parts), *key) for key, parts in changes.items())
    return Section("Sizes that moved", (Table("In mm", columns, rows),))
