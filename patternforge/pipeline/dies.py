"""The pack for a die maker: the dies of a wallet, the proof of each, and what ``pattern.json`` says of them."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any

from patternforge.drafting.die_limits import GENERAL_SHOP, ShopLimits
from patternforge.drafting.die_pack import DiePack
from patternforge.drafting.names import file_word
from patternforge.drafting.purpose import DieHoles
from patternforge.drafting.sheets import die_sheets, wallet_dies
from patternforge.drawing.extent import extent
from patternforge.drawing.model import Role
from patternforge.machines.writing import stray_of_chords
from patternforge.pipeline.request import DraftRequest, Wanted
from patternforge.wallet.pattern import Pattern

if TYPE_CHECKING:
    from patternforge.pipeline.cutter import CutFiles

__all__ = ["DieFiles", "die_files"]


@dataclass(frozen=True, slots=True)
class DieFiles:
    """The pack, the folder its files lie in, the name of its proof without ending, and the shop's own cautions."""

    pack: DiePack
    folder: str
    proof: str
    cautions: tuple[str, ...] = ()

    @property
    def proof_path(self) -> str:
        """The path of the proof in the design's folder."""
        return f"{self.folder}/{self.proof}.pdf"

    def proof_bytes(self, request: DraftRequest, warning: str) -> bytes:
        """The list of dies and the proof of each, as one PDF; a ``warning`` stands before every title."""
        from patternforge.drafting.die_list import list_pages
        from patternforge.drafting.die_proof import proof_page
        from patternforge.export.pdf import pdf_bytes

        design = self.pack.pattern.design
        title = f"{warning} {design.title}" if warning else design.title
        settings = replace(request.printing, title=title, revision=design.revision)
        proofs = [proof_page(self.pack, die, request.paper, settings) for die in self.pack.dies]
        first = list_pages(self.pack, request.paper, settings, proofs, self.cautions)
        return pdf_bytes((*first, *proofs), f"Dies. {settings.heading}")

    def described(self, named: Callable[[str], str]) -> dict[str, Any]:
        """What ``pattern.json`` says of the dies; ``named`` gives the path a file ends up with."""
        rows = zip(self.pack.dies, self.pack.files, strict=True)
        return {
            "proof": named(self.proof_path),
            "count_without_turning_over": self.pack.count_by_hand,
            "dies": [
                {
                    "file": named(f"{self.folder}/{file}"),
                    "width": extent(die.figure.inks).width,
                    "height": extent(die.figure.inks).height,
                    "symmetric": die.symmetric,
                    "cuts": [
                        {"piece": cut.piece.name, "quantity": cut.piece.quantity, "mirrored": cut.over}
                        for cut in die.cuts
                    ],
                    "finest": [
                        {"what": fine.what, "size": fine.size, "limit": fine.limit, "verdict": fine.verdict.value}
                        for fine in self.pack.fines(die)
                    ],
                }
                for die, file in rows
            ],
        }


def die_files(pattern: Pattern, request: DraftRequest, cut: CutFiles | None) -> DieFiles | None:
    """The pack that a request asks for: of a die shop's own table, or of a die shop in general; None without dies."""
    if not request.wants(Wanted.DIE):
        return None
    if cut and cut.stands_for is Wanted.DIE:
        return _of_machine(pattern, cut) if cut.dies else None
    options = request.drafting
    holes = (Role.HOLE,) if options.die.holes is DieHoles.PUNCHED else ()
    files = [f"{each.name}.{each.kind}" for each in die_sheets(pattern, options)]
    roles = (*holes, Role.OPENING, Role.OUTLINE)
    pack = DiePack(pattern, wallet_dies(pattern, options), tuple(files), GENERAL_SHOP, roles)
    return DieFiles(pack, "die", f"{file_word(pattern.design.name)}-die-proof")


def _of_machine(pattern: Pattern, cut: CutFiles) -> DieFiles:
    machine = cut.machine
    small = machine.smallest
    limits = ShopLimits(machine.title, small.hole, small.gap, small.radius)
    pack = DiePack(
        pattern,
        cut.dies,
        tuple(f"{sheet.name}.{sheet.kind}" for sheet in cut.sheets),
        limits,
        cut.cut_through,
        machine.face,
        stray_of_chords(machine),
    )
    stem = f"{file_word(pattern.design.name)}-{file_word(machine.name)}-proof"
    return DieFiles(pack, file_word(machine.name), stem, machine.cautions)
