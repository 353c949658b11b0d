"""What drafting a folded wallet yields besides its flat piece: hinges, faces, rooms, tabs and slits.

Two spaces meet here. The *blank* is the wallet laid open seen from the inside, the base's lower left corner at the
origin. The *closed* plan is the closed wallet seen from the inside of the base, which lies as in the blank; the
tangents of a closed fold lie over each other, so that a bend takes no room in it.
"""

from __future__ import annotations

from dataclasses import dataclass

from patternforge.geometry.path import Path
from patternforge.geometry.point import Bounds, Point
from patternforge.geometry.transform import Transform
from patternforge.wallet.sums import Sum

__all__ = ["DraftedFace", "DraftedFolded", "DraftedHinge", "DraftedRoom", "DraftedTab"]

Line = tuple[Point, Point]


@dataclass(frozen=True, slots=True)
class DraftedFace:
    """A face: its outline in the blank, folds counted as its edges, and how it lies in the closed plan.

    ``closed`` leads from the blank to the closed plan; ``level`` counts the faces from the base's outside, or from
    the lowest below it; ``turned``: its inside looks down.
    """

    name: str
    outline: Path
    width: Sum
    height: Sum
    closed: Transform
    level: int
    turned: bool


@dataclass(frozen=True, slots=True)
class DraftedHinge:
    """A fold: ``number`` in the order of closing from 1, the flap's and the other face's tangent in the blank, mm.

    ``gap`` is what lies between its flanks once closed; ``radius`` its inside radius and ``length`` its flat length.
    """

    number: int
    face: str
    on: str
    angle: float
    gap: Sum
    radius: float
    length: float
    near: Line
    far: Line


@dataclass(frozen=True, slots=True)
class DraftedTab:
    """A tab on ``face`` and its slit in ``into``: the tab's root and the middle line of the slit, both in the blank.

    ``opening`` is the place of the slit among the openings of the piece.
    """

    name: str
    face: str
    into: str
    width: float
    length: float
    root: Line
    slit: Line
    opening: int


@dataclass(frozen=True, slots=True)
class DraftedRoom:
    """Room for items: ``box`` holds the corners of the item pushed home, in the blank, on the first face between.

    ``opening`` leads out over the edge the item goes in at, as a unit vector in the blank.
    """

    name: str
    between: tuple[str, str]
    content: str
    count: int
    box: tuple[Point, Point, Point, Point]
    opening: Point


@dataclass(frozen=True, slots=True)
class DraftedFolded:
    """A folded wallet: hinges in the order of closing; ``closed`` bounds the closed wallet, bends included."""

    faces: tuple[DraftedFace, ...]
    hinges: tuple[DraftedHinge, ...]
    tabs: tuple[DraftedTab, ...]
    rooms: tuple[DraftedRoom, ...]
    closed: Bounds
