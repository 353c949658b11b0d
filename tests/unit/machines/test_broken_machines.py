"""Every broken machine table is refused with exactly the faults it has, each in its place."""

from __future__ import annotations

import pytest

from patternforge.errors import DesignError, Fault
from patternforge.machines.load import load_machine
from tests.unit.design.broken import Broken
from tests.unit.machines.broken_machines import BROKEN_MACHINES
from tests.unit.machines.good_machine import GOOD, PLOT, VECTOR

EVERY = pytest.mark.parametrize("case", BROKEN_MACHINES, ids=lambda case: case.name)


def faults_of(text: str) -> tuple[Fault, ...]:
    with pytest.raises(DesignError) as caught:
        load_machine(text, "shop.yaml")
    return caught.value.faults


@pytest.mark.parametrize("text", [GOOD, PLOT, VECTOR])
def test_the_tables_they_are_made_from_have_no_fault(text: str) -> None:
    assert load_machine(text, "shop.yaml").title.startswith("Shop")


def test_there_are_at_least_40_broken_tables_and_no_two_alike() -> None:
    assert len({case.text for case in BROKEN_MACHINES}) == len(BROKEN_MACHINES) >= 40
    assert len({case.name for case in BROKEN_MACHINES}) == len(BROKEN_MACHINES)


@EVERY
def test_a_broken_table_gives_exactly_its_own_faults_where_they_stand(case: Broken) -> None:
    found = faults_of(case.text)
    every = "\n".join(map(str, found))
    places = [(fault.line, fault.column) for fault in found]
    assert places == [(expected.line, expected.column) for expected in case.faults], every
    for fault, expected in zip(found, case.faults, strict=True):
        for wording in expected.says:
            assert wording in str(fault)


@EVERY
def test_every_fault_says_what_to_do(case: Broken) -> None:
    assert all(fault.remedy and fault.file == "shop.yaml" for fault in faults_of(case.text))
