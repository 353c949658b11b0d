"""What banks and flat pockets lay over their panel, ask of the body, and move to whole stitches."""

from __future__ import annotations

from dataclasses import replace

from patternforge.geometry.point import Point
from patternforge.wallet.body import Body
from patternforge.wallet.border import Border, border, opposite, seam_along
from patternforge.wallet.frame import Frame, pocket_frame
from patternforge.wallet.parts.kind import SIDEWAYS, Need, Runs, Way, mouth_runs
from patternforge.wallet.parts.mid_stitch import mid_stitch_shift, whole_number, whole_stitches
from patternforge.wallet.parts.slots import clear_need, pocket_slots
from patternforge.wallet.pattern import Term
from patternforge.wallet.spec import (
    BankPart,
    BankShape,
    Design,
    Edge,
    MouthShape,
    MouthSpec,
    PocketPart,
    SeamSpec,
    Side,
)
from patternforge.wallet.stacks import (
    Ply,
    film_plies,
    held_term,
    item_intervals,
    item_size,
    standing_names,
    standing_over,
)

__all__ = [
    "bank_needs",
    "bank_nominal",
    "bank_plies",
    "pocket_needs",
    "pocket_nominal",
    "pocket_plies",
    "whole_bank",
    "whole_pocket",
]


def pocket_plies(design: Design, part: PocketPart, panel: int) -> tuple[Ply, ...]:
    """Its leather, the films behind its windows and what it holds, the leather on the side it faces."""
    own = Term(
        f"{part.name} ({part.leather})", design.leather(part.leather).t, (f"leather {part.leather}.thickness",)
    )
    leather = Ply(part.name, True, own)
    count = (f"part {part.name}.count", "load.cards")
    term = held_term(design, part.content, part.count * design.load.cards, count)
    held = (Ply(part.name, False, term),) if term.value > 0 else ()
    films = film_plies(design, part, panel)
    return (leather, *films, *held) if part.facing is Side.OUTSIDE else (*held, *films, leather)


def bank_plies(design: Design, part: BankPart, panel: int) -> tuple[Ply, ...]:
    """The leather and the items of a bank where both together stand highest."""
    leathers, items = _bank_leather(design, part), item_intervals(part, design)
    t = design.leather(part.leather).t
    each = part.per_slot * design.load.cards
    thick = design.item(part.content).thickness
    starts = [low for low, _ in (*leathers, *items)]
    counts = ((standing_over(leathers, b), standing_over(items, b)) for b in starts)
    pieces, filled = max(counts, key=lambda count: count[0] * t + count[1] * each * thick)
    share = (f"part {part.name}.per_slot", "load.cards")
    term = held_term(design, part.content, filled * each, share, filled)
    held = (Ply(part.name, False, term),) if term.value > 0 else ()
    own = Term(f"{pieces} x {part.name} ({part.leather})", pieces * t, (f"leather {part.leather}.thickness",), pieces)
    return (Ply(part.name, True, own), *held, *film_plies(design, part, panel))


def bank_needs(design: Design, part: BankPart, way: Way) -> list[Need]:
    """Room across its columns and their seams, or from the floor to the top of the last item."""
    if mouth_runs(part.opening) is way:
        return [_across_need(design, part, part.columns)]
    steps = Term("steps", (part.slots - 1) * part.step, (f"part {part.name}.step",), part.slots - 1)
    return [_along_need(design, part, _across_item(design, part), steps)]


def pocket_needs(design: Design, part: PocketPart, way: Way) -> list[Need]:
    """Room across the item and its seams, or from the floor to the top of the item or of the pocket."""
    if mouth_runs(part.opening) is way:
        return [_across_need(design, part, 1)]
    item = _across_item(design, part)
    if part.depth > item.value:
        return [_along_need(design, part, replace(item, value=part.depth, of=(f"part {part.name}.depth",)))]
    return [_along_need(design, part, item)]


def bank_nominal(part: BankPart) -> dict[str, float]:
    """Its step, show and overlap, and the fall of its mouth."""
    return {"step": part.step, "show": part.show, "overlap": part.overlap, "mouth": part.mouth.depth}


def pocket_nominal(part: PocketPart) -> dict[str, float]:
    """Its depth and the fall of its mouth."""
    return {"depth": part.depth, "mouth": part.mouth.depth}


