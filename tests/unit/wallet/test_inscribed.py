"""Letters on the piece that shows, in their box, right way up on its showing face and as the wallet is carried."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from patternforge.errors import DraftError
from patternforge.geometry.point import Point
from patternforge.geometry.transform import Transform
from patternforge.wallet.assemble import drafted
from patternforge.wallet.inscribed import upright
from patternforge.wallet.marked import Inscription
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import Design, Edge, FoldSpec, Initials, LayerPart, Side, Spot, Stamp
from tests.unit.wallet.built import bank, pocket, shell, wallet

NAME = Initials("name", "AB", "shell", Spot(0, (Edge.LEFT, 30.0), (Edge.BOTTOM, 25.0)), 20.0, 8.0, line=11)


def lettered(
    *parts: Any, initials: Initials = NAME, panels: int = 1, turned: bool = False, **changes: Any
) -> Pattern:
    return drafted(_design(*parts, initials=initials, panels=panels, turned=turned, **changes))


def _design(*parts: Any, initials: Initials = NAME, panels: int = 1, turned: bool = False, **changes: Any) -> Design:
    folds = changes.pop("folds", (FoldSpec(),) * (panels - 1))
    design = wallet(
        *(parts or (shell(panels),)), widths=(100.0,) * panels, folds=folds, initials=(initials,), **changes
    )
    return replace(design, body=replace(design.body, turned=turned))


def only(pattern: Pattern, piece: str) -> Inscription:
    (found,) = pattern.piece(piece).inscriptions
    return found


def test_letters_on_an_outer_face_lie_mirrored_with_their_piece_and_stand_upright() -> None:
    found = only(lettered(), "shell")
    # 100 mm wide and seen from the outside: 30 mm from the left edge is 70 mm from the drawn one.
    assert (found.at, found.up) == (Point(70.0, 25.0), 90.0)
    assert (found.text, found.width, found.height, found.clear, found.stamp) == ("AB", 20.0, 8.0, 3.0, None)
    bounds = found.box.bounds
    assert (bounds.x0, bounds.y0, bounds.x1, bounds.y1) == pytest.approx((60.0, 21.0, 80.0, 29.0))


def test_letters_on_an_inner_face_lie_where_they_are_told() -> None:
    lining = LayerPart("lining", "inner", 0, 0)
    found = only(lettered(shell(1), lining, initials=replace(NAME, part="lining")), "lining")
    assert (found.at, found.up) == (Point(30.0, 25.0), 90.0)


def test_letters_beyond_a_fold_move_with_the_layers_own_length() -> None:
    far = replace(NAME, spot=Spot(1, (Edge.LEFT, 10.0), (Edge.BOTTOM, 20.0)))
    pattern = lettered(shell(2), initials=far, panels=2)
    found = only(pattern, "shell")
    (fold,) = pattern.folds
    length = 100.0 + fold.layers[0].flat_length + 10.0
    assert pattern.piece("shell").width - found.at.x == pytest.approx(length)


@pytest.mark.parametrize(("height", "piece"), [(20.0, "bank 1"), (50.0, "bank 2"), (60.0, "bank 3")])
def test_letters_on_a_bank_are_borne_by_the_pocket_that_shows_there(height: float, piece: str) -> None:
    # Mouths at 44, 54 and 64 mm.
    spot = Spot(0, None, (Edge.BOTTOM, height))
    pattern = lettered(shell(1), bank(), initials=replace(NAME, part="bank", spot=spot))
    assert [each.name for each in pattern.pieces if each.inscriptions] == [piece]


def test_letters_on_a_pocket_outside_are_borne_by_its_outermost_piece() -> None:
    spot = Spot(0, None, (Edge.BOTTOM, 20.0))
    parts = (bank(facing=Side.OUTSIDE), shell(1))
    pattern = lettered(*parts, initials=replace(NAME, part="bank", spot=spot))
    assert [each.name for each in pattern.pieces if each.inscriptions] == [pattern.pieces[0].name]


def test_letters_whose_middle_lies_off_their_part_are_refused() -> None:
    high = replace(NAME, part="pocket", spot=Spot(0, None, (Edge.BOTTOM, 60.0)))
    with pytest.raises(DraftError, match=r"small.yaml: initials 'name' \(line 11\): .* lies off 'pocket'"):
        lettered(shell(1), pocket(), initials=high)


@pytest.mark.parametrize(("up", "degrees"), [(Edge.TOP, 90), (Edge.LEFT, 0), (Edge.RIGHT, 180), (Edge.BOTTOM, -90)])
def test_up_is_told_on_the_body_laid_open_and_turns_over_with_the_piece(up: Edge, degrees: float) -> None:
    found = only(lettered(initials=replace(NAME, up=up)), "shell")
    assert found.up == degrees


@pytest.mark.parametrize("showing", Side)
@pytest.mark.parametrize("turned", [False, True])
@pytest.mark.parametrize("up", Edge)
def test_the_way_from_the_letters_to_their_piece_never_mirrors(showing: Side, turned: bool, up: Edge) -> None:
    part = replace(shell(1), showing=showing)
    way: Transform = only(lettered(part, initials=replace(NAME, up=up), turned=turned), "shell").from_text()
    assert not way.is_mirror


def test_a_turned_row_bears_letters_along_the_lines_of_its_page() -> None:
    # The row's left end is the top, so 30 mm from the left are 30 mm down from 100, and the box lies level.
    found = only(lettered(shell(1), turned=True), "shell")
    assert found.at.y == pytest.approx(70.0)
    assert found.up == 90.0
    assert found.box.bounds.width == pytest.approx(20.0)


def _turned(folds: int, closing: tuple[int, ...], angles: tuple[float, ...] = ()) -> Design:
    specs = tuple(FoldSpec(angle) for angle in angles or (180.0,) * folds)
    return _design(panels=folds + 1, turned=True, folds=specs, closing=closing)


@pytest.mark.parametrize(
    ("design", "ups"),
    [
        # A cover that flips up hangs from its fold: the back stands as drawn, the cover's outside is turned round.
        (_turned(1, (1,)), "right left"),
        # Flap, back, front: the front folds up behind the back first, then the flap comes down over it.
        (_turned(2, (2, 1)), "right left right"),
        # Closed the other way about, the last fold is the lower one.
        (_turned(2, (1, 2)), "left right left"),
        # A fold that stays open hangs nothing: all stand as drawn.
        (_turned(1, (1,), (90.0,)), "left left"),
        (_turned(0, ()), "left"),
    ],
)
def test_outer_letters_of_a_turned_row_are_upright_as_it_is_carried(design: Design, ups: str) -> None:
    assert [upright(design, panel, Side.OUTSIDE).value for panel in range(len(design.body.panels))] == ups.split()
    assert {upright(design, panel, Side.INSIDE) for panel in range(len(design.body.panels))} == {Edge.LEFT}


def test_stamps_go_with_their_letters() -> None:
    stamp = Stamp(6.0, 8.0, 0.5)
    assert only(lettered(initials=replace(NAME, stamp=stamp)), "shell").stamp == stamp
