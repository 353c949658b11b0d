"""A third good design, for the keys of gussets: a channel and a bellows between the same two walls."""

from __future__ import annotations

__all__ = ["POUCH"]

POUCH = """\
design: Pouch
parameters:
  margin: {value: 3 mm, meaning: stitch line to edge}
leathers:
  outer: {thickness: 1.2 mm}
  thin: {thickness: 0.7 mm}
contents:
  coins: {length: 60 mm, height: 40 mm, thickness: 15 mm}
body:
  height: 80 mm
  panels: {pouch: 100 mm, flap: 50 mm}
  folds: [{angle: 180}]
parts:
  - layer: back
    leather: outer
  - gusset: left side
    on: pouch
    leather: thin
    joins: [back left, front left]
    depth: 20 mm
    turn: margin
    short: 2 mm
    ease: 3 mm
    showing: inside
  - gusset: base
    on: pouch
    leather: thin
    joins: [back base, front base]
    pleats: 2
    leaf: 9 mm
    holds: {coins: 1}
    stands: upright
    opening: top
  - layer: front
    leather: outer
    over: pouch
seams:
  - {seam: back left, along: [left], over: pouch, margin: margin, through: [back, left side]}
  - {seam: front left, along: [left], over: pouch, margin: margin, through: [left side, front]}
  - {seam: back base, along: [bottom], over: pouch, margin: margin, through: [back, base]}
  - {seam: front base, along: [bottom], over: pouch, margin: margin, through: [base, front]}
"""
