"""Gussets laid along their walls again from the files as written, and what that check is worth.

The strips are read by ``cut_strips``, which knows no formula of the program. Each check is shown to fail, too.
"""

from __future__ import annotations

from cmath import exp
from collections.abc import Callable
from copy import deepcopy
from dataclasses import replace
from functools import cache
from itertools import pairwise
from math import pi, radians, remainder, sin, tau
from pathlib import Path

import pytest

from patternforge.design.load import load_design
from patternforge.leather.material import Leather, Thickness
from patternforge.wallet.parts.profile import channel
from patternforge.wallet.spec import Design, GussetPart, HoleShape, HoleSpec, Side
from tests.outside.closing import Wallet
from tests.outside.cut_strips import Strip
from tests.outside.dxf_reading import Contour, Cut, CutPiece, cut_pieces, cuts
from tests.outside.written import DESIGNS, ready_design, written

GUSSETED = [path for path in DESIGNS if "gusset:" in path.read_text(encoding="utf-8")]
EVERY_GUSSETED = pytest.mark.parametrize("path", GUSSETED, ids=lambda path: path.stem)
POUCH = next(path for path in GUSSETED if path.stem == "coin-pouch")
SLITS = HoleSpec(HoleShape.SLIT, length=2.0, width=0.3, slant=40.0)


def folded(design: Design) -> Wallet:
    files = written(design)
    return Wallet(files.json, cut_pieces(cuts(files.dxf)))


@cache
def ready(path: Path) -> Wallet:
    """A ready design folded; nobody may change it."""
    return folded(ready_design(path))


@cache
def slit(path: Path) -> Wallet:
    """A ready design with slits for holes, folded."""
    design = ready_design(path)
    seams = tuple(replace(seam, stitching=replace(seam.stitching, hole=SLITS)) for seam in design.seams)
    return folded(replace(design, seams=seams))


def pouch(**asked: str) -> Wallet:
    """The coin pouch with other parameters."""
    return folded(load_design(POUCH.read_text(encoding="utf-8"), POUCH.name, asked))


def test_there_are_gussets_to_fold() -> None:
    assert sum(len(ready(path).strips) for path in GUSSETED) >= 7


@EVERY_GUSSETED
def test_stitches_of_a_strip_are_as_long_as_the_arcs_between_the_holes_of_its_wall(path: Path) -> None:
    """Arc = chord x (v / sin v), v half of what the seam turns by from hole to hole, as cut in the wall."""
    wallet = ready(path)
    headings = {(s["name"], h["index"]): h["heading"] for s in wallet.json["seams"] for h in s["holes"]}
    for strip in wallet.strips:
        for row in strip.rows:
            cut = sorted((h.index, h.at.real) for h in strip.holes if h.seam == row["seam"])
            layer = next(each for each in wallet.layers if any(h.seam == row["seam"] for h in each.holes))
            wall = {h.index: layer.undeveloped(h.flat) for h in layer.holes if h.seam == row["seam"]}
            total = 0.0
            for (a, x), (b, following) in pairwise(cut):
                half = remainder(radians(headings[row["seam"], b] - headings[row["seam"], a]), tau) / 2
                arc = abs(wall[b] - wall[a]) * (half / sin(half) if half else 1.0)
                assert abs(following - x) == pytest.approx(arc, abs=0.01)
                total += arc
            # Joined straight edges agree within 0.1 mm, curved ones within 0.3 mm: common practice, no source.
            assert abs(cut[-1][1] - cut[0][1]) == pytest.approx(total, abs=0.1)


@EVERY_GUSSETED
def test_both_rows_of_a_strip_are_counted_from_its_middle_outwards(path: Path) -> None:
    for strip in ready(path).strips:
        middles = {
            row["seam"]: (min(xs) + max(xs)) / 2
            for row in strip.rows
            for xs in [[h.at.real for h in strip.holes if h.seam == row["seam"]]]
        }
        assert max(middles.values()) == pytest.approx(min(middles.values()), abs=1e-6)


@pytest.mark.parametrize("depth", ["20 mm", "26.5 mm", "30 mm"])
@pytest.mark.parametrize("corner", ["16 mm", "24 mm"])
@pytest.mark.parametrize("side", ["0.6 mm", "1.1 mm"])
def test_a_pouch_of_any_depth_closes(depth: str, corner: str, side: str) -> None:
    assert pouch(depth=depth, round=corner, side=side).faults() == []


def test_a_pouch_whose_gusset_faces_inside_closes() -> None:
    design = ready_design(POUCH)
    parts = tuple(
        replace(part, showing=Side.INSIDE) if isinstance(part, GussetPart) else part for part in design.parts
    )
    seams = tuple(replace(seam, stitching=replace(seam.stitching, hole=SLITS)) for seam in design.seams)
    wallet = folded(replace(design, parts=parts, seams=seams))
    assert wallet.strips[0].json["placement"]["forward"] == -1
    assert wallet.faults() == []


