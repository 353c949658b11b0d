"""Wallets folded closed from the DXF file and ``pattern.json`` as written: everything that is to meet, meets.

The folding is done by ``closing``, which knows no formula of the program. Each check is shown to fail, too: on files
with one hole, one fold zone, one face or one thickness made wrong by the least that would spoil a wallet.
"""

from __future__ import annotations

from collections.abc import Callable
from copy import deepcopy
from dataclasses import replace
from functools import cache
from math import pi
from pathlib import Path

import pytest
from hypothesis import HealthCheck, assume, given, settings

from patternforge.design.load import load_design
from patternforge.errors import DraftError
from patternforge.wallet.spec import Across, Design, HoleShape, HoleSpec
from tests.outside.closing import MEET, Wallet
from tests.outside.cut_layers import Layer
from tests.outside.dxf_reading import Contour, Cut, CutPiece, cut_pieces, cuts
from tests.outside.random_wallets import wallets
from tests.outside.written import SEWN, compensated, ready_design, written

EVERY_DESIGN = pytest.mark.parametrize("path", SEWN, ids=lambda path: path.stem)
FOLDED = [path for path in SEWN if ready_design(path).body.folds]
CROSSED = [
    path
    for path in FOLDED
    if any(seam.over is None or seam.over[0] < seam.over[1] for seam in ready_design(path).seams)
]
EVERY_CROSSED_DESIGN = pytest.mark.parametrize("path", CROSSED, ids=lambda path: path.stem)
EVERY_FOLDED_DESIGN = pytest.mark.parametrize("path", FOLDED, ids=lambda path: path.stem)
SLITS = HoleSpec(HoleShape.SLIT, length=2.0, width=0.3, slant=40.0)


def folded(design: Design) -> Wallet:
    """The wallet as its files have it."""
    files = written(design)
    return Wallet(files.json, cut_pieces(cuts(files.dxf)))


@cache
def ready(path: Path, compensation: float = 1.0) -> Wallet:
    """A ready design folded; nobody may change it."""
    return folded(compensated(ready_design(path), compensation))


@cache
def slit(path: Path) -> Wallet:
    """A ready design with slits for holes, folded."""
    design = ready_design(path)
    seams = tuple(replace(seam, stitching=replace(seam.stitching, hole=SLITS)) for seam in design.seams)
    return folded(replace(design, stitching=replace(design.stitching, hole=SLITS), seams=seams))


def test_there_are_designs_to_fold() -> None:
    assert len(FOLDED) >= 4


@EVERY_DESIGN
def test_holes_and_edges_of_every_design_meet_at_compensation_1(path: Path) -> None:
    assert ready(path).faults() == []


@EVERY_DESIGN
def test_slits_of_every_design_slant_alike_in_all_pieces_seen_from_the_outside(path: Path) -> None:
    wallet = slit(path)
    slits = [hole for layer in wallet.layers for hole in layer.holes if hole.axis is not None]
    assert len(slits) == sum(len(layer.holes) for layer in wallet.layers) > 0
    assert wallet.faults() == []


@EVERY_FOLDED_DESIGN
@pytest.mark.parametrize("compensation", [0.0, 0.5, 1.2])
def test_edges_miss_by_their_share_of_pi_times_the_distance_of_the_fibres(path: Path, compensation: float) -> None:
    wallet = ready(path, compensation)
    for layer in wallet.layers:
        # Half circles about one centre: pi x the distance of a layer's fibre from that of the innermost one.
        bends = [wallet.bends[zone.fold][layer.part] for zone in layer.zones]
        needed = sum(bend.length - bend.innermost for bend in bends)
        if layer.zones:
            assert wallet.edge_miss(layer) == pytest.approx((compensation - 1) * needed, abs=MEET)
    assert wallet.faults() == []


