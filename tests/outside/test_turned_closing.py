"""Turned edges and skived folds closed from the written files: the finished edge is reached, holes and mates meet.

Each check is shown to fail on files made wrong by a tenth of a millimetre.
"""

from __future__ import annotations

from copy import deepcopy
from functools import cache
from math import pi, sqrt
from pathlib import Path

import pytest
import shapely
import shapely.affinity
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from patternforge.design.load import load_design
from patternforge.errors import DraftError
from patternforge.leather.turn import turn_over
from tests.outside.closing import Wallet
from tests.outside.cut_layers import Json, Layer
from tests.outside.dxf_reading import CutPiece, cut_pieces, cuts
from tests.outside.test_closing import any_cut, with_layer
from tests.outside.written import DESIGNS, ready_design, written

LINED = """
design: Lined wallet
leathers:
  outer: {{thickness: {outer:.3f} mm, neutral: {neutral:.3f}, min_radius: {stiff:.3f}}}
  inner: {{thickness: {inner:.3f} mm}}
contents: {{card: id1, note: note-eur-50}}
body:
  height: fit
  corner: {corner:.3f} mm
  panels: {{left: fit, right: fit}}
  folds: [{{angle: 180, relief: 4 mm}}]
  turned: {row}
stitching: {{pitch: 3.4 mm, hole: {{shape: {shape}}}}}
parts:
  - layer: shell
    leather: outer
    skives:
      - {{along: [{edges}], width: {band:.3f} mm, to: {edge:.3f} mm}}
      - {{fold: 1, width: 6 mm, to: {fold:.3f} mm}}
    turned:
      - {{edges: [{edges}], overlap: {overlap:.3f} mm, over: lining, corner_overlap: {deep:.3f} mm, holes: {holes}}}
  - {{layer: lining, leather: inner, follows: shell, inside: 1 mm}}
  - {{layer: divider, leather: inner, drop: 6 mm, holds: {{note: 4}}}}
  - {{bank: left cards, on: left, leather: inner, item: card, slots: 3, step: 13 mm, show: 12 mm}}
  - {{bank: right cards, on: right, leather: inner, item: card, slots: 2, step: 13 mm, show: 12 mm}}
seams:
  - {{seam: rim, along: [left, bottom, right], margin: 3.5 mm, end: {end:.3f} mm}}
"""
ROUND = "left, bottom, right, top"
USUAL: dict[str, object] = {
    "outer": 1.2,
    "inner": 0.5,
    "neutral": 0.5,
    "stiff": 0.5,
    "edge": 0.4,
    "fold": 0.8,
    "overlap": 8.0,
    "deep": 5.0,
    "band": 12.0,
    "corner": 0.0,
    "end": 4.0,
    "edges": ROUND,
    "holes": "cut",
    "row": "false",
    "shape": "round",
}


def folded(**changes: object) -> Wallet:
    """The wallet as its files have it."""
    files = written(load_design(LINED.format(**{**USUAL, **changes}), "lined.yaml"))
    return Wallet(files.json, cut_pieces(cuts(files.dxf)))


@cache
def usual() -> Wallet:
    """The wallet without changes; nobody may change it."""
    return folded()


@pytest.mark.parametrize("holes", ["pierced", "marked", "cut"])
@pytest.mark.parametrize("edges", [ROUND, "top", "left, right", "bottom, right"])
@pytest.mark.parametrize("row", ["false", "true"])
def test_finished_edges_and_holes_meet_whichever_edges_are_turned_in(holes: str, edges: str, row: str) -> None:
    assert folded(holes=holes, edges=edges, row=row).faults() == []


def test_slits_cut_in_both_leathers_meet() -> None:
    wallet = folded(shape="slit")
    assert wallet.layers[0].mates
    assert wallet.faults() == []


