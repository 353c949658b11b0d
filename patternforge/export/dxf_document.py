"""The one place that knows the DXF library: a sheet as its document, and the document as bytes that never vary."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from io import StringIO
from typing import Any

from ezdxf._options import options as library_options
from ezdxf.document import Drawing, custom_export
from ezdxf.layouts.layout import Modelspace
from ezdxf.lldxf.tagwriter import TagWriter
from ezdxf.lldxf.types import DXFTag, DXFVertex
from ezdxf.units import MM

from patternforge.drawing.extent import extent
from patternforge.drawing.model import Area, Dot, Role, Sheet, Stroke, Text
from patternforge.errors import DraftError
from patternforge.export.dxf import DxfOptions, DxfVersion
from patternforge.export.numbers import decimal, rounded
from patternforge.geometry.path import Path

__all__ = ["document_bytes"]

_BULGE_CODE = 42
# A bulge is a ratio: over a chord of one metre six decimals would leave the middle of the arc a quarter of a
# micrometre off, a hundred times what they do to a coordinate.
_BULGE_DECIMALS = 12
_DECIMALS = 6


def document_bytes(sheet: Sheet, options: DxfOptions) -> bytes:
    """See ``patternforge.export.dxf.dxf_bytes``."""
    inks = _written(sheet, options)
    with _fixed_meta_data():
        document = _document(options.version)
        _add_layers(document, options, {ink.role for ink in inks})
        space = document.modelspace()
        for ink in inks:
            _add(space, ink, options)
        _set_extent(document, inks)
        return _encoded(document)


def _written(sheet: Sheet, options: DxfOptions) -> list[Stroke | Dot]:
    inks = [ink for figure in sheet.figures for ink in figure.inks if ink.role in options.roles]
    for ink in inks:
        if isinstance(ink, Text):
            raise DraftError(
                f"the {ink.role.value} text {ink.content!r} cannot go into a DXF file, where the reader's fonts would"
                " decide on its letters; draw it as strokes"
            )
        if isinstance(ink, Area):
            raise DraftError(f"a filled {ink.role.value} cannot go into a DXF file, which holds only what is cut")
    if not inks:
        raise DraftError(f"{sheet.name!r} holds nothing to write: no {', no '.join(options.roles)}")
    return [ink for ink in inks if not isinstance(ink, Text | Area)]


def _document(version: DxfVersion) -> Drawing:
    document = Drawing.new(version.value)
    if version is not DxfVersion.R12:
        document.units = MM
        document.header["$MEASUREMENT"] = 1
    return document


@contextmanager
def _fixed_meta_data() -> Iterator[None]:
    """Dates, identifiers and version marks of the library replaced by constants, for as long as a file is written."""
    known = library_options.write_fixed_meta_data_for_testing
    library_options.write_fixed_meta_data_for_testing = True
    try:
        yield
    finally:
        library_options.write_fixed_meta_data_for_testing = known


def _add_layers(document: Drawing, options: DxfOptions, roles: set[Role]) -> None:
    for role in Role:
        if role in roles:
            layer = document.layers.add(options.layer(role), color=options.colours[role])
            if role in options.weights and options.version is not DxfVersion.R12:
                layer.dxf.lineweight = options.weights[role]


def _add(space: Modelspace, ink: Stroke | Dot, options: DxfOptions) -> None:
    attributes = {"layer": options.layer(ink.role)}
    if isinstance(ink, Dot):
        centre = (rounded(ink.centre.x, _DECIMALS), rounded(ink.centre.y, _DECIMALS))
        space.add_circle(centre, rounded(ink.diameter / 2, _DECIMALS), dxfattribs=attributes)
        return
    vertices = _vertices(ink.path)
    if len(vertices) == 2 and not vertices[0][2] and not ink.path.closed:
        space.add_line(vertices[0][:2], vertices[1][:2], dxfattribs=attributes)
    elif options.version is DxfVersion.R12:
        space.add_polyline2d(vertices, format="xyb", close=ink.path.closed, dxfattribs=attributes)
    else:
        space.add_lwpolyline(vertices, format="xyb", close=ink.path.closed, dxfattribs=attributes)


def _vertices(path: Path) -> list[tuple[float, float, float]]:
    """The vertices to the decimals of the file; of neighbours that fall together there, the last one stands."""
    points = [
        (rounded(x, _DECIMALS), rounded(y, _DECIMALS), rounded(bulge, _BULGE_DECIMALS))
        for x, y, bulge in path.vertices
    ]
    following = [*points[1:], points[0] if path.closed else (None, None)]
    return [point for point, after in zip(points, following, strict=True) if point[:2] != after[:2]]


def _set_extent(document: Drawing, inks: list[Stroke | Dot]) -> None:
    bounds = extent(inks)
    low = (rounded(bounds.x0, _DECIMALS), rounded(bounds.y0, _DECIMALS))
    high = (rounded(bounds.x1, _DECIMALS), rounded(bounds.y1, _DECIMALS))
    document.modelspace().reset_limits(low, high)
    document.modelspace().reset_extents((*low, 0.0), (*high, 0.0))
    # The library carries the extents over to the header only if neither corner is the origin.
    document.header["$EXTMIN"], document.header["$EXTMAX"] = (*low, 0.0), (*high, 0.0)


def _encoded(document: Drawing) -> bytes:
    document.classes.add_required_classes(document.dxfversion)
    # The library adds these records in the order of a set, which differs from one run of Python to the next.
    document.classes.classes = dict(sorted(document.classes.classes.items()))
    stream = StringIO()
    custom_export(document, _DecimalTags(stream, document.dxfversion, write_handles=_has_handles(document)))
    return document.encode(stream.getvalue())


def _has_handles(document: Drawing) -> bool:
    return bool(document.header.get("$HANDLING", 1))


class _DecimalTags(TagWriter):
    """Writes every number by the one formatter of the project, so that no exponent and no negative zero appears."""

    def write_tag(self, tag: DXFTag) -> None:
        if isinstance(tag, DXFVertex):
            self.write_vertex(tag.code, tag.value)
        else:
            self.write_tag2(tag.code, tag.value)

    def write_vertex(self, code: int, vertex: Any) -> None:
        for index, value in enumerate(vertex):
            self.write_tag2(code + index * 10, value)

    def write_tag2(self, code: int, value: Any) -> None:
        super().write_tag2(code, _real(code, value) if isinstance(value, float) else value)


def _real(code: int, value: float) -> str:
    text = decimal(value, _BULGE_DECIMALS if code == _BULGE_CODE else _DECIMALS)
    return text if "." in text else f"{text}.0"
