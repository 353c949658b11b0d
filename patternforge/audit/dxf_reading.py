"""DXF files as cut files: entities with their layers, blocks resolved, all in mm."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from math import radians

from patternforge.audit.affine import Affine, rotation, scaling, translation
from patternforge.audit.dxf_shapes import Figure, figure, plane
from patternforge.audit.dxf_tables import OLDEST_WITH_LIGHT, RELEASES, UNITS, Block, Layer, blocks, header, layers
from patternforge.audit.dxf_tags import Record, records, sections
from patternforge.audit.model import CutFile, Entity, FileKind, Look, Odd, Oddity, Shape
from patternforge.audit.shapes import carried, carried_ring, drawn
from patternforge.errors import ReadingError
from patternforge.geometry.point import Point

__all__ = ["dxf_file"]

_DEEPEST = 12  # blocks in blocks
_MOST = 300_000  # entities, once blocks are resolved
_UNBROKEN = ("", "CONTINUOUS", "BYLAYER", "BYBLOCK")
_ANY = Layer(7, "CONTINUOUS", "")
_NOTHING = 1e-6  # mm; a circle of a smaller radius is none

Oddities = tuple[Oddity, ...]


@dataclass(frozen=True, slots=True)
class _Place:
    """Where entities stand: the map of the blocks they are in, the layer that layer 0 of a block stands for there,
    how deep in blocks they are, and why none of it is seen."""

    affine: Affine
    layer: str = ""
    depth: int = 0
    hidden: Oddities = ()


@dataclass(frozen=True, slots=True)
class _Reader:
    """What is known of the file while its entities are read, and those that are."""

    scale: float
    release: str
    layers: Mapping[str, Layer]
    blocks: Mapping[str, Block]
    found: list[Entity] = field(default_factory=list)
    looks: dict[tuple[str, ...], tuple[Look, Oddities]] = field(default_factory=dict)

    def read(self, some: Sequence[Record], place: _Place) -> None:
        """Adds entities in their order."""
        for record, parts in _with_parts(some):
            if len(self.found) >= _MOST:
                raise ReadingError(f"the file draws more than {_MOST} entities, blocks resolved; take some out")
            paper = (Oddity(Odd.PAPER, None),) if record.text(67) == "1" else ()
            inner = replace(place, hidden=place.hidden + paper) if paper else place
            if record.kind == "INSERT":
                self._insert(record, inner)
                self.read([part for part in parts if part.kind == "ATTRIB"], inner)
            elif record.kind != "VIEWPORT":
                self._add(record, figure(record, parts, self.scale), inner)

    def _add(self, record: Record, drawing: Figure, place: _Place) -> None:
        affine = place.affine.after(drawing.affine) if drawing.affine is not None else place.affine
        look, hidden = self._look(record, place)
        at = affine.point(drawing.at)
        shape, empty = _shape(drawing, affine)
        odd = [replace(each, at=affine.point(each.at) if each.at else at) for each in drawing.oddities]
        odd += [Oddity(Odd.ZERO, where) for where in empty]
        odd += [replace(each, at=at) for each in (*place.hidden, *hidden)]
        if record.kind == "LWPOLYLINE" and self.release < OLDEST_WITH_LIGHT:
            odd.append(Oddity(Odd.LIGHT, at))
        look = replace(look, width=drawing.width * affine.factor) if drawing.width else look
        self.found.append(Entity(record.kind, len(self.found) + 1, at, shape, look, tuple(odd)))

    def _look(self, record: Record, place: _Place) -> tuple[Look, Oddities]:
        words = (*[record.text(code) for code in (8, 62, 420, 6, 60)], place.layer)
        if words not in self.looks:
            self.looks[words] = self._new_look(*words)
        return self.looks[words]

    def _new_look(
        self, layer: str, colour: str, mixed: str, linetype: str, invisible: str, block_layer: str
    ) -> tuple[Look, Oddities]:
        name = block_layer if layer in ("", "0") and block_layer else layer or "0"
        known = self.layers.get(name.upper(), _ANY)
        by_layer = not mixed and colour in ("", "256")
        shown = f"#{int(mixed):06x}" if mixed.isdigit() else str(known.colour) if by_layer else colour
        line = known.linetype if linetype.upper() in ("", "BYLAYER") else linetype.upper()
        why = "invisible by itself" if invisible == "1" else f"layer {name} is {known.hidden}" if known.hidden else ""
        odd = (Oddity(Odd.HIDDEN, None, why),) if why else ()
        return Look(name, shown, not by_layer and colour != "0", dashed=line not in _UNBROKEN), odd

    def _insert(self, record: Record, place: _Place) -> None:
        """The insertion of a block itself, and then all that it brings."""
        name = record.text(2)
        block = self.blocks.get(name.upper())
        look, hidden = self._look(record, place)
        own, tilted = plane(record)
        affine = place.affine.after(own) if own is not None else place.affine
        at = affine.point(Point(record.number(10), record.number(20)))
        odd = [Oddity(Odd.BLOCK, at, name), *(replace(each, at=at) for each in (*tilted, *place.hidden, *hidden))]
        sx, sy = record.number(41, 1.0), record.number(42, 1.0)
        if abs(abs(sx) - abs(sy)) > 1e-6 * max(abs(sx), abs(sy)):
            odd.append(Oddity(Odd.UNEVEN, at, f"{sx:g} across and {sy:g} up"))
        if block is None or block.outside:
            odd.append(Oddity(Odd.BROKEN, at, f"what block {name!r} shows is not in this file"))
        self.found.append(Entity("INSERT", len(self.found) + 1, at, None, look, tuple(odd)))
        if block is not None and not block.outside and place.depth < _DEEPEST and sx * sy:
            for brought in _brought(record, block.base):
                inner = _Place(affine.after(brought), look.layer, place.depth + 1, place.hidden + hidden)
                self.read(block.records, inner)


def dxf_file(data: bytes, name: str) -> CutFile:
    """The DXF file ``data`` as it is read; ReadingError, saying why, when it is none or is broken."""
    parted = sections(records(data))
    said = header(parted.get("HEADER", []))
    release = said.get("$ACADVER", "AC1009")
    unit, scale = UNITS.get(said.get("$INSUNITS", ""), ("", 1.0))
    tables, stored = layers(parted.get("TABLES", [])), blocks(parted.get("BLOCKS", []))
    reader = _Reader(scale, release, tables, stored)
    place = _Place(scaling(scale, scale))
    reader.read(parted.get("ENTITIES", []), place)
    for word, block in stored.items():
        if word.startswith("*PAPER_SPACE"):
            reader.read(block.records, replace(place, hidden=(Oddity(Odd.PAPER, None),)))
    odd = tuple(_contradictions(said, unit))
    return CutFile(name, FileKind.DXF, RELEASES.get(release, release), unit, scale, tuple(reader.found), oddities=odd)


def _contradictions(said: Mapping[str, str], unit: str) -> Iterator[Oddity]:
    if unit == "mm" and said.get("$MEASUREMENT", "1") == "0":
        yield Oddity(Odd.BROKEN, None, "$INSUNITS says mm, but $MEASUREMENT says inches")


def _with_parts(some: Sequence[Record]) -> Iterator[tuple[Record, list[Record]]]:
    """Every entity with the records that belong to it: vertices of an old polyline, attributes of a block."""
    at = 0
    while at < len(some):
        record, at = some[at], at + 1
        parts: list[Record] = []
        if record.kind in ("POLYLINE", "INSERT"):
            while at < len(some) and some[at].kind in ("VERTEX", "ATTRIB"):
                parts.append(some[at])
                at += 1
        if record.kind != "SEQEND":
            yield record, parts


def _brought(record: Record, base: Point) -> Iterator[Affine]:
    """The maps from a block to where it is inserted, one for each of its rows and columns."""
    seat = translation(record.number(10), record.number(20)).after(rotation(radians(record.number(50))))
    size = scaling(record.number(41, 1.0), record.number(42, 1.0)).after(translation(-base.x, -base.y))
    for column in range(max(record.whole(70, 1), 1)):
        for row in range(max(record.whole(71, 1), 1)):
            step = translation(column * record.number(44), row * record.number(45))
            yield seat.after(step).after(size)


def _shape(drawing: Figure, affine: Affine) -> tuple[Shape | None, Sequence[Point]]:
    if drawing.ring is not None:
        centre, radius = drawing.ring
        small = radius * affine.factor <= _NOTHING
        return (None, [affine.point(centre)]) if small else (carried_ring(centre, radius, affine), [])
    if not drawing.vertices:
        return None, []
    made = drawn(carried(drawing.vertices, drawing.closed, affine), drawing.closed)
    return made.shape, made.empty
