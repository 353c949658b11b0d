"""What lies in a folder: which entries are the program's own, as its list says, and which are the user's."""

from __future__ import annotations

import os
import stat
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from patternforge.delivery.listing import LIST, digest, listed

__all__ = ["Content", "content", "entries", "same_file"]


@dataclass(frozen=True, slots=True)
class Content:
    """Paths inside a folder, steps parted by ``/``: the program's files; what else there is, empty folders too."""

    own: tuple[str, ...]
    others: tuple[str, ...]


def content(folder: Path) -> Content:
    """What lies in ``folder``; a file that was changed since it was written is the user's. OSError if unreadable."""
    known = _known(folder)
    own: list[str] = []
    others: list[str] = []
    for path in entries(folder):
        unchanged = path in known and _digest_of(folder / path) == known[path]
        (own if unchanged else others).append(path)
    return Content(tuple(own), tuple(others))


def entries(folder: Path) -> Iterator[str]:
    """Every file, link and empty folder below ``folder``, sorted; links are not followed; none if it is missing."""
    if folder.is_dir():
        yield from _below(folder, "")


def _below(folder: Path, prefix: str) -> Iterator[str]:
    with os.scandir(folder) as found:
        inside = sorted(found, key=lambda entry: entry.name)
    for entry in inside:
        path = prefix + entry.name
        if entry.is_dir(follow_symlinks=False):
            deeper = list(_below(Path(entry.path), f"{path}/"))
            yield from deeper or [path]
        else:
            yield path


def _known(folder: Path) -> Mapping[str, str]:
    path = folder / LIST
    return listed(path.read_bytes()) if _is_plain(path) else {}


def _digest_of(path: Path) -> str:
    return digest(path.read_bytes()) if _is_plain(path) else ""


def _is_plain(path: Path) -> bool:
    """A readable file, not a link to one."""
    try:
        return stat.S_ISREG(path.lstat().st_mode) and os.access(path, os.R_OK)
    except OSError:
        return False


def same_file(one: Path, other: Path) -> bool:
    """Whether both are the same file on the disk, or files of the same bytes, or links to the same place."""
    if not (os.path.lexists(one) and os.path.lexists(other)):
        return False
    if os.path.samestat(one.lstat(), other.lstat()):
        return True
    if one.is_symlink() and other.is_symlink():
        return one.readlink() == other.readlink()
    if _is_plain(one) and _is_plain(other):
        return one.read_bytes() == other.read_bytes()
    return False
