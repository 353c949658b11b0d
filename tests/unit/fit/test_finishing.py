"""What fit says of skived and turned edges: every measure with a case for each verdict.

The shell of 1.2 mm is skived to 0.4 mm along its edges and turned over a lining of 0.8 mm with an overlap of 8 mm:
the bend is pi x 0.6 = 1.885 mm long, the finished edge stands 0.8 mm outside it, the piece is cut 9.085 mm larger.
"""

from __future__ import annotations

from dataclasses import replace
from math import pi, sqrt
from typing import Any

import pytest

from patternforge.fit.findings import Verdict
from patternforge.fit.judge import fit, fit_over_range
from patternforge.fit.layout import layout
from patternforge.leather.material import Thickness
from patternforge.wallet.assemble import drafted
from patternforge.wallet.finishing import EdgeSkive, FoldSkive, TurnedHoles, TurnedSpec
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import Edge, FoldSpec, Held, LayerPart
from tests.unit.fit.found import GOOD, LOOK, NO, finding, findings, small
from tests.unit.wallet.built import bank, leather, shell, wallet

ALL = (Edge.LEFT, Edge.BOTTOM, Edge.RIGHT, Edge.TOP)
ARC = pi * 0.6


def lined(
    edge: float = 0.4, band: float = 12.0, inside: float = 1.0, panels: int = 1, corner: float = 0.0, **changes: Any
) -> Pattern:
    """The wallet above; ``edge`` thick where a ``band`` is skived, the lining ``inside`` the shell."""
    spec = replace(TurnedSpec(ALL, 8.0, ("lining",)), **changes)
    part = shell(panels, turned=(spec,), skives=(EdgeSkive(ALL, band, edge),) if edge < 1.2 else ())
    lining = LayerPart("lining", "inner", 0, 0, follows="shell", inside=inside)
    sizes: dict[str, Any] = {"widths": (100.0, 100.0), "folds": (FoldSpec(relief=5.0),)} if panels == 2 else {}
    return small(part, lining, bank(), corner=corner, **sizes)


@pytest.mark.parametrize(("edge", "verdict"), [(0.4, GOOD), (0.3, LOOK), (0.1, NO)])
def test_a_skive_must_leave_a_third_of_the_leather_or_0_4_mm(edge: float, verdict: Verdict) -> None:
    found = finding(lined(edge), "leather left by skiving")
    assert found.measured == edge
    assert found.limit.good.low == pytest.approx(0.4)
    assert found.verdict is verdict


def test_thin_leather_may_be_skived_to_a_third_of_its_own() -> None:
    part = shell(1, leather="inner", skives=(EdgeSkive(ALL, 8.0, 0.27),))
    found = finding(small(part, bank()), "leather left by skiving")
    assert found.limit.good.low == pytest.approx(0.8 / 3)
    assert found.verdict is GOOD


@pytest.mark.parametrize(("overlap", "verdict"), [(8.0, GOOD), (4.0, LOOK), (2.0, NO)])
def test_the_overlap_is_read_off_the_cut_piece(overlap: float, verdict: Verdict) -> None:
    found = finding(lined(overlap=overlap, notch_gap=0.5), "turned in flat by")
    assert found.measured == pytest.approx(overlap)
    assert found.verdict is verdict


def test_thicker_leather_takes_the_bend_out_of_the_overlap() -> None:
    pattern = lined(edge=1.2)
    drafted_for = finding(pattern, "turned in flat by").measured
    thicker = {each.role: each for each in pattern.design.leathers}
    thicker["outer"] = leather("outer", 1.6)
    (found,) = [f for f in fit(pattern, thicker) if f.what == "turned in flat by"]
    # From r + t = 1.8 and pi x 1.2 to 2.4 and pi x 1.6: 0.4 x (pi - 1.5) less lies flat.
    assert drafted_for - found.measured == pytest.approx(0.4 * (pi - 1.5))


@pytest.mark.parametrize(
    ("edge", "measured", "verdict"), [(0.4, 1.6, GOOD), (0.55, 1.9, GOOD), (0.9, 2.6, LOOK), (1.2, 3.2, LOOK)]
)
def test_a_turned_edge_is_twice_its_own_thickness_and_what_it_encloses(
    edge: float, measured: float, verdict: Verdict
) -> None:
    found = finding(lined(edge), "thickness of a turned edge")
    assert found.measured == pytest.approx(measured)
    assert found.limit.good.high == pytest.approx(2.0)
    assert found.verdict is verdict


