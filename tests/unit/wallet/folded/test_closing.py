"""What lies on what once the folds are closed."""

from __future__ import annotations

import pytest

from patternforge.geometry.point import Point
from patternforge.wallet.folded.closing import Closed, closed_faces
from patternforge.wallet.folded.faces import faces
from patternforge.wallet.folded.spec import FaceSpec, FoldedSpec
from tests.folded_built import design_of, envelope, flap

BASE = FaceSpec("back", width=90.0, height=60.0)
CHAIN = (BASE, flap("front", "back", "bottom", 50.0), flap("tail", "front", "bottom", 40.0))


def closed(specs: tuple[FaceSpec, ...], *order: str) -> Closed:
    folded = FoldedSpec("main", specs, order)
    return closed_faces(folded, faces(design_of(folded), folded))


def test_flaps_lie_on_each_other_in_the_order_they_are_closed() -> None:
    folded = envelope().folded
    assert folded is not None
    found = closed_faces(folded, faces(envelope(), folded))
    assert found.order == ("back", "left", "right", "front", "lid")
    assert found.turned == {"left", "right", "front", "lid"}
    assert found.between("back", "lid") == ("left", "right", "front")
    assert found.between("lid", "back") == ("front", "right", "left")
    assert (found.up_to("back", "lid"), found.up_to("lid", "back")) == (1, -1)


@pytest.mark.parametrize(
    ("order", "stack", "turned"),
    [
        # The tail folded on the front first lies between it and the back, inside up again.
        (("tail", "front"), ("back", "tail", "front"), {"front"}),
        # Closed last it goes round the outside of the back.
        (("front", "tail"), ("tail", "back", "front"), {"front"}),
    ],
)
def test_a_flap_on_a_flap_lies_where_the_order_puts_it(
    order: tuple[str, ...], stack: tuple[str, ...], turned: set[str]
) -> None:
    found = closed(CHAIN, *order)
    assert found.order == stack
    assert found.turned == turned


def test_a_flap_folded_outwards_lies_behind_the_base() -> None:
    assert closed((BASE, flap("behind", "back", "left", 30.0, -180.0)), "behind").order == ("behind", "back")


def test_an_accordion_is_folded_in_and_out_again() -> None:
    specs = (BASE, flap("second", "back", "right", 80.0), flap("third", "second", "right", 70.0, -180.0))
    found = closed(specs, "second", "third")
    assert found.order == ("back", "second", "third")
    assert found.turned == {"second"}


def test_a_twice_folded_face_lies_as_it_did_beside_its_hinges() -> None:
    found = closed(
        (BASE, flap("second", "back", "right", 80.0), flap("third", "second", "right", 70.0)), "third", "second"
    )
    # The third's own left edge is its hinge: 80 mm left of the right edge of the back once closed.
    assert found.plan["third"].point(Point(0, 0)) == Point(10, 0)
    assert found.plan["third"].point(Point(70, 60)) == Point(80, 60)
