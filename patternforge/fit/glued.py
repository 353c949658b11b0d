"""Which pieces glue alone holds, and what each of them is glued on."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from patternforge.fit.layout import Layout, Ply

__all__ = ["glued_pieces"]


def glued_pieces(layout: Layout) -> Mapping[str, str]:
    """Each piece that glue alone holds with the piece it is glued on, from the outside in.

    That is the nearest one outside its middle, or the nearest inside where it is the outermost.
    """
    leather = [ply for ply in layout.plies if ply.of and ply.of == ply.name and ply.outline is not None]
    glued = [ply for ply in leather if ply.part in layout.pattern.design.glued]
    found = {}
    for ply in glued:
        under = [other for other in leather if other is not ply and other.holds(ply.bounds.centre)]
        if under:
            found[ply.name] = _nearest(under, ply).name
    return found


def _nearest(under: Sequence[Ply], ply: Ply) -> Ply:
    return min(under, key=lambda other: (other.order > ply.order, abs(other.order - ply.order)))
