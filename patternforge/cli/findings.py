"""Findings as a table in plain words, the worst first."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from itertools import groupby

from patternforge.cli.table import columns
from patternforge.fit.findings import Bound, Finding, Verdict, number, worst
from patternforge.units import counted

__all__ = ["Cures", "conclusion", "every_finding", "findings_table"]

_ORDER = [Verdict.NO, Verdict.LOOK, Verdict.GOOD]
_HEAD = ("", "what was measured", "where", "measured", "limit")
_RIGHT = (3, 4)

Cures = Callable[[Finding], Sequence[str]]
"""What is said below a finding besides its remedy."""


def _no_cures(found: Finding) -> list[str]:
    return []


def findings_table(findings: Sequence[Finding], cures: Cures = _no_cures) -> list[str]:
    """What wants the maker's eye line by line, each with its remedy; what is good in one line for each kind.

    ``cures`` tells the lines that stand below a finding's remedy.
    """
    wanting = [found for found in _worst_first(findings) if found.verdict is not Verdict.GOOD]
    good = [found for found in findings if found.verdict is Verdict.GOOD]
    kinds = [list(same) for _, same in groupby(sorted(good, key=_kind), key=_kind)]
    return _table([_row(found) for found in wanting] + [_summed(same) for same in kinds], wanting, cures)


def every_finding(findings: Sequence[Finding], cures: Cures = _no_cures) -> list[str]:
    """Every finding in a line of its own, the worst first, with ``cures`` as for ``findings_table``."""
    ordered = list(_worst_first(findings))
    return _table([_row(found) for found in ordered], ordered, cures)


def conclusion(findings: Sequence[Finding]) -> str:
    """The verdict in one sentence."""
    counts = {verdict: sum(found.verdict is verdict for found in findings) for verdict in Verdict}
    match worst(findings):
        case Verdict.GOOD:
            return f"It fits: all {len(findings)} measures are good."
        case Verdict.LOOK:
            return f"It fits, but look at {counted(counts[Verdict.LOOK], 'measure')} before you cut."
        case Verdict.NO:
            return f"It does not fit: {counted(counts[Verdict.NO], 'measure')} would spoil the leather."


def _worst_first(findings: Sequence[Finding]) -> Iterator[Finding]:
    for verdict in _ORDER:
        yield from (found for found in findings if found.verdict is verdict)


def _kind(found: Finding) -> str:
    return found.what


def _table(rows: list[tuple[str, ...]], told: Sequence[Finding], cures: Cures) -> list[str]:
    head, *lines = columns([_HEAD, *rows], _RIGHT)
    below: list[list[str]] = [_below(found, cures) for found in told]
    below += [[]] * (len(rows) - len(told))
    return [head, *(line for first, more in zip(lines, below, strict=True) for line in (first, *more))]


def _below(found: Finding, cures: Cures) -> list[str]:
    """The remedy of a finding, and what cures it; a line that goes on has no arrow of its own."""
    remedies = [found.remedy] if found.remedy else []
    return [f"      {'' if line.startswith(' ') else '-> '}{line}" for line in (*remedies, *cures(found))]


def _row(found: Finding) -> tuple[str, ...]:
    return (found.verdict.value, found.what, found.where, found.size, found.asked)


def _summed(same: Sequence[Finding]) -> tuple[str, ...]:
    if len(same) == 1:
        return _row(same[0])
    first = same[0]
    return (
        first.verdict.value,
        first.what,
        f"{len(same)} places",
        _sizes([found.measured for found in same], first.unit),
        _limits(same),
    )


def _sizes(values: Sequence[float], unit: str) -> str:
    low, high = number(min(values), unit), number(max(values), unit)
    return f"{low if low == high else f'{low} to {high}'} {unit}".rstrip()


def _limits(same: Sequence[Finding]) -> str:
    """Which way the limits of one kind bind, and from where to where they lie."""
    unit, told = same[0].unit, {found.limit.good.told(found.unit) for found in same}
    if len(told) == 1:
        return told.pop()
    bounds = {found.limit.good.bound for found in same}
    if len(bounds) > 1 or Bound.BETWEEN in bounds:
        return "each its own"
    return f"{bounds.pop()} {_sizes([end for found in same for end in found.limit.good.ends], unit)}"