def test_a_rounded_wallet_with_pleats_meets() -> None:
    wallet = folded(corner=9.0, end=9.0)
    assert wallet.json["pieces"][0]["turned"]["corners"][0]["notches"] > 3
    assert wallet.faults() == []


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(
    st.floats(0.8, 1.8),
    st.floats(0.3, 0.9),
    st.floats(0.35, 0.65),
    st.floats(0.2, 1.0),
    st.floats(0.3, 0.95),
    st.floats(0.4, 0.95),
    st.floats(6.0, 11.0),
)
def test_random_turned_and_skived_wallets_meet(
    outer: float, inner: float, neutral: float, stiff: float, edge: float, fold: float, overlap: float
) -> None:
    sizes = {"outer": outer, "inner": inner, "neutral": neutral, "stiff": stiff, "overlap": overlap}
    try:
        wallet = folded(**sizes, edge=edge * outer, fold=fold * outer, band=overlap + 4)
    except DraftError:
        assume(False)
    assert wallet.faults() == []


def test_holes_in_what_is_turned_in_are_cut_at_all() -> None:
    shell = usual().layers[0]
    assert len(shell.mates) > len(shell.holes) / 2


@pytest.mark.parametrize("by", [0.1, -0.1])
def test_an_allowance_a_tenth_of_a_millimetre_wrong_is_found(by: float) -> None:
    wallet = usual()
    shell = wallet.layers[0]
    top = shell.cut.outline.box[3]
    taller = with_layer(wallet, shell, lambda at: at + 1j * by * (at.imag > top - 1), any_cut).faults()
    assert any("shell: top edge" in fault and f"{by:.3f} mm" in fault for fault in taller)


def test_one_mate_a_tenth_of_a_millimetre_off_is_found() -> None:
    wallet = usual()
    shell = wallet.layers[0]
    mate = shell.cut.holes[len(shell.holes) + 5]
    assert shell.mates[5].flat == pytest.approx(shell.laid_open(mate.centre))
    found = with_layer(wallet, shell, lambda at: at + 0.1, lambda cut: cut is mate).faults()
    assert found
    assert all("0.100 mm off its hole, turned in" in fault for fault in found)


def spoilt(wallet: Wallet, left: float, which: int) -> Wallet:
    """The wallet with another thickness left by one skive of its shell."""
    other = deepcopy(dict(wallet.json))
    other["pieces"][0]["skives"][which]["left"] = left
    return Wallet(other, wallet.cuts)


def test_an_edge_skived_a_tenth_of_a_millimetre_thinner_than_drafted_for_is_found() -> None:
    bottom = next(i for i, skive in enumerate(usual().json["pieces"][0]["skives"]) if skive["box"][3] < 13)
    assert any("shell: bottom edge" in fault for fault in spoilt(usual(), 0.3, bottom).faults())


def test_a_fold_skived_a_tenth_of_a_millimetre_thinner_than_drafted_for_is_found() -> None:
    skives = usual().json["pieces"][0]["skives"]
    at = next(i for i, skive in enumerate(skives) if skive["left"] == 0.8)
    assert any("closed" in fault for fault in spoilt(usual(), 0.7, at).faults())


def test_a_mate_left_out_of_the_cutting_file_is_found() -> None:
    wallet = usual()
    shell = wallet.layers[0]
    gone = shell.cut.holes[-1]
    without = CutPiece(tuple(cut for cut in shell.cut.cuts if cut is not gone))
    with pytest.raises(ValueError, match="holes are cut"):
        Wallet(wallet.json, (without, *wallet.cuts[1:])).faults()


# Corners as cut, folded over and laid on each other by shapely.


