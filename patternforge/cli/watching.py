"""The command that shows a design while it is written."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import typer

from patternforge.cli import options
from patternforge.cli.guard import guarded
from patternforge.cli.words import pairs, texts

if TYPE_CHECKING:
    from patternforge.live.shown import Shown
    from patternforge.pipeline.stages import Judged

__all__ = ["watching"]

watching = typer.Typer()


@watching.command(short_help="Show a design on a page that follows every save.")
@guarded
def watch(
    design: options.DesignFile,
    settings: options.Settings = [],  # noqa: B006
    initials: options.Initials = [],  # noqa: B006
    port: options.Port = 0,
) -> None:
    """Draft DESIGN anew at every save and show it on a page of this machine that refreshes itself. Writes nothing.

    Open the address it tells in a browser; Ctrl-C ends it. No other machine can see the page.
    """
    from patternforge.cli.report import wallet_report
    from patternforge.live.server import started
    from patternforge.live.shown import Board
    from patternforge.pipeline.stages import text_at
    from patternforge.pipeline.watch import WatchRequest, Words, drafted_anew, saves

    words = Words(_first, wallet_report)
    request = WatchRequest(design, pairs(settings), texts(initials))
    text_at(design)  # a design that is not there is refused; one that goes away later is told on the page
    changes = saves(design)
    next(changes)  # before the first draft, so that no save after it is missed
    newest = drafted_anew(request, words)
    board = Board(newest)
    server = started(board, port)
    print(f"{_line(design, newest)}\nOpen {server.address} in a browser; Ctrl-C ends it.", flush=True)
    for _ in changes:
        newest = drafted_anew(request, words, newest)
        board.put(newest)
        print(_line(design, newest), flush=True)


def _first(wallet: Judged) -> list[str]:
    """The verdict, and what wants the maker's eye."""
    from patternforge.cli.findings import conclusion, findings_table
    from patternforge.fit.findings import Verdict

    wanting = [found for found in wallet.findings if found.verdict is not Verdict.GOOD]
    return [conclusion(wallet.findings), *(findings_table(wanting) if wanting else ())]


def _line(design: Path, newest: Shown) -> str:
    """What the screen says of a save: the verdict, or each fault."""
    from patternforge.live.shown import Standing

    if newest.standing is Standing.FAULT:
        return "\n".join(newest.lines)
    return f"{design.name}: {newest.lines[0]}"
