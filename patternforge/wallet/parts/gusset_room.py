"""The room a gusset keeps between two walls: how thick it stands, what lies in it, what it asks of the body."""

from __future__ import annotations

from collections.abc import Iterator

from patternforge.wallet.body import Body
from patternforge.wallet.border import opposite
from patternforge.wallet.parts.joins import at_fold, insets, joins, mates
from patternforge.wallet.parts.kind import SIDEWAYS, Need, Way, mouth_runs
from patternforge.wallet.parts.profile import bend_reach, folded_height
from patternforge.wallet.pattern import Pocket, Term
from patternforge.wallet.spec import Design, Edge, GussetPart, Held
from patternforge.wallet.stacks import Ply, held_term, standing, standing_names

__all__ = ["gusset_needs", "gusset_plies", "gusset_rooms"]


def gusset_plies(design: Design, part: GussetPart, panel: int) -> tuple[Ply, ...]:
    """What stands between its walls, told by the first gusset between them and by no other.

    The gusset, be it as deep as a channel or as high as folded leaves, or what it holds where that is thicker; both
    over each other where what it holds reaches under the leaves.
    """
    together = mates(design, part)
    if together[0].name != part.name:
        return ()
    gusset = max((_standing(design, mate) for mate in together), key=lambda term: term.value)
    held = tuple(
        held_term(
            design,
            each.content,
            each.count * design.load.cards,
            (f"part {mate.name}.holds {each.content}", "load.cards"),
        )
        for mate in together
        for each in mate.holds
    )
    if any(_reaches_under(design, mate, each) for mate in together for each in mate.holds):
        terms: tuple[Term, ...] = (*held, gusset)
    else:
        terms = max(held, (gusset,), key=lambda terms: sum(term.value for term in terms))
    return tuple(Ply(part.name, False, term) for term in terms if term.value > 0)


def _standing(design: Design, part: GussetPart) -> Term:
    if part.pleats:
        height = folded_height(design.leather(part.leather), part.pleats)
        name = (f"part {part.name}.folded height",)
        return Term(f"{2 * part.pleats} leaves of {part.name} ({part.leather})", height, name)
    return Term(f"depth of {part.name}", part.depth, (f"part {part.name}.depth",))


def _reaches_under(design: Design, part: GussetPart, held: Held) -> bool:
    """Whether an item comes to lie over leaves: those beside it, where its panel leaves no room between them, and
    those along its floor."""
    leaves = {
        edge: mate.leaf + bend_reach(design.leather(mate.leather))
        for mate in mates(design, part)
        if mate.pleats
        for join in joins(design, mate)
        for edge in join.seam.along
    }
    if opposite(part.opening) in leaves:
        return True
    beside = [leaf for edge, leaf in leaves.items() if edge is not part.opening]
    width = _declared_width(design, part)
    across = standing(design.item(held.content), part.lying)[0]
    return bool(beside) and (width is None or across > width - 2 * max(beside))


def _declared_width(design: Design, part: GussetPart) -> float | None:
    """The declared size of the panel along the mouth; None where it is fitted."""
    along_folds = mouth_runs(part.opening) is Way.ALONG_FOLDS
    return design.body.height if along_folds else design.body.panels[part.panel].width


def gusset_needs(design: Design, part: GussetPart, way: Way) -> list[Need]:
    """Room for each of the things it holds."""
    return [_need(design, part, held, way) for held in part.holds]


def _need(design: Design, part: GussetPart, held: Held, way: Way) -> Need:
    item, inset = design.item(held.content), insets(design, part)
    across, along = standing(item, part.lying)
    over, up = standing_names(held.content, part.lying)
    if mouth_runs(part.opening) is way:
        sides = SIDEWAYS if part.opening not in SIDEWAYS else (Edge.BOTTOM, Edge.TOP)
        borders = (
            Term(f"{part.name} at the {edge.value}", inset[edge], (_inset_name(part, edge),)) for edge in sides
        )
        thickness = (f"content {held.content}.thickness",)
        taut = Term(f"{held.count} x thickness", held.count * item.thickness, thickness, held.count)
        ease = Term("ease", part.ease, (f"part {part.name}.ease",))
        across_mouth = Term(f"{held.content}: across the mouth", across, (over,))
        return (across_mouth, *((taut,) if part.pleats else ()), ease, *borders)
    at_floor = opposite(part.opening)
    floor = Term(f"{part.name} at the floor", inset[at_floor], (_inset_name(part, at_floor),))
    relief = Term("relief", inset[part.opening], (_inset_name(part, part.opening),))
    headroom = Term("headroom", design.body.headroom, ("body.headroom",))
    head = relief if at_fold(design, part, part.opening) else headroom
    return (floor, Term(f"{held.content}: towards the mouth", along, (up,)), head)


def _inset_name(part: GussetPart, edge: Edge) -> str:
    return f"part {part.name}.room at the {edge.value}"


def gusset_rooms(design: Design, body: Body, part: GussetPart) -> Iterator[Pocket]:
    """Where each of the things it holds lies, pushed home, in the middle along the mouth."""
    panel, inset = body.panels[part.panel], insets(design, part)
    low_x, high_x = panel.x0 + inset[Edge.LEFT], panel.x1 - inset[Edge.RIGHT]
    low_y, high_y = inset[Edge.BOTTOM], body.height - inset[Edge.TOP]
    for held in part.holds:
        across, along = standing(design.item(held.content), part.lying)
        wide, high = (along, across) if part.opening in SIDEWAYS else (across, along)
        x0 = {Edge.LEFT: high_x - wide, Edge.RIGHT: low_x}.get(part.opening, (low_x + high_x - wide) / 2)
        y0 = {Edge.TOP: low_y, Edge.BOTTOM: high_y - high}.get(part.opening, (low_y + high_y - high) / 2)
        yield Pocket(
            part=part.name,
            piece=part.name,
            content=held.content,
            count=held.count,
            panel=part.panel,
            opening=part.opening,
            box=(x0, y0, x0 + wide, y0 + high),
            show=0.0,
            ease=part.ease,
            panels=(part.panel,),
        )