def test_a_channel_is_laid_flat_as_in_print() -> None:
    """FAA airframe handbook, vol. 1, ch. 4: a U-channel of 1.00, 2.00 and 1.00 in, 0.040 in thick, bent round
    0.16 in, has flats of 0.80, 1.60 and 0.80 in. The bends follow the workshop formula (0.01743 R + 0.0078 T) A =
    0.2791 in each, or 0.2827 in with the neutral line in the middle.
    """
    for neutral, bend in ((0.5, 0.2827), (0.0078 / 0.01743, 0.2791)):
        inch = Leather("plate", Thickness(0.040, 0.040), neutral=neutral, min_radius=4.0)
        terms = channel(inch, 2.00, (1.00, 1.00)).width.terms
        assert [term.value for term in terms] == pytest.approx([0.80, bend, 1.60, bend, 0.80], abs=0.0005)


def test_the_strip_of_the_coin_pouch_reckoned_by_hand() -> None:
    # Round corners of 18 mm, 3 mm off the edge: seams of 45 + 15 pi / 2 + 56 + 15 pi / 2 + 45 mm, 3 mm more at both
    # ends. Leather of 0.8 mm bends round 0.4 mm and reaches 1.2 mm: flanges 3 + 2.7 - 1.2, web 22 - 2.4, two bends of
    # pi / 2 x 0.8 mm.
    x0, y0, x1, y1 = ready(POUCH).strips[0].cut.outline.box
    assert x1 - x0 == pytest.approx(45 + 56 + 45 + 15 * pi + 6, abs=0.001)
    assert y1 - y0 == pytest.approx(2 * 4.5 + 19.6 + 0.8 * pi, abs=0.001)


# What the checks are worth: files made wrong on purpose.


def with_strip(
    wallet: Wallet, strip: Strip, change: Callable[[complex], complex], some: Callable[[Cut], bool]
) -> Wallet:
    """The wallet with ``change`` done to the points of some cuts of one strip."""
    at = [piece["name"] for piece in wallet.json["pieces"]].index(strip.name)
    changed = []
    for cut in strip.cut.cuts:
        known = cut.contour
        moved = Contour(tuple(map(change, known.points)), known.bulges, known.closed)
        changed.append(replace(cut, contour=moved) if some(cut) else cut)
    return Wallet(wallet.json, (*wallet.cuts[:at], CutPiece(tuple(changed)), *wallet.cuts[at + 1 :]))


@EVERY_GUSSETED
@pytest.mark.parametrize(("by", "words"), [(0.1, "0.100 mm off the hole in"), (0.1j, "0.100 mm beside its row")])
def test_a_hole_of_a_strip_a_tenth_of_a_millimetre_off_is_found(path: Path, by: complex, words: str) -> None:
    wallet = ready(path)
    strip = wallet.strips[0]
    hole = strip.cut.holes[len(strip.cut.holes) // 3]
    found = with_strip(wallet, strip, lambda at: at + by, lambda cut: cut is hole).faults()
    assert found
    assert all(words in fault and strip.name in fault for fault in found)


@EVERY_GUSSETED
def test_a_strip_cut_as_its_mirror_image_is_found(path: Path) -> None:
    wallet = slit(path)
    strip = wallet.strips[0]
    width = strip.cut.outline.box[2]
    faults = with_strip(wallet, strip, lambda at: width - at.conjugate(), lambda cut: cut is not None).faults()
    assert any("slants by" in fault for fault in faults)


@EVERY_GUSSETED
def test_a_strip_a_tenth_of_a_millimetre_too_wide_is_found(path: Path) -> None:
    wallet = ready(path)
    strip = wallet.strips[0]
    wider = with_strip(wallet, strip, lambda at: at + 0.1j * (at.imag > 10), lambda cut: cut is not None).faults()
    assert any("is" in fault and "flat" in fault for fault in wider)


@EVERY_GUSSETED
def test_a_strip_drafted_for_thinner_leather_is_found(path: Path) -> None:
    wallet = ready(path)
    thicker = deepcopy(dict(wallet.json))
    for piece in thicker["pieces"]:
        if piece["name"] == wallet.strips[0].name:
            piece["thickness"] += 0.05
    assert any("bent round" in fault for fault in Wallet(thicker, wallet.cuts).faults())


@EVERY_GUSSETED
def test_a_hole_left_out_of_a_strip_in_both_files_is_found(path: Path) -> None:
    wallet = ready(path)
    strip = wallet.strips[0]
    json = deepcopy(dict(wallet.json))
    at = [piece["name"] for piece in json["pieces"]].index(strip.name)
    del json["pieces"][at]["holes"][4]
    gone = strip.cut.holes[4]
    without = CutPiece(tuple(cut for cut in strip.cut.cuts if cut is not gone))
    found = Wallet(json, (*wallet.cuts[:at], without, *wallet.cuts[at + 1 :])).faults()
    assert found == [f"{strip.name}: {len(strip.holes) - 1} holes for {len(strip.holes)} of its seams"]


def test_a_slit_of_a_strip_that_slants_the_wrong_way_is_found() -> None:
    wallet = slit(POUCH)
    strip = wallet.strips[0]
    hole = strip.cut.holes[10]
    turned = with_strip(
        wallet, strip, lambda at: hole.centre + (at - hole.centre) * exp(1j * radians(5)), lambda cut: cut is hole
    ).faults()
    assert len(turned) == 1
    assert "slants by" in turned[0]
