"""The kerf comb: slots of graded width and a tongue, cut without making up for the kerf, which then tell it.

A beam of width k takes k/2 to either side of the line it follows. A slot drawn w wide becomes w + k wide, a tongue
drawn t wide becomes t - k. The tongue goes in where w + k >= t - k, that is where k >= (t - w) / 2. Each slot stands
for the kerf (t - w) / 2 from which on it takes the tongue; the narrowest that does and the next bound the kerf.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from patternforge.drawing.model import Align, Figure, Ink, Role, Stroke, Text
from patternforge.errors import DraftError
from patternforge.geometry.path import Path, polygon
from patternforge.geometry.point import Point

__all__ = ["KerfComb", "comb_figures", "printed_figures", "reading_figure"]

_DEEP = 12.0  # of a slot, mm
_TOOTH = 4.0  # between two slots, mm
_BACK = 10.0  # behind the slots, mm
_LONG = 40.0  # of the tongue, mm
_LETTERS = 2.2  # mm
_ROW = 4.2  # base line to base line of the reading sheet, mm
_NOTES = 2.4  # height of its letters, mm
_SHEET = 170.0  # its width, mm


@dataclass(frozen=True, slots=True)
class KerfComb:
    """A comb whose slots stand for kerfs ``step`` mm apart (0.02 to 0.2), from none up.

    DraftError outside that range, naming it.

    >>> comb = KerfComb()
    >>> [round(kerf, 2) for kerf in comb.kerfs[:3]], round(comb.width(3), 2)
    ([0.0, 0.05, 0.1], 7.8)
    """

    step: float = 0.05
    tongue: float = 8.0
    slots: int = 13

    def __post_init__(self) -> None:
        if not 0.02 <= self.step <= 0.2:
            raise DraftError(f"the slots stand for kerfs {self.step:g} mm apart; lawful is 0.02 to 0.2 mm")

    @property
    def kerfs(self) -> tuple[float, ...]:
        """The kerf from which on each slot takes the tongue, mm."""
        return tuple(i * self.step for i in range(self.slots))

    def width(self, slot: int) -> float:
        """The width that a slot is drawn with, mm; slots are counted from 1."""
        return self.tongue - 2 * self.kerfs[slot - 1]

    def kerf(self, slot: int) -> tuple[float, float]:
        """The least and the greatest kerf, mm, when ``slot`` is the last that takes the tongue.

        The last slot of all leaves the greatest open; the comb is then too fine. DraftError for it and for a slot
        that the comb has not.

        >>> low, high = KerfComb().kerf(4)
        >>> round(low, 3), round(high, 3)
        (0.15, 0.2)
        """
        if not 1 <= slot <= self.slots:
            raise DraftError(f"the comb has slots 1 to {self.slots}, and no slot {slot}")
        if slot == self.slots:
            raise DraftError("even the narrowest slot takes the tongue: cut a comb with a greater --step")
        return self.kerfs[slot - 1], self.kerfs[slot]

    def kerf_by_width(self, measured: float) -> float:
        """The kerf, mm, when the tongue measures so much: it was drawn ``tongue`` wide and lost the kerf.

        DraftError for a tongue wider than drawn or narrower by more than 2 mm.

        >>> round(KerfComb().kerf_by_width(7.82), 6)
        0.18
        """
        if not 0 <= self.tongue - measured <= 2:
            raise DraftError(f"a tongue of {measured:g} mm cannot be: it was drawn {self.tongue:g} mm wide")
        return self.tongue - measured


def comb_figures(comb: KerfComb) -> tuple[Figure, Figure]:
    """Comb and tongue as they are cut: the kerf each slot stands for as strokes of role mark, then the outline."""
    from patternforge.drawing.lettering import letter_strokes

    strokes: list[Ink] = [stroke for text in _numbers(comb, Role.MARK) for stroke in letter_strokes(text)]
    return Figure("comb", "comb", (*strokes, Stroke(Role.OUTLINE, _outline(comb)))), _tongue(comb)


def printed_figures(comb: KerfComb) -> tuple[Figure, Figure]:
    """Comb and tongue for paper, what the slots stand for as words."""
    return Figure("comb", "comb", (*_numbers(comb, Role.LABEL), Stroke(Role.OUTLINE, _outline(comb)))), _tongue(comb)


def _numbers(comb: KerfComb, role: Role) -> tuple[Text, ...]:
    """The kerf each slot stands for, below the slot."""
    y = _BACK - 2 * _LETTERS
    return tuple(
        Text(role, Point(x + comb.width(slot) / 2, y), _LETTERS, f"{kerf:.2f}", 0.0, Align.CENTRE)
        for slot, x, kerf in _slots(comb)
    )


def _tongue(comb: KerfComb) -> Figure:
    edge = polygon([Point(0, 0), Point(comb.tongue, 0), Point(comb.tongue, _LONG), Point(0, _LONG)])
    return Figure("tongue", "comb", (Stroke(Role.OUTLINE, edge),))


def reading_figure(comb: KerfComb) -> Figure:
    """What each slot stands for and how the comb is read, as words for paper."""
    lines = [
        f"Push the tongue into the slots from the left, without force. Slot 1 is drawn {comb.tongue:g} mm wide.",
        "Count the last slot that takes it: the kerf lies between its number and the next.",
        f"Or measure the tongue across: kerf = {comb.tongue:g} mm less what it measures.",
        *(
            f"last slot {i}: kerf {low:.2f} to {high:.2f} mm, take {(low + high) / 2:.3f}"
            for i, low, high in _rows(comb)
        ),
        f"last slot {comb.slots}: the kerf is greater than {comb.kerfs[-1]:.2f} mm; cut a comb with a greater step",
    ]
    height = (len(lines) + 1) * _ROW
    frame = polygon([Point(0, 0), Point(_SHEET, 0), Point(_SHEET, height), Point(0, height)])
    places = (Point(3.0, height - row * _ROW - 1.0) for row in range(1, len(lines) + 1))
    words = tuple(Text(Role.LABEL, at, _NOTES, line) for at, line in zip(places, lines, strict=True))
    return Figure("reading", "comb", (Stroke(Role.GUIDE, frame), *words))


def _rows(comb: KerfComb) -> Iterator[tuple[int, float, float]]:
    for slot in range(1, comb.slots):
        yield slot, *comb.kerf(slot)


def _slots(comb: KerfComb) -> Iterator[tuple[int, float, float]]:
    """Number of each slot, where it begins from the left, and the kerf it stands for, mm."""
    x = _TOOTH
    for slot, kerf in enumerate(comb.kerfs, start=1):
        yield slot, x, kerf
        x += comb.width(slot) + _TOOTH


def _outline(comb: KerfComb) -> Path:
    """A plate with the slots in its upper edge, sharp at every corner, counter-clockwise."""
    *_, (last, x, _) = _slots(comb)
    right, top = x + comb.width(last) + _TOOTH, _BACK + _DEEP
    points = [Point(0, 0), Point(right, 0), Point(right, top)]
    for slot, start, _ in reversed(list(_slots(comb))):
        end = start + comb.width(slot)
        points += [Point(end, top), Point(end, _BACK), Point(start, _BACK), Point(start, top)]
    return polygon([*points, Point(0, top)])
