"""A good design folded from one piece, for the keys that only such wallets have."""

from __future__ import annotations

__all__ = ["FOLDED"]

FOLDED = """\
design: Folded case
parameters:
  deep: {value: 50 mm, meaning: how far the front reaches}
leathers:
  main: {thickness: 1.2 mm}
contents:
  card: id1
folded:
  leather: main
  relief: 0.8 mm
  ease: 3 mm
  showing: inside
  faces:
    - face: back
      width: fit
      height: 60 mm
      sides: {top: {slant: 4 mm}}
    - face: front
      on: back
      edge: bottom
      reach: deep
      angle: 180
      inset: {left: 2 mm, right: 1.5 mm}
      sides: {left: {slant: -3 mm}}
      corner: 4 mm
      corners: {bottom left: 9 mm}
      thumb: {edge: bottom, width: 18 mm, depth: 6 mm}
    - face: wing
      on: back
      edge: left
      reach: 40 mm
      angle: -180 deg
      inset: {top: 9 mm}
      openings:
        - window: look-out
          at: {left: 12 mm, bottom: 14 mm}
          width: 9 mm
          height: 7 mm
          corner: 1 mm
          border: 4 mm
        - slot: strap slot
          at: {right: 6 mm, top: 12 mm}
          width: 3 mm
          height: 11 mm
        - hole: cord hole
          diameter: 3 mm
    - face: lid
      on: back
      edge: top
      reach: 30 mm
      corner: 5 mm
    - face: flap
      on: lid
      edge: top
      reach: fit
  closing: [front, wing, flap, lid]
  rooms:
    - room: cards
      between: [back, front]
      item: card
      count: 3
      stands: lying
      opening: top
    - room: card in the lid
      between: [flap, lid]
      item: card
  tabs:
    - tab: tongue
      on: flap
      edge: left
      at: {top: 20 mm}
      width: 16 mm
      length: 11 mm
      shape: pointed
      into: back
      slit: 18 mm
"""
