"""Sheets as they are delivered: which pieces lie on which, and what their files are called."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import sqrt

from patternforge.drafting.dies import Die, dies
from patternforge.drafting.names import file_word, file_words
from patternforge.drafting.pieces import figures
from patternforge.drafting.purpose import CutFace, DieHoles, DraftingOptions, LaserOptions, Purpose
from patternforge.drawing.arrange import arranged
from patternforge.drawing.extent import extent
from patternforge.drawing.model import Figure, Page, Sheet
from patternforge.drawing.paper import Paper
from patternforge.drawing.printing import PrintSettings
from patternforge.units import mm
from patternforge.wallet.pattern import Pattern

__all__ = ["Deliverable", "die_sheets", "laser_sheets", "own_width", "printed_pages", "wallet_dies"]

_LASER_KINDS = ("dxf", "svg")
_DIE_GAP = 10.0  # round a piece on a die sheet, mm
_SHAPE = 1.5  # width over height of a sheet that no bed limits


@dataclass(frozen=True, slots=True)
class Deliverable:
    """A file to be written: its name without ending, the kind of file (which is its ending) and what it shows."""

    name: str
    kind: str
    sheet: Sheet


def laser_sheets(pattern: Pattern, options: DraftingOptions | None = None) -> tuple[Deliverable, ...]:
    """One sheet for each leather and then one with every piece, each as DXF and as SVG.

    A piece wanted more than once lies on its sheets as often. The kerf, if any, and cutting from the back stand in
    the file name. DraftError when a piece is too wide for the bed or the kerf leaves nothing of a hole.
    """
    chosen = options or DraftingOptions()
    drawn = figures(pattern, Purpose.LASER, chosen)
    wanted = [figure for figure, piece in zip(drawn, pattern.pieces, strict=True) for _ in range(piece.quantity)]
    roles = list(dict.fromkeys(figure.group for figure in wanted))
    chosen_for = [[figure for figure in wanted if figure.group == role] for role in roles]
    words = file_words([*roles, "everything"])
    return tuple(
        Deliverable(sheet.name, kind, sheet)
        for word, some in zip(words, [*chosen_for, wanted], strict=True)
        for sheet in [_laser_sheet(f"{file_word(pattern.design.name)}-laser-{word}", some, chosen.laser)]
        for kind in _LASER_KINDS
    )


def _laser_sheet(name: str, some: Sequence[Figure], options: LaserOptions) -> Sheet:
    back = "-back" if options.cut_face is CutFace.BACK else ""
    kerf = f"-kerf-{mm(options.kerf, 3)}" if options.kerf else ""
    width = options.bed or own_width(some, options.gap)
    return arranged(some, options.gap, width, f"{name}{back}{kerf}")


def own_width(some: Sequence[Figure], gap: float) -> float:
    """The width in mm of a sheet about half as wide again as high that takes the widest piece."""
    boxes = [extent(figure.inks) for figure in some]
    area = sum((box.width + gap) * (box.height + gap) for box in boxes)
    return max(sqrt(_SHAPE * area) + gap, *(box.width + 2 * gap for box in boxes))


def die_sheets(pattern: Pattern, options: DraftingOptions | None = None) -> tuple[Deliverable, ...]:
    """One net DXF for each die, named after the first piece it cuts, in the order of ``wallet_dies``.

    Stitch holes are in it only when the die is to punch them, and then the name says so.
    """
    chosen = options or DraftingOptions()
    holes = "-with-holes" if chosen.die.holes is DieHoles.PUNCHED else ""
    stem = file_word(pattern.design.name)
    words = dict(zip((p.name for p in pattern.pieces), file_words([p.name for p in pattern.pieces]), strict=True))
    named = [(f"{stem}-die-{words[die.name]}{holes}", die.figure) for die in wallet_dies(pattern, chosen)]
    return tuple(Deliverable(name, "dxf", arranged([figure], _DIE_GAP, name=name)) for name, figure in named)


def wallet_dies(pattern: Pattern, options: DraftingOptions | None = None) -> tuple[Die, ...]:
    """The dies of a wallet, net, with stitch holes or without, mirror images shared or not, as the options say."""
    chosen = options or DraftingOptions()
    return dies(pattern, figures(pattern, Purpose.DIE, chosen), chosen.die.mirrors)


def printed_pages(pattern: Pattern, paper: Paper, settings: PrintSettings | None = None) -> tuple[Page, ...]:
    """The pages of the paper pattern; ``settings`` default to the title and revision of the design.

    DraftError as in ``patternforge.drawing.tile.pages``.
    """
    from patternforge.drawing.tile import pages

    chosen = settings or PrintSettings(pattern.design.title, pattern.design.revision)
    return pages(figures(pattern, Purpose.PAPER), paper, chosen)
