"""The exploded picture: every piece lifted off what it lies on, from the outside in, seen at a slant."""

from __future__ import annotations

from collections.abc import Mapping

from patternforge.drafting.assembly_pieces import Look, piece_figures
from patternforge.drafting.assembly_view import View, laid_outline, slanted
from patternforge.drafting.leaders import named_places, names_figure
from patternforge.drawing.model import Figure
from patternforge.drawing.scaling import plain_scale
from patternforge.drawing.stacked import room
from patternforge.fit.layout import Layout
from patternforge.geometry.point import Bounds, joined_bounds

__all__ = ["exploded_figures", "storeys"]

_WIDEST, _HIGHEST = 125.0, 215.0  # mm of the picture without names
_LIFT = 15.0  # from storey to storey, mm of the picture
_TONE = 0.10


def storeys(layout: Layout, view: View) -> Mapping[str, int]:
    """On which storey each piece lies: one above the highest of those beneath it that it lies over."""
    found: dict[str, int] = {}
    boxes: dict[str, Bounds] = {}
    for piece in sorted(layout.pattern.pieces, key=lambda piece: view.towards(piece.level)):
        box = laid_outline(layout, piece).bounds
        under = [found[name] for name, other in boxes.items() if _meet(box, other)]
        found[piece.name], boxes[piece.name] = max(under, default=-1) + 1, box
    return found


def _meet(a: Bounds, b: Bounds) -> bool:
    return a.x0 < b.x1 and b.x0 < a.x1 and a.y0 < b.y1 and b.y0 < a.y1


def exploded_figures(layout: Layout) -> tuple[Figure, ...]:
    """A figure for each piece, the outermost first and lowest, and their names beside them."""
    view = slanted(layout)
    level = storeys(layout, view)
    flat = view.bounds(laid_outline(layout, piece) for piece in layout.pattern.pieces)
    high = _HIGHEST - _LIFT * max(level.values())
    view = view.scaled(plain_scale(flat.width, flat.height, _WIDEST, max(high, 40.0)))
    lifts = {name: storey * _LIFT for name, storey in level.items()}
    tones = {name: _TONE * (storey % 2) for name, storey in level.items()}
    figures = piece_figures(layout, view, Look(lifts, tones, {}, {}))
    box = joined_bounds([room(figure.inks) for figure in figures])
    named = named_places(figures, {figure.name: figure.name for figure in figures})
    return (*figures, names_figure(named, box))
