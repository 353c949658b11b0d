"""How a wallet fits, with the changes that would cure what does not."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from patternforge.cli.findings import Cures, conclusion, every_finding, findings_table
from patternforge.fit.findings import Finding
from patternforge.pipeline.check import Check
from patternforge.pipeline.cure_words import cure_lines, cut_off_line, whole_lines

__all__ = ["check_report", "full_report"]

_Table = Callable[[Sequence[Finding], Cures], list[str]]


def check_report(check: Check) -> list[str]:
    """Title, findings with their cures, those that are good in short, and the verdict in one sentence, last."""
    return _report(check, findings_table)


def full_report(check: Check) -> list[str]:
    """The same with a line for every finding."""
    return _report(check, every_finding)


def _report(check: Check, table: _Table) -> list[str]:
    findings = check.wallet.findings

    def cures(found: Finding) -> list[str]:
        return cure_lines(check.suggested, found)

    rest = [*whole_lines(check.suggested), *cut_off_line(check.suggested)]
    return [check.wallet.pattern.design.title, "", *table(findings, cures), "", *rest, conclusion(findings)]
