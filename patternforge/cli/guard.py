"""Every fault reaches the user as one plain message on stderr and as an exit status, never as a traceback."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable
from contextlib import suppress
from functools import wraps
from typing import ParamSpec

import typer

from patternforge.cli.called import module
from patternforge.errors import DeliveryError, PatternforgeError

__all__ = ["guarded"]

_STOPPED = 130  # as shells report a command stopped by Ctrl-C
_READER_GONE = 141  # as shells report a command whose reader closed the pipe
_OWN_FAULT = 1

_Words = ParamSpec("_Words")


def guarded(command: Callable[_Words, None]) -> Callable[_Words, None]:
    """``command`` with every error turned into a message and the exit status that belongs to it.

    Under ``python -X dev`` a fault of the program itself is left to show its traceback.
    """

    @wraps(command)
    def run(*args: _Words.args, **kwargs: _Words.kwargs) -> None:
        try:
            command(*args, **kwargs)
            _flushed()
        except PatternforgeError as error:
            _end(str(error), error.exit_status)
        except KeyboardInterrupt:
            _end("stopped", _STOPPED)
        except typer.Abort:
            print()  # ends the line of the question that was left unanswered
            _end("stopped", _STOPPED)
        except BrokenPipeError:
            _give_up_output()
            raise typer.Exit(_READER_GONE) from None
        except OSError as error:
            _give_up_output()
            _end(f"the output cannot be written: {error.strerror}", DeliveryError.exit_status)
        except Exception as error:
            if _is_ours(error) or sys.flags.dev_mode:
                raise
            _end(_apology(error), _OWN_FAULT)

    return run


def _is_ours(error: Exception) -> bool:
    """Whether the command-line library deals with it: a wrong command word, or a wanted end."""
    return type(error).__module__.split(".")[0] in ("typer", "click")


def _apology(error: Exception) -> str:
    return (
        f"patternforge met a fault of its own ({type(error).__name__}: {error}).\n"
        f"Please report it together with the design file; '{module('-X', 'dev')} ...' shows where."
    )


def _end(message: str, status: int) -> None:
    print(message, file=sys.stderr)
    raise typer.Exit(status) from None


def _flushed() -> None:
    # None is what Python puts here when the command was started without an output.
    if sys.stdout is not None:
        sys.stdout.flush()


def _give_up_output() -> None:
    """Sends what is still to come nowhere, so that Python's own last flush does not complain either."""
    nowhere = os.open(os.devnull, os.O_WRONLY)
    with suppress(OSError):  # an output that is no file of the system has nothing to flush
        os.dup2(nowhere, sys.stdout.fileno())
    os.close(nowhere)
