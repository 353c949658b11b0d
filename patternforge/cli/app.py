"""Where the command begins: what must be quick or must work whatever happens, before anything else is loaded."""

from __future__ import annotations

import gc
import sys
from io import TextIOWrapper

from patternforge import __version__

__all__ = ["main"]


def main() -> None:
    """Runs the command words of this process and ends it with their exit status."""
    _write_what_the_screen_can_show()
    if sys.argv[1:] == ["--version"]:
        print(f"patternforge {__version__}")
        return
    try:
        _collect_seldom()
        from patternforge.cli.called import program
        from patternforge.cli.commands import app

        app(prog_name=program())
    except KeyboardInterrupt:
        print("stopped", file=sys.stderr)
        sys.exit(130)


def _collect_seldom() -> None:
    """A run is over in a second: looking through all modules for garbage takes a tenth of it to save 4 MB of 86."""
    gc.set_threshold(200_000)


def _write_what_the_screen_can_show() -> None:
    """A letter that the screen's encoding does not have is written as its number instead of ending the run."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, TextIOWrapper):
            stream.reconfigure(errors="backslashreplace")
