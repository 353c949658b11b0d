"""The cut list: every piece once, what leather it takes, and the leathers in all."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from patternforge.drafting.alike import alike
from patternforge.drafting.holes import made_hole
from patternforge.drafting.making.facts import MakingFacts
from patternforge.drafting.wording import TIGHT
from patternforge.drawing.document import Blank, Block, Cell, Column, Paragraph, Section, Table, Tone
from patternforge.drawing.model import Align
from patternforge.geometry.turned_box import smallest_box
from patternforge.leather.material import Leather, MadeOf
from patternforge.units import MM2_PER, mm
from patternforge.wallet.pattern import Pattern, Piece
from patternforge.wallet.spec import HoleShape

__all__ = [
    "LeatherTaken",
    "cutting_section",
    "holes_made",
    "leather_taken",
]

_SAVES = 0.01  # share of a rectangle that turning must save to be worth a word

_RIGHT = Align.RIGHT


@dataclass(frozen=True, slots=True)
class LeatherTaken:
    """What all pieces of a leather take: how many pieces, their net area, the waste put on it; mm2, per cent."""

    leather: Leather
    pieces: int
    net: float
    waste: float | None

    @property
    def added(self) -> float:
        """The waste in mm2, 0 where nothing is said of it."""
        return self.net * (self.waste or 0.0) / 100


def cutting_section(facts: MakingFacts) -> Section:
    """Pieces, pieces that are the same cut, and leather in all."""
    return Section("Cut list", tuple(_blocks(facts)))


def _blocks(facts: MakingFacts) -> Iterator[Block]:
    pattern = facts.pattern
    heads = ("", "piece", "cut", "leather", "width x height", "turned, least", "net cm2", "part", "holes")
    aligns = (Align.LEFT, Align.LEFT, _RIGHT, Align.LEFT, _RIGHT, _RIGHT, _RIGHT, Align.LEFT, _RIGHT)
    columns = tuple(Column(head, align) for head, align in zip(heads, aligns, strict=True))
    yield Table("Sizes in mm, each piece", columns, tuple(_row(pattern, piece) for piece in pattern.pieces))
    yield from (_same(names) for names in alike(pattern))
    yield Paragraph(
        "Width x height: the smallest rectangle with the piece upright as drawn. Turned, least: the smallest of all"
        " rectangles, where turning the piece saves leather and nothing forbids it. Net: leather in the piece,"
        " openings taken out. Hidden parts may come from belly or scarred leather. Holes: stitch holes in one piece.",
        Tone.SMALL,
    )
    yield _totals(facts)


def _row(pattern: Pattern, piece: Piece) -> tuple[Cell, ...]:
    return (
        Blank.TICK,
        piece.name,
        str(piece.quantity),
        piece.leather,
        f"{mm(piece.width, 1)} x {mm(piece.height, 1)}",
        _turned(pattern, piece),
        mm(piece.area / MM2_PER["cm2"], 1),
        "seen" if piece.visible else "hidden",
        str(holes_made(pattern, piece)),
    )


def _turned(pattern: Pattern, piece: Piece) -> str:
    """The least rectangle and the turn it needs, or why there is none."""
    box = smallest_box(piece.outline)
    if box.area > (1 - _SAVES) * piece.width * piece.height:
        return "-"
    if pattern.design.leather(piece.leather).stretch in TIGHT:
        return "do not turn: stretch"
    return f"{mm(box.width, 1)} x {mm(box.height, 1)} at {mm(box.turn, 0)} deg"


def holes_made(pattern: Pattern, piece: Piece) -> int:
    """How many stitch holes are made in one flat piece, pricks counted, bare places not."""
    specs = {seam.name: seam.stitching.hole for seam in pattern.seams}
    made = (made_hole(hole, specs[hole.seam]) for hole in (*piece.holes, *piece.turned_holes))
    return sum(spec.shape is not HoleShape.NONE for spec in made)


def _same(names: tuple[str, ...]) -> Paragraph:
    return Paragraph(f"The same cut: {', '.join(names)}. One template or die serves them all.")


def leather_taken(facts: MakingFacts) -> tuple[LeatherTaken, ...]:
    """What every leather of the design is needed for, in its order."""
    return tuple(_taken(facts, leather) for leather in facts.pattern.design.leathers)


def _taken(facts: MakingFacts, leather: Leather) -> LeatherTaken:
    own = [piece for piece in facts.pattern.pieces if piece.leather == leather.role]
    net = sum(piece.area * piece.quantity for piece in own)
    return LeatherTaken(leather, sum(piece.quantity for piece in own), net, facts.waste_of(leather.role))


def _totals(facts: MakingFacts) -> Table:
    taken = leather_taken(facts)
    if all(each.waste is None for each in taken):
        rows: tuple[tuple[Cell, ...], ...] = tuple((*_net(each), Blank.LINE, Blank.LINE) for each in taken)
        own = (*_numbers(("leather", "pieces", "net dm2", "net ft2")), Column("your waste, %"), Column("to buy"))
        return Table("Leather in all, net: no waste is added", own, rows)
    heads = ("leather", "pieces", "net dm2", "net ft2", "waste, %", "waste dm2", "with waste dm2", "ft2")
    return Table(
        "Leather in all; waste is your own figure, in per cent of the net area",
        _numbers(heads),
        tuple((*_net(each), *_wasted(each)) for each in taken),
    )


def _numbers(heads: tuple[str, ...]) -> tuple[Column, ...]:
    return (Column(heads[0]), *(Column(head, _RIGHT) for head in heads[1:]))


def _net(each: LeatherTaken) -> tuple[str, ...]:
    return _name(each.leather), str(each.pieces), mm(each.net / MM2_PER["dm2"]), mm(each.net / MM2_PER["ft2"])


def _wasted(each: LeatherTaken) -> tuple[str, ...]:
    gross = each.net + each.added
    share = "none" if each.waste is None else f"{each.waste:g}"
    return share, mm(each.added / MM2_PER["dm2"]), mm(gross / MM2_PER["dm2"]), mm(gross / MM2_PER["ft2"])


def _name(leather: Leather) -> str:
    kind = "" if leather.made_of is MadeOf.LEATHER else f" ({leather.made_of.value})"
    return f"{leather.role}{kind}"
