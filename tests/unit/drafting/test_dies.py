"""Dies of a wallet: who shares one, what is held against the limits of a shop, and what is said of it."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
import yaml

from patternforge.drafting.die_curves import curve_words, curves, sharp_words
from patternforge.drafting.die_limits import GENERAL_SHOP, ShopLimits
from patternforge.drafting.die_pack import DiePack
from patternforge.drafting.die_words import EDGE, die_notes
from patternforge.drafting.dies import Die
from patternforge.drafting.purpose import CutFace, DieHoles, DieOptions, DraftingOptions, Mirrors
from patternforge.drafting.sheets import wallet_dies
from patternforge.drawing.model import Role
from patternforge.fit.findings import Verdict
from patternforge.geometry.corners import rounded_rectangle
from patternforge.pipeline.stages import design_at
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern

ROOT = Path(__file__).parents[3]
PUNCHED = DraftingOptions(die=DieOptions(DieHoles.PUNCHED))


@pytest.fixture(scope="module")
def two() -> Pattern:
    return drafted(design_at(ROOT / "designs" / "two-fold.yaml"))


def packed(pattern: Pattern, limits: ShopLimits = GENERAL_SHOP, **changes: Any) -> DiePack:
    dies = wallet_dies(pattern)
    return replace(DiePack(pattern, dies, tuple(f"{die.name}.dxf" for die in dies), limits), **changes)


def points(pack: DiePack, die: Die) -> list[str]:
    return [point for note in die_notes(pack, die) for point in note.points]


def test_eight_pieces_of_the_two_fold_wallet_take_four_dies_and_one_pair_is_mirrored(two: Pattern) -> None:
    dies = wallet_dies(two)
    assert [(die.name, die.count, die.hands) for die in dies] == [
        ("shell", 1, 1),
        ("note divider", 1, 1),
        ("left cards 3", 4, 1),
        ("left cards 1", 2, 2),
    ]
    assert [cut.over for cut in dies[-1].cuts] == [False, True]
    assert [die.symmetric for die in dies] == [True, True, True, False]
    assert packed(two).count_by_hand == 5


def test_mirror_images_have_dies_of_their_own_where_asked(two: Pattern) -> None:
    own = wallet_dies(two, DraftingOptions(die=DieOptions(mirrors=Mirrors.OWN)))
    assert [die.name for die in own] == ["shell", "note divider", "left cards 3", "left cards 1", "right cards 1"]
    assert all(not cut.over for die in own for cut in die.cuts)


def test_a_piece_cut_twice_counts_twice(two: Pattern) -> None:
    twice = replace(two, pieces=(replace(two.pieces[0], quantity=2), *two.pieces[1:]))
    assert wallet_dies(twice)[0].count == 2


def test_a_window_that_one_piece_has_and_its_like_has_not_parts_their_dies(two: Pattern) -> None:
    (*rest, last) = two.pieces
    like = next(die for die in wallet_dies(two) if last.name in [cut.piece.name for cut in die.cuts])
    windowed = replace(last, openings=(rounded_rectangle(30, 12, 60, 30, 2).cw(),))
    parted = wallet_dies(replace(two, pieces=(*rest, windowed)))
    assert len(like.cuts) > 1
    assert [cut.piece.name for die in parted for cut in die.cuts if die.name == last.name] == [last.name]


def test_the_side_that_lies_up_turns_with_the_leather_and_with_the_face_of_the_file(two: Pattern) -> None:
    front, back = packed(two), packed(two, face=CutFace.BACK)
    own, over = front.dies[-1].cuts
    assert [front.side_up(own), front.side_up(over)] == ["grain side up", "flesh side up"]
    assert [back.side_up(own), back.side_up(over)] == ["flesh side up", "grain side up"]


@pytest.mark.parametrize(
    ("radius", "verdict", "word"),
    [
        (0.0, Verdict.LOOK, "the shop's limit is not given: ask"),
        (2.0, Verdict.GOOD, "good"),
        (2.01, Verdict.NO, "NO, the shop cannot make it"),
    ],
)
def test_the_finest_is_held_against_the_shop(two: Pattern, radius: float, verdict: Verdict, word: str) -> None:
    pack = packed(two, ShopLimits("a shop", radius=radius))
    (fine,) = pack.fines(pack.dies[2])
    assert (fine.what, fine.verdict) == ("radius", verdict)
    assert fine.size == pytest.approx(2.0)
    assert fine.told.endswith(word)


def test_a_round_hole_is_held_against_the_punch_and_not_taken_for_a_slot() -> None:
    case = drafted(design_at(ROOT / "designs" / "strap-card-case.yaml"))
    pack = packed(case, ShopLimits("a shop", hole=4.0, gap=6.0))
    told = {fine.what: fine for fine in pack.fines(pack.dies[1])}
    assert told["round hole"].size == pytest.approx(3.5)
    assert told["round hole"].verdict is Verdict.NO
    assert "slot or notch" not in told


def test_stitch_holes_count_only_in_a_die_that_punches_them(two: Pattern) -> None:
    plain = packed(two)
    dies = wallet_dies(two, PUNCHED)
    punching = DiePack(two, dies, ("",) * len(dies), GENERAL_SHOP, (Role.HOLE, Role.OPENING, Role.OUTLINE))
    assert "round hole" not in [fine.what for fine in plain.fines(plain.dies[0])]
    assert {f.what: f.verdict for f in punching.fines(dies[0])} == {
        "radius": Verdict.LOOK,
        "leather between two cuts": Verdict.NO,
        "round hole": Verdict.GOOD,
    }
    assert "stitch holes: none in the die, and no pins" in points(plain, plain.dies[0])
    holes = len(two.piece("shell").holes)
    assert f"stitch holes in the die: {holes} round 1.00 mm" in points(punching, dies[0])


def test_the_general_limits_are_those_of_the_ready_table() -> None:
    table = yaml.safe_load((ROOT / "patternforge" / "machines" / "die-shop.yaml").read_text(encoding="utf-8"))
    said = {key: float(words.removesuffix(" mm")) for key, words in table["smallest"].items()}
    assert said == {"hole": GENERAL_SHOP.hole, "gap": GENERAL_SHOP.gap}


def test_curves_and_sharp_corners_are_listed_with_their_number(two: Pattern) -> None:
    tee = packed(two).dies[2].figure
    said = [curve_words(number, curve) for number, curve in enumerate(curves(tee))]
    assert said == ["a: R 2.00 mm, 2 x outward arc", "b: R 2.00 mm, 2 x inward arc"]
    assert sharp_words(tee) == "sharp corners of the outline: 4 outwards"
    assert all(
        tee_outline.contains(spot)
        for tee_outline in [two.piece("left cards 3").outline]
        for curve in curves(tee)
        for spot in curve.spots
    )


def test_every_proof_says_on_which_side_of_the_line_the_rule_stands(two: Pattern) -> None:
    pack = packed(two)
    for die in pack.dies:
        assert EDGE in die_notes(pack, die)
    assert "inside of the cutting edge stands on it" in EDGE.points[0]
    assert "die maker to judge" in EDGE.points[1]
