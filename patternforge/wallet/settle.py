"""Settling: body sizes and whole stitches depend on each other, so sizes grow until all that is held has room."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace
from itertools import pairwise

from patternforge.errors import DraftError
from patternforge.geometry.spacing import AnchorKind
from patternforge.wallet.body import Body, drafted_body
from patternforge.wallet.copies import with_copies
from patternforge.wallet.parts import panel_plies
from patternforge.wallet.pattern import Adjustment, Sum, Term
from patternforge.wallet.run import Run, declared_runs
from patternforge.wallet.sizes import body_height, panel_widths
from patternforge.wallet.spec import Design, Mode
from patternforge.wallet.sums import COUNTED
from patternforge.wallet.turned_plies import with_turned_in
from patternforge.wallet.whole import fitted_to_stitches

__all__ = ["Settled", "settled_sizes"]

_ROUNDS = 40
_SAME = 1e-9


@dataclass(frozen=True, slots=True)
class Settled:
    """A design whose sizes are final: body, runs of the declared seams, spacing of each part's own seams."""

    design: Design
    body: Body
    height: Sum
    runs: Mapping[str, tuple[Run, ...]]
    spacings: Mapping[str, float]
    adjustments: tuple[Adjustment, ...]


def settled_sizes(design: Design) -> Settled:
    """The design with every nominal size at whole stitches and every fitted size large enough for what it holds.

    DraftError when the sizes do not settle.
    """
    design = with_copies(design)
    widths, height, settled = panel_widths(design), body_height(design), design
    for _ in range(_ROUNDS):
        body = _body(settled, widths, height)
        runs = {seam.name: declared_runs(settled, body, seam) for seam in design.seams}
        fitted = [fitted_to_stitches(design, body, runs, part) for part in design.parts]
        settled = replace(design, parts=tuple(f.part for f in fitted))
        more_width, more_height = _iron_growth(design, body, runs)
        wide = tuple(map(_grown, widths, panel_widths(settled)))
        high = _grown(height, body_height(settled))
        wide = (_stretched(wide[0], more_width), *wide[1:])
        high = _stretched(high, more_height)
        if _same((*wide, high), (*widths, height)) and body == _body(settled, wide, high):
            moved = tuple(a for f in fitted for a in f.adjustments)
            spacings = {f.part.name: f.spacing for f in fitted}
            return Settled(settled, body, high, runs, spacings, (*_body_moves(design, wide, high), *moved))
        widths, height = wide, high
    raise DraftError(f"{design.file}: the sizes do not settle to whole stitches: name the ones to keep under 'exact'")


def _body(design: Design, widths: tuple[Sum, ...], height: Sum) -> Body:
    plies = tuple(panel_plies(design, panel) for panel in range(len(widths)))
    turned = with_turned_in(design, tuple(width.value for width in widths), height.value, plies)
    return drafted_body(design, turned, widths, height.value)


def _same(a: tuple[Sum, ...], b: tuple[Sum, ...]) -> bool:
    return all(abs(x.value - y.value) < _SAME for x, y in zip(a, b, strict=True))


def _grown(have: Sum, need: Sum) -> Sum:
    """The larger of two sizes, told by the terms of the need with what is over."""
    over = have.value - need.value
    if over < -_SAME:
        return need
    if over <= _SAME or have.terms[: len(need.terms)] == need.terms:
        return have
    return Sum(need.name, (*need.terms, Term("room for whole stitches", over, (COUNTED,))))


def _stretched(size: Sum, by: float) -> Sum:
    if abs(by) < _SAME:
        return size
    return Sum(size.name, (*size.terms, Term("to whole pitches of the iron", by, (COUNTED,))))


def _iron_growth(design: Design, body: Body, runs: Mapping[str, tuple[Run, ...]]) -> tuple[float, float]:
    """What width and height lack for whole pitches between the corners of seams stitched with an iron."""
    width, height = 0.0, 0.0
    for seam in design.seams:
        if seam.stitching.mode is Mode.IRON:
            for run in runs[seam.name]:
                across, along = _corner_rests(run)
                width = width or (across if not body.folds else 0.0)
                height = height or along
    return width, height


def _corner_rests(run: Run) -> tuple[float, float]:
    """How far the legs of a run between corners are from whole pitches: (across, along), mm; 0 where they meet."""
    ties = run.anchors if run.loop else run.anchors[1:-1]
    across, along = 0.0, 0.0
    for a, b in pairwise(ties):
        if a.kind is AnchorKind.ON is b.kind:
            rest = math.ceil((b.at - a.at) / run.pitch - 1e-6) * run.pitch - (b.at - a.at)
            rest = rest if rest > 1e-6 else 0.0
            level = abs(run.path.tangent_at((a.at + b.at) / 2).x) > 0.5
            across, along = (rest, along) if level else (across, rest)
    return across, along


def _body_moves(design: Design, widths: tuple[Sum, ...], height: Sum) -> tuple[Adjustment, ...]:
    """Declared sizes of the body that moved."""
    asked = [(panel.name, "width", panel.width, got) for panel, got in zip(design.body.panels, widths, strict=True)]
    asked.append(("body", "height", design.body.height, height))
    return tuple(
        Adjustment(part, size, want, got.value, "to whole pitches of the iron")
        for part, size, want, got in asked
        if want is not None and abs(got.value - want) > _SAME
    )
