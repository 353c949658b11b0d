"""Every file that a request asks for, as bytes by path: what a drafted wallet becomes."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from patternforge.drafting.names import file_word
from patternforge.drafting.pieces import figures
from patternforge.drafting.purpose import DieHoles, DraftingOptions, PaperOptions, Purpose, StitchHoles
from patternforge.drafting.sheets import Deliverable, die_sheets, laser_sheets
from patternforge.drawing.arrange import arranged
from patternforge.drawing.extent import extent
from patternforge.drawing.lettering import text_width
from patternforge.drawing.model import Figure, Role, Sheet, Text
from patternforge.export.registry import writer
from patternforge.fit.findings import Finding, Verdict
from patternforge.geometry.point import Point
from patternforge.pipeline.request import DraftRequest, Wanted
from patternforge.pipeline.stages import Judged
from patternforge.wallet.pattern import Pattern

if TYPE_CHECKING:
    from patternforge.pipeline.cutter import CutFiles
    from patternforge.pipeline.dies import DieFiles
    from patternforge.pipeline.proof import Commission
from patternforge.units import counted

__all__ = ["FileSet", "fileset", "overview", "set_name"]

_GAP = 15.0  # between pieces on the overview, mm
_LETTERS = 4.0  # height of a warning on it, mm

_Files = Iterator[tuple[str, bytes]]


def set_name(pattern: Pattern) -> str:
    """The name of a design's folder, and what its file names begin with."""
    return file_word(pattern.design.name)


@dataclass(frozen=True, slots=True)
class FileSet:
    """The bytes of every file by its path in the design's folder, and how many of them were read back and proved."""

    files: Mapping[str, bytes]
    proved: int


def fileset(
    wallet: Judged, request: DraftRequest, cut: CutFiles | None = None, dies: DieFiles | None = None
) -> FileSet:
    """Every file of a design; ``pattern.json`` is always among them.

    ``cut`` are the files of the machine that was asked for, in the place of those for a laser or a die; ``dies`` is
    the pack for a die maker, whose proof goes with the files of the dies.

    Of a wallet that does not fit, every file but that one says so in its name, and what is drawn for the bench says
    it in words too; in what a machine cuts nothing is drawn that is not to be cut.
    DraftError when a piece is too wide for the bed or the paper, or the kerf leaves nothing of a hole; AuditError
    when a cutting file, read back from its bytes, is not what was asked for.
    """
    cutting = _cutting(wallet, request, cut)
    _prove(cutting, request)
    files = {commission.path: data for commission, data in cutting}
    if cut and cut.stands_for is not Wanted.DIE:  # dies are looked at on their proof
        files.update(cut.looked_at(wallet.pattern))
    if dies:
        files[dies.proof_path] = dies.proof_bytes(request, _warning(wallet.findings))
    if request.wants(Wanted.PAPER):
        files.update(_paper(wallet, request))
    if wallet.verdict is Verdict.NO:
        files = {_marked(path): data for path, data in files.items()}
    return FileSet({**dict(_description(wallet, cut, dies)), **files}, len(cutting))


def _cutting(wallet: Judged, request: DraftRequest, cut: CutFiles | None) -> list[tuple[Commission, bytes]]:
    """The files that are cut by, each with what was asked for."""
    pattern, drafting = wallet.pattern, request.drafting
    found = list(cut.written(pattern)) if cut else []
    if request.wants(Wanted.LASER) and not (cut and cut.stands_for is Wanted.LASER):
        sheets = laser_sheets(pattern, drafting)
        found += _sheets("laser", sheets, request, pattern, StitchHoles.CUT, drafting.laser.kerf)
    if request.wants(Wanted.DIE) and not (cut and cut.stands_for is Wanted.DIE):
        holes = StitchHoles.CUT if drafting.die.holes is DieHoles.PUNCHED else StitchHoles.LEFT_OUT
        found += _sheets("die", die_sheets(pattern, drafting), request, pattern, holes, 0.0)
    return found


def _prove(cutting: list[tuple[Commission, bytes]], request: DraftRequest) -> None:
    if cutting:
        from patternforge.pipeline.proof import prove

        prove(cutting, request.on_no)


