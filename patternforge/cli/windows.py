"""What is said of the thicknesses that pieces serve for."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from patternforge.cli.table import columns
from patternforge.fit.findings import Finding
from patternforge.fit.window import THICKEST, THINNEST, Ends, Range, ThicknessWindow
from patternforge.units import mm
from patternforge.wallet.pattern import Pattern

__all__ = ["window_report"]

_HEAD = ("leather", "as it is", "all good", "fits")


def window_report(pattern: Pattern, windows: Sequence[ThicknessWindow]) -> list[str]:
    """A row for each leather, then what ends each range."""
    rows = [(of.role, f"{mm(of.drafted)} mm", _range(of.good), _range(of.holds)) for of in windows]
    return [
        f"{pattern.design.title}: thicknesses that its pieces serve for as they are",
        "One leather at a time, the others as drafted.",
        "",
        *columns([_HEAD, *rows]),
        "",
        *(line for of in windows for line in _ends(of)),
        "",
        f"Looked for from {mm(THINNEST)} to {mm(THICKEST)} mm. It fits where no measure reads 'no'; whether leather",
        "so thin or thick is good to sew and to carry is yours to say. A measure that wants a look at every",
        "thickness does not depend on it and is left out of 'all good'.",
    ]


def _range(ends: Range | None) -> str:
    return f"{mm(ends[0])} to {mm(ends[1])} mm" if ends else "not as it is"


def _ends(of: ThicknessWindow) -> Iterator[str]:
    yield of.role
    rows = [*_told("all good", of.good, of.good_ends), *_told("fit", of.holds, of.holds_ends)]
    yield from (f"  {line}" for line in columns(rows)) if rows else ["  no end was found either way"]


def _told(word: str, ends: Range | None, found: Ends) -> Iterator[tuple[str, str]]:
    if ends is None:
        yield f"{word} not as it is", _measured(found[0])
        return
    for side, end, finding in zip(("below", "above"), ends, found, strict=True):
        if finding:
            yield f"{word} ends {side} {mm(end)} mm", _measured(finding)


def _measured(found: Finding | None) -> str:
    if found is None:
        return ""
    return f"{found.what}, {found.where}: {found.told}"
