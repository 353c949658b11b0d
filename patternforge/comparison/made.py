"""A set of pieces as it was made: what dies and templates are cut after, and what the wallet takes in all."""

from __future__ import annotations

from dataclasses import dataclass

from patternforge.geometry.path import Path
from patternforge.geometry.point import Point

__all__ = ["MadeHole", "MadePiece", "MadeSet"]


@dataclass(frozen=True, slots=True)
class MadeHole:
    """A stitch hole of a piece; ``turned``: in what is turned in, a mate of the hole of that seam and number."""

    seam: str
    index: int
    turned: bool
    at: Point
    direction: float
    shape: str


@dataclass(frozen=True, slots=True)
class MadePiece:
    """One flat piece, showing face up: a die cuts its outline and openings, all else stands on its template too.

    ``drawn`` are fold lines, marks and boxes of letters, each with what it is; ``folds`` the flat length of every
    fold it crosses, mm by the fold's number; ``thickness`` that it was drafted for.
    """

    name: str
    leather: str
    thickness: float
    quantity: int
    outline: Path
    openings: tuple[Path, ...]
    holes: tuple[MadeHole, ...]
    drawn: tuple[tuple[str, Path], ...]
    folds: tuple[tuple[int, float], ...]

    @property
    def width(self) -> float:
        """Overall width, mm."""
        return self.outline.bounds.width

    @property
    def height(self) -> float:
        """Overall height, mm."""
        return self.outline.bounds.height

    @property
    def area(self) -> float:
        """Area of leather, openings taken out, mm2."""
        return abs(self.outline.area) - sum(abs(opening.area) for opening in self.openings)


@dataclass(frozen=True, slots=True)
class MadeSet:
    """All pieces of a wallet. ``label`` is what it is called in reports, ``leathers`` their thickness in mm by role.

    ``thread`` in mm; ``closed`` is the thickness of the wallet closed as loaded, mm, None where it was not judged.
    """

    label: str
    name: str
    title: str
    pieces: tuple[MadePiece, ...]
    leathers: tuple[tuple[str, float], ...]
    thread: float
    closed: float | None

    def piece(self, name: str) -> MadePiece | None:
        """The piece of that name, if there is one."""
        return next((piece for piece in self.pieces if piece.name == name), None)

    def area(self, role: str) -> float:
        """The net area of all pieces of a leather, mm2."""
        return sum(piece.area * piece.quantity for piece in self.pieces if piece.leather == role)
