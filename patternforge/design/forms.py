"""The keys a design file may hold, table by table, with one line on each: for the loader and for editors.

The loader asks these forms which keys a table may and must have, and the JSON Schema is made from them, so that
neither can drift from the other.
"""

from __future__ import annotations

from typing import Literal

from pydantic import ConfigDict

from patternforge.design.folded_forms import FoldedForm
from patternforge.design.form import Form, Length, Number, Pitch, Text, optional, required
from patternforge.design.mark_forms import InitialsForm
from patternforge.design.part_forms import (
    BankForm,
    CornersForm,
    GussetForm,
    LayerForm,
    LooseForm,
    PlaceForm,
    PocketForm,
    SidesForm,
)
from patternforge.leather.contents import Section
from patternforge.leather.material import MadeOf, Stretch, SurfaceFace, Tannage
from patternforge.wallet.spec import Across, CornerStyle, Edge, HoleShape, Mode

__all__ = [
    "BodyForm",
    "ContentForm",
    "CornersForm",
    "DesignForm",
    "FittingForm",
    "FoldForm",
    "HoleForm",
    "LeatherForm",
    "LimitsForm",
    "LoadForm",
    "MeetsForm",
    "ParameterForm",
    "SeamForm",
    "StitchingForm",
]


class ParameterForm(Form):
    """A number the maker may change."""

    value: Length = required("a length with its unit, a plain number, or arithmetic on names declared above")
    from_: Length = optional("smallest lawful value", alias="from")
    to: Length = optional("largest lawful value")
    meaning: Text = optional("one line on what it changes", "")


class LeatherForm(Form):
    """One leather of the design, or another sheet that stands in for one, known by its role."""

    thickness: Length = required("as measured (1.2 mm) or a range as sold (3-4 oz, 1.2-1.6 mm)")
    tolerance: Length = optional("how far the thickness strays either way", 0)
    neutral: Number = optional("unstretched fibre from the inside of a bend, in thicknesses, 0 to 1", 0.5)
    min_radius: Number = optional("smallest inside radius of a bend, in thicknesses", 0.5)
    tannage: Tannage = optional("how it was tanned", "unknown")
    face: SurfaceFace = optional("the side that shows", "grain")
    stretch: Stretch = optional("the loose way of the hide on the upright piece", "unknown")
    name: Text = optional("what the seller calls it", "")
    price: Number = optional("price of one price_area, no currency")
    price_area: Literal["ft2", "dm2", "m2"] = optional("area the price is for", "ft2")
    made_of: MadeOf = optional("leather, film, cloth, elastic or stiffener", "leather")


class ContentForm(Form):
    """An item of your own, or an item of the catalogue with some sizes changed."""

    item: Text = optional("name in the catalogue to start from")
    length: Length = optional("the longer side")
    height: Length = optional("the shorter side")
    thickness: Length = optional("thickness of one")
    corner_radius: Length = optional("radius of its corners")
    section: Section = optional("flat, or round like a pen")


class FoldForm(Form):
    """A fold between two neighbouring panels."""

    angle: Number = optional("degrees; 180 brings the insides together, -180 the outsides", 180)
    compensation: Number = optional("0 lies flat open, 1 closes true, up to 1.2", 1)
    around: Length = optional("a ring or bar it goes round: a content, or its thickness", 0)
    relief: Length = optional("how far pockets stop short of the bend", 3)


class BodyForm(Form):
    """The wallet laid open: panels from left to right, seen from the inside."""

    panels: dict[str, Literal["fit"] | Length] = required(
        "panels from left to right: name and width, or fit", min_length=1, max_length=8
    )
    height: Literal["fit"] | Length = optional("height of the laid-open body, or fit", "fit")
    corner: Length = optional("radius of the outer corners", 0)
    corners: CornersForm = optional("outer corners with a radius of their own")
    sides: SidesForm = optional("outer sides that are bowed or slanted")
    folds: list[FoldForm] = optional("one fold between each two panels", [])
    closing: list[int] = optional("folds by number from 1, first closed first")
    turned: bool = optional("true lays the folds across, the left end becoming the top", False)
    clearance: Length = optional("how much shorter a panel folded in is than the one that covers it", 1.5)
    headroom: Length = optional("room above the highest item", 3)


class LoadForm(Form):
    """What is in the wallet when it closes true, as shares from 0 to 1."""

    cards: Number = optional("share of item pockets filled", 1)
    notes: Number = optional("share of what lies behind layers", 1)
    loose: Number = optional("share of what lies in no pocket", 1)


class HoleForm(Form):
    """One stitch hole."""

    shape: HoleShape = required("round, slit, mark or none")
    diameter: Length = optional("of a round hole", 1)
    length: Length = optional("of a slit", 2)
    width: Length = optional("of a slit", 0.3)
    slant: Number = optional("of a slit, degrees as seen from the outside", 45)


