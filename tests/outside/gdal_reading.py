"""DXF files as GDAL reads them: layers, and lines with a point for every half a degree of an arc."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from math import hypot
from pathlib import Path

import pyogrio
import shapely

from tests.outside.read_pieces import ReadHole, ReadPiece

__all__ = ["Shape", "gdal_pieces", "gdal_shapes"]

Shape = tuple[str, shapely.LineString]


def gdal_shapes(path: Path) -> list[Shape]:
    """Layer and shape of every entity in the order of the file, without height."""
    with _fine_arcs():
        meta, _, shapes, fields = pyogrio.raw.read(path)
    layers = fields[list(meta["fields"]).index("Layer")]
    return list(zip(layers.tolist(), shapely.force_2d(shapely.from_wkb(shapes)).tolist(), strict=True))


def gdal_pieces(shapes: list[Shape]) -> list[ReadPiece]:
    """The entities parted after every outline. ValueError when one has no outline after it."""
    pieces: list[ReadPiece] = []
    waiting: list[Shape] = []
    for layer, shape in shapes:
        if layer == "OUTLINE":
            holes = tuple(_hole(each) for name, each in waiting if name in ("STITCH-HOLE", "MARK"))
            pieces.append(ReadPiece(tuple(complex(x, y) for x, y in shape.coords), holes))
            waiting = []
        else:
            waiting.append((layer, shape))
    if waiting:
        raise ValueError(f"{len(waiting)} entities after the last outline")
    return pieces


def _hole(shape: shapely.LineString) -> ReadHole:
    if shape.is_ring:
        x0, y0, x1, y1 = shape.bounds
        return ReadHole(complex(x0 + x1, y0 + y1) / 2, x1 - x0)
    (xa, ya), (xb, yb) = shapely.get_coordinates(shape).tolist()
    length = hypot(xb - xa, yb - ya)
    return ReadHole(complex(xa + xb, ya + yb) / 2, length, complex(xb - xa, yb - ya) / length)


@contextmanager
def _fine_arcs() -> Iterator[None]:
    known = pyogrio.get_gdal_config_option("OGR_ARC_STEPSIZE")
    pyogrio.set_gdal_config_options({"OGR_ARC_STEPSIZE": 0.5})
    try:
        yield
    finally:
        pyogrio.set_gdal_config_options({"OGR_ARC_STEPSIZE": known})
