"""Skiving and turning in: piece by piece, where, how wide, and what is left."""

from __future__ import annotations

from collections.abc import Iterator

from patternforge.drafting.finishing import edges_told, skives_on
from patternforge.drafting.making.facts import MakingFacts
from patternforge.drafting.wording import edge_words
from patternforge.drawing.document import Blank, Block, Cell, Column, Paragraph, Section, Table, Tone
from patternforge.drawing.model import Align
from patternforge.units import mm
from patternforge.wallet.finishing import EdgeSkive, FoldSkive, PatchSkive, SkiveSpec, TurnedHoles
from patternforge.wallet.pattern import Pattern, Piece
from patternforge.wallet.worked import TurnedEdge

__all__ = ["finishing_section"]

_RIGHT = Align.RIGHT
_WHERE = (Column(""), Column("piece"), Column("where, as drawn"))
_HOLES = {
    TurnedHoles.PIERCED: "pierce once turned in",
    TurnedHoles.MARKED: "marked, pierce once turned in",
    TurnedHoles.CUT: "cut in both layers",
}


def finishing_section(facts: MakingFacts) -> Section | None:
    """What is skived, turned in and trimmed; None where nothing is."""
    blocks = tuple(_blocks(facts.pattern))
    return Section("Skiving and turning in", blocks) if blocks else None


def _blocks(pattern: Pattern) -> Iterator[Block]:
    yield from _skives(pattern)
    yield from _turns(pattern)
    yield from _trims(pattern)


def _skives(pattern: Pattern) -> Iterator[Block]:
    rows = tuple(_skive(pattern, piece, spec) for piece in pattern.pieces for spec in skives_on(pattern, piece))
    if rows:
        columns = (*_WHERE, Column("width, mm", _RIGHT), Column("leather, mm", _RIGHT), Column("leave, mm", _RIGHT))
        yield Table("Skive on the back, the flesh side", columns, rows)
        yield Paragraph(
            "The width runs from the cut edge, at a fold to either side of it. Try the depth in scrap of the same"
            " leather and measure what is left.",
            Tone.SMALL,
        )


def _turns(pattern: Pattern) -> Iterator[Block]:
    turns = ((piece, edge) for piece in pattern.pieces if piece.turned for edge in piece.turned.turned)
    rows = tuple(_turned(piece, edge) for piece, edge in turns)
    if rows:
        columns = (*_WHERE, Column("allowance, mm", _RIGHT), Column("over"), Column("stitch holes"))
        yield Table("Turn in at the marked line", columns, rows)


def _trims(pattern: Pattern) -> Iterator[Block]:
    trims = ((piece, edge, size) for piece in pattern.pieces for edge, size in piece.trims if size)
    rows: tuple[tuple[Cell, ...], ...] = tuple(
        (Blank.TICK, piece.name, edge_words(piece, edge), mm(size)) for piece, edge, size in trims
    )
    if rows:
        yield Table("Trim once glued", (*_WHERE, Column("trim, mm", _RIGHT)), rows)


def _skive(pattern: Pattern, piece: Piece, spec: SkiveSpec) -> tuple[Cell, ...]:
    where, width = _place(piece, spec)
    return (Blank.TICK, piece.name, where, width, mm(pattern.design.leather(piece.leather).t), mm(spec.to))


def _place(piece: Piece, spec: SkiveSpec) -> tuple[str, str]:
    match spec:
        case EdgeSkive():
            return edges_told(spec.edges, piece, edge_words), mm(spec.width)
        case FoldSkive():
            return f"fold {spec.fold + 1}, all of it and beside it", mm(spec.width)
        case PatchSkive():
            return "where marked", f"{mm(spec.width)} x {mm(spec.height)}"


def _turned(piece: Piece, edge: TurnedEdge) -> tuple[Cell, ...]:
    over = ", ".join(edge.over) or ("a core" if edge.core else "itself")
    return (Blank.TICK, piece.name, edge.drawn.value, mm(edge.allowance), over, _HOLES[edge.holes])
