"""Findings looked up by what they say, and pieces tampered with so that only fit can notice."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import Any

from patternforge.fit.findings import Finding, Verdict, at_least
from patternforge.fit.judge import fit
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Hole, Pattern
from patternforge.wallet.spec import CornerStyle, Design, Part
from tests.unit.wallet.built import RIM, wallet

__all__ = [
    "GOOD",
    "LOOK",
    "NO",
    "SHARP",
    "finding",
    "findings",
    "reading",
    "small",
    "with_holes",
    "with_limits",
    "with_stitching",
]

GOOD, LOOK, NO = Verdict.GOOD, Verdict.LOOK, Verdict.NO
SHARP = replace(RIM, end=4.0, corners=CornerStyle.SHARP)


def small(*parts: Part, **changes: Any) -> Pattern:
    """A small wallet of these parts sewn round three sides with a hole every 4 mm, drafted."""
    return drafted(wallet(*parts, **{"seams": (SHARP,), **changes}))


def findings(pattern: Pattern, what: str, where: str = "") -> list[Finding]:
    return [found for found in fit(pattern) if found.what == what and where in found.where]


def finding(pattern: Pattern, what: str, where: str = "") -> Finding:
    """The only finding of that kind at places that bear these words."""
    (found,) = findings(pattern, what, where)
    return found


def reading(verdict: Verdict, what: str = "what", where: str = "where", remedy: str = "") -> Finding:
    """A finding of that verdict: to be 1.5 mm or more, and no less than 1 mm."""
    measured = {Verdict.GOOD: 2.0, Verdict.LOOK: 1.2, Verdict.NO: 0.4}[verdict]
    return Finding(what, where, measured, at_least(1.5, 1.0), remedy)


def with_limits(pattern: Pattern, **limits: float) -> Pattern:
    design: Design = pattern.design
    return replace(pattern, design=replace(design, limits=replace(design.limits, **limits)))


def with_stitching(pattern: Pattern, **changes: Any) -> Pattern:
    """The same holes under another pitch or another kind of hole."""
    seams = tuple(replace(seam, stitching=replace(seam.stitching, **changes)) for seam in pattern.seams)
    return replace(pattern, seams=seams)


def with_holes(pattern: Pattern, name: str, change: Callable[[Sequence[Hole]], Sequence[Hole]]) -> Pattern:
    """The pattern with the holes of one piece changed."""
    pieces = tuple(
        replace(piece, holes=tuple(change(piece.holes))) if piece.name == name else piece for piece in pattern.pieces
    )
    return replace(pattern, pieces=pieces)
