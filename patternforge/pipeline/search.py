"""The search for changes of one parameter: all parameters are tried both ways, near their own values first."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field

from patternforge.pipeline.ladder import Ladder
from patternforge.pipeline.suggestion import Suggestion, best_of, suggestion
from patternforge.pipeline.trial import Trial, Trials

__all__ = ["Cure", "searched"]

Cure = Callable[[Trial], bool]
"""Whether a draft is what is wanted."""

# Shares of a parameter's range that all parameters are changed by: small changes closely, large ones coarsely.
_RINGS = (1 / 32, 1 / 16, 1 / 8, 3 / 16, 1 / 4, 3 / 8, 1 / 2, 3 / 4, 1.0)
_NEAR = 1 / 4  # of a range, beyond which nobody wants to know of a second parameter

_Side = tuple[int, int]
"""A ladder by its number, and the way on it: 1 upwards, -1 downwards."""


@dataclass(slots=True)
class _Want:
    """What a change is to bring about, and the rung on each side that does, with all that it changes."""

    is_met: Cure
    found: dict[_Side, Suggestion] = field(default_factory=dict)

    def is_answered(self, ring: float, most: int) -> bool:
        """Whether no larger change needs to be tried than those within ``ring``."""
        parameters = {one.parameter for one in self.found.values() if not one.less}
        return len(parameters) >= (1 if ring >= _NEAR else most)


def searched(
    ladders: Sequence[Ladder], trials: Trials, cures: Sequence[Cure], most: int = 2
) -> list[tuple[Suggestion, ...]]:
    """For each cure the best changes that bring it about, ``most`` of them; none if no single parameter does.

    One draft serves all cures. The change is the least on its side of a parameter up to what lies hidden between two
    values that were tried: one step less has been drafted and does not do.
    """
    wants = [_Want(cure) for cure in cures]
    reached: dict[_Side, int] = {}
    for ring in _RINGS:
        for number, ladder in enumerate(ladders):
            for rung in ladder.rungs(ring):
                side = (number, 1 if rung > 0 else -1)
                near, reached[side] = reached.get(side, 0), rung
                if near != rung:
                    _look_between(ladder, trials, (near, rung), [w for w in wants if side not in w.found], side)
        if all(want.is_answered(ring, most) for want in wants):
            break
    return [best_of(want.found.values(), most) for want in wants]


def _look_between(
    ladder: Ladder, trials: Trials, between: tuple[int, int], wants: Sequence[_Want], side: _Side
) -> None:
    """Takes down for each want that the far rung meets the nearest rung that is found to."""
    for want in wants:
        rung = _nearest(ladder, trials, between, want.is_met)
        after = trials.of(ladder.parameter.name, ladder.text(rung)) if rung else None
        if rung and after:
            want.found[side] = suggestion(ladder, rung, trials.first, after)


def _nearest(ladder: Ladder, trials: Trials, between: tuple[int, int], is_met: Cure) -> int | None:
    """A rung that is what is wanted and whose neighbour towards the near one is not, by halving; None if the far one
    is not."""

    def does(rung: int) -> bool:
        after = trials.of(ladder.parameter.name, ladder.text(rung))
        return after is not None and is_met(after)

    near, far = between
    if not does(far):
        return None
    while abs(far - near) > 1:
        middle = (near + far) // 2
        near, far = (near, middle) if does(middle) else (middle, far)
    return far
