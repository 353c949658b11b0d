"""Which pieces glue alone holds, what each of them is glued on, and whether that is anything at all."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from patternforge.fit.findings import Finding, at_least
from patternforge.fit.layout import Layout, Ply
from patternforge.geometry.path import Path
from patternforge.geometry.regions import Region, overlap_area, region

__all__ = ["glued_findings", "glued_pieces"]

_LEAST = 1.0  # mm2; pieces that lie on each other by less only touch, but for the rounding of their arcs


def glued_pieces(layout: Layout) -> Mapping[str, str]:
    """Each piece that glue alone holds with the piece it is glued on, in the order in which they are glued.

    That is the nearest piece outside it, or inside it where none is outside, of those that share an area with it and
    are held by then: every chain ends at a piece that is not glued. What lies on no such piece is left out.
    """
    return {name: base for name, (base, _) in _glued(layout).items()}


def glued_findings(layout: Layout) -> Iterator[Finding]:
    """By what area each piece that glue alone holds lies on what it is glued on."""
    held = _glued(layout)
    for ply in _leather(layout):
        if ply.part in layout.pattern.design.glued:
            _, area = held.get(ply.name, ("", 0.0))
            where = f"{ply.name} on {held[ply.name][0]}" if area else f"{ply.name}, glued to nothing"
            remedy = "" if area else f"move {ply.name} onto a piece that is held, or let a seam go through it"
            yield Finding("area glued down", where, area, at_least(_LEAST, _LEAST), remedy, "mm2")


def _glued(layout: Layout) -> dict[str, tuple[str, float]]:
    """Each glued piece that is held with what it is glued on and the area they share, mm2."""
    if not layout.pattern.design.glued:
        return {}
    leather = _leather(layout)
    areas = {ply.name: _area(ply.outline, ply.openings) for ply in leather if ply.outline is not None}
    left = [ply for ply in leather if ply.part in layout.pattern.design.glued]
    held = [ply for ply in leather if ply not in left]
    found: dict[str, tuple[str, float]] = {}
    while left:
        step = _next(left, held, areas)
        if step is None:
            break
        ply, base, area = step
        found[ply.name] = base.name, area
        left.remove(ply)
        held.append(ply)
    return found


def _next(left: Sequence[Ply], held: Sequence[Ply], areas: Mapping[str, Region]) -> tuple[Ply, Ply, float] | None:
    """The outermost piece left that lies on a held one outside it, else the innermost on one inside it."""
    for ply, is_outwards in (*((each, True) for each in left), *((each, False) for each in reversed(left))):
        near = [other for other in held if (other.order < ply.order) is is_outwards]
        for other in sorted(near, key=lambda each: abs(each.order - ply.order)):
            area = overlap_area(areas[ply.name], areas[other.name])
            if area >= _LEAST:
                return ply, other, area
    return None


def _leather(layout: Layout) -> list[Ply]:
    """The pieces of leather that lie flat, from the outside in: no film, nothing turned in, no gusset."""
    films = {piece.name for piece in layout.pattern.pieces if piece.lines}
    return [ply for ply in layout.plies if ply.of == ply.name and ply.outline is not None and ply.name not in films]


def _area(outline: Path, openings: Sequence[Path]) -> Region:
    """What a piece covers; its openings may reach over its edge or each other."""
    covered = region(outline)
    for opening in openings:
        covered = covered.without(region(opening))
    return covered
