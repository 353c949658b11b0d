"""What to mind before cutting, in words for every way of cutting: reminders, and no training."""

from __future__ import annotations

from patternforge.leather.material import Leather, MadeOf, Tannage

__all__ = ["ALWAYS", "BLADE", "DIE", "KNIFE", "LASER", "PAPER", "SCRAP", "UNSURE", "is_unsure"]

LASER = (
    "Laser: leather smoulders and its smoke is harmful. Draw the fumes off, stay with the machine while it cuts, and"
    " keep the means to put out a fire at hand."
)
UNSURE = (
    "Chrome-tanned leather and anything with PVC in it can give off poisonous fumes under a laser: ask the supplier"
    " what it is, and do not cut what nobody can vouch for."
)
KNIFE = "Plotter: keep hands, hair and sleeves away from the blade and the carriage while they move."
DIE = "Press: hands clear before it closes, and use the two-hand control or guard the machine has."
PAPER = "Paper: print at 100 %, not fitted to the page, and measure the check bars both ways before you cut by it."
BLADE = "Blade: cut away from your hand, with a sharp blade along a metal rule."
ALWAYS = "Follow the machine's manual and the rules of your place; leave machines to people trained on them."
SCRAP = "Cut one wallet in scrap of the same thickness before you cut good leather."


def is_unsure(leather: Leather) -> bool:
    """Whether a sheet may give off poisonous fumes: any but leather that is known to be vegetable-tanned.

    >>> from patternforge.leather.material import Thickness
    >>> is_unsure(Leather("outer", Thickness(1, 1), tannage=Tannage.VEGETABLE))
    False
    """
    return leather.tannage is not Tannage.VEGETABLE or leather.made_of is not MadeOf.LEATHER
