"""Hardware against what is in print, restated here by hand; most holes are common practice, no source."""

from __future__ import annotations

import pytest

from patternforge.leather.hardware import MM_PER_LIGNE, hardware

KINDS = hardware()


def test_a_ligne_is_a_fortieth_of_an_inch() -> None:
    # Button maker's page "International Standard"; sizes.com, "buttons". Not the French ligne of 2.2558 mm.
    assert pytest.approx(0.635) == MM_PER_LIGNE


@pytest.mark.parametrize(
    ("line", "width", "sold_as"),
    # Button maker's page "International Standard": width in mm, and the round figure it is sold under.
    [(16, 10.16, 10), (18, 11.43, 11), (20, 12.70, 12.5), (22, 13.97, 14), (24, 15.24, 15.5)],
)
def test_a_snap_is_as_wide_as_its_line_says(line: int, width: float, sold_as: float) -> None:
    cap = KINDS[f"snap-line-{line}"].cap
    assert cap == pytest.approx(width)
    assert cap == pytest.approx(sold_as, abs=0.45)


@pytest.mark.parametrize("line", [20, 24])
def test_a_snaps_holes_are_as_the_trade_has_them(line: int) -> None:
    # Common practice, no source: 4 to 5 mm for cap and socket, 3 to 4 mm for stud and post.
    cap, post = KINDS[f"snap-line-{line}"].holes
    assert 4 <= cap <= 5
    assert 3 <= post <= 4


def test_a_small_rivets_hole_is_no_larger_than_the_punch_that_fits_it() -> None:
    # A maker's note of March 2010 on asewinglife.blogspot.com: a 1/8 in punch fits small double-cap rivets.
    assert max(KINDS["rivet-8"].holes) <= 25.4 / 8


@pytest.mark.parametrize(("cap", "hole"), [(6, 2.5), (8, 3.0), (10, 3.5)])
def test_a_rivets_holes_are_as_the_trade_has_them(cap: float, hole: float) -> None:
    # Common practice, no source.
    kind = KINDS[f"rivet-{cap}"]
    assert (kind.cap, kind.holes) == (cap, (hole, hole))


@pytest.mark.parametrize("inside", [4, 5, 6])
def test_an_eyelets_hole_takes_its_barrel(inside: float) -> None:
    # Common practice, no source: eyelets of 4, 5, 6 mm inside want holes of 5, 6, 7 mm.
    assert KINDS[f"eyelet-{inside}"].holes == (inside + 1,)
