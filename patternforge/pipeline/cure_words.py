"""Suggestions in plain words, each with the option that sets it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from patternforge.errors import DraftError
from patternforge.fit.findings import Finding
from patternforge.pipeline.suggestion import Suggestion, Suggestions
from patternforge.units import mm

__all__ = ["arrowed", "cure_lines", "cut_off_line", "drafting_lines", "undraftable", "whole_lines"]

_TOLD = 2  # findings to look at that are told by name


def cure_lines(suggested: Suggestions, found: Finding) -> list[str]:
    """What cures a finding that was asked about, a line each and one below it for what comes with it."""
    cures = suggested.of.get((found.what, found.where))
    if cures is None:
        return []
    if not cures:
        searched = f" in the {suggested.drafts} drafts that were tried" if suggested.is_cut_off else ""
        return [f"no single parameter cures it within its range{searched}"]
    return [line for each in cures for line in _lines(each, "cures it")]


def whole_lines(suggested: Suggestions) -> list[str]:
    """The change after which nothing is left to spoil the leather."""
    return [line for each in suggested.whole for line in _lines(each, "leaves nothing that would spoil the leather")]


def drafting_lines(suggested: Suggestions) -> list[str]:
    """The changes with which a design can be drafted."""
    return [line for each in suggested.whole for line in _lines(each, "lets it be drafted")]


def undraftable(error: DraftError, suggested: Suggestions) -> DraftError:
    """The refusal of a design that cannot be drafted with the single changes that let it be, if there are any."""
    return DraftError("\n".join((str(error), *arrowed(drafting_lines(suggested)))))


def arrowed(lines: Sequence[str], indent: str = "  ") -> list[str]:
    """Lines below what they cure; a line that goes on has no arrow of its own."""
    return [f"{indent}-> {line}" if not line.startswith(" ") else f"{indent}{line}" for line in lines]


def cut_off_line(suggested: Suggestions) -> list[str]:
    """That not everything was tried, if so."""
    if not suggested.is_cut_off:
        return []
    return [f"The search for changes was cut off after {suggested.drafts} drafts; a smaller change may do as well."]


def _lines(one: Suggestion, does: str) -> Iterator[str]:
    yield f"{_change(one)} {does}: --set {one.parameter}={one.text}"
    for less in one.less:
        yield f"   then it holds {less.after} x {less.content}, not {less.before}"
    if one.looks:
        yield f"   then look at {_looks(one.looks)}"


def _change(one: Suggestion) -> str:
    return f"{one.parameter} {_told(one.before, one.decimals)} -> {mm(one.after, one.decimals)} {one.unit}".rstrip()


def _told(value: float, decimals: int) -> str:
    """The value with these decimals, or with two if it has more of them than that."""
    return mm(value, decimals if abs(round(value, decimals) - value) < 1e-6 else 2)


def _looks(looks: Sequence[Finding]) -> str:
    named = "; ".join(f"{found.what}, {found.where}" for found in looks[:_TOLD])
    more = len(looks) - _TOLD
    return f"{named}; and {more} more" if more > 0 else named
