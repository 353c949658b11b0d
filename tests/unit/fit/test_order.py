"""The order of sewing, on wallets small enough to try every order."""

from __future__ import annotations

from dataclasses import replace
from itertools import permutations

from hypothesis import given, settings

from patternforge.drafting.assembly_words import step_words
from patternforge.fit.glued import glued_pieces
from patternforge.fit.judge import fit
from patternforge.fit.layout import Layout, layout
from patternforge.fit.making import Work, making_steps
from patternforge.fit.order import Blocked, SewingStep, order_findings, sewing_order
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import Edge, Fastening, LayerPart, Opening, SeamSpec, Spot
from tests.laws.designs import drafts
from tests.unit.fit.found import GOOD, NO, SHARP, finding, small
from tests.unit.wallet.built import RIM, bank, pocket, shell, wallet
from tests.unit.wallet.pouches import BACK, FRONT, SIDE, accordion, pouch, seam

LINING = LayerPart("lining", "inner", 0, 0)


def laid(pattern: Pattern) -> Layout:
    return layout(pattern, {leather.role: leather for leather in pattern.design.leathers})


def test_stop_rows_are_sewn_from_the_rear_slot_to_the_front_and_the_rim_last() -> None:
    order = sewing_order(laid(small(shell(1), LINING, bank())))
    assert [step.seam for step in order.steps] == ["bank stop 3", "bank stop 2", "rim"]
    assert order.steps[0] == SewingStep("bank stop 3", (("lining",), ("bank 3",)))
    assert order.steps[1].groups == (("lining", "bank 3"), ("bank 2",))
    assert order.steps[2].groups == (("shell",), ("lining", "bank 3", "bank 2"), ("bank 1",))
    assert order.blocked == ()


def test_a_wallet_that_can_be_sewn_reads_good() -> None:
    found = finding(small(shell(1), LINING, bank()), "seams closed off before they can be sewn")
    assert (found.measured, found.verdict, found.where) == (0, GOOD, "whole wallet")


def crossed() -> Pattern:
    """Two patches on either side of a shell, each sewn to it by a seam that the other one covers."""
    inset = ((Edge.LEFT, 20.0), (Edge.RIGHT, 20.0))
    inner, outer = (LayerPart(name, "inner", 0, 0, inset=inset) for name in ("front", "back"))
    seams = (
        RIM,
        SeamSpec("one", (Edge.BOTTOM,), margin=6.0, end=22.0, through=("shell", "front"), stitching=RIM.stitching),
        SeamSpec("two", (Edge.TOP,), margin=6.0, end=22.0, through=("shell", "back"), stitching=RIM.stitching),
    )
    return small(outer, shell(1), inner, seams=seams)


def test_patches_that_cover_each_others_seams_cannot_be_sewn() -> None:
    pattern = crossed()
    order = sewing_order(laid(pattern))
    assert [step.seam for step in order.steps] == ["rim"]
    assert {(each.seam, each.piece) for each in order.blocked} >= {("one", "back"), ("two", "front")}
    found = list(order_findings(laid(pattern)))
    assert {each.verdict for each in found} == {NO}
    assert any("let the seam go through back" in each.remedy for each in found)
    assert any(each.verdict is NO for each in fit(pattern))


def test_a_seam_that_goes_through_both_patches_is_not_closed_off() -> None:
    pattern = crossed()
    seams = tuple(replace(seam, through=()) for seam in pattern.design.seams)
    order = sewing_order(laid(small(*pattern.design.parts, seams=seams)))
    assert order.blocked == ()


def padded(inset: float) -> Layout:
    """A lining sewn to a shell, padding glued between them as far inside their edges."""
    edges = tuple((edge, inset) for edge in Edge)
    padding = LayerPart("padding", "inner", 0, 0, inset=edges, fastened=Fastening.GLUED)
    return laid(small(shell(1), padding, LayerPart("lining", "inner", 0, 0)))


