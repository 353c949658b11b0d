"""What is said of test strips: how one is folded and read, and what the readings come to."""

from __future__ import annotations

from collections.abc import Sequence
from textwrap import fill

from patternforge.cli.called import to_type
from patternforge.cli.lines import WIDTH, numbered
from patternforge.delivery import Delivery
from patternforge.drafting.strip import TestStrip
from patternforge.leather.neutral import READING, Neutral, StripFold
from patternforge.units import mm

__all__ = ["neutral_report", "strip_report"]

_WIDE_APART = 0.2  # thicknesses between the strips; common practice, no source


def strip_report(strip: TestStrip, delivery: Delivery) -> list[str]:
    """The files written, and what to do with the strip."""
    sizes = ("--length", f"{strip.length:g}mm", "--gauge", f"{strip.gauge:g}mm")
    steps = [
        (
            f"Cut the strip from the leather, {strip.length:g} mm long to a tenth of a millimetre, lying on the hide"
            " as the panels of the wallet will. Measure its thickness.",
        ),
        (
            f"Make a stack {strip.gauge:g} mm thick of cards. Fold the strip round its edge at the middle marks, the"
            " face that is to show outside, as wet or dry as you fold wallets. Press both legs flat on the stack.",
        ),
        ("Read each leg with a rule, from the outside of the bend to the end. Do it with three strips.",),
        (
            "Give the readings to the program, with the thickness you measured:",
            to_type("neutral", "--thickness", "1.2mm", *sizes, "49.4+49.4", "49.3+49.4"),
        ),
    ]
    return [
        f"Written to {delivery.folder}:",
        *(f"  {name}" for name in delivery.written),
        "",
        "How to use it",
        *numbered(steps),
        "",
        fill("Blade: cut away from your hand, with a sharp blade along a metal rule.", WIDTH),
    ]


def neutral_report(fold: StripFold, legs: Sequence[float], found: Neutral) -> list[str]:
    """What each strip says, their mean, how sure it is, and what to write into the design."""
    rows = [f"  legs {mm(both)} mm together  neutral {k:.2f}" for both, k in zip(legs, found.each, strict=True)]
    sure = f"+/- {found.sure:.2f} for legs read to {mm(READING, 1)} mm"
    lines = [
        f"Strips of {mm(fold.length)} mm, {mm(fold.thickness)} mm thick, round {mm(fold.gauge)} mm",
        *rows,
        f"Neutral value: {found.mean:.2f} thicknesses from the inside, {sure}",
        f"Write 'neutral: {found.mean:.2f}' under this leather.",
    ]
    if found.spread > _WIDE_APART:
        words = f"The strips are {found.spread:.2f} thicknesses apart: read them again, or fold more of them."
        return [*lines, words]
    return lines
