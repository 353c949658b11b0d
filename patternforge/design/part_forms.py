"""The keys of parts and of what is cut into them."""

from __future__ import annotations

from typing import Literal

from patternforge.design.finishing_forms import Skives, TurnedForm
from patternforge.design.form import Count, Form, Length, Text, optional, required
from patternforge.design.place_forms import FoldPlaceForm, PlaceForm
from patternforge.wallet.spec import BankShape, Edge, Fastening, Lying, MouthShape, NotchShape, Side

__all__ = [
    "BankForm",
    "CornersForm",
    "FilmForm",
    "FoldPlaceForm",
    "GussetForm",
    "InsetForm",
    "LayerForm",
    "LayerMouthForm",
    "LayerThumbForm",
    "LooseForm",
    "MouthForm",
    "NotchForm",
    "PlaceForm",
    "PocketForm",
    "RoundForm",
    "SideForm",
    "SidesForm",
    "SlotForm",
    "ThumbForm",
    "TrimForm",
    "WindowForm",
]


class MouthForm(Form):
    """The edge an item goes in over."""

    shape: MouthShape = required("straight, dipped or slanted")
    depth: Length = optional("dip at the middle or fall of the slant")


class ThumbForm(Form):
    """A thumb notch in the middle of a mouth."""

    width: Length = required("along the mouth")
    depth: Length = required("at most half the width")


class TrimForm(Form):
    """Extra width by edge, cut off after gluing."""

    left: Length = optional("at the left edge", 0)
    right: Length = optional("at the right edge", 0)
    bottom: Length = optional("at the bottom edge", 0)
    top: Length = optional("at the top edge", 0)


class InsetForm(Form):
    """How far edges lie inside the body's, or short of the far end of a panel: a strap, a flap, a tongue."""

    left: Length = optional("of the left edge", 0)
    right: Length = optional("of the right edge", 0)
    bottom: Length = optional("of the bottom edge", 0)
    top: Length = optional("of the top edge", 0)


class SideForm(Form):
    """How a side leaves the straight."""

    bow: Length = optional("rise of the arc outwards; negative: inwards", 0)
    slant: Length = optional("how far its upper or right end moves in; negative: its lower or left end", 0)


class SidesForm(Form):
    """Sides that are bowed or slanted."""

    left: SideForm = optional("the left side")
    right: SideForm = optional("the right side")
    bottom: SideForm = optional("the lower side")
    top: SideForm = optional("the upper side")


class CornersForm(Form):
    """Single corners with a radius of their own."""

    bottom_left: Length = optional("radius of the lower left corner", alias="bottom left")
    bottom_right: Length = optional("radius of the lower right corner", alias="bottom right")
    top_left: Length = optional("radius of the upper left corner", alias="top left")
    top_right: Length = optional("radius of the upper right corner", alias="top right")


class LayerMouthForm(Form):
    """The opening edge of a layer."""

    shape: Literal["straight", "dipped"] = required("straight or dipped")
    depth: Length = optional("dip at the middle, on each panel")


class LayerThumbForm(ThumbForm):
    """A thumb notch in the opening edge of a layer, in the middle of a panel."""

    panel: Text = optional("the panel it is cut on; each one the layer covers if left out")


class NotchForm(Form):
    """A notch cut into a straight edge of a layer."""

    notch: Text = required("name of the notch")
    edge: Edge = required("the edge it is cut into")
    at: FoldPlaceForm = optional("where along the edge its middle lies")
    width: Length = required("along the edge")
    depth: Length = required("into the leather; of a round one at most half its width")
    shape: NotchShape = optional("vee or round", "vee")


class FilmForm(Form):
    """A clear sheet sewn behind a window."""

    leather: Text = required("role of the sheet it is cut from, among the leathers")
    overlap: Length = optional("how far it reaches beyond the window", 6)
    margin: Length = optional("stitch line to window", 3)


class WindowForm(Form):
    """An opening to look through."""

    window: Text = required("name of the window")
    at: FoldPlaceForm = optional("where its middle lies")
    width: Length = required("across the folds")
    height: Length = required("along the folds")
    corner: Length = optional("radius of its corners", 0)
    border: Length = optional("leather that must stay round it", 5)
    film: FilmForm = optional("a clear sheet behind it")


class SlotForm(Form):
    """An opening with round ends."""

    slot: Text = required("name of the slot")
    at: FoldPlaceForm = optional("where its middle lies")
    width: Length = required("across the folds")
    height: Length = required("along the folds")
    border: Length = optional("leather that must stay round it", 5)


class RoundForm(Form):
    """A round hole."""

    hole: Text = required("name of the hole")
    at: FoldPlaceForm = optional("where its middle lies")
    diameter: Length = required("of the hole")
    border: Length = optional("leather that must stay round it", 5)


Openings = list[WindowForm | SlotForm | RoundForm]
_SKIVED = "where its pieces are pared down"
_OPENINGS = "windows, slots and holes cut into its front piece"


