"""From a design file to a judged wallet: read, assemble, fit."""

from __future__ import annotations

import os
import stat
from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from types import MappingProxyType

from patternforge.design.load import load_design
from patternforge.design.source import decoded
from patternforge.design.words import listed, nearest
from patternforge.drafting.source import Source
from patternforge.errors import DesignError, DraftError, Fault
from patternforge.fit.findings import Finding, Verdict, worst
from patternforge.fit.judge import fit_over_range
from patternforge.leather.material import Leather
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import Design

__all__ = ["Judged", "design_at", "judged", "lettered", "on_letters", "shown", "text_at"]

_NOTHING: Mapping[str, str] = MappingProxyType({})
_LARGEST = 1_000_000  # bytes of a design file


@dataclass(frozen=True, slots=True)
class Judged:
    """A drafted wallet, what was found when it was closed, and what it was drafted from.

    ``kept_for``: the leathers the findings are of, where the pieces are kept for others than they were drafted for.
    """

    pattern: Pattern
    findings: tuple[Finding, ...]
    source: Source
    kept_for: tuple[Leather, ...] = ()

    @property
    def as_cut(self) -> Pattern:
        """The pattern with the leathers that its pieces are cut from."""
        if not self.kept_for:
            return self.pattern
        return replace(self.pattern, design=replace(self.pattern.design, leathers=self.kept_for))

    @property
    def verdict(self) -> Verdict:
        """The worst verdict of all."""
        return worst(self.findings)


def judged(path: Path, settings: Mapping[str, str] = _NOTHING, texts: Mapping[str, str] = _NOTHING) -> Judged:
    """The design at ``path`` drafted and closed, over the whole range of its leathers; ``settings`` and ``texts`` as
    for ``load_design``.

    DesignError when the file cannot be read or taken, DraftError when the design cannot be drafted.
    """
    source = Source(text_at(path), settings, texts)
    pattern = drafted(load_design(source.text, shown(path), settings, texts))
    return Judged(pattern, (*fit_over_range(pattern), *on_letters(pattern)), source)


def on_letters(pattern: Pattern) -> tuple[Finding, ...]:
    """What is found on letters once they are drawn; the alphabet is loaded only where there are any."""
    if not any(piece.inscriptions for piece in pattern.pieces):
        return ()
    from patternforge.drafting.letters import small_letters

    return tuple(small_letters(pattern))


def lettered(wallet: Judged) -> Judged:
    """The wallet as it is; DraftError, with every place, when a text of it cannot be drawn on paper."""
    from patternforge.drafting.writable import unwritable

    faults = unwritable(wallet.pattern)
    if faults:
        raise DraftError("\n".join(faults))
    return wallet


def design_at(path: Path, settings: Mapping[str, str] = _NOTHING, texts: Mapping[str, str] = _NOTHING) -> Design:
    """The design in the file at ``path``; DesignError with every fault when it cannot be read or taken."""
    return load_design(text_at(path), shown(path), settings, texts)


def text_at(path: Path, kind: str = "design") -> str:
    """The text of a file of at most 1 MB; DesignError, naming the file, when there is none to be read.

    ``kind`` is the word that messages use for what the file holds.
    """
    try:
        found = path.stat()
        if not stat.S_ISREG(found.st_mode):
            raise DesignError([_no_file(path, found.st_mode, kind)])
        # Some files of the system give their size as 0, so no more is read than is lawful either.
        with path.open("rb") as stream:
            data = stream.read(_LARGEST + 1)
    except OSError as error:
        raise DesignError([_unreadable(path, error, kind)]) from error
    if len(data) > _LARGEST:
        raise DesignError([Fault(shown(path), 0, 0, "the file is larger than 1 MB", f"a {kind} has a few kB")])
    return decoded(data, shown(path))


def shown(path: Path) -> str:
    """The path as text whatever the system's encoding, so that the design's name is the same under all of them."""
    return os.fsencode(path).decode("utf-8", "replace")


def _no_file(path: Path, mode: int, kind: str) -> Fault:
    if stat.S_ISDIR(mode):
        return Fault(shown(path), 0, 0, "this is a folder", f"give the path of a {kind} file in it")
    return Fault(shown(path), 0, 0, "this is a pipe or a device, not a file", f"save the {kind} in a file")


def _unreadable(path: Path, error: OSError, kind: str) -> Fault:
    if isinstance(error, FileNotFoundError):
        return Fault(shown(path), 0, 0, "there is no such file", _file_advice(path, kind))
    return Fault(shown(path), 0, 0, f"the file cannot be read: {error.strerror}", "see to it that it can")


def _file_advice(path: Path, kind: str) -> str:
    """Another file in that folder: the one of nearly the same name, or all of them."""
    beside = {each.stem: each for each in sorted(path.parent.glob("*.yaml"))} if path.parent.is_dir() else {}
    near = nearest(path.stem, beside)
    if near:
        return f"did you mean '{shown(beside[near])}'?"
    names = listed(shown(Path(each.name)) for each in beside.values())
    return f"in that folder there are {names}" if beside else f"give the path of a {kind} file"
