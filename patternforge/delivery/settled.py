"""Waiting until what was written is on the disk, so that a power cut finds it there too."""

from __future__ import annotations

import ctypes
import os
from pathlib import Path

__all__ = ["settle", "settle_names"]


def settle(tree: Path) -> None:
    """Waits until all files and names below the folder ``tree`` are on the disk; OSError when they cannot be.

    One call for the whole file system where there is such a call (syncfs, Linux 2.6.39): many times as quick as one
    for each file.
    """
    sync = getattr(ctypes.CDLL(None, use_errno=True), "syncfs", None) if os.name == "posix" else None
    if sync is None:
        _settle_each(tree)
        return
    handle = os.open(tree, os.O_RDONLY)
    try:
        if sync(handle) != 0:
            number = ctypes.get_errno()
            raise OSError(number, os.strerror(number), str(tree))
    finally:
        os.close(handle)


def _settle_each(tree: Path) -> None:
    for inner, _, files in os.walk(tree):
        for name in files:
            if not (Path(inner) / name).is_symlink():
                _settle_one(Path(inner) / name, os.O_RDWR)
        settle_names(Path(inner))


def settle_names(folder: Path) -> None:
    """Waits until the names in ``folder`` are on the disk, where the system can tell."""
    if os.name != "nt":
        _settle_one(folder, os.O_RDONLY)


def _settle_one(path: Path, how: int) -> None:
    handle = os.open(path, how)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
