"""Designs built without a file: a two-fold wallet, a card sleeve, a three-fold wallet, and variations of each."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from patternforge.leather.catalogue import catalogue
from patternforge.leather.material import Leather, Thickness
from patternforge.wallet.spec import (
    BankPart,
    BankShape,
    BodySpec,
    Content,
    Design,
    Edge,
    FoldSpec,
    Held,
    HoleShape,
    HoleSpec,
    LayerPart,
    MouthShape,
    MouthSpec,
    PanelSpec,
    Parameter,
    SeamSpec,
    Stitching,
)

__all__ = ["SLITS", "STITCHING", "leathers", "sleeve", "three_fold", "two_fold", "with_holes"]

STITCHING = Stitching(pitch=3.38)
SLITS = HoleSpec(HoleShape.SLIT, length=2.0, width=0.3, slant=45.0)
RIM = (Edge.LEFT, Edge.BOTTOM, Edge.RIGHT)


def leathers(outer: float = 1.2, inner: float = 0.8) -> tuple[Leather, Leather]:
    """An outer and an inner leather of these thicknesses, mm."""
    return (
        Leather("outer", Thickness(outer, outer), name="shoulder"),
        Leather("inner", Thickness(inner, inner), name="calf"),
    )


def two_fold(outer: float = 1.2, inner: float = 0.8, **changes: Any) -> Design:
    """Six cards in two tee banks and a note pocket behind a notched divider; ``changes`` are fields of ``Design``."""
    bank: dict[str, Any] = {"leather": "inner", "content": "card", "slots": 3, "step": 12.0, "show": 12.0}
    design = _design(
        name="two-fold",
        title="Two-fold wallet",
        leathers=leathers(outer, inner),
        body=BodySpec((PanelSpec("left"), PanelSpec("right")), (FoldSpec(relief=4.0),), (1,), corner=6.0),
        parts=(
            LayerPart("shell", "outer", 0, 1),
            LayerPart("divider", "inner", 0, 1, drop=6.0, holds=(Held("note", 5),), notch=3.0),
            BankPart("left cards", panel=0, **bank),
            BankPart("right cards", panel=1, mouth=MouthSpec(MouthShape.DIPPED, 3.0), **bank),
        ),
    )
    return replace(design, **changes)


def sleeve(outer: float = 1.2, inner: float = 0.8, **changes: Any) -> Design:
    """One panel without a fold: a back and two full pockets over it."""
    design = _design(
        name="sleeve",
        title="Card sleeve",
        leathers=leathers(outer, inner),
        body=BodySpec((PanelSpec("back"),), (), (), corner=6.0),
        parts=(
            LayerPart("back", "outer", 0, 0),
            BankPart("cards", "inner", 0, "card", slots=2, step=14.0, show=14.0, shape=BankShape.FULL),
        ),
    )
    return replace(design, **changes)


def three_fold(outer: float = 1.2, inner: float = 0.8, **changes: Any) -> Design:
    """Three panels, the left one folded in first: shell, divider with notes, two cards on each panel."""
    bank: dict[str, Any] = {"leather": "inner", "content": "card", "slots": 2, "step": 12.0, "show": 12.0}
    design = _design(
        name="three-fold",
        title="Three-fold wallet",
        leathers=leathers(outer, inner),
        body=BodySpec(
            (PanelSpec("left"), PanelSpec("middle"), PanelSpec("right")),
            (FoldSpec(relief=4.0), FoldSpec(relief=4.0)),
            (1, 2),
            corner=5.0,
        ),
        parts=(
            LayerPart("shell", "outer", 0, 2),
            LayerPart("divider", "inner", 0, 2, drop=6.0, holds=(Held("note", 5),), notch=3.0),
            BankPart("left cards", panel=0, **bank),
            BankPart("middle cards", panel=1, **bank),
            BankPart("right cards", panel=2, **bank),
        ),
    )
    return replace(design, **changes)


def with_holes(design: Design, hole: HoleSpec) -> Design:
    """The same design with every hole of every seam in another shape."""
    stitching = replace(design.stitching, hole=hole)
    seams = tuple(replace(seam, stitching=replace(seam.stitching, hole=hole)) for seam in design.seams)
    return replace(design, stitching=stitching, seams=seams)


def _design(name: str, title: str, leathers: tuple[Leather, ...], body: BodySpec, parts: tuple[Any, ...]) -> Design:
    known = catalogue()
    return Design(
        name=name,
        title=title,
        revision="A",
        notes="",
        file=f"{name}.yaml",
        parameters=(Parameter("margin", 3.5, "mm", 2.5, 6.0, "stitch line to edge"),),
        leathers=leathers,
        contents=(Content("card", known["id1"]), Content("note", known["note-eur-50"])),
        body=body,
        parts=parts,
        seams=(SeamSpec("rim", RIM, margin=3.5, stitching=STITCHING),),
        stitching=STITCHING,
    )
