"""Faces planned one by one: how large each is, where it hangs, how it lies in the blank and in the closed plan."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from patternforge.errors import DraftError
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment
from patternforge.geometry.transform import Transform, identity, translation
from patternforge.wallet.border import CCW, opposite
from patternforge.wallet.folded.spec import FaceSpec, FoldedSpec, HingeSpec, RoomSpec
from patternforge.wallet.quad import Quad, quad
from patternforge.wallet.spec import Design, Edge, EdgeShape
from patternforge.wallet.stacks import standing, standing_names
from patternforge.wallet.sums import MEASURED, Sum, Term, taken_off

__all__ = ["ENDS", "Face", "Root", "faces", "item_size"]

_LEVEL = (Edge.BOTTOM, Edge.TOP)
_STRAIGHT = 1e-9  # mm

ENDS = {
    Edge.BOTTOM: (Edge.LEFT, Edge.RIGHT),
    Edge.RIGHT: (Edge.BOTTOM, Edge.TOP),
    Edge.TOP: (Edge.RIGHT, Edge.LEFT),
    Edge.LEFT: (Edge.TOP, Edge.BOTTOM),
}
"""The ends of each edge by name, in the order they are come to counter-clockwise."""


@dataclass(frozen=True, slots=True)
class Root:
    """Where a flap hangs, in the frame of the face it hangs on: its hinge from ``start`` to ``end``.

    ``first`` and ``last`` are the distances of these along the edge, counter-clockwise; mm.
    """

    on: str
    edge: Edge
    first: float
    last: float
    start: Point
    end: Point

    @property
    def along(self) -> Point:
        """The direction of the hinge, counter-clockwise round the face it hangs on."""
        return (self.end - self.start).unit()

    @property
    def outward(self) -> Point:
        """The direction the flap stands off in the blank."""
        return Point(self.along.y, -self.along.x)

    @property
    def turned_over(self) -> Transform:
        """The mirror in the hinge: what closing the fold does to a flap that starts at the hinge itself."""
        u, o = self.along, self.start
        a, b = u.x * u.x - u.y * u.y, 2 * u.x * u.y
        return Transform(a, b, b, -a, o.x - a * o.x - b * o.y, o.y - b * o.x + a * o.y)


@dataclass(frozen=True, slots=True)
class Face:
    """A face in its own frame: its four sides without roundings, its size with its sum, where it hangs.

    ``beside`` leads from its own frame to that of the face it hangs on, as if the fold between had no length.
    """

    spec: FaceSpec
    figure: Quad
    width: Sum
    height: Sum
    root: Root | None
    beside: Transform

    @property
    def name(self) -> str:
        """Its name."""
        return self.spec.name

    def side(self, edge: Edge) -> Segment:
        """One of its sides, counter-clockwise."""
        return self.figure.sharp.segments[CCW.index(edge)]

    @property
    def hung_by(self) -> Edge | None:
        """The edge of its own that is its hinge."""
        return opposite(self.root.edge) if self.root else None


def faces(design: Design, folded: FoldedSpec) -> tuple[Face, ...]:
    """Every face in the order of the design, the base first.

    DraftError, with the line of the face, when nothing says how large it is, its sides cross, or its hinge is
    longer than the edge it hangs on.
    """
    planned: dict[str, Face] = {}
    for spec in folded.faces:
        try:
            planned[spec.name] = _face(design, folded, spec, planned)
        except DraftError as fault:
            raise DraftError(f"{design.file}:{spec.line}: face '{spec.name}': {fault}") from fault
    return tuple(planned.values())


def item_size(design: Design, room: RoomSpec) -> tuple[float, float]:
    """The item of a room as it lies on the first face between: along x and along y, mm."""
    along_mouth, to_mouth = standing(design.item(room.content), room.lying)
    return (along_mouth, to_mouth) if room.opening in _LEVEL else (to_mouth, along_mouth)


def _face(design: Design, folded: FoldedSpec, spec: FaceSpec, planned: Mapping[str, Face]) -> Face:
    if spec.hinge is None:
        width, height = (_size(design, folded, spec, axis, asked) for axis, asked in enumerate(_asked(spec)))
        return Face(spec, _figure(spec, width.value, height.value), width, height, None, identity())
    root = _root(spec.hinge, planned[spec.hinge.on])
    length = Sum("hinge", (_hinge_term(spec, planned[spec.hinge.on], root),))
    reach = _size(design, folded, spec, 1 if root.edge in _LEVEL else 0, spec.hinge.reach)
    width, height = (length, reach) if root.edge in _LEVEL else (reach, length)
    figure = _figure(spec, width.value, height.value)
    return Face(spec, figure, width, height, root, _beside(figure, root))


def _asked(spec: FaceSpec) -> tuple[float | None, float | None]:
    return spec.width, spec.height


def _size(design: Design, folded: FoldedSpec, spec: FaceSpec, axis: int, asked: float | None) -> Sum:
    """A size as declared, or what the largest item that lies on the face needs that way (x: 0, y: 1)."""
    name = f"{('width', 'height')[axis]} of {spec.name}"
    if asked is not None:
        return Sum(name, (Term("declared", asked, (_asked_name(spec, axis),)),))
    rooms = [room for room in folded.rooms if room.between[0] == spec.name]
    if not rooms:
        raise DraftError("nothing lies on it, so nothing says how large it is: give it a length in place of 'fit'")
    largest = max(rooms, key=lambda room: item_size(design, room)[axis])
    own = Term(largest.content, item_size(design, largest)[axis], (_item_names(largest)[axis],))
    return Sum(name, (own, Term("ease", folded.ease, ("folded.ease",))))


def _hinge_term(spec: FaceSpec, on: Face, root: Root) -> Term:
    """The length of a hinge: of the edge it lies on, less what it is inset at its ends."""
    side, along = on.side(root.edge), "width" if root.edge in _LEVEL else "height"
    straight = abs(side.length - (on.width if along == "width" else on.height).value) < _STRAIGHT
    edge = Term(
        f"{root.edge.value} edge of {on.name}", side.length, (f"face {on.name}.{along}" if straight else MEASURED,)
    )
    inset = spec.hinge.inset if spec.hinge else ()
    off = (
        Term(f"inset at the {end.value}", amount, (f"face {spec.name}.inset {end.value}",)) for end, amount in inset
    )
    return Term("hinge", root.last - root.first, parts=(edge, *map(taken_off, off)))


def _asked_name(spec: FaceSpec, axis: int) -> str:
    size = "reach" if spec.hinge else ("declared width", "declared height")[axis]
    return f"face {spec.name}.{size}"


def _item_names(room: RoomSpec) -> tuple[str, str]:
    along_mouth, to_mouth = standing_names(room.content, room.lying)
    return (along_mouth, to_mouth) if room.opening in _LEVEL else (to_mouth, along_mouth)


def _figure(spec: FaceSpec, width: float, height: float) -> Quad:
    shapes: dict[Edge, EdgeShape] = dict(spec.sides)
    return quad((0.0, 0.0, width, height), shapes, (0.0, 0.0, 0.0, 0.0), {})


def _root(hinge: HingeSpec, on: Face) -> Root:
    side, inset = on.side(hinge.edge), dict(hinge.inset)
    begin, end = (inset.get(edge, 0.0) for edge in ENDS[hinge.edge])
    if begin + end > side.length - 1.0:
        raise DraftError(
            f"its hinge is {side.length - begin - end:.2f} mm long on an edge of {side.length:.2f} mm: inset it less"
        )
    u = (side.end - side.start).unit()
    last = side.length - end
    stop = side.end if end == 0 else side.start + u * last
    start = side.start if begin == 0 else side.start + u * begin
    return Root(on.name, hinge.edge, begin, last, start, stop)


def _beside(figure: Quad, root: Root) -> Transform:
    """The flap's own hinge laid on that of the other face, from end to start."""
    own = figure.sharp.segments[CCW.index(opposite(root.edge))]
    v, u = (own.end - own.start).unit(), root.along * -1.0
    cosine, sine = v.dot(u), v.cross(u)
    turn = Transform(cosine, sine, -sine, cosine, 0.0, 0.0)
    shift = root.start - turn.point(own.end)
    return turn.then(translation(shift.x, shift.y))
