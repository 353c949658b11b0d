"""Banks and flat pockets: their pieces, the room they give, the seams they bring with them."""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import pairwise

from patternforge.errors import DraftError
from patternforge.geometry.path import Path, polyline
from patternforge.geometry.point import Point
from patternforge.wallet.blank import Blank, InnerRun, PartBlanks
from patternforge.wallet.body import Body
from patternforge.wallet.border import Border, host
from patternforge.wallet.frame import Frame, pocket_frame
from patternforge.wallet.outline import Corner, Shape, shape
from patternforge.wallet.parts.kind import PartKind
from patternforge.wallet.parts.mouth import mouth_corners
from patternforge.wallet.parts.pocket_sizes import (
    bank_needs,
    bank_nominal,
    bank_plies,
    pocket_needs,
    pocket_nominal,
    pocket_plies,
    whole_bank,
    whole_pocket,
)
from patternforge.wallet.parts.slots import Slot, Slots, pocket_slots
from patternforge.wallet.pattern import EdgeRole, Pocket
from patternforge.wallet.spec import BankPart, BankShape, Design, Edge, MouthShape, PocketPart, Side

__all__ = ["BANK", "POCKET", "pocket_blanks", "stem_sides", "stitch_lines"]

_STEM_RADIUS = 2.0  # common practice, no source: no sharp inside corner, it tears
_CLEAR_OF_CORNER = 0.6  # shares of a stitch that a seam keeps off the hole where another one ends


def pocket_blanks(design: Design, body: Body, part: BankPart | PocketPart, spacing: float) -> PartBlanks:
    """Pieces, rooms and seams of a bank or a flat pocket; its own seams are stitched at ``spacing`` mm.

    DraftError when nothing stands behind the part to sew it to, or a slot's item stands above the closed edge.
    """
    behind = host(design, part)
    if behind is None:
        raise DraftError("no layer stands behind it to sew it to")
    if dict(part.trim).get(part.opening):
        raise DraftError("its mouth cannot be trimmed after gluing: leave out the trim on its opening edge")
    if any(edge in _touched(body, part) for edge, _ in design.body.shapes):
        raise DraftError(
            "a pocket of its own needs straight sides: use a layer with a drop on a slanted or bowed panel"
        )
    frame = pocket_frame(design, body, part)
    slots = pocket_slots(design, frame, part)
    blanks = tuple(_blank(body, part, frame, slots, slot, spacing) for slot in slots.slots)
    outer_first = blanks if part.facing is Side.OUTSIDE else blanks[::-1]
    pockets = tuple(
        _pocket(part, frame, slots, slot, column, blanks[slot.number - 1].name)
        for slot in slots.slots
        for column in range(slots.columns)
    )
    runs = _runs(design, part, frame, slots, spacing, tuple(b.name for b in blanks), (behind.name, *part.sewn_to))
    return PartBlanks(outer_first, pockets, runs)


def _touched(body: Body, part: BankPart | PocketPart) -> set[Edge]:
    """The sides of the body that the part's panel has."""
    sides = {Edge.BOTTOM, Edge.TOP}
    sides |= {Edge.LEFT} if part.panel == 0 else set()
    return sides | ({Edge.RIGHT} if part.panel == len(body.panels) - 1 else set())


def stitch_lines(frame: Frame, columns: int) -> tuple[float, ...]:
    """a of the stitch lines across a pocket, one more than its columns, evenly apart."""
    low, high = frame.stitch_left, frame.stitch_right
    return tuple(low + (high - low) * i / columns for i in range(columns + 1))


def _blank(body: Body, part: BankPart | PocketPart, frame: Frame, slots: Slots, slot: Slot, spacing: float) -> Blank:
    name = part.name if len(slots.slots) == 1 else f"{part.name} {slot.number}"
    tab_only = slots.shape is BankShape.TEE and slot.number > 1
    outline = _tee(part, frame, slots, slot, spacing) if tab_only else _full(body, part, frame, slots, slot)
    return Blank(name, part.leather, outline.moved(frame.onto), part.facing, (part.panel,), part.trim)


def _sides(frame: Frame) -> tuple[float, float]:
    return frame.left.inset - frame.left.trim, frame.across - frame.right.inset + frame.right.trim


def _edge(border: Border) -> EdgeRole:
    return EdgeRole.TRIMMED if border.trim else EdgeRole.SEWN


