"""The words of each step of making a wallet: what a maker is told to do, in plain sentences."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from patternforge.fit.glue import glue_of
from patternforge.fit.layout import Layout
from patternforge.fit.making import MakingStep, Work
from patternforge.units import mm

__all__ = ["group_name", "listed", "step_words"]


def listed(words: Iterable[str]) -> str:
    """Words as one would say them.

    >>> listed(["shell", "divider", "pocket"])
    'shell, divider and pocket'
    """
    *others, last = tuple(words)
    return f"{', '.join(others)} and {last}" if others else last


def group_name(group: Sequence[str]) -> str:
    """What pieces held together are called: by the outermost of them.

    >>> group_name(["divider", "pocket"])
    'divider with what is sewn to it'
    """
    return group[0] if len(group) == 1 else f"{group[0]} with what is sewn to it"


def step_words(layout: Layout, step: MakingStep) -> str:
    """What is done in a step, in one or more sentences."""
    return {
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
    }[step.work](layout, step)


def base_of(layout: Layout, step: MakingStep) -> int:
    """Which of the groups of a step the others are laid on: that of the largest piece, of equals the outermost."""
    area = {piece.name: piece.area for piece in layout.pattern.pieces}
    largest = [max(area[name] for name in group) for group in step.groups]
    return max(range(len(largest)), key=lambda i: (round(largest[i], 3), -i))


def _skive(layout: Layout, step: MakingStep) -> str:
    return (
        f"Skive {listed(step.pieces)} on the flesh side where the picture is toned, to the thickness written there."
    )


def _letter(layout: Layout, step: MakingStep) -> str:
    return f"Put the letters on {listed(step.pieces)} now, while it lies alone and flat."


def _mouths(layout: Layout, step: MakingStep) -> str:
    return f"Finish the edges drawn bold on {listed(step.pieces)} now; once sewn they can hardly be reached."


def _crease(layout: Layout, step: MakingStep) -> str:
    return f"Crease {listed(step.pieces)} along the dashed lines and fold it to shape."


def _set(layout: Layout, step: MakingStep) -> str:
    return " ".join(f"Set {half.fitting} in {name}." for name, half in step.fittings)


def _turn(layout: Layout, step: MakingStep) -> str:
    shell, *held = step.pieces
    if not held:
        return f"Turn the edges of {listed(step.pieces)} in over the back and glue them down."
    return f"Lay {listed(held)} on the back of {shell}, turn the edges of {shell} in over it and glue them down."


def _sew(layout: Layout, step: MakingStep) -> str:
    if len(step.groups) == 1:
        return f"Sew {step.seam}."
    base = base_of(layout, step)
    others = [group_name(group) for i, group in enumerate(step.groups) if i != base]
    glue = "Glue only along the stitches, where the picture shows it." if glue_of(layout, step) else ""
    return f"Lay {listed(others)} on {group_name(step.groups[base])}. {glue} Sew {step.seam}."


def _lay(layout: Layout, step: MakingStep) -> str:
    return f"Lay {listed(step.pieces)} in its place; no seam holds it."


def _fold(layout: Layout, step: MakingStep) -> str:
    fold = layout.pattern.design.body.folds[step.fold - 1]
    left, right = (layout.pattern.panels[i].name for i in (step.fold - 1, step.fold))
    meet = "insides" if fold.angle > 0 else "outsides"
    return f"Fold between {left} and {right} by {mm(abs(fold.angle), 0)} degrees, {meet} together."


def _stuck(layout: Layout, step: MakingStep) -> str:
    return f"{step.seam} cannot be sewn: {listed(step.pieces)} covers it. Change the design."


def _edges(layout: Layout, step: MakingStep) -> str:
    return "Trim, sand and finish the edges that are sewn together."
