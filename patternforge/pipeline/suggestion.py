"""A change of one parameter that cures something, and the order in which such changes are told."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from patternforge.fit.findings import Finding, Verdict
from patternforge.pipeline.ladder import Ladder
from patternforge.pipeline.likeness import Less, less_of, spot_of
from patternforge.pipeline.trial import Trial, more_wanting

__all__ = ["Place", "Suggestion", "Suggestions", "best_of", "suggestion"]

Place = tuple[str, str]
"""What was measured and where, as in the finding."""


@dataclass(frozen=True, slots=True)
class Suggestion:
    """A change of one parameter: its value before and after, mm or a count, and the latter as ``--set`` takes it.

    ``share`` is how large the change is in the parameter's lawful range. ``less``: what the wallet then holds less
    of; ``looks``: what then wants a look where nothing, or something worse, is found now.
    """

    parameter: str
    before: float
    after: float
    decimals: int
    unit: str
    text: str
    share: float
    less: tuple[Less, ...] = ()
    looks: tuple[Finding, ...] = ()


@dataclass(frozen=True, slots=True)
class Suggestions:
    """For each place of a finding that was asked about its suggestions, the best first; none if there are none.

    ``whole``: what cures all that reads ``no`` or, if nothing does, after which at least nothing reads so; left out
    where a single finding reads ``no`` and has its suggestions.
    ``drafts`` were made; ``is_cut_off``: more would have been needed to try all there is.
    """

    of: Mapping[Place, tuple[Suggestion, ...]]
    whole: tuple[Suggestion, ...]
    drafts: int
    is_cut_off: bool


def suggestion(ladder: Ladder, rung: int, before: Trial, after: Trial) -> Suggestion:
    """The change to a rung of a parameter's ladder, with what it brings about besides."""
    own = ladder.parameter
    return Suggestion(
        parameter=own.name,
        before=own.value,
        after=ladder.value(rung),
        decimals=ladder.decimals,
        unit=own.unit,
        text=ladder.text(rung),
        share=ladder.share(rung),
        less=less_of(before.contents, after.contents),
        looks=tuple(_new_looks(before, after)),
    )


def best_of(suggested: Iterable[Suggestion], most: int) -> tuple[Suggestion, ...]:
    """The best ``most``, one for each parameter: first what brings nothing to look at, then the least change.

    What makes the wallet hold less is left out where anything else helps.
    """
    ranked = sorted(suggested, key=lambda one: (bool(one.less), bool(one.looks), one.share))
    best: dict[str, Suggestion] = {}
    for one in ranked:
        best.setdefault(one.parameter, one)
    full = [one for one in best.values() if not one.less]
    return tuple(full or best.values())[:most]


def _new_looks(before: Trial, after: Trial) -> Iterator[Finding]:
    """The first finding at each spot that wants a look and did not, or read ``no``."""
    told = set()
    changed = {*more_wanting(before, after), *(spot for spot, tally in before.spots.items() if tally.no)}
    for found in after.findings:
        spot = spot_of(found)
        if found.verdict is Verdict.LOOK and not after.spots[spot].no and spot in changed and spot not in told:
            told.add(spot)
            yield found
