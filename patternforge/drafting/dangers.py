"""Cautions that stand both on paper and on the screen."""

from __future__ import annotations

__all__ = ["ALWAYS", "PRESS"]

PRESS = "Press: hands clear before it closes, and use the two-hand control or guard the machine has."
ALWAYS = "Follow the machine's manual and the rules of your place; leave machines to people trained on them."
