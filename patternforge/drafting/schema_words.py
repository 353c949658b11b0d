"""The few words the schema of ``pattern.json`` is written in."""

from __future__ import annotations

from enum import StrEnum
from typing import Any

from patternforge.wallet.spec import Edge

__all__ = [
    "ANGLE",
    "COUNT",
    "FLAG",
    "LENGTH",
    "NUMBER",
    "SHARE",
    "SIZE",
    "TEXT",
    "by_edge",
    "choice",
    "lines_of",
    "maybe",
    "one_of",
    "record",
    "said",
]

Schema = dict[str, Any]

TEXT: Schema = {"type": "string"}
FLAG: Schema = {"type": "boolean"}
COUNT: Schema = {"type": "integer", "minimum": 0}
NUMBER: Schema = {"type": "number"}
LENGTH: Schema = {"type": "number", "description": "mm"}
SIZE: Schema = {"type": "number", "minimum": 0, "description": "mm"}
SHARE: Schema = {"type": "number", "minimum": 0, "maximum": 1}
ANGLE: Schema = {"type": "number", "minimum": -360, "maximum": 360, "description": "degrees"}


def record(**properties: Schema) -> Schema:
    """An object with exactly these names.

    >>> record(name=TEXT)["required"]
    ['name']
    """
    return {
        "type": "object",
        "properties": properties,
        "required": list(properties),
        "additionalProperties": False,
    }


def by_edge(each: Schema) -> Schema:
    """An object of the same for any edges of the assembly, by their words."""
    return {"type": "object", "properties": {edge.value: each for edge in Edge}, "additionalProperties": False}


def lines_of(each: Schema) -> Schema:
    """An array of any number of the same."""
    return {"type": "array", "items": each}


def choice(words: type[StrEnum]) -> Schema:
    """One of the words of an enumeration."""
    return {"type": "string", "enum": [word.value for word in words]}


def one_of(*each: Schema) -> Schema:
    """Exactly one of several."""
    return {"oneOf": list(each)}


def maybe(each: Schema) -> Schema:
    """The same, or null."""
    return {"anyOf": [each, {"type": "null"}]}


def said(meaning: str, each: Schema) -> Schema:
    """The same with a description of what it means here."""
    return {**each, "description": meaning}
