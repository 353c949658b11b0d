"""From a design to its pattern: sizes, body, whole stitches, blanks, holes, flat pieces."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from patternforge.errors import DraftError
from patternforge.geometry.interior import Interior
from patternforge.leather.thread import thread_length
from patternforge.wallet.blank import Blank, PartBlanks, Strip
from patternforge.wallet.closed import other_side, other_side_name, other_stitching
from patternforge.wallet.fittings import fitted_parts
from patternforge.wallet.flat import Lay, SewnThrough, flat_piece
from patternforge.wallet.folded.draft import folded_pattern
from patternforge.wallet.holes import BoxedEdge, boxed_edges, hole_reach, run_holes
from patternforge.wallet.inscribed import inscribed_parts
from patternforge.wallet.parts import part_blanks
from patternforge.wallet.pattern import Loose, Pattern, Piece, Seam, SeamHole
from patternforge.wallet.run import Run, own_run
from patternforge.wallet.settle import Settled, settled_sizes
from patternforge.wallet.spec import Across, Design, SeamSpec, Stitching
from patternforge.wallet.strip_piece import Around, Joined, strip_piece

__all__ = ["drafted"]

Boxed = Mapping[str, tuple[BoxedEdge, ...]]

Stitch = tuple[int, float]
"""A stitch: the number of the hole it leaves and its length, mm."""


@dataclass(frozen=True, slots=True)
class _Sewn:
    """A seam with its holes placed on the assembly."""

    name: str
    stitching: Stitching
    margin: float
    spread: float
    through: tuple[str, ...]
    holes: tuple[SeamHole, ...]
    stitches: tuple[Stitch, ...]
    inner: bool
    meets: str = ""


def drafted(design: Design) -> Pattern:
    """The pattern of a design, drafted for the middle of each leather's thickness.

    DraftError when the design cannot be drafted: nothing joins or holds a part, no room for a seam, no size given.
    """
    if design.folded:
        return folded_pattern(design, design.folded)
    settled = settled_sizes(design)
    made = [part_blanks(settled.design, settled.body, p, settled.spacings[p.name]) for p in settled.design.parts]
    parts = inscribed_parts(settled.design, settled.body, fitted_parts(settled.design, settled.body, made))
    boxed = {blank.name: boxed_edges(blank.shape) for part in parts for blank in part.blanks}
    sewn = (*_declared(settled, parts, boxed), *_own(settled.design, parts, boxed))
    pieces = _pieces(settled, parts, sewn)
    _check_held(design, pieces)
    return Pattern(
        design=settled.design,
        width=settled.body.width,
        height=settled.body.height,
        height_sum=settled.height,
        panels=settled.body.panels,
        folds=settled.body.folds,
        pieces=pieces,
        pockets=tuple(pocket for part in parts for pocket in part.pockets),
        seams=tuple(_seam(settled.design, seam, pieces) for seam in sewn),
        adjustments=settled.adjustments,
        loose=tuple(_loose(parts)),
    )


def _loose(parts: Sequence[PartBlanks]) -> Iterator[Loose]:
    """What lies loose, between the pieces that stand before it in the order of parts and those after it."""
    level = 0
    for made in parts:
        level += len(made.blanks) + len(made.strips)
        yield from (replace(item, order=level - 0.5) for item in made.loose)


def _declared(settled: Settled, parts: Sequence[PartBlanks], boxed: Boxed) -> tuple[_Sewn, ...]:
    """The seams the design declares, through every part they meet or those it names."""
    named = list(zip(settled.design.parts, parts, strict=True))
    met = [part.name for part in settled.design.parts if part.name not in settled.design.glued]
    seams = []
    for seam in settled.design.seams:
        blanks = [b for part, made in named if part.name in (seam.through or met) for b in made.blanks]
        holes, stitches = _placed(settled.runs[seam.name], blanks, boxed)
        spread = seam.spread if seam.across is Across.EASED else 0.0
        through = tuple(b.name for b in blanks)
        made = _Sewn(seam.name, seam.stitching, seam.margin, spread, through, holes, stitches, False)
        seams += [made, *_other_side(settled, seam, made)]
    return tuple(seams)


def _other_side(settled: Settled, spec: SeamSpec, seam: _Sewn) -> Iterator[_Sewn]:
    """The holes of a seam sewn after folding, on the panel that is folded over."""
    holes = other_side(settled.design, settled.body, spec, seam.holes)
    if holes:
        stitching = other_stitching(settled.design, settled.body, spec)
        name = other_side_name(seam.name)
        yield replace(seam, name=name, holes=holes, stitching=stitching, meets=seam.name)


def _own(design: Design, parts: Sequence[PartBlanks], boxed: Boxed) -> tuple[_Sewn, ...]:
    """The seams that parts bring with them."""
    blanks = {blank.name: blank for part in parts for blank in part.blanks}
    seams = []
    for run in (run for part in parts for run in part.runs):
        holes, stitches = _placed((own_run(run),), [blanks[name] for name in run.through], boxed)
        stitching = replace(run.stitching, pitch=design.stitching.pitch)
        seams.append(_Sewn(run.name, stitching, run.margin, 0.0, run.through, holes, stitches, True))
    return tuple(seams)


def _placed(
    runs: Sequence[Run], blanks: Sequence[Blank], boxed: Boxed
) -> tuple[tuple[SeamHole, ...], tuple[Stitch, ...]]:
    """The holes of all runs of a seam, numbered through, and its stitches; a loop's last one closes it."""
    edges = [edge for blank in blanks for edge in boxed[blank.name]]
    holes: list[SeamHole] = []
    stitches: list[Stitch] = []
    for number, run in enumerate(runs, 1):
        new = run_holes(run, number, len(holes) + 1, edges)
        holes += new
        stitches += [(a.index, b.along - a.along) for a, b in pairwise(new)]
        if run.loop and new:
            stitches.append((new[-1].index, run.path.length - new[-1].along + new[0].along))
    return tuple(holes), tuple(stitches)


