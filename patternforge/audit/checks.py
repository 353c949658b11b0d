"""All checks of a cutting file, in the order in which they are told."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from patternforge.audit.flaws import Flaw, Limits
from patternforge.audit.model import CutFile
from patternforge.audit.rules.bits import bit_flaws, tiny_flaws
from patternforge.audit.rules.contours import loose_flaws, open_flaws, pieced_flaws
from patternforge.audit.rules.crossings import crossing_flaws
from patternforge.audit.rules.doubles import double_flaws
from patternforge.audit.rules.kinds import kind_flaws, sight_flaws, zero_flaws
from patternforge.audit.rules.limits import limit_flaws
from patternforge.audit.rules.looks import layer_flaws, line_flaws
from patternforge.audit.rules.order import order_flaws, stray_flaws
from patternforge.audit.rules.places import page_flaws, place_flaws
from patternforge.audit.rules.ribbons import ribbon_flaws
from patternforge.audit.rules.sizes import size_flaws, unit_flaws
from patternforge.audit.scene import Scene, scene

__all__ = ["CHECKS", "Check", "Checked", "checked"]

Rule = Callable[[Scene], Iterator[Flaw]]


@dataclass(frozen=True, slots=True)
class Check:
    """A question and the rule that answers it; ``good`` is what is true when the rule finds nothing."""

    good: str
    rule: Rule


@dataclass(frozen=True, slots=True)
class Checked:
    """A check and the flaws it found."""

    good: str
    flaws: tuple[Flaw, ...]


CHECKS = (
    Check("the file says its unit, and it is mm, or its release knows none", unit_flaws),
    Check("the size over all is one for leather goods", size_flaws),
    Check("every contour is closed", open_flaws),
    Check("no line is left over outside the outlines", loose_flaws),
    Check("every contour is one line", pieced_flaws),
    Check("nothing is drawn twice", double_flaws),
    Check("no line was turned into its own outline", ribbon_flaws),
    Check("no cut crosses another or itself", crossing_flaws),
    Check("no line is without length", zero_flaws),
    Check("no line is shorter than 0.05 mm", tiny_flaws),
    Check("no arc is broken into straight bits", bit_flaws),
    Check("there are only lines, arcs and circles, flat and plainly scaled", kind_flaws),
    Check("nothing is hidden or clipped", sight_flaws),
    Check("layers have names and one colour each", layer_flaws),
    Check("lines are thin and unbroken, and nothing is filled", line_flaws),
    Check("what lies inside a piece comes before its outline", order_flaws),
    Check("every hole lies in a piece", stray_flaws),
    Check("the drawing begins near the origin", place_flaws),
    Check("everything lies on the page", page_flaws),
)


def checked(file: CutFile, limits: Limits | None = None) -> tuple[Checked, ...]:
    """What every check found in ``file``; that of the sizes of ``limits`` last, if there are any."""
    laid_out = scene(file)
    found = [Checked(check.good, tuple(check.rule(laid_out))) for check in CHECKS]
    if limits is not None and limits != Limits():
        found.append(Checked("nothing is below the limits", tuple(limit_flaws(laid_out, limits))))
    return tuple(found)
