"""Whether letters are seen and stand on even ground: shares and steps that can be read off.

Panels are 100 x 80 mm; the box is 20 x 8 mm. A pocket's mouth stands at 44 mm, its card reaches from 4 to 54 mm.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from patternforge.fit.findings import Finding, Verdict
from patternforge.leather.material import MadeOf
from patternforge.wallet.assemble import drafted
from patternforge.wallet.finishing import PatchSkive, TurnedSpec
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import Edge, FoldSpec, Initials, LayerPart, Load, Opening, Side, Spot
from tests.unit.fit.found import GOOD, LOOK, SHARP, finding, findings
from tests.unit.wallet.built import bank, leather, pocket, shell, wallet

BOX = Initials("name", "AB", "shell", Spot(0), 20.0, 8.0)
LINING = LayerPart("lining", "inner", 0, 0)
TOP = replace(SHARP, along=(Edge.TOP,))
OPEN, CLOSED, STEP = "letters hidden, laid open", "letters hidden, closed", "step in the ground behind letters"


def on(part: str, y: float, panel: int = 0, x: float = 50.0) -> Initials:
    return replace(BOX, part=part, spot=Spot(panel, (Edge.LEFT, x), (Edge.BOTTOM, y)))


def lettered(box: Initials, *parts: Any, panels: int = 1, **changes: Any) -> Pattern:
    sizes = {"widths": (100.0,) * panels, "folds": (FoldSpec(),) * (panels - 1), "seams": (SHARP,)}
    return drafted(wallet(*parts, **{**sizes, "initials": (box,), **changes}))


def seen(found: Finding) -> tuple[float, Verdict]:
    assert bool(found.remedy) is (found.verdict is not GOOD)
    return round(found.measured, 3), found.verdict


EMPTY: dict[str, Any] = {"load": Load(0.0, 0.0)}


@pytest.mark.parametrize(
    ("y", "load", "share"),
    # The pocket covers what lies below 44 mm, a card in it what lies below 54 mm.
    [(20.0, {}, 100.0), (44.0, EMPTY, 50.0), (46.0, EMPTY, 25.0), (44.0, {}, 100.0), (54.0, {}, 50.0)],
)
def test_what_lies_over_letters_hides_its_share_of_them(y: float, load: dict[str, Any], share: float) -> None:
    found = finding(lettered(on("lining", y), shell(1), LINING, pocket(), **load), OPEN)
    assert seen(found) == (share, LOOK)
    assert "pocket" in found.remedy or "card" in found.remedy


@pytest.mark.parametrize(("part", "y"), [("lining", 48.0), ("lining", 60.0), ("pocket", 20.0)])
def test_letters_beside_or_before_everything_are_seen(part: str, y: float) -> None:
    assert seen(finding(lettered(on(part, y), shell(1), LINING, pocket(), **EMPTY), OPEN)) == (0.0, GOOD)


def test_a_card_that_stands_out_of_the_pocket_before_hides_letters_on_the_one_behind() -> None:
    # Mouths at 44 and 54 mm, the card in front reaches up to 54.
    pattern = lettered(on("bank", 49.0), shell(1), LINING, bank(slots=2))
    assert seen(finding(pattern, OPEN)) == (100.0, LOOK)


def test_letters_are_seen_through_a_window_and_through_a_clear_sheet() -> None:
    window = Opening("window", Spot(0, None, (Edge.BOTTOM, 20.0)), 20.0, 4.0)
    through = lettered(on("lining", 20.0), shell(1), LINING, pocket(openings=(window,)), **EMPTY)
    assert seen(finding(through, OPEN)) == (50.0, LOOK)
    film = replace(leather("inner", 0.8), made_of=MadeOf.FILM)
    clear = lettered(
        on("shell", 40.0), replace(LINING, showing=Side.OUTSIDE), shell(1), leathers=(leather("outer", 1.2), film)
    )
    assert seen(finding(clear, OPEN)) == (0.0, GOOD)


def test_an_outer_face_is_hidden_only_by_what_lies_outside_it() -> None:
    flap = LayerPart("patch", "inner", 0, 0, inset=((Edge.TOP, 40.0),), showing=Side.OUTSIDE)
    beneath = shell(1, showing=Side.OUTSIDE)
    assert seen(finding(lettered(on("shell", 40.0), flap, beneath), OPEN)) == (50.0, LOOK)
    assert seen(finding(lettered(on("shell", 60.0), flap, beneath), OPEN)) == (0.0, GOOD)


def test_an_inner_face_is_not_judged_closed() -> None:
    assert findings(lettered(on("lining", 40.0), shell(1), LINING), CLOSED) == []


@pytest.mark.parametrize(("panel", "share"), [(0, 0.0), (1, 100.0), (2, 0.0)])
def test_a_panel_folded_in_hides_its_outer_face(panel: int, share: float) -> None:
    """Three panels, the right one folded on the middle one, the left one over both: its inside on their outside.

    The right panel's outer face lies under the left panel.
    """
    pattern = lettered(on("shell", 40.0, panel), shell(3), panels=3, closing=(2, 1))
    hidden = {0: 0.0, 1: 0.0, 2: 100.0}[panel]
    assert seen(finding(pattern, CLOSED)) == (hidden, LOOK if hidden else GOOD)


def test_a_strap_hides_what_it_comes_to_lie_on() -> None:
    """A strap on the outside of panel 1 runs over panel 0, 40 mm wide, which closes last over the front, panel 2.

    Laid open the front is 100 mm from the middle panel's fold on; closed, the strap reaches 40 mm over it.
    """
    strap = LayerPart("strap", "outer", 0, 1, inset=((Edge.BOTTOM, 30.0), (Edge.TOP, 30.0)), showing=Side.OUTSIDE)
    body = shell(3, first=1, showing=Side.OUTSIDE)
    at_fold, far = 85.0, 30.0  # from the front's own fold; the strap comes from the other side
    parts = (strap, body)
    sizes: dict[str, Any] = {"panels": 3, "closing": (2, 1), "widths": (40.0, 100.0, 100.0)}
    covered = lettered(on("shell", 40.0, 2, at_fold), *parts, **sizes)
    assert seen(finding(covered, CLOSED)) == (100.0, LOOK)
    assert "strap" in finding(covered, CLOSED).remedy
    assert seen(finding(lettered(on("shell", 40.0, 2, far), *parts, **sizes), CLOSED)) == (0.0, GOOD)
    # The strap is 20 mm high from 30 to 50; a box from 46 to 54 is half under it.
    assert seen(finding(lettered(on("shell", 50.0, 2, at_fold), *parts, **sizes), CLOSED)) == (50.0, LOOK)
    # Its end lies 40 mm from the fold it comes round, 60 mm from the front's: half of a box 50 to 70 mm from it.
    assert seen(finding(lettered(on("shell", 40.0, 2, 60.0), *parts, **sizes), CLOSED)) == (50.0, LOOK)


def test_a_face_beyond_a_fold_left_open_is_not_hidden() -> None:
    pattern = lettered(on("shell", 40.0, 0), shell(2), panels=2, folds=(FoldSpec(90.0),))
    assert seen(finding(pattern, CLOSED)) == (0.0, GOOD)


@pytest.mark.parametrize(
    ("y", "step", "verdict"),
    [(60.0, 0.0, GOOD), (20.0, 0.0, GOOD), (44.0, 0.8, LOOK), (39.9, 0.0, GOOD), (48.1, 0.0, GOOD)],
)
def test_an_edge_behind_letters_makes_a_step_as_high_as_its_leather(y: float, step: float, verdict: Verdict) -> None:
    found = finding(lettered(on("shell", y), shell(1), LINING, pocket(), **EMPTY), STEP)
    assert seen(found) == (step, verdict)
    assert ("pocket" in found.remedy) is (verdict is LOOK)


def test_two_edges_one_over_the_other_make_one_high_step() -> None:
    parts = (shell(1), LINING, pocket(), pocket(name="second"))
    assert seen(finding(lettered(on("shell", 44.0), *parts, **EMPTY), STEP)) == (1.6, LOOK)


def test_a_hole_behind_letters_is_a_step_too() -> None:
    window = Opening("window", Spot(0, None, (Edge.BOTTOM, 40.0)), 10.0, 4.0)
    found = finding(lettered(on("shell", 40.0), shell(1), replace(LINING, openings=(window,))), STEP)
    assert seen(found) == (0.8, LOOK)


def test_what_lies_before_letters_is_no_ground() -> None:
    # On the lining at 50 mm the bank lies before, the shell behind.
    assert seen(finding(lettered(on("lining", 44.0), shell(1), LINING, pocket(), **EMPTY), STEP)) == (0.0, GOOD)


def test_a_pared_patch_under_letters_is_a_step() -> None:
    # A patch of 10 x 4 mm in the middle of the box is pared from 1.2 to 0.7 mm.
    patch = PatchSkive(Spot(0, (Edge.LEFT, 50.0), (Edge.BOTTOM, 40.0)), 10.0, 4.0, 0.7)
    found = finding(lettered(on("shell", 40.0), shell(1, skives=(patch,)), LINING), STEP)
    assert seen(found) == (0.5, LOOK)
    assert seen(finding(lettered(on("shell", 60.0), shell(1, skives=(patch,)), LINING), STEP)) == (0.0, GOOD)


@pytest.mark.parametrize(("y", "verdict"), [(20.0, GOOD), (10.0, LOOK)])
def test_leather_turned_in_behind_letters_is_a_step(y: float, verdict: Verdict) -> None:
    """The lower edge of the shell is turned in over the lining: some 9 mm of it lie behind."""
    turned = TurnedSpec((Edge.BOTTOM,), overlap=8.0, over=("lining",))
    pattern = lettered(on("shell", y), shell(1, turned=(turned,)), LINING, seams=(TOP,))
    found = finding(pattern, STEP)
    assert seen(found)[1] is verdict
    assert found.measured == pytest.approx(1.2 if verdict is LOOK else 0.0)


def test_the_edge_is_the_finished_one_once_it_is_turned_in() -> None:
    """As cut the shell reaches some 10 mm further down."""
    turned = TurnedSpec((Edge.BOTTOM,), overlap=8.0, over=("lining",))
    pattern = lettered(on("shell", 6.0), shell(1, turned=(turned,)), LINING, seams=(TOP,))
    assert seen(finding(pattern, "letters clear of the edge")) == (2.0, LOOK)
    assert pattern.piece("shell").height > 88.0
