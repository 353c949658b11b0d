"""The use case behind suggestions: the smallest change of one parameter that turns a finding good.

It is found by drafting again and again. Every value that is offered has been drafted and judged as it is written, so
that setting it gives what is said.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from enum import Enum

from patternforge.fit.findings import Finding, Verdict
from patternforge.pipeline.ladder import Ladder
from patternforge.pipeline.likeness import Spot, spot_of
from patternforge.pipeline.search import Cure, searched
from patternforge.pipeline.suggestion import Suggestion, Suggestions
from patternforge.pipeline.trial import Asked, Trial, Trials, first_trial, more_wanting
from patternforge.wallet.spec import Design

__all__ = ["Effort", "Told", "cure_of", "drafting_suggestions", "silent", "suggestions"]

Told = Callable[[], None]
"""What is called before a search, which can take half a minute, so that it can be told."""


def silent() -> None:
    """Tells nothing of a search."""


class Effort(Enum):
    """How many drafts a search may make: of a wallet of panels, and of one folded from one piece.

    The latter takes some four times as long to judge.
    """

    FULL = (200, 60)
    BRIEF = (60, 20)

    def drafts(self, design: Design) -> int:
        """The drafts allowed for this design."""
        of_panels, of_one_piece = self.value
        return of_one_piece if design.folded else of_panels


def suggestions(asked: Asked, wanted: Iterable[Finding], effort: Effort = Effort.FULL) -> Suggestions:
    """What turns each of the ``wanted`` findings of a design good without making another read ``no``.

    ``wanted`` are findings that read ``no`` or ``look`` as ``judged`` yields them. A cure of the latter gives nothing
    else to look at. DesignError and DraftError as for ``judged``.
    """
    design, first = asked.design(), first_trial(asked)
    places = {(found.what, found.where): (spot_of(found), found.verdict) for found in wanted}
    cures = {(spot, verdict): cure_of(first, spot, verdict) for spot, verdict in places.values()}
    trials = Trials(asked, first, effort.drafts(design))
    found = dict(zip(cures, searched(_ladders(design), trials, list(cures.values())), strict=True))
    of = {place: found[spot] for place, spot in places.items()}
    spoiled = [spot for spot, tally in first.spots.items() if tally.no]
    is_told = len(spoiled) == 1 and bool(found.get((spoiled[0], Verdict.NO)))
    whole = () if is_told or not spoiled else _for_whole(_ladders(design), trials, spoiled)
    return Suggestions(of, whole, len(trials.made), trials.is_cut_off)


def _for_whole(ladders: Sequence[Ladder], trials: Trials, spoiled: Sequence[Spot]) -> tuple[Suggestion, ...]:
    """What cures every spot that is spoiled or, failing that, leaves none of them spoiled."""
    cures = [cure_of(trials.first, spot, Verdict.NO) for spot in spoiled]
    (all_cured,) = searched(ladders, trials, [lambda after: all(is_cured(after) for is_cured in cures)], most=1)
    return all_cured or searched(ladders, trials, [_fits], most=1)[0]


def drafting_suggestions(asked: Asked, effort: Effort = Effort.FULL) -> Suggestions:
    """What lets a design be drafted that cannot be, so that nothing reads ``no``: ``whole`` says it.

    DesignError when the design cannot be taken.
    """
    design = asked.design()
    trials = Trials(asked, Trial(), effort.drafts(design))
    (answer,) = searched(_ladders(design), trials, [_fits], most=1)
    return Suggestions({}, answer, len(trials.made), trials.is_cut_off)


def _ladders(design: Design) -> list[Ladder]:
    return [Ladder(parameter) for parameter in design.parameters]


def _fits(after: Trial) -> bool:
    return not any(found.verdict is Verdict.NO for found in after.findings)


def cure_of(before: Trial, spot: Spot, verdict: Verdict) -> Cure:
    """Whether a draft has nothing wanting at a spot and, where only a look was wanted, nowhere more to look at.

    A finding that is not told any more counts only if all that can be measured is still there, or if it was about a
    piece that the change leaves out.
    """

    def is_cured(after: Trial) -> bool:
        if verdict is Verdict.LOOK and any(True for _ in more_wanting(before, after)):
            return False
        if spot in after.spots:
            return after.spots[spot].wanting == 0
        lost = before.things - after.things
        return not lost or any(thing[0] in spot[1] for thing in lost if len(thing) == 1)

    return is_cured
