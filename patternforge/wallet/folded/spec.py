"""A folded wallet as declared: faces hinged on one another, the order they close in, rooms between them, tabs.

Every face lies in a frame of its own, upright as in the blank laid open and seen from the inside: x to the right,
y up, the lower left of its box at the origin. A slanted hinge turns the frame of the face with it.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from patternforge.wallet.features import EdgeShape, ThumbNotch
from patternforge.wallet.words import Edge, Lying, Side

__all__ = ["FaceOpening", "FaceSpec", "FoldedSpec", "HingeSpec", "RoomSpec", "TabShape", "TabSpec"]

Ends = tuple[Edge, Edge]


class TabShape(StrEnum):
    """The end of a tab: a half round, or a point."""

    ROUNDED = "rounded"
    POINTED = "pointed"


@dataclass(frozen=True, slots=True)
class HingeSpec:
    """Where a flap hangs: at ``edge`` of face ``on``, ``inset`` mm short of that edge's ends by their names.

    ``reach`` is how far the flap stands off its hinge, mm, None as far as its contents need; ``angle`` +180 folds it
    on the inside of the face it hangs on, -180 on the outside.
    """

    on: str
    edge: Edge
    reach: float | None = None
    angle: float = 180.0
    inset: tuple[tuple[Edge, float], ...] = ()


@dataclass(frozen=True, slots=True)
class FaceOpening:
    """A cut-out of ``width`` x ``height`` mm, its middle as far from the edges named, else in that of its face."""

    name: str
    width: float
    height: float
    corner: float = 0.0
    border: float = 5.0
    beside: tuple[Edge, float] | None = None
    above: tuple[Edge, float] | None = None


@dataclass(frozen=True, slots=True)
class FaceSpec:
    """One face. The base has no hinge and its own ``width`` and ``height``, None as large as its contents need.

    ``corner`` rounds every free corner, ``corners`` single ones; ``sides`` slants or bows free edges; ``thumb`` is a
    notch in the middle of the free edge ``thumb_edge``.
    """

    name: str
    hinge: HingeSpec | None = None
    width: float | None = None
    height: float | None = None
    corner: float = 0.0
    corners: tuple[tuple[Ends, float], ...] = ()
    sides: tuple[tuple[Edge, EdgeShape], ...] = ()
    thumb: ThumbNotch | None = None
    thumb_edge: Edge = Edge.TOP
    openings: tuple[FaceOpening, ...] = ()
    line: int = 0


@dataclass(frozen=True, slots=True)
class TabSpec:
    """A tab ``width`` x ``length`` mm on the free ``edge`` of ``face`` that goes through a slit in the face ``into``.

    ``slit`` is how long that slit is, None for the tab's width and one thickness; ``beside`` places the tab's middle
    from an end of the edge, None for the middle of the edge.
    """

    name: str
    face: str
    edge: Edge
    width: float
    length: float
    into: str
    shape: TabShape = TabShape.ROUNDED
    slit: float | None = None
    beside: tuple[Edge, float] | None = None
    line: int = 0


@dataclass(frozen=True, slots=True)
class RoomSpec:
    """Room for ``count`` of a content that lies on the first of the faces ``between``, under the second.

    The item goes in over the edge ``opening`` of the first face and rests on the edge opposite.
    """

    name: str
    between: tuple[str, str]
    content: str
    count: int = 1
    lying: Lying = Lying.LYING
    opening: Edge = Edge.TOP
    line: int = 0


@dataclass(frozen=True, slots=True)
class FoldedSpec:
    """The whole blank: the base first, then each flap after the face it hangs on.

    ``closing`` names the flaps, first closed first. ``relief`` is the radius of the hole cut where the outline turns
    in at a fold or a tab; ``ease`` what a face is larger than the items on it; mm. ``showing`` is the side of the
    wallet the leather's face turns to.
    """

    leather: str
    faces: tuple[FaceSpec, ...]
    closing: tuple[str, ...]
    rooms: tuple[RoomSpec, ...] = ()
    tabs: tuple[TabSpec, ...] = ()
    relief: float = 1.0
    ease: float = 2.5
    showing: Side = Side.OUTSIDE

    @property
    def base(self) -> FaceSpec:
        """The face all others hang on."""
        return self.faces[0]

    def face(self, name: str) -> FaceSpec:
        """The face of that name; KeyError if there is none."""
        return {face.name: face for face in self.faces}[name]

    def hung_on(self, name: str) -> frozenset[str]:
        """The face and every flap that hangs on it, over others or directly.

        >>> hung = FaceSpec("lid", HingeSpec("back", Edge.TOP))
        >>> sorted(FoldedSpec("main", (FaceSpec("back"), hung), ("lid",)).hung_on("back"))
        ['back', 'lid']
        """
        found = {name}
        for face in self.faces:
            if face.hinge and face.hinge.on in found:
                found.add(face.name)
        return frozenset(found)
