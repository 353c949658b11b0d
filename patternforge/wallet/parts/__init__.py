"""Part kinds: what each yields on the assembly. A new kind is one module here and one line in ``part_blanks``."""

from __future__ import annotations

from patternforge.errors import DraftError, GeometryError
from patternforge.wallet.blank import PartBlanks
from patternforge.wallet.body import Body
from patternforge.wallet.parts.bank import pocket_blanks
from patternforge.wallet.parts.layer import layer_blanks
from patternforge.wallet.parts.opened import with_openings
from patternforge.wallet.spec import Design, LayerPart, Part

__all__ = ["part_blanks"]


def part_blanks(design: Design, body: Body, part: Part, spacing: float) -> PartBlanks:
    """Blanks, rooms and own seams of a part; ``spacing`` is what its own seams are stitched at, mm.

    DraftError, with the part's name and line, when it cannot be drawn at its sizes.
    """
    try:
        if isinstance(part, LayerPart):
            return with_openings(design, body, part, layer_blanks(design, body, part))
        return with_openings(design, body, part, pocket_blanks(design, body, part, spacing))
    except (DraftError, GeometryError) as fault:
        raise DraftError(f"{design.file}:{part.line}: '{part.name}': {fault}") from fault
