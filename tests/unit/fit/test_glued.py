"""What glue alone holds: on which piece, and that it is a piece that seams hold in the end."""

from __future__ import annotations

from dataclasses import replace

from patternforge.drafting.assembly_words import group_name, step_words
from patternforge.fit.glued import glued_pieces
from patternforge.fit.layout import Layout, layout
from patternforge.fit.making import Work, making_steps
from patternforge.fit.order import SewingStep, sewing_order
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import Edge, Fastening, Film, FoldSpec, Held, LayerPart, Opening, Part, Spot
from tests.unit.fit.found import GOOD, NO, finding, findings, small
from tests.unit.wallet.built import RIM, leather, shell

LINING = LayerPart("lining", "inner", 0, 0)
NARROW = shell(1, inset=((Edge.RIGHT, 60.0),))  # on x 0 to 40
LEFT = replace(RIM, along=(Edge.LEFT,))
AREA = "area glued down"


def laid(pattern: Pattern) -> Layout:
    return layout(pattern, {each.role: each for each in pattern.design.leathers})


def glued(name: str, left: float = 20.0, right: float = 20.0, last: int = 0) -> LayerPart:
    """A layer on the panels up to ``last`` that glue alone holds, so far inside the body at left and right."""
    inset = ((Edge.LEFT, left), (Edge.RIGHT, right), (Edge.BOTTOM, 20.0), (Edge.TOP, 20.0))
    return LayerPart(name, "inner", 0, last, inset=inset, fastened=Fastening.GLUED)


def held(*parts: Part) -> list[tuple[str, str]]:
    """What is glued on what, in the order of gluing."""
    return list(glued_pieces(laid(small(*parts))).items())


def test_what_is_glued_outside_of_all_is_joined_to_the_nearest_piece_inside() -> None:
    assert held(glued("patch"), shell(1), LINING) == [("patch", "shell")]


def test_two_glued_layers_outside_of_all_are_joined_to_the_wallet_and_not_to_each_other_alone() -> None:
    parts = (glued("emblem", 30, 30), glued("overlay"), shell(1), LINING)
    assert held(*parts) == [("overlay", "shell"), ("emblem", "overlay")]
    found = laid(small(*parts))
    assert sewing_order(found).steps == (SewingStep("rim", (("emblem", "overlay", "shell"), ("lining",))),)


def test_two_glued_layers_inside_of_a_sewn_one_lie_on_each_other_and_on_it() -> None:
    parts = (shell(1), glued("padding"), glued("more", 30, 30), LINING)
    assert held(*parts) == [("padding", "shell"), ("more", "padding")]


def test_a_layer_that_only_the_next_one_holds_is_not_what_that_one_is_glued_on() -> None:
    """The shell lies outside of the wide layer and beside the patch."""
    parts = (NARROW, glued("patch", 45, 10), glued("wide", 10, 10))
    assert held(*parts) == [("wide", "shell"), ("patch", "wide")]


def alone(*parts: Part) -> Pattern:
    """The parts sewn along the left only."""
    return small(*parts, seams=(LEFT,))


def test_a_layer_beside_all_other_leather_is_glued_to_nothing() -> None:
    pattern = alone(NARROW, glued("patch", 45, 0))
    assert glued_pieces(laid(pattern)) == {}
    found = finding(pattern, AREA)
    assert (found.measured, found.verdict, found.where) == (0.0, NO, "patch, glued to nothing")
    assert found.remedy == "move patch onto a piece that is held, or let a seam go through it"


def test_a_layer_that_only_shares_an_edge_with_another_is_glued_to_nothing() -> None:
    assert finding(alone(NARROW, glued("patch", 40, 0)), AREA).verdict is NO


def test_two_layers_on_each_other_beside_all_other_leather_are_both_glued_to_nothing() -> None:
    pattern = alone(NARROW, glued("patch", 45, 0), glued("emblem", 50, 10))
    assert [(each.where, each.verdict) for each in findings(pattern, AREA)] == [
        ("patch, glued to nothing", NO),
        ("emblem, glued to nothing", NO),
    ]


