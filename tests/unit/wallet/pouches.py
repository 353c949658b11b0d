"""Small pouches and cases with gussets, of round sizes.

The pouch is 100 x 80 mm, open at the top, its walls 1.2 mm thick with lower corners rounded by 20 mm, sewn 4 mm off
the edge from 6 mm below the top. Its gusset is of 0.8 mm leather with the neutral fibre in the middle, which bends
round 0.4 mm, so that a bend reaches 1.2 mm and an arc of 90 degrees is pi / 2 x 0.8 mm long.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from patternforge.leather.contents import Item
from patternforge.wallet.pattern import Piece
from patternforge.wallet.spec import (
    Content,
    Design,
    Edge,
    GussetPart,
    Held,
    LayerPart,
    SeamSpec,
    Stitching,
)
from patternforge.wallet.strip import StripPlacement
from tests.unit.wallet.built import wallet

__all__ = ["BACK", "COINS", "FRONT", "SIDE", "accordion", "pouch", "seam", "strip_placement", "with_lower_corners"]

COINS = Item("coins", 60.0, 40.0, 15.0, corner_radius=15.0)
BACK = LayerPart("back", "outer", 0, 0, line=5)
FRONT = LayerPart("front", "outer", 0, 0, line=7)
SIDE = GussetPart("side", "inner", 0, ("back seam", "front seam"), depth=20.0, turn=3.0, line=6)
_U = (Edge.LEFT, Edge.BOTTOM, Edge.RIGHT)


def seam(name: str, *through: str, along: tuple[Edge, ...] = _U, **changes: Any) -> SeamSpec:
    """A seam of 4 mm margin and pitch that ends 6 mm from the edges it runs out at."""
    known = SeamSpec(name, along, margin=4.0, end=6.0, through=through, stitching=Stitching(pitch=4.0), line=9)
    return replace(known, **changes)


def pouch(gusset: GussetPart = SIDE, *, corner: float = 20.0, **changes: Any) -> Design:
    """A pouch with that gusset, its lower corners rounded by ``corner``."""
    seams = (seam("back seam", "back", "side"), seam("front seam", "side", "front"))
    known: dict[str, Any] = {"seams": seams, "contents": (Content("coins", COINS),), **changes}
    return with_lower_corners(wallet(BACK, gusset, FRONT, **known), corner)


def with_lower_corners(design: Design, radius: float) -> Design:
    """The design with its lower corners rounded."""
    corners = tuple(((Edge.BOTTOM, side), radius) for side in (Edge.LEFT, Edge.RIGHT))
    return replace(design, body=replace(design.body, corners=corners if radius else ()))


def accordion(pleats: int = 1, **changes: Any) -> Design:
    """Three walls sewn together along the bottom, bellows of 10 mm leaves between each two of them on both sides."""
    parts: list[LayerPart | GussetPart] = []
    seams = [seam("base", "wall 1", "wall 2", "wall 3", along=(Edge.BOTTOM,), end=4.0)]
    for room in (1, 2):
        parts.append(LayerPart(f"wall {room}", "outer", 0, 0))
        for edge in (Edge.LEFT, Edge.RIGHT):
            name = f"{edge.value} {room}"
            joins = (f"{edge.value} seam {room}", f"{edge.value} seam {room + 1}")
            held = (Held("card", 3),) if edge is Edge.LEFT else ()
            part = GussetPart(name, "inner", 0, joins, pleats=pleats, leaf=10.0, holds=held)
            parts.append(replace(part, **changes))
    parts.append(LayerPart("wall 3", "outer", 0, 0))
    for edge in (Edge.LEFT, Edge.RIGHT):
        for number, through in enumerate((("wall 1",), ("wall 2",), ("wall 3",)), 1):
            near = tuple(f"{edge.value} {room}" for room in (number - 1, number) if 1 <= room <= 2)
            seams.append(seam(f"{edge.value} seam {number}", *through, *near, along=(edge,), end=8.0))
    return wallet(*parts, seams=seams, contents=(Content("card", Item("card", 80.0, 50.0, 1.0)),))


def strip_placement(piece: Piece) -> StripPlacement:
    """How a strip lies along its seams."""
    assert isinstance(piece.placement, StripPlacement)
    return piece.placement
