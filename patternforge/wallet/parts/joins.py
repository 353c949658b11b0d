"""What a gusset joins: its two seams, the walls they sew it to, and the gussets that share the room between them."""

from __future__ import annotations

from dataclasses import dataclass

from patternforge.errors import DraftError
from patternforge.wallet.holes import hole_reach
from patternforge.wallet.parts.profile import bend_reach
from patternforge.wallet.spec import Design, Edge, GussetPart, SeamSpec

__all__ = ["Join", "at_fold", "insets", "joins", "mates", "turn_of"]


@dataclass(frozen=True, slots=True)
class Join:
    """One long edge of a gusset: its seam and the part that is the wall next to it."""

    seam: SeamSpec
    wall: str


def joins(design: Design, part: GussetPart) -> tuple[Join, Join]:
    """The outer join and the inner one: walls named before the gusset lie outside of it, those after it inside.

    DraftError when a seam does not sew the gusset to walls on one side of it, when both do on the same side, or when
    a seam leaves the gusset's panel.
    """
    seams = {seam.name: seam for seam in design.seams}
    order = [each.name for each in design.parts]
    flat = {each.name for each in design.parts if not isinstance(each, GussetPart)}
    at, outer, inner = order.index(part.name), None, None
    for name in part.joins:
        seam = seams[name]
        _check(design, part, seam)
        walls = [order.index(each) for each in seam.through if each in flat]
        if walls and max(walls) < at:
            outer = Join(seam, order[max(walls)])
        elif walls and min(walls) > at:
            inner = Join(seam, order[min(walls)])
    if outer is None or inner is None:
        raise DraftError(
            f"{_named(design, part)} its seams {' and '.join(part.joins)} must each sew it to a wall of its own: list"
            " it between the two walls, and each wall with it in its own seam's 'through'"
        )
    return outer, inner


def _check(design: Design, part: GussetPart, seam: SeamSpec) -> None:
    if part.name not in seam.through:
        raise DraftError(
            f"{_named(design, part)} seam '{seam.name}' does not go through it: name it in its 'through'"
        )
    first, last = seam.over or (0, len(design.body.panels) - 1)
    if (first, last) != (part.panel, part.panel):
        panel = design.body.panels[part.panel].name
        raise DraftError(f"{_named(design, part)} seam '{seam.name}' does not keep to panel '{panel}'")


def _named(design: Design, part: GussetPart) -> str:
    return f"{design.file}:{part.line}: '{part.name}':"


def mates(design: Design, part: GussetPart) -> tuple[GussetPart, ...]:
    """All gussets that stand between the same two walls, itself among them, in the order of the design."""
    walls = _walls(design, part)
    others = (p for p in design.parts if isinstance(p, GussetPart) and p.panel == part.panel)
    return tuple(each for each in others if _walls(design, each) == walls)


def _walls(design: Design, part: GussetPart) -> tuple[str, str]:
    outer, inner = joins(design, part)
    return outer.wall, inner.wall


def turn_of(design: Design, part: GussetPart) -> float:
    """From the stitch line to the outside of a channel's web, mm: as declared, or as near as the bend lets it stand.

    The bend's own reach, the hole's, and the least from a hole's rim to a fold.
    """
    if part.turn is not None:
        return part.turn
    hole = max(hole_reach(join.seam.stitching.hole) for join in joins(design, part))
    return bend_reach(design.leather(part.leather)) + hole + design.limits.hole_to_fold


def insets(design: Design, part: GussetPart) -> dict[Edge, float]:
    """How far inside each edge of its panel the room of a gusset begins, mm.

    At the web of a channel, else at the stitch line of a seam, at the relief of a fold, at the edge itself.
    """
    found = dict.fromkeys(Edge, 0.0)
    found.update({edge: design.body.folds[fold].relief for edge, fold in _folds(design, part.panel).items()})
    for seam in design.seams:
        if seam.covers(part.panel) and (not seam.through or set(_walls(design, part)) & set(seam.through)):
            found.update({edge: max(found[edge], seam.margin) for edge in seam.along})
    for mate in (each for each in mates(design, part) if not each.pleats):
        for join in joins(design, mate):
            web = join.seam.margin + turn_of(design, mate)
            found.update({edge: max(found[edge], web) for edge in join.seam.along})
    return found


def at_fold(design: Design, part: GussetPart, edge: Edge) -> bool:
    """Whether that edge of the gusset's panel is a fold."""
    return edge in _folds(design, part.panel)


def _folds(design: Design, panel: int) -> dict[Edge, int]:
    folds = {Edge.LEFT: panel - 1, Edge.RIGHT: panel}
    return {edge: fold for edge, fold in folds.items() if 0 <= fold < len(design.body.folds)}
