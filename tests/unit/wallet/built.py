"""Small wallets of round sizes, so that every expected value can be reckoned on paper.

Panels are 100 x 80 mm unless told, leathers 1.2 (outer) and 0.8 mm (inner) with the neutral fibre in the middle, the
rim stands 4 mm off the edge, a card is 80 x 50 x 1 mm and a note 120 x 70 x 0.1 mm.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from patternforge.leather.contents import Item
from patternforge.leather.material import Leather, Thickness
from patternforge.wallet.body import Body, drafted_body
from patternforge.wallet.parts import panel_plies
from patternforge.wallet.pattern import Piece
from patternforge.wallet.sizes import body_height, panel_widths
from patternforge.wallet.spec import (
    BankPart,
    BodySpec,
    Content,
    Design,
    Edge,
    FoldSpec,
    LayerPart,
    PanelSpec,
    Part,
    PocketPart,
    SeamSpec,
    Stitching,
)

__all__ = ["CARD", "RIM", "SHELL", "bank", "body_of", "corners_of", "leather", "pocket", "shell", "wallet"]

CARD = Item("card", 80.0, 50.0, 1.0)
NOTE = Item("note", 120.0, 70.0, 0.1)
STITCHING = Stitching(pitch=4.0)
RIM = SeamSpec("rim", (Edge.LEFT, Edge.BOTTOM, Edge.RIGHT), margin=4.0, stitching=STITCHING, line=9)
SHELL = LayerPart("shell", "outer", 0, 0, line=5)


def leather(role: str, thickness: float, **changes: Any) -> Leather:
    return replace(Leather(role, Thickness(thickness, thickness)), **changes)


def shell(panels: int, **changes: Any) -> LayerPart:
    """The outer layer over that many panels."""
    return replace(SHELL, last=panels - 1, **changes)


def bank(**changes: Any) -> BankPart:
    """Three card pockets on panel 0, their floors 10 mm apart, cards standing out by 10 mm; no size may move."""
    part = BankPart("bank", "inner", 0, "card", slots=3, step=10.0, show=10.0, exact=("step", "show", "overlap"))
    return replace(part, line=6, **changes)


def pocket(**changes: Any) -> PocketPart:
    """One pocket of 40 mm on panel 0; its depth may not move."""
    return replace(PocketPart("pocket", "inner", 0, "card", depth=40.0, exact=("depth",), line=7), **changes)


def wallet(
    *parts: Part,
    widths: Sequence[float | None] = (100.0,),
    height: float | None = 80.0,
    folds: Sequence[FoldSpec] = (),
    closing: Sequence[int] = (),
    seams: Sequence[SeamSpec] = (RIM,),
    leathers: Sequence[Leather] = (leather("outer", 1.2), leather("inner", 0.8)),
    corner: float = 0.0,
    headroom: float = 3.0,
    **changes: Any,
) -> Design:
    """A wallet of these parts; ``changes`` are fields of ``Design``."""
    design = Design(
        name="small",
        title="Small",
        revision="A",
        notes="",
        file="small.yaml",
        parameters=(),
        leathers=tuple(leathers),
        contents=(Content("card", CARD), Content("note", NOTE)),
        body=BodySpec(
            tuple(PanelSpec(f"P{i}", width) for i, width in enumerate(widths)),
            tuple(folds),
            tuple(closing) or tuple(range(1, len(folds) + 1)),
            height=height,
            corner=corner,
            headroom=headroom,
        ),
        parts=parts,
        seams=tuple(seams),
        stitching=STITCHING,
    )
    return replace(design, **changes)


def body_of(design: Design) -> Body:
    """The body of a design whose sizes need no settling."""
    plies = tuple(panel_plies(design, panel) for panel in range(len(design.body.panels)))
    return drafted_body(design, plies, panel_widths(design), body_height(design).value)


def corners_of(piece: Piece) -> set[tuple[float, float]]:
    """The vertices of a piece's outline, to the thousandth of a millimetre."""
    return {(round(x, 3) + 0.0, round(y, 3) + 0.0) for x, y, _ in piece.outline.vertices}
