"""Where areas of the plane, each with a weight, weigh most together."""

from __future__ import annotations

from collections.abc import Sequence

from patternforge.geometry.regions import Region, patches

__all__ = ["heaviest"]


def heaviest(areas: Sequence[Region], weights: Sequence[float], narrowest: float) -> frozenset[int]:
    """The areas, by number, that lie over one another where they weigh most; none where there is no area.

    Places less than ``narrowest`` mm wide are left out.

    >>> from patternforge.geometry.corners import rounded_rectangle
    >>> from patternforge.geometry.regions import region
    >>> left, right = region(rounded_rectangle(0, 0, 4, 4, 0)), region(rounded_rectangle(3, 0, 9, 4, 0))
    >>> sorted(heaviest([left, right], [1.2, 0.8], 0.5)), sorted(heaviest([left, right], [1.2, 0.8], 2.0))
    ([0, 1], [0])
    """
    wide = [patch.covers for patch in patches(areas) if not patch.region.shrunk(narrowest / 2).is_empty]
    return max(wide, key=lambda covers: sum(weights[i] for i in sorted(covers)), default=frozenset())
