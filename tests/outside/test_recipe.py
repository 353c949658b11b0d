"""The fold rule against a wallet recipe in print."""

from __future__ import annotations

from math import pi

import pytest

from patternforge.leather.fold import arc_length, eased_length, inside_radius
from patternforge.units import MM_PER_INCH, MM_PER_OUNCE

# Public how-to "Custom Bi-Fold Wallet": a shell of 4-5 oz leather and a pigskin lining glued into it, both cut
# 9 3/8 in long, and a pigskin interior cut 9 1/8 in long. They are sewn to one edge all round, so that the quarter
# inch is all for the fold.
PUBLISHED = (9 + 3 / 8 - (9 + 1 / 8)) * MM_PER_INCH

# Assumed, for the recipe does not say: pigskin of 0.7 mm, neutral fibre in the middle, interior pockets that fill the
# fold by more than the interior's own stiffness (any such filling gives the same difference).
SHELL = 4.5 * MM_PER_OUNCE
PIGSKIN = 0.7
FILLING = 2.0

# What the recipe leaves open: half an ounce either way in the shell, 0.1 mm either way in the pigskin.
# By the rule, half a shell, a lining and half an interior lie between the neutral planes.
LEFT_OPEN = pi * (0.5 * MM_PER_OUNCE / 2 + 0.1 + 0.1 / 2)


def difference_by_the_rule() -> float:
    interior = arc_length(pi, inside_radius(FILLING, PIGSKIN, 0.5), PIGSKIN, 0.5)
    shell_gap = FILLING + 2 * PIGSKIN + 2 * PIGSKIN
    shell = arc_length(pi, inside_radius(shell_gap, SHELL, 0.5), SHELL, 0.5)
    return eased_length(shell, interior, 1.0) - interior


def test_a_published_two_fold_wallet_allows_what_the_rule_asks() -> None:
    assert pytest.approx(6.35) == PUBLISHED
    assert LEFT_OPEN < 0.8
    assert difference_by_the_rule() == pytest.approx(PUBLISHED, abs=LEFT_OPEN)


def test_the_rule_with_rounded_thicknesses_gives_six_point_one_millimetres() -> None:
    # The sum by hand: pi * (1.8 / 2 + 0.7 + 0.7 / 2).
    assert difference_by_the_rule() == pytest.approx(pi * (1.8 / 2 + 0.7 + 0.7 / 2), abs=0.03)
    assert difference_by_the_rule() == pytest.approx(6.1, abs=0.05)
