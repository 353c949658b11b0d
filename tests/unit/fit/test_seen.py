"""What is seen of finished wallets: against outlines laid by hand and areas by another way."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from patternforge.design.load import load_design
from patternforge.fit.close import closed_wallet
from patternforge.fit.layout import layout
from patternforge.fit.seen import Seen, Sheet, Shown, closed_seen, open_seen, uncovered
from patternforge.fit.seen_folded import closed_folded_seen, open_folded_seen
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.point import Point, joined_bounds
from patternforge.geometry.regions import Region, region
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern
from tests.designs_built import sleeve, two_fold

DESIGNS = Path(__file__).parents[3] / "designs"


@cache
def _looks(name: str) -> tuple[Pattern, tuple[Seen, ...]]:
    design = (
        {"two fold": two_fold, "sleeve": sleeve}[name]()
        if name in ("two fold", "sleeve")
        else load_design((DESIGNS / f"{name}.yaml").read_text(encoding="utf-8"), f"{name}.yaml")
    )
    pattern = drafted(design)
    if pattern.folded:
        return pattern, (open_folded_seen(pattern), *closed_folded_seen(pattern, pattern.folded))
    laid = layout(pattern, {leather.role: leather for leather in design.leathers})
    return pattern, (open_seen(laid), *closed_seen(laid, closed_wallet(laid)))


def _size(look: Seen) -> tuple[float, float]:
    box = joined_bounds([path.bounds for part in look.parts for path in part.paths])
    return box.width, box.height


def _box(x0: float, x1: float) -> Region:
    return region(rounded_rectangle(x0, 0.0, x1, 10.0, 0.0))


def test_what_lies_on_top_covers_what_is_below_but_a_clear_sheet_does_not() -> None:
    below, middle, above = (Sheet("a", Shown.LEATHER, _box(0, 10)), _box(4, 8), _box(6, 20))
    seen = {p.name: p for p in uncovered([below, Sheet("b", Shown.CLEAR, middle), Sheet("c", Shown.LEATHER, above)])}
    areas = {name: sum(abs(path.area) for path in part.paths) for name, part in seen.items()}
    assert areas == pytest.approx({"a": 60.0, "b": 20.0, "c": 140.0}, abs=0.1)


def test_what_is_wholly_covered_is_not_seen() -> None:
    covered = [Sheet("a", Shown.LEATHER, _box(2, 8)), Sheet("b", Shown.LEATHER, _box(0, 10))]
    assert [part.name for part in uncovered(covered)] == ["b"]


def test_a_stitch_is_seen_where_its_own_part_is() -> None:
    stitches = ((Point(1, 5), Point(3, 5)), (Point(7, 5), Point(9, 5)))
    sheets = [Sheet("a", Shown.LEATHER, _box(0, 10), stitches), Sheet("b", Shown.LEATHER, _box(6, 20))]
    assert uncovered(sheets)[0].stitches == stitches[:1]


def test_a_sleeve_is_seen_as_large_as_it_is_from_both_sides() -> None:
    pattern, looks = _looks("sleeve")
    for look in looks:
        assert _size(look) == pytest.approx((pattern.width, pattern.height), abs=0.05)


def test_a_two_fold_wallet_shows_its_pockets_open_and_its_shell_alone_closed() -> None:
    pattern, (opened, front, back) = _looks("two fold")
    names = {part.name for part in opened.parts if part.shown is Shown.LEATHER}
    assert names == {piece.name for piece in pattern.pieces}
    assert any(part.shown is Shown.ITEM for part in opened.parts)
    for look in (front, back):
        assert [part.name for part in look.parts] == ["shell"]
        assert look.parts[0].stitches


def test_a_closed_wallet_is_as_wide_as_its_panel_and_the_bend_beyond_it() -> None:
    """The bend stands out by its outside radius: half of what lies between the flanks, and the shell's thickness."""
    pattern, (_, front, _) = _looks("two fold")
    bend = pattern.folds[0].layers[0]
    expected = pattern.panels[0].width.value + bend.radius + pattern.design.leather("outer").t
    assert _size(front)[0] == pytest.approx(expected, abs=0.1)


def test_a_flap_lies_over_the_front_of_a_pouch_and_hangs_from_its_fold() -> None:
    _, (opened, back, front) = _looks("coin-pouch")
    assert "panel 'flap' up" in front.name
    assert "panel 'pouch' up" in back.name
    flap, under = next(p for p in front.parts if p.name == "back"), next(p for p in front.parts if p.name == "front")
    boxes = [joined_bounds([path.bounds for path in part.paths]) for part in (flap, under)]
    assert boxes[0].y1 > boxes[1].y1
    assert boxes[0].y0 > boxes[1].y0
    assert _size(opened)[1] > _size(front)[1]


@pytest.mark.parametrize("name", ["one-piece-card-wallet", "one-piece-coin-envelope"])
def test_a_folded_wallet_shows_its_blank_open_and_is_as_large_closed_as_its_plan(name: str) -> None:
    pattern, (opened, front, back) = _looks(name)
    assert pattern.folded is not None
    assert _size(opened) == pytest.approx((pattern.width, pattern.height), abs=0.05)
    assert len(opened.folds) == 2 * len(pattern.folded.hinges)
    closed = pattern.folded.closed
    for look in (front, back):
        width, height = _size(look)
        # The plan counts the bends in, the picture leaves them out.
        assert closed.width - 12.0 < width <= closed.width + 0.05
        assert closed.height - 12.0 < height <= closed.height + 0.05
