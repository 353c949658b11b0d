"""A third good design, for letters and hidden hardware."""

from __future__ import annotations

__all__ = ["LETTERS"]

LETTERS = """\
design: Lettered cover
leathers:
  outer: {thickness: 1.2 mm}
  inner: {thickness: 0.8 mm}
body:
  height: 90 mm
  panels: {left: 100 mm, right: 100 mm}
  folds: [{angle: 180}]
parts:
  - layer: shell
    leather: outer
  - layer: lining
    leather: inner
fittings:
  - fitting: closure
    kind: hidden-magnet-10
    on: lining
    at: {panel: left, left: 15 mm}
    meets: {part: lining, panel: right}
    thickness: 1.5 mm
initials:
  - initials: monogram
    text: ANW
    on: shell
    at: {panel: left, right: 30 mm, bottom: 20 mm}
    width: 24 mm
    height: 9 mm
    style: strokes
    clear: 4 mm
    up: top
  - initials: owner
    text: "7 BÉ"
    on: lining
    at: {panel: right}
    width: 30 mm
    height: 10 mm
    style: stamps
    stamp: {width: 6 mm, height: 8 mm, spacing: 0.5 mm}
seams:
  - {seam: rim, along: [left, bottom, right]}
"""