class LayerForm(Form):
    """A layer that covers whole panels: shell, lining, divider."""

    layer: Text = required("name of the layer")
    leather: Text = required("role of the leather it is cut from")
    over: Text | list[Text] = optional("first and last panel it covers, or one panel; all if left out")
    drop: Length = optional("how far its opening edge is lowered", 0)
    opening: Edge = optional("the edge that drops", "top")
    holds: dict[str, Count] = optional("contents between it and the layer outside it, with their count")
    showing: Side = optional("the side of the wallet its face turns to")
    notch: Length = optional("depth of the relief notch at both ends of each fold", 0)
    trim: TrimForm = optional("extra by edge, cut off after gluing")
    exact: list[Literal["drop"]] = optional("sizes that may not move to whole stitches", [])
    inset: InsetForm = optional("how far edges lie inside the body's: a strap, a flap, a tongue")
    corner: Length = optional("radius of the corners an inset gives it")
    sides: SidesForm = optional("sides an inset gives it that are bowed or slanted")
    stands: Lying = optional("what it holds, lying: longer side along the mouth; upright: across it", "lying")
    mouth: Literal["straight"] | LayerMouthForm = optional("its opening edge", "straight")
    thumb: LayerThumbForm = optional("a notch in its opening edge to push things out")
    notches: list[NotchForm] = optional("notches in its straight edges", [])
    openings: Openings = optional(_OPENINGS, [])
    follows: Text = optional("a layer outside it whose finished outline it copies, as a lining does")
    inside: Length = optional("how far inside that outline it ends; negative: outside", 0)
    skives: Skives = optional(_SKIVED, [])
    turned: list[TurnedForm] = optional("edges turned in to its back, in groups turned in alike", [])
    fastened: Fastening = optional("what holds it: sewn by seams, or glued and passed by all of them", "sewn")


class BankForm(Form):
    """Card pockets in steps on one panel, slot 1 in front."""

    bank: Text = required("name of the bank")
    on: Text = required("the panel it lies on")
    leather: Text = required("role of the leather it is cut from")
    item: Text = required("the content it holds")
    slots: Count = required("pockets in a column, 1 to 12")
    step: Length = required("rise from slot to slot")
    show: Length = required("how much of the item stands out of its mouth")
    per_slot: Count = optional("items in each pocket", 1)
    overlap: Length = optional("how much deeper the tab of a tee reaches than the step", 8)
    ease: Length = optional("added to the taut path round the items", 2.5)
    shape: BankShape = optional("tee: stopped below the one in front; full: down to the seam", "tee")
    stands: Lying = optional("lying: longer side along the mouth; upright: across it", "lying")
    opening: Edge = optional("the edge the items go in at", "top")
    columns: Count = optional("banks side by side along the mouth", 1)
    facing: Side = optional("the side of the wallet it is sewn to", "inside")
    mouth: Literal["straight"] | MouthForm = optional("the edge the item goes in over", "straight")
    thumb: ThumbForm = optional("a notch to push the item out")
    trim: TrimForm = optional("extra by edge, cut off after gluing")
    exact: list[Literal["step", "show", "overlap"]] = optional("sizes that may not move to whole stitches", [])
    sewn_to: list[Text] = optional("layers its own seams go through besides the one next to it", [])
    openings: Openings = optional(_OPENINGS, [])
    skives: Skives = optional(_SKIVED, [])


class LooseForm(Form):
    """What lies on a panel in no pocket: keys, a pad, a booklet."""

    loose: Text = required("name of what lies there")
    on: Text = required("the panel it lies on")
    item: Text = required("the content")
    count: Count = optional("how many lie over each other", 1)
    at: PlaceForm = optional("where its middle lies")
    stands: Lying = optional("lying: longer side across the folds; upright: along them", "lying")


class PocketForm(Form):
    """One flat pocket on one panel."""

    pocket: Text = required("name of the pocket")
    on: Text = required("the panel it lies on")
    leather: Text = required("role of the leather it is cut from")
    item: Text = required("the content it holds")
    depth: Length = required("from the seam opposite its mouth to the mouth")
    count: Count = optional("items it holds", 1)
    ease: Length = optional("added to the taut path round the items", 2.5)
    stands: Lying = optional("lying: longer side along the mouth; upright: across it", "lying")
    opening: Edge = optional("the edge the item goes in at", "top")
    facing: Side = optional("the side of the wallet it is sewn to", "inside")
    mouth: Literal["straight"] | MouthForm = optional("the edge the item goes in over", "straight")
    thumb: ThumbForm = optional("a notch to push the item out")
    trim: TrimForm = optional("extra by edge, cut off after gluing")
    exact: list[Literal["depth"]] = optional("sizes that may not move to whole stitches", [])
    sewn_to: list[Text] = optional("layers its own seams go through besides the one next to it", [])
    openings: Openings = optional(_OPENINGS, [])
    skives: Skives = optional(_SKIVED, [])


class GussetForm(Form):
    """A strip between two walls: a channel that keeps them apart, or a bellows that lets them open."""

    gusset: Text = required("name of the gusset")
    on: Text = required("the panel its walls close on")
    leather: Text = required("role of the leather it is cut from")
    joins: list[Text] = required(
        "the seams along its two long edges, each through a wall of its own", min_length=2, max_length=2
    )
    pleats: Count = optional("folds inwards: 0 makes a channel, more a bellows of two leaves each", 0)
    depth: Length = optional("of a channel: what it keeps the walls apart")
    turn: Length = optional("of a channel: stitch line to the outside of its web; as near as the bend lets it")
    leaf: Length = optional("of a bellows: from the edge to a fold inwards")
    short: Length = optional("how far its ends stop short of the walls' edges", 0)
    holds: dict[str, Count] = optional("contents between its walls, with their count")
    ease: Length = optional("room along the mouth beyond what it holds", 2.5)
    stands: Lying = optional("what it holds, lying: longer side along the mouth; upright: across it", "lying")
    opening: Edge = optional("the edge of the panel that things go in over", "top")
    showing: Side = optional("the side of the wallet its face turns to", "outside")