def _marked(path: str) -> str:
    """``path`` with the warning before its ending.

    >>> _marked("die/sleeve-die-back.dxf")
    'die/sleeve-die-back-DOES-NOT-FIT.dxf'
    """
    stem, dot, kind = path.rpartition(".")
    return f"{stem}-DOES-NOT-FIT{dot}{kind}"


def _warning(findings: Sequence[Finding]) -> str:
    """What is written over a pattern that does not fit; nothing for one that does."""
    count = sum(found.verdict is Verdict.NO for found in findings)
    return f"DOES NOT FIT: {counted(count, 'measure')} would spoil the leather." if count else ""


def _description(wallet: Judged, cut: CutFiles | None, dies: DieFiles | None) -> _Files:
    from patternforge.drafting.description import description
    from patternforge.export.json import json_bytes

    paths = _marked if wallet.verdict is Verdict.NO else str
    machine = cut.described(paths) if cut else None
    pack = dies.described(paths) if dies else None
    told = description(wallet.pattern, wallet.findings, machine, pack, wallet.source, wallet.kept_for)
    yield "pattern.json", json_bytes(told)


def _sheets(
    folder: str,
    sheets: Iterable[Deliverable],
    request: DraftRequest,
    pattern: Pattern,
    holes: StitchHoles,
    grown: float,
) -> Iterator[tuple[Commission, bytes]]:
    from patternforge.export.dxf import DxfOptions
    from patternforge.export.svg import SvgOptions
    from patternforge.pipeline.proof import Commission

    for each in sheets:
        options = DxfOptions(version=request.dxf) if each.kind == "dxf" else SvgOptions()
        path = f"{folder}/{each.name}.{each.kind}"
        yield Commission(path, each.sheet, options, pattern, holes, grown), writer(each.kind)(each.sheet, options)


def _paper(wallet: Judged, request: DraftRequest) -> _Files:
    """The printed pages as one PDF and as an SVG each, and all pieces on one SVG."""
    from patternforge.drafting.cutting_order import order_figure
    from patternforge.drawing.tile import pages
    from patternforge.export.pdf import pdf_bytes

    # Drawn once: setting the labels is most of the work.
    pattern = wallet.pattern
    options = PaperOptions(request.printing.letters, request.drafting.paper.awl)
    drawn = figures(pattern, Purpose.PAPER, DraftingOptions(paper=options))
    warning = _warning(wallet.findings)
    title = f"{warning} {pattern.design.title}" if warning else pattern.design.title
    settings = replace(request.printing, title=title, revision=pattern.design.revision)
    printed = pages((order_figure(pattern, options), *drawn), request.paper, settings)
    stem = f"paper/{set_name(pattern)}-{request.paper.name.lower()}"
    yield f"{stem}.pdf", pdf_bytes(printed, settings.heading)
    for number, page in enumerate(printed, start=1):
        yield f"{stem}-page-{number:02d}.svg", writer("svg")(page)
    yield f"svg/{set_name(pattern)}.svg", writer("svg")(_overview(drawn, settings.heading, warning))


def overview(wallet: Judged) -> Sheet:
    """All pieces as they are drawn for the bench, on one sheet; it says so when they do not fit."""
    drawn = figures(wallet.pattern, Purpose.PAPER, DraftingOptions())
    return _overview(drawn, wallet.pattern.design.title, _warning(wallet.findings))


def _overview(drawn: Sequence[Figure], heading: str, warning: str) -> Sheet:
    """All pieces with their labels, net, on one sheet that takes the two widest side by side, a warning on top."""
    widest = max(extent(figure.inks).width for figure in drawn)
    sheet = arranged(drawn, _GAP, 2 * widest + 3 * _GAP, heading)
    return _with_warning(sheet, warning) if warning else sheet


def _with_warning(sheet: Sheet, warning: str) -> Sheet:
    height = min(_LETTERS, (sheet.width - 2 * _GAP) / text_width(warning, 1.0))
    words = Text(Role.LABEL, Point(_GAP, sheet.height), height, warning)
    return replace(sheet, height=sheet.height + _GAP, figures=(*sheet.figures, Figure("warning", "", (words,))))
