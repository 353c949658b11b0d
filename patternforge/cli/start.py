"""A design of one's own: what is wished for, by options or by answers, and the file that comes of it."""

from __future__ import annotations

import sys
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

import typer

from patternforge.delivery import file_delivered
from patternforge.drafting.names import file_word
from patternforge.pipeline.ready import own_design, ready_design, ready_names

__all__ = ["Wish", "started", "wished"]


@dataclass(frozen=True, slots=True)
class Wish:
    """A ready design, the title of the new one, values set in it, the file to write; empty where nothing is said."""

    start: str
    title: str
    settings: Mapping[str, str]
    out: Path | None

    @property
    def is_empty(self) -> bool:
        """Whether nothing at all is said."""
        return not (self.start or self.title or self.settings or self.out)


def wished(said: Wish) -> Wish:
    """What is said, or if nothing is and somebody sits at the keyboard, what is answered to a few questions.

    A usage error when it is not said which ready design to start from.
    """
    if said.start:
        return said
    if not said.is_empty or not _is_keyboard():
        raise typer.BadParameter(f"say which ready design: {', '.join(ready_names())}", param_hint="--from")
    from patternforge.cli.questions import answered

    return answered()


def _is_keyboard() -> bool:
    return sys.stdin is not None and sys.stdin.isatty()


def started(wish: Wish) -> Path:
    """Writes the wished-for design and returns its path; DeliveryError when the file is there already."""
    ready = ready_design(wish.start)
    text = own_design(ready, wish.title or ready.resolved().title, wish.settings)
    path = wish.out or Path(f"{file_word(wish.title or ready.name)}.yaml")
    return file_delivered(path, text.encode("utf-8"))
