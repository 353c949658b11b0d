"""Refusals of the disk in plain words."""

from __future__ import annotations

import errno
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from patternforge.errors import DeliveryError

__all__ = ["plain_refusals"]

_ADVICE = {
    errno.ENOSPC: "the disk is full; make room and run again",
    errno.EDQUOT: "your share of the disk is full; make room and run again",
    errno.EACCES: "there is no permission to write here; choose another folder with --out",
    errno.EPERM: "there is no permission to write here; choose another folder with --out",
    errno.EROFS: "the disk cannot be written to; choose another folder with --out",
    errno.ENAMETOOLONG: "the name is too long for this disk; give the design or the piece a shorter one",
    errno.ENOENT: "no file can be made here; choose another place with --out",
    errno.ENOTDIR: "a file stands where a folder is wanted; choose another folder with --out",
    errno.EEXIST: "something of that name is there already; move it away or choose another folder with --out",
    errno.EBUSY: "the folder is in use and cannot be exchanged; choose another folder with --out",
    errno.EXDEV: "the folder lies on another disk than the one it stands in; choose another folder with --out",
}


@contextmanager
def plain_refusals(place: Path, named: Callable[[str], str] = str) -> Iterator[None]:
    """Turns an OSError of the block into a DeliveryError that names the file (``place`` if none is known).

    ``named`` leads from the name of a file that is only worked on to the name the user knows it by.
    """
    try:
        yield
    except OSError as error:
        advice = _ADVICE.get(error.errno or 0, error.strerror or str(error))
        where = named(str(error.filename)) if error.filename else place
        raise DeliveryError(f"{where}: {advice}") from error
    except UnicodeEncodeError as error:
        advice = "this system cannot write the name; give the design or the piece one in plain letters"
        raise DeliveryError(f"{error.object}: {advice}") from error
