"""What an audit found, in plain words: the file in short, every flaw with its place, and the verdict."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby

from patternforge.audit.flaws import Flaw
from patternforge.audit.model import CutFile, FileKind
from patternforge.cli.cautions import AUDIT_CAUTIONS
from patternforge.cli.table import columns
from patternforge.fit.findings import Verdict
from patternforge.geometry.point import Point
from patternforge.pipeline.audit import Audit
from patternforge.units import counted, inches, mm

__all__ = ["audit_report", "every_check"]

_SHOWN = 3  # of a kind, unless all are asked for
_ORDER = [Verdict.NO, Verdict.LOOK]


def audit_report(found: Audit) -> list[str]:
    """The file in short, the first three flaws of each kind, and the verdict."""
    return [*_head(found), *_flaws(found, _SHOWN), "", _conclusion(found), "", *AUDIT_CAUTIONS]


def every_check(found: Audit) -> list[str]:
    """The same with every flaw, and a line for every check that found nothing."""
    good = [("good", each.good) for each in found.checks if not each.flaws]
    return [
        *_head(found),
        *_flaws(found, len(found.flaws)),
        *(["", *columns(good)] if good else ()),
        "",
        _conclusion(found),
        "",
        *AUDIT_CAUTIONS,
    ]


def _head(found: Audit) -> list[str]:
    file = found.file
    unit = f"in {file.unit}" if file.unit else "no unit, taken for mm" if file.kind is FileKind.DXF else "no unit"
    kinds = ", ".join(f"{count} {kind}" for kind, count in found.kinds) or "nothing"
    rows = [
        ("size over all", _size(file)),
        ("pieces", f"{counted(found.outlines, 'outline')}, {counted(found.inside, 'contour')} inside,"
         f" {counted(found.loose, 'open line')}"),
        ("drawn as", kinds),
        *((f"smallest {each.word}", _measured(file, each.measure.value, each.measure.at))
          for each in found.smallest if each.measure is not None),
    ]  # fmt: skip
    places = "across and down from the upper left corner of the page" if file.kind is FileKind.SVG else "x, y"
    return [
        f"{file.name}: {' '.join((file.kind, file.version)).strip()}, {unit}",
        "",
        *(f"  {line}" for line in columns(rows)),
        f"  places in mm: {places}",
    ]


def _size(file: CutFile) -> str:
    extent = file.extent
    if extent is None:
        return "nothing is drawn that can be cut"
    corner = Point(extent.x0, extent.y1 if file.kind is FileKind.SVG else extent.y0)
    return (
        f"{mm(extent.width)} x {mm(extent.height)} mm, {inches(extent.width, 2)} x {inches(extent.height, 2)} in,"
        f" from {_place(file, corner)}"
    )


def _measured(file: CutFile, value: float, at: Point) -> str:
    return f"{mm(value)} mm at {_place(file, at)}"


def _place(file: CutFile, at: Point) -> str:
    shown = file.shown(at)
    return f"{mm(shown.x)}, {mm(shown.y)}"


def _flaws(found: Audit, shown: int) -> Iterator[str]:
    ordered = sorted(found.flaws, key=lambda flaw: _ORDER.index(flaw.verdict))
    for _, group in groupby(ordered, key=lambda flaw: (flaw.verdict, flaw.kind, flaw.remedy)):
        same = list(group)
        yield ""
        yield from columns([_row(found.file, flaw) for flaw in same[:shown]])
        if len(same) > shown:
            yield f"      and {len(same) - shown} more of the kind; --every shows all"
        yield f"      -> {same[0].remedy}"


def _row(file: CutFile, flaw: Flaw) -> Sequence[str]:
    place = f"at {_place(file, flaw.at)}" if flaw.at else ""
    return f"{flaw.verdict.value:4}", flaw.what, place, flaw.on


def _conclusion(found: Audit) -> str:
    counts = {verdict: sum(flaw.verdict is verdict for flaw in found.flaws) for verdict in Verdict}
    if not found.flaws:
        return f"Clean: {len(found.checks)} checks found nothing."
    parts = []
    if counts[Verdict.NO]:
        parts.append(f"{counted(counts[Verdict.NO], 'flaw')} would spoil leather or be refused")
    if counts[Verdict.LOOK]:
        parts.append(f"look at {counted(counts[Verdict.LOOK], 'place')}")
    return f"Not clean: {'; '.join(parts)}."
