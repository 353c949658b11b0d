"""A delivery in a process of its own that dies, or whose disk refuses, at the k-th step it asks of the system."""

from __future__ import annotations

import errno
import os
from collections.abc import Callable, Iterator, Mapping
from functools import partial
from pathlib import Path
from typing import Any
from unittest.mock import patch

from patternforge.delivery import folder as delivery
from patternforge.delivery.exchange import put_in_place
from patternforge.errors import DeliveryError

__all__ = ["DIED", "DONE", "OVERCOME", "REFUSED", "everything", "in_two_steps", "outcome", "outcomes"]

DONE, DIED, REFUSED, OVERCOME = 0, 71, 72, 73
_STEPS = ("mkdir", "open", "write", "fsync", "close", "link", "symlink", "rename", "unlink", "rmdir", "chmod")


def everything(folder: Path) -> dict[str, bytes | str | None]:
    """All there is below ``folder``: bytes of files, targets of links, None for folders."""
    found: dict[str, bytes | str | None] = {}
    for path in sorted(folder.rglob("*")):
        name = path.relative_to(folder).as_posix()
        if path.is_symlink():
            found[name] = str(path.readlink())
        else:
            found[name] = None if path.is_dir() else path.read_bytes()
    return found


def outcomes(act: Callable[[], object], before: Callable[[], None], end: int = DIED) -> Iterator[int]:
    """The status of ``act`` cut short at its first step, its second ...; the last, DONE, is that of a whole run.

    OVERCOME is the status of a run that met a refusal and came to its end all the same.

    ``before`` prepares the disk for each.
    """
    step = 0
    while True:
        before()
        status = outcome(act, step, end)
        yield status
        if status == DONE:
            return
        step += 1


def outcome(act: Callable[[], object], step: int, end: int = DIED) -> int:
    """The exit status of a process of its own that does ``act`` and meets ``end`` at step number ``step``."""
    child = os.fork()
    if child == 0:
        _act(act, step, end)
    return os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])


def in_two_steps(place: Path, files: Mapping[str, bytes]) -> None:
    """A delivery on a system that cannot exchange folders at once."""
    with patch.object(delivery, "put_in_place", partial(put_in_place, exchange=lambda one, other: False)):
        delivery.delivered(place, files)


def _act(act: Callable[[], object], step: int, end: int) -> None:
    status = 99
    met: list[str] = []
    try:
        _meet_at(step, end, met)
        act()
        status = OVERCOME if met else DONE
    except DeliveryError:
        status = REFUSED
    finally:
        os._exit(status)


def _meet_at(step: int, end: int, met: list[str]) -> None:
    count = iter(range(1_000_000))

    def is_due(name: str) -> bool:
        due = next(count) == step
        met.extend([name] if due else [])
        return due

    for name in _STEPS:
        setattr(os, name, _ending(getattr(os, name), is_due, end, name))


def _ending(real: Callable[..., Any], is_due: Callable[[str], bool], end: int, name: str) -> Callable[..., Any]:
    def step(*args: Any, **kwargs: Any) -> Any:
        if is_due(name):
            if name == "write":
                real(args[0], args[1][: len(args[1]) // 2])
            if end == DIED:
                os._exit(DIED)
            if name == "close":
                real(*args)
            raise OSError(errno.ENOSPC, "no room")
        return real(*args, **kwargs)

    return step
