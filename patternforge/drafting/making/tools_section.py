"""Tools, needles and thread, each by a rule of the trade that is named."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from patternforge.drafting.making.facts import MakingFacts
from patternforge.drafting.making.hardware_section import kind_told
from patternforge.drafting.making.sewing_section import hole_told, thread_of
from patternforge.drafting.smallest import across
from patternforge.drawing.document import Blank, Column, Paragraph, Section, Table, Tone
from patternforge.leather.hardware import Setting
from patternforge.units import MM_PER_FRENCH_INCH, MM_PER_M, mm
from patternforge.wallet.finishing import TurnedHoles
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import HoleShape, Stitching

__all__ = ["needle_number", "tools_section", "usual_thread"]


class Rule(StrEnum):
    """Where a rule of the trade was read."""

    BANDS = "a"
    NUMBERS = "b"
    HABIT = "c"
    DESIGN = "d"


_SOURCES = {
    Rule.BANDS: 'thread by pitch: a stitches-per-inch table and the article "Which Pricking Irons..... And Why?"',
    Rule.NUMBERS: 'numbers count stitches on the old French inch of 27.07 mm: "Guide to Thread Sizes and Stitches Per'
    ' Inch (SPI) for Handsewing"; irons stray, measure yours over many teeth',
    Rule.HABIT: "common practice, no source",
    Rule.DESIGN: "as this wallet is drafted",
}

# Pitch, then the thinnest and the thickest thread printed for it, mm: source under Rule.BANDS.
_BANDS = (
    (2.7, 0.35, 0.45),
    (3.0, 0.45, 0.55),
    (3.38, 0.55, 0.65),
    (3.85, 0.55, 0.65),
    (4.0, 0.6, 0.8),
    (5.0, 0.8, 1.0),
)
_NEAR = 0.3  # mm that a pitch may be off one that is printed

# The thickest thread, mm, for each number of blunt needle; common practice, no source.
_NEEDLES = ((0.6, 4), (0.8, 2), (1.0, 0))


@dataclass(frozen=True, slots=True)
class _Tool:
    what: str
    size: str
    use: str
    rule: Rule


def tools_section(facts: MakingFacts) -> Section:
    """What lies ready before the work begins, and where each rule comes from."""
    tools = tuple(_tools(facts.pattern))
    columns = (Column(""), Column("tool"), Column("size"), Column("for"), Column("rule"))
    rows = tuple((Blank.TICK, tool.what, tool.size, tool.use, f"({tool.rule})") for tool in tools)
    used = dict.fromkeys(sorted(tool.rule for tool in tools))
    notes = "; ".join(f"({rule}) {_SOURCES[rule]}" for rule in used)
    return Section("Tools and needles", (Table("", columns, rows), Paragraph(f"{notes}.", Tone.SMALL)))


def usual_thread(pitch: float) -> tuple[float, float] | None:
    """The thinnest and the thickest thread printed for the nearest pitch, mm; None where none is near.

    >>> usual_thread(3.4), usual_thread(7.0)
    ((0.55, 0.65), None)
    """
    near, low, high = min(_BANDS, key=lambda band: abs(band[0] - pitch))
    return (low, high) if abs(near - pitch) <= _NEAR else None


def needle_number(thread: float) -> int | None:
    """The number of blunt needle for a thread of that thickness, mm; None for thicker thread than is usual.

    >>> needle_number(0.55), needle_number(1.4)
    (4, None)
    """
    return next((number for most, number in _NEEDLES if thread <= most + 1e-9), None)


def _tools(pattern: Pattern) -> Iterator[_Tool]:
    yield _Tool("thickness gauge", "0.1 mm or finer", "every leather, in several places", Rule.HABIT)
    yield _Tool("knife, metal rule, cutting mat", "fresh blade", "cutting by hand", Rule.HABIT)
    for stitching in dict.fromkeys(seam.stitching for seam in pattern.seams if not seam.meets):
        yield from _sewing(pattern, stitching)
    yield from _punches(pattern)
    yield from _finishing(pattern)


def _sewing(pattern: Pattern, stitching: Stitching) -> Iterator[_Tool]:
    pitch, number = stitching.pitch, MM_PER_FRENCH_INCH / stitching.pitch
    yield _Tool("pricking iron", f"pitch {mm(pitch)} mm", f"spacing; near French number {number:.1f}", Rule.NUMBERS)
    yield _holes(stitching)
    band = usual_thread(pitch)
    usual = f", usual for this pitch {mm(band[0])} to {mm(band[1])} mm" if band else ""
    rule = Rule.BANDS if band else Rule.DESIGN
    metres = mm(thread_of([seam for seam in pattern.seams if seam.stitching == stitching]) / MM_PER_M)
    yield _Tool("thread", f"{mm(stitching.thread)} mm{usual}", f"saddle stitch; {metres} m in all", rule)
    needle = needle_number(stitching.thread)
    size = f"number {needle}" if needle is not None else "so that the eye takes the thread"
    yield _Tool("two blunt needles", size, "saddle stitch", Rule.HABIT)


def _holes(stitching: Stitching) -> _Tool:
    hole = stitching.hole
    match hole.shape:
        case HoleShape.ROUND:
            return _Tool("hole punch or round awl", hole_told(hole), "stitch holes that no machine cuts", Rule.DESIGN)
        case HoleShape.SLIT:
            return _Tool("stitching chisel", hole_told(hole), "stitch holes that no machine cuts", Rule.DESIGN)
        case _:
            return _Tool("awl", hole_told(hole), "stitch holes, pierced by hand", Rule.DESIGN)


def _punches(pattern: Pattern) -> Iterator[_Tool]:
    fittings = {round(hole.diameter, 2) for piece in pattern.pieces for hole in piece.fittings if hole.diameter}
    openings = {round(d, 2) for piece in pattern.pieces for path in piece.openings if (d := across(path))}
    for size in sorted(fittings | openings):
        use = "hardware" if size in fittings else "round openings"
        yield _Tool("round punch", f"{mm(size)} mm", use, Rule.DESIGN)
    for fitting in pattern.design.fittings:
        if fitting.setting is Setting.PUNCHED:
            yield _Tool("setter and anvil, or driver", f"for {kind_told(fitting)}", fitting.name, Rule.HABIT)


def _finishing(pattern: Pattern) -> Iterator[_Tool]:
    turned = [edge for piece in pattern.pieces if piece.turned for edge in piece.turned.turned]
    if any(piece.skives for piece in pattern.pieces):
        yield _Tool("skiving knife or machine, strop", "freshly honed", "see the table of skives", Rule.HABIT)
    if any(edge.holes is not TurnedHoles.CUT for edge in turned):
        yield _Tool("awl", "for the stitch holes above", "holes through turned edges", Rule.HABIT)
    if turned or any(piece.fold_lines for piece in pattern.pieces):
        yield _Tool("bone folder", "-", "folds and turned edges", Rule.HABIT)
    if pattern.seams:
        yield _Tool("glue, clips", "for leather", "holding pieces in place before they are sewn", Rule.HABIT)
    if any(letters.stamp for piece in pattern.pieces for letters in piece.inscriptions):
        yield _Tool("letter stamps, maul", "see the initials", "initials", Rule.HABIT)
    yield _Tool("fine abrasive paper, burnisher", "-", "cut edges that show", Rule.HABIT)
