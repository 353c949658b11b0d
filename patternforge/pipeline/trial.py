"""One value of one parameter tried out: the design drafted and judged with it, and compared with what it was."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from types import MappingProxyType

from patternforge.design.load import load_design
from patternforge.errors import PatternforgeError
from patternforge.fit.findings import Finding
from patternforge.fit.judge import fit, worse_at_ends
from patternforge.pipeline.likeness import Spot, Tally, Thing, contents_of, tallies, things_of
from patternforge.pipeline.stages import on_letters, shown, text_at
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import Design

__all__ = ["Asked", "Trial", "Trials", "asked_of", "first_trial", "more_wanting"]

_NOTHING: Mapping[str, str] = MappingProxyType({})


@dataclass(frozen=True, slots=True)
class Asked:
    """The text of a design under the name of its file, with the values and letters set beside it."""

    text: str
    file: str
    settings: Mapping[str, str] = field(default_factory=dict)
    letters: Mapping[str, str] = field(default_factory=dict)

    def design(self, settings: Mapping[str, str] = _NOTHING) -> Design:
        """The design with these settings over its own; DesignError if it does not take them."""
        return load_design(self.text, self.file, {**self.settings, **settings}, self.letters)


def asked_of(path: Path, settings: Mapping[str, str] = _NOTHING, letters: Mapping[str, str] = _NOTHING) -> Asked:
    """The design in the file at ``path``; DesignError when it cannot be read."""
    return Asked(text_at(path), shown(path), settings, letters)


@dataclass(frozen=True, slots=True)
class Trial:
    """What came of a draft: its findings, by spot as well, what is in the wallet and what the wallet holds."""

    findings: tuple[Finding, ...] = ()
    spots: Mapping[Spot, Tally] = field(default_factory=dict)
    things: frozenset[Thing] = frozenset()
    contents: Mapping[str, int] = field(default_factory=dict)


@dataclass(slots=True)
class Trials:
    """Drafts of one design with single values changed, each made once, and no more of them than ``allowed``.

    ``first`` is the draft that the others are compared with: an empty one for a design that cannot be drafted.
    """

    asked: Asked
    first: Trial
    allowed: int
    made: dict[tuple[str, str], Trial | None] = field(default_factory=dict)
    is_cut_off: bool = False

    def of(self, name: str, text: str) -> Trial | None:
        """The draft with parameter ``name`` set to ``text``; None if it is refused or spoils something.

        None as well once all that is allowed has been spent, and then ``is_cut_off`` is true.
        """
        key = (name, text)
        if key not in self.made:
            if len(self.made) >= self.allowed:
                self.is_cut_off = True
                return None
            self.made[key] = _tried(self.asked, {name: text}, self.first)
        return self.made[key]


def first_trial(asked: Asked) -> Trial:
    """The design as it is asked for; DesignError and DraftError when it cannot be drafted."""
    pattern = drafted(asked.design())
    nominal = (*fit(pattern), *on_letters(pattern))
    return _trial(pattern, (*nominal, *worse_at_ends(pattern, pattern.design.leathers, nominal)))


def _tried(asked: Asked, settings: Mapping[str, str], first: Trial) -> Trial | None:
    """Judged at the ends of the leathers' thickness, which takes most of the time, only if that can still matter."""
    try:
        pattern = drafted(asked.design(settings))
        nominal = (*fit(pattern), *on_letters(pattern))
        if _spoils(first, _trial(pattern, nominal)):
            return None
        whole = _trial(pattern, (*nominal, *worse_at_ends(pattern, pattern.design.leathers, nominal)))
    except PatternforgeError:
        return None
    return None if _spoils(first, whole) else whole


def _trial(pattern: Pattern, findings: tuple[Finding, ...]) -> Trial:
    return Trial(findings, tallies(findings), things_of(pattern), contents_of(pattern))


def more_wanting(before: Trial, after: Trial) -> Iterator[Spot]:
    """The spots at which more is not good than was before."""
    return (spot for spot, tally in after.spots.items() if tally.wanting > before.spots.get(spot, Tally()).wanting)


def _spoils(before: Trial, after: Trial) -> bool:
    """Whether more findings read ``no`` at some spot than did before."""
    return any(tally.no > before.spots.get(spot, Tally()).no for spot, tally in after.spots.items())
