"""How this program was called, so that every command it tells can be typed as it stands."""

from __future__ import annotations

import os
import shlex
import shutil
import sys
from pathlib import Path

__all__ = ["module", "program", "to_type"]

_NAME = "patternforge"
_MODULE = "patternforge.cli"
_MAIN = ("cli", "__main__.py")


def program() -> str:
    """The words that call this program again from the same folder: as it was called, or its bare name.

    The bare name stands where that finds it, and where nothing tells how the program was called.
    """
    called = Path(sys.argv[0])
    if called.parts[-2:] == _MAIN:
        return module()
    return _from_here(sys.argv[0]) if called.stem == _NAME else _NAME


def module(*options: str) -> str:
    """The words that call this program through Python, with these options of Python's own."""
    return " ".join([_from_here(sys.executable), *options, "-m", _MODULE])


def to_type(*words: object) -> str:
    """The command line of these words, quoted where the shell would part them."""
    return f"{program()} {shlex.join(str(word) for word in words)}"


def _from_here(called: str) -> str:
    """A program by its bare name if that finds it, by the way from the working directory if it lies below that."""
    path = Path(called)
    if not path.is_absolute():
        return shlex.quote(called)
    if shutil.which(path.name) == called:
        return shlex.quote(path.name)
    here = _here()
    if here is None or not path.is_relative_to(here):
        return shlex.quote(called)
    below = str(path.relative_to(here))
    return shlex.quote(below if os.sep in below else f"{os.curdir}{os.sep}{below}")


def _here() -> Path | None:
    """The working directory, None where it has been removed."""
    try:
        return Path.cwd()
    except FileNotFoundError:
        return None
