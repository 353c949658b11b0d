"""What a delivery leaves beside the folder is taken away, and nothing of the user's with it."""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass
from itertools import chain, count
from pathlib import Path, PurePosixPath

from patternforge.delivery.content import content, same_file
from patternforge.delivery.listing import LIST

__all__ = ["Workbench", "cleared", "recovered"]


@dataclass(frozen=True, slots=True)
class Workbench:
    """The hidden folder beside ``folder`` in which a delivery works."""

    folder: Path

    @property
    def root(self) -> Path:
        """The workbench itself."""
        return self.folder.parent / f".{self.folder.name}.patternforge"

    @property
    def building(self) -> Path:
        """A set that is not complete."""
        return self.root / "building"

    @property
    def ready(self) -> Path:
        """A complete set: the new one before it changes places with the folder, the old one after."""
        return self.root / "ready"

    @property
    def aside(self) -> Path:
        """The old set while the folder is missing, where two steps are needed."""
        return self.root / "aside"


def recovered(bench: Workbench) -> tuple[str, ...]:
    """Brings a delivery that was cut short to its end or back to its start; see ``cleared`` for what is returned."""
    if bench.aside.exists() and not bench.folder.exists():
        bench.aside.rename(bench.folder)
    return cleared(bench)


def cleared(bench: Workbench) -> tuple[str, ...]:
    """Takes the workbench away and returns the paths of what was put back into the folder.

    Put back is what the user changed or added while the folders changed places: under its own name if that is free,
    else under a numbered one.
    """
    if bench.building.exists():
        shutil.rmtree(bench.building)
    back = [path for old in (bench.ready, bench.aside) if old.exists() for path in _emptied(old, bench.folder)]
    with suppress(OSError):
        bench.root.rmdir()
    return tuple(back)


def _emptied(old: Path, folder: Path) -> Iterator[str]:
    found = content(old)
    for path in found.others:
        place = old / path
        if place.is_dir() and not place.is_symlink():
            continue
        if same_file(place, folder / path):
            place.unlink()
        else:
            yield _put_back(place, folder, PurePosixPath(path))
    # The list goes last: a run cut short here must still be able to tell what the rest is.
    for path in sorted(found.own, key=lambda path: path == LIST):
        (old / path).unlink()
    _without_empty_folders(old)


def _put_back(place: Path, folder: Path, path: PurePosixPath) -> str:
    numbered = (path.with_name(f"{path.stem}-{number}{path.suffix}") for number in count(2))
    free = next(each for each in chain([path], numbered) if not os.path.lexists(folder / each))
    (folder / free.parent).mkdir(parents=True, exist_ok=True)
    place.rename(folder / free)
    return str(free)


def _without_empty_folders(old: Path) -> None:
    for inner, _, _ in os.walk(old, topdown=False):
        Path(inner).rmdir()
