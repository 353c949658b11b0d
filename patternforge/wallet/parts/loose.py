"""What lies loose on a panel, in no pocket: keys, a pad, a booklet. It yields no piece; it takes room."""

from __future__ import annotations

from patternforge.errors import DraftError
from patternforge.wallet.blank import PartBlanks
from patternforge.wallet.body import Body
from patternforge.wallet.parts.kind import Need, PartKind, Runs, Way
from patternforge.wallet.pattern import Loose, Term
from patternforge.wallet.spec import Design, LoosePart
from patternforge.wallet.spots import spot_point
from patternforge.wallet.stacks import Ply, held_term, standing, standing_names

__all__ = ["LOOSE"]


def _plies(design: Design, part: LoosePart, _panel: int) -> tuple[Ply, ...]:
    term = held_term(design, part.content, part.count * design.load.loose, (f"part {part.name}.count", "load.loose"))
    return (Ply(part.name, False, term),) if term.value > 0 else ()


def _needs(design: Design, part: LoosePart, way: Way) -> list[Need]:
    """The item and what it keeps off either side of its panel: the relief of a fold, else the headroom."""
    across, along = standing(design.item(part.content), part.lying)
    over, up = (names[:1] for names in (standing_names(part.content, part.lying), _second(part)))
    head = ("body.headroom", design.body.headroom)
    if way is Way.ALONG_FOLDS:
        beside = Term("headroom, twice", 2 * head[1], (head[0],), 2)
        return [(Term(f"{part.content}: along the folds", along, up), beside)]
    name, off = max((head, *_reliefs_beside(design, part)), key=lambda named: named[1])
    beside = Term("room beside it, twice", 2 * off, (name,), 2)
    return [(Term(f"{part.content}: across the folds", across, over), beside)]


def _second(part: LoosePart) -> tuple[str, ...]:
    return standing_names(part.content, part.lying)[1:]


def _reliefs_beside(design: Design, part: LoosePart) -> list[tuple[str, float]]:
    first = max(part.panel - 1, 0)
    folds = design.body.folds[first : part.panel + 1]
    return [(f"fold {number}.relief", fold.relief) for number, fold in enumerate(folds, first + 1)]


def _nominal(_part: LoosePart) -> dict[str, float]:
    return {}


def _whole(design: Design, _body: Body, _runs: Runs, part: LoosePart) -> tuple[LoosePart, float]:
    return part, design.stitching.pitch


def _blanks(design: Design, body: Body, part: LoosePart, _spacing: float) -> PartBlanks:
    """Where the item lies; DraftError when that is off its panel."""
    across, along = standing(design.item(part.content), part.lying)
    middle = spot_point(body, part.spot)
    box = (middle.x - across / 2, middle.y - along / 2, middle.x + across / 2, middle.y + along / 2)
    panel = body.panels[part.panel]
    over = max(panel.x0 - box[0], box[2] - panel.x1, -box[1], box[3] - body.height)
    if over > 0:
        raise DraftError(f"it reaches {over:.2f} mm beyond panel '{panel.name}'")
    return PartBlanks((), (), (), (Loose(part.name, part.content, part.count, part.panel, box),))


LOOSE = PartKind(word="loose", plies=_plies, needs=_needs, nominal=_nominal, whole=_whole, blanks=_blanks)
