"""DXF files as pairs of a group code and a value, gathered into records and sections (DXF reference, "DXF Format").

Written for what people bring, not only for what is lawful: blanks, line ends and missing sections are taken as they
come. What cannot be told for certain is refused with its line.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from math import nan

from patternforge.errors import ReadingError

__all__ = ["Record", "Tag", "records", "sections"]

Tag = tuple[int, str]

_BINARY = b"AutoCAD Binary DXF"
_LARGEST = 1e12


class Record:
    """What stands from one group 0 to the next: its kind, the tags after it, and the line it begins on."""

    __slots__ = ("_first", "kind", "line", "tags")

    def __init__(self, kind: str, tags: Sequence[Tag], line: int = 0) -> None:
        self.kind = kind
        self.tags = tags
        self.line = line
        self._first = dict(tags[::-1])

    def text(self, code: int, default: str = "") -> str:
        """The first value of ``code``.

        >>> Record("LINE", [(8, "CUT"), (8, "OTHER")]).text(8)
        'CUT'
        """
        return self._first.get(code, default)

    def number(self, code: int, default: float = 0.0) -> float:
        """The first value of ``code`` as a number; ReadingError when it is none."""
        value = self._first.get(code)
        return default if value is None else self._number(code, value)

    def whole(self, code: int, default: int = 0) -> int:
        """The first value of ``code`` as a whole number, as for flags and colours."""
        return int(self.number(code, default))

    def numbers(self, code: int) -> list[float]:
        """All values of ``code`` as numbers."""
        return [self._number(code, value) for each, value in self.tags if each == code]

    def runs(self, code: int) -> Iterator[dict[int, float]]:
        """The numbers from each ``code`` up to the next, by their codes: one run for each vertex of a polyline."""
        run: dict[int, float] | None = None
        for each, value in self.tags:
            if each == code:
                if run is not None:
                    yield run
                run = {}
            if run is not None and 10 <= each < 60:
                run[each] = self._number(each, value)
        if run is not None:
            yield run

    def __contains__(self, code: int) -> bool:
        return code in self._first

    def _number(self, code: int, value: str) -> float:
        try:
            found = float(value)
        except ValueError:
            found = nan
        if not abs(found) < _LARGEST:
            raise ReadingError(
                f"line {self.line}: the {self.kind} that begins here says {value!r} under group {code}, which is no"
                " number it could have; export the file again"
            )
        return found


def records(data: bytes) -> list[Record]:
    """The records of a DXF file; ReadingError, saying what it is instead, for anything else."""
    _refuse_others(data)
    lines = _lines(data)
    codes = _codes(lines)
    values = [line.strip() for line in lines[1::2]]
    starts = [index for index, code in enumerate(codes) if code == 0]
    if not starts or "SECTION" not in {values[index].upper() for index in starts[:3]}:
        raise ReadingError("this is no DXF file: it has no sections; export it again as DXF")
    found = []
    for start, end in zip(starts, [*starts[1:], len(codes)], strict=True):
        tags = list(zip(codes[start + 1 : end], values[start + 1 : end], strict=True))
        found.append(Record(values[start].upper(), tags, 2 * start + 1))
    if found[-1].kind != "EOF":
        raise ReadingError("the file ends before its end mark: it was cut short; copy or export it again")
    return found


def sections(found: Iterable[Record]) -> dict[str, list[Record]]:
    """The records of each section by its name; the header, which is a record of its own, stands in HEADER."""
    parted: dict[str, list[Record]] = {}
    inside: list[Record] | None = None
    for record in found:
        if record.kind == "SECTION":
            inside = parted.setdefault(record.text(2).upper(), [])
            inside.extend([record] if record.text(2).upper() == "HEADER" else [])
        elif record.kind == "ENDSEC":
            inside = None
        elif inside is not None:
            inside.append(record)
    return parted


def _refuse_others(data: bytes) -> None:
    if data.startswith(_BINARY):
        raise ReadingError("this is a binary DXF file, which few cutting programs read; save it as ASCII DXF")
    if data[:4] == b"AC10":
        raise ReadingError("this is a DWG file under the name of a DXF; save it as DXF")
    if b"\0" in data[:1000]:
        raise ReadingError("this is no DXF file: it is not written in text; export it again as ASCII DXF")


def _lines(data: bytes) -> list[str]:
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        text = data.decode("cp1252", "replace")
    lines = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    while lines and not lines[-1].strip():
        lines.pop()
    if len(lines) % 2:
        lines.append("")
    return lines


def _codes(lines: list[str]) -> list[int]:
    try:
        return [int(line) for line in lines[::2]]
    except ValueError:
        for number, line in enumerate(lines[::2]):
            if not line.strip().lstrip("-").isdigit():
                raise ReadingError(_no_code(2 * number + 1, line)) from None
        raise


def _no_code(number: int, line: str) -> str:
    if number == 1:
        return "this is no DXF file: it does not begin with a group code; export it again as DXF"
    return f"line {number}: {line.strip()[:40]!r} stands where a group code is due; export it again"
