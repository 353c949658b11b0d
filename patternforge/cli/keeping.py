"""What is said of pieces that are kept for other leather than they were drafted for."""

from __future__ import annotations

from collections.abc import Iterable
from textwrap import wrap

from patternforge.cli.compared import change_lines
from patternforge.cli.lines import WIDTH
from patternforge.leather.material import Leather
from patternforge.pipeline.keep import Kept
from patternforge.units import mm

__all__ = ["keeping_report"]


def keeping_report(kept: Kept) -> list[str]:
    """Which pieces are kept and for what they were drafted, and what would change if they were drafted anew."""
    pattern = kept.wallet.pattern
    names = ", ".join(piece.name for piece in pattern.pieces)
    lines = [
        f"Kept from {kept.file}, drafted for {_told(pattern.design.leathers)}: {names}. None is drafted anew.",
        f"Judged in {_told(kept.wallet.as_cut.design.leathers)}. Their labels go on saying what they were"
        " drafted for.",
    ]
    return [row for line in lines for row in wrap(line, WIDTH)] + ["", *_anew(kept)]


def _anew(kept: Kept) -> list[str]:
    if kept.anew is None:
        return ["It cannot be drafted anew for that leather as the design stands."]
    return ["Drafted anew for that leather instead:", *(f"  {line}" for line in change_lines(kept.anew))]


def _told(leathers: Iterable[Leather]) -> str:
    return ", ".join(f"{leather.role} {mm(leather.t)} mm" for leather in leathers)