def _mouth(part: BankPart | PocketPart, frame: Frame, slots: Slots, slot: Slot) -> list[Corner]:
    _, right = _sides(frame)
    if slot.mouth <= slot.floor:
        raise DraftError("its items would stand out whole: let less of them show, or make it deeper")
    deepest = max(part.mouth.depth, part.thumb.depth if part.thumb else 0.0)
    lowest = max(slot.shoulder, slot.floor) if slots.shape is BankShape.TEE and slot.number > 1 else slot.floor
    if slot.mouth - deepest <= lowest:
        raise DraftError(
            f"its mouth is cut {deepest:.2f} mm deep, through the piece below it: make the cut shallower"
        )
    return mouth_corners(right, slot.mouth, stitch_lines(frame, slots.columns), part.mouth, part.thumb)


def _full(body: Body, part: BankPart | PocketPart, frame: Frame, slots: Slots, slot: Slot) -> Shape:
    left, right = _sides(frame)
    floor = frame.floor.inset - frame.floor.trim
    at_corner = [_rounding(body, frame.floor, side) for side in (frame.left, frame.right)]
    mouth = _mouth(part, frame, slots, slot)
    return shape(
        [
            Corner(Point(left, floor), at_corner[0], role=_edge(frame.floor)),
            Corner(Point(right, floor), at_corner[1], role=_edge(frame.right)),
            *mouth,
            Corner(Point(left, slot.mouth), role=_edge(frame.left)),
        ]
    )


def _rounding(body: Body, floor: Border, side: Border) -> float:
    """The body's rounding at the body's own corner; trimmed on one side only it is cut square."""
    radius = body.rounding(floor.edge, side.edge)
    if floor.inset or side.inset or radius <= 0 or floor.trim != side.trim:
        return 0.0
    return radius + floor.trim


def _tee(part: BankPart | PocketPart, frame: Frame, slots: Slots, slot: Slot, spacing: float) -> Shape:
    """A tab as wide as the pocket, and a stem between the stitch lines down past its stop-stitch row."""
    left, right = _sides(frame)
    foot = _foot(frame, slots, slot, spacing)
    if slot.shoulder - foot < 2 * _STEM_RADIUS + 1:
        return _plain(part, frame, slots, slot, foot)
    stem_left, stem_right = stem_sides(frame)
    r = _STEM_RADIUS
    return shape(
        [
            Corner(Point(stem_left, foot), r),
            Corner(Point(stem_right, foot), r),
            Corner(Point(stem_right, slot.shoulder), r),
            Corner(Point(right, slot.shoulder), role=_edge(frame.right)),
            *_mouth(part, frame, slots, slot),
            Corner(Point(left, slot.mouth), role=_edge(frame.left)),
            Corner(Point(left, slot.shoulder)),
            Corner(Point(stem_left, slot.shoulder), r),
        ]
    )


def _plain(part: BankPart | PocketPart, frame: Frame, slots: Slots, slot: Slot, foot: float) -> Shape:
    left, right = _sides(frame)
    return shape(
        [
            Corner(Point(left, foot)),
            Corner(Point(right, foot), role=_edge(frame.right)),
            *_mouth(part, frame, slots, slot),
            Corner(Point(left, slot.mouth), role=_edge(frame.left)),
        ]
    )


def _foot(frame: Frame, slots: Slots, slot: Slot, spacing: float) -> float:
    """b of a stem's lower edge: a margin below its stop row; mid-stitch where a seam between columns crosses it."""
    foot = slot.floor - frame.floor.margin
    if slots.columns == 1:
        return foot
    mouth = slots.slots[0].mouth
    return mouth - math.ceil((mouth - foot) / spacing - 1e-9) * spacing


def stem_sides(frame: Frame) -> tuple[float, float]:
    """a of both sides of a tee's stem: as far inside the stitch lines as the pocket's edges stand outside them."""
    return frame.stitch_left + frame.left.margin, frame.stitch_right - frame.right.margin


def _pocket(part: BankPart | PocketPart, frame: Frame, slots: Slots, slot: Slot, column: int, piece: str) -> Pocket:
    lines = stitch_lines(frame, slots.columns)
    middle = (lines[column] + lines[column + 1]) / 2
    half = slots.item_across / 2
    corners = [frame.onto.point(Point(a, b)) for a, b in ((middle - half, slot.floor), (middle + half, slot.top))]
    (x0, x1), (y0, y1) = (sorted(p.x for p in corners), sorted(p.y for p in corners))
    return Pocket(
        part=part.name,
        piece=piece,
        content=part.content,
        count=slots.item_count,
        panel=part.panel,
        opening=part.opening,
        box=(x0, y0, x1, y1),
        show=slot.top - slot.mouth,
        ease=part.ease,
        panels=(part.panel,),
    )


