"""What to mind before cutting, for the way it is cut."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from patternforge.drafting.cautions import ALWAYS, BLADE, DIE, KNIFE, LASER, PAPER, SCRAP, UNSURE, is_unsure
from patternforge.leather.material import Leather
from patternforge.pipeline.request import DraftRequest, Wanted

__all__ = ["AUDIT_CAUTIONS", "cautions"]

_SAID: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {"laser": (LASER,), "knife": (KNIFE,), "die": (DIE,), "hand": (BLADE,)}
)

AUDIT_CAUTIONS = (
    "An audit proves the file and not the fit: compare the size over all with what your machine shows.",
    f"{SCRAP} {ALWAYS}",
)


def cautions(request: DraftRequest, leathers: tuple[Leather, ...]) -> list[str]:
    """A few short cautions for what cuts, what is printed, and the leathers; those of a machine table come first."""
    own = list(request.machine.cautions) if request.machine else []
    lines = [line for tool in _tools(request) for line in _SAID[tool]]
    if LASER in lines and any(is_unsure(leather) for leather in leathers):
        lines.insert(lines.index(LASER) + 1, UNSURE)
    if request.wants(Wanted.PAPER):
        lines.append(PAPER)
    if request.wants(Wanted.PAPER) and BLADE not in lines:
        lines.append(BLADE)
    return [*own, *lines, ALWAYS, SCRAP]


def _tools(request: DraftRequest) -> list[str]:
    """What cuts by the files, by the words of machine tables; a machine cuts in the place of a laser or a die."""
    tools = {Wanted.LASER: "laser", Wanted.DIE: "die"}
    if request.machine:
        from patternforge.pipeline.cutter import cut_for

        tools[cut_for(request.machine)] = request.machine.tool.value
    return list(dict.fromkeys(tool for wanted, tool in tools.items() if request.wants(wanted)))