@EVERY_CROSSED_DESIGN
@pytest.mark.parametrize("spread", [0.0, 5.0])
def test_holes_of_a_seam_eased_across_the_folds_meet_as_they_share_in_the_stretch(path: Path, spread: float) -> None:
    design = ready_design(path)
    eased = (replace(seam, across=Across.EASED, stop=None, spread=spread) for seam in design.seams)
    wallet = folded(replace(design, seams=tuple(eased)))
    places = [
        (zone, layer.undeveloped(hole.flat, spread).real)
        for layer in wallet.layers
        for zone in layer.zones
        for hole in layer.holes
    ]
    crosses = any(seam.over is None or seam.over[0] < seam.over[1] for seam in design.seams)
    # One stitch spans a fold much narrower than a stitch, as at the corners of a spine: no hole lies in its zone.
    wide = any(zone.x1 - zone.x0 > 0.85 * design.stitching.pitch for layer in wallet.layers for zone in layer.zones)
    assert any(zone.x0 < x < zone.x1 for zone, x in places) is (crosses and wide)
    assert wallet.faults() == []


def test_an_uncompensated_shell_ends_short_by_what_lies_between_the_fibres() -> None:
    wallet = ready(next(path for path in SEWN if path.stem == "two-fold"), 0.0)
    # Shell 1.2 mm and divider 0.8 mm, fibres in the middle, 6 notes of 0.11 mm between them: 1.66 mm apart.
    shell = wallet.layers[0]
    assert wallet.edge_miss(shell) == pytest.approx(-pi * (0.6 + 6 * 0.11 + 0.4), abs=0.001)


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(wallets())
def test_holes_and_edges_of_random_wallets_meet(text: str) -> None:
    try:
        wallet = folded(load_design(text, "drawn.yaml"))
    except DraftError:
        assume(False)
    assert wallet.faults() == []


@pytest.mark.parametrize("shape", ["tee", "full"])
@pytest.mark.parametrize("slots", [2, 3, 4, 5])
@pytest.mark.parametrize("show", [8, 12, 15])
def test_the_shell_goes_round_all_pieces_of_a_bank_where_most_lie_over_each_other(
    shape: str, slots: int, show: int
) -> None:
    text = next(path for path in SEWN if path.stem == "two-fold").read_text(encoding="utf-8")
    asked = {"slots": str(slots), "show": f"{show} mm", "inner": "1.2 mm"}
    wallet = folded(load_design(text.replace("shape: tee", f"shape: {shape}"), "two-fold.yaml", asked))
    assert sum(layer.part == "left cards" for layer in wallet.layers) == slots
    assert wallet.faults() == []


# What the checks are worth: files made wrong on purpose.


def with_layer(
    wallet: Wallet, layer: Layer, change: Callable[[complex], complex], some: Callable[[Cut], bool]
) -> Wallet:
    """The wallet with ``change`` done to the points of some cuts of one piece."""
    changed = tuple(_changed(cut, change) if some(cut) else cut for cut in layer.cut.cuts)
    at = [piece["name"] for piece in wallet.json["pieces"]].index(layer.name)
    return Wallet(wallet.json, (*wallet.cuts[:at], CutPiece(changed), *wallet.cuts[at + 1 :]))


def _changed(cut: Cut, change: Callable[[complex], complex]) -> Cut:
    known = cut.contour
    return replace(cut, contour=Contour(tuple(map(change, known.points)), known.bulges, known.closed))


def any_cut(cut: Cut) -> bool:
    return cut is not None


