"""One design that uses every key, from which the broken ones are made by small edits."""

from __future__ import annotations

__all__ = ["GOOD", "line_of"]

GOOD = """\
design: Three-fold wallet
revision: A
notes: >
  Free text, on as many
  lines as it takes.
parameters:
  margin: {value: 3.5 mm, from: 2.5 mm, to: 6 mm, meaning: stitch line to edge}
  slots: {value: 3, from: 1, to: 6, meaning: card pockets}
  reach: {value: 2 * margin + card.height, to: 70}
leathers:
  outer:
    thickness: 1.2 mm
    tolerance: 0.1 mm
    neutral: 0.5
    min_radius: 0.5
    tannage: vegetable
    face: grain
    stretch: across
    name: Shoulder
    price: 14.5
    price_area: ft2
  inner: {thickness: 2-3 oz}
  film: {thickness: 0.2 mm, made_of: film}
contents:
  card: id1
  note: {item: note-eur-50, thickness: 0.12 mm}
  comb: {length: 120 mm, height: 28 mm, thickness: 4 mm, corner_radius: 2 mm, section: flat}
body:
  height: fit
  corner: 6 mm
  corners: {bottom left: 12 mm, bottom right: 11 mm, top left: 7 mm, top right: 3.5 mm}
  sides: {bottom: {bow: -1 mm}}
  panels: {left: fit, middle: 105 mm, right: card.length + 15 mm}
  folds:
    - {angle: 180, compensation: 1, relief: 4 mm}
    - {angle: 180 deg, relief: outer.thickness * 3}
  closing: [2, 1]
  turned: false
  clearance: 1.5 mm
  headroom: 1/8 in
load: {cards: 0.5, notes: 0}
stitching:
  pitch: 8 per French inch
  mode: even
  hole: {shape: slit, length: 2 mm, width: 0.3 mm, slant: 45}
  tails: 150 mm
  thread: 0.55 mm
parts:
  - layer: shell
    leather: outer
    showing: outside
  - layer: divider
    leather: inner
    over: [left, middle]
    drop: 8 mm
    opening: top
    holds: {note: 10}
    notch: 2 mm
    trim: {top: 1 mm}
    exact: [drop]
  - bank: left cards
    on: left
    leather: inner
    item: card
    slots: slots
    per_slot: 1
    step: 12 mm
    show: 13 mm
    overlap: 8 mm
    ease: 2.5 mm
    shape: tee
    sewn_to: [shell]
    stands: lying
    opening: top
    columns: 1
    facing: inside
    mouth: {shape: dipped, depth: 3 mm}
    thumb: {width: 18 mm, depth: 9 mm}
    exact: [step, show]
  - pocket: sleeve
    on: right
    leather: inner
    item: comb
    depth: reach
    count: 1
    mouth: straight
    openings:
      - hole: push hole
        at: {left: 20 mm, bottom: 15 mm}
        diameter: 15 mm
        border: 4 mm
  - layer: strap
    leather: inner
    over: [middle, right]
    inset: {left: 40 mm, bottom: 30 mm, top: 25 mm}
    corner: 10 mm
    fastened: sewn
    sides: {left: {bow: 2 mm, slant: 1.5 mm}}
    stands: upright
    openings:
      - window: ID window
        at: {panel: right, right: 40 mm, top: 45 mm}
        width: 50 mm
        height: 20 mm
        corner: 4 mm
        film: {leather: film, overlap: 7 mm, margin: 2.5 mm}
      - slot: bar slot
        at: {panel: middle}
        width: 18 mm
        height: 3.2 mm
fittings:
  - fitting: closure
    kind: snap-line-20
    on: strap
    at: {panel: middle, left: 60 mm}
    meets: {part: shell, panel: left}
    holes: [5 mm, 4 mm]
    cap: 13 mm
seams:
  - seam: rim
    along: [left, bottom, right]
    margin: margin
    end: 3 mm
    corners: rounded
    across: open
    stop: 5 mm
    spread: 0 mm
    through: [shell, divider]
    stitching: {pitch: 3 mm, mode: iron}
  - seam: strap seam
    along: [bottom, right]
    over: right
    of: strap
limits:
  hole_to_mouth: 0.6 mm
  hole_to_edge: 1.5 mm
  seam_stack: 6 mm
  pitch_look: 0.05
  pitch_no: 0.15
"""


def line_of(words: str) -> int:
    """The line on which ``words`` stand in the good design."""
    return GOOD[: GOOD.index(words)].count("\n") + 1
