"""Will layers, colours and lines be taken for what they are meant?"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from patternforge.audit.flaws import Flaw
from patternforge.audit.model import Entity, FileKind
from patternforge.audit.scene import Scene
from patternforge.fit.findings import Verdict
from patternforge.units import mm

__all__ = ["layer_flaws", "line_flaws"]

_WIDE = 0.5  # mm; a wider line is no hairline any more, and some programs cut along both of its sides


def layer_flaws(scene: Scene) -> Iterator[Flaw]:
    """Content on layer 0, and colours that differ within a layer."""
    if scene.file.kind is not FileKind.DXF:
        return
    layers: dict[str, list[Entity]] = {}
    for entity in scene.cuts:
        layers.setdefault(entity.look.layer, []).append(entity)
    if "0" in layers:
        on, count = layers["0"][0], len(layers["0"])
        what = f"{count} of {len(scene.cuts)} cuts lie on layer 0, which machines treat in ways of their own"
        yield Flaw(Verdict.LOOK, "layer 0", what, "put them on a layer with a name", on.at, on.name)
    for name, entities in layers.items():
        yield from _mixed_colours(name, entities)


def _mixed_colours(name: str, entities: Sequence[Entity]) -> Iterator[Flaw]:
    colours = {entity.look.colour for entity in entities}
    odd = [entity for entity in entities if entity.look.own_colour]
    if len(colours) > 1 and odd:
        what = f"layer {name} holds {len(colours)} colours: machines that go by colour part what belongs together"
        yield Flaw(
            Verdict.LOOK, "colours", what, "give everything on it the colour of the layer", odd[0].at, odd[0].name
        )


def line_flaws(scene: Scene) -> Iterator[Flaw]:
    """Filled shapes, wide lines and dashed outlines."""
    outlines = {member.number for index in scene.outlines for member in scene.runs[index].members}
    for entity in scene.cuts:
        look = entity.look
        if look.filled:
            what = "filled: many machines engrave the area"
            yield Flaw(Verdict.NO, "filled", what, "give it a line and no fill", entity.at, entity.name)
        if look.width > _WIDE:
            what = f"a line {mm(look.width)} mm wide: some programs cut along both of its sides"
            yield Flaw(Verdict.LOOK, "wide line", what, "make it a hairline of 0.1 mm", entity.at, entity.name)
        if look.dashed and entity.number in outlines:
            what = "a dashed outline: some programs cut the dashes alone"
            yield Flaw(Verdict.LOOK, "dashed", what, "make it an unbroken line", entity.at, entity.name)
