"""What to mind before cutting, for the way it is cut."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from patternforge.drafting.dangers import ALWAYS as _ALWAYS
from patternforge.drafting.dangers import PRESS as _DIE
from patternforge.leather.material import Leather, Tannage
from patternforge.pipeline.request import DraftRequest, Wanted

__all__ = ["AUDIT_CAUTIONS", "cautions"]

_LASER = (
    "Laser: leather smoulders and its smoke is harmful. Draw the fumes off, stay with the machine while it cuts, and"
    " keep the means to put out a fire at hand."
)
_UNSURE = (
    "Chrome-tanned leather and anything with PVC in it can give off poisonous fumes under a laser: ask the supplier"
    " what it is, and do not cut what nobody can vouch for."
)
_KNIFE = "Plotter: keep hands, hair and sleeves away from the blade and the carriage while they move."
_PAPER = "Paper: print at 100 %, not fitted to the page, and measure the check bars both ways before you cut by it."
_BLADE = "Blade: cut away from your hand, with a sharp blade along a metal rule."
_SCRAP = "Cut one wallet in scrap of the same thickness before you cut good leather."

_SAID: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {"laser": (_LASER,), "knife": (_KNIFE,), "die": (_DIE,), "hand": (_BLADE,)}
)

AUDIT_CAUTIONS = (
    "An audit proves the file and not the fit: compare the size over all with what your machine shows.",
    f"{_SCRAP} {_ALWAYS}",
)


def cautions(request: DraftRequest, leathers: tuple[Leather, ...]) -> list[str]:
    """A few short cautions for what cuts, what is printed, and the leathers; those of a machine table come first."""
    own = list(request.machine.cautions) if request.machine else []
    lines = [line for tool in _tools(request) for line in _SAID[tool]]
    if _LASER in lines and any(leather.tannage is not Tannage.VEGETABLE for leather in leathers):
        lines.insert(lines.index(_LASER) + 1, _UNSURE)
    if request.wants(Wanted.PAPER):
        lines.append(_PAPER)
    if request.wants(Wanted.PAPER) and _BLADE not in lines:
        lines.append(_BLADE)
    return [*own, *lines, _ALWAYS, _SCRAP]


def _tools(request: DraftRequest) -> list[str]:
    """What cuts by the files, by the words of machine tables; a machine cuts in the place of a laser or a die."""
    tools = {Wanted.LASER: "laser", Wanted.DIE: "die"}
    if request.machine:
        from patternforge.pipeline.cutter import cut_for

        tools[cut_for(request.machine)] = request.machine.tool.value
    return list(dict.fromkeys(tool for wanted, tool in tools.items() if request.wants(wanted)))
