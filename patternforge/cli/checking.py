"""How a wallet fits, with the changes that would cure what does not."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from pathlib import Path

from patternforge.cli.findings import conclusion, every_finding, findings_table
from patternforge.errors import DraftError
from patternforge.fit.findings import Finding, Verdict
from patternforge.pipeline.cure_words import cure_lines, cut_off_line, whole_lines
from patternforge.pipeline.draft import undraftable
from patternforge.pipeline.stages import Judged, judged
from patternforge.pipeline.suggest import Effort, suggestions
from patternforge.pipeline.suggestion import Suggestions
from patternforge.pipeline.trial import asked_of

__all__ = ["Check", "check_report", "checked"]

_NOTHING = Suggestions({}, (), 0, False)


@dataclass(frozen=True, slots=True)
class Check:
    """A judged wallet, and what would cure the findings that were asked about."""

    wallet: Judged
    suggested: Suggestions


def checked(
    design: Path, settings: Mapping[str, str], letters: Mapping[str, str], cured: Collection[Verdict]
) -> Check:
    """The design judged as by ``judged``, with the cures of all findings of the verdicts ``cured``.

    DesignError as there; DraftError, with the changes that would let it be drafted, if it cannot be.
    """
    asked = asked_of(design, settings, letters)
    try:
        wallet = judged(design, settings, letters)
    except DraftError as error:
        raise undraftable(error, asked, Effort.FULL) from error
    wanted = [found for found in wallet.findings if found.verdict in cured]
    return Check(wallet, suggestions(asked, wanted) if wanted else _NOTHING)


def check_report(check: Check, every: bool) -> list[str]:
    """Title, findings with their cures, and the verdict in one sentence, last."""
    findings = check.wallet.findings

    def cures(found: Finding) -> list[str]:
        return cure_lines(check.suggested, found)

    table = every_finding(findings, cures) if every else findings_table(findings, cures)
    rest = [*whole_lines(check.suggested), *cut_off_line(check.suggested)]
    return [check.wallet.pattern.design.title, "", *table, "", *rest, conclusion(findings)]