def whole_bank(design: Design, body: Body, runs: Runs, part: BankPart) -> tuple[BankPart, float]:
    """The bank with its mouths midway between two holes and its rises whole stitches, but for its ``exact`` sizes."""
    frame = pocket_frame(design, body, part)
    front = pocket_slots(design, frame, part).slots[0]
    spacing, shift = _meeting(design, body, runs, part, frame, front.mouth)
    if "step" not in part.exact and part.slots > 1:
        part = replace(part, step=whole_stitches(part.step, spacing))
    if "overlap" not in part.exact and part.slots > 1:
        part = replace(part, overlap=whole_stitches(part.overlap, _between_mouths(part.step, spacing)))
    if "show" not in part.exact:
        part = replace(part, show=part.show - shift)
    return replace(part, mouth=_mouth(part, spacing)), spacing


def _between_mouths(step: float, spacing: float) -> float:
    """Spacing of the stitches from mouth to mouth: a step that stays exact is shared out evenly."""
    return step / max(whole_number(step / spacing), 1) if step > 0 else spacing


def whole_pocket(design: Design, body: Body, runs: Runs, part: PocketPart) -> tuple[PocketPart, float]:
    """The pocket with its mouth midway between two holes, unless its depth is ``exact``."""
    frame = pocket_frame(design, body, part)
    spacing, shift = _meeting(design, body, runs, part, frame, frame.floor.stitch + part.depth)
    if "depth" not in part.exact:
        part = replace(part, depth=part.depth + shift)
    return replace(part, mouth=_mouth(part, spacing)), spacing


def _mouth(part: BankPart | PocketPart, spacing: float) -> MouthSpec:
    if part.mouth.shape is MouthShape.SLANTED:
        return replace(part.mouth, depth=whole_stitches(part.mouth.depth, spacing))
    return part.mouth


def _across_need(design: Design, part: BankPart | PocketPart, columns: int) -> Need:
    sides = SIDEWAYS if part.opening not in SIDEWAYS else (Edge.BOTTOM, Edge.TOP)
    clear = (replace(t, value=columns * t.value, times=columns * t.times) for t in clear_need(design, part))
    borders = (term for edge in sides for term in _border_terms(border(design, part, edge)))
    return (*clear, *borders)


def _across_item(design: Design, part: BankPart | PocketPart) -> Term:
    name = standing_names(part.content, part.lying)[1]
    return Term(f"{part.content} across", item_size(part, design)[1], (name,))


def _along_need(design: Design, part: BankPart | PocketPart, deep: Term, *steps: Term) -> Need:
    floor = border(design, part, opposite(part.opening))
    mouth = border(design, part, part.opening)
    head = Term("headroom", design.body.headroom, ("body.headroom",))
    if mouth.inset:
        head = Term("relief", mouth.inset, (mouth.inset_name,))
    return (*_border_terms(floor), *steps, deep, head)


def _border_terms(side: Border) -> tuple[Term, ...]:
    margin = Term(f"margin at the {side.edge.value}", side.margin, (side.margin_name,))
    return (
        (Term(f"relief at the {side.edge.value}", side.inset, (side.inset_name,)), margin)
        if side.inset
        else (margin,)
    )


def _neighbouring(design: Design, part: BankPart | PocketPart) -> SeamSpec | None:
    """The seam up the outer edge of another panel: pockets between folds keep level with that panel's."""
    if part.opening in (Edge.LEFT, Edge.RIGHT):
        return None
    return seam_along(design, Edge.LEFT, part) or seam_along(design, Edge.RIGHT, part)


def _meeting(
    design: Design,
    body: Body,
    runs: Runs,
    part: BankPart | PocketPart,
    frame: Frame,
    mouth: float,
) -> tuple[float, float]:
    """Spacing of the body seam a mouth meets and how far the mouth must rise; without one, of its own seams."""
    rise = frame.onto.direction(Point(0.0, 1.0))
    for side, a in ((frame.left, frame.stitch_left), (frame.right, frame.stitch_right)):
        if side.seam:
            return mid_stitch_shift(runs[side.seam.name], frame.onto.point(Point(a, mouth)), rise)
    beside = _neighbouring(design, part)
    if beside:
        at = frame.onto.point(Point(frame.stitch_left, mouth))
        x = beside.margin if Edge.LEFT in beside.along else body.width - beside.margin
        return mid_stitch_shift(runs[beside.name], Point(x, at.y), rise)
    pitch = design.stitching.pitch
    height = mouth - frame.floor.stitch
    return pitch, (max(whole_number(height / pitch - 0.5), 0) + 0.5) * pitch - height


def _bank_leather(design: Design, part: BankPart) -> tuple[tuple[float, float], ...]:
    """Where the pieces of a bank stand, above the floor of slot 1: a tee's stem from below its own floor."""
    high = item_size(part, design)[1]
    below = border(design, part, opposite(part.opening)).margin
    stems = part.shape is BankShape.TEE
    return tuple(
        ((j * part.step if stems else 0.0) - below, j * part.step + high - part.show) for j in range(part.slots)
    )