def _runs(
    design: Design,
    part: BankPart | PocketPart,
    frame: Frame,
    slots: Slots,
    spacing: float,
    pieces: tuple[str, ...],
    behind: tuple[str, ...],
) -> tuple[InnerRun, ...]:
    """The part's own seams; ``pieces`` from slot 1 to the last. A stop row never goes through the slots before it."""
    stitching = replace(design.stitching, pitch=spacing)
    rows = [
        *((name, path, pieces) for name, path in _floor_row(frame, spacing)),
        *((name, path, pieces[number - 1 :]) for number, name, path in _stop_rows(frame, slots)),
        *((name, path, pieces) for name, path in _uprights(design, part, frame, slots, spacing)),
    ]
    return tuple(
        InnerRun(f"{part.name} {name}", frame.onto.path(path), (*through, *behind), stitching, frame.floor.margin)
        for name, path, through in rows
    )


def _floor_row(frame: Frame, spacing: float) -> list[tuple[str, Path]]:
    """The row along the floor where no body seam runs; it keeps a stitch off body seams at its ends."""
    if frame.floor.seam is not None:
        return []
    low = frame.stitch_left + (spacing if frame.left.seam else 0.0)
    high = frame.stitch_right - (spacing if frame.right.seam else 0.0)
    return [("floor", _line(low, frame.floor.stitch, high, frame.floor.stitch))]


def _stop_rows(frame: Frame, slots: Slots) -> list[tuple[int, str, Path]]:
    """Stop-stitch rows at the floors of slots 2 and up, in the stem of each column."""
    lines = stitch_lines(frame, slots.columns)
    off = 2 * frame.floor.margin
    rows = []
    for slot in slots.slots[1:]:
        for column, (low, high) in enumerate(pairwise(lines), 1):
            name = f"stop {slot.number}" + (f".{column}" if slots.columns > 1 else "")
            rows.append((slot.number, name, _line(low + off, slot.floor, high - off, slot.floor)))
    return rows


def _uprights(
    design: Design, part: BankPart | PocketPart, frame: Frame, slots: Slots, spacing: float
) -> list[tuple[str, Path]]:
    """Side seams where no body seam runs, and the seams between columns, wrapping the highest mouth."""
    lines = stitch_lines(frame, slots.columns)
    sides = [("left", lines[0], frame.left), ("right", lines[-1], frame.right)]
    at_sides = [(name, a) for name, a, side in sides if not side.seam]
    between = [(f"divide {i}", a) for i, a in enumerate(lines[1:-1], 1)]
    return [(name, _upright(design, frame, slots, part, a, spacing)) for name, a in (*at_sides, *between)]


def _upright(
    design: Design, frame: Frame, slots: Slots, part: BankPart | PocketPart, a: float, spacing: float
) -> Path:
    """A seam up the way of the items; where the layer behind leaves room it ends a stitch past the highest mouth."""
    fall = part.mouth.depth if part.mouth.shape is MouthShape.SLANTED and a > frame.across / 2 else 0.0
    lowest, highest = slots.slots[0].mouth - fall, slots.slots[-1].mouth - fall
    room = lowest - (frame.floor.stitch + _CLEAR_OF_CORNER * spacing)
    start = lowest - (math.floor(room / spacing - 0.5) + 0.5) * spacing
    behind = host(design, part)
    ceiling = frame.along - (behind.drop if behind and behind.opening is part.opening else 0.0)
    wraps = highest + spacing / 2 <= ceiling - frame.floor.margin / 2
    return _line(a, start, a, highest + (spacing / 2 if wraps else -spacing / 2))


def _line(a0: float, b0: float, a1: float, b1: float) -> Path:
    if math.hypot(a1 - a0, b1 - b0) < 1 or a1 < a0:
        raise DraftError("it is too narrow or too shallow for a row of stitches")
    return polyline([Point(a0, b0), Point(a1, b1)])


BANK = PartKind("bank", bank_plies, bank_needs, bank_nominal, whole_bank, pocket_blanks)
POCKET = PartKind("pocket", pocket_plies, pocket_needs, pocket_nominal, whole_pocket, pocket_blanks)
