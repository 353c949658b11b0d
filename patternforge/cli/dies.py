"""What is said of the dies of a wallet: how many, what each cuts, and what a shop cannot make."""

from __future__ import annotations

from patternforge.cli.lines import wrapped
from patternforge.cli.table import columns
from patternforge.drafting.die_pack import DiePack
from patternforge.drafting.names import listed
from patternforge.drawing.extent import extent
from patternforge.units import mm

__all__ = ["dies_report"]


def dies_report(pack: DiePack) -> list[str]:
    """A line for each die with its size and its cuts for one wallet; then mirror images and limits."""
    rows = [("die", "width", "height", "cuts", "for"), *(_row(pack, number) for number in range(len(pack.dies)))]
    lines = [f"  {line}" for line in columns(rows, right=(1, 2, 3))]
    return ["Dies, sizes in mm", *lines, *(line for words in _remarks(pack) for line in wrapped(words))]


def _row(pack: DiePack, number: int) -> tuple[str, ...]:
    die = pack.dies[number]
    box = extent(die.figure.inks)
    cuts = ", ".join(f"{cut.piece.name}{' (mirrored)' if cut.over else ''}" for cut in die.cuts)
    return f"{number + 1} {die.name}", mm(box.width), mm(box.height), str(die.count), cuts


def _remarks(pack: DiePack) -> list[str]:
    over = [cut.piece.name for die in pack.dies for cut in die.cuts if cut.over]
    said = [f"{die.name}: {fine.told}" for die in pack.dies for fine in pack.fines(die) if fine.is_below]
    if over:
        said.append(
            f"Turn the leather over to cut {listed(over)}, or ask for --die-mirrors own:"
            f" {pack.count_by_hand} dies in all."
        )
    return [*said, "Sign the proof only when its bars measure true and every size is right."]
