"""The one error tree of the program: every fault a user can meet, with its exit status.

Statuses 1 and 2 are left to Python and to the command-line library, so that a script can tell a fault of the
program or of the command words from a fault of the design.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

__all__ = [
    "AuditError",
    "DeliveryError",
    "DesignError",
    "DraftError",
    "Fault",
    "FitError",
    "GeometryError",
    "PatternforgeError",
    "ReadingError",
    "ServingError",
]


class PatternforgeError(Exception):
    """Base of every error that may reach the user; ``exit_status`` is what the command returns."""

    exit_status = 3


@dataclass(frozen=True, slots=True)
class Fault:
    """One fault of what was given: where it stands, what it is, what is lawful, what to do.

    ``file`` names the file, or the option as it was given. ``line`` and ``column`` count from 1, and are 0 where
    there are none: beside an option, or for a file as a whole.

    >>> str(Fault("a.yaml", 3, 5, "'1,2' is not a length", "write '1.2 mm'"))
    "a.yaml:3:5: '1,2' is not a length; write '1.2 mm'"
    >>> str(Fault("--set gap=9", 0, 0, "'9' says no unit", "say '9 mm'"))
    "--set gap=9: '9' says no unit; say '9 mm'"
    """

    file: str
    line: int
    column: int
    what: str
    remedy: str = ""

    def __str__(self) -> str:
        tail = f"; {self.remedy}" if self.remedy else ""
        where = f"{self.file}:{self.line}:{self.column}" if self.line else self.file
        return f"{where}: {self.what}{tail}"


class DesignError(PatternforgeError):
    """The design cannot be taken as it stands; carries every fault found in one run, in file order."""

    exit_status = 4

    def __init__(self, faults: Iterable[Fault]) -> None:
        self.faults = tuple(sorted(faults, key=lambda f: (f.file, f.line, f.column, f.what)))
        super().__init__("\n".join(str(fault) for fault in self.faults))


class DraftError(PatternforgeError):
    """A lawful design that cannot be drafted (a pocket wider than its panel, a part nothing holds)."""

    exit_status = 5


class FitError(PatternforgeError):
    """The drafted wallet does not fit: at least one finding reads ``no``."""

    exit_status = 6


class DeliveryError(PatternforgeError):
    """Files cannot be written where they were asked for (missing folder, file not ours, disk full)."""

    exit_status = 7


class GeometryError(PatternforgeError):
    """A figure of lines and arcs that does not exist (an offset that vanishes, an open outline)."""

    exit_status = 8


class ReadingError(PatternforgeError):
    """A cutting file or ``pattern.json`` that is not what it is said to be (cut short, packed, of another kind)."""

    exit_status = 9


class AuditError(PatternforgeError):
    """A cutting file with something in it that is not as it should be."""

    exit_status = 10


class ServingError(PatternforgeError):
    """The page that shows a design while it is written cannot be served."""

    exit_status = 11
