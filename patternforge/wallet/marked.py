"""What a piece bears and is not cut by: letters in their box, and places marked on it."""

from __future__ import annotations

from dataclasses import dataclass, replace

from patternforge.geometry.path import Path, polygon
from patternforge.geometry.point import Point
from patternforge.geometry.transform import Transform, rotation, translation
from patternforge.wallet.features import Stamp

__all__ = ["Inscription", "PlaceMark"]


@dataclass(frozen=True, slots=True)
class PlaceMark:
    """A line to be marked on a piece, under the name of what it is for."""

    name: str
    path: Path


@dataclass(frozen=True, slots=True)
class Inscription:
    """Letters on a piece: the box of ``width`` (along their line) x ``height`` mm that takes them, and how.

    ``at`` is the middle of the box; the tops of the letters point to ``up``, in degrees. ``clear`` mm round the box
    are to stay free. With a ``stamp`` they are stamped, else drawn as strokes. An empty text keeps the box.
    """

    name: str
    text: str
    at: Point
    up: float
    width: float
    height: float
    clear: float
    stamp: Stamp | None = None

    @property
    def box(self) -> Path:
        """The box, counter-clockwise from the corner at the lower left of the letters.

        >>> Inscription("monogram", "AB", Point(10, 5), 90.0, 8.0, 4.0, 3.0).box.vertices[0]
        (6.0, 3.0, 0.0)
        """
        x, y = self.width / 2, self.height / 2
        onto = self.from_text()
        return polygon([onto.point(corner) for corner in (Point(-x, -y), Point(x, -y), Point(x, y), Point(-x, y))])

    def from_text(self) -> Transform:
        """Leads from the middle of the box, x along the line of letters, to the piece; it never mirrors.

        Letters read right wherever the face that they stand on is up.
        """
        return rotation(self.up - 90.0).then(translation(self.at.x, self.at.y))

    def moved(self, transform: Transform) -> Inscription:
        """The same letters carried by an isometry; a mirror carries the box and where up is, never the letters."""
        return replace(self, at=transform.point(self.at), up=transform.angle(self.up))
