"""The choices a design makes, in the words its file uses, and what an edge is."""

from __future__ import annotations

from enum import StrEnum

__all__ = [
    "Across",
    "BankShape",
    "CornerStyle",
    "Edge",
    "EdgeRole",
    "Fastening",
    "HoleShape",
    "Lying",
    "Mode",
    "MouthShape",
    "NotchShape",
    "Side",
]


class Edge(StrEnum):
    LEFT = "left"
    RIGHT = "right"
    BOTTOM = "bottom"
    TOP = "top"


class EdgeRole(StrEnum):
    """What an edge of a piece is."""

    RAW = "raw"
    MOUTH = "mouth"
    SEWN = "sewn"
    TRIMMED = "trimmed"
    TURNED = "turned"  # of what is folded in beyond the finished edge


class Side(StrEnum):
    """Which side of the wallet a face turns to."""

    INSIDE = "inside"
    OUTSIDE = "outside"


class BankShape(StrEnum):
    TEE = "tee"
    FULL = "full"


class Lying(StrEnum):
    """How an item stands in its pocket: ``lying`` has its longer side along the mouth, ``upright`` across it."""

    LYING = "lying"
    UPRIGHT = "upright"


class Fastening(StrEnum):
    """What holds a layer: seams, or glue alone, as it holds padding."""

    SEWN = "sewn"
    GLUED = "glued"


class MouthShape(StrEnum):
    STRAIGHT = "straight"
    DIPPED = "dipped"
    SLANTED = "slanted"


class NotchShape(StrEnum):
    VEE = "vee"
    ROUND = "round"


class CornerStyle(StrEnum):
    ROUNDED = "rounded"
    SHARP = "sharp"


class Across(StrEnum):
    """What a seam does at a fold."""

    OPEN = "open"
    EASED = "eased"


class Mode(StrEnum):
    EVEN = "even"
    IRON = "iron"


class HoleShape(StrEnum):
    ROUND = "round"
    SLIT = "slit"
    MARK = "mark"
    NONE = "none"
