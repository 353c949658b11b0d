"""A maker's prices as plain values."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["LeatherPrice", "PriceList", "Work"]


@dataclass(frozen=True, slots=True)
class LeatherPrice:
    """``price`` of one ``per`` (``ft2``, ``dm2`` or ``m2``) of a leather; per cent of ``waste`` on its net area."""

    role: str
    price: float
    per: str
    waste: float | None = None


@dataclass(frozen=True, slots=True)
class Work:
    """Minutes that a kind of work takes for one wallet."""

    name: str
    minutes: float


@dataclass(frozen=True, slots=True)
class PriceList:
    """Prices in one currency: leathers by role, thread by the metre, hardware by name or kind, work by the hour.

    None stands for what has no price.
    """

    title: str
    currency: str
    leathers: tuple[LeatherPrice, ...] = ()
    thread: float | None = None
    hardware: tuple[tuple[str, float], ...] = ()
    rate: float | None = None
    work: tuple[Work, ...] = ()

    def leather(self, role: str) -> LeatherPrice | None:
        """What is said of the leather of that role."""
        return next((each for each in self.leathers if each.role == role), None)

    def of_hardware(self, name: str, kind: str) -> float | None:
        """The price of one set: by the name a design gives it, else by its kind."""
        known = dict(self.hardware)
        return known.get(name, known.get(kind))
