"""The names a design declares, what they are worth in arithmetic, and which of them something uses."""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from enum import StrEnum

from patternforge.design.arithmetic import LOST, Value
from patternforge.design.located import At, FaultList
from patternforge.design.words import word_advice
from patternforge.units import UNITS, MeasureError

__all__ = ["Kind", "Scope"]


class Kind(StrEnum):
    """What a declared name stands for."""

    LEATHER = "leather"
    CONTENT = "content"
    PARAMETER = "parameter"


_SIZES = {Kind.LEATHER: ("thickness",), Kind.CONTENT: ("length", "height", "thickness")}


@dataclass(slots=True)
class Scope:
    """Declared names by kind, the values known so far, the names used, and the fault list of the run.

    Names are declared before anything is reckoned; a value becomes known when its declaration has been read, so
    that whatever is used too early can be told from what does not exist.
    """

    faults: FaultList
    declared: dict[str, tuple[Kind, At]] = field(default_factory=dict)
    values: dict[str, Value] = field(default_factory=dict)
    used: set[str] = field(default_factory=set)
    open_kinds: set[Kind] = field(default_factory=set)
    """Kinds of which a reference could not be read, so that nothing can be said about what is not used."""
    unreadable: set[Kind] = field(default_factory=set)
    """Kinds whose declarations could not be read, so that nothing can be said about unknown names either."""

    def declare(self, name: str, kind: Kind, at: At) -> None:
        """Take down a name; a fault if it cannot be used in arithmetic or is taken."""
        if name in self.declared:
            other, where = self.declared[name]
            what = f"'{name}' is the name of a {other} already, on line {where.line}"
            self.faults.add(at, what, "give every leather, content and parameter a name of its own")
            return
        self.declared[name] = (kind, at)
        faults = len(self.faults.found)
        if not name.isascii() or not name.isidentifier():
            what = f"'{name}' cannot be used as a name in arithmetic"
            self.faults.add(at, what, "use letters a to z, digits and _ and begin with a letter")
        elif name in UNITS or name == "fit":
            self.faults.add(at, f"'{name}' has a meaning of its own in lengths", "choose another name")
        if len(self.faults.found) > faults:
            self.used.add(name)

    def names_of(self, kind: Kind) -> tuple[str, ...]:
        """The declared names of a kind in file order."""
        return tuple(name for name, (other, _) in self.declared.items() if other is kind)

    def use(self, name: str, kind: Kind, at: At) -> str | None:
        """``name`` if it is declared as that kind, now counted as used; else a fault and None."""
        known = self.names_of(kind)
        if name in known or kind in self.unreadable:
            self.used.add(name)
            return name
        self.open_kinds.add(kind)
        self.faults.add(at, f"there is no {kind} '{name}'", word_advice(name, known))
        return None

    def value_of(self, name: str) -> Value:
        """What a name in arithmetic is worth; MeasureError if it is worth nothing here."""
        head, _, size = name.partition(".")
        if head not in self.declared and self.unreadable:
            return LOST
        if head not in self.declared:
            self.leave_open()
            advice = word_advice(name, self.values) if self.values else "write a number and a unit"
            raise MeasureError(f"there is no number called '{name}'", advice)
        self.used.add(head)
        kind = self.declared[head][0]
        sizes = _SIZES.get(kind, ())
        if sizes and size not in sizes:
            said = f"has no size '{size}'" if size else "is not a number by itself"
            raise MeasureError(f"the {kind} '{head}' {said}", f"write {' or '.join(f'{head}.{s}' for s in sizes)}")
        if size and not sizes:
            raise MeasureError(f"the parameter '{head}' has no sizes", f"write {head}")
        return self._known(name, kind)

    def _known(self, name: str, kind: Kind) -> Value:
        value = self.values.get(name)
        if value is None:
            what = f"'{name}' is not known yet here"
            raise MeasureError(
                what, "leathers may use nothing, contents leathers, parameters both, each what stands above"
            )
        return value

    def set_sizes(self, name: str, **sizes: float) -> None:
        """Make the sizes of a leather or content known, in mm; a size that is no number counts as lost."""
        for size, length in sizes.items():
            self.values[f"{name}.{size}"] = LOST if math.isnan(length) else Value(length, 1)

    def leave_open(self) -> None:
        """Say nothing of unused names: something that may use them could not be read."""
        self.open_kinds.update(Kind)

    def mentioned(self, words: frozenset[str]) -> None:
        """Count every declared name among ``words`` as used."""
        self.used |= words & self.declared.keys()

    def report_unused(self) -> None:
        """A fault for every name that nothing uses, save where a reference of its kind could not be read."""
        for name, (kind, at) in self.declared.items():
            if name not in self.used and kind not in self.open_kinds:
                self.faults.add(at, f"nothing uses the {kind} '{name}'", "use it or leave it out")
