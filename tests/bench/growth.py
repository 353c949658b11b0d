"""How the time of drafting and fit grows with the number of stitch holes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from math import log, sqrt

from patternforge.fit.judge import fit_over_range
from patternforge.wallet.assemble import drafted
from patternforge.wallet.spec import BankPart, Design, HoleSpec
from tests.bench.calibration import calibration, timed
from tests.designs_built import STITCHING, sleeve

__all__ = ["growth_lines"]

# Times as many holes as the smallest; a step is about 3.2 times.
_STEPS = (0.7, 2.2, 7.0, 22.0, 70.0, 220.0, 760.0)
_PITCH, _HOLE = 6.0, 1.0  # mm, of the wallet with _STEPS of 1
_WIDTH, _HEIGHT = 105.0, 90.0


@dataclass(frozen=True, slots=True)
class _Measured:
    """Holes over all pieces, and what drafting and fit took, s."""

    holes: int
    drafting: float
    fitting: float


def growth_lines() -> Iterator[str]:
    """Holes and times of a card sleeve that grows while its pitch shrinks, and the power of holes they follow."""
    loop = calibration()
    yield "card sleeve, body larger and pitch finer by the same factor: times in calibrations"
    yield "    holes  drafting       fit  a thousand holes"
    measured = [_measured(_sized(step)) for step in _STEPS]
    for each in measured:
        rate = (each.drafting + each.fitting) / loop / each.holes * 1e3
        yield f"  {each.holes:7d} {each.drafting / loop:9.2f} {each.fitting / loop:9.2f} {rate:17.2f}"
    for what, times in (
        ("drafting", [each.drafting for each in measured]),
        ("fit", [each.fitting for each in measured]),
        ("drafting and fit", [each.drafting + each.fitting for each in measured]),
    ):
        holes = [each.holes for each in measured]
        whole, upper = _power(holes, times), _power(holes[-4:], times[-4:])
        yield f"  {what} grow as holes to the power {whole:.2f}; over the largest four {upper:.2f} (goal 1, linear)"


def _sized(step: float) -> Design:
    """A back and a card pocket of one slot; side and stitches per mm both grow by the root of ``step``."""
    factor = sqrt(step)
    design = sleeve()
    stitching = replace(STITCHING, pitch=_PITCH / factor, hole=HoleSpec(diameter=_HOLE / factor))
    panels = tuple(replace(panel, width=_WIDTH * max(1.0, factor)) for panel in design.body.panels)
    parts = tuple(replace(part, slots=1) if isinstance(part, BankPart) else part for part in design.parts)
    return replace(
        design,
        body=replace(design.body, height=_HEIGHT * max(1.0, factor), panels=panels),
        parts=parts,
        seams=tuple(replace(seam, stitching=stitching) for seam in design.seams),
        stitching=stitching,
    )


def _measured(design: Design) -> _Measured:
    """The quickest of three runs: what disturbs a run only ever lengthens it."""
    pattern = drafted(design)
    drafting = min(timed(drafted, design)[1] for _ in range(3))
    fitting = min(timed(fit_over_range, pattern)[1] for _ in range(3))
    return _Measured(sum(len(piece.holes) for piece in pattern.pieces), drafting, fitting)


def _power(holes: Sequence[int], times: Sequence[float]) -> float:
    """The slope of the straight line through the logarithms of both, by least squares."""
    x, y = [log(h) for h in holes], [log(t) for t in times]
    mean_x, mean_y = sum(x) / len(x), sum(y) / len(y)
    covariance = sum((a - mean_x) * (b - mean_y) for a, b in zip(x, y, strict=True))
    return covariance / sum((a - mean_x) ** 2 for a in x)
