"""In which steps a wallet is made up: what is done to single pieces, what is laid on what, what is sewn and folded.

The steps follow from the pieces and from the order of sewing. What can no longer be reached once pieces lie on each
other is done before: skives, letters, mouths, hardware that another piece covers. Edges turned in over another piece
hold it, so they are turned right before the first seam through them. What glue alone holds is glued on before any
seam is sewn, to the nearest piece outside it, or inside it where nothing sewn is outside. What joins panels, such as
a rivet or a seam through both, waits until the wallet is folded.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from patternforge.fit.glued import glued_pieces
from patternforge.fit.layout import Layout
from patternforge.fit.order import SewingOrder, SewingStep
from patternforge.leather.hardware import Setting, hardware
from patternforge.wallet.pattern import FittingHole, Piece
from patternforge.wallet.strip import StripPlacement
from patternforge.wallet.words import EdgeRole

__all__ = ["MakingStep", "Work", "making_steps"]

Groups = tuple[tuple[str, ...], ...]


class Work(StrEnum):
    """What is done in a step."""

    SKIVE = "skive"
    LETTER = "letter"
    MOUTHS = "finish mouths"
    CREASE = "crease"
    SET = "set"
    TURN = "turn in"
    SEW = "sew"
    LAY = "lay"
    FOLD = "fold"
    STUCK = "stuck"
    EDGES = "finish edges"


@dataclass(frozen=True, slots=True)
class MakingStep:
    """One step: the work, the pieces it is done to, and those of them that are laid on here for the first time.

    ``groups`` are what is brought together, each group already held together, from the outside in. ``seam`` is sewn,
    ``fold`` closed (its number from 1); ``fittings`` are the halves set, each with the piece that carries it.
    """

    work: Work
    pieces: tuple[str, ...]
    new: tuple[str, ...] = ()
    groups: Groups = ()
    seam: str = ""
    fold: int = 0
    fittings: tuple[tuple[str, FittingHole], ...] = ()


def making_steps(layout: Layout, order: SewingOrder) -> tuple[MakingStep, ...]:
    """Every step from the cut pieces to the finished wallet; every piece is new in one, every seam sewn in one.

    A seam that cannot be sewn (see ``sewing_order``) is ``stuck``.
    """
    bench = _Bench(layout)
    early = _early(layout)
    late = [each for each in _halves(layout) if each not in early]
    joining = [each for each in late if _joins(layout, each[1])]
    folded_over = {seam.meets for seam in layout.pattern.seams if seam.meets}
    steps = [*_single(layout, early), *bench.glued()]
    steps += (step for sewn in order.steps if sewn.seam not in folded_over for step in bench.sewn(sewn))
    steps += bench.unsewn({piece for sewn in order.steps for group in sewn.groups for piece in group})
    steps += _set([each for each in late if each not in joining])
    steps += (MakingStep(Work.FOLD, _names(layout), fold=number) for number in layout.pattern.design.body.closing)
    steps += (step for sewn in order.steps if sewn.seam in folded_over for step in bench.sewn(sewn))
    steps += _set(joining)
    steps += (MakingStep(Work.STUCK, (each.piece,), seam=each.seam) for each in order.blocked)
    return (*steps, MakingStep(Work.EDGES, _names(layout)))


class _Bench:
    """What is held together so far, as the steps go on."""

    def __init__(self, layout: Layout) -> None:
        self._layout = layout
        self._level = {piece.name: piece.level for piece in layout.pattern.pieces}
        self._groups: list[tuple[str, ...]] = []
        self._turned: set[str] = set()

    def glued(self) -> Iterator[MakingStep]:
        """A step for each piece that glue alone holds."""
        for name, base in glued_pieces(self._layout).items():
            groups, new = self._joined((base, name))
            yield MakingStep(Work.LAY, (base, name), new, groups)

    def sewn(self, step: SewingStep) -> Iterator[MakingStep]:
        """The steps that a seam takes: edges turned in over another piece first, if it goes through any."""
        pieces = tuple(piece for group in step.groups for piece in group)
        for name in self._sewn_by(step.seam):
            yield from self._turn(self._layout.pattern.piece(name))
        groups, new = self._joined(pieces)
        yield MakingStep(Work.SEW, tuple(p for group in groups for p in group), new, groups, seam=step.seam)

    def unsewn(self, sewn: set[str]) -> Iterator[MakingStep]:
        """The pieces that no seam goes through, turned or laid where they lie."""
        for piece in self._layout.pattern.pieces:
            yield from self._turn(piece)
            if piece.name not in sewn and piece.name not in self._all():
                groups, new = self._joined((piece.name,))
                yield MakingStep(Work.LAY, (piece.name,), new, groups)

    def _sewn_by(self, seam: str) -> tuple[str, ...]:
        return next(each.pieces for each in self._layout.pattern.seams if each.name == seam)

    def _turn(self, piece: Piece) -> Iterator[MakingStep]:
        over = {part for edge in (piece.turned.turned if piece.turned else ()) for part in edge.over}
        if not over or piece.name in self._turned:
            return
        self._turned.add(piece.name)
        held = tuple(each.name for each in self._layout.pattern.pieces if each.part in over)
        groups, new = self._joined((piece.name, *held))
        yield MakingStep(Work.TURN, (piece.name, *held), new, groups)

    def _all(self) -> set[str]:
        return {piece for group in self._groups for piece in group}

    def _joined(self, pieces: tuple[str, ...]) -> tuple[Groups, tuple[str, ...]]:
        """The groups that these pieces bring together, from the outside in, and the pieces that are new."""
        known = self._all()
        new = tuple(piece for piece in dict.fromkeys(pieces) if piece not in known)
        met = [group for group in self._groups if set(group) & set(pieces)]
        groups = sorted([*met, *((piece,) for piece in new)], key=self._place)
        self._groups = [group for group in self._groups if group not in met]
        self._groups.append(tuple(sorted((p for group in groups for p in group), key=lambda p: self._level[p])))
        return tuple(groups), tuple(sorted(new, key=lambda p: self._level[p]))

    def _place(self, group: tuple[str, ...]) -> int:
        """The level of the largest piece of a group: what else is sewn to it may lie on either side of others."""
        pieces = [self._layout.pattern.piece(name) for name in group]
        return max(pieces, key=lambda piece: round(piece.area, 3)).level


def _names(layout: Layout) -> tuple[str, ...]:
    return tuple(piece.name for piece in layout.pattern.pieces)


def _single(layout: Layout, early: list[tuple[str, FittingHole]]) -> Iterator[MakingStep]:
    """What is done to pieces while each lies alone."""
    pieces = layout.pattern.pieces
    kinds = (
        (Work.SKIVE, [piece for piece in pieces if piece.skives]),
        (Work.LETTER, [piece for piece in pieces if piece.inscriptions]),
        (
            Work.MOUTHS,
            [piece for piece in pieces if EdgeRole.MOUTH in piece.made_edges and _is_leather(layout, piece)],
        ),
        (Work.CREASE, [piece for piece in pieces if isinstance(piece.placement, StripPlacement)]),
        (Work.TURN, [piece for piece in pieces if piece.turned and not any(e.over for e in piece.turned.turned)]),
    )
    for work, some in kinds:
        if some:
            yield MakingStep(work, tuple(piece.name for piece in some))
    yield from _set(early)


def _is_leather(layout: Layout, piece: Piece) -> bool:
    return not piece.lines


def _set(halves: list[tuple[str, FittingHole]]) -> Iterator[MakingStep]:
    """One step for all hardware that is set at the same time."""
    if halves:
        yield MakingStep(Work.SET, tuple(dict.fromkeys(name for name, _ in halves)), fittings=tuple(halves))


def _halves(layout: Layout) -> list[tuple[str, FittingHole]]:
    return [(piece.name, half) for piece in layout.pattern.pieces for half in piece.fittings]


def _early(layout: Layout) -> list[tuple[str, FittingHole]]:
    """The halves that another piece will cover: only while their piece lies alone can they be reached from behind."""
    return [each for each in _halves(layout) if not _joins(layout, each[1]) and _is_covered(layout, *each)]


def _joins(layout: Layout, half: FittingHole) -> bool:
    """Whether the fitting goes through both of its places at once and so joins what lies there."""
    fitting = next(each for each in layout.pattern.design.fittings if each.name == half.fitting)
    known = hardware().get(fitting.kind)
    return bool(fitting.meets and known and known.joins)


def _is_covered(layout: Layout, name: str, half: FittingHole) -> bool:
    piece = layout.pattern.piece(name)
    fitting = next(each for each in layout.pattern.design.fittings if each.name == half.fitting)
    if fitting.setting is Setting.COVERED:
        return True
    at = piece.placement.to_assembly(half.at)
    plies = (
        ply for ply in layout.plies if ply.of and ply.of != name and set(ply.panels) & set(piece.placement.panels)
    )
    return any(ply.holds(at) and not any(opening.contains(at) for opening in ply.openings) for ply in plies)
