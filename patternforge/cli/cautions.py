"""What to mind before cutting, for the way it is cut."""

from __future__ import annotations

from patternforge.leather.material import Leather, Tannage
from patternforge.pipeline.request import DraftRequest, Wanted

__all__ = ["cautions"]

_LASER = (
    "Laser: leather smoulders and its smoke is harmful. Draw the fumes off, stay with the machine while it cuts, and"
    " keep the means to put out a fire at hand."
)
_UNSURE = (
    "Chrome-tanned leather and anything with PVC in it can give off poisonous fumes under a laser: ask the supplier"
    " what it is, and do not cut what nobody can vouch for."
)
_DIE = "Press: hands clear before it closes, and use the two-hand control or guard the machine has."
_PAPER = "Paper: print at 100 %, not fitted to the page, and measure the check bars both ways before you cut by it."
_BLADE = "Blade: cut away from your hand, with a sharp blade along a metal rule."
_ALWAYS = "Follow the machine's manual and the rules of your place; leave machines to people trained on them."
_SCRAP = "Cut one wallet in scrap of the same thickness before you cut good leather."


def cautions(request: DraftRequest, leathers: tuple[Leather, ...]) -> list[str]:
    """A few short cautions for what the files are made for and the leathers they are cut from."""
    lines = []
    if request.wants(Wanted.LASER):
        lines.append(_LASER)
        if any(leather.tannage is not Tannage.VEGETABLE for leather in leathers):
            lines.append(_UNSURE)
    if request.wants(Wanted.DIE):
        lines.append(_DIE)
    if request.wants(Wanted.PAPER):
        lines += [_PAPER, _BLADE]
    return [*lines, _ALWAYS, _SCRAP]
