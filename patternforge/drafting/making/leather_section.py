"""The leathers: what they must be, and lines to write down what was taken."""

from __future__ import annotations

from collections.abc import Iterator

from patternforge.drafting.making.facts import MakingFacts
from patternforge.drafting.wording import TIGHT
from patternforge.drawing.document import Blank, Block, Cell, Column, Paragraph, Section, Table, Tone
from patternforge.leather.material import Leather, MadeOf, Tannage
from patternforge.units import MM_PER_OUNCE, mm

__all__ = ["leather_section", "range_told"]

_TANNED = {
    Tannage.VEGETABLE: "vegetable",
    Tannage.CHROME: "chrome",
    Tannage.COMBINATION: "combination",
    Tannage.UNKNOWN: "not known: ask",
}


def leather_section(facts: MakingFacts) -> Section:
    """What each leather must be and how thick it may be, then what is written down of the one that is taken."""
    return Section("Leathers", tuple(_blocks(facts)))


def _blocks(facts: MakingFacts) -> Iterator[Block]:
    leathers = facts.pattern.design.leathers
    heads = ("leather", "drafted for", "fits from - to", "can be made", "tannage", "face up", "stretch", "tight way")
    yield Table("What to take", tuple(Column(head) for head in heads), tuple(_row(facts, each) for each in leathers))
    yield Paragraph(
        "Fits from - to: the pieces as drafted, this leather alone thinner or thicker, all measures good. Can be"
        " made: something may want a look, but nothing would spoil the wallet. Measure in several places, well inside"
        " the edge of the hide. The tight way is as the piece is drawn.",
        Tone.SMALL,
    )
    taken = ("leather", "hide or lot", "measured, mm", "measured, mm", "measured, mm", "remarks")
    rows: tuple[tuple[Cell, ...], ...] = tuple((each.role, *[Blank.LINE] * 5) for each in leathers)
    yield Table("What was taken", tuple(Column(head) for head in taken), rows)


def _row(facts: MakingFacts, leather: Leather) -> tuple[str, ...]:
    window = next((each for each in facts.windows if each.role == leather.role), None)
    return (
        f"{leather.role}: {leather.name}" if leather.name else leather.role,
        f"{mm(leather.t)} mm, {mm(leather.t / MM_PER_OUNCE, 1)} oz",
        range_told(window.good, window.good_ends) if window else "not looked for",
        range_told(window.holds, window.holds_ends) if window else "not looked for",
        *_nature(leather),
    )


def range_told(found: tuple[float, float] | None, ends: tuple[object, object]) -> str:
    """A range of thicknesses in mm; ``ends`` are what ends it, None where it was looked for no further.

    >>> range_told((1.04, 1.36), ("tight", "loose")), range_told(None, ("tight", "tight"))
    ('1.04 - 1.36 mm', 'not as drafted')
    >>> range_told((0.2, 2.66), (None, "tight")), range_told((1.04, 6.0), ("loose", None))
    ('to 2.66 mm', 'from 1.04 mm')
    """
    if found is None:
        return "not as drafted"
    low, high = (mm(end) for end in found)
    match ends:
        case None, None:
            return "any"
        case None, _:
            return f"to {high} mm"
        case _, None:
            return f"from {low} mm"
    return f"{low} - {high} mm"


def _nature(leather: Leather) -> tuple[str, str, str, str]:
    if leather.made_of is not MadeOf.LEATHER:
        return leather.made_of.value, "-", "-", "-"
    tight = TIGHT.get(leather.stretch, "any")
    return _TANNED[leather.tannage], leather.face.value, leather.stretch.value, tight
