"""Part kinds: what each asks of the body and yields on the assembly. A new one is a module here and a line below."""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType
from typing import Any

from patternforge.errors import DraftError, GeometryError
from patternforge.wallet.blank import PartBlanks
from patternforge.wallet.body import Body
from patternforge.wallet.parts.bank import BANK, POCKET
from patternforge.wallet.parts.gusset import GUSSET
from patternforge.wallet.parts.kind import PartKind
from patternforge.wallet.parts.layer import LAYER
from patternforge.wallet.parts.loose import LOOSE
from patternforge.wallet.parts.opened import with_openings
from patternforge.wallet.spec import BankPart, Design, GussetPart, LayerPart, LoosePart, Part, PocketPart
from patternforge.wallet.stacks import Ply, skives_asked

__all__ = ["kind_of", "panel_plies", "part_blanks"]

_KINDS: MappingProxyType[type[Part], PartKind[Any]] = MappingProxyType(
    {
        LayerPart: LAYER,
        BankPart: BANK,
        PocketPart: POCKET,
        LoosePart: LOOSE,
        GussetPart: GUSSET,
    }
)


def kind_of(part: Part) -> PartKind[Any]:
    """The kind a part is of."""
    return _KINDS[type(part)]


def panel_plies(design: Design, panel: int) -> tuple[Ply, ...]:
    """Every thickness over ``panel`` (0-based) from the outside in, mm, contents as the load says."""
    covering = (part for part in design.parts if panel in part.panels)
    return tuple(ply for part in covering for ply in kind_of(part).plies(design, part, panel))


def part_blanks(design: Design, body: Body, part: Part, spacing: float) -> PartBlanks:
    """Blanks, rooms and own seams of a part; ``spacing`` is what its own seams are stitched at, mm.

    DraftError, with the part's name and line, when it cannot be drawn at its sizes.
    """
    try:
        return _skived(part, with_openings(design, body, part, kind_of(part).blanks(design, body, part, spacing)))
    except (DraftError, GeometryError) as fault:
        raise DraftError(f"{design.file}:{part.line}: '{part.name}': {fault}") from fault


def _skived(part: Part, made: PartBlanks) -> PartBlanks:
    """The part with its skives told to every piece of its own leather."""
    skives = skives_asked(part)
    blanks = (blank if blank.lines else replace(blank, skives=skives) for blank in made.blanks)
    return replace(made, blanks=tuple(blanks))
