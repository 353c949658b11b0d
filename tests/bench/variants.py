"""Drafting and fit of one design over many thicknesses of its outer leather, in one process and without files."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from pathlib import Path
from statistics import median

from patternforge.fit.judge import fit_over_range
from patternforge.leather.material import Thickness
from patternforge.pipeline.stages import design_at
from patternforge.wallet.assemble import drafted
from patternforge.wallet.spec import Design
from tests.bench.calibration import ROUNDS, calibration, timed

__all__ = ["variant_lines"]

_THINNEST, _THICKEST = 0.6, 2.6  # mm
_EVERY = 100  # variants between two calibrations


def variant_lines(design: Path, count: int) -> Iterator[str]:
    """What a variant takes, in turns of the calibration loop that ran between them."""
    start = design_at(design)
    drafting, fitting, loops = [], [], []
    for number in range(count):
        if number % _EVERY == 0:
            loops.append(calibration(5))
        variant = _variant(start, _THINNEST + (_THICKEST - _THINNEST) * number / max(1, count - 1))
        pattern, drafting_time = timed(drafted, variant)
        drafting.append(drafting_time)
        fitting.append(timed(fit_over_range, pattern)[1])
    both = [a + b for a, b in zip(drafting, fitting, strict=True)]
    yield f"{design.name}, {count} thicknesses of the outer leather, {_THINNEST} to {_THICKEST} mm, in one process"
    loop = median(loops)
    yield f"  calibration: {ROUNDS} rounds of turning a point take {loop * 1e3:.1f} ms"
    yield _figure("drafting", drafting, loop, "")
    yield _figure("fit", fitting, loop, "")
    yield _figure("drafting and fit", both, loop, "goal 1; ")


def _figure(what: str, times: Sequence[float], loop: float, goal: str) -> str:
    middle, slow = median(times), sorted(times)[int(0.99 * (len(times) - 1))]
    context = f"median {middle * 1e3:.1f} ms, 99 of 100 within {slow * 1e3:.1f} ms"
    return f"  {what}: {middle / loop:.2f} calibrations a variant ({goal}{context})"


def _variant(design: Design, outer: float) -> Design:
    role = design.leathers[0].role
    thickness = Thickness(outer, outer)
    leathers = (replace(own, thickness=thickness) if own.role == role else own for own in design.leathers)
    return replace(design, leathers=tuple(leathers))
