"""Where panels come to lie on each other in the closed wallet, and what of one panel meets what of another."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from patternforge.errors import DraftError
from patternforge.geometry.point import Point
from patternforge.wallet.body import Body, closed
from patternforge.wallet.pattern import SeamHole
from patternforge.wallet.spec import Design, SeamSpec, Stitching

__all__ = ["laid_over", "other_side", "other_side_name", "other_stitching"]


def laid_over(design: Design, body: Body, here: int, there: int, at: Point) -> Point:
    """The point of panel ``there`` that comes to lie over a point of panel ``here`` when all folds are closed.

    DraftError when the panels are never laid on each other, or the point comes to lie beside panel ``there``.
    """
    spans = _closed_spans(design, body)
    if here not in spans or there not in spans:
        raise DraftError("its halves are never laid on each other: a fold stays open between them")
    start, way = spans[here]
    place = start + way * (at.x - body.panels[here].x0)
    start, way = spans[there]
    panel = body.panels[there]
    x = panel.x0 + way * (place - start)
    if not panel.x0 < x < panel.x1:
        off = max(panel.x0 - x, x - panel.x1)
        raise DraftError(f"when closed it comes to lie {off:.2f} mm off panel '{panel.name}'")
    return Point(x, at.y)


def other_side_name(seam: str) -> str:
    """What the holes of a seam are called on the panel it is sewn to once folded."""
    return f"{seam}, other side"


def other_side(design: Design, body: Body, seam: SeamSpec, holes: Sequence[SeamHole]) -> tuple[SeamHole, ...]:
    """The holes of a seam where they come to lie on the panel it is sewn to once folded.

    DraftError when another panel lies between the two, or a hole comes to lie beside that panel.
    """
    if seam.onto is None or seam.over is None:
        return ()
    here, there = seam.over[0], seam.onto
    stack = [placed.panel for placed in closed(design).stack]
    if {here, there} <= set(stack) and abs(stack.index(here) - stack.index(there)) > 1:
        names = ", ".join(body.panels[panel].name for panel in _between(stack, here, there))
        raise DraftError(f"seam '{seam.name}' (line {seam.line}): {names} lies between the panels it joins")
    try:
        return tuple(_moved(design, body, hole, here, there) for hole in holes)
    except DraftError as fault:
        raise DraftError(f"seam '{seam.name}' (line {seam.line}): {fault}") from fault


def other_stitching(design: Design, body: Body, seam: SeamSpec) -> Stitching:
    """The stitching as that panel has it: where it is turned over, slits slant the other way."""
    if seam.onto is None or seam.over is None or not _turns_over(design, body, seam.over[0], seam.onto):
        return seam.stitching
    hole = seam.stitching.hole
    return replace(seam.stitching, hole=replace(hole, slant=-hole.slant))


def _moved(design: Design, body: Body, hole: SeamHole, here: int, there: int) -> SeamHole:
    at = laid_over(design, body, here, there, hole.at)
    heading = 180.0 - hole.heading if _turns_over(design, body, here, there) else hole.heading
    return replace(hole, at=at, heading=heading)


def _turns_over(design: Design, body: Body, here: int, there: int) -> bool:
    spans = _closed_spans(design, body)
    return here in spans and there in spans and spans[here][1] != spans[there][1]


def _between(stack: Sequence[int], here: int, there: int) -> Sequence[int]:
    low, high = sorted((stack.index(here), stack.index(there)))
    return stack[low + 1 : high]


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
