"""Stitch holes and stitch lines of a piece as ink."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import groupby
from math import radians

from patternforge.drafting.kerf import width_cut
from patternforge.drafting.purpose import StitchHoles
from patternforge.drawing.model import Dot, Ink, Role, Stroke
from patternforge.geometry.path import polygon, polyline
from patternforge.geometry.point import Point
from patternforge.wallet.pattern import Hole, Pattern, Piece, Seam
from patternforge.wallet.spec import HoleShape, HoleSpec

__all__ = ["awl_inks", "hole_inks", "hole_reach", "made_hole", "seam_strokes"]

_PRICK = 0.3  # diameter of the dot that shows where an awl goes in, mm
_CROSS = 0.4  # half a cross that an awl is set on, mm: within a round hole of 1 mm
_WHOLE_ROUND = 1.5  # in pitches: a run whose ends lie nearer together than this goes all the way round


def hole_inks(pattern: Pattern, piece: Piece, kerf: float, how: StitchHoles = StitchHoles.CUT) -> tuple[Ink, ...]:
    """The holes of a piece in order, those in what is turned in after them.

    A dot for a round one, one straight line for a slit, a small mark to be pricked.

    ``kerf`` mm is taken off diameters and slit lengths; DraftError when nothing is left of a hole. Of holes that are
    only ``marked`` each is a mark, of those ``left out`` there is none.
    """
    if how is StitchHoles.LEFT_OUT:
        return ()
    specs = {seam.name: seam.stitching.hole for seam in pattern.seams}
    made = [(hole, made_hole(hole, specs[hole.seam])) for hole in (*piece.holes, *piece.turned_holes)]
    if how is StitchHoles.MARKED:
        return tuple(Dot(Role.MARK, hole.at, _PRICK) for hole, spec in made if spec.shape is not HoleShape.NONE)
    return tuple(ink for hole, spec in made for ink in _hole(hole, spec, kerf, piece.name))


def awl_inks(pattern: Pattern, piece: Piece) -> tuple[Stroke, ...]:
    """A cross in the middle of every stitch hole that is to be made, aslant to its slit, to set an awl on."""
    specs = {seam.name: seam.stitching.hole for seam in pattern.seams}
    made = [hole for hole in (*piece.holes, *piece.turned_holes) if _is_made(made_hole(hole, specs[hole.seam]))]
    return tuple(_arm(hole, turn) for hole in made for turn in (45.0, 135.0))


def _is_made(spec: HoleSpec) -> bool:
    return spec.shape is not HoleShape.NONE


def _arm(hole: Hole, turn: float) -> Stroke:
    half = Point(_CROSS, 0.0).rotated(radians(hole.direction + turn))
    return Stroke(Role.MARK, polyline([hole.at - half, hole.at + half]))


def made_hole(hole: Hole, of_seam: HoleSpec) -> HoleSpec:
    """What is made of a hole in the flat piece: that of its seam, unless the edge it stands in is to be turned in."""
    return of_seam if hole.shape is None else replace(of_seam, shape=hole.shape)


def _hole(hole: Hole, spec: HoleSpec, kerf: float, piece: str) -> tuple[Ink, ...]:
    match spec.shape:
        case HoleShape.ROUND:
            return (Dot(Role.HOLE, hole.at, width_cut(spec.diameter, kerf, piece)),)
        case HoleShape.SLIT:
            return (_slit(hole, width_cut(spec.length, kerf, piece)),)
        case HoleShape.MARK:
            return (Dot(Role.MARK, hole.at, _PRICK),)
        case HoleShape.NONE:
            return ()


def _slit(hole: Hole, length: float) -> Stroke:
    half = Point(length / 2, 0.0).rotated(radians(hole.direction))
    return Stroke(Role.HOLE, polyline([hole.at - half, hole.at + half]))


def hole_reach(spec: HoleSpec) -> float:
    """How far a hole of this kind reaches from its centre at most, mm.

    >>> hole_reach(HoleSpec(HoleShape.SLIT, length=2.0))
    1.0
    """
    reaches = {
        HoleShape.ROUND: spec.diameter / 2,
        HoleShape.SLIT: spec.length / 2,
        HoleShape.MARK: _PRICK / 2,
        HoleShape.NONE: 0.0,
    }
    return reaches[spec.shape]


def seam_strokes(pattern: Pattern, piece: Piece) -> tuple[Stroke, ...]:
    """The stitch lines of a piece: one path for each stretch of holes that follow one another in a run."""
    strokes: list[Stroke] = []
    for seam in pattern.seams:
        run_of = {hole.index: hole.run for hole in seam.holes}
        here = [hole for hole in piece.holes if hole.seam == seam.name]
        strokes += [_line(seam, stretch) for stretch in _stretches(here, run_of) if len(stretch) > 1]
    return tuple(strokes)


def _stretches(holes: Sequence[Hole], run_of: dict[int, int]) -> Iterator[list[Hole]]:
    """Holes with neighbouring numbers in one run: these differ from their place in the row by the same amount."""
    numbered = list(enumerate(sorted(holes, key=lambda hole: hole.index)))
    for _, group in groupby(numbered, key=lambda pair: (run_of[pair[1].index], pair[1].index - pair[0])):
        yield [hole for _, hole in group]


def _line(seam: Seam, holes: Sequence[Hole]) -> Stroke:
    points = [hole.at for hole in holes]
    round_trip = len(points) > 2 and points[0].distance_to(points[-1]) < _WHOLE_ROUND * seam.stitching.pitch
    return Stroke(Role.SEAM, polygon(points) if round_trip else polyline(points))
