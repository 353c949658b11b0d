"""Every ready design still fits when one of its parameters is set to an end of its range."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
import yaml

from patternforge.design.load import load_design
from patternforge.errors import PatternforgeError
from patternforge.fit.findings import Verdict
from patternforge.fit.judge import fit_over_range
from patternforge.wallet.assemble import drafted

DESIGNS = sorted((Path(__file__).parents[2] / "designs").glob("*.yaml"))


@pytest.mark.parametrize("design", DESIGNS, ids=lambda path: path.stem)
def test_a_ready_design_fits_at_both_ends_of_every_range(design: Path) -> None:
    text = design.read_text(encoding="utf-8")
    ends = list(ends_of(text))
    assert len(ends) > 1
    assert [fault for name, value in ends for fault in faults(text, design.name, name, value)] == []


def ends_of(text: str) -> Iterator[tuple[str, str]]:
    """The name of every parameter of a design, with the value at each end of its range as the file has it."""
    for name, told in yaml.safe_load(text)["parameters"].items():
        yield from ((name, str(told[end])) for end in ("from", "to") if end in told)


def faults(text: str, file: str, name: str, value: str) -> list[str]:
    """What keeps the wallet from being cut with one parameter set."""
    try:
        findings = fit_over_range(drafted(load_design(text, file, {name: value})))
    except PatternforgeError as error:
        return [f"{name}={value}: {error}"]
    return [f"{name}={value}: {found.what}, {found.where}" for found in findings if found.verdict is Verdict.NO]
