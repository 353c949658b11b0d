"""Corners where two turned edges meet: mitred, or notched all round so that the leather can be pleated."""

from __future__ import annotations

import math
from dataclasses import dataclass

from patternforge.errors import DraftError
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment, arc_segment
from patternforge.leather.turn import Turn
from patternforge.wallet.blank import TurnedSide
from patternforge.wallet.finishing import TurnedCorner
from patternforge.wallet.worked import CornerTurn

__all__ = ["Meeting", "corner_cut", "gathered_excess"]

_GAP = 1.5  # thicknesses left between a mitre and the finished corner; common practice, no source
_NOTCH = 4.0  # mm; the widest notch cut for pleats; common practice, no source
_SHOULDER = math.sqrt(2) - 1  # how far a rounding of 1 mm cuts its corner short, mm


@dataclass(frozen=True, slots=True)
class Meeting:
    """Two turned sides and the corner between them, counter-clockwise: where, how rounded, the ways out of each."""

    at: Point
    radius: float
    before: TurnedSide
    after: TurnedSide
    out_before: Point
    out_after: Point


def corner_cut(meeting: Meeting) -> tuple[list[Segment], CornerTurn]:
    """What is cut from the outer line of one side to that of the next, and how.

    DraftError when both sides ask for different corners, or the one asked for cannot be cut.
    """
    asked = {meeting.before.spec.corners, meeting.after.spec.corners}
    if len(asked) > 1:
        raise DraftError(f"{_named(meeting)} is to be cut in two ways: give both edges the same 'corners'")
    style = asked.pop() or (TurnedCorner.PLEATS if meeting.radius > 0 else TurnedCorner.MITRE)
    return _mitre(meeting) if style is TurnedCorner.MITRE else _pleats(meeting)


def gathered_excess(radius: float, turn: Turn, overlap: float) -> float:
    """How much more leather lies round a quarter of a rounded corner at the cut edge than the place it is turned to.

    ``radius`` of the finished corner, flat ``overlap``, mm. Cut at radius + allowance, turned in to radius - depth.

    >>> round(gathered_excess(10.0, Turn(0.2, 0.4, 0.5), 5.0), 3)
    17.682
    """
    outer = radius + turn.allowance(overlap)
    inner = radius - turn.reach - overlap
    return math.pi / 2 * (outer - inner)


def _named(meeting: Meeting) -> str:
    return f"the corner between the {meeting.before.edge.value} and {meeting.after.edge.value} edges"


def _allowances(meeting: Meeting) -> tuple[float, float]:
    sides = (meeting.before, meeting.after)
    a, b = (side.turn.allowance(side.spec.overlap) for side in sides)
    return a, b


def _mitre(meeting: Meeting) -> tuple[list[Segment], CornerTurn]:
    """One straight cut across the corner at 45 degrees, a gap off the finished corner."""
    sides = (meeting.before, meeting.after)
    gaps = [s.spec.corner_gap if s.spec.corner_gap is not None else _GAP * s.turn.thickness for s in sides]
    gap = max(gaps)
    off = math.sqrt(2) * (gap - _SHOULDER * meeting.radius)
    a, b = _allowances(meeting)
    if off >= min(a, b):
        raise DraftError(f"a mitre {gap:.2f} mm off {_named(meeting)} cuts nothing off: make 'corner_gap' smaller")
    start = meeting.at + meeting.out_before * a + meeting.out_after * (off - a)
    end = meeting.at + meeting.out_after * b + meeting.out_before * (off - b)
    overlap = min(side.spec.overlap for side in sides)
    return [Segment(start, end)], CornerTurn(meeting.at, meeting.radius, gap, overlap)


def _pleats(meeting: Meeting) -> tuple[list[Segment], CornerTurn]:
    """An arc round the finished corner with V notches evenly round it, and slants down to it from wider sides."""
    side = meeting.before
    _check_pleats(meeting)
    overlap = side.spec.overlap if side.spec.corner_overlap is None else side.spec.corner_overlap
    radius, turn = meeting.radius, side.turn
    rest = math.pi / 2 * (radius - turn.reach - overlap)
    if rest <= 0:
        most = radius - turn.reach
        raise DraftError(
            f"{_named(meeting)}, rounded by {radius:.2f} mm, has no room for {overlap:.2f} mm turned in: let"
            f" 'corner_overlap' be less than {most:.2f} mm, round it more, or cut a mitre"
        )
    if overlap <= side.spec.notch_gap:
        raise DraftError(f"notches at {_named(meeting)} need an overlap of more than {side.spec.notch_gap:.2f} mm")
    excess = gathered_excess(radius, turn, overlap)
    count = math.ceil(excess / _NOTCH - 1e-9)
    gap = turn.bare + side.spec.notch_gap
    corner = CornerTurn(meeting.at, radius, gap, overlap, count, excess / count)
    rim = radius + turn.allowance(overlap)
    centre = meeting.at - (meeting.out_before + meeting.out_after) * radius
    slant = _allowances(meeting)[0] - turn.allowance(overlap)
    arcs = _fan(centre, meeting.out_before, rim, corner)
    return [*_slants(meeting, slant, arcs)], corner


def _check_pleats(meeting: Meeting) -> None:
    one, other = meeting.before, meeting.after
    if meeting.radius <= 0:
        raise DraftError(f"{_named(meeting)} is sharp: pleats are for rounded corners, it can be mitred")
    if one.turn != other.turn or one.spec != other.spec:
        raise DraftError(f"at {_named(meeting)}, which is rounded, both edges must be turned in alike")


def _fan(centre: Point, first: Point, rim: float, corner: CornerTurn) -> list[Segment]:
    """A quarter of the rim about the centre, counter-clockwise from the way ``first``, with its notches."""
    begin = math.atan2(first.y, first.x)
    step, half = math.pi / 2 / corner.notches, corner.notch / rim / 2
    tip_radius = corner.radius + corner.gap
    segments: list[Segment] = []
    at = begin
    for i in range(corner.notches):
        middle = begin + (i + 0.5) * step
        arc = arc_segment(centre, rim, at, middle - half)
        tip = centre + Point(tip_radius, 0.0).rotated(middle)
        after = centre + Point(rim, 0.0).rotated(middle + half)
        segments += [arc, Segment(arc.end, tip), Segment(tip, after)]
        at = middle + half
    return [*segments, arc_segment(centre, rim, at, begin + math.pi / 2)]


def _slants(meeting: Meeting, by: float, arcs: list[Segment]) -> list[Segment]:
    """The arcs with cuts at 45 degrees down to them where the sides are turned in deeper than the corner."""
    if by <= 1e-9:
        return arcs
    start = arcs[0].start + meeting.out_before * by - meeting.out_after * by
    end = arcs[-1].end + meeting.out_after * by - meeting.out_before * by
    return [Segment(start, arcs[0].start), *arcs, Segment(arcs[-1].end, end)]
