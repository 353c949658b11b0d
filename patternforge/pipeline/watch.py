"""The use case ``watch``: a design drafted anew at every save, to be shown."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from time import sleep
from types import MappingProxyType

from patternforge.errors import PatternforgeError
from patternforge.export.registry import writer
from patternforge.live.shown import Picture, Shown, Standing
from patternforge.pipeline.fileset import overview
from patternforge.pipeline.stages import Judged, judged, lettered, shown
from patternforge.pipeline.views import cut_sheets

__all__ = ["WatchRequest", "Words", "drafted_anew", "saves"]

Told = Callable[[Judged], Sequence[str]]
"""What is said of a wallet, line by line."""


@dataclass(frozen=True, slots=True)
class Words:
    """What is said of a wallet: first, in a few lines, and under the pictures, whole."""

    first: Told
    report: Told


Stamp = tuple[int, int, int] | None
"""What tells one save of a file from the next: when, how large, which file; None when there is none."""

_BETWEEN = 0.1  # seconds from one look at the file to the next


@dataclass(frozen=True, slots=True)
class WatchRequest:
    """A design file, and what is set beside it."""

    design: Path
    settings: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))
    texts: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))


def saves(path: Path, wait: Callable[[], None] = lambda: sleep(_BETWEEN)) -> Iterator[Stamp]:
    """The stamp of the file at ``path`` now, and another at every save, without end; ``wait`` lies between looks."""
    known = _stamp(path)
    yield known
    while True:
        wait()
        found = _stamp(path)
        if found != known:
            known = found
            yield found


def drafted_anew(request: WatchRequest, words: Words, before: Shown | None = None) -> Shown:
    """The design as it is saved now: its report and pictures, or its faults over the pictures of ``before``."""
    try:
        wallet = lettered(judged(request.design, request.settings, request.texts))
        return Shown(
            wallet.pattern.design.title,
            Standing(wallet.verdict.value),
            tuple(words.first(wallet)),
            tuple(_pictures(wallet)),
            tuple(words.report(wallet)),
        )
    except PatternforgeError as error:
        title = before.title if before else shown(request.design)
        return Shown(title, Standing.FAULT, tuple(str(error).splitlines()), before.pictures if before else ())


def _pictures(wallet: Judged) -> Iterator[Picture]:
    """The pieces, and of a wallet with panels its thickness and its sections."""
    draw = writer("svg")
    yield Picture("The pieces, each with its showing face up", draw(overview(wallet)))
    if wallet.pattern.panels:
        thickness, sections = cut_sheets(wallet)
        yield Picture("Sections, closed and laid open", draw(sections))
        yield Picture("Thickness over every point, laid open and closed", draw(thickness))


def _stamp(path: Path) -> Stamp:
    try:
        found = path.stat()
    except OSError:
        return None
    return found.st_mtime_ns, found.st_size, found.st_ino
