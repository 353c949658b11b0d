"""``files.txt``: which files of a folder the program wrote, with what content, so that all others are the user's.

A line for each file holds the SHA-256 of its bytes and its path; the last line that of the lines above it, so that a
list changed by hand is known for what it is.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from hashlib import sha256

from patternforge.errors import DeliveryError

__all__ = ["LIST", "digest", "listed", "listing"]

LIST = "files.txt"
_HEADING = "# Written by patternforge; files changed or added by hand are never overwritten."
_LINE = re.compile(r"([0-9a-f]{64})  (.+)")
_STEP = re.compile(r"(?!\.{1,2}$)[^\x00-\x1f\x7f/\\:]+")


def digest(data: bytes) -> str:
    """The SHA-256 of ``data`` in hexadecimal digits."""
    return sha256(data).hexdigest()


def listing(files: Mapping[str, bytes]) -> bytes:
    """The list of ``files`` (content by path, steps parted by ``/``), the same bytes in whatever order they come.

    DeliveryError for a path that leaves the folder, is not plain, or is the list's own.

    >>> listing({"a.txt": b""}).decode().splitlines()[1]
    'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855  a.txt'
    """
    for path in files:
        if path == LIST or not all(_STEP.fullmatch(step) for step in path.split("/")):
            raise DeliveryError(f"{path!r} cannot be the name of a file in the set")
    rows = [_HEADING, *(f"{digest(files[path])}  {path}" for path in sorted(files))]
    body = "".join(f"{row}\n" for row in rows).encode("utf-8")
    return body + f"{digest(body)}  {LIST}\n".encode()


def listed(data: bytes) -> Mapping[str, str]:
    """The digest of every file by its path, the list itself included; nothing if ``data`` is not a list as written.

    >>> sorted(listed(listing({"a.txt": b"", "b/c.txt": b""})))
    ['a.txt', 'b/c.txt', 'files.txt']
    >>> listed(listing({"a.txt": b""}).replace(b"a.txt", b"z.txt"))
    {}
    """
    body, last = _parted(data)
    if last != f"{digest(body)}  {LIST}\n".encode() or not body.startswith(_HEADING.encode()):
        return {}
    matches = (_LINE.fullmatch(row) for row in body.decode("utf-8").split("\n"))
    files = {match[2]: match[1] for match in matches if match}
    return {**files, LIST: digest(data)}


def _parted(data: bytes) -> tuple[bytes, bytes]:
    """All lines but the last, and the last."""
    cut = data.rfind(b"\n", 0, -1) + 1
    return data[:cut], data[cut:]