def test_a_layer_whose_middle_lies_beside_another_is_glued_on_what_reaches_under_it() -> None:
    """By hand: from x 30 to the shell's edge at 40, 40 mm high."""
    found = finding(alone(NARROW, glued("patch", 30, 0)), AREA)
    assert (round(found.measured, 6), found.verdict, found.where) == (400.0, GOOD, "patch on shell")


def opened(width: float) -> LayerPart:
    """A shell with an opening in its middle, 50 mm high."""
    return shell(1, openings=(Opening("gap", Spot(0), width, 50.0),))


def test_a_layer_whose_middle_is_over_an_opening_is_glued_round_it() -> None:
    """By hand: 60 x 40 mm, of which 30 x 40 mm lie over the opening."""
    found = finding(small(opened(30.0), glued("patch")), AREA)
    assert (round(found.measured, 6), found.verdict, found.where) == (1200.0, GOOD, "patch on shell")


def test_a_layer_inside_an_opening_passes_through_it_to_the_next_piece_or_is_glued_to_nothing() -> None:
    assert held(glued("patch"), opened(62.0), LINING) == [("patch", "lining")]
    assert finding(small(opened(62.0), glued("patch")), AREA).verdict is NO


def test_a_film_is_held_by_its_own_seam_and_is_no_ground_for_glue() -> None:
    window = Opening("window", Spot(0), 30.0, 14.0, film=Film("film", overlap=7.0, margin=3.0))
    padding = replace(glued("padding"), openings=(window,))
    pattern = small(
        shell(1), padding, LINING, leathers=(leather("outer", 1.2), leather("inner", 0.8), leather("film", 0.2))
    )
    assert len(pattern.pieces) == 4
    assert glued_pieces(laid(pattern)) == {"padding": "shell"}


def test_a_wallet_in_which_nothing_is_glued_says_nothing_of_glue() -> None:
    assert findings(small(shell(1), LINING), AREA) == []


def across(*folds: FoldSpec) -> Layout:
    """A shell, padding and a lining over all panels of a wallet with these folds."""
    last = len(folds)
    lining = LayerPart("lining", "inner", 0, last)
    widths = (100.0,) * (last + 1)
    return laid(small(shell(last + 1), glued("pad", last=last), lining, widths=widths, folds=folds))


def gluing(found: Layout) -> str:
    (step,) = (each for each in making_steps(found, sewing_order(found)) if each.work is Work.LAY)
    return step_words(found, step)


def test_what_crosses_a_fold_is_not_glued_in_it() -> None:
    assert gluing(across()) == "Glue pad on shell all over; no seam holds it."
    assert gluing(across(FoldSpec())) == "Glue pad on shell all over, but not in the fold; no seam holds it."
    assert gluing(across(FoldSpec(), FoldSpec())).startswith("Glue pad on shell all over, but not in the folds;")


def test_pieces_are_said_to_be_glued_only_where_glue_alone_holds_all_but_one_of_them() -> None:
    found = laid(small(shell(1), glued("padding"), glued("more", 30, 30), LINING))
    assert group_name(found, ("shell", "padding", "more")) == "shell with what is glued to it"
    assert group_name(found, ("shell", "padding", "lining")) == "shell with what is sewn to it"
    two = laid(small(shell(1), glued("outer pad"), LINING, glued("inner pad")))
    assert glued_pieces(two) == {"outer pad": "shell", "inner pad": "lining"}
    assert group_name(two, ("shell", "lining")) == "shell with what is sewn to it"


def test_padding_before_what_a_layer_holds_is_no_wall_that_seams_close() -> None:
    """By hand: the seam stands 4 mm off either edge of 100 mm."""
    divider = replace(LINING, holds=(Held("card", 1),))
    pattern = small(shell(1), glued("padding"), divider)
    assert finding(pattern, "clear length on the shortest wall").measured == 92.0
    assert findings(pattern, "item rests on stitches") == []
