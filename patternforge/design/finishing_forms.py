"""The keys of skives and turned edges."""

from __future__ import annotations

from patternforge.design.form import Count, Form, Length, Text, optional, required
from patternforge.design.place_forms import PlaceForm
from patternforge.wallet.finishing import TurnedCorner, TurnedHoles
from patternforge.wallet.spec import Edge

__all__ = ["EdgeSkiveForm", "FoldSkiveForm", "PatchSkiveForm", "Skives", "TurnedForm"]

_TO = "thickness left, less than the leather's"


class EdgeSkiveForm(Form):
    """A band pared down along edges of every piece of the part."""

    along: list[Edge] = required("the edges, as cut: a turned edge from the end of what is turned in")
    width: Length = required("of the band, from the edge as cut")
    to: Length = required(_TO)


class FoldSkiveForm(Form):
    """The zone of a fold pared down."""

    fold: Count = required("a fold the layer crosses, by its number")
    width: Length = required("how far it reaches beyond the bend on either side")
    to: Length = required(_TO)


class PatchSkiveForm(Form):
    """A rectangle pared down, such as a tab."""

    at: PlaceForm = required("where its middle lies")
    width: Length = required("across the folds")
    height: Length = required("along the folds")
    to: Length = required(_TO)


Skives = list[EdgeSkiveForm | FoldSkiveForm | PatchSkiveForm]


class TurnedForm(Form):
    """Edges turned in over what lies inside them; the finished edge stands where the edge is declared."""

    edges: list[Edge] = required("the edges turned in so")
    overlap: Length = optional("how far it lies flat beyond the bend", 8)
    over: Text | list[Text] = optional("layers it is turned over, such as the lining; onto itself if left out")
    core: Length = optional("thickness of anything else it is turned over", 0)
    corners: TurnedCorner = optional("how corners are cut; if left out: sharp ones mitred, rounded ones for pleats")
    corner_gap: Length = optional("left between a mitre and the finished corner; 1.5 thicknesses if left out")
    corner_overlap: Length = optional("overlap at rounded corners; the same if left out")
    notch_gap: Length = optional("left between the tips of notches and the bend", 1)
    holes: TurnedHoles = optional(
        "stitch holes in it: pierced once turned, marked, or cut in both leathers", "pierced"
    )
