"""A blank cut apart along its drawn fold tangents: its faces and folds, from the flat piece alone."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from patternforge.errors import GeometryError
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment
from patternforge.wallet.folded.pattern import DraftedFolded, DraftedHinge
from patternforge.wallet.pattern import Pattern

__all__ = ["Fold", "Parts", "parts"]

_ON = 1e-6  # mm; nearer than this a point lies on a line


@dataclass(frozen=True, slots=True)
class Fold:
    """A fold as cut: its flap, the face that hangs on, both tangents and the leather between them, in the blank.

    ``inward`` is the direction from the flap's tangent to the other, ``has`` their distance, mm.
    """

    number: int
    face: str
    on: str
    angle: float
    near: Segment
    far: Segment
    ground: Path

    @property
    def inward(self) -> Point:
        """Across the fold, away from the flap."""
        across = (self.near.end - self.near.start).unit().perpendicular()
        return across if across.dot(self.near.start - self.far.start) > 0 else across * -1.0

    @property
    def has(self) -> float:
        """Length of leather between the tangents, mm."""
        ends = (self.far.start, self.far.end)
        return sum((self.near.start - end).dot(self.inward) for end in ends) / 2


@dataclass(frozen=True, slots=True)
class Parts:
    """Faces by name and folds in the order they close in; outlines in the blank, seen from the inside."""

    base: str
    faces: Mapping[str, Path]
    folds: tuple[Fold, ...]

    def hung_on(self, name: str) -> frozenset[str]:
        """A face and all that hangs on it."""
        found = {name}
        while more := {fold.face for fold in self.folds if fold.on in found} - found:
            found |= more
        return frozenset(found)


def parts(pattern: Pattern, folded: DraftedFolded) -> Parts:
    """The faces and folds of the blank; its fold lines come in pairs in the order of closing, the flap's second.

    GeometryError when a tangent does not run from edge to edge.
    """
    piece = pattern.pieces[0]
    back = piece.placement.onto_piece.inverse()
    tangents = [Segment(line.start, line.end) for line in (back.path(each) for each in piece.fold_lines)]
    fields = [back.path(piece.outline).ccw()]
    for tangent in tangents:
        fields = _split(fields, tangent)
    pairs = zip(folded.hinges, tangents[::2], tangents[1::2], strict=True)
    folds, faces = [], {}
    for hinge, near, far in pairs:
        ground = next(field for field in _beside(fields, near) if _is_beside(field, far))
        folds.append(Fold(hinge.number, hinge.face, hinge.on, hinge.angle, near, far, ground))
        faces[hinge.face] = next(field for field in _beside(fields, far) if field is not ground)
        faces[hinge.on] = next(field for field in _beside(fields, near) if field is not ground)
    base = _base(folded.hinges) or folded.faces[0].name
    return Parts(base, faces or {base: fields[0]}, tuple(folds))


def _base(hinges: Sequence[DraftedHinge]) -> str | None:
    flaps = {hinge.face for hinge in hinges}
    return next((hinge.on for hinge in hinges if hinge.on not in flaps), None)


def _split(fields: list[Path], tangent: Segment) -> list[Path]:
    """The fields with the one that a tangent crosses cut in two."""
    middle = tangent.point_at(tangent.length / 2)
    ends = (tangent.start, tangent.end)
    for i, field in enumerate(fields):
        if all(field.distance_to(end) < _ON for end in ends) and field.contains(middle):
            a, b = (field.nearest(end) for end in ends)
            return [*fields[:i], _closed(field.sub(a, b)), _closed(field.sub(b, a)), *fields[i + 1 :]]
    at = tangent.start
    raise GeometryError(f"the fold tangent from ({at.x:.2f}, {at.y:.2f}) does not run from edge to edge of the blank")


def _closed(part: Path) -> Path:
    return Path((*part.segments, Segment(part.end, part.start)), closed=True)


def _beside(fields: Sequence[Path], tangent: Segment) -> list[Path]:
    return [field for field in fields if _is_beside(field, tangent)]


def _is_beside(field: Path, tangent: Segment) -> bool:
    return field.distance_to(tangent.point_at(tangent.length / 2)) < _ON
