"""What the stages of drafting ask of every kind of part."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from enum import Enum
from typing import Generic, TypeVar

from patternforge.wallet.blank import PartBlanks
from patternforge.wallet.body import Body
from patternforge.wallet.pattern import Term
from patternforge.wallet.run import Run
from patternforge.wallet.spec import Design, Edge
from patternforge.wallet.stacks import Ply

__all__ = ["SIDEWAYS", "Need", "PartKind", "Runs", "Way", "mouth_runs"]

P = TypeVar("P")

SIDEWAYS = (Edge.LEFT, Edge.RIGHT)

Need = tuple[Term, ...]
"""What one part needs of the body in one direction, term by term, mm."""

Runs = Mapping[str, tuple[Run, ...]]
"""The runs of the declared seams by the seam's name."""


class Way(Enum):
    """A direction of the laid-open body."""

    ACROSS_FOLDS = "across the folds"
    ALONG_FOLDS = "along the folds"


def mouth_runs(opening: Edge) -> Way:
    """The direction in which the mouth of that opening runs."""
    return Way.ALONG_FOLDS if opening in SIDEWAYS else Way.ACROSS_FOLDS


@dataclass(frozen=True, slots=True)
class PartKind(Generic[P]):
    """One kind of part, as functions of a part of that kind.

    ``plies`` are its thicknesses over a panel (0-based) from the outside in; ``needs`` what it asks of the body in a
    direction; ``nominal`` its sizes that may move to whole stitches, by name, mm; ``whole`` the part with them moved
    and the spacing its own seams are stitched at; ``blanks`` its pieces on the assembly, its rooms and its seams.
    """

    word: str
    plies: Callable[[Design, P, int], tuple[Ply, ...]]
    needs: Callable[[Design, P, Way], list[Need]]
    nominal: Callable[[P], dict[str, float]]
    whole: Callable[[Design, Body, Runs, P], tuple[P, float]]
    blanks: Callable[[Design, Body, P, float], PartBlanks]
