"""Settings of the printer."""

from __future__ import annotations

from typing import Any

import pytest

from patternforge.drawing.paper import A4
from patternforge.drawing.printing import PrintSettings, printable_area
from patternforge.errors import DraftError


@pytest.mark.parametrize(
    ("setting", "value", "range_"),
    [
        ("margin", -0.1, "0 to 50 mm"),
        ("gap", 51.0, "0 to 50 mm"),
        ("overlap", 4.9, "5 to 50 mm"),
        ("x_correction", 0.89, "0.9 to 1.1"),
        ("y_correction", 1.11, "0.9 to 1.1"),
        ("y_correction", float("nan"), "0.9 to 1.1"),
    ],
)
def test_a_setting_out_of_range_is_refused_with_its_range(setting: str, value: float, range_: str) -> None:
    changes: dict[str, Any] = {setting: value}
    with pytest.raises(DraftError, match=range_):
        PrintSettings("Sleeve", **changes)


def test_the_heading_names_the_revision_if_there_is_one() -> None:
    assert PrintSettings("Sleeve", "B").heading == "Sleeve, revision B"
    assert PrintSettings("Sleeve").heading == "Sleeve"


def test_a_corrected_area_ends_at_the_same_margin_on_paper() -> None:
    area = printable_area(A4, PrintSettings("Sleeve", margin=12, x_correction=1.02, y_correction=0.99))
    on_paper = (area.x0 * 1.02, area.y0 * 0.99, area.x1 * 1.02, area.y1 * 0.99)
    assert on_paper == pytest.approx((12, 12, 198, 285), abs=1e-9)
