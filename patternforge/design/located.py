"""Values of a design file with the place they stand at, and the list the faults are collected in."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from patternforge.errors import DesignError, Fault
from patternforge.units import MeasureError

__all__ = ["At", "Entry", "FaultList", "Lost", "Node", "Row", "Scalar", "Table", "beside", "shortened"]

_LONGEST_SHOWN = 40


@dataclass(frozen=True, slots=True)
class At:
    """A place in a file, line and column counted from 1, or the option beside the file that says a value.

    ``setting`` names a value given by an option; there is no line and column then, and both are 0.
    """

    file: str
    line: int
    column: int
    setting: str = ""


def beside(option: str, name: str, text: str) -> At:
    """The place of a value that ``option`` gives to ``name``, told as it was given; long values are cut short.

    >>> beside("--set", "margin", "9 mm")
    At(file='--set margin=9 mm', line=0, column=0, setting='margin')
    """
    return At(f"{option} {name}={' '.join(shortened(text).split())}", 0, 0, name)


def shortened(text: str) -> str:
    """``text`` as far as a message quotes it."""
    return text if len(text) <= _LONGEST_SHOWN else f"{text[:_LONGEST_SHOWN]}..."


@dataclass(frozen=True, slots=True)
class Scalar:
    """A single value as text; ``plain`` means that no quotes stand round it.

    ``replaced`` is the text of the file whose place a setting has taken.
    """

    text: str
    at: At
    plain: bool = True
    replaced: str = ""

    @property
    def is_blank(self) -> bool:
        """True if the key has no value at all."""
        return self.plain and self.text in ("", "~", "null", "Null", "NULL")


@dataclass(frozen=True, slots=True)
class Row:
    """A list."""

    items: tuple[Node, ...]
    at: At


@dataclass(frozen=True, slots=True)
class Entry:
    """One key of a table with its value."""

    key: Scalar
    value: Node


@dataclass(frozen=True, slots=True)
class Table:
    """Keys and values in file order; every key stands once."""

    entries: tuple[Entry, ...]
    at: At

    def __iter__(self) -> Iterator[Entry]:
        return iter(self.entries)

    def get(self, key: str) -> Node | None:
        """The value of ``key``, or None."""
        return next((entry.value for entry in self.entries if entry.key.text == key), None)


@dataclass(frozen=True, slots=True)
class Lost:
    """Stands where a value was refused already, so that nothing is said about it twice."""

    at: At


Node = Scalar | Row | Table | Lost


@dataclass(slots=True)
class FaultList:
    """Collects the faults of one run.

    >>> faults = FaultList()
    >>> faults.add(At("a.yaml", 3, 5), "'1,2' may be one number or two", "write 1.2")
    >>> str(faults.found[0])
    "a.yaml:3:5: '1,2' may be one number or two; write 1.2"
    """

    found: list[Fault] = field(default_factory=list)

    def add(self, at: At, what: str, remedy: str = "") -> None:
        """Take down one fault."""
        self.found.append(Fault(at.file, at.line, at.column, what, remedy))

    def add_measure(self, at: At, of: str, error: MeasureError) -> None:
        """Take down what is wrong with the measure ``of`` something."""
        self.add(at, f"{of}: {error.what}", error.remedy)

    def raise_if_any(self) -> None:
        """Raise DesignError with every fault found so far, if there is one."""
        if self.found:
            raise DesignError(self.found)
