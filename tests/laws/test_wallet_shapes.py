"""Laws of what is cut out, set in holes and wrapped round: reckoned here by hand from the flat pieces."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from patternforge.wallet.assemble import drafted
from patternforge.wallet.spec import Edge, Opening, Spot
from tests.shapes_built import SNAP, strap_case, windowed

THICKNESS = st.floats(0.3, 2.5)
COUNT = st.integers(1, 6)
LEATHER = st.floats(0.8, 1.6)
LINING = 0.8


def bend(enclosed: float, leather: float) -> float:
    """Length of the middle of a leather closed round ``enclosed`` mm: half a circle (US Navy, NAVEDTRA 14119)."""
    return math.pi * (max(enclosed / 2, leather / 2) + leather / 2)


@settings(max_examples=60, deadline=None)
@given(thickness=THICKNESS, count=COUNT, leather=LEATHER, left=st.floats(9.0, 30.0))
def test_halves_of_a_snap_lie_over_each_other_once_the_case_is_closed(
    thickness: float, count: int, leather: float, left: float
) -> None:
    """Both are followed from where their piece lies on the back, round the bends it must make, onto the front."""
    fitting = replace(SNAP, spot=Spot(0, (Edge.LEFT, left)))
    pattern = drafted(strap_case(thickness, count, leather, fittings=(fitting,)))
    strap, shell = pattern.piece("strap"), pattern.piece("shell")
    front = LINING + count * thickness
    # The strap lies on the back from its sewn end, 102 - 4 - 70 mm from the bend, and shows outside: x runs back.
    past_strap_bend = strap.fittings[0].at.x - 28.0 - bend(2 * leather + front, leather)
    # The shell begins on the back 2 mm beside the strap's bend, and runs 100 mm to its own.
    past_shell_bend = shell.width - shell.fittings[0].at.x - 100.0 - bend(front, leather)
    assert past_strap_bend == pytest.approx(102.0 - past_shell_bend, abs=0.3)
    assert past_strap_bend == pytest.approx(45.0 - left, abs=1e-6)


@settings(max_examples=40, deadline=None)
@given(thickness=THICKNESS, count=COUNT, more=st.integers(1, 6), leather=LEATHER)
def test_a_strap_grows_by_pi_times_half_of_what_the_contents_grow(
    thickness: float, count: int, more: int, leather: float
) -> None:
    thin = drafted(strap_case(thickness, count, leather)).piece("strap").width
    thick = drafted(strap_case(thickness, count + more, leather)).piece("strap").width
    assert thick - thin == pytest.approx(math.pi * more * thickness / 2)


@settings(max_examples=40, deadline=None)
@given(width=st.floats(5.0, 60.0), height=st.floats(5.0, 26.0), round_share=st.floats(0.0, 1.0))
def test_the_area_of_an_opening_leaves_its_piece(width: float, height: float, round_share: float) -> None:
    corner = round_share * min(width, height) / 2
    cut = drafted(windowed(Opening("window", Spot(0, None, (Edge.BOTTOM, 20.0)), width, height, corner)))
    whole = drafted(windowed())
    taken = width * height - (4 - math.pi) * corner**2
    front = whole.piece("cards 1")
    assert cut.piece("cards 1").area == pytest.approx(abs(front.outline.area) - taken)
