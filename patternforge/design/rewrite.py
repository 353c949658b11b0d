"""A design's text with other values in it, everything else as it stands: comments, order, spacing."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from patternforge.design.located import At, Entry, FaultList, Node, Scalar, Table
from patternforge.design.settings import with_settings
from patternforge.design.source import located
from patternforge.errors import DesignError, Fault

__all__ = ["rewritten"]

_BREAK = re.compile(r"\r\n|\n|\r")
_QUOTED = re.compile(r"""'(?:[^']|'')*'|"(?:[^"\\]|\\.)*\"""", re.DOTALL)
_PLAIN = re.compile(r"[A-Za-z0-9][A-Za-z0-9 .+*/()_%-]*")


@dataclass(frozen=True, slots=True)
class _Edit:
    """``new`` takes the place of the text from ``start`` to ``end``."""

    start: int
    end: int
    new: str


def rewritten(text: str, file: str, settings: Mapping[str, str], title: str = "") -> str:
    """``text`` with the ``settings`` (as for ``load_design``) and, if given, the ``title`` written into it.

    DesignError for a name that the text does not declare; what a value is worth is not looked at.

    >>> print(rewritten("design: A  # mine\\nparameters: {gap: {value: 3 mm}}", "a.yaml", {"gap": "4 mm"}, "B: two"))
    design: 'B: two'  # mine
    parameters: {gap: {value: 4 mm}}
    """
    faults = FaultList()
    root = located(text, file, faults)
    changed = with_settings(root, settings, faults)
    faults.raise_if_any()
    starts = [0, *(match.end() for match in _BREAK.finditer(text))]
    edits = list(_edits(text, starts, root, changed))
    if title:
        edits.append(_title(text, starts, root, title))
    for edit in sorted(edits, key=lambda edit: edit.start, reverse=True):
        text = text[: edit.start] + edit.new + text[edit.end :]
    return text


def _edits(text: str, starts: list[int], old: Table, new: Table) -> Iterator[_Edit]:
    for entry in new:
        before, after = old.get(entry.key.text), entry.value
        if isinstance(after, Scalar) and after.at.setting:
            yield _value(text, starts, before, after.text) if before else _key(text, starts, old, entry)
        elif isinstance(after, Table) and isinstance(before, Table):
            yield from _edits(text, starts, before, after)


def _title(text: str, starts: list[int], root: Table, title: str) -> _Edit:
    node = root.get("design")
    if node is None:
        return _Edit(0, 0, f"design: {_written(title)}\n")
    return _value(text, starts, node, title)


def _value(text: str, starts: list[int], node: Node, new: str) -> _Edit:
    start = _offset(starts, node.at)
    quoted = _QUOTED.match(text, start)
    if quoted:
        return _Edit(start, quoted.end(), _written(new))
    end = start + len(node.text) if isinstance(node, Scalar) else start
    if not isinstance(node, Scalar) or text[start:end] != node.text:
        fault = Fault(node.at.file, node.at.line, node.at.column, "this value cannot be replaced", "edit it by hand")
        raise DesignError([fault])
    return _Edit(start, end, _written(new))


def _key(text: str, starts: list[int], table: Table, entry: Entry) -> _Edit:
    """A key that the table did not have becomes its first one."""
    start = _offset(starts, table.at)
    value = entry.value.text if isinstance(entry.value, Scalar) else ""
    row = f"{entry.key.text}: {_written(value)}"
    if text[start] == "{":
        return _Edit(start + 1, start + 1, f"{row}, ")
    return _Edit(start, start, f"{row}\n{' ' * (table.at.column - 1)}")


def _offset(starts: list[int], at: At) -> int:
    return starts[at.line - 1] + at.column - 1


def _written(value: str) -> str:
    """The value as YAML writes it, in quotes unless it is surely plain."""
    if _PLAIN.fullmatch(value) and not value.endswith(" "):
        return value
    return "'" + value.replace("'", "''") + "'"
