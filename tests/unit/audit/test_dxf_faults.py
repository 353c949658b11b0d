"""Damaged DXF files: the fault is found, in its place; the same file without it has none."""

from __future__ import annotations

import pytest

from patternforge.export.dxf import DxfVersion
from tests.unit.audit.clean import clean_dxf, flaws, found_at, opened, written
from tests.unit.audit.dxf_faults import DXF_FAULTS, Fault


@pytest.mark.parametrize("version", list(DxfVersion))
def test_the_file_that_the_faults_are_made_from_is_clean(version: DxfVersion) -> None:
    assert flaws(clean_dxf(version)) == []


def test_scored_letters_may_cross_themselves_but_no_outline() -> None:
    document = opened()
    for start, end in (((150, 30), (155, 40)), ((155, 30), (150, 40))):
        document.modelspace().add_line(start, end, dxfattribs={"layer": "MARK"})
    crossed = [each for each in flaws(written(document)) if each.kind == "crossing"]
    assert crossed == []
    document.modelspace().add_line((152, 30), (152, 5), dxfattribs={"layer": "MARK"})
    assert found_at(flaws(written(document)), "crossing", 152, 10)


@pytest.mark.parametrize("fault", DXF_FAULTS, ids=lambda fault: fault.name)
def test_the_fault_is_found_in_its_place(fault: Fault) -> None:
    found = flaws(fault.text)
    told = [(each.kind, each.what, each.at) for each in found]
    assert all(each.what and each.remedy and "{" not in each.what for each in found)
    if fault.at is None:
        assert fault.kind in [each.kind for each in found], told
    else:
        assert found_at(found, fault.kind, *fault.at), told
