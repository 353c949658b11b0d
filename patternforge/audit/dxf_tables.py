"""What a DXF file says before it draws: release and unit in its header, layers and blocks in its tables."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from types import MappingProxyType

from patternforge.audit.dxf_tags import Record
from patternforge.geometry.point import Point

__all__ = ["OLDEST_WITH_LIGHT", "RELEASES", "UNITS", "Block", "Layer", "blocks", "header", "layers"]

# $INSUNITS (DXF reference, HEADER): word and millimetres of each unit that a drawing of leather might stand in.
UNITS: Mapping[str, tuple[str, float]] = MappingProxyType(
    {
        "1": ("in", 25.4),
        "2": ("ft", 304.8),
        "4": ("mm", 1.0),
        "5": ("cm", 10.0),
        "6": ("m", 1000.0),
        "8": ("microinch", 25.4e-6),
        "9": ("mil", 0.0254),
        "10": ("yd", 914.4),
        "13": ("micron", 0.001),
        "14": ("dm", 100.0),
    }
)
# $ACADVER (DXF reference, HEADER).
RELEASES: Mapping[str, str] = MappingProxyType(
    {
        "AC1006": "R10",
        "AC1009": "R12",
        "AC1012": "R13",
        "AC1014": "R14",
        "AC1015": "R2000",
        "AC1018": "R2004",
        "AC1021": "R2007",
        "AC1024": "R2010",
        "AC1027": "R2013",
        "AC1032": "R2018",
    }
)
OLDEST_WITH_LIGHT = "AC1014"  # light polylines came with R14 (DXF reference of that release, LWPOLYLINE)


@dataclass(frozen=True, slots=True)
class Layer:
    """A layer: colour number, line type, and why it is not seen, empty if it is."""

    colour: int
    linetype: str
    hidden: str


@dataclass(frozen=True, slots=True)
class Block:
    """A block: the point that is laid on the point of insertion, what is in it, whether that is in another file."""

    base: Point
    records: tuple[Record, ...]
    outside: bool


def header(found: Sequence[Record]) -> dict[str, str]:
    """The first value of each header variable.

    >>> header([Record("SECTION", [(2, "HEADER"), (9, "$INSUNITS"), (70, "4")])])
    {'$INSUNITS': '4'}
    """
    tags = [tag for record in found for tag in record.tags]
    return {name.upper(): value for (code, name), (_, value) in pairwise(tags) if code == 9}


def layers(found: Sequence[Record]) -> dict[str, Layer]:
    """The layers by their names in capitals."""
    return {record.text(2).upper(): _layer(record) for record in found if record.kind == "LAYER"}


def _layer(record: Record) -> Layer:
    colour = record.whole(62, 7)
    hidden = "frozen" if record.whole(70) & 1 else "switched off" if colour < 0 else ""
    return Layer(
        abs(colour), record.text(6).upper(), hidden or ("kept from plotting" if record.text(290) == "0" else "")
    )


def blocks(found: Sequence[Record]) -> dict[str, Block]:
    """The blocks by their names in capitals."""
    known: dict[str, Block] = {}
    start, inside = None, list[Record]()
    for record in found:
        if record.kind == "BLOCK":
            start, inside = record, []
        elif record.kind == "ENDBLK" and start is not None:
            base = Point(start.number(10), start.number(20))
            # Bits 4 and 8: the block is another drawing, or lies over one.
            known[start.text(2).upper()] = Block(base, tuple(inside), bool(start.whole(70) & 12))
            start = None
        else:
            inside.append(record)
    return known