@EVERY_DESIGN
@pytest.mark.parametrize("by", [0.1, 0.1j])
def test_one_hole_a_tenth_of_a_millimetre_off_is_found(path: Path, by: complex) -> None:
    wallet = ready(path)
    layer = wallet.layers[-1]
    hole = layer.cut.holes[len(layer.cut.holes) // 2]
    found = with_layer(wallet, layer, lambda at: at + by, lambda cut: cut is hole).faults()
    assert found
    assert all("0.100 mm" in fault and layer.name in fault for fault in found)
    told = {fault.rsplit(", ", 1)[1] for fault in found}
    assert told - {"walked along the strip"} == {"laid open", "closed"}


@EVERY_FOLDED_DESIGN
@pytest.mark.parametrize("by", [0.2, -0.2])
def test_a_fold_zone_a_fifth_of_a_millimetre_too_long_or_short_is_found(path: Path, by: float) -> None:
    wallet = ready(path)
    layer = next(each for each in wallet.layers if each.zones)
    zone = layer.zones[0]
    middle = zone.x0 + zone.length / 2
    # Along the row on the piece, which lies turned in some designs and mirrored in all.
    way = next(step for step in (1, -1, 1j, -1j) if abs(layer.laid_open(step) - layer.laid_open(0) - 1) < 1e-9)
    longer = with_layer(
        wallet, layer, lambda at: at + way * by * (layer.laid_open(at).real > middle), any_cut
    ).faults()
    assert any("0.200 mm" in fault and "closed" in fault for fault in longer)
    assert any("0.200 mm" in fault and "laid open" in fault for fault in longer)
    assert any("right edge" in fault for fault in longer)


@EVERY_DESIGN
def test_a_piece_cut_as_its_mirror_image_is_found(path: Path) -> None:
    wallet = slit(path)
    layer = next(each for each in wallet.layers if each.holes)
    width = layer.cut.outline.box[2]
    assert with_layer(wallet, layer, lambda at: width - at.conjugate(), any_cut).faults()


@EVERY_DESIGN
def test_a_piece_that_would_show_its_wrong_face_is_found(path: Path) -> None:
    wallet = ready(path)
    other = deepcopy(dict(wallet.json))
    other["pieces"][0]["faces"] = "inside"
    assert Wallet(other, wallet.cuts).faults() == [f"{wallet.layers[0].name}: would show its wrong face"]


@EVERY_FOLDED_DESIGN
def test_leather_a_tenth_of_a_millimetre_thicker_than_drafted_for_is_found(path: Path) -> None:
    wallet = ready(path)
    thicker = deepcopy(dict(wallet.json))
    for leather in thicker["inputs"]["leathers"]:
        leather["drafted_thickness"] += 0.1
    for piece in thicker["pieces"]:
        piece["thickness"] += 0.1
    assert any("closed" in fault for fault in Wallet(thicker, wallet.cuts).faults())


FITTED = [path for path in FOLDED if any(fitting.meets for fitting in ready_design(path).fittings)]


@pytest.mark.parametrize("path", FITTED, ids=lambda path: path.stem)
@pytest.mark.parametrize(("off", "found"), [(0.25, False), (0.35, True)])
def test_a_half_of_hardware_a_third_of_a_millimetre_off_is_found(path: Path, off: float, found: bool) -> None:
    wallet = ready(path)
    json = deepcopy(dict(wallet.json))
    half = next(half for piece in json["pieces"] for half in piece["fittings"])
    half["y"] += off
    told = Wallet(json, wallet.cuts).faults()
    assert [f"{half['fitting']}: its halves lie 0.350 mm apart, closed"] * found == told


@EVERY_DESIGN
def test_a_hole_left_out_of_a_piece_is_found(path: Path) -> None:
    wallet = ready(path)
    layer = wallet.layers[-1]
    without = CutPiece(tuple(cut for cut in layer.cut.cuts if cut is not layer.cut.holes[3]))
    with pytest.raises(ValueError, match="holes are cut"):
        Wallet(wallet.json, (*wallet.cuts[:-1], without)).faults()


@EVERY_DESIGN
def test_a_hole_left_out_of_both_files_is_found(path: Path) -> None:
    wallet = ready(path)
    layer = wallet.layers[-1]
    places = [(hole.seam, hole.index) for hole in layer.holes]
    gone = next(i for i, place in enumerate(places) if places.count(place) == 1)
    cut = layer.cut.holes[gone]
    json = deepcopy(dict(wallet.json))
    del json["pieces"][-1]["holes"][gone]
    without = CutPiece(tuple(each for each in layer.cut.cuts if each is not cut))
    found = Wallet(json, (*wallet.cuts[:-1], without)).faults()
    assert found
    missed = ("no hole for the stitch", "goes through no piece", "goes through no wall", "two sides has no hole")
    assert all(any(words in fault for words in missed) for fault in found)
