"""The command of the making sheet."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from patternforge.cli import options
from patternforge.cli.choices import PaperName, TypeSize
from patternforge.cli.guard import guarded
from patternforge.cli.lines import say
from patternforge.cli.words import TRUE, pairs, texts

if TYPE_CHECKING:
    from patternforge.pipeline.making import Making

__all__ = ["making"]

making = typer.Typer()

_Prices = Annotated[
    Path | None,
    typer.Option(
        "--prices",
        metavar="FILE",
        help="Your price list (YAML): the sheet then tells what one wallet costs.",
        show_default=False,
    ),
]
_Waste = Annotated[
    float | None,
    typer.Option(
        "--waste",
        metavar="PERCENT",
        help="Leather: what you cut to waste, in per cent of the net area. No figure is taken for you.",
        show_default=False,
    ),
]


@making.command(short_help="Write the making sheet of a design for the bench.")
@guarded
def sheet(
    design: options.DesignFile,
    settings: options.Settings = [],  # noqa: B006
    initials: options.Initials = [],  # noqa: B006
    prices: _Prices = None,
    waste: _Waste = None,
    paper: options.PaperSize = PaperName.A4,
    white: options.White = 10.0,
    measured: options.Measured = TRUE,
    type_size: options.Type = TypeSize.USUAL,
    out: options.OutFolder = Path("out"),
) -> None:
    """Write the making sheet of DESIGN for the bench: cut list, leathers, thread, tools, steps with pictures.

    It comes as HTML for a screen and as PDF for a printer, with boxes to tick off. A wallet that does not fit has one
    too, which says so.
    """
    from patternforge.cli.request import printing, within_range
    from patternforge.drawing.paper import paper_named
    from patternforge.pipeline.making import MakingRequest
    from patternforge.pipeline.making import making as made

    within_range("--waste", lambda: MakingRequest(design, waste=waste))
    told = printing(white, measured, type_size)
    request = MakingRequest(design, pairs(settings), texts(initials), prices, waste, paper_named(paper), told, out)
    say(_report(made(request)))


def _report(done: Making) -> list[str]:
    from patternforge.cli.findings import conclusion

    return [
        f"{done.wallet.pattern.design.title}: making sheet in {done.delivery.folder}",
        *(f"  {name}" for name in done.delivery.written if not name.endswith(".txt")),
        *_of_prices(done),
        "",
        conclusion(done.wallet.findings),
    ]


def _of_prices(done: Making) -> list[str]:
    """What the price list lacks for this wallet, and what of it the wallet has no use for."""
    from patternforge.drafting.making.price_gaps import unpriced, unused

    if done.prices is None:
        return []
    pattern = done.wallet.pattern
    told = (
        ("Not in the costs, for want of a price", ", ".join(unpriced(pattern, done.prices))),
        ("In the price list, but in nothing of this wallet", ", ".join(unused(pattern, done.prices))),
    )
    lines = [f"{what}: {names}" for what, names in told if names]
    return ["", *lines] if lines else []
