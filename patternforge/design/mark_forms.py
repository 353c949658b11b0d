"""The keys of what is marked on pieces."""

from __future__ import annotations

from enum import StrEnum

from patternforge.design.form import Form, Length, Text, optional, required
from patternforge.design.part_forms import PlaceForm
from patternforge.wallet.spec import Edge

__all__ = ["InitialsForm", "LetterStyle", "StampForm"]


class LetterStyle(StrEnum):
    """How letters come on the leather."""

    STROKES = "strokes"
    STAMPS = "stamps"


class StampForm(Form):
    """One letter stamp."""

    width: Length = required("of its face, along the line of letters")
    height: Length = required("of its face")
    spacing: Length = optional("from one stamp to the next", 1)


class InitialsForm(Form):
    """Letters on the showing face of a part, in a box kept clear for them."""

    initials: Text = required("name of the letters")
    text: Text = optional("what they say, unless --initials NAME=TEXT says otherwise; none: the box alone", "")
    on: Text = required("the part that bears them")
    at: PlaceForm = optional("where the middle of their box lies")
    width: Length = required("of the box, along the line of letters")
    height: Length = required("of the box")
    style: LetterStyle = optional("strokes: drawn as single lines; stamps: a guide for letter stamps", "strokes")
    stamp: StampForm = optional("the stamp for one letter")
    clear: Length = optional("box to edges, stitches, folds and hardware, at least", 3)
    up: Edge = optional("the edge of the laid-open body their tops point to; upright if left out")