@pytest.mark.parametrize(("band", "verdict"), [(12.0, GOOD), (9.0, LOOK), (7.0, NO)])
def test_the_skived_band_must_reach_over_overlap_and_bend(band: float, verdict: Verdict) -> None:
    found = finding(lined(band=band), "skived band along a turned edge")
    assert found.measured == pytest.approx(band)
    assert found.limit.good.low == pytest.approx(8.0 + ARC)
    assert found.verdict is verdict


def test_an_edge_that_is_not_skived_needs_no_band() -> None:
    assert findings(lined(edge=1.2), "skived band along a turned edge") == []


@pytest.mark.parametrize(("inside", "verdict"), [(0.8, GOOD), (0.4, LOOK), (0.0, NO)])
def test_the_lining_must_end_clear_of_the_bend(inside: float, verdict: Verdict) -> None:
    found = finding(lined(inside=inside), "lining clear of the bend")
    assert found.measured == pytest.approx(inside - 0.8)
    assert found.verdict is verdict


@pytest.mark.parametrize(("inside", "verdict"), [(1.0, GOOD), (6.0, LOOK), (8.5, NO)])
def test_the_lining_must_be_held_under_the_overlap(inside: float, verdict: Verdict) -> None:
    found = finding(lined(inside=inside), "lining held under a turned edge")
    assert found.measured == pytest.approx(8.8 - inside)
    assert found.verdict is verdict


@pytest.mark.parametrize(("gap", "verdict"), [(0.6, GOOD), (0.3, LOOK), (0.1, NO)])
def test_leather_must_be_left_at_a_mitred_corner(gap: float, verdict: Verdict) -> None:
    found = finding(lined(corner_gap=gap), "leather left at a mitred corner")
    assert found.measured == pytest.approx(gap)
    assert found.verdict is verdict


@pytest.mark.parametrize(("gap", "verdict"), [(0.6, GOOD), (1.4, LOOK), (2.4, NO)])
def test_mitred_edges_may_lap_by_four_thicknesses(gap: float, verdict: Verdict) -> None:
    found = finding(lined(corner_gap=gap), "mitred edges lap by")
    # They would just meet when cut (arc - 2 (r + t)) / sqrt 2 off the corner.
    assert found.measured == pytest.approx(2 * (gap - (ARC - 1.6) / sqrt(2)))
    assert found.limit.good.high == pytest.approx(1.6)
    assert found.verdict is verdict


@pytest.mark.parametrize(("corner", "overlap", "verdict"), [(10.0, 5.0, GOOD), (10.0, 6.5, LOOK), (10.0, 8.9, NO)])
def test_tongues_between_notches_must_not_be_too_thin(corner: float, overlap: float, verdict: Verdict) -> None:
    pattern = lined(corner=corner, overlap=9.0, corner_overlap=overlap)
    found = finding(pattern, "tongues between notches")
    turned = pattern.piece("shell").turned
    assert turned is not None
    rest = pi / 2 * (corner - 0.8 - overlap)
    assert found.measured == pytest.approx(rest / turned.corners[0].notches)
    assert found.verdict is verdict


def test_a_notched_fold_gathers_nothing_and_one_without_what_it_is_too_long() -> None:
    pattern = lined(panels=2)
    assert finding(pattern, "turned edge gathers in the fold").measured == pytest.approx(0.0)
    piece = pattern.piece("shell")
    assert piece.turned is not None
    for excess, verdict in ((0.8, GOOD), (2.0, LOOK), (4.0, NO)):
        whole = replace(piece, turned=replace(piece.turned, gathers=((1, excess, 0.0),)))
        pieces = tuple(whole if each.name == "shell" else each for each in pattern.pieces)
        found = finding(replace(pattern, pieces=pieces), "turned edge gathers in the fold")
        assert (found.measured, found.verdict) == (excess, verdict)


@pytest.mark.parametrize(("overlap", "verdict"), [(8.0, GOOD), (4.5, LOOK), (3.8, NO)])
def test_stitches_must_keep_off_the_edge_of_what_is_turned_in(overlap: float, verdict: Verdict) -> None:
    found = finding(lined(overlap=overlap), "hole rim to the edge turned in")
    # Holes of 1 mm stand 4 mm off the finished edge.
    assert found.measured == pytest.approx(overlap + 0.8 - 4.0 - 0.5)
    assert found.verdict is verdict


def test_what_is_worse_at_the_ends_of_the_thickness_is_told() -> None:
    pattern = lined(edge=1.2, overlap=5.0, notch_gap=0.5)
    outer = replace(pattern.design.leather("outer"), tolerance=0.3)
    design = replace(pattern.design, leathers=(outer, pattern.design.leather("inner")))
    told = [f for f in fit_over_range(replace(pattern, design=design)) if f.what == "turned in flat by"]
    assert [f.verdict for f in told] == [GOOD, LOOK]
    assert told[1].where.endswith("leather at its thickest")


