"""The keys of places on panels and in folds."""

from __future__ import annotations

from patternforge.design.form import Count, Form, Length, Text, optional

__all__ = ["FoldPlaceForm", "PlaceForm"]


class PlaceForm(Form):
    """Where the middle of something lies on a panel; a direction left out means the middle of the panel."""

    panel: Text = optional("the panel; the only one of its part if left out")
    left: Length = optional("from the panel's left edge or fold")
    right: Length = optional("from the panel's right edge or fold")
    bottom: Length = optional("from the bottom edge")
    top: Length = optional("from the top edge")


class FoldPlaceForm(PlaceForm):
    """Where the middle of something lies on a panel, or in a fold."""

    fold: Count = optional("a fold by its number, in place of a panel: the middle of its bend")
