"""A single file, written whole or not at all, and never over another."""

from __future__ import annotations

import os
from contextlib import suppress
from pathlib import Path
from tempfile import mkstemp

from patternforge.delivery.faults import plain_refusals
from patternforge.errors import DeliveryError

__all__ = ["file_delivered"]


def file_delivered(path: Path, data: bytes) -> Path:
    """Writes ``data`` to the new file ``path`` and returns it; a file that holds these very bytes is left alone.

    DeliveryError when anything else has that name, or when the disk refuses.
    """
    with plain_refusals(path, named=lambda _: str(path)):
        if path.is_file() and path.read_bytes() == data:
            return path
        if os.path.lexists(path):
            raise DeliveryError(f"{path} is there already and is not overwritten; choose another name with --out")
        if not path.parent.is_dir():
            raise DeliveryError(f"{path.parent} is not a folder; make it first or choose another with --out")
        _written(path, data)
    return path


def _written(path: Path, data: bytes) -> None:
    handle, name = mkstemp(prefix=f".{path.name}.", dir=path.parent)
    draft = Path(name)
    try:
        with os.fdopen(handle, "wb") as stream:
            stream.write(data)
            stream.flush()
            os.fsync(handle)
        draft.chmod(0o666 & ~_mask())
        _named(draft, path)
    finally:
        with suppress(FileNotFoundError):
            draft.unlink()


def _named(draft: Path, path: Path) -> None:
    """Gives the file its name in a step that fails when the name is taken."""
    try:
        os.link(draft, path)
    except FileExistsError:
        raise
    except OSError:
        os.close(os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL))
        draft.replace(path)


def _mask() -> int:
    """The permissions that new files are not to have."""
    mask = os.umask(0)
    os.umask(mask)
    return mask
