"""A gusset across its seams: how wide its strip is laid flat, and where it is folded.

Two sections. A *channel* is a web between two flanges, each bent by 90 degrees and sewn flat against a wall. A
*bellows* is a row of leaves bent back and forth by 180 degrees; its first and last leaf are sewn to the walls. The
edges of both lie flush with the walls', and every bend is as sharp as the leather can take, for nothing lies in it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import pi

from patternforge.errors import DraftError
from patternforge.leather.fold import arc_length, inside_radius
from patternforge.leather.material import Leather
from patternforge.wallet.pattern import Sum, Term

__all__ = ["Profile", "bellows", "bend_reach", "channel", "folded_height"]


@dataclass(frozen=True, slots=True)
class Profile:
    """A strip across its seams: its flat width with its terms, and the tangents of each bend, mm from one edge."""

    width: Sum
    folds: tuple[tuple[float, float], ...]


def bend_reach(leather: Leather) -> float:
    """From a bend's tangent to its outside, mm: inside radius and thickness."""
    return _radius(leather) + leather.t


def folded_height(leather: Leather, pleats: int) -> float:
    """How high the leaves of ``pleats`` pleats lie over each other folded, mm: each bend stands 2 (r + t) high.

    >>> from patternforge.leather.material import Thickness
    >>> folded_height(Leather("thin", Thickness(0.5, 0.5), min_radius=0.5), pleats=2)
    3.0
    """
    return pleats * 2 * bend_reach(leather)


def channel(leather: Leather, depth: float, flanges: tuple[float, float]) -> Profile:
    """The section of a U: ``depth`` between the outsides of its flanges, each ``flange`` to the outside of the web.

    Flat: flange - (r + t), a bend of 90 degrees, depth - 2 (r + t), a bend, flange - (r + t). DraftError when the
    bends leave nothing flat of a flange or of the web.
    Source of the sum: flats and bend allowance of a U-channel in the FAA airframe handbook, vol. 1, ch. 4.

    >>> from patternforge.leather.material import Thickness
    >>> thin = Leather("thin", Thickness(0.8, 0.8), neutral=0.5, min_radius=0.5)
    >>> round(channel(thin, 20.0, (8.0, 8.0)).width.value, 4)
    33.7133
    """
    reach, bend = bend_reach(leather), arc_length(pi / 2, _radius(leather), leather.t, leather.neutral)
    flats = (flanges[0] - reach, depth - 2 * reach, flanges[1] - reach)
    if flats[1] <= 0:
        raise DraftError(f"a depth of {depth:.2f} mm is all bends in this leather: give more than {2 * reach:.2f} mm")
    if min(flats) <= 0:
        raise DraftError(
            f"a flange of {min(flanges):.2f} mm is all bend in this leather: give more than {reach:.2f} mm"
        )
    return _laid_flat(("outer flange", "web", "inner flange"), flats, bend)


def bellows(leather: Leather, leaf: float, pleats: int) -> Profile:
    """The section of ``pleats`` pleats, 2 leaves each, ``leaf`` mm from the walls' edges to the tangent of a fold in.

    Where two pleats meet, the leaves end r + t sooner, so that the fold between them does not stand out beyond the
    walls' edges. Every bend takes 180 degrees. DraftError when that leaves nothing of a leaf.

    >>> from patternforge.leather.material import Thickness
    >>> thin = Leather("thin", Thickness(0.8, 0.8), neutral=0.5, min_radius=0.5)
    >>> round(bellows(thin, 12.0, 1).width.value, 4), bellows(thin, 12.0, 1).folds[0][0]
    (26.5133, 12.0)
    """
    reach, bend = bend_reach(leather), arc_length(pi, _radius(leather), leather.t, leather.neutral)
    if leaf <= reach:
        raise DraftError(f"a leaf of {leaf:.2f} mm is all bend in this leather: give more than {reach:.2f} mm")
    flats = (leaf, *[leaf - reach] * (2 * pleats - 2), leaf)
    return _laid_flat([f"leaf {i}" for i in range(1, 2 * pleats + 1)], flats, bend)


def _radius(leather: Leather) -> float:
    return inside_radius(0.0, leather.t, leather.min_radius)


def _laid_flat(names: Sequence[str], flats: tuple[float, ...], bend: float) -> Profile:
    terms: list[Term] = []
    folds: list[tuple[float, float]] = []
    y = 0.0
    for name, flat in zip(names, flats, strict=True):
        if terms:
            folds.append((y, y + bend))
            terms.append(Term(f"bend {len(folds)}", bend))
            y += bend
        terms.append(Term(name, flat))
        y += flat
    return Profile(Sum("width of the strip", tuple(terms)), tuple(folds))
