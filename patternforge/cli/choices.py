"""The words that options take; what they stand for is loaded only by the command that needs it."""

from __future__ import annotations

from enum import StrEnum

__all__ = [
    "Awl",
    "DxfRelease",
    "Engraved",
    "Face",
    "Fold",
    "Mirrored",
    "PaperName",
    "Punching",
    "SchemaName",
    "TypeSize",
    "Usage",
]


class Usage(StrEnum):
    LASER = "laser"
    DIE = "die"
    PAPER = "paper"
    ALL = "all"


class DxfRelease(StrEnum):
    R2018 = "r2018"
    R2010 = "r2010"
    R2000 = "r2000"
    R12 = "r12"


class Face(StrEnum):
    FRONT = "front"
    BACK = "back"


class Fold(StrEnum):
    NONE = "none"
    SCORED = "scored"


class Engraved(StrEnum):
    NONE = "none"
    INITIALS = "initials"


class Punching(StrEnum):
    NONE = "none"
    PUNCHED = "punched"


class Awl(StrEnum):
    CROSSES = "crosses"
    NONE = "none"


class Mirrored(StrEnum):
    SHARED = "shared"
    OWN = "own"


class PaperName(StrEnum):
    A4 = "a4"
    A3 = "a3"
    LETTER = "letter"
    LEGAL = "legal"


class SchemaName(StrEnum):
    DESIGN = "design"
    PATTERN = "pattern"
    MACHINE = "machine"
    PRICES = "prices"


class TypeSize(StrEnum):
    USUAL = "usual"
    LARGE = "large"
