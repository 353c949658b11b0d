"""The commands of test pieces: cut one, read it, and the reading tells what to write in a table or a design."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import typer

from patternforge.cli import options
from patternforge.cli.choices import PaperName, TypeSize
from patternforge.cli.guard import guarded
from patternforge.cli.lines import say
from patternforge.cli.words import TRUE, sum_of

__all__ = ["trials"]

trials = typer.Typer()


@trials.command(short_help="Write a comb to cut that tells the kerf.")
@guarded
def comb(
    machine: options.MachineName = None,
    step: options.CombStep = 0.05,
    paper: options.PaperSize = PaperName.A4,
    white: options.White = 10.0,
    measured: options.Measured = TRUE,
    type_size: options.Type = TypeSize.USUAL,
    out: options.OutFolder = Path("out"),
) -> None:
    """Write a comb that tells the kerf: cut it, push its tongue into its slots, and 'kerf' tells what to write."""
    from patternforge.cli.combs import comb_report
    from patternforge.cli.machines import comb_machine
    from patternforge.cli.request import printing
    from patternforge.drafting.comb import KerfComb
    from patternforge.drawing.paper import paper_named
    from patternforge.pipeline.comb import CombRequest, comb_delivered

    wanted = KerfComb(step)
    settings = replace(printing(white, measured, type_size), title="Kerf comb")
    for_machine = comb_machine(machine) if machine else None
    request = CombRequest(wanted, for_machine, paper_named(paper), settings, out)
    say(comb_report(wanted, comb_delivered(request)))


@trials.command(short_help="Tell the kerf from a comb that has been cut.")
@guarded
def kerf(slot: options.CombSlot = None, tongue: options.CombTongue = None, step: options.CombStep = 0.05) -> None:
    """Tell the kerf from a comb: by the last slot that takes the tongue, or by the width of the tongue."""
    from patternforge.cli.combs import kerf_report
    from patternforge.drafting.comb import KerfComb

    say(kerf_report(KerfComb(step), slot, tongue))


@trials.command(short_help="Write a test strip that tells where a leather bends.")
@guarded
def strip(
    length: options.StripLength = 100.0,
    width: options.StripWidth = 20.0,
    gauge: options.Gauge = 3.0,
    paper: options.PaperSize = PaperName.A4,
    white: options.White = 10.0,
    measured: options.Measured = TRUE,
    type_size: options.Type = TypeSize.USUAL,
    out: options.OutFolder = Path("out"),
) -> None:
    """Write a test strip for a leather: cut it, fold it, read it, and 'neutral' tells where the leather bends."""
    from patternforge.cli.request import printing
    from patternforge.cli.strips import strip_report
    from patternforge.drafting.strip import TestStrip
    from patternforge.drawing.paper import paper_named
    from patternforge.pipeline.strip import StripRequest, strip_delivered

    wanted = TestStrip(length, width, gauge)
    settings = replace(printing(white, measured, type_size), title="Test strip")
    say(strip_report(wanted, strip_delivered(StripRequest(wanted, paper_named(paper), settings, out))))


@trials.command(short_help="Tell a leather's neutral value from folded test strips.")
@guarded
def neutral(
    legs: options.Legs,
    thickness: options.Thickness,
    length: options.StripLength = 100.0,
    gauge: options.Gauge = 3.0,
) -> None:
    """Tell a leather's neutral value from folded test strips, the two legs of each given as LEG+LEG."""
    from patternforge.cli.strips import neutral_report
    from patternforge.leather.neutral import StripFold, neutral_of

    fold, both = StripFold(length, gauge, thickness), [sum_of(word) for word in legs]
    say(neutral_report(fold, both, neutral_of(fold, both)))
