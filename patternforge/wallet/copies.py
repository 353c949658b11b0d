"""Layers that copy another layer's finished outline, so far inside it or outside: linings and the like."""

from __future__ import annotations

from dataclasses import replace

from patternforge.errors import DraftError
from patternforge.geometry.offset import Join, offset_one
from patternforge.geometry.segment import Segment
from patternforge.wallet.outline import Shape
from patternforge.wallet.pattern import EdgeRole
from patternforge.wallet.spec import Design, Edge, LayerPart, Part

__all__ = ["copied_shape", "followed_layer", "with_copies"]


def with_copies(design: Design) -> Design:
    """The design with the panels and insets of every copy filled in from the layer it follows.

    DraftError, with the part's line, when it follows nothing that stands before it.
    """
    if not any(isinstance(part, LayerPart) and part.follows for part in design.parts):
        return design
    parts: list[Part] = []
    for part in design.parts:
        if isinstance(part, LayerPart) and part.follows:
            parts.append(_copy(design, part, parts))
        else:
            parts.append(part)
    return replace(design, parts=tuple(parts))


def followed_layer(design: Design, part: LayerPart) -> LayerPart:
    """The layer whose outline a copy follows."""
    return next(other for other in design.parts if isinstance(other, LayerPart) and other.name == part.follows)


def copied_shape(of: Shape, inside: float) -> Shape:
    """The outline ``inside`` mm inside another one, outside it when negative; sharp corners stay sharp.

    Arcs stay arcs about their centres; an edge keeps the role of the one it copies, but for what is cut off or turned
    in there. GeometryError when nothing is left, or more than one outline.
    """
    path = offset_one(of.path, -inside, Join.SHARP).ccw()
    return Shape(path, tuple(_role(segment, of, inside) for segment in path.segments))


def _copy(design: Design, part: LayerPart, before: list[Part]) -> LayerPart:
    layers = [other for other in before if isinstance(other, LayerPart) and other.name == part.follows]
    if not layers:
        raise DraftError(f"{design.file}:{part.line}: '{part.name}' follows '{part.follows}', no layer outside it")
    followed = layers[0]
    inset = dict(followed.inset)
    radius = followed.corner if followed.inset else design.body.corner
    return replace(
        part,
        first=followed.first,
        last=followed.last,
        inset=tuple((edge, inset.get(edge, 0.0) + part.inside) for edge in Edge),
        corner=max((radius or 0.0) - part.inside, 0.0),
    )


def _role(segment: Segment, of: Shape, inside: float) -> EdgeRole:
    middle = segment.point_at(segment.length / 2)
    off = [abs(edge.distance_to(middle) - abs(inside)) for edge in of.path.segments]
    role = of.edges[off.index(min(off))]
    return EdgeRole.RAW if role in (EdgeRole.TRIMMED, EdgeRole.TURNED) else role
