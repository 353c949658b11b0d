"""The commands that hold pieces made earlier against other leather: what stays, and from what to what it serves."""

from __future__ import annotations

from pathlib import Path

import typer

from patternforge.cli import options
from patternforge.cli.guard import guarded
from patternforge.cli.lines import say
from patternforge.cli.words import pairs

__all__ = ["comparing"]

comparing = typer.Typer()


@comparing.command(short_help="Say which pieces and dies of the old serve for the new.")
@guarded
def compare(
    old: options.Old,
    new: options.New = None,
    settings: options.Settings = [],  # noqa: B006
    out: options.OutFolder = Path("out"),
) -> None:
    """Say which pieces, dies and templates of OLD still serve for NEW, and draw the old over the new.

    Both are a design file or a pattern.json made earlier. What is set stands in NEW; without NEW, OLD is held against
    itself with what is set.
    """
    from patternforge.cli.compared import compare_report
    from patternforge.pipeline.compare import CompareRequest
    from patternforge.pipeline.compare import compare as held_against

    if new is None and not settings:
        raise typer.BadParameter("give a second file, or say with --set what is to be different", param_hint="NEW")
    say(compare_report(held_against(CompareRequest(old, new, pairs(settings), out))))


@comparing.command(short_help="Say in which thicknesses of leather the pieces serve.")
@guarded
def window(design: options.Made, settings: options.Settings = []) -> None:  # noqa: B006
    """Say from which to which thickness of each leather the pieces of DESIGN serve as they are. Writes nothing.

    DESIGN is a design file, or a pattern.json whose pieces or dies are there already.
    """
    from patternforge.cli.windows import window_report
    from patternforge.pipeline.window import windows_of

    found = windows_of(design, pairs(settings))
    say(window_report(found.pattern, found.windows))
