"""Initials: what is to be lettered, as it is spelt, where, and how large."""

from __future__ import annotations

from patternforge.drafting.letters import letter_height
from patternforge.drafting.making.facts import MakingFacts
from patternforge.drawing.document import Blank, Cell, Column, Fields, Section, Table
from patternforge.units import mm
from patternforge.wallet.marked import Inscription
from patternforge.wallet.pattern import Piece

__all__ = ["letters_section"]


def letters_section(facts: MakingFacts) -> Section | None:
    """Every text and its box, with a line for whoever has compared the spelling; None where there are none."""
    rows = tuple(_row(piece, letters) for piece in facts.pattern.pieces for letters in piece.inscriptions)
    if not rows:
        return None
    heads = ("", "initials", "text", "on piece", "box, mm", "height of letters", "how")
    table = Table("Letter before the pieces are put together", tuple(Column(head) for head in heads), rows)
    return Section("Initials", (table, Fields(("Spelling compared with the order by",))))


def _row(piece: Piece, letters: Inscription) -> tuple[Cell, ...]:
    height = letter_height(letters)
    size = f"{mm(letters.stamp.height)} mm" if letters.stamp else f"{mm(height)} mm" if height else "-"
    text = letters.text or Blank.LINE
    box = f"{mm(letters.width, 1)} x {mm(letters.height, 1)}"
    return (Blank.TICK, letters.name, text, piece.name, box, size, "stamps" if letters.stamp else "strokes")