def flaps(layer: Layer, cut: shapely.Polygon) -> dict[str, shapely.geometry.base.BaseGeometry]:
    """What lies beyond the bends of a cut outline, folded over its finished edges."""
    x0, y0, x1, y1 = layer.box
    far = 500.0
    found = {}
    for edge, rolled in layer.rolled.items():
        bare = rolled.arc - rolled.reach
        beyond = {
            "left": shapely.box(-far, -far, x0 - bare, far),
            "right": shapely.box(x1 + bare, -far, far, far),
            "bottom": shapely.box(-far, -far, far, y0 - bare),
            "top": shapely.box(-far, y1 + bare, far, far),
        }[edge]
        shift = rolled.reach - bare
        # Mirrored in the finished edge and moved on by what the bend takes: u beyond comes to lie u + shift inside.
        fold = {
            "left": [-1, 0, 0, 1, 2 * x0 + shift, 0],
            "right": [-1, 0, 0, 1, 2 * x1 - shift, 0],
            "bottom": [1, 0, 0, -1, 0, 2 * y0 + shift],
            "top": [1, 0, 0, -1, 0, 2 * y1 - shift],
        }[edge]
        found[edge] = shapely.affinity.affine_transform(cut.intersection(beyond), fold)
    return found


def laps(layer: Layer, cut: shapely.Polygon) -> list[float]:
    """The area each two neighbouring edges share once turned in, mm2."""
    turned = flaps(layer, cut)
    pairs = (("bottom", "right"), ("right", "top"), ("top", "left"), ("left", "bottom"))
    return [float(turned[a].intersection(turned[b]).area) for a, b in pairs]


def flat(layer: Layer) -> shapely.Polygon:
    return shapely.Polygon([(at.real, at.imag) for at in layer.contour.flattened()])


def mitred(wallet: Wallet) -> tuple[Layer, Json]:
    shell = wallet.layers[0]
    return shell, wallet.json["pieces"][0]["turned"]


@pytest.mark.parametrize("path", [p for p in DESIGNS if p.stem == "turned-edge-two-fold"], ids=lambda p: p.stem)
def test_mitred_edges_of_the_ready_design_share_no_more_than_a_strip_of_four_thicknesses(path: Path) -> None:
    files = written(ready_design(path))
    check_mitres(Wallet(files.json, cut_pieces(cuts(files.dxf))))


@pytest.mark.parametrize("overlap", [6.0, 8.0, 10.0])
@pytest.mark.parametrize("edge", [0.3, 0.5])
def test_mitred_edges_share_no_more_than_a_strip_of_four_thicknesses(overlap: float, edge: float) -> None:
    check_mitres(folded(overlap=overlap, edge=edge, band=overlap + 4))


def check_mitres(wallet: Wallet) -> None:
    shell, turned = mitred(wallet)
    rolled = shell.rolled["top"]
    length = sqrt(2) * (rolled.reach + rolled.overlap)  # of the mitre
    for area in laps(shell, flat(shell)):
        assert 0 < area <= length * 4 * rolled.thickness
    assert all(corner["gap"] == pytest.approx(1.5 * rolled.thickness) for corner in turned["corners"])


def test_without_the_mitre_whole_squares_would_lie_over_each_other() -> None:
    shell, _ = mitred(usual())
    square = shapely.box(*shell.contour.box)
    side = shell.rolled["top"].overlap
    # Each edge then reaches as far as the other lies inside the corner: a square of at least the overlap.
    assert laps(shell, square) == pytest.approx([side * side] * 4)
    assert min(laps(shell, square)) > 4 * max(laps(shell, flat(shell)))


@pytest.mark.parametrize(
    ("radius", "thickness", "printed", "tolerance"),
    [
        # US Navy training course NAVEDTRA 14119, p. 13-43, example 2: 1 in inside radius, 1/2 in plate, 180 degrees,
        # neutral line in the middle. Printed 3.925 in, pi taken as 3.14 (0.05 % low).
        (1.0, 0.5, 3.925, 0.0021),
    ],
)
def test_the_bend_of_a_turned_edge_is_the_published_bend_allowance(
    radius: float, thickness: float, printed: float, tolerance: float
) -> None:
    turn = turn_over(2 * radius, thickness, 0.0, 0.5)
    assert turn.arc == pytest.approx(printed, abs=tolerance)
    # A leg on either side of the bend, measured to the outside of it, is longer by radius and thickness.
    assert turn.allowance(0.0) == pytest.approx(printed - (radius + thickness), abs=tolerance)
    assert turn.arc == pytest.approx(pi * (radius + thickness / 2))
