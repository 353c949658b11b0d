"""Stitching: holes and thread of every seam, and in all."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from patternforge.drafting.making.cutting_list import holes_made
from patternforge.drafting.making.facts import MakingFacts
from patternforge.drawing.document import Blank, Block, Cell, Column, Paragraph, Section, Table, Tone
from patternforge.drawing.model import Align
from patternforge.units import MM_PER_FOOT, MM_PER_M, mm
from patternforge.wallet.pattern import Pattern, Seam
from patternforge.wallet.spec import HoleShape, HoleSpec

__all__ = ["hole_told", "sewing_section", "thread_of"]


def sewing_section(facts: MakingFacts) -> Section | None:
    """Every seam with what it goes through; None for a wallet without one."""
    if not facts.pattern.seams:
        return None
    return Section("Holes and thread", tuple(_blocks(facts.pattern)))


def _blocks(pattern: Pattern) -> Iterator[Block]:
    right = Align.RIGHT
    columns = (
        Column(""),
        Column("seam"),
        Column("through"),
        Column("holes", right),
        Column("spacing, mm", right),
        Column("margin, mm", right),
        Column("length, mm", right),
        Column("thread", right),
    )
    thread = thread_of(pattern.seams)
    total: tuple[Cell, ...] = ("", "in all", "", "", "", "", "", _metres(thread))
    yield Table("", columns, tuple(_row(seam) for seam in pattern.seams), (total,))
    yield from _kinds(pattern)
    yield Paragraph(
        "Thread for a saddle stitch with two needles: twice the way along the seam and through the leather, tails"
        f" included. {_metres(thread)} or {mm(thread / MM_PER_FOOT)} ft in all. Holes to make in all pieces:"
        f" {_holes(pattern)}.",
        Tone.SMALL,
    )


def _kinds(pattern: Pattern) -> Iterator[Block]:
    """What kind of hole is made, seam by seam where they differ."""
    kinds: dict[str, list[str]] = {}
    for seam in pattern.seams:
        kinds.setdefault(hole_told(seam.stitching.hole), []).append(seam.name)
    if len(kinds) == 1:
        yield Paragraph(f"Holes of all seams: {next(iter(kinds))}.")
    else:
        yield from (Paragraph(f"Holes of {', '.join(seams)}: {kind}.") for kind, seams in kinds.items())


def thread_of(seams: Iterable[Seam]) -> float:
    """Thread of some seams, mm; a seam that is sewn with another takes none of its own."""
    return sum(seam.thread for seam in seams if not seam.meets)


def _holes(pattern: Pattern) -> int:
    return sum(holes_made(pattern, piece) * piece.quantity for piece in pattern.pieces)


def _row(seam: Seam) -> tuple[Cell, ...]:
    return (
        Blank.TICK,
        seam.name,
        ", ".join(seam.pieces),
        str(len(seam.holes)),
        _spacing(seam),
        mm(seam.margin),
        mm(seam.length, 1),
        f"with {seam.meets}" if seam.meets else _metres(seam.thread),
    )


def _spacing(seam: Seam) -> str:
    low, high = mm(min(seam.spacings, default=0.0)), mm(max(seam.spacings, default=0.0))
    return low if low == high else f"{low} to {high}"


def _metres(thread: float) -> str:
    return f"{mm(thread / MM_PER_M)} m"


def hole_told(hole: HoleSpec) -> str:
    """What kind of hole it is, with its size in mm.

    >>> hole_told(HoleSpec(HoleShape.SLIT, length=2.0, slant=45.0))
    'slit 2.00 mm, slant 45 deg'
    """
    match hole.shape:
        case HoleShape.ROUND:
            return f"round {mm(hole.diameter)} mm"
        case HoleShape.SLIT:
            return f"slit {mm(hole.length)} mm, slant {hole.slant:g} deg"
        case HoleShape.MARK:
            return "marked only"
        case HoleShape.NONE:
            return "not made"
