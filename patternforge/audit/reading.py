"""Any cutting file as a cut file, its kind told by what stands in it and not by its name alone."""

from __future__ import annotations

from patternforge.audit.model import CutFile
from patternforge.errors import ReadingError

__all__ = ["cut_file"]

_WIDE_MARKS = (b"\xff\xfe", b"\xfe\xff")
_STARTS = {
    b"%PDF": "a PDF file; export it as DXF or SVG",
    b"\x89PNG": "a picture; trace it and export as DXF or SVG",
    b"\xff\xd8\xff": "a picture; trace it and export as DXF or SVG",
    b"PK\x03\x04": "a packed archive; unpack it first",
    b"%!PS": "a PostScript file; export it as DXF or SVG",
}


def cut_file(data: bytes, name: str) -> CutFile:
    """The DXF, SVG or HPGL file ``data``; ReadingError, naming it, when it is none of them or is broken.

    >>> cut_file(b"%PDF-1.7", "a.dxf")
    Traceback (most recent call last):
    patternforge.errors.ReadingError: a.dxf: this is a PDF file; export it as DXF or SVG
    """
    try:
        return _read(data, name)
    except ReadingError as error:
        raise ReadingError(f"{name}: {error}") from error


def _read(data: bytes, name: str) -> CutFile:
    for start, words in _STARTS.items():
        if data.startswith(start):
            raise ReadingError(f"this is {words}")
    if not data.strip():
        raise ReadingError("the file is empty; export it again")
    if data[:2] in _WIDE_MARKS and b"<" not in data[2:80]:
        raise ReadingError("this is no DXF file: it is written in UTF-16; export it again as ASCII DXF")
    if data.removeprefix(b"\xef\xbb\xbf").lstrip()[:1] == b"<" or data[:2] in (b"\x1f\x8b", *_WIDE_MARKS):
        from patternforge.audit.svg_reading import svg_file

        return svg_file(data, name)
    from patternforge.audit.hpgl_reading import hpgl_file, is_hpgl

    if is_hpgl(data):
        return hpgl_file(data, name)
    from patternforge.audit.dxf_reading import dxf_file

    return dxf_file(data, name)
