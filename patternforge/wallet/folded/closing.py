"""What lies on what once the folds are closed in their order, and where every face lies in the closed plan.

Closing a fold turns the flap over together with all that hangs on it and lays it on everything else, on the side it
is folded to. What it might run into on its way is not judged here.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from patternforge.geometry.transform import Transform, identity
from patternforge.wallet.folded.faces import Face
from patternforge.wallet.folded.spec import FoldedSpec

__all__ = ["Closed", "closed_faces"]


@dataclass(frozen=True, slots=True)
class Closed:
    """``order``: the faces from the lowest up, the base inside up; ``turned``: those whose inside looks down.

    ``plan`` leads from each face's own frame to the closed plan.
    """

    order: tuple[str, ...]
    turned: frozenset[str]
    plan: Mapping[str, Transform]

    def between(self, one: str, other: str) -> tuple[str, ...]:
        """The faces that lie between two, from the one to the other."""
        a, b = self.order.index(one), self.order.index(other)
        return self.order[a + 1 : b] if a < b else self.order[b + 1 : a][::-1]

    def up_to(self, one: str, other: str) -> int:
        """Which way leads from one face to the other: 1 up, -1 down."""
        return 1 if self.order.index(one) < self.order.index(other) else -1


def closed_faces(folded: FoldedSpec, planned: Sequence[Face]) -> Closed:
    """The closed wallet.

    >>> from patternforge.wallet.folded.spec import FaceSpec
    >>> closed_faces(FoldedSpec("main", (FaceSpec("back", width=9, height=5),), ()), ()).order
    ('back',)
    """
    order = [face.name for face in folded.faces]
    turned: frozenset[str] = frozenset()
    for name in folded.closing:
        hinge = folded.face(name).hinge
        if hinge is None:
            continue
        moved = folded.hung_on(name)
        up = (hinge.angle > 0) is not (hinge.on in turned)
        lying = [face for face in order if face not in moved]
        over = [face for face in reversed(order) if face in moved]
        order = lying + over if up else over + lying
        turned ^= moved
    return Closed(tuple(order), turned, _plan(planned))


def _plan(planned: Sequence[Face]) -> dict[str, Transform]:
    plan: dict[str, Transform] = {}
    for face in planned:
        if face.root is None:
            plan[face.name] = identity()
        else:
            plan[face.name] = face.beside.then(face.root.turned_over).then(plan[face.root.on])
    return plan