def test_the_stack_at_a_seam_counts_skived_leather_and_what_is_turned_in() -> None:
    # Shell 1.2 beyond the band, turned in 0.4, lining 0.8, three pieces of the bank at most two of which meet here.
    plain = finding(
        small(shell(1), LayerPart("lining", "inner", 0, 0, follows="shell", inside=1.0), bank()),
        "thickest stack sewn through",
        "rim",
    )
    assert finding(lined(), "thickest stack sewn through", "rim").measured == pytest.approx(plain.measured + 0.4)
    broad = finding(lined(band=14.0), "thickest stack sewn through", "rim")
    assert broad.measured == pytest.approx(plain.measured + 0.4 - 0.8)


def test_the_closed_wallet_is_thinner_where_its_highest_stack_is_skived() -> None:
    sizes: dict[str, Any] = {"widths": (100.0, 100.0), "folds": (FoldSpec(relief=5.0),)}
    lining = LayerPart("lining", "inner", 0, 1)
    plain = small(shell(2), lining, **sizes)
    everywhere = (EdgeSkive((Edge.TOP,), 80.0, 0.5),)
    skived = small(shell(2, skives=everywhere), lining, **sizes)
    what = "thickness closed, as loaded"
    assert finding(plain, what).measured - finding(skived, what).measured == pytest.approx(2 * 0.7)


def test_a_skived_fold_is_judged_by_its_own_thickness() -> None:
    sizes: dict[str, Any] = {"widths": (100.0, 100.0), "folds": (FoldSpec(relief=5.0),)}
    pattern = small(shell(2, skives=(FoldSkive(0, 6.0, 0.7),)), LayerPart("lining", "inner", 0, 1), bank(), **sizes)
    assert finding(pattern, "edge mismatch, closed").measured == pytest.approx(0.0, abs=1e-9)
    # Cut for full thickness, the skived shell is pi x 0.25 too long.
    plain = small(shell(2), LayerPart("lining", "inner", 0, 1), bank(), **sizes)
    piece = replace(plain.piece("shell"), skives=pattern.piece("shell").skives)
    mixed = replace(plain, pieces=(piece, *plain.pieces[1:]))
    assert finding(mixed, "edge mismatch, closed").measured == pytest.approx(pi * 0.25)


def test_the_holes_cut_beforehand_keep_the_wallet_as_good_as_pierced_ones() -> None:
    pierced, cut = lined(), lined(holes=TurnedHoles.CUT)
    assert [(f.what, f.where, f.verdict) for f in fit(pierced)] == [(f.what, f.where, f.verdict) for f in fit(cut)]


def test_a_wallet_is_as_thick_as_where_its_edge_is_turned_in() -> None:
    part = shell(1, turned=(TurnedSpec((Edge.TOP,)),))
    pattern = small(part, LayerPart("lining", "inner", 0, 0, follows="shell", inside=1.0))
    assert finding(pattern, "thickness closed, as loaded").measured == pytest.approx(1.2 + 0.8 + 1.2)


def test_what_is_turned_in_lies_behind_the_lining_and_before_what_is_loose_there() -> None:
    part = shell(1, turned=(TurnedSpec((Edge.TOP,), over=("lining",)),))
    lining = LayerPart("lining", "inner", 0, 0, follows="shell", inside=1.0)
    divider = LayerPart("divider", "inner", 0, 0, drop=10.0, exact=("drop",), holds=(Held("card", 2),))
    pattern = small(part, lining, divider)
    plies = layout(pattern, {each.role: each for each in pattern.design.leathers}).plies
    assert [ply.name for ply in plies] == ["shell", "lining", "shell turned in", "card", "divider"]


def test_a_core_counts_in_the_edge_and_under_the_stitches() -> None:
    part = shell(1, turned=(TurnedSpec(ALL, core=0.5),), skives=(EdgeSkive(ALL, 14.0, 0.4),))
    pattern = drafted(
        wallet(
            part,
            bank(),
            leathers=(replace(leather("outer", 1.2), thickness=Thickness(1.2, 1.2)), leather("inner", 0.8)),
        )
    )
    assert finding(pattern, "thickness of a turned edge").measured == pytest.approx(0.4 + 0.5 + 0.4)
    bare = finding(
        drafted(wallet(replace(part, turned=(TurnedSpec(ALL),)), bank())), "thickest stack sewn through", "rim"
    )
    assert finding(pattern, "thickest stack sewn through", "rim").measured == pytest.approx(bare.measured + 0.5)
