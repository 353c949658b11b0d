"""Sheets as DXF: what is cut, in cutting order, as closed polylines with true arcs, circles and lines; units mm."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field
from enum import StrEnum
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory
from types import MappingProxyType

from patternforge.drawing.model import Role, Sheet

__all__ = ["COLOURS", "CUT_ROLES", "WEIGHTS", "DxfOptions", "DxfVersion", "dxf_bytes", "layer_name"]

CUT_ROLES = (Role.MARK, Role.HOLE, Role.OPENING, Role.OUTLINE)

# Numbers of the fixed DXF colour table: 7 is black on white and white on black, 8 and 9 are greys.
COLOURS: Mapping[Role, int] = MappingProxyType(
    {
        Role.MARK: 8,
        Role.HOLE: 4,
        Role.OPENING: 3,
        Role.OUTLINE: 7,
        Role.FOLD: 30,
        Role.SEAM: 52,
        Role.LABEL: 9,
        Role.SIZE: 5,
        Role.CHECK: 6,
        Role.GUIDE: 253,
        Role.TINT: 254,
    }
)


# Line weights that a layer may have, hundredths of a mm (DXF reference, group code 370).
WEIGHTS = (0, 5, 9, 13, 15, 18, 20, 25, 30, 35, 40, 50, 53, 60, 70, 80, 90, 100, 106, 120, 140, 158, 200, 211)


class DxfVersion(StrEnum):
    """The releases that can be written, from the newest to the oldest, which knows neither units nor line weights."""

    R2018 = "R2018"
    R2010 = "R2010"
    R2000 = "R2000"
    R12 = "R12"


@dataclass(frozen=True, slots=True)
class DxfOptions:
    """What a DXF file is to hold: its release, the roles written, and of each role what its layer is like.

    ``colours`` are numbers of the fixed table (1 to 255); ``layers`` are names, for roles whose layer is not named
    after them; ``weights`` are line weights in hundredths of a mm, one of ``WEIGHTS``, for roles that have one.
    """

    version: DxfVersion = DxfVersion.R2010
    roles: tuple[Role, ...] = CUT_ROLES
    colours: Mapping[Role, int] = field(default_factory=lambda: COLOURS)
    layers: Mapping[Role, str] = field(default_factory=lambda: MappingProxyType({}))
    weights: Mapping[Role, int] = field(default_factory=lambda: MappingProxyType({}))

    def layer(self, role: Role) -> str:
        """The name of the layer of a role."""
        return self.layers.get(role, layer_name(role))


def layer_name(role: Role) -> str:
    """The layer that holds the inks of ``role``: its words in capitals, joined by a hyphen as every release allows.

    >>> layer_name(Role.HOLE)
    'STITCH-HOLE'
    """
    return role.value.upper().replace(" ", "-")


def dxf_bytes(sheet: Sheet, options: DxfOptions | None = None) -> bytes:
    """``sheet`` as an ASCII DXF file in mm, the same bytes on every day and machine.

    One layer for each role written; entities figure by figure in ink order. A closed stroke is a closed polyline with
    bulges, a dot a circle, an open stroke of one straight segment a line, any other open stroke an open polyline.
    Coordinates are rounded to a millionth of a mm. DraftError when nothing would be written, or when a text stands in
    a role to be written: letters go into a cutting file as strokes or not at all.

    Entities and header variables: DXF reference, sections ENTITIES and HEADER ($INSUNITS 4 = mm, $MEASUREMENT 1).

    >>> from patternforge.drawing.model import Dot, Figure
    >>> from patternforge.geometry.point import Point
    >>> ring = Figure("ring", "outer", (Dot(Role.OUTLINE, Point(15, 15), 20.0),))
    >>> b"CIRCLE" in dxf_bytes(Sheet("sheet", 30, 30, (ring,)))
    True
    """
    return _document_writer()(sheet, options or DxfOptions())


@cache
def _document_writer() -> Callable[[Sheet, DxfOptions], bytes]:
    with _no_font_cache():
        from patternforge.export.dxf_document import document_bytes
    return document_bytes


@contextmanager
def _no_font_cache() -> Iterator[None]:
    """Keeps the DXF library, on its first import, from listing the fonts of the system in the user's cache folder.

    It is shown an empty list instead: no font is ever written, and a cutting file must not hang on what is installed.
    """
    known = os.environ.get("XDG_CACHE_HOME")
    with TemporaryDirectory() as folder:
        cache = Path(folder) / "ezdxf" / "font_manager_cache.json"
        cache.parent.mkdir()
        cache.write_text('{"version": 2, "font-faces": []}', encoding="ascii")
        os.environ["XDG_CACHE_HOME"] = folder
        try:
            yield
        finally:
            del os.environ["XDG_CACHE_HOME"]
            if known is not None:
                os.environ["XDG_CACHE_HOME"] = known
