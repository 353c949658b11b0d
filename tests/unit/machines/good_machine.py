"""A machine table that uses every key that goes with a DXF file."""

from __future__ import annotations

__all__ = ["GOOD", "PLOT", "VECTOR"]

GOOD = """\
machine: Shop laser
tool: laser
format: dxf
release: R2018
files: sheets
bed:
  width: 600 mm
  height: 400 mm
gap: 12 mm
face: back
kerf: 0.2 mm
sanding: 0.3 mm
tape: 0.1 mm
chords: 0.02 mm
holes: marked
fold_ticks: scored
engrave: none
smallest:
  hole: 0.5 mm
  gap: 1 mm
  radius: 0.4 mm
order: [stitch hole, mark, opening, outline]
sequence: operation by operation
travel: as drawn
operations:
  mark: {layer: SCORE, colour: 5, weight: 0.13 mm}
  stitch hole: {layer: HOLES, colour: 6}
  opening: {write: false}
  outline: {layer: EDGE, colour: 1, weight: 0.5 mm}
notes: |
  Cut by two people.
  Never alone.
cautions:
  - Lens cleaned?
  - Air on?
"""
PLOT = """\
machine: Shop plotter
tool: knife
format: hpgl
operations:
  mark: {pen: 4}
  outline: {pen: 3}
"""
VECTOR = """\
machine: Shop pen
tool: hand
format: svg
operations:
  mark: {colour: 0000ff, weight: 0.1 mm}
  outline: {layer: EDGE, colour: '#FF8800'}
"""
