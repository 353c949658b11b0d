"""What the wallet is: how large, what it holds, how it looks, and who makes it for whom."""

from __future__ import annotations

from collections.abc import Iterator

from patternforge.drafting.making.facts import MakingFacts
from patternforge.drafting.making.pictures import wallet_picture
from patternforge.drawing.document import Block, Column, Fields, Paragraph, Section, Table, Tone
from patternforge.fit.findings import Verdict, worst
from patternforge.units import inches, mm
from patternforge.wallet.pattern import Pattern

__all__ = ["wallet_section"]


def wallet_section(facts: MakingFacts) -> Section:
    """Sizes, contents, pictures, and lines for the order."""
    return Section("The wallet", tuple(_blocks(facts)))


def _blocks(facts: MakingFacts) -> Iterator[Block]:
    yield Fields(("Made by", "Date", "Order", "How many"))
    yield _verdict(facts)
    yield _sizes(facts)
    yield _contents(facts.pattern)
    yield wallet_picture(facts)
    if facts.pattern.design.notes:
        yield Paragraph(" ".join(facts.pattern.design.notes.split()))


def _verdict(facts: MakingFacts) -> Paragraph:
    match worst(facts.findings):
        case Verdict.GOOD:
            return Paragraph(f"It fits: all {len(facts.findings)} measures are good.")
        case Verdict.LOOK:
            return Paragraph("! LOOK: it fits, but see what was found before you cut.", Tone.LOUD)
        case Verdict.NO:
            return Paragraph("× DOES NOT FIT as drafted: see what was found. Do not cut by this sheet.", Tone.LOUD)


def _sizes(facts: MakingFacts) -> Table:
    finished = facts.finished
    thickness = (f"{mm(finished.thickness, 1)} mm", f"{inches(finished.thickness, 2)} in")
    return Table(
        "Finished size, width x height",
        (Column(""), Column("mm"), Column("inch")),
        (
            ("open, laid flat", *_both(finished.open)),
            ("closed", *_both(finished.closed)),
            ("thickness closed, as loaded", *thickness),
        ),
    )


def _both(size: tuple[float, float]) -> tuple[str, str]:
    width, height = size
    return f"{mm(width, 1)} x {mm(height, 1)} mm", f"{inches(width, 2)} x {inches(height, 2)} in"


def _contents(pattern: Pattern) -> Table:
    """Every content with how many there is room for, and the size of one."""
    counts: dict[str, int] = {}
    for content, count in _rooms(pattern):
        counts[content] = counts.get(content, 0) + count
    items = {content.name: content.item for content in pattern.design.contents}
    rows = tuple(
        (
            str(count),
            items[name].title or name,
            f"{mm(items[name].length)} x {mm(items[name].height)} mm",
            f"{mm(items[name].thickness)} mm",
        )
        for name, count in counts.items()
    )
    none = (("-", "nothing that is named in the design", "", ""),)
    return Table(
        "What it holds", (Column("how many"), Column("what"), Column("size of one"), Column("thick")), rows or none
    )


def _rooms(pattern: Pattern) -> Iterator[tuple[str, int]]:
    yield from ((pocket.content, pocket.count) for pocket in pattern.pockets)
    yield from ((loose.content, loose.count) for loose in pattern.loose)
    yield from ((room.content, room.count) for room in (pattern.folded.rooms if pattern.folded else ()))
