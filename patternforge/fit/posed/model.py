"""What a posed wallet is made of: plates joined by hinges, layers bent between them, bodies that lie on both.

A plate is a panel or a face; its own space is the wallet laid flat, z up from its outer face. Plate 0 never moves.
A layer that crosses a hinge runs an arc there, one for every pair of levels it comes from and goes to.
"""

from __future__ import annotations

from dataclasses import dataclass

from patternforge.geometry.point import Point

__all__ = [
    "BentCell",
    "Body",
    "Corner",
    "Crossing",
    "FlatCell",
    "Ground",
    "Hinge",
    "Mark",
    "Model",
    "Place",
    "Plate",
    "Track",
]

Place = tuple[float, float, float]
Corner = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Hinge:
    """How a plate hangs on its ``parent``: mm, degrees.

    ``at`` is a point of the parent's tangent, ``way`` the direction from it to the plate, ``zone`` the distance of
    both tangents laid open: the length of the fibre of the layer that bends sharpest, which comes in ``low`` above
    the parent's outer face and goes out ``high`` above the plate's. ``closed`` is where the plate's tangent comes to
    lie once closed, across and above the parent's; None where only the bend says so. It closes from ``start`` to
    ``end``, shares of the whole way.
    """

    parent: int
    at: Point
    way: Point
    zone: float
    low: float
    high: float
    angle: float
    closed: tuple[float, float] | None
    start: float
    end: float


@dataclass(frozen=True, slots=True)
class Plate:
    """A panel or a face."""

    name: str
    hinge: Hinge | None


@dataclass(frozen=True, slots=True)
class Track:
    """The fibre of a layer in a hinge: its levels over the outer faces of the parent and of the plate, mm."""

    crossing: int
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class Crossing:
    """A layer in the hinge of ``plate``: flat length between the tangents, mm, and its tracks there by number.

    ``before`` is the number of its crossing next nearer to plate 0, -1 where it ends before it. ``slips``: it may be
    drawn along the plate where it is shorter than the bend.
    """

    plate: int
    length: float
    tracks: tuple[int, ...]
    before: int = -1
    slips: bool = True


@dataclass(frozen=True, slots=True)
class Ground:
    """An area in triangles, counter-clockwise, by the numbers of their corners; ``rim`` has the area to its left."""

    corners: tuple[Corner, ...]
    triangles: tuple[tuple[int, int, int], ...]
    rim: tuple[tuple[int, int], ...]


@dataclass(frozen=True, slots=True)
class FlatCell:
    """A prism on a plate: corners (x, y), and the heights it reaches from and to above the plate's outer face, mm.

    ``track`` is one that leads there from the parent, -1 if none does.
    """

    plate: int
    track: int
    ground: Ground
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class BentCell:
    """A prism in a hinge: corners (along the fibre, along the hinge), and how far it reaches above the fibre, mm."""

    track: int
    ground: Ground
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class Mark:
    """A hole of a piece on a plate, and where the piece lies there; ``track`` as for a flat cell."""

    plate: int
    track: int
    at: Point
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class Body:
    """A piece of a ``leather`` (by role) or what the wallet holds (no leather)."""

    name: str
    leather: str
    flat: tuple[FlatCell, ...]
    bent: tuple[BentCell, ...]
    marks: tuple[Mark, ...] = ()


@dataclass(frozen=True, slots=True)
class Model:
    """A wallet to be posed. ``still`` is the plate it is looked at from, ``turned`` a row laid on its side.

    ``steps`` is how many folds close one after another.
    """

    plates: tuple[Plate, ...]
    crossings: tuple[Crossing, ...]
    tracks: tuple[Track, ...]
    bodies: tuple[Body, ...]
    still: int
    turned: bool
    steps: int
