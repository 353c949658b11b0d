"""Reading one table of a design against its form: every value once, every fault where it stands.

Each reader gives a value of the right type whatever happens; after a fault it is one that raises no further fault
(a number that is not a number, a default). The design is built only if there was none.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from typing import TypeVar

from patternforge.design.arithmetic import as_length, as_number
from patternforge.design.form import Form, keys_of, required_keys
from patternforge.design.located import At, Lost, Node, Row, Scalar, Table
from patternforge.design.scope import Kind, Scope
from patternforge.design.values import ANY, NOT_NEGATIVE, Bounds, count_of, kind_of, number_of, row_of, text_of
from patternforge.design.words import listed, nearest, word_advice

__all__ = ["Entries", "entries", "kind_named", "titled"]

_LONGEST_NOTES = 10_000
_Choice = TypeVar("_Choice", bound=StrEnum)


@dataclass(slots=True)
class Entries:
    """The entries of one table, called ``what`` in messages."""

    what: str
    at: At
    scope: Scope
    nodes: dict[str, Node] = field(default_factory=dict)

    def node(self, key: str) -> Node | None:
        """The value of a key, None if it is left out or was refused."""
        node = self.nodes.get(key)
        return None if isinstance(node, Lost) else node

    def at_of(self, key: str) -> At:
        """Where the value of ``key`` stands, or the table if it is left out."""
        return self.nodes[key].at if key in self.nodes else self.at

    def is_refused(self, key: str) -> bool:
        """True if a value stands at ``key`` that was refused already."""
        return isinstance(self.nodes.get(key), Lost)

    def _refuse(self, key: str) -> None:
        self.nodes[key] = Lost(self.at_of(key))

    def add_fault(self, key: str, what: str, remedy: str = "") -> None:
        """Take down a fault of the value of ``key``."""
        self.scope.faults.add(self.at_of(key), what, remedy)

    def scalar(self, key: str) -> Scalar | None:
        """The single value of a key; a fault if it is a list or table."""
        node = self.node(key)
        if node is None or isinstance(node, Scalar):
            return node
        self.add_fault(key, f"'{key}' of {self.what} is one value, not {kind_of(node)}", "write it without brackets")
        self.scope.leave_open()
        self._refuse(key)
        return None

    def text(self, key: str, default: str = "") -> str:
        """A text on one line."""
        scalar = self.scalar(key)
        return default if scalar is None else text_of(scalar, self._name(key), self.scope)

    def use(self, key: str, kind: Kind) -> str:
        """A name declared as that kind, now counted as used."""
        name = self.text(key)
        if not name:
            self.scope.leave_open()
            return ""
        return self.scope.use(name, kind, self.at_of(key)) or ""

    def notes(self, key: str) -> str:
        """A text of any number of lines."""
        scalar = self.scalar(key)
        if scalar is not None and len(scalar.text) > _LONGEST_NOTES:
            self.add_fault(key, f"'{key}' of {self.what} is too long", f"use at most {_LONGEST_NOTES} characters")
        return scalar.text.strip() if scalar is not None else ""

    def number(self, key: str, default: float = math.nan, bounds: Bounds = ANY) -> float:
        """A plain number, arithmetic allowed."""
        scalar = self.scalar(key)
        return default if scalar is None else number_of(scalar, self._name(key), self.scope, as_number, bounds)

    def length(self, key: str, default: float = math.nan, bounds: Bounds = NOT_NEGATIVE) -> float:
        """A length in mm, arithmetic allowed."""
        scalar = self.scalar(key)
        return default if scalar is None else number_of(scalar, self._name(key), self.scope, as_length, bounds)

    def optional_length(self, key: str, bounds: Bounds = NOT_NEGATIVE) -> float | None:
        """A length in mm, or None if the key is left out."""
        return self.length(key, bounds=bounds) if key in self.nodes else None

    def angle(self, key: str, default: float, bounds: Bounds) -> float:
        """An angle in degrees; the word deg or a degree sign may follow the number."""
        scalar = self.scalar(key)
        if scalar is None:
            return default
        bare = Scalar(scalar.text.strip().removesuffix("°").removesuffix("deg"), scalar.at, scalar.plain)
        return number_of(bare, self._name(key), self.scope, as_number, bounds)

    def count(self, key: str, default: int = 1, low: int = 1, high: int = 12) -> int:
        """A whole number, arithmetic allowed."""
        scalar = self.scalar(key)
        return default if scalar is None else count_of(scalar, self._name(key), self.scope, Bounds(low, high))

    def choice(self, key: str, words: type[_Choice], default: _Choice) -> _Choice:
        """One of the words of ``words``."""
        found = self.optional_choice(key, words)
        return default if found is None else found

    def optional_choice(self, key: str, words: type[_Choice]) -> _Choice | None:
        """One of the words of ``words``, or None if the key is left out."""
        scalar = self.scalar(key)
        found = None if scalar is None else self._chosen(scalar, key, words)
        if scalar is not None and found is None:
            self._refuse(key)
        return found

    def choices(self, key: str, words: type[_Choice]) -> tuple[tuple[_Choice, At], ...]:
        """A list of words of ``words`` with their places; a word that stands twice is a fault."""
        found: list[tuple[_Choice, At]] = []
        for scalar in self.scalars(key):
            word = self._chosen(scalar, key, words)
            if word is None:
                self._refuse(key)
            elif word in [other for other, _ in found]:
                self.scope.faults.add(
                    scalar.at, f"'{word}' stands twice in '{key}' of {self.what}", "keep one of them"
                )
            else:
                found.append((word, scalar.at))
        return tuple(found)

    def _chosen(self, scalar: Scalar, key: str, words: type[_Choice]) -> _Choice | None:
        known = [str(word) for word in words]
        if scalar.text in known:
            return words(scalar.text)
        what = f"'{key}' of {self.what} cannot be '{scalar.text[:40]}'"
        self.scope.faults.add(scalar.at, what, word_advice(scalar.text, known))
        return None

    def flag(self, key: str, default: bool) -> bool:
        """True or false, said in these words."""
        scalar = self.scalar(key)
        if scalar is None:
            return default
        if scalar.text not in ("true", "false"):
            self.add_fault(key, f"'{key}' of {self.what} is '{scalar.text[:40]}'", "write true or false")
        return scalar.text == "true"

    def row(self, key: str) -> tuple[Node, ...]:
        """The entries of a list; a fault if the value is none."""
        node = self.node(key)
        if node is None:
            return ()
        if not isinstance(node, Row):
            self._refuse(key)
        return row_of(node, self._name(key), self.scope)

    def scalars(self, key: str) -> tuple[Scalar, ...]:
        """The entries of a list of single values."""
        found: list[Scalar] = []
        for node in self.row(key):
            if isinstance(node, Scalar) and not node.is_blank:
                found.append(node)
                continue
            self.scope.leave_open()
            self._refuse(key)
            if not isinstance(node, Lost):
                self.scope.faults.add(node.at, f"'{key}' of {self.what} lists single words", "write [one, two]")
        return tuple(found)

    def table(self, key: str, form: type[Form], called: str = "") -> Entries:
        """A table within this one; without entries if the key is left out."""
        what = called or self._name(key)
        return (
            entries(self.nodes[key], form, what, self.scope)
            if key in self.nodes
            else Entries(what, self.at, self.scope)
        )

    def named(self, key: str) -> tuple[tuple[Scalar, Node], ...]:
        """The keys and values of a table whose keys are names; a fault if the value is no table."""
        node = self.node(key)
        if node is None:
            return ()
        if isinstance(node, Table):
            for entry in node:
                text_of(entry.key, f"a name in '{key}'", self.scope)
            return tuple((entry.key, entry.value) for entry in node)
        _refuse_table(node, self._name(key), "name: value", self.scope)
        self._refuse(key)
        return ()

    def _name(self, key: str) -> str:
        return f"'{key}' of {self.what}"


def entries(node: Node, form: type[Form], what: str, scope: Scope) -> Entries:
    """The table ``node`` with its keys checked against ``form``; faults for unknown and missing ones.

    A key that is almost a lawful one is read as that, so that its value is looked at in the same run.
    """
    lawful = keys_of(form)
    if not isinstance(node, Table):
        _refuse_table(node, what, ", ".join(f"{key}: ..." for key in required_keys(form) or list(lawful)[:2]), scope)
        return Entries(what, node.at, scope, {key: Lost(node.at) for key in lawful})
    found = Entries(what, node.at, scope)
    for entry in node:
        key = entry.key.text if entry.key.text in lawful else _mended(entry.key, node, lawful, found)
        if key is not None and not _is_blank(entry.value, key, found):
            found.nodes[key] = entry.value
    for key in required_keys(form):
        if key not in found.nodes:
            scope.leave_open()
            scope.faults.add(node.at, f"{what} has no '{key}'", f"add '{key}: ...' ({lawful[key]})")
            found.nodes[key] = Lost(node.at)
    return found


def kind_named(node: Node, forms: Mapping[str, type[Form]]) -> str | None:
    """The kind of table that ``node`` says it is by one of its keys, spelt right or almost right; None if none.

    ``forms`` gives the form of each kind under the key that names it.
    """
    if not isinstance(node, Table):
        return None
    keys = [entry.key.text for entry in node]
    known = next((key for key in keys if key in forms), None)
    strange = [key for key in keys if not any(key in keys_of(form) for form in forms.values())]
    return known or next((near for key in strange if (near := nearest(key, forms))), None)


def titled(node: Node, kind: str) -> str:
    """What a table is called in messages: its kind and the name it gives itself under that key."""
    name = node.get(kind) if isinstance(node, Table) else None
    return f"{kind} '{name.text[:40]}'" if isinstance(name, Scalar) and name.text else f"this {kind}"


def _mended(key: Scalar, table: Table, lawful: dict[str, str], found: Entries) -> str | None:
    near = nearest(key.text, lawful)
    advice = f"did you mean '{near}'?" if near else f"known here: {listed(lawful)}"
    found.scope.faults.add(key.at, f"{found.what} has no key '{key.text[:40]}'", advice)
    if near is None or table.get(near) is not None:
        found.scope.leave_open()
        return None
    return near


def _is_blank(node: Node, key: str, found: Entries) -> bool:
    if isinstance(node, Lost):
        found.scope.leave_open()
    if not isinstance(node, Scalar) or not node.is_blank:
        return False
    found.scope.leave_open()
    found.scope.faults.add(node.at, f"'{key}' of {found.what} has no value", "write one, or leave the key out")
    found.nodes[key] = Lost(node.at)
    return True


def _refuse_table(node: Node, what: str, example: str, scope: Scope) -> None:
    scope.leave_open()
    if isinstance(node, Lost):
        return
    if isinstance(node, Scalar) and node.plain and ":" in node.text:
        name, _, rest = node.text.partition(":")
        advice = f"write '{name[:40]}: {rest[:40]}'"
        scope.faults.add(node.at, f"there is no space after the colon of '{name[:40]}'", advice)
    elif isinstance(node, Scalar) and node.is_blank:
        scope.faults.add(node.at, f"{what} has no value", f"write keys under it, such as {example}")
    else:
        scope.faults.add(node.at, f"{what} is a table of keys, not {kind_of(node)}", f"write {{{example}}}")
