"""Designs with what is cut, set and wrapped: a strap case with a snap, a sleeve with a window."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from patternforge.leather.contents import Item
from patternforge.leather.material import Leather, MadeOf, Thickness
from patternforge.wallet.spec import (
    BankPart,
    BankShape,
    BodySpec,
    Content,
    Design,
    Edge,
    Film,
    Fitting,
    FoldSpec,
    Held,
    LayerPart,
    Opening,
    PanelSpec,
    SeamSpec,
    Side,
    Spot,
)
from tests.designs_built import STITCHING, leathers, sleeve

__all__ = ["BANK", "FILM", "LINING", "SHELL", "SNAP", "STRAP", "WINDOW", "strap_case", "windowed"]

FILM = Leather("film", Thickness(0.2, 0.2), made_of=MadeOf.FILM)
WINDOW = Opening("window", Spot(0, None, (Edge.BOTTOM, 22.0)), 60.0, 22.0, 4.0, 5.0, Film("film", 6.0, 3.0))
SNAP = Fitting("closure", "snap-line-20", "strap", Spot(0, (Edge.LEFT, 14.0)), (4.5, 3.5), 6.35, "shell", 2, line=7)
STRAP = LayerPart(
    "strap",
    "outer",
    0,
    1,
    inset=((Edge.BOTTOM, 25.0), (Edge.TOP, 25.0), (Edge.RIGHT, 70.0)),
    corner=10.0,
    showing=Side.OUTSIDE,
    line=3,
)
SHELL = LayerPart("shell", "outer", 1, 2, showing=Side.OUTSIDE, line=4)
LINING = LayerPart("lining", "inner", 2, 2, drop=6.0, line=5)
BANK = BankPart("cards", "inner", 0, "card", slots=2, step=14.0, show=14.0, shape=BankShape.FULL)


def strap_case(thickness: float = 0.76, count: int = 4, outer: float = 1.2, **changes: Any) -> Design:
    """A strap over a back and a front that hold ``count`` items ``thickness`` mm thick behind a lining of 0.8 mm."""
    item = Item("block", 80.0, 50.0, thickness)
    design = replace(
        sleeve(outer),
        name="strap-case",
        contents=(Content("block", item),),
        body=BodySpec(
            (PanelSpec("strap", 45.0), PanelSpec("back", 102.0), PanelSpec("front", 100.0)),
            (FoldSpec(relief=2.0), FoldSpec(relief=4.0)),
            (2, 1),
            height=74.0,
            corner=5.0,
        ),
        parts=(
            STRAP,
            SHELL,
            replace(LINING, holds=(Held("block", count),)),
        ),
        seams=(
            SeamSpec(
                "rim",
                (Edge.BOTTOM, Edge.RIGHT),
                over=(2, 2),
                margin=3.5,
                through=("shell", "lining"),
                stitching=STITCHING,
            ),
            SeamSpec(
                "strap seam",
                (Edge.BOTTOM, Edge.RIGHT, Edge.TOP),
                over=(1, 1),
                of="strap",
                margin=3.5,
                stop=8.0,
                through=("strap", "shell"),
                stitching=STITCHING,
            ),
        ),
        fittings=(SNAP,),
    )
    return replace(design, **changes)


def windowed(opening: Opening = WINDOW, **changes: Any) -> Design:
    """A card sleeve of one bank whose front piece has ``opening`` cut into it."""
    plain = sleeve()
    bank = replace(BANK, openings=(opening,))
    return replace(replace(plain, leathers=(*leathers(), FILM), parts=(plain.parts[0], bank)), **changes)
