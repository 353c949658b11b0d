"""The thicknesses of each leather for which pieces that are cut already still make the wallet.

The pieces stay as they are; one leather at a time is taken thinner and thicker, the others as drafted, and the wallet
is closed anew by ``fit_as_cut``. A window is the connected stretch of thicknesses round the drafted one.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace

from patternforge.fit.findings import Finding, Verdict, is_worse
from patternforge.fit.judge import fit_as_cut
from patternforge.leather.material import Leather, Thickness
from patternforge.wallet.pattern import Pattern

__all__ = ["THICKEST", "THINNEST", "ThicknessWindow", "thickness_windows"]

THINNEST, THICKEST = 0.2, 6.0  # mm: no leather of a wallet is looked for beyond, unless it is drafted so
_STEP = 10  # hundredths of a mm from look to look; a narrower stretch that does not serve may be stepped over

Range = tuple[float, float]
Ends = tuple[Finding | None, Finding | None]
_Place = tuple[str, str]  # what a finding measures, and where
_Found = Mapping[_Place, Finding]
_Spoilt = Callable[[_Found], Finding | None]


@dataclass(frozen=True, slots=True)
class ThicknessWindow:
    """From which to which thickness (mm) of one leather the pieces serve, all other leathers as drafted.

    ``holds``: nothing reads ``no``; None if something does already as drafted. ``good``: nothing that a change of
    this leather can mend or spoil reads worse than ``good``; None if such a finding is there as drafted. Beside
    either range stands what ends it, as found a hundredth of a millimetre below its low end and above its high end;
    None where the search ended. Both ends of a range that is None name what spoils it as drafted.
    """

    role: str
    drafted: float
    good: Range | None
    holds: Range | None
    good_ends: Ends = (None, None)
    holds_ends: Ends = (None, None)


def thickness_windows(pattern: Pattern) -> tuple[ThicknessWindow, ...]:
    """The window of every leather of the design, in its order, each within 0.2 to 6 mm.

    Ends are told to a hundredth of a millimetre, on the side that still serves. Verdicts are not taken to grow worse
    steadily: they are looked at every 0.1 mm from the drafted thickness on, and only between the last look that
    serves and the first that does not is the end found by halving.
    """
    return tuple(_window(pattern, leather) for leather in pattern.design.leathers)


def _window(pattern: Pattern, leather: Leather) -> ThicknessWindow:
    looks = _Looks(pattern, leather, {})
    holds, holds_ends = _range(looks, _unfit)
    if holds is None:
        return ThicknessWindow(leather.role, leather.t, None, None, holds_ends, holds_ends)
    fixed = looks.always_wanting()
    good, good_ends = _range(looks, lambda found: _wanting(found, fixed))
    return ThicknessWindow(leather.role, leather.t, good, holds, good_ends, holds_ends)


@dataclass(frozen=True, slots=True)
class _Looks:
    """What was found on the pieces at each thickness (mm) of one leather that was looked at so far."""

    pattern: Pattern
    leather: Leather
    seen: dict[float, _Found]

    def at(self, t: float) -> _Found:
        """The worst finding of every kind and place with this leather ``t`` mm thick."""
        if t not in self.seen:
            taken = {leather.role: leather for leather in self.pattern.design.leathers}
            taken[self.leather.role] = replace(self.leather, thickness=Thickness(t, t))
            self.seen[t] = _by_place(fit_as_cut(self.pattern, taken))
        return self.seen[t]

    def always_wanting(self) -> frozenset[_Place]:
        """What read worse than ``good`` at every look so far, so that this leather has no say in it."""
        wanting = (
            {place for place, f in found.items() if f.verdict is not Verdict.GOOD} for found in self.seen.values()
        )
        return frozenset(set.intersection(*wanting)) if self.seen else frozenset()


def _range(looks: _Looks, spoilt: _Spoilt) -> tuple[Range | None, Ends]:
    """The thicknesses round the drafted one at which nothing is ``spoilt``, and what ends them."""
    drafted = looks.leather.t
    spoils = spoilt(looks.at(drafted))
    if spoils:
        return None, (spoils, spoils)
    (low, below), (high, above) = (_end(looks, spoilt, way(drafted)) for way in (_thinner, _thicker))
    return (low, high), (below, above)


def _end(looks: _Looks, spoilt: _Spoilt, thicknesses: Iterator[float]) -> tuple[float, Finding | None]:
    """The last thickness that serves on the way through ``thicknesses``, and what is spoilt beyond."""
    serves = looks.leather.t
    for t in thicknesses:
        if spoilt(looks.at(t)):
            return _halved(looks, spoilt, serves, t)
        serves = t
    return serves, None


def _halved(looks: _Looks, spoilt: _Spoilt, serves: float, spoils: float) -> tuple[float, Finding | None]:
    """The end between a thickness that serves and one that does not, both known, to the hundredth of a mm."""
    while min(serves, spoils) < (middle := _hundredth((serves + spoils) / 2)) < max(serves, spoils):
        if spoilt(looks.at(middle)):
            spoils = middle
        else:
            serves = middle
    return serves, spoilt(looks.at(spoils))


def _thinner(drafted: float) -> Iterator[float]:
    """Thicknesses from the drafted one down to the thinnest, in steps of whole hundredths, mm."""
    first, last = math.ceil(round(drafted * 100, 6)), round(THINNEST * 100)
    if first > last:
        yield from (n / 100 for n in (*range(first - _STEP, last, -_STEP), last))


def _thicker(drafted: float) -> Iterator[float]:
    """Thicknesses from the drafted one up to the thickest, in steps of whole hundredths, mm."""
    first, last = math.floor(round(drafted * 100, 6)), round(THICKEST * 100)
    if first < last:
        yield from (n / 100 for n in (*range(first + _STEP, last, _STEP), last))


def _hundredth(t: float) -> float:
    return round(t * 100) / 100


def _by_place(findings: tuple[Finding, ...]) -> _Found:
    worst: dict[_Place, Finding] = {}
    for found in findings:
        known = worst.get((found.what, found.where))
        if known is None or is_worse(found.verdict, than=known.verdict):
            worst[found.what, found.where] = found
    return worst


def _unfit(found: _Found) -> Finding | None:
    """The first finding that reads ``no``."""
    return next((f for f in found.values() if f.verdict is Verdict.NO), None)


def _wanting(found: _Found, fixed: frozenset[_Place]) -> Finding | None:
    """The first finding that reads worse than ``good`` and is not among the ``fixed``."""
    return next((f for place, f in found.items() if f.verdict is not Verdict.GOOD and place not in fixed), None)
