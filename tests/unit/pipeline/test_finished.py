"""Finished sizes and leather, against the flat pieces and against what fit measures on its own."""

from __future__ import annotations

from dataclasses import replace

import pytest

from patternforge.fit.judge import fit
from patternforge.pipeline.finished import Size, closed_size, closed_thickness, leather_needs, open_size
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import DraftedFold, DraftedPanel, FoldLayer, Pattern, Sum, Term
from patternforge.wallet.spec import Design
from tests.designs_built import leathers, sleeve, three_fold, two_fold
from tests.folded_built import envelope

DESIGNS = [sleeve(), two_fold(), three_fold()]


@pytest.mark.parametrize("design", DESIGNS, ids=lambda design: str(design.name))
def test_open_it_is_as_large_as_its_outermost_piece(design: Design) -> None:
    pattern = drafted(design)
    size = open_size(pattern)
    assert (size.width, size.height) == pytest.approx((pattern.pieces[0].width, pattern.pieces[0].height), abs=1e-6)


def test_turned_it_is_measured_as_it_is_looked_at() -> None:
    design = two_fold()
    turned = replace(drafted(design), design=replace(design, body=replace(design.body, turned=True)))
    upright = drafted(design)
    assert open_size(turned).height == open_size(upright).width
    assert closed_size(turned).width == closed_size(upright).height


def test_a_sleeve_is_as_large_closed_as_open() -> None:
    assert closed_size(drafted(sleeve())) == open_size(drafted(sleeve()))


@pytest.mark.parametrize("design", [two_fold(), two_fold(2.0, 1.0)], ids=["thin", "thick"])
def test_closed_a_two_fold_reaches_half_its_spine_beyond_its_panel(design: Design) -> None:
    """Fit measures the thickness over the spine from the pieces: half of it stands beyond the tangent."""
    pattern = drafted(design)
    spine = next(found.measured for found in fit(pattern) if found.what == "thickness at the spine")
    assert closed_size(pattern).width == pytest.approx(pattern.panels[0].width.value + spine / 2, abs=0.01)


def test_closed_a_three_fold_reaches_beyond_its_middle_panel_at_both_ends() -> None:
    pattern = drafted(three_fold())
    spines = [found.measured for found in fit(pattern) if found.what == "thickness at the spine"]
    middle = pattern.panels[1].width.value
    assert closed_size(pattern).width == pytest.approx(middle + sum(spines) / 2, abs=0.01)


def test_a_folded_wallet_is_as_large_open_as_its_blank_and_closed_as_its_base_and_bends() -> None:
    pattern = drafted(envelope(t=1.0, cards=2))
    assert open_size(pattern) == Size(pattern.pieces[0].width, pattern.pieces[0].height)
    closed = closed_size(pattern)
    # Two cards round either wing; a wing more round front and lid: half the gap and a thickness beyond each side.
    assert closed.width == pytest.approx(90 + 2 * (0.76 + 1.0))
    assert closed.height == pytest.approx(60 + 2 * (0.76 + 0.5 + 1.0))
    assert closed_thickness(fit(pattern)) == pytest.approx(5 * 1.0 - 1.0 + 2 * 0.76)


def row(widths: list[float], angles: list[float]) -> Pattern:
    """Panels of these widths joined by folds of these angles; one layer of 1 mm round an inside radius of 2 mm."""
    design = replace(two_fold(), leathers=leathers(outer=1.0))
    panels = tuple(DraftedPanel(str(i), 0.0, w, Sum("", (Term("", w),))) for i, w in enumerate(widths))
    layer = FoldLayer("shell", Sum("", ()), 2.0, 8.0, 8.0)
    folds = tuple(DraftedFold(i, angle, 1.0, 3.0, 0.0, 8.0, (layer,)) for i, angle in enumerate(angles, start=1))
    return Pattern(design, 0.0, 50.0, Sum("", ()), panels, folds, (), (), (), ())


@pytest.mark.parametrize(
    ("widths", "angles", "closed"),
    [
        ([100.0], [], 100.0),
        ([100.0, 100.0], [180.0], 103.0),
        ([100.0, 100.0], [-180.0], 103.0),
        ([80.0, 100.0], [180.0], 103.0),
        ([90.0, 100.0, 95.0], [180.0, 180.0], 106.0),
        ([90.0, 100.0, 95.0], [180.0, -180.0], 106.0),
        ([100.0, 10.0, 100.0], [90.0, 90.0], 103.0),
    ],
)
def test_closed_panels_lie_back_and_forth(widths: list[float], angles: list[float], closed: float) -> None:
    assert closed_size(row(widths, angles)).width == pytest.approx(closed)


def test_a_sleeve_is_as_thick_as_its_back_its_pockets_and_its_cards() -> None:
    """Where both pockets and both cards lie over each other; 0.76 mm is the thickness of a card (ISO/IEC 7810)."""
    assert closed_thickness(fit(drafted(sleeve(1.2, 0.8)))) == pytest.approx(1.2 + 2 * 0.8 + 2 * 0.76)


def test_leather_is_summed_by_role_and_priced_by_its_unit() -> None:
    outer, inner = leathers()
    priced = (replace(outer, price=10.0, price_area="dm2"), inner)
    pattern = drafted(replace(two_fold(), leathers=priced))
    needs = {need.role: need for need in leather_needs(pattern)}
    shell = pattern.piece("shell")
    assert needs["outer"].area == pytest.approx(shell.area)
    assert needs["outer"].price == pytest.approx(shell.area / 10_000 * 10.0)
    assert needs["inner"].price is None
    assert needs["inner"].pieces == len(pattern.pieces) - 1
    assert sum(need.area for need in needs.values()) == pytest.approx(sum(piece.area for piece in pattern.pieces))


@pytest.mark.parametrize(("unit", "mm2"), [("ft2", 304.8**2), ("m2", 1e6), ("dm2", 1e4)])
def test_a_price_is_for_the_area_it_names(unit: str, mm2: float) -> None:
    """1 ft = 0.3048 m exactly (international yard and pound agreement, 1959)."""
    outer, inner = leathers()
    pattern = drafted(replace(sleeve(), leathers=(replace(outer, price=7.0, price_area=unit), inner)))
    need = leather_needs(pattern)[0]
    assert need.price == pytest.approx(7.0 * need.area / mm2)
