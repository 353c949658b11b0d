"""What the page shows at one moment, and the board on which the newest of it is put up."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum
from threading import Condition

__all__ = ["Board", "Picture", "Shown", "Standing"]


class Standing(StrEnum):
    """How the design stands: by the worst of its findings, or as text that cannot be taken."""

    GOOD = "good"
    LOOK = "look"
    NO = "no"
    FAULT = "fault"


@dataclass(frozen=True, slots=True)
class Picture:
    """A picture and what it is of."""

    caption: str
    svg: bytes


@dataclass(frozen=True, slots=True)
class Shown:
    """One state of the page: what is said first, the pictures, and the report that stands under them.

    Of a design that cannot be taken the pictures are those drafted last.
    """

    title: str
    standing: Standing
    lines: tuple[str, ...]
    pictures: tuple[Picture, ...] = ()
    report: tuple[str, ...] = ()


@dataclass(slots=True)
class Board:
    """The newest state and its number, counted from 1; shared by the thread that drafts and those that serve."""

    _shown: Shown
    _number: int = 1
    _changed: Condition = field(default_factory=Condition)

    @property
    def newest(self) -> tuple[int, Shown]:
        """The number of the newest state, and the state."""
        with self._changed:
            return self._number, self._shown

    def put(self, shown: Shown) -> None:
        """Puts up a newer state, and wakes all that wait for one."""
        with self._changed:
            self._shown, self._number = shown, self._number + 1
            self._changed.notify_all()

    def newer_than(self, number: int, seconds: float) -> int | None:
        """The number of the newest state as soon as it is above ``number``; None when that takes longer.

        >>> Board(Shown("Sleeve", Standing.GOOD, ())).newer_than(0, 1.0)
        1
        """
        with self._changed:
            self._changed.wait_for(lambda: self._number > number, seconds)
            return self._number if self._number > number else None
