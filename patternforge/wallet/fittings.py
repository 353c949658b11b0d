"""Hardware in two halves: where the second must sit so that both meet when the wallet is closed."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

from patternforge.errors import DraftError
from patternforge.geometry.path import Path, from_vertices
from patternforge.geometry.point import Point
from patternforge.leather.hardware import Setting
from patternforge.wallet.blank import Blank, PartBlanks, Seat
from patternforge.wallet.body import Body
from patternforge.wallet.closed import laid_over
from patternforge.wallet.marked import PlaceMark
from patternforge.wallet.spec import Design, Fitting, Side
from patternforge.wallet.spots import spot_point

__all__ = ["fitted_parts", "showing_at"]

_Place = tuple[str, int]
"""A piece: the part it belongs to, and its number among that part's pieces."""


def fitted_parts(design: Design, body: Body, parts: Sequence[PartBlanks]) -> list[PartBlanks]:
    """The parts with a hole punched for each half of every fitting, or its place marked where it is covered.

    DraftError when a half lies off its part, or the two can never meet.
    """
    made = dict(zip((part.name for part in design.parts), parts, strict=True))
    for fitting in design.fittings:
        set_in = {Setting.PUNCHED: _punched, Setting.COVERED: _covered}[fitting.setting]
        first = spot_point(body, fitting.spot)
        seat = Seat(fitting.name, 1, first, fitting.holes[0], fitting.reach)
        set_in(made, fitting, fitting.part, fitting.spot.panel, seat)
        if fitting.meets:
            second = _opposite(design, body, fitting, first)
            seat = Seat(fitting.name, 2, second, fitting.holes[1], fitting.reach)
            set_in(made, fitting, fitting.meets, fitting.meets_panel, seat)
    return list(made.values())


def showing_at(blanks: Sequence[Blank], panel: int, at: Point) -> int | None:
    """The number of the piece of a part that shows at a point of a panel, None if there is none.

    The one nearest to the eye; a clear sheet does not count.
    """
    here = [i for i, blank in enumerate(blanks) if not blank.lines and _stands_at(blank, panel, at)]
    if not here:
        return None
    return here[0] if blanks[here[0]].showing is Side.OUTSIDE else here[-1]


def _stands_at(blank: Blank, panel: int, at: Point) -> bool:
    return panel in blank.panels and blank.shape.path.contains(at)


def _opposite(design: Design, body: Body, fitting: Fitting, first: Point) -> Point:
    """The point of the second panel that comes to lie over the first when all folds are closed."""
    try:
        return laid_over(design, body, fitting.spot.panel, fitting.meets_panel, first)
    except DraftError as fault:
        raise DraftError(_named(fitting, str(fault))) from fault


def _punched(made: dict[str, PartBlanks], fitting: Fitting, part: str, panel: int, seat: Seat) -> None:
    """A half set in a hole of the outermost piece of its part that stands there."""
    blanks = made[part].blanks
    index = next((i for i, blank in enumerate(blanks) if _stands_at(blank, panel, seat.at)), None)
    if index is None:
        raise DraftError(_named(fitting, f"its place lies off '{part}'"))
    holes = (_round(seat.at, seat.diameter / 2),) if seat.diameter > 0 else ()
    _change(made, (part, index), lambda blank: replace(blank, openings=(*blank.openings, *holes)))
    _change(made, (part, index), lambda blank: replace(blank, seats=(*blank.seats, seat)))


def _covered(made: dict[str, PartBlanks], fitting: Fitting, part: str, panel: int, seat: Seat) -> None:
    """A half behind the piece of its part that shows there, its place marked on that piece and on its cover."""
    index = showing_at(made[part].blanks, panel, seat.at)
    if index is None:
        raise DraftError(_named(fitting, f"its place lies off '{part}'"))
    mark = PlaceMark(fitting.name, _round(seat.at, seat.reach))
    _change(made, (part, index), lambda blank: replace(blank, seats=(*blank.seats, seat)))
    for place in ((part, index), *_cover(made, (part, index), panel, seat.at)):
        _change(made, place, lambda blank: replace(blank, marks=(*blank.marks, mark)))


def _cover(made: Mapping[str, PartBlanks], place: _Place, panel: int, at: Point) -> list[_Place]:
    """The piece next behind another at a point of a panel, if there is one: away from the side that shows."""
    every = [(part, i) for part, parts in made.items() for i in range(len(parts.blanks))]
    own = every.index(place)
    outwards = made[place[0]].blanks[place[1]].showing is Side.INSIDE
    behind = every[:own][::-1] if outwards else every[own + 1 :]
    return [(part, i) for part, i in behind if _stands_at(made[part].blanks[i], panel, at)][:1]


def _change(made: dict[str, PartBlanks], place: _Place, changed: Callable[[Blank], Blank]) -> None:
    part, index = place
    blanks = made[part].blanks
    made[part] = replace(made[part], blanks=(*blanks[:index], changed(blanks[index]), *blanks[index + 1 :]))


def _round(centre: Point, radius: float) -> Path:
    return from_vertices([(centre.x - radius, centre.y, 1.0), (centre.x + radius, centre.y, 1.0)], closed=True)


def _named(fitting: Fitting, what: str) -> str:
    return f"fitting '{fitting.name}' (line {fitting.line}): {what}"
