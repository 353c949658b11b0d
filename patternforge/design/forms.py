"""The keys a design file may hold, table by table, with one line on each: for the loader and for editors.

The loader asks these forms which keys a table may and must have, and the JSON Schema is made from them, so that
neither can drift from the other.
"""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import BaseModel, ConfigDict, Field, WithJsonSchema

from patternforge.leather.material import Stretch, SurfaceFace, Tannage
from patternforge.wallet.spec import (
    Across,
    BankShape,
    CornerStyle,
    Edge,
    HoleShape,
    Lying,
    Mode,
    MouthShape,
    Side,
)

__all__ = [
    "BankForm",
    "BodyForm",
    "ContentForm",
    "DesignForm",
    "FoldForm",
    "Form",
    "HoleForm",
    "LayerForm",
    "LeatherForm",
    "LimitsForm",
    "LoadForm",
    "MouthForm",
    "ParameterForm",
    "PocketForm",
    "SeamForm",
    "StitchingForm",
    "ThumbForm",
    "TrimForm",
    "keys_of",
    "required_keys",
]


def _written(*types: str, **rest: object) -> WithJsonSchema:
    return WithJsonSchema({"type": list(types), **rest})


Text = Annotated[str, _written("string", "number")]
Length = Annotated[float, _written("number", "string", maxLength=200)]
Number = Annotated[float, _written("number", "string", maxLength=200)]
Count = Annotated[int, _written("integer", "string", maxLength=200)]
Pitch = Annotated[float, _written("string", maxLength=200)]


def _required(description: str, **rest: Any) -> Any:
    return Field(description=description, **rest)


def _optional(description: str, default: object = None, **rest: Any) -> Any:
    return Field(default=default, description=description, **rest)


class Form(BaseModel):
    """A table of the design file; unknown keys are refused."""

    # The loader only reads the fields: what validates by them is built for the JSON Schema alone.
    model_config = ConfigDict(extra="forbid", defer_build=True)


class ParameterForm(Form):
    """A number the maker may change."""

    value: Length = _required("a length with its unit, a plain number, or arithmetic on names declared above")
    from_: Length = _optional("smallest lawful value", alias="from")
    to: Length = _optional("largest lawful value")
    meaning: Text = _optional("one line on what it changes", "")


class LeatherForm(Form):
    """One leather of the design, known by its role."""

    thickness: Length = _required("as measured (1.2 mm) or a range as sold (3-4 oz, 1.2-1.6 mm)")
    tolerance: Length = _optional("how far the thickness strays either way", 0)
    neutral: Number = _optional("unstretched fibre from the inside of a bend, in thicknesses, 0 to 1", 0.5)
    min_radius: Number = _optional("smallest inside radius of a bend, in thicknesses", 0.5)
    tannage: Tannage = _optional("how it was tanned", "unknown")
    face: SurfaceFace = _optional("the side that shows", "grain")
    stretch: Stretch = _optional("the loose way of the hide on the upright piece", "unknown")
    name: Text = _optional("what the seller calls it", "")
    price: Number = _optional("price of one price_area, no currency")
    price_area: Literal["ft2", "dm2", "m2"] = _optional("area the price is for", "ft2")


class ContentForm(Form):
    """An item of your own, or an item of the catalogue with some sizes changed."""

    item: Text = _optional("name in the catalogue to start from")
    length: Length = _optional("the longer side")
    height: Length = _optional("the shorter side")
    thickness: Length = _optional("thickness of one")
    corner_radius: Length = _optional("radius of its corners")


class FoldForm(Form):
    """A fold between two neighbouring panels."""

    angle: Number = _optional("degrees; 180 brings the insides together, -180 the outsides", 180)
    compensation: Number = _optional("0 lies flat open, 1 closes true, up to 1.2", 1)
    relief: Length = _optional("how far pockets stop short of the bend", 3)


