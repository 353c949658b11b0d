"""The use case ``check``: read, assemble, judge, and search for what would cure a wallet."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from pathlib import Path

from patternforge.errors import DraftError
from patternforge.fit.findings import Verdict
from patternforge.pipeline.cure_words import undraftable
from patternforge.pipeline.stages import Judged, judged
from patternforge.pipeline.suggest import Effort, Told, drafting_suggestions, silent, suggestions
from patternforge.pipeline.suggestion import Suggestions
from patternforge.pipeline.trial import asked_of

__all__ = ["Check", "check"]

_NOTHING = Suggestions({}, (), 0, False)


@dataclass(frozen=True, slots=True)
class Check:
    """A judged wallet, and what would cure the findings that were asked about."""

    wallet: Judged
    suggested: Suggestions


def check(
    design: Path,
    settings: Mapping[str, str],
    letters: Mapping[str, str],
    cured: Collection[Verdict],
    searching: Told = silent,
) -> Check:
    """The design judged as by ``judged``, with the cures of all findings of the verdicts ``cured``.

    ``searching`` is called before they are looked for, if there are any to look for.
    DesignError as there; DraftError, with the changes that would let it be drafted, if it cannot be.
    """
    asked = asked_of(design, settings, letters)
    try:
        wallet = judged(design, settings, letters)
    except DraftError as error:
        searching()
        raise undraftable(error, drafting_suggestions(asked, Effort.FULL)) from error
    wanted = [found for found in wallet.findings if found.verdict in cured]
    if not wanted:
        return Check(wallet, _NOTHING)
    searching()
    return Check(wallet, suggestions(asked, wanted))