def test_padding_glued_beside_the_stitches_is_joined_before_the_seam_and_in_nobodys_way() -> None:
    found = padded(8.0)
    assert glued_pieces(found) == {"padding": "shell"}
    assert sewing_order(found).steps == (SewingStep("rim", (("shell", "padding"), ("lining",))),)
    assert sewing_order(found).blocked == ()
    first, second, *_ = making_steps(found, sewing_order(found))
    assert (first.work, first.pieces, first.groups) == (Work.LAY, ("shell", "padding"), (("shell",), ("padding",)))
    assert step_words(found, first) == "Glue padding on shell all over; no seam holds it."
    assert step_words(found, second).startswith("Lay lining on shell with what is glued to it.")


def test_padding_glued_over_the_holes_closes_the_seam_off() -> None:
    assert sewing_order(padded(2.0)).blocked == (Blocked("rim", "padding"),)


def test_an_opening_over_a_hole_leaves_it_free() -> None:
    assert Blocked("one", "back") in sewing_order(laid(crossed())).blocked
    gap = Opening("gap", Spot(0, above=(Edge.BOTTOM, 6.0)), 58.0, 4.0, border=0.0)
    back, *others = crossed().design.parts
    assert isinstance(back, LayerPart)
    opened = small(replace(back, openings=(gap,)), *others, seams=crossed().design.seams)
    order = sewing_order(laid(opened))
    assert order.blocked == ()
    # The front still covers the other seam's holes, so that one comes before whatever joins the front.
    assert order.steps[0].seam == "two"


def is_open(found: Layout, order: tuple[str, ...]) -> bool:
    """Whether seams can be sewn in that order, piece by piece and hole by hole."""
    seams = {seam.name: seam for seam in found.pattern.seams}
    joined = {piece.name: {piece.name} for piece in found.pattern.pieces}
    for name in order:
        sewn = set(seams[name].pieces)
        for hole in seams[name].holes:
            for piece in found.pattern.pieces:
                covers = piece.name not in sewn and piece.outline.contains(piece.placement.to_piece(hole.at))
                shares = any(hole.at.x >= found.pattern.panels[p].x0 - 50 for p in piece.placement.panels)
                if covers and shares and joined[piece.name] & sewn:
                    return False
        group: set[str] = set().union(*(joined[each] for each in sewn))
        for each in group:
            joined[each] = group
    return True


def is_small(pattern: Pattern) -> bool:
    return 1 < len(pattern.seams) <= 5 and not pattern.folds


@settings(max_examples=40)
@given(drafts(lambda design: len(design.body.panels) == 1))
def test_an_order_is_found_exactly_when_one_of_all_orders_works(pattern: Pattern) -> None:
    found = laid(pattern)
    order = sewing_order(found)
    if order.blocked:
        if is_small(pattern):
            names = [seam.name for seam in pattern.seams]
            assert not any(is_open(found, tried) for tried in permutations(names))
    else:
        assert is_open(found, tuple(step.seam for step in order.steps))


def test_a_pocket_alone_needs_one_seam() -> None:
    order = sewing_order(laid(small(shell(1), pocket(), seams=(SHARP,))))
    assert order.steps == (SewingStep("rim", (("shell",), ("pocket",))),)


def test_a_wall_that_a_gusset_keeps_away_closes_no_seam_off() -> None:
    assert sewing_order(laid(drafted(pouch()))).blocked == ()
    assert sewing_order(laid(drafted(accordion()))).blocked == ()


def test_a_gusset_is_sewn_to_its_wall_before_what_lies_between_them_is() -> None:
    seams = (
        seam("back seam", "back", "side"),
        seam("front seam", "side", "front"),
        seam("base", "back", "lining", along=(Edge.BOTTOM,)),
    )
    order = sewing_order(laid(drafted(wallet(BACK, LINING, SIDE, FRONT, seams=seams))))
    names = [step.seam for step in order.steps]
    assert order.blocked == ()
    assert names.index("back seam") < names.index("base")
