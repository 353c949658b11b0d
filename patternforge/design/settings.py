"""Values given beside the file (name = text) put in the place of those the file declares."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from patternforge.design.located import Entry, FaultList, Node, Scalar, Table, beside
from patternforge.design.words import word_advice

__all__ = ["with_settings"]

_OPTION = "--set"
_LEATHER_KEYS = ("thickness", "neutral")


def with_settings(root: Table, settings: Mapping[str, str], faults: FaultList) -> Table:
    """``root`` with the value of a parameter, or the thickness or neutral of a leather, replaced for each setting.

    A name that the file does not declare is a fault. What the new text is worth is found out where it is read.
    """
    for name, text in settings.items():
        at = beside(_OPTION, name, text)
        path = _path(root, name)
        if path is None:
            faults.add(at, f"there is nothing called '{name}' to set", word_advice(name, _settable(root)))
        else:
            root = _replaced(root, path, Scalar(text, at, plain=False))
    return root


def _path(root: Table, name: str) -> tuple[str, ...] | None:
    role, _, key = name.partition(".")
    if not key and name in _names(root, "parameters"):
        return ("parameters", name, "value")
    if role in _names(root, "leathers") and key in ("", *_LEATHER_KEYS):
        return ("leathers", role, key or "thickness")
    return None


def _names(root: Table, key: str) -> tuple[str, ...]:
    node = root.get(key)
    return tuple(entry.key.text for entry in node) if isinstance(node, Table) else ()


def _settable(root: Table) -> tuple[str, ...]:
    roles = _names(root, "leathers")
    return (*_names(root, "parameters"), *roles, *(f"{role}.{key}" for role in roles for key in _LEATHER_KEYS))


def _replaced(table: Table, path: tuple[str, ...], value: Scalar) -> Table:
    head, rest = path[0], path[1:]
    key = next((entry.key for entry in table if entry.key.text == head), Scalar(head, value.at))
    inner = table.get(head)
    node: Node = replace(value, replaced=inner.text) if isinstance(inner, Scalar) else value
    if rest:
        node = _replaced(inner, rest, value) if isinstance(inner, Table) else (inner or value)
    others = tuple(replace(entry, value=node) if entry.key is key else entry for entry in table)
    return replace(table, entries=others if inner is not None else (*others, Entry(key, node)))
