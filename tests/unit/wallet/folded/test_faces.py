"""Faces: their sizes with their sums, their hinges, how they lie beside each other."""

from __future__ import annotations

from dataclasses import replace

import pytest

from patternforge.errors import DraftError
from patternforge.geometry.point import Point
from patternforge.wallet.features import EdgeShape
from patternforge.wallet.folded.faces import Face, faces
from patternforge.wallet.folded.spec import FaceSpec, FoldedSpec, RoomSpec
from patternforge.wallet.spec import Design, Edge, Lying
from tests.folded_built import design_of, envelope, flap


def planned(design: Design) -> dict[str, Face]:
    assert design.folded is not None
    return {face.name: face for face in faces(design, design.folded)}


def of(*specs: FaceSpec, rooms: tuple[RoomSpec, ...] = ()) -> Design:
    return design_of(FoldedSpec("main", specs, tuple(spec.name for spec in specs[1:]), rooms, ease=3.0))


def test_a_base_fits_the_item_that_lies_on_it_with_the_ease() -> None:
    rooms = (RoomSpec("cards", ("back", "lid"), "card", 2),)
    back = planned(of(FaceSpec("back"), flap("lid", "back", "top", 30.0), rooms=rooms))["back"]
    assert back.width.value == pytest.approx(85.60 + 3)
    assert back.height.value == pytest.approx(53.98 + 3)
    assert [term.label for term in back.width.terms] == ["card", "ease"]


@pytest.mark.parametrize(
    ("lying", "opening", "size"),
    [
        (Lying.LYING, Edge.TOP, (85.60, 53.98)),
        (Lying.UPRIGHT, Edge.BOTTOM, (53.98, 85.60)),
        (Lying.LYING, Edge.LEFT, (53.98, 85.60)),
        (Lying.UPRIGHT, Edge.RIGHT, (85.60, 53.98)),
    ],
)
def test_an_item_lies_along_the_mouth_it_goes_in_over(lying: Lying, opening: Edge, size: tuple[float, float]) -> None:
    rooms = (RoomSpec("cards", ("back", "lid"), "card", 1, lying, opening),)
    back = planned(of(FaceSpec("back"), flap("lid", "back", "top", 30.0), rooms=rooms))["back"]
    assert (back.width.value, back.height.value) == pytest.approx((size[0] + 3, size[1] + 3))


def test_a_flap_reaches_as_far_as_what_lies_on_it() -> None:
    rooms = (RoomSpec("cards", ("side", "back"), "card", 1, Lying.UPRIGHT),)
    side = planned(of(FaceSpec("back", width=60, height=90), flap("side", "back", "right", None), rooms=rooms))[
        "side"
    ]
    assert side.width.value == pytest.approx(53.98 + 3)
    assert side.height.value == 90


def test_a_face_that_nothing_lies_on_needs_a_size() -> None:
    with pytest.raises(DraftError, match=r"folded\.yaml:0: face 'back': nothing lies on it.*in place of 'fit'"):
        planned(of(FaceSpec("back", height=60.0), flap("lid", "back", "top", 30.0)))


def test_a_hinge_stays_short_of_the_ends_of_its_edge_by_the_insets() -> None:
    root = planned(envelope())["lid"].root
    assert root is not None
    assert (root.start, root.end) == (Point(88.5, 60), Point(1.5, 60))
    assert (root.first, root.last) == (1.5, 88.5)
    assert root.outward == Point(0, 1)


def test_a_hinge_that_insets_leave_nothing_of_is_refused() -> None:
    with pytest.raises(DraftError, match=r"hinge is 0\.50 mm long on an edge of 60\.00 mm: inset it less"):
        planned(of(FaceSpec("back", width=90.0, height=60.0), flap("a", "back", "left", 9.0, inset={"top": 59.5})))


def test_a_flap_on_a_slanted_edge_is_as_long_as_that_edge_and_turned_with_it() -> None:
    slanted = FaceSpec("back", width=80.0, height=60.0, sides=((Edge.TOP, EdgeShape(slant=60.0 - 1e-9)),))
    with pytest.raises(DraftError, match="cross"):
        planned(of(replace(slanted, height=30.0), flap("lid", "back", "top", 9.0)))
    lid = planned(of(replace(slanted, height=90.0), flap("lid", "back", "top", 9.0)))["lid"]
    assert lid.width.value == pytest.approx(100.0)  # 60 down over 80 across: 3, 4, 5
    end = lid.beside.point(Point(lid.width.value, 0.0))
    assert (end.x, end.y) == pytest.approx((80.0, 30.0))


def test_closing_a_fold_mirrors_in_its_hinge() -> None:
    root = planned(envelope())["lid"].root
    assert root is not None
    assert root.turned_over.point(Point(20, 75)) == Point(20, 45)
    assert root.turned_over.is_mirror
