"""Plain data as JSON: numbers to a billionth, keys in the order given, short things on one line; UTF-8."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from typing import Any

from patternforge.export.numbers import decimal

__all__ = ["json_bytes"]

_DECIMALS = 9  # bulges of shallow arcs need this many for their radius to be true to a hundredth of a mm
_WORDS = json.JSONEncoder(ensure_ascii=False)  # json.dumps would make one for every word
_LINE = 118  # longest line that holds a whole list or record, characters


def json_bytes(document: Mapping[str, Any]) -> bytes:
    """``document`` (dicts, lists, strings, numbers, truth values, None) as a JSON file, a line feed at its end.

    The same data give the same bytes. No exponent, no negative zero. GeometryError for a number that is not finite,
    TypeError for anything that JSON does not know.

    >>> json_bytes({"at": [85.60, -0.0], "name": "Köper"}).decode()
    '{"at": [85.6, 0], "name": "Köper"}\\n'
    """
    return (_laid_out(document, "") + "\n").encode("utf-8")


def _laid_out(value: Any, indent: str) -> str:
    deeper = indent + "  "
    if isinstance(value, Mapping):
        return _rows("{", [f"{_key(key)}: {_laid_out(each, deeper)}" for key, each in value.items()], "}", indent)
    if isinstance(value, list):
        return _rows("[", [_laid_out(each, deeper) for each in value], "]", indent)
    if isinstance(value, float):
        return decimal(value, _DECIMALS)
    if value is None or isinstance(value, str | bool | int):
        return _WORDS.encode(value)
    raise TypeError(f"{value!r} cannot stand in a JSON file")


def _rows(opened: str, rows: Sequence[str], closed: str, indent: str) -> str:
    """All on one line where it is short enough, else a line for each; a row that is broken breaks what holds it."""
    flat = f"{opened}{', '.join(rows)}{closed}"
    if len(indent) + len(flat) <= _LINE and "\n" not in flat:
        return flat
    body = ",\n".join(f"{indent}  {row}" for row in rows)
    return f"{opened}\n{body}\n{indent}{closed}"


def _key(key: Any) -> str:
    if not isinstance(key, str):
        raise TypeError(f"{key!r} cannot be a name in a JSON file")
    return _WORDS.encode(key)
