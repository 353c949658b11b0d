"""Hardware in two halves: where the second must sit so that both meet when the wallet is closed."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from patternforge.errors import DraftError
from patternforge.geometry.path import Path, from_vertices
from patternforge.geometry.point import Point
from patternforge.wallet.blank import PartBlanks, Seat
from patternforge.wallet.body import Body, closed
from patternforge.wallet.spec import Design, Fitting
from patternforge.wallet.spots import spot_point

__all__ = ["fitted_parts"]


def fitted_parts(design: Design, body: Body, parts: Sequence[PartBlanks]) -> list[PartBlanks]:
    """The parts with a hole punched for each half of every fitting.

    DraftError when a half lies off its part, or the two can never meet.
    """
    made = dict(zip((part.name for part in design.parts), parts, strict=True))
    for fitting in design.fittings:
        first = spot_point(body, fitting.spot)
        _seat(
            made,
            fitting,
            fitting.part,
            fitting.spot.panel,
            Seat(fitting.name, 1, first, fitting.holes[0], fitting.reach),
        )
        if fitting.meets:
            second = _opposite(design, body, fitting, first)
            seat = Seat(fitting.name, 2, second, fitting.holes[1], fitting.reach)
            _seat(made, fitting, fitting.meets, fitting.meets_panel, seat)
    return list(made.values())


def _opposite(design: Design, body: Body, fitting: Fitting, first: Point) -> Point:
    """The point of the second panel that comes to lie over the first when all folds are closed."""
    spans = _closed_spans(design, body)
    here, there = fitting.spot.panel, fitting.meets_panel
    if here not in spans or there not in spans:
        raise DraftError(_named(fitting, "its halves are never laid on each other: a fold stays open between them"))
    at, way = spans[here]
    place = at + way * (first.x - body.panels[here].x0)
    at, way = spans[there]
    panel = body.panels[there]
    x = panel.x0 + way * (place - at)
    if not panel.x0 < x < panel.x1:
        raise DraftError(
            _named(
                fitting,
                f"when closed it comes to lie {_beyond(x, panel.x0, panel.x1):.2f} mm off panel '{panel.name}'",
            )
        )
    return Point(x, first.y)


def _beyond(x: float, low: float, high: float) -> float:
    return max(low - x, x - high)


def _closed_spans(design: Design, body: Body) -> Mapping[int, tuple[float, int]]:
    """Where the left end of each panel lies along the closed wallet, and which way its x runs (+1 or -1).

    Tangents of a fold come to lie over each other, so a bend takes no room along the closed wallet.
    """
    spans: dict[int, tuple[float, int]] = {}
    at = 0.0
    for placed in sorted(closed(design).stack, key=lambda placed: placed.panel):
        way = -1 if placed.turned else 1
        spans[placed.panel] = (at, way)
        at += way * (body.panels[placed.panel].x1 - body.panels[placed.panel].x0)
    return spans


def _seat(made: dict[str, PartBlanks], fitting: Fitting, part: str, panel: int, seat: Seat) -> None:
    blanks = made[part].blanks
    index = next((i for i, b in enumerate(blanks) if panel in b.panels and b.shape.path.contains(seat.at)), None)
    if index is None:
        raise DraftError(_named(fitting, f"its place lies off '{part}'"))
    blank = blanks[index]
    holes = (_round(seat),) if seat.diameter > 0 else ()
    opened = replace(blank, openings=(*blank.openings, *holes), seats=(*blank.seats, seat))
    made[part] = replace(made[part], blanks=(*blanks[:index], opened, *blanks[index + 1 :]))


def _round(seat: Seat) -> Path:
    r, c = seat.diameter / 2, seat.at
    return from_vertices([(c.x - r, c.y, 1.0), (c.x + r, c.y, 1.0)], closed=True)


def _named(fitting: Fitting, what: str) -> str:
    return f"fitting '{fitting.name}' (line {fitting.line}): {what}"
