"""A fourth good design, for the keys of skived leather, turned edges and linings."""

from __future__ import annotations

__all__ = ["LINED"]

LINED = """\
design: Lined wallet
leathers:
  outer: {thickness: 1.2 mm}
  inner: {thickness: 0.8 mm}
contents:
  card: id1
body:
  height: 90 mm
  corner: 10 mm
  panels: {left: 101 mm, right: 101 mm}
  folds:
    - {relief: 4 mm}
parts:
  - layer: shell
    leather: outer
    skives:
      - {along: [left, right], width: 12 mm, to: 0.4 mm}
      - fold: 1
        width: 6 mm
        to: 0.7 mm
      - at: {panel: right, right: 20 mm}
        width: 9 mm
        height: 14 mm
        to: 0.5 mm
    turned:
      - edges: [left, right]
        overlap: 8 mm
        over: [lining, stiffening]
        corner_overlap: 5 mm
        holes: marked
      - edges: [top]
        overlap: 7 mm
        core: 0.25 mm
        corners: mitre
        corner_gap: 0.6 mm
        notch_gap: 1.5 mm
  - layer: lining
    leather: inner
    follows: shell
    inside: 1.5 mm
  - layer: stiffening
    leather: inner
  - bank: cards
    on: left
    leather: inner
    item: card
    slots: 2
    step: 13 mm
    show: 12 mm
    skives:
      - {along: [bottom], width: 8 mm, to: 0.3 mm}
seams:
  - {seam: rim, along: [left, bottom, right]}
"""
