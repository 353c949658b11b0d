"""The command that tells how a size came about."""

from __future__ import annotations

from typing import Annotated

import typer

from patternforge.cli import options
from patternforge.cli.guard import guarded
from patternforge.cli.words import pairs

__all__ = ["reasons"]

reasons = typer.Typer()

SizeName = Annotated[
    str | None,
    typer.Argument(
        metavar="NAME",
        help="The size to tell of, or the beginning of its name; all names if left out.",
        show_default=False,
    ),
]


@reasons.command(short_help="Tell how a size of a design came about.")
@guarded
def why(design: options.DesignFile, name: SizeName = None, settings: options.Settings = []) -> None:  # noqa: B006
    """Tell how a size of DESIGN came about: what it is the sum of, down to what was entered and the standards behind.

    Without a NAME it lists the names of all sizes. A name with blanks in it needs quotes: "fold 1.shell".
    """
    from patternforge.cli.reasons import names_told, sizes_told
    from patternforge.pipeline.why import reasons_at

    told = reasons_at(design, pairs(settings))
    print("\n".join(names_told(told) if name is None else sizes_told(told, name)))
