"""The kinds of file that can be written, each with the function that writes it, imported when it is asked for.

A new kind of file is one module that turns a drawing into bytes and one line here.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from difflib import get_close_matches
from importlib import import_module
from types import MappingProxyType

from patternforge.errors import DeliveryError

__all__ = ["WRITERS", "writer"]

WRITERS: Mapping[str, str] = MappingProxyType(
    {
        "dxf": "patternforge.export.dxf:dxf_bytes",
        "hpgl": "patternforge.export.hpgl:hpgl_bytes",
        "svg": "patternforge.export.svg:svg_bytes",
    }
)


def writer(kind: str) -> Callable[..., bytes]:
    """The function that writes files of ``kind``, one of ``WRITERS``; DeliveryError for any other word.

    >>> writer("svg").__name__
    'svg_bytes'
    """
    if kind not in WRITERS:
        near = get_close_matches(kind, WRITERS, n=1)
        hint = f"; did you mean {near[0]!r}?" if near else ""
        raise DeliveryError(f"no file of the kind {kind!r} can be written, only {', '.join(WRITERS)}{hint}")
    module, name = WRITERS[kind].split(":")
    function: Callable[..., bytes] = getattr(import_module(module), name)
    return function
