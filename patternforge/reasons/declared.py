"""The sizes a design declares, by name: what each is worth, whether it was entered or not."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from typing import Any

from patternforge.wallet.finishing import FoldSkive, TurnedSpec
from patternforge.wallet.folded.spec import FaceSpec, FoldedSpec
from patternforge.wallet.gusset import GussetPart
from patternforge.wallet.spec import Design, LayerPart, Opening, Part, SeamSpec

__all__ = ["declared_sizes"]

_PLACES = ("line", "first", "last", "panel", "onto", "meets_panel")
_UNITLESS = frozenset(
    [
        "neutral",
        "min_radius",
        "compensation",
        "cards",
        "notes",
        "loose",
        "slots",
        "per_slot",
        "columns",
        "count",
        "pleats",
        "price",
        "pitch_look",
        "pitch_no",
        "meets_panel",
    ]
)
_DEGREES = frozenset(("angle", "slant"))

Size = tuple[str, float, str]
"""A name, what it is worth, its unit."""


def declared_sizes(design: Design) -> Iterator[Size]:
    """Every size of a design that a file may declare, by name, in mm unless it has a unit of its own."""
    for parameter in design.parameters:
        yield f"parameter {parameter.name}", parameter.value, parameter.unit
    for leather in design.leathers:
        yield f"leather {leather.role}.thickness", leather.t, "mm"
        yield from _numbers(f"leather {leather.role}.", leather, nested=False)
    for content in design.contents:
        yield from _numbers(f"content {content.name}.", content.item)
    yield from _body(design)
    yield from _numbers("load.", design.load)
    yield from _numbers("stitching.", design.stitching)
    yield from _numbers("limits.", design.limits)
    for part in design.parts:
        yield from _part(part)
    for seam in design.seams:
        yield from _seam(seam)
    for fitting in design.fittings:
        places = (each for each in (fitting.spot.beside, fitting.spot.above) if each)
        yield from _by_edge(f"fitting {fitting.name}.at", places)
    if not design.seams:
        yield "seam.margin", SeamSpec("", ()).margin, "mm"
    if design.folded:
        yield from _folded(design.folded)


def _unit(key: str) -> str:
    word = key.split(" ")[-1]
    if word in _DEGREES and not key.startswith("sides"):
        return "degrees"
    return "" if word in _UNITLESS or key.startswith("holds") else "mm"


def _numbers(prefix: str, record: Any, nested: bool = True) -> Iterator[Size]:
    """The numbers of a record by their fields; those of a record in it under both names."""
    for field in fields(record):
        value = getattr(record, field.name)
        key = field.name
        if key in _PLACES or isinstance(value, bool):
            continue
        if isinstance(value, int | float):
            yield f"{prefix}{key}", float(value), _unit(key)
        elif nested and is_dataclass(value):
            yield from ((f"{prefix}{key} {inner}", number, _unit(inner)) for inner, number, _ in _numbers("", value))


def _by_edge(prefix: str, pairs: Any) -> Iterator[Size]:
    for edge, amount in pairs:
        yield f"{prefix} {edge.value}", amount, "mm"


def _body(design: Design) -> Iterator[Size]:
    body = design.body
    for key in ("corner", "clearance", "headroom"):
        yield f"body.{key}", getattr(body, key), "mm"
    if body.height is not None:
        yield "body.declared height", body.height, "mm"
    for panel in body.panels:
        if panel.width is not None:
            yield f"panel {panel.name}.declared width", panel.width, "mm"
    for number, fold in enumerate(body.folds, 1):
        yield from _numbers(f"fold {number}.", fold)


def _part(part: Part) -> Iterator[Size]:
    prefix = f"part {part.name}."
    yield from _numbers(prefix, part)
    if isinstance(part, LayerPart):
        yield from _by_edge(f"{prefix}inset", part.inset)
        for turned in part.turned:
            yield from _turned(prefix, turned)
    if isinstance(part, LayerPart | GussetPart):
        for held in part.holds:
            yield f"{prefix}holds {held.content}", float(held.count), ""
    yield from _by_edge(f"{prefix}trim", getattr(part, "trim", ()))
    for number, skive in enumerate(getattr(part, "skives", ()), 1):
        known = _numbers(f"{prefix}skive {number}.", skive, nested=False)
        yield from (size for size in known if not (isinstance(skive, FoldSkive) and size[0].endswith(".fold")))
    for opening in part.openings:
        yield from _opening(opening)


def _turned(prefix: str, turned: TurnedSpec) -> Iterator[Size]:
    for edge in turned.edges:
        yield from _numbers(f"{prefix}turned {edge.value}.", turned)


def _opening(opening: Opening) -> Iterator[Size]:
    known = _numbers(f"opening {opening.name}.", opening)
    yield from (size for size in known if ".spot " not in size[0])


def _seam(seam: SeamSpec) -> Iterator[Size]:
    prefix = f"seam {seam.name}."
    yield from _numbers(prefix, seam, nested=False)
    known = _numbers(prefix, seam.stitching)
    yield from (size for size in known if size[0] != f"{prefix}thread")  # the thread of a seam is how long it is


def _folded(folded: FoldedSpec) -> Iterator[Size]:
    yield from _numbers("folded.", folded)
    for face in folded.faces:
        yield from _face(face)
    for room in folded.rooms:
        yield f"room {room.name}.count", float(room.count), ""
    for tab in folded.tabs:
        yield from _numbers(f"tab {tab.name}.", tab)


def _face(face: FaceSpec) -> Iterator[Size]:
    prefix = f"face {face.name}."
    asked = (("declared width", face.width), ("declared height", face.height), ("corner", face.corner))
    hinge = (("reach", face.hinge.reach), ("angle", face.hinge.angle)) if face.hinge else ()
    for key, value in (*asked, *hinge):
        if value is not None:
            yield f"{prefix}{key}", value, _unit(key)
    if face.hinge:
        yield from _by_edge(f"{prefix}inset", face.hinge.inset)