class BodyForm(Form):
    """The wallet laid open: panels from left to right, seen from the inside."""

    panels: dict[str, Literal["fit"] | Length] = _required(
        "panels from left to right: name and width, or fit", min_length=1, max_length=8
    )
    height: Literal["fit"] | Length = _optional("height of the laid-open body, or fit", "fit")
    corner: Length = _optional("radius of the outer corners", 0)
    folds: list[FoldForm] = _optional("one fold between each two panels", [])
    closing: list[int] = _optional("folds by number from 1, first closed first")
    turned: bool = _optional("true lays the folds across, the left end becoming the top", False)
    clearance: Length = _optional("how much shorter a panel folded in is than the one that covers it", 1.5)
    headroom: Length = _optional("room above the highest item", 3)


class LoadForm(Form):
    """What is in the wallet when it closes true, as shares from 0 to 1."""

    cards: Number = _optional("share of item pockets filled", 1)
    notes: Number = _optional("share of loose notes", 1)


class HoleForm(Form):
    """One stitch hole."""

    shape: HoleShape = _required("round, slit, mark or none")
    diameter: Length = _optional("of a round hole", 1)
    length: Length = _optional("of a slit", 2)
    width: Length = _optional("of a slit", 0.3)
    slant: Number = _optional("of a slit, degrees as seen from the outside", 45)


class StitchingForm(Form):
    """How seams are holed and sewn."""

    pitch: Pitch = _optional("hole to hole, unit said: 3.38 mm, 8 per inch, 8 per French inch", "3.4 mm")
    mode: Mode = _optional("even: spacing gives way to size; iron: size gives way to the iron", "even")
    hole: HoleForm = _optional("shape and size of a hole")
    tails: Length = _optional("thread left over in each seam", 150)
    thread: Length = _optional("thickness of the thread", 0.55)


class MouthForm(Form):
    """The edge an item goes in over."""

    shape: MouthShape = _required("straight, dipped or slanted")
    depth: Length = _optional("dip at the middle or fall of the slant")


class ThumbForm(Form):
    """A thumb notch in the middle of a mouth."""

    width: Length = _required("along the mouth")
    depth: Length = _required("at most half the width")


class TrimForm(Form):
    """Extra width by edge, cut off after gluing."""

    left: Length = _optional("at the left edge", 0)
    right: Length = _optional("at the right edge", 0)
    bottom: Length = _optional("at the bottom edge", 0)
    top: Length = _optional("at the top edge", 0)


class LayerForm(Form):
    """A layer that covers whole panels: shell, lining, divider."""

    layer: Text = _required("name of the layer")
    leather: Text = _required("role of the leather it is cut from")
    over: Text | list[Text] = _optional("first and last panel it covers, or one panel; all if left out")
    drop: Length = _optional("how far its opening edge is lowered", 0)
    opening: Edge = _optional("the edge that drops", "top")
    holds: dict[str, Count] = _optional("contents between it and the layer outside it, with their count")
    showing: Side = _optional("the side of the wallet its face turns to")
    notch: Length = _optional("depth of the relief notch at both ends of each fold", 0)
    trim: TrimForm = _optional("extra by edge, cut off after gluing")
    exact: list[Literal["drop"]] = _optional("sizes that may not move to whole stitches", [])


class BankForm(Form):
    """Card pockets in steps on one panel, slot 1 in front."""

    bank: Text = _required("name of the bank")
    on: Text = _required("the panel it lies on")
    leather: Text = _required("role of the leather it is cut from")
    item: Text = _required("the content it holds")
    slots: Count = _required("pockets in a column, 1 to 12")
    step: Length = _required("rise from slot to slot")
    show: Length = _required("how much of the item stands out of its mouth")
    per_slot: Count = _optional("items in each pocket", 1)
    overlap: Length = _optional("how much deeper the tab of a tee reaches than the step", 8)
    ease: Length = _optional("added to the taut path round the items", 2.5)
    shape: BankShape = _optional("tee: stopped below the one in front; full: down to the seam", "tee")
    stands: Lying = _optional("lying: longer side along the mouth; upright: across it", "lying")
    opening: Edge = _optional("the edge the items go in at", "top")
    columns: Count = _optional("banks side by side along the mouth", 1)
    facing: Side = _optional("the side of the wallet it is sewn to", "inside")
    mouth: Literal["straight"] | MouthForm = _optional("the edge the item goes in over", "straight")
    thumb: ThumbForm = _optional("a notch to push the item out")
    trim: TrimForm = _optional("extra by edge, cut off after gluing")
    exact: list[Literal["step", "show", "overlap"]] = _optional("sizes that may not move to whole stitches", [])


