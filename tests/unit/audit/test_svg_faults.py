"""Damaged SVG files: the fault is found, in its place; the same file without it has none."""

from __future__ import annotations

import pytest

from tests.unit.audit.clean import clean_svg, flaws, found_at
from tests.unit.audit.dxf_faults import Fault
from tests.unit.audit.svg_faults import SVG_FAULTS


def test_the_file_that_the_faults_are_made_from_is_clean() -> None:
    assert flaws(clean_svg()) == []


@pytest.mark.parametrize("fault", SVG_FAULTS, ids=lambda fault: fault.name)
def test_the_fault_is_found_in_its_place(fault: Fault) -> None:
    found = flaws(fault.text)
    told = [(each.kind, each.what, each.at) for each in found]
    assert all(each.what and each.remedy and "{" not in each.what for each in found)
    if fault.at is None:
        assert fault.kind in [each.kind for each in found], told
    else:
        assert found_at(found, fault.kind, *fault.at), told
