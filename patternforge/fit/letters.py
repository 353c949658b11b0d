"""Whether letters stand clear of edges, stitches, folds and hardware, measured on the flat pieces."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import radians

from patternforge.fit.close import ClosedWallet
from patternforge.fit.findings import Finding, Verdict, reaches
from patternforge.fit.holes import apart
from patternforge.fit.layout import Layout
from patternforge.fit.sight import sight_findings
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment
from patternforge.wallet.marked import Inscription
from patternforge.wallet.pattern import Hole, Piece, Seam
from patternforge.wallet.spec import HoleShape

__all__ = ["letter_findings"]


def letter_findings(layout: Layout, closed: ClosedWallet) -> Iterator[Finding]:
    """Every box of letters: clear of what would spoil it, seen open and closed, on even ground."""
    for piece in layout.pattern.pieces:
        for letters in piece.inscriptions:
            yield from _clearances(layout, piece, letters)
            yield from sight_findings(layout, closed, piece, letters)


def _clearances(layout: Layout, piece: Piece, letters: Inscription) -> Iterator[Finding]:
    """The room from the box to what is nearest to it of each kind, 0 where they touch or overlap."""
    rooms = {
        "the edge": _to_edge(piece, letters.box),
        "stitches": _to_stitches(layout, piece, letters.box),
        "folds": _to_lines(letters.box, [line for path in piece.fold_lines for line in path.segments]),
        "hardware": _to_hardware(piece, letters.box),
        "other letters": _to_letters(piece, letters),
    }
    for what, room in rooms.items():
        if room is not None:
            measured = max(room, 0.0)
            verdict = _verdict(measured, letters.clear)
            remedy = "" if verdict is Verdict.GOOD else "move the box, or make it smaller"
            where = f"{letters.name} on {piece.name}"
            yield Finding(f"letters clear of {what}", where, measured, letters.clear, verdict, remedy)


def _verdict(room: float, clear: float) -> Verdict:
    if room <= 0:
        return Verdict.NO
    return Verdict.GOOD if reaches(room, clear) else Verdict.LOOK


def _to_lines(box: Path, lines: Sequence[Segment]) -> float | None:
    """The least distance from a box to any of the lines; None without lines."""
    if any(box.contains(line.start) for line in lines):
        return 0.0
    return min((apart(side, line) for side in box.segments for line in lines), default=None)


def _to_edge(piece: Piece, box: Path) -> float | None:
    """To the outline and to openings; none where some of the box lies off the leather."""
    corners = [side.start for side in box.segments]
    middle = (corners[0] + corners[2]) / 2
    if not all(map(piece.made.contains, corners)) or any(hole.contains(middle) for hole in piece.openings):
        return 0.0
    return _to_lines(box, [line for path in (piece.made, *piece.openings) for line in path.segments])


def _to_stitches(layout: Layout, piece: Piece, box: Path) -> float | None:
    """To the thread on the face and to the rims of the holes."""
    rooms = [room for seam in layout.pattern.seams for room in _to_seam(piece, box, seam)]
    return min(rooms, default=None)


def _to_seam(piece: Piece, box: Path, seam: Seam) -> Iterator[float]:
    runs = {hole.index: hole.run for hole in seam.holes}
    holes = sorted((hole for hole in piece.holes if hole.seam == seam.name), key=lambda hole: hole.index)
    sewn = [
        Segment(a.at, b.at) for a, b in pairwise(holes) if (b.index, runs[b.index]) == (a.index + 1, runs[a.index])
    ]
    thread = _to_lines(box, sewn)
    if thread is not None:
        yield thread - seam.stitching.thread / 2
    for hole in holes:
        yield _to_rim(box, hole, seam)


def _to_rim(box: Path, hole: Hole, seam: Seam) -> float:
    spec = seam.stitching.hole
    if spec.shape is HoleShape.SLIT:
        half = Point(spec.length / 2, 0.0).rotated(radians(hole.direction))
        return (_to_lines(box, [Segment(hole.at - half, hole.at + half)]) or 0.0) - spec.width / 2
    return _to_point(box, hole.at) - (spec.diameter / 2 if spec.shape is HoleShape.ROUND else 0.0)


def _to_point(box: Path, at: Point) -> float:
    return 0.0 if box.contains(at) else box.distance_to(at)


def _to_hardware(piece: Piece, box: Path) -> float | None:
    """To caps on the face, and to places marked for what lies behind it."""
    caps = [_to_point(box, cap.at) - cap.reach for cap in piece.fittings]
    marked = _to_lines(box, [line for mark in piece.marks for line in mark.path.segments])
    return min([*caps, *([] if marked is None else [marked])], default=None)


def _to_letters(piece: Piece, letters: Inscription) -> float | None:
    others = [other.box for other in piece.inscriptions if other.name != letters.name]
    if any(other.contains(letters.at) for other in others):
        return 0.0
    return _to_lines(letters.box, [line for other in others for line in other.segments])
