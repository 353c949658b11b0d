"""A complete new folder, built beside the one it is to replace, with everything of the user's carried over."""

from __future__ import annotations

import errno
import os
import shutil
from collections.abc import Iterable, Mapping
from pathlib import Path

from patternforge.delivery.listing import LIST, listing
from patternforge.delivery.settled import settle

__all__ = ["staged"]

_BINARY = getattr(os, "O_BINARY", 0)


def staged(target: Path, files: Mapping[str, bytes], folder: Path, others: Iterable[str]) -> None:
    """Builds ``target``: ``files`` with their list, and from ``folder`` the paths ``others``, all of it on the disk.

    Files of the user's are carried as second names of the same file where the disk knows such, else copied whole.
    OSError when anything cannot be written.
    """
    target.mkdir()
    for path, data in sorted({**files, LIST: listing(files)}.items()):
        _written(_with_parents(target, path), data)
    for path in others:
        _carried(folder / path, _with_parents(target, path))
    _with_modes_of(folder, target)
    settle(target)


def _with_parents(target: Path, path: str) -> Path:
    place = target / path
    place.parent.mkdir(parents=True, exist_ok=True)
    return place


def _written(place: Path, data: bytes) -> None:
    handle = os.open(place, os.O_WRONLY | os.O_CREAT | os.O_EXCL | _BINARY, 0o666)
    try:
        rest = memoryview(data)
        while rest:
            rest = rest[os.write(handle, rest) :]
    finally:
        os.close(handle)


def _carried(source: Path, place: Path) -> None:
    if source.is_dir() and not source.is_symlink():
        place.mkdir()
        return
    if os.path.lexists(place):
        raise FileExistsError(errno.EEXIST, "it is there already", str(source))
    try:
        os.link(source, place, follow_symlinks=False)
    except (OSError, NotImplementedError):  # no hard links there, or none that leave a symbolic link as it is
        shutil.copy2(source, place, follow_symlinks=False)


def _with_modes_of(folder: Path, target: Path) -> None:
    """Folders that were there before keep who may read and write them."""
    for inner, _, _ in os.walk(target):
        before = folder / Path(inner).relative_to(target)
        if before.is_dir():
            shutil.copymode(before, inner)
