"""Machine tables found by name or file: beside the design, in the user's own folder, or among the ready ones."""

from __future__ import annotations

import os
from collections.abc import Iterator
from dataclasses import dataclass
from difflib import get_close_matches
from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path

from patternforge.errors import DesignError, Fault
from patternforge.machines.load import load_machine
from patternforge.machines.table import Machine
from patternforge.pipeline.stages import shown, text_at
from patternforge.units import counted

__all__ = ["KnownMachine", "known_machines", "machine_at", "own_folder", "table_text"]

_KIND = "machine"
_BESIDE = "machines"
_ENDINGS = (".yaml", ".yml")


@dataclass(frozen=True, slots=True)
class KnownMachine:
    """A table that can be asked for by name, its file as it is called in messages, its text, and where it lies."""

    name: str
    file: str
    text: str
    place: str

    @property
    def title(self) -> str:
        """The title in the table, or how many faults keep it from being read."""
        try:
            return load_machine(self.text, self.file).title
        except DesignError as error:
            return f"cannot be read: {counted(len(error.faults), 'fault')}"


def own_folder() -> Path:
    """Where a user keeps tables for every design: ``patternforge/machines`` in the folder for settings."""
    settings = os.environ.get("XDG_CONFIG_HOME")
    return (Path(settings) if settings else Path.home() / ".config") / "patternforge" / "machines"


def machine_at(word: str, folder: Path) -> Machine:
    """The machine that ``word`` names, or that the file ``word`` holds; ``folder`` is that of the design.

    A file is looked for where the command is run, then in ``folder``. DesignError when there is none of that name,
    and with every fault of a table that cannot be taken.
    """
    if _is_file(word):
        return _in_file(Path(word) if Path(word).exists() else _beside(word, folder))
    found = _known(word, folder, f"--machine {word}", ", or name a file")
    return load_machine(found.text, found.file)


def known_machines(folder: Path) -> tuple[KnownMachine, ...]:
    """Every table that can be named, by name: from ``machines`` in ``folder``, the user's own folder, the ready ones.

    Of two of one name the first found counts.

    >>> [each.name for each in known_machines(Path("nowhere")) if each.place == "ready"]
    ['die-shop', 'drag-knife', 'hand', 'laser']
    """
    found: dict[str, KnownMachine] = {}
    for each in (*_in_folder(folder / _BESIDE), *_in_folder(own_folder()), *_ready()):
        found.setdefault(each.name, each)
    return tuple(found[name] for name in sorted(found))


def table_text(name: str, folder: Path) -> str:
    """The text of the table of that name, to be copied; DesignError for no such name or a table with faults."""
    found = _known(name, folder, f"machines {name}")
    load_machine(found.text, found.file)
    return found.text


def _known(name: str, folder: Path, asked: str, or_else: str = "") -> KnownMachine:
    """The table of that name; DesignError, blaming the words that ``asked`` for it, when there is none."""
    known = {each.name: each for each in known_machines(folder)}
    if name not in known:
        near = get_close_matches(name, known, n=1)
        advice = f"did you mean {near[0]}?" if near else f"choose one of {', '.join(known)}{or_else}"
        raise DesignError([Fault(asked, 0, 0, f"there is no machine called '{name}'", advice)])
    return known[name]


def _is_file(word: str) -> bool:
    return word.endswith(_ENDINGS) or "/" in word or os.sep in word


def _beside(word: str, folder: Path) -> Path:
    """The file next to the design, if it is there and nowhere else."""
    return folder / word if (folder / word).exists() else Path(word)


def _in_file(path: Path) -> Machine:
    return load_machine(text_at(path, _KIND), shown(path))


def _in_folder(folder: Path) -> Iterator[KnownMachine]:
    for path in sorted(folder.glob("*.yaml")):
        yield KnownMachine(path.stem, shown(path), text_at(path, _KIND), shown(folder))


def _ready() -> Iterator[KnownMachine]:
    tables: Traversable = files("patternforge") / "machines"
    for each in sorted(tables.iterdir(), key=lambda entry: entry.name):
        if each.name.endswith(".yaml"):
            yield KnownMachine(each.name.removesuffix(".yaml"), each.name, each.read_text("utf-8"), "ready")
