"""A second good design, for the keys that the first has no use for: folds round bars, cut edges, loose contents."""

from __future__ import annotations

__all__ = ["CASE"]

CASE = """\
design: Key case
parameters:
  margin: {value: 3.5 mm, meaning: stitch line to edge}
leathers:
  outer: {thickness: 1.2 mm}
contents:
  bar: {length: 60 mm, height: 3 mm, thickness: 3 mm}
  coin: coin-eur-2
body:
  height: 80 mm
  panels: {left: 70 mm, middle: 74 mm, right: 74 mm}
  folds:
    - {around: bar, relief: margin}
    - {around: 2 mm}
  closing: [1, 2]
load: {loose: 0.5}
parts:
  - layer: shell
    leather: outer
    openings:
      - slot: bar slot
        at: {fold: 1, bottom: 20 mm}
        width: 12 mm
        height: 3 mm
  - layer: lining
    leather: outer
    drop: 12 mm
    mouth: {shape: dipped, depth: 3 mm}
    thumb: {width: 20 mm, depth: 7 mm, panel: middle}
    notches:
      - notch: middle mark
        edge: bottom
        at: {fold: 2}
        width: 4 mm
        depth: 2.5 mm
        shape: vee
      - notch: grip
        edge: top
        at: {panel: left, left: 30 mm}
        width: 12 mm
        depth: 6 mm
        shape: round
    holds: {coin: 2}
  - loose: keys
    on: right
    item: coin
    count: 3
    at: {bottom: 40 mm}
    stands: upright
seams:
  - {seam: rim, along: [left, bottom, right], margin: margin}
  - {seam: flap seam, along: [bottom], over: left, onto: middle, through: [shell]}
"""