class PocketForm(Form):
    """One flat pocket on one panel."""

    pocket: Text = _required("name of the pocket")
    on: Text = _required("the panel it lies on")
    leather: Text = _required("role of the leather it is cut from")
    item: Text = _required("the content it holds")
    depth: Length = _required("from the seam opposite its mouth to the mouth")
    count: Count = _optional("items it holds", 1)
    ease: Length = _optional("added to the taut path round the items", 2.5)
    stands: Lying = _optional("lying: longer side along the mouth; upright: across it", "lying")
    opening: Edge = _optional("the edge the item goes in at", "top")
    facing: Side = _optional("the side of the wallet it is sewn to", "inside")
    mouth: Literal["straight"] | MouthForm = _optional("the edge the item goes in over", "straight")
    thumb: ThumbForm = _optional("a notch to push the item out")
    trim: TrimForm = _optional("extra by edge, cut off after gluing")
    exact: list[Literal["depth"]] = _optional("sizes that may not move to whole stitches", [])


class SeamForm(Form):
    """A seam along edges of the laid-open body."""

    seam: Text = _required("name of the seam")
    along: list[Edge] = _required("the edges it follows, in order", min_length=1)
    margin: Length = _optional("stitch line to edge", 3.5)
    end: Length = _optional("last hole to an open edge")
    corners: CornerStyle = _optional("how it goes round a corner", "rounded")
    across: Across = _optional("what it does at a fold: stop (open) or go across (eased)", "open")
    stop: Length = _optional("how far an open seam stops short of the bend")
    spread: Length = _optional("how far beside the bend an eased seam may stretch", 0)
    through: list[Text] = _optional("parts it goes through; all it meets if left out", [])
    stitching: StitchingForm = _optional("what differs from the stitching of the design")


class LimitsForm(Form):
    """What the check of the finished wallet allows."""

    hole_to_mouth: Length = _optional("rim of a hole to a mouth, at least", 0.6)
    hole_to_edge: Length = _optional("rim of a hole to an edge, at least", 1.5)
    hole_to_fold: Length = _optional("rim of a hole to a bend, at least", 1)
    seam_stack: Length = _optional("thickness of a seam, at most", 6)
    closed_thickness: Length = _optional("thickness of the closed wallet, at most", 30)
    pitch_look: Number = _optional("share of the pitch it may stray before a look is asked for", 0.05)
    pitch_no: Number = _optional("share of the pitch it may stray at all", 0.15)
    max_ease: Length = _optional("room to spare in a pocket, at most", 8)


class DesignForm(Form):
    """A wallet design."""

    design: Text = _required("title of the wallet")
    revision: Text = _optional("printed on every piece", "")
    notes: Text = _optional("free text", "")
    parameters: dict[str, ParameterForm] = _optional("numbers a maker changes, by name", {})
    leathers: dict[str, LeatherForm] = _required("leathers by role, such as outer and inner", min_length=1)
    contents: dict[str, Text | ContentForm] = _optional("what the wallet holds, by a name of your own", {})
    body: BodyForm = _required("panels and folds")
    load: Literal["full", "empty"] | LoadForm = _optional("what is in the wallet when it closes true", "full")
    stitching: StitchingForm = _optional("how seams are holed and sewn")
    parts: list[LayerForm | BankForm | PocketForm] = _required("parts from the outside in", min_length=1)
    seams: list[SeamForm] = _optional("seams, which hold the parts together", [])
    limits: LimitsForm = _optional("what the check of the finished wallet allows")


def keys_of(form: type[Form]) -> dict[str, str]:
    """The lawful keys of a table with their one line of meaning, in the order of the form.

    >>> keys_of(ThumbForm)
    {'width': 'along the mouth', 'depth': 'at most half the width'}
    """
    return {field.alias or name: field.description or "" for name, field in form.model_fields.items()}


def required_keys(form: type[Form]) -> tuple[str, ...]:
    """The keys a table must have.

    >>> required_keys(HoleForm)
    ('shape',)
    """
    return tuple(field.alias or name for name, field in form.model_fields.items() if field.is_required())
