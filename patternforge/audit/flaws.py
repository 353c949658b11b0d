"""What an audit finds: what is wrong, where, on what, and what to do."""

from __future__ import annotations

from dataclasses import dataclass

from patternforge.fit.findings import Verdict
from patternforge.geometry.point import Point

__all__ = ["Flaw", "Limits", "worst_of"]

_RANK = {Verdict.GOOD: 0, Verdict.LOOK: 1, Verdict.NO: 2}


@dataclass(frozen=True, slots=True)
class Flaw:
    """One thing that is not as it should be in a cutting file.

    ``verdict``: ``no`` spoils leather or is refused by many machines, ``look`` may do so. ``kind`` is the same for
    all flaws of a kind, ``what`` tells this one with its measures. ``at`` is its place in mm, None for the file as a
    whole; ``on`` names what is drawn there.
    """

    verdict: Verdict
    kind: str
    what: str
    remedy: str
    at: Point | None = None
    on: str = ""


@dataclass(frozen=True, slots=True)
class Limits:
    """The smallest that can be cut, mm; 0 sets no limit.

    ``hole``: a hole across; ``gap``: what is left between two cuts; ``radius``: that of an arc; ``slot``: the
    narrowest part of an opening, or of a notch in an outline.
    """

    hole: float = 0.0
    gap: float = 0.0
    radius: float = 0.0
    slot: float = 0.0


def worst_of(flaws: tuple[Flaw, ...]) -> Verdict:
    """The worst verdict of all; good when there are no flaws."""
    return max((flaw.verdict for flaw in flaws), key=lambda verdict: _RANK[verdict], default=Verdict.GOOD)
