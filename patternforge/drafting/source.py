"""What pieces are drafted from, kept beside them so that the same program can draft them again."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

__all__ = ["Source"]


@dataclass(frozen=True, slots=True)
class Source:
    """The text of a design file, and what was set beside it by name: values and letters as they were written."""

    text: str
    settings: Mapping[str, str]
    initials: Mapping[str, str]
