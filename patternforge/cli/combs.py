"""What is said of kerf combs: how one is cut and read, and what the reading comes to."""

from __future__ import annotations

import typer

from patternforge.cli.called import to_type
from patternforge.cli.lines import numbered
from patternforge.delivery import Delivery
from patternforge.drafting.comb import KerfComb

__all__ = ["comb_report", "kerf_report"]


def comb_report(comb: KerfComb, delivery: Delivery) -> list[str]:
    """The files written, and what to do with the comb."""
    steps = [
        (
            "Cut comb and tongue with the settings you cut wallets with, from the same leather or from card. Nothing"
            " in the file makes up for the kerf: leave it so.",
        ),
        ("Push the tongue into the slots from the left, without force, and count the last slot that takes it.",),
        (
            "Give it to the program, or give it the tongue, measured across:",
            to_type("kerf", "--slot", 4, "--step", f"{comb.step:g}mm"),
            to_type("kerf", "--tongue", "7.82mm"),
        ),
        ("Write the kerf into the table of your machine.",),
    ]
    return [
        f"Written to {delivery.folder}:",
        *(f"  {name}" for name in delivery.written),
        "",
        "How to use it",
        *numbered(steps),
    ]


def kerf_report(comb: KerfComb, slot: int | None, tongue: float | None) -> list[str]:
    """The kerf by the last slot that takes the tongue, or by its width in mm; exactly one of them is given."""
    if (slot is None) == (tongue is None):
        raise typer.BadParameter("say the last slot that takes the tongue, or what the tongue measures: one of them")
    if slot is not None:
        low, high = comb.kerf(slot)
        middle = (low + high) / 2
        return [f"The kerf lies between {low:.2f} and {high:.2f} mm.", f"Write 'kerf: {middle:.3f} mm'."]
    kerf = comb.kerf_by_width(tongue or 0.0)
    return [f"The tongue lost {kerf:.2f} mm of {comb.tongue:g} mm.", f"Write 'kerf: {kerf:.2f} mm'."]
