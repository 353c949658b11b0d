"""A document as plain content: sections of words, tables, pictures and places to write; every writer reads the same.

Nothing here says how wide a column or where a page ends: paper and screen each find that out for themselves.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum, StrEnum

from patternforge.drawing.model import Align, Sheet

__all__ = [
    "Blank",
    "Block",
    "Cell",
    "Column",
    "Document",
    "Fields",
    "Listing",
    "Paragraph",
    "Picture",
    "Section",
    "Step",
    "Table",
    "Tone",
]


class Blank(Enum):
    """A cell that is filled in by hand."""

    TICK = "tick"
    LINE = "line"


Cell = str | Blank


class Tone(StrEnum):
    """How a paragraph is meant to be read."""

    PLAIN = "plain"
    LOUD = "loud"  # must not be overlooked
    SMALL = "small"  # notes under a table


@dataclass(frozen=True, slots=True)
class Paragraph:
    """Running words."""

    words: str
    tone: Tone = Tone.PLAIN


@dataclass(frozen=True, slots=True)
class Listing:
    """Short sayings, one under the other."""

    items: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Column:
    """A column of a table: its head and where its cells stand."""

    head: str
    align: Align = Align.LEFT


@dataclass(frozen=True, slots=True)
class Table:
    """Rows under column heads; ``totals`` are rows that close the table."""

    caption: str
    columns: tuple[Column, ...]
    rows: tuple[tuple[Cell, ...], ...]
    totals: tuple[tuple[Cell, ...], ...] = ()

    def __post_init__(self) -> None:
        if any(len(row) != len(self.columns) for row in (*self.rows, *self.totals)):
            raise ValueError(f"a row of the table '{self.caption}' has not one cell for each column")


@dataclass(frozen=True, slots=True)
class Picture:
    """A drawing at the size it is to be printed in; ``caption`` states its scale, ``told`` says it in words."""

    sheet: Sheet
    caption: str
    told: str


@dataclass(frozen=True, slots=True)
class Fields:
    """Lines to write on, each behind the word for what is wanted."""

    labels: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Step:
    """One step of the work, to be ticked off: its number, what to do, and a picture of it."""

    number: int
    words: str
    picture: Picture | None = None


Block = Paragraph | Listing | Table | Picture | Fields | Step


@dataclass(frozen=True, slots=True)
class Section:
    """Blocks under a title."""

    title: str
    blocks: tuple[Block, ...]


@dataclass(frozen=True, slots=True)
class Document:
    """A whole document; ``imprint`` stands on every page beside its number."""

    title: str
    subtitle: str
    imprint: str
    sections: tuple[Section, ...]
    language: str = "en"

    def blocks(self) -> tuple[Block, ...]:
        """Every block in reading order."""
        return tuple(block for section in self.sections for block in section.blocks)
