"""Bend lengths against worked examples in print.

No bend table for leather is in print, but the rule is the workshop's bend allowance, angle * (R + K * T), with R the
inside radius, T the thickness and K the place of the neutral fibre in thicknesses. So sheet-metal practice checks
the formula; it says nothing about the K of leather.
"""

from __future__ import annotations

from math import log10, pi, radians

import pytest

from patternforge.leather.fold import arc_length

WORKSHOP_NEUTRAL = 0.0078 / 0.017453  # of the formula (0.017453 R + 0.0078 T) A, A in degrees


@pytest.mark.parametrize(
    ("radius", "thickness", "degrees", "neutral", "printed", "tolerance"),
    [
        # US Navy training course NAVEDTRA 14119, p. 13-43, example 1: 3 in radius, 1/2 in plate, 90 degrees, neutral
        # line in the middle. Printed 5.10 in, cut off after two decimals.
        pytest.param(3.0, 0.5, 90, 0.5, 5.10, 0.01, id="NAVEDTRA 14119 example 1"),
        # The same, example 2: 1 in radius, 180 degrees. Printed 3.925 in, pi taken as 3.14 (0.05 % low).
        pytest.param(1.0, 0.5, 180, 0.5, 3.925, 0.0021, id="NAVEDTRA 14119 example 2"),
        # Workshop formula in a machine maker's article on bend allowance: R = T = 0.250 in, 160 degrees, 1.010 in.
        pytest.param(0.25, 0.25, 160, WORKSHOP_NEUTRAL, 1.010, 0.0005, id="workshop formula, 160 degrees"),
        # calcady.com, bend allowance: R = T = 0.125 in, 90 degrees, K 0.44, 0.2827 in.
        pytest.param(0.125, 0.125, 90, 0.44, 0.2827, 0.00005, id="K of 0.44"),
        # From memory, a manufacturing textbook's chapter on bending: R 4.75 mm, T 3.2 mm, 60 degrees, K 0.33;
        # 6.08 mm, so that a blank with flats of 38 and 25 mm is 69.08 mm long.
        pytest.param(4.75, 3.2, 60, 0.33, 69.08 - 38 - 25, 0.005, id="textbook, 60 degrees (memory)"),
    ],
)
def test_a_bend_is_as_long_as_printed(
    radius: float, thickness: float, degrees: float, neutral: float, printed: float, tolerance: float
) -> None:
    assert arc_length(radians(degrees), radius, thickness, neutral) == pytest.approx(printed, abs=tolerance)


@pytest.mark.parametrize(
    ("per_radius", "tolerance"),
    [
        # tpub.com/air/13-19.htm: (0.0173 R + 0.0078 T) A. 0.0173 stands for pi / 180 = 0.017453, 0.9 % low.
        pytest.param(0.0173, 0.009, id="coefficient of three digits"),
        # FAA-H-8083-31, airframe handbook (memory): (0.01743 R + 0.0078 T) A, 0.14 % low.
        pytest.param(0.01743, 0.0014, id="coefficient of four digits (memory)"),
    ],
)
def test_an_airframe_channel_bends_by_the_workshop_formula(per_radius: float, tolerance: float) -> None:
    # U-channel of the FAA airframe handbook, vol. 1, ch. 4: 0.040 in sheet, inside radius 0.16 in, right angles.
    radius, thickness = 0.16, 0.040
    printed = (per_radius * radius + 0.0078 * thickness) * 90
    assert arc_length(radians(90), radius, thickness, WORKSHOP_NEUTRAL) == pytest.approx(printed, rel=tolerance)


def test_a_bend_is_centred_where_a_sheet_metal_workbench_puts_it() -> None:
    # README of the FreeCAD SheetMetal workbench: T 2 mm, R 1.64 mm, K 0.38, 90 degrees; a leg of 48.12 mm puts the
    # middle of the bend at 50 mm of the flat sheet. The leg is given to two decimals.
    assert 48.12 + arc_length(radians(90), 1.64, 2.0, 0.38) / 2 == pytest.approx(50.0, abs=0.006)


@pytest.mark.parametrize(
    ("coefficient", "printed_neutral"),
    [
        pytest.param(0.55, 0.35, id="soft brass, copper"),
        pytest.param(0.64, 0.41, id="hard brass, soft steel, aluminium"),
        pytest.param(0.71, 0.45, id="hard copper, bronze, spring steel"),
    ],
)
@pytest.mark.parametrize("radius", [0.8, 2.0, 6.0])
def test_a_right_angle_takes_the_handbook_coefficients(
    coefficient: float, printed_neutral: float, radius: float
) -> None:
    # Machinery's Handbook, 28th ed. (as reported by a CAD help page, "About Bend Tables"): a right angle takes
    # 1.57 R + 0.55 T, + 0.64 T or + 0.71 T; the same page gives these as K = 0.35, 0.41 and 0.45, two decimals each.
    thickness = 1.2
    rounding = pi / 2 * 0.005 * thickness + (pi / 2 - 1.57) * radius
    handbook = 1.57 * radius + coefficient * thickness
    assert arc_length(pi / 2, radius, thickness, printed_neutral) == pytest.approx(handbook, abs=rounding)


@pytest.mark.parametrize(("ratio", "neutral"), [(0.5, 0.250), (1, 0.325), (2, 0.400), (3, 0.444), (5, 0.500)])
def test_the_german_factor_counts_from_half_the_thickness(ratio: float, neutral: float) -> None:
    # DIN 6935, as reported by public notes on it: a bend takes angle * (R + k * T / 2), k = 0.65 + lg(R / T) / 2.
    # So k = 2 K ("Allowance tables and formulas", a CAD help page). K is rounded to three decimals here.
    thickness, angle = 1.6, radians(120)
    german = angle * (ratio * thickness + (0.65 + log10(ratio) / 2) * thickness / 2)
    rounding = angle * 0.0005 * thickness
    assert arc_length(angle, ratio * thickness, thickness, neutral) == pytest.approx(german, abs=rounding)
