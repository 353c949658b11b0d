"""Two folders change places in one step where the system can do that, else in two."""

from __future__ import annotations

import ctypes
import errno
import os
from collections.abc import Callable
from pathlib import Path

__all__ = ["exchanged_at_once", "put_in_place"]

_HERE = -100  # AT_FDCWD of fcntl.h: paths are those of the process
_EXCHANGE = 2  # RENAME_EXCHANGE of linux/fs.h
_UNKNOWN_HERE = (errno.ENOSYS, errno.EINVAL, errno.ENOTSUP)

Exchange = Callable[[Path, Path], bool]


def exchanged_at_once(one: Path, other: Path) -> bool:
    """Whether ``one`` and ``other`` have changed places in a single step; False where the system knows no such step.

    It is renameat2 with RENAME_EXCHANGE (Linux 3.15). OSError when the step is known and fails.
    """
    rename = getattr(ctypes.CDLL(None, use_errno=True), "renameat2", None) if os.name == "posix" else None
    if rename is None:
        return False
    if rename(_HERE, os.fsencode(one), _HERE, os.fsencode(other), _EXCHANGE) == 0:
        return True
    number = ctypes.get_errno()
    if number in _UNKNOWN_HERE:
        return False
    raise OSError(number, os.strerror(number), str(other))


def put_in_place(ready: Path, folder: Path, aside: Path, exchange: Exchange = exchanged_at_once) -> None:
    """``ready`` becomes ``folder``; what that was before becomes ``ready``, or ``aside`` where it takes two steps.

    Between the two steps ``folder`` is missing, and whoever then finds ``aside`` has to put it back. OSError when the
    folders cannot be moved; ``folder`` is then what it was.
    """
    if not folder.exists():
        ready.rename(folder)
    elif not exchange(ready, folder):
        folder.rename(aside)
        try:
            ready.rename(folder)
        except OSError:
            aside.rename(folder)
            raise
