"""A set of files becomes the content of a folder in one step; killed at any moment, the old or the new set stands.

The new set is built complete in a hidden workbench beside the folder, files of the user's are carried over, then the
two folders change places. Where the system cannot exchange folders in one step there is a moment between two steps in
which the folder is missing; a run that is killed in it leaves the old set on the workbench, and the next run puts it
back.
"""

from __future__ import annotations

import errno
import os
from collections.abc import Iterator, Mapping
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from pathlib import Path, PurePosixPath

from patternforge.delivery.clearing import Workbench, cleared, recovered
from patternforge.delivery.content import Content, content
from patternforge.delivery.exchange import put_in_place
from patternforge.delivery.faults import plain_refusals
from patternforge.delivery.listing import LIST
from patternforge.delivery.settled import settle_names
from patternforge.delivery.staging import staged
from patternforge.errors import DeliveryError

__all__ = ["Delivery", "delivered"]


@dataclass(frozen=True, slots=True)
class Delivery:
    """What was done in ``folder``: paths written, files of the last set taken away, files of the user's kept."""

    folder: Path
    written: tuple[str, ...]
    removed: tuple[str, ...]
    kept: tuple[str, ...]


def delivered(folder: Path, files: Mapping[str, bytes]) -> Delivery:
    """Makes ``files`` (content by path, steps parted by ``/``) and their list the program's files in ``folder``.

    Files of an earlier set that are not in this one are taken away. Anything else in the folder stays; a file of the
    program that was changed by hand counts as the user's. DeliveryError when a name is needed that something of the
    user's has, or when the disk refuses; the folder is then what it was.
    """
    place = Path(os.path.realpath(folder))
    bench = Workbench(place)
    with plain_refusals(folder, named=lambda name: _as_known(name, folder, bench)):
        place.parent.mkdir(parents=True, exist_ok=True)
        if place.exists() and not place.is_dir():
            raise DeliveryError(f"{folder}: a file of that name stands where the folder is to be; move it away")
        with _locked(place.parent):
            return _delivered(folder, bench, files)


def _as_known(name: str, shown: Path, bench: Workbench) -> str:
    """The name that the user knows a file by: one on the workbench by its place in the folder."""
    for inner in (bench.building, bench.ready, bench.aside, bench.folder):
        if Path(name).is_relative_to(inner):
            return str(shown / Path(name).relative_to(inner))
    return str(shown) if Path(name).is_relative_to(bench.root) else name


def _delivered(shown: Path, bench: Workbench, files: Mapping[str, bytes]) -> Delivery:
    back = recovered(bench)
    found = content(bench.folder)
    others = _others(shown, bench.folder, found, files)
    _refuse_locked_folders(bench.folder, found)
    try:
        bench.root.mkdir(exist_ok=True)
        staged(bench.building, files, bench.folder, others)
        bench.building.rename(bench.ready)
        put_in_place(bench.ready, bench.folder, bench.aside)
        settle_names(bench.folder.parent)
    except BaseException:
        with suppress(OSError):
            recovered(bench)
        raise
    back += cleared(bench)
    written = (*sorted(files), LIST)
    removed = tuple(path for path in found.own if path not in written)
    return Delivery(shown, written, removed, (*others, *back))


def _refuse_locked_folders(folder: Path, found: Content) -> None:
    """PermissionError, before anything is moved, for a folder from which a file of the last set cannot be taken."""
    for inner in sorted({(folder / path).parent for path in found.own}):
        if not os.access(inner, os.W_OK | os.X_OK):
            raise PermissionError(errno.EACCES, "no permission", str(inner))


def _others(shown: Path, folder: Path, found: Content, files: Mapping[str, bytes]) -> tuple[str, ...]:
    """What is to be carried over; DeliveryError if a name of it is needed for other bytes."""
    needed = {*files, LIST}
    steps = {str(parent) for path in needed for parent in PurePosixPath(path).parents}
    others = tuple(path for path in found.others if not (path in files and _holds(folder / path, files[path])))
    barred = [
        path
        for path in others
        if needed & {path, *map(str, PurePosixPath(path).parents)}
        or (path in steps and not _is_folder(folder / path))
    ]
    if barred:
        names = "\n".join(f"  {shown / path}" for path in barred)
        raise DeliveryError(
            f"these are not as the program wrote them, and their names are needed:\n{names}\n"
            "move or rename them, or choose another folder with --out"
        )
    return tuple(path for path in others if path not in steps)


def _holds(place: Path, data: bytes) -> bool:
    return place.is_file() and not place.is_symlink() and place.read_bytes() == data


def _is_folder(place: Path) -> bool:
    return place.is_dir() and not place.is_symlink()


@contextmanager
def _locked(parent: Path) -> Iterator[None]:
    """Keeps another run from delivering beside this one, where the system can lock a folder."""
    try:
        import fcntl
    except ImportError:
        yield
        return
    handle = os.open(parent, os.O_RDONLY)
    try:
        # A disk that knows no locks is written to without.
        with suppress(OSError):
            fcntl.flock(handle, fcntl.LOCK_EX)
        yield
    finally:
        os.close(handle)
