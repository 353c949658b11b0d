"""Every broken design is refused with exactly the faults it has, each in its place."""

from __future__ import annotations

import pytest
import yaml

from patternforge.design.load import load_design
from patternforge.design.located import FaultList, Table
from patternforge.design.source import located
from patternforge.errors import DesignError, Fault
from tests.unit.design.broken import Broken
from tests.unit.design.broken_cuts import BROKEN_CUTS
from tests.unit.design.broken_fastening import BROKEN_FASTENING
from tests.unit.design.broken_finishing import BROKEN_FINISHING
from tests.unit.design.broken_folded import BROKEN_FOLDED
from tests.unit.design.broken_gussets import BROKEN_GUSSETS
from tests.unit.design.broken_letters import BROKEN_LETTERS
from tests.unit.design.broken_names import BROKEN_NAMES
from tests.unit.design.broken_shapes import BROKEN_SHAPES
from tests.unit.design.broken_text import BROKEN_TEXT
from tests.unit.design.broken_values import BROKEN_VALUES
from tests.unit.design.good_case import CASE
from tests.unit.design.good_design import GOOD
from tests.unit.design.good_folded import FOLDED
from tests.unit.design.good_letters import LETTERS
from tests.unit.design.good_lined import LINED

_EVERY = (
    *BROKEN_TEXT,
    *BROKEN_VALUES,
    *BROKEN_NAMES,
    *BROKEN_SHAPES,
    *BROKEN_CUTS,
    *BROKEN_LETTERS,
    *BROKEN_FOLDED,
    *BROKEN_FINISHING,
    *BROKEN_GUSSETS,
    *BROKEN_FASTENING,
)


def faults_of(text: str) -> tuple[Fault, ...]:
    with pytest.raises(DesignError) as caught:
        load_design(text, "wallet.yaml")
    return caught.value.faults


def test_the_designs_they_are_made_from_have_no_fault() -> None:
    assert load_design(GOOD, "wallet.yaml").title == "Three-fold wallet"
    assert load_design(CASE, "wallet.yaml").title == "Key case"
    assert load_design(LETTERS, "wallet.yaml").title == "Lettered cover"
    assert load_design(FOLDED, "wallet.yaml").title == "Folded case"
    assert load_design(LINED, "wallet.yaml").title == "Lined wallet"


def test_there_are_at_least_150_broken_designs_and_no_two_alike() -> None:
    assert len({case.text for case in _EVERY}) == len(_EVERY) >= 150
    assert len({case.name for case in _EVERY}) == len(_EVERY)


@pytest.mark.parametrize("case", _EVERY, ids=lambda case: case.name)
def test_a_broken_design_gives_exactly_its_own_faults_where_they_stand(case: Broken) -> None:
    found = faults_of(case.text)
    every = "\n".join(map(str, found))
    places = [(fault.line, fault.column) for fault in found]
    assert places == [(expected.line, expected.column) for expected in case.faults], every
    for fault, expected in zip(found, case.faults, strict=True):
        for wording in expected.says:
            assert wording in str(fault)


@pytest.mark.parametrize("case", _EVERY, ids=lambda case: case.name)
def test_every_fault_says_what_to_do(case: Broken) -> None:
    assert all(fault.remedy and fault.file == "wallet.yaml" for fault in faults_of(case.text))


def _read(text: str, loader: type[yaml.SafeLoader]) -> tuple[Table | None, tuple[Fault, ...]]:
    faults = FaultList()
    try:
        return located(text, "wallet.yaml", faults, loader), tuple(faults.found)
    except DesignError as error:
        return None, error.faults


@pytest.mark.parametrize("case", _EVERY, ids=lambda case: case.name)
def test_the_plain_scanner_reads_a_broken_design_like_the_one_in_use(case: Broken) -> None:
    faults = FaultList()
    try:
        usual: tuple[Table | None, tuple[Fault, ...]] = located(case.text, "wallet.yaml", faults), tuple(faults.found)
    except DesignError as error:
        usual = None, error.faults
    assert _read(case.text, yaml.SafeLoader) == usual
