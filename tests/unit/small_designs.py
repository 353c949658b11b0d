"""Design files as small as they can be: one that fits, one to look at, one that does not fit."""

from __future__ import annotations

from pathlib import Path

__all__ = ["BROKEN", "LOOK", "MISFIT", "SLEEVE", "saved"]

SLEEVE = """\
# A sleeve for one card.
design: Small sleeve
revision: B
parameters:
  margin: {value: 3 mm, from: 2.5 mm, to: 5 mm, meaning: stitch line to edge}
leathers:
  main: {thickness: 1.2 mm, tannage: vegetable, price: 14.5, price_area: ft2}
  lining: {thickness: 0.8 mm, tannage: chrome, name: Goat}
contents: {card: id1}
body: {height: fit, corner: 5 mm, panels: {sleeve: fit}}
parts:
  - {layer: back, leather: main}
  - {bank: cards, on: sleeve, leather: lining, item: card, slots: 1, step: 12 mm, show: 14 mm}
seams:
  - {seam: rim, along: [left, bottom, right], margin: margin}
"""
# The seam sews through 2 mm: twice the limit spoils leather, a little more than it wants a look.
MISFIT = SLEEVE + "limits: {seam_stack: 1 mm}\n"
LOOK = SLEEVE + "limits: {seam_stack: 1.8 mm}\n"
BROKEN = SLEEVE.replace("thickness: 1.2 mm", "thickness: 1,2").replace("on: sleeve", "on: sleave")


def saved(folder: Path, text: str = SLEEVE, name: str = "sleeve.yaml") -> Path:
    """The path of a file in ``folder`` that holds ``text``."""
    path = folder / name
    path.write_text(text, encoding="utf-8")
    return path
