"""Leather as it is measured: thickness with its spread, where it bends, which face shows."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

__all__ = ["Leather", "MadeOf", "Stretch", "SurfaceFace", "Tannage", "Thickness"]


class MadeOf(StrEnum):
    """What a sheet is; only leather has a grain and a flesh side."""

    LEATHER = "leather"
    FILM = "film"
    CLOTH = "cloth"
    ELASTIC = "elastic"
    STIFFENER = "stiffener"


class SurfaceFace(StrEnum):
    GRAIN = "grain"
    FLESH = "flesh"


class Tannage(StrEnum):
    VEGETABLE = "vegetable"
    CHROME = "chrome"
    COMBINATION = "combination"
    UNKNOWN = "unknown"


class Stretch(StrEnum):
    """The loose way of the hide on the piece as drawn upright."""

    ACROSS = "across"
    ALONG = "along"
    UNKNOWN = "unknown"


@dataclass(frozen=True, slots=True)
class Thickness:
    """A measured thickness in mm: one value (``low == high``) or a range as sold.

    >>> Thickness(1.2, 1.6).drafted
    1.4
    """

    low: float
    high: float

    @property
    def drafted(self) -> float:
        """The middle of the range: the thickness that is drafted for, mm."""
        return (self.low + self.high) / 2


@dataclass(frozen=True, slots=True)
class Leather:
    """One leather of a design, or what stands in for one, known by its role (outer, inner, lining, film ...).

    ``tolerance`` is +/- mm round the thickness; ``neutral`` is the distance of the unstretched fibre from the
    inside of a bend in thicknesses (0 to 1); ``min_radius`` the smallest inside radius in thicknesses.
    ``price`` is per ``price_area`` (``ft2``, ``dm2`` or ``m2``) or None.
    """

    role: str
    thickness: Thickness
    name: str = ""
    tolerance: float = 0.0
    neutral: float = 0.5
    min_radius: float = 0.5
    tannage: Tannage = Tannage.UNKNOWN
    face: SurfaceFace = SurfaceFace.GRAIN
    stretch: Stretch = Stretch.UNKNOWN
    price: float | None = None
    price_area: str = "ft2"
    made_of: MadeOf = MadeOf.LEATHER

    @property
    def t(self) -> float:
        """Thickness drafted for, mm."""
        return self.thickness.drafted
