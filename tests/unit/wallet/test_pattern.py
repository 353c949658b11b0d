"""Sums, developments, placements and pieces as values."""

from __future__ import annotations

import pytest

from patternforge.geometry.path import polygon
from patternforge.geometry.point import Point
from patternforge.geometry.transform import flipped_x, translation
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Development, EdgeRole, Piece, Placement, Sum, Term
from patternforge.wallet.spec import Side
from tests.designs_built import two_fold

TWO_FOLDS = Development(((10.0, 10.0), (12.0, 16.0), (30.0, 34.0), (34.0, 36.0)))


@pytest.mark.parametrize(
    ("assembly", "flat"),
    [(0.0, 0.0), (10.0, 10.0), (11.0, 13.0), (12.0, 16.0), (20.0, 24.0), (32.0, 35.0), (34.0, 36.0), (50.0, 52.0)],
)
def test_a_development_is_piecewise_linear_and_goes_back(assembly: float, flat: float) -> None:
    assert TWO_FOLDS.flat(assembly) == pytest.approx(flat)
    assert TWO_FOLDS.assembly(flat) == pytest.approx(assembly)


def test_a_layer_without_folds_is_its_own_development() -> None:
    assert Development().flat(7.5) == 7.5
    assert Development().assembly(7.5) == 7.5


def test_a_placement_leads_through_the_development_onto_the_piece_and_back() -> None:
    # Mirrored about x = 0 and moved right by 100: an assembly point at 20, flat 24, comes to lie at 76.
    placement = Placement(TWO_FOLDS, flipped_x().then(translation(100.0, 5.0)), (0, 1, 2))
    at = placement.to_piece(Point(20.0, 8.0))
    assert (at.x, at.y) == pytest.approx((76.0, 13.0))
    back = placement.to_assembly(at)
    assert (back.x, back.y) == pytest.approx((20.0, 8.0))
    many = placement.on_assembly([at, at])
    assert [(p.x, p.y) for p in many] == [pytest.approx((20.0, 8.0))] * 2


def test_a_sum_is_worth_its_terms() -> None:
    assert Sum("width", (Term("card", 80.0), Term("ease", 2.5))).value == 82.5
    assert Sum("nothing", ()).value == 0


def test_the_area_of_a_piece_leaves_out_its_openings() -> None:
    outline = polygon([Point(0, 0), Point(40, 0), Point(40, 20), Point(0, 20)])
    window = polygon([Point(5, 5), Point(5, 15), Point(25, 15), Point(25, 5)])
    piece = Piece(
        name="front",
        part="front",
        leather="outer",
        showing=Side.OUTSIDE,
        visible=True,
        level=0,
        outline=outline,
        edges=(EdgeRole.RAW,) * 4,
        openings=(window,),
        holes=(),
        fold_lines=(),
        placement=Placement(Development(), translation(0.0, 0.0), (0,)),
    )
    assert (piece.width, piece.height) == (40.0, 20.0)
    assert piece.area == pytest.approx(800 - 200)


def test_a_piece_is_found_by_its_name() -> None:
    pattern = drafted(two_fold())
    assert pattern.piece("divider").leather == "inner"
    with pytest.raises(KeyError):
        pattern.piece("gusset")


def test_a_leather_and_an_item_are_found_by_the_names_the_design_gives_them() -> None:
    design = two_fold(outer=1.7)
    assert design.leather("outer").t == 1.7
    assert design.item("card").length == 85.60
    with pytest.raises(KeyError):
        design.leather("lining")
    with pytest.raises(KeyError):
        design.item("coin")