class StitchingForm(Form):
    """How seams are holed and sewn."""

    pitch: Pitch = optional("hole to hole, unit said: 3.38 mm, 8 per inch, 8 per French inch", "3.4 mm")
    mode: Mode = optional("even: spacing gives way to size; iron: size gives way to the iron", "even")
    hole: HoleForm = optional("shape and size of a hole")
    tails: Length = optional("thread left over at both ends of each unbroken run of a seam, in all", 150)
    thread: Length = optional("thickness of the thread", 0.55)


class SeamForm(Form):
    """A seam along edges of the laid-open body."""

    seam: Text = required("name of the seam")
    along: list[Edge] = required("the edges it follows, in order", min_length=1)
    margin: Length = optional("stitch line to edge", 3.5)
    end: Length = optional("last hole to an open edge")
    corners: CornerStyle = optional("how it goes round a corner", "rounded")
    across: Across = optional("what it does at a fold: stop (open) or go across (eased)", "open")
    stop: Length = optional("how far an open seam stops short of the bend")
    spread: Length = optional("how far beside the bend an eased seam may stretch", 0)
    through: list[Text] = optional("parts it goes through; all it meets if left out", [])
    stitching: StitchingForm = optional("what differs from the stitching of the design")
    over: Text | list[Text] = optional("first and last panel it runs over, or one panel; all if left out")
    of: Text = optional("the layer whose own edges it follows there, in place of the body's")
    onto: Text = optional("the panel it is sewn through as well once folded, which then lies on the one it runs over")


class MeetsForm(Form):
    """What carries the second half of a fitting; where it must sit follows from closing the wallet."""

    part: Text = required("the part")
    panel: Text = optional("the panel; the only one of the part if left out")


class FittingForm(Form):
    """Hardware set in a hole or hidden behind a layer, its second half where the first lies once all is closed."""

    fitting: Text = required("name of the fitting")
    kind: Text = required("name in the catalogue of hardware")
    on: Text = required("the part that carries the first half")
    at: PlaceForm = optional("where the first half lies")
    meets: MeetsForm = optional("what carries the second half")
    holes: list[Length] = optional("diameters to punch, first half first, where yours differ from the catalogue")
    cap: Length = optional("width of the larger cap, where yours differs from the catalogue")
    thickness: Length = optional("of each half of a hidden kind, where yours differs from the catalogue")


class LimitsForm(Form):
    """What the check of the finished wallet allows."""

    hole_to_mouth: Length = optional("rim of a hole to a mouth, at least", 0.6)
    hole_to_edge: Length = optional("rim of a hole to an edge, at least", 1.5)
    hole_to_fold: Length = optional("rim of a hole to a bend, at least", 1)
    seam_stack: Length = optional("thickness of a seam, at most", 6)
    closed_thickness: Length = optional("thickness of the closed wallet, at most", 30)
    pitch_look: Number = optional("share of the pitch it may stray before a look is asked for", 0.05)
    pitch_no: Number = optional("share of the pitch it may stray at all", 0.15)
    max_ease: Length = optional("room to spare in a pocket, at most", 8)


_OF_SEAMS = ("seams", "fittings", "stitching", "initials")


class DesignForm(Form):
    """A wallet design: either panels and parts sewn together, or one piece that is folded."""

    model_config = ConfigDict(
        json_schema_extra={
            "oneOf": [
                {"required": ["body", "parts"]},
                {"required": ["folded"], "not": {"anyOf": [{"required": [key]} for key in _OF_SEAMS]}},
            ]
        }
    )

    design: Text = required("title of the wallet")
    revision: Text = optional("printed on every piece", "")
    notes: Text = optional("free text", "")
    parameters: dict[str, ParameterForm] = optional("numbers a maker changes, by name", {})
    leathers: dict[str, LeatherForm] = required("leathers by role, such as outer and inner", min_length=1)
    contents: dict[str, Text | ContentForm] = optional("what the wallet holds, by a name of your own", {})
    body: BodyForm = optional("panels and folds; needed unless the wallet is folded from one piece")
    folded: FoldedForm = optional("faces, folds and tabs of a wallet of one piece, in place of body, parts and seams")
    load: Literal["full", "empty"] | LoadForm = optional("what is in the wallet when it closes true", "full")
    stitching: StitchingForm = optional("how seams are holed and sewn")
    parts: list[LayerForm | BankForm | PocketForm | LooseForm | GussetForm] = optional(
        "parts from the outside in; needed unless the wallet is folded from one piece", min_length=1
    )
    seams: list[SeamForm] = optional("seams, which hold the parts together", [])
    fittings: list[FittingForm] = optional("snaps, rivets and other hardware", [])
    initials: list[InitialsForm] = optional("letters on the showing face of a part, strokes or stamped", [])
    limits: LimitsForm = optional("what the check of the finished wallet allows")
