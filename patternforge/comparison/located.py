"""A JSON file step by step: every value with its place, and one plain refusal where it is not what it must be."""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, NoReturn

from patternforge.errors import ReadingError

__all__ = ["Located", "located_json"]

_HUGE = 1e12  # no length, area or angle comes near


@dataclass(frozen=True, slots=True)
class Located:
    """A value of the file and the steps that lead to it, for messages; ReadingError where it is of another kind."""

    file: str
    place: str
    value: Any

    def __getitem__(self, name: str) -> Located:
        """What stands under a name."""
        place = f"{self.place}.{name}" if self.place else name
        if not isinstance(self.value, dict):
            self.refuse("names with values")
        if name not in self.value:
            raise ReadingError(f"{self.file}: {place} is missing; the file is damaged, write it anew with 'draft'")
        return Located(self.file, place, self.value[name])

    def __iter__(self) -> Iterator[Located]:
        """What stands in a list."""
        if not isinstance(self.value, list):
            self.refuse("a list")
        for index, each in enumerate(self.value):
            yield Located(self.file, f"{self.place}[{index}]", each)

    @property
    def is_null(self) -> bool:
        return self.value is None

    @property
    def text(self) -> str:
        if not isinstance(self.value, str):
            self.refuse("a text")
        return self.value

    @property
    def number(self) -> float:
        """A number that can be a measure; true and false are none."""
        if isinstance(self.value, bool) or not isinstance(self.value, int | float) or not abs(self.value) < _HUGE:
            self.refuse("a number")
        return float(self.value)

    @property
    def count(self) -> int:
        """A whole number from 0 up."""
        if isinstance(self.value, bool) or not isinstance(self.value, int) or self.value < 0:
            self.refuse("a whole number")
        return self.value

    @property
    def flag(self) -> bool:
        if not isinstance(self.value, bool):
            self.refuse("true or false")
        return self.value

    @property
    def texts(self) -> dict[str, str]:
        """Texts by name."""
        if not isinstance(self.value, dict):
            self.refuse("names with values")
        return {name: self[name].text for name in self.value}

    def numbers(self, count: int) -> tuple[float, ...]:
        """A list of so many numbers."""
        found = tuple(each.number for each in self)
        if len(found) != count:
            self.refuse(f"{count} numbers")
        return found

    def refuse(self, lawful: str) -> NoReturn:
        """ReadingError that says what should stand in this place."""
        shown = json.dumps(self.value, ensure_ascii=False)
        shown = shown if len(shown) <= 40 else f"{shown[:37]}..."
        place = self.place or "the file"
        raise ReadingError(f"{self.file}: {place} is {shown}, not {lawful}; write the file anew with 'draft'")


def located_json(data: bytes, file: str) -> Located:
    """The JSON file ``data``; ReadingError with line and column where it is none."""
    try:
        return Located(file, "", json.loads(data.decode("utf-8-sig"), parse_constant=_no_number))
    except UnicodeDecodeError as error:
        raise ReadingError(
            f"{file}: this is no text, so it is no pattern.json; give the file that 'draft' wrote"
        ) from error
    except json.JSONDecodeError as error:
        is_short = error.pos >= len(error.doc.rstrip()) or error.msg.startswith("Unterminated")
        what = "the file ends too soon" if is_short else f"this is no JSON: {error.msg}"
        where = f"{file}:{error.lineno}:{error.colno}"
        raise ReadingError(f"{where}: {what}; give a whole pattern.json that 'draft' wrote") from error
    except (ValueError, RecursionError) as error:
        raise ReadingError(f"{file}: this is no pattern.json; give the file that 'draft' wrote") from error


def _no_number(word: str) -> NoReturn:
    raise ValueError(f"{word} is no number")
