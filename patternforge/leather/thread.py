"""How much thread a seam takes."""

from __future__ import annotations

from collections.abc import Sequence
from math import fsum

from patternforge.errors import DraftError

__all__ = ["thread_length"]


def thread_length(spacings: Sequence[float], stacks: Sequence[float], tails: float) -> float:
    """Thread for a two-needle saddle stitch, mm: 2 * (all spacings + all stacks) + tails.

    Both needles pass every hole and lie along every stitch, one on either face. ``spacings``: hole to hole, mm
    (above 0). ``stacks``: thickness sewn through at each hole, mm (0 or more): as many as spacings, or one more for
    a run with two ends. ``tails``: for both ends of the thread together, mm (0 or more). DraftError otherwise.

    >>> thread_length([3.0, 3.0], [2.0, 2.0, 2.5], tails=150.0)
    175.0
    """
    if len(stacks) - len(spacings) not in (0, 1):
        raise DraftError(
            f"{len(spacings)} stitches pass {len(spacings)} holes (closed) or {len(spacings) + 1}, not {len(stacks)}"
        )
    if not all(spacing > 0 for spacing in spacings):
        raise DraftError("a stitch needs a length greater than 0 mm")
    if not all(size >= 0 for size in (*stacks, tails)):
        raise DraftError("stacks at the holes and thread tails must be 0 mm or more")
    return 2 * (fsum(spacings) + fsum(stacks)) + tails
