"""The keys of a wallet folded from one piece."""

from __future__ import annotations

from typing import Literal

from patternforge.design.form import Count, Form, Length, Number, Text, optional, required
from patternforge.design.part_forms import CornersForm, InsetForm, SidesForm, ThumbForm
from patternforge.wallet.folded.spec import TabShape
from patternforge.wallet.spec import Edge, Lying, Side

__all__ = [
    "EndForm",
    "FaceForm",
    "FacePlaceForm",
    "FaceRoundForm",
    "FaceSlotForm",
    "FaceThumbForm",
    "FaceWindowForm",
    "FoldedForm",
    "RoomForm",
    "TabForm",
]


class FacePlaceForm(Form):
    """Where the middle of something lies on a face; a direction left out means the middle of the face."""

    left: Length = optional("from the left end of its box")
    right: Length = optional("from the right end of its box")
    bottom: Length = optional("from the lower end of its box")
    top: Length = optional("from the upper end of its box")


class FaceWindowForm(Form):
    """An opening to look through, cut into a face."""

    window: Text = required("name of the window")
    at: FacePlaceForm = optional("where its middle lies")
    width: Length = required("from left to right")
    height: Length = required("from bottom to top")
    corner: Length = optional("radius of its corners", 0)
    border: Length = optional("leather that must stay round it", 5)


class FaceSlotForm(Form):
    """An opening with round ends, cut into a face."""

    slot: Text = required("name of the slot")
    at: FacePlaceForm = optional("where its middle lies")
    width: Length = required("from left to right")
    height: Length = required("from bottom to top")
    border: Length = optional("leather that must stay round it", 5)


class FaceRoundForm(Form):
    """A round hole, cut into a face."""

    hole: Text = required("name of the hole")
    at: FacePlaceForm = optional("where its middle lies")
    diameter: Length = required("of the hole")
    border: Length = optional("leather that must stay round it", 5)


class FaceThumbForm(ThumbForm):
    """A notch in the middle of a free edge, to push an item out."""

    edge: Edge = optional("the edge it is cut into", "top")


class FaceForm(Form):
    """One face of the blank laid open, seen from the inside; the first is the base, the others hang on it or on
    one another."""

    face: Text = required("name of the face")
    on: Text = optional("the face it hangs on; every face but the first names one")
    edge: Edge = optional("the edge of that face it hangs on, upright as in the blank")
    reach: Literal["fit"] | Length = optional("how far it stands off its hinge, or fit", "fit")
    angle: Number = optional("180 folds it on the inside of the face it hangs on, -180 on the outside", 180)
    inset: InsetForm = optional("how far its hinge stays short of the ends of that edge")
    width: Literal["fit"] | Length = optional("width of the base, or fit", "fit")
    height: Literal["fit"] | Length = optional("height of the base, or fit", "fit")
    corner: Length = optional("radius of the corners between free edges", 0)
    corners: CornersForm = optional("corners with a radius of their own")
    sides: SidesForm = optional("edges that are bowed or slanted")
    thumb: FaceThumbForm = optional("a notch in the middle of a free edge")
    openings: list[FaceWindowForm | FaceSlotForm | FaceRoundForm] = optional("windows, slots and holes in it", [])


class RoomForm(Form):
    """Room for items between two faces."""

    room: Text = required("name of the room")
    between: list[Text] = required("the face the items lie on, and the one over them", min_length=2, max_length=2)
    item: Text = required("the content it holds")
    count: Count = optional("items it holds", 1)
    stands: Lying = optional("lying: longer side along the mouth; upright: across it", "lying")
    opening: Edge = optional("the edge of the first face the items go in over", "top")


class EndForm(Form):
    """How far the middle of a tab stands from one end of its edge."""

    left: Length = optional("from the left end")
    right: Length = optional("from the right end")
    bottom: Length = optional("from the lower end")
    top: Length = optional("from the upper end")


class TabForm(Form):
    """A tab on a free edge and its slit, which is cut where the tab's root comes to lie once all is closed."""

    tab: Text = required("name of the tab")
    on: Text = required("the face it stands on")
    edge: Edge = required("the free edge of that face it stands on")
    at: EndForm = optional("where its middle stands; the middle of the edge if left out")
    width: Length = required("along the edge")
    length: Length = required("how far it stands off the edge")
    shape: TabShape = optional("how it ends: rounded or pointed", "rounded")
    into: Text = required("the face it is tucked into")
    slit: Length = optional("length of the slit; the tab's width and one thickness if left out")


class FoldedForm(Form):
    """A wallet folded from one piece without thread."""

    leather: Text = required("role of the leather it is cut from")
    faces: list[FaceForm] = required("the base first, then each flap after the face it hangs on", min_length=2)
    closing: list[Text] = optional("flaps by name, first closed first; as they stand if left out", [])
    rooms: list[RoomForm] = optional("what it holds, and between which faces", [])
    tabs: list[TabForm] = optional("what holds it closed", [])
    relief: Length = optional("radius of the hole cut where the outline turns in at a fold or a tab", 1)
    ease: Length = optional("what a face is larger than the items on it", 2.5)
    showing: Side = optional("the side of the wallet the leather's face turns to", "outside")
