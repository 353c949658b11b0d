"""The words of each step of making a wallet: what a maker is told to do, in plain sentences."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType

from patternforge.drafting.letters import letter_facts
from patternforge.drafting.names import listed
from patternforge.fit.glue import Glue, glue_of, is_between
from patternforge.fit.glued import glued_pieces
from patternforge.fit.layout import Layout
from patternforge.fit.making import MakingStep, Work
from patternforge.leather.hardware import Setting, hardware
from patternforge.units import mm
from patternforge.wallet.pattern import FittingHole
from patternforge.wallet.words import Edge

__all__ = ["base_of", "group_name", "step_words"]


@dataclass(frozen=True, slots=True)
class _Kind:
    """Hardware as far as words go: what its halves are called, how it is set, whether it goes through both places."""

    halves: tuple[str, ...]
    setting: Setting
    joins: bool


_TURNED = {Edge.LEFT: "top", Edge.TOP: "right", Edge.RIGHT: "bottom", Edge.BOTTOM: "left"}


def group_name(layout: Layout, group: Sequence[str]) -> str:
    """What pieces held together are called: by the largest of them."""
    if len(group) == 1:
        return group[0]
    largest = _largest(layout, group)
    not_glued = set(group) - glued_pieces(layout).keys()
    return f"{largest} with what is {'glued' if len(not_glued) == 1 else 'sewn'} to it"


def _largest(layout: Layout, group: Sequence[str]) -> str:
    """The largest of some pieces, of equals the outermost."""
    return max(group, key=lambda name: round(layout.pattern.piece(name).area, 3))


def base_of(layout: Layout, step: MakingStep) -> int:
    """Which of the groups of a step the others are laid on: that of the largest piece, of equals the outermost."""
    every = [name for group in step.groups for name in group]
    largest = _largest(layout, every)
    return next(i for i, group in enumerate(step.groups) if largest in group)


def step_words(layout: Layout, step: MakingStep) -> str:
    """What is done in a step, in one or more sentences."""
    return " ".join(_SAID[step.work](layout, step))


def _skive(layout: Layout, step: MakingStep) -> Iterator[str]:
    yield f"Skive the back of {listed(step.pieces)} beneath the toned places, to the thickness written there."
    yield "Use a sharp blade and cut away from your hand."


def _letter(layout: Layout, step: MakingStep) -> Iterator[str]:
    for name in step.pieces:
        facts = letter_facts(layout.pattern.piece(name))
        yield f"Put the letters on the showing face of {name} now, while it lies alone and flat: {'; '.join(facts)}."


def _mouths(layout: Layout, step: MakingStep) -> Iterator[str]:
    yield f"Finish the edges drawn bold on {listed(step.pieces)}."
    yield "Once the pieces are sewn down, these edges are hard to reach."


def _crease(layout: Layout, step: MakingStep) -> Iterator[str]:
    yield f"Crease {listed(step.pieces)} along the dashed lines and fold to shape."


def _set(layout: Layout, step: MakingStep) -> Iterator[str]:
    joined: dict[str, list[str]] = {}
    for name, half in step.fittings:
        if _kind(layout, half).joins:
            joined.setdefault(half.fitting, []).append(name)
        else:
            yield from _set_half(layout, name, half)
    for fitting, names in joined.items():
        yield f"Set {fitting} through {listed(dict.fromkeys(names))}, where both its holes lie on each other."


def _set_half(layout: Layout, name: str, half: FittingHole) -> Iterator[str]:
    kind = _kind(layout, half)
    word = f"the {kind.halves[half.half - 1]} of {half.fitting}" if kind.halves else half.fitting
    if kind.setting is Setting.COVERED:
        yield f"Glue {word} to the back of {name} at its mark, before another piece covers it."
    else:
        yield f"Set {word} in {name}."


def _turn(layout: Layout, step: MakingStep) -> Iterator[str]:
    if not step.groups:
        yield f"Turn the toned edges of {listed(step.pieces)} in over the back and glue them down."
        return
    shell, *held = step.pieces
    over = "it" if len(held) == 1 else "them"
    yield f"Lay {listed(held)} on the back of {shell}. Turn the edges of {shell} in over {over} and glue them down."


def _sew(layout: Layout, step: MakingStep) -> Iterator[str]:
    glue = glue_of(layout, step)
    if len(step.groups) > 1:
        base = base_of(layout, step)
        others = [group_name(layout, group) for i, group in enumerate(step.groups) if i != base]
        yield f"Lay {listed(others)} on {group_name(layout, step.groups[base])}."
    if glue:
        yield "Glue along the stitches only, as the picture shows on the lower piece."
    yield from _left_open(layout, glue)
    holes = sum(len(seam.holes) for seam in layout.pattern.seams if seam.name == step.seam)
    yield f"Sew {step.seam}, {holes} holes."


def _left_open(layout: Layout, glue: Sequence[Glue]) -> Iterator[str]:
    """What must stay free of glue: where items go in, by the edges of the picture seen from the inside."""
    shut = [
        pocket
        for pocket in layout.pattern.pockets
        if any(is_between(layout, pocket, each.outer, each.inner) for each in glue)
    ]
    words = dict.fromkeys(f"{_edge(layout, pocket.opening)} ({pocket.content})" for pocket in shut)
    if words:
        yield f"Leave the pocket open at the {listed(words)}."


def _edge(layout: Layout, edge: Edge) -> str:
    return _TURNED[edge] if layout.pattern.design.body.turned else edge.value


def _lay(layout: Layout, step: MakingStep) -> Iterator[str]:
    if len(step.groups) > 1:
        base, glued = step.pieces
        folds = len(layout.pattern.piece(glued).placement.panels) - 1
        free = ("", ", but not in the fold", ", but not in the folds")[min(folds, 2)]
        yield f"Glue {glued} on {base} all over{free}; no seam holds it."
        return
    yield f"Lay {listed(step.pieces)} in its place; no seam holds it."


def _fold(layout: Layout, step: MakingStep) -> Iterator[str]:
    fold = layout.pattern.folds[step.fold - 1]
    left, right = (layout.pattern.panels[i].name for i in (step.fold - 1, step.fold))
    if abs(fold.angle) == 180:
        faces = "insides" if fold.angle > 0 else "outsides"
        yield f"Fold between {left} and {right} until their {faces} meet."
    else:
        yield f"Fold between {left} and {right} by {mm(abs(fold.angle), 0)} degrees."
    around = layout.pattern.design.body.folds[step.fold - 1].core
    if around:
        yield f"The fold goes round {around}: put it in first."


def _stuck(layout: Layout, step: MakingStep) -> Iterator[str]:
    yield f"{step.seam} cannot be sewn: {listed(step.pieces)} covers it. The design must be changed."


def _edges(layout: Layout, step: MakingStep) -> Iterator[str]:
    trims = {(piece.name, _edge(layout, edge), by) for piece in layout.pattern.pieces for edge, by in piece.trims}
    for name, edge, by in sorted(trims):
        yield f"Cut {mm(by)} mm off {name} at the {edge}, flush with the rest."
    yield "Sand and finish the edges all round."


def _kind(layout: Layout, half: FittingHole) -> _Kind:
    fitting = next(each for each in layout.pattern.design.fittings if each.name == half.fitting)
    known = hardware().get(fitting.kind)
    halves = known.halves if known and len(known.halves) >= half.half else ()
    return _Kind(halves, fitting.setting, bool(fitting.meets and known and known.joins))


_SAID: Mapping[Work, Callable[[Layout, MakingStep], Iterator[str]]] = MappingProxyType(
    {
        Work.SKIVE: _skive,
        Work.LETTER: _letter,
        Work.MOUTHS: _mouths,
        Work.CREASE: _crease,
        Work.SET: _set,
        Work.TURN: _turn,
        Work.SEW: _sew,
        Work.LAY: _lay,
        Work.FOLD: _fold,
        Work.STUCK: _stuck,
        Work.EDGES: _edges,
    }
)
