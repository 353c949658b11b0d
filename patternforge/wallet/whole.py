"""Whole stitches: nominal sizes that carry a mouth move so that the mouth lies midway between two holes."""

from __future__ import annotations

from dataclasses import dataclass

from patternforge.wallet.body import Body
from patternforge.wallet.parts import kind_of
from patternforge.wallet.parts.kind import Runs
from patternforge.wallet.pattern import Adjustment
from patternforge.wallet.spec import Design, Part

__all__ = ["Fitted", "fitted_to_stitches"]


@dataclass(frozen=True, slots=True)
class Fitted:
    """A part with its sizes moved to whole stitches, the spacing its seams follow, and what moved."""

    part: Part
    spacing: float
    adjustments: tuple[Adjustment, ...]


def fitted_to_stitches(design: Design, body: Body, runs: Runs, part: Part) -> Fitted:
    """The part drafted to whole stitches of the seam its mouths meet; sizes named in ``exact`` stay."""
    fitted, spacing = kind_of(part).whole(design, body, runs, part)
    return Fitted(fitted, spacing, _moved(part, fitted))


def _moved(asked: Part, drafted: Part) -> tuple[Adjustment, ...]:
    """What moved, size by size; the fall of a slanted mouth among them."""
    before, after = kind_of(asked).nominal(asked), kind_of(drafted).nominal(drafted)
    return tuple(
        Adjustment(asked.name, size, before[size], after[size], "to whole stitches")
        for size in before
        if abs(before[size] - after[size]) > 1e-9
    )
