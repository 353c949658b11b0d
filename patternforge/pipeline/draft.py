"""The use case ``draft``: read, assemble, fit, draft, write."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from patternforge.delivery import Delivery, delivered
from patternforge.errors import DraftError, FitError
from patternforge.fit.findings import Finding, Verdict
from patternforge.pipeline.cure_words import arrowed, cure_lines, cut_off_line, undraftable, whole_lines
from patternforge.pipeline.fileset import fileset, set_name
from patternforge.pipeline.request import DraftRequest, OnNo, Wanted
from patternforge.pipeline.stages import Judged, judged, lettered
from patternforge.pipeline.suggest import Effort, Told, drafting_suggestions, silent, suggestions
from patternforge.pipeline.suggestion import Suggestions
from patternforge.pipeline.trial import Asked, asked_of

if TYPE_CHECKING:
    from patternforge.machines.table import Machine
    from patternforge.pipeline.cutter import CutFiles
    from patternforge.pipeline.dies import DieFiles
    from patternforge.pipeline.keep import Kept

__all__ = ["Draft", "draft"]


@dataclass(frozen=True, slots=True)
class Draft:
    """A judged wallet, the files that were written of it, those of a machine and the dies if any were asked for, what
    was kept, and how many files to cut by were read back and proved."""

    wallet: Judged
    delivery: Delivery
    cut: CutFiles | None = None
    dies: DieFiles | None = None
    kept: Kept | None = None
    proved: int = 0


def draft(request: DraftRequest, searching: Told = silent) -> Draft:
    """Drafts a design and writes its files, all of them or none.

    ``searching`` is called before it is looked for what would cure a design that is refused.

    DesignError, DraftError, ReadingError and DeliveryError as the stages raise them; FitError when a finding reads
    ``no`` and the request does not ask for the files all the same; AuditError when a cutting file is not what was
    asked for.
    """
    kept = _kept(request, request.keep) if request.keep else None
    wallet = _fitting(kept.wallet, request) if kept else _judged(request, searching)
    if request.wants(Wanted.PAPER) or request.wants(Wanted.DIE):
        wallet = lettered(wallet)
    cut = _cut(wallet, request, request.machine) if request.machine else None
    dies = _dies(wallet, request, cut) if request.wants(Wanted.DIE) else None
    made = fileset(wallet, request, cut, dies)
    return Draft(wallet, delivered(request.out / set_name(wallet.pattern), made.files), cut, dies, kept, made.proved)


def _judged(request: DraftRequest, searching: Told) -> Judged:
    """The wallet, if its files may be written; what refuses it says which single change would do."""
    asked = asked_of(request.design, request.settings, request.texts)
    try:
        wallet = judged(request.design, request.settings, request.texts)
    except DraftError as error:
        searching()
        raise undraftable(error, drafting_suggestions(asked, Effort.BRIEF)) from error
    return _fitting(wallet, request, asked, searching)


def _fitting(wallet: Judged, request: DraftRequest, asked: Asked | None = None, searching: Told = silent) -> Judged:
    """The wallet, if its files may be written; without ``asked`` pieces are kept and nothing is searched for."""
    if wallet.verdict is not Verdict.NO or request.on_no is OnNo.WRITE:
        return wallet
    spoiled = [found for found in wallet.findings if found.verdict is Verdict.NO]
    if asked is None:
        raise _no_findings(wallet, spoiled, None)
    searching()
    raise _no_findings(wallet, spoiled, suggestions(asked, spoiled, Effort.BRIEF))


def _cut(wallet: Judged, request: DraftRequest, machine: Machine) -> CutFiles:
    from patternforge.pipeline.cutter import cut_files

    return cut_files(wallet.pattern, machine, request.drafting.die.mirrors)


def _dies(wallet: Judged, request: DraftRequest, cut: CutFiles | None) -> DieFiles | None:
    from patternforge.pipeline.dies import die_files

    return die_files(wallet.pattern, request, cut)


def _kept(request: DraftRequest, made: Path) -> Kept:
    from patternforge.pipeline.keep import kept

    return kept(request.design, made, request.settings, request.texts)


def _no_findings(wallet: Judged, spoiled: Sequence[Finding], suggested: Suggestions | None) -> FitError:
    """The refusal of a wallet that does not fit: each finding that reads ``no`` in a line, then its cures."""
    how = "with its pieces kept as they are" if wallet.kept_for else "as drafted"
    title = f"{wallet.pattern.design.title} does not fit {how}; no files were written:"
    if suggested is None:
        return FitError("\n".join((title, *(_line(found) for found in spoiled))))
    lines = [line for found in spoiled for line in (_line(found), *arrowed(cure_lines(suggested, found), "    "))]
    lines += arrowed(whole_lines(suggested))
    lines += cut_off_line(suggested)
    return FitError("\n".join((title, *lines)))


def _line(found: Finding) -> str:
    remedy = f"; {found.remedy}" if found.remedy else ""
    return f"  {found.what}, {found.where}: {found.told}{remedy}"
