"""Two drafts of one design compared: what is in the wallet, and what was found at the same spot of both."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from patternforge.fit.findings import Finding, Verdict
from patternforge.fit.judge import AT_END
from patternforge.wallet.pattern import Pattern, Piece

__all__ = ["Less", "Spot", "Tally", "Thing", "contents_of", "less_of", "spot_of", "tallies", "things_of"]

Spot = tuple[str, str]
"""What was measured and where, without the hole or side that measured worst and the end of the leather's range."""

Thing = tuple[str, ...]
"""Something in a wallet that may be measured: the name of its piece, and what it is of that piece."""


@dataclass(frozen=True, slots=True)
class Tally:
    """How many findings at one spot read ``no``, and how many are not good."""

    no: int = 0
    wanting: int = 0


@dataclass(frozen=True, slots=True)
class Less:
    """An item of which a wallet holds less than before: its name in the design, and both counts."""

    content: str
    before: int
    after: int


def spot_of(found: Finding) -> Spot:
    """The spot of a finding, which stays the same when a change of size makes another hole the worst.

    >>> from patternforge.fit.findings import at_least
    >>> spot_of(Finding("hole rim to edge", "shell, rim 12, leather at its thinnest", 1.0, at_least(1.5, 1.0)))
    ('hole rim to edge', 'shell')
    """
    return found.what, _whole_place(found).partition(", ")[0]


def _whole_place(found: Finding) -> str:
    return found.where.partition(AT_END)[0]


def tallies(findings: Iterable[Finding]) -> Mapping[Spot, Tally]:
    """Every spot with its tally; what was found at several ends of the leather's thickness counts once."""
    places: dict[Spot, dict[str, set[Verdict]]] = {}
    for found in findings:
        places.setdefault(spot_of(found), {}).setdefault(_whole_place(found), set()).add(found.verdict)
    return {spot: _tally(at.values()) for spot, at in places.items()}


def _tally(verdicts: Iterable[set[Verdict]]) -> Tally:
    each = list(verdicts)
    return Tally(sum(Verdict.NO in at for at in each), sum(at != {Verdict.GOOD} for at in each))


def things_of(pattern: Pattern) -> frozenset[Thing]:
    """All that fit measures in a wallet, so that a finding that vanishes can be told from a thing that does."""
    of_pieces = {thing for piece in pattern.pieces for thing in _things(piece)}
    rooms = {(room.piece, "room", room.content, str(room.panel)) for room in pattern.pockets}
    loose = {("", "loose", item.part, item.content) for item in pattern.loose}
    return frozenset(of_pieces | rooms | loose)


def _things(piece: Piece) -> Iterator[Thing]:
    yield (piece.name,)
    yield from ((piece.name, "edge", role) for role in piece.made_edges)
    yield from ((piece.name, "seam", hole.seam) for hole in piece.holes)
    yield from ((piece.name, "opening", str(number)) for number in range(len(piece.openings)))
    yield from ((piece.name, "skive", str(number)) for number in range(len(piece.skives)))
    yield from ((piece.name, "fitting", each.fitting, str(each.half)) for each in piece.fittings)
    yield from ((piece.name, "letters", each.name) for each in piece.inscriptions)
    if piece.turned:
        yield (piece.name, "turned edges")


def contents_of(pattern: Pattern) -> Mapping[str, int]:
    """How many of each item the wallet holds."""
    rooms = [(pocket.content, pocket.count) for pocket in pattern.pockets]
    rooms += [(item.content, item.count) for item in pattern.loose]
    rooms += [(room.content, room.count) for room in (pattern.folded.rooms if pattern.folded else ())]
    counts: Counter[str] = Counter()
    for content, count in rooms:
        counts[content] += count
    return counts


def less_of(before: Mapping[str, int], after: Mapping[str, int]) -> tuple[Less, ...]:
    """The items of which there are fewer."""
    return tuple(
        Less(name, count, after.get(name, 0)) for name, count in before.items() if after.get(name, 0) < count
    )