def _pieces(settled: Settled, parts: Sequence[PartBlanks], sewn: Sequence[_Sewn]) -> tuple[Piece, ...]:
    design = settled.design
    pieces: list[Piece] = []
    for part, made in zip(design.parts, parts, strict=True):
        for blank in made.blanks:
            lay = Lay(part.name, len(pieces), design.body.turned)
            inside = Interior(blank.shape.path)
            seams = [_through(seam, blank, inside) for seam in sewn]
            pieces.append(flat_piece(blank, lay, settled.body, seams))
        for strip in made.strips:
            lay = Lay(part.name, len(pieces), design.body.turned)
            joined = (_joined(settled, parts, sewn, strip, 0), _joined(settled, parts, sewn, strip, 1))
            pieces.append(_stripped(design, strip, lay, _around(settled, sewn, strip), joined))
    return tuple(pieces)


def _stripped(design: Design, strip: Strip, lay: Lay, around: Around, joined: tuple[Joined, Joined]) -> Piece:
    """The strip's piece; DraftError with the line of its part where its seams do not go together."""
    line = next(part.line for part in design.parts if part.name == lay.part)
    try:
        return strip_piece(strip, lay, around, joined)
    except DraftError as fault:
        raise DraftError(f"{design.file}:{line}: '{strip.name}': {fault}") from fault


def _joined(settled: Settled, parts: Sequence[PartBlanks], sewn: Sequence[_Sewn], strip: Strip, side: int) -> Joined:
    """One long edge of a strip with its seam, all holes of which go through it, and the wall it is sewn to."""
    seam = next(each for each in sewn if each.name == strip.seams[side])
    wall = next(made for p, made in zip(settled.design.parts, parts, strict=True) if p.name == strip.walls[side])
    outlines = tuple(blank.shape.path for blank in wall.blanks if strip.panel in blank.panels)
    return Joined(settled.runs[seam.name], SewnThrough(seam.name, seam.stitching, 0.0, seam.holes), outlines)


def _around(settled: Settled, sewn: Sequence[_Sewn], strip: Strip) -> Around:
    """Where the panel of a strip ends, and the seams that go through both its walls."""
    panel, limits = settled.body.panels[strip.panel], settled.design.limits
    across = [seam for seam in sewn if set(strip.walls) <= set(seam.through)]
    reach = max((hole_reach(seam.stitching.hole) for seam in across), default=0.0)
    holes = tuple(hole.at for seam in across for hole in seam.holes)
    return Around((panel.x0, panel.x1), holes, reach + limits.hole_to_edge)


def _through(seam: _Sewn, blank: Blank, inside: Interior) -> SewnThrough:
    """The part of a seam that goes through a blank: the holes that lie in its outline."""
    here = tuple(h for h in seam.holes if inside.holds(h.at)) if blank.name in seam.through else ()
    return SewnThrough(seam.name, seam.stitching, seam.spread, here)


def _seam(design: Design, seam: _Sewn, pieces: Sequence[Piece]) -> Seam:
    """The seam as reported: the pieces it goes through, its spacings and the thread it takes."""
    stack = dict.fromkeys((hole.index for hole in seam.holes), 0.0)
    passed = []
    for piece in pieces:
        mine = [hole for hole in piece.holes if hole.seam == seam.name]
        if mine:
            passed.append(piece.name)
        folded_over = () if seam.meets else piece.holes
        for hole in (*mine, *(hole for hole in folded_over if hole.seam == other_side_name(seam.name))):
            stack[hole.index] += piece.stack_at(hole.at, design.leather(piece.leather).t)
    spacings = tuple(length for _, length in seam.stitches)
    if seam.meets:
        return _seam_without_thread(seam, tuple(passed), spacings)
    tails = len({hole.run for hole in seam.holes}) * seam.stitching.tails
    return Seam(
        name=seam.name,
        stitching=seam.stitching,
        margin=seam.margin,
        holes=seam.holes,
        pieces=tuple(passed),
        length=sum(spacings),
        spacings=spacings,
        thread=thread_length(spacings, [stack[index] for index, _ in seam.stitches], tails),
        inner=seam.inner,
    )


def _seam_without_thread(seam: _Sewn, pieces: tuple[str, ...], spacings: tuple[float, ...]) -> Seam:
    length = sum(spacings)
    return Seam(
        seam.name, seam.stitching, seam.margin, seam.holes, pieces, length, spacings, 0.0, seam.inner, seam.meets
    )


def _check_held(design: Design, pieces: Sequence[Piece]) -> None:
    """DraftError for a piece that no seam goes through, unless it is glued or the only one."""
    loose = [piece for piece in pieces if not piece.holes and piece.part not in design.glued]
    if loose and len(pieces) > 1:
        line = next(part.line for part in design.parts if part.name == loose[0].part)
        names = ", ".join(piece.name for piece in loose)
        remedy = "let a seam go through it, or write 'fastened: glued' under a layer that only glue holds"
        raise DraftError(f"{design.file}:{line}: no seam holds {names}: {remedy}")
