"""``check``: a table in plain words, the worst first, and an exit status by the verdict."""

from __future__ import annotations

from pathlib import Path

import pytest

from patternforge.cli.findings import conclusion, every_finding, findings_table
from patternforge.fit.findings import Finding, Verdict
from tests.unit.cli.running import run
from tests.unit.delivery.killing import everything
from tests.unit.small_designs import BROKEN, LOOK, MISFIT, SLEEVE, saved

FINDINGS = (
    Finding("hole rim to edge", "shell", 2.0, 1.5, Verdict.GOOD),
    Finding("hole rim to edge", "bank", 2.5, 1.5, Verdict.GOOD),
    Finding("clear width", "card in bank", 87.0, 88.0, Verdict.LOOK, "widen the pocket"),
    Finding("seam stack", "rim", 7.25, 6.0, Verdict.NO, "skive"),
)


@pytest.mark.parametrize(
    ("text", "status", "last"),
    [
        (SLEEVE, 0, "It fits: all 14 measures are good."),
        (LOOK, 0, "It fits, but look at 1 measure before you cut."),
        (MISFIT, 6, "It does not fit: 1 measure would spoil the leather."),
    ],
)
def test_the_status_is_that_of_the_verdict_and_nothing_is_written(
    tmp_path: Path, text: str, status: int, last: str
) -> None:
    design = saved(tmp_path, text)
    ended = run("check", design)
    assert (ended.status, ended.out.splitlines()[-1], ended.err) == (status, last, "")
    assert everything(tmp_path).keys() == {"sleeve.yaml"}


def test_a_broken_design_ends_with_status_4_and_all_its_faults(tmp_path: Path) -> None:
    design = saved(tmp_path, BROKEN)
    ended = run("check", design)
    assert (ended.status, ended.out) == (4, "")
    lines = ended.err.splitlines()
    assert len(lines) == 2
    assert lines[0].startswith(f"{design}:7:")
    assert "did you mean 'sleeve'?" in lines[1]


def test_values_can_be_set(tmp_path: Path) -> None:
    design = saved(tmp_path)
    assert run("check", design, "--set", "main=6 mm").out != run("check", design).out
    assert run("check", design, "--set", "main=oak").status == 4


def test_the_worst_comes_first_with_its_remedy_under_it() -> None:
    assert findings_table(FINDINGS) == [
        "      what was measured  where                measured     limit",
        "no    seam stack         rim                   7.25 mm   6.00 mm",
        "      -> skive",
        "look  clear width        card in bank         87.00 mm  88.00 mm",
        "      -> widen the pocket",
        "good  hole rim to edge   2 places      2.00 to 2.50 mm   1.50 mm",
    ]


def test_every_finding_has_a_line_if_wanted() -> None:
    table = every_finding(FINDINGS)
    assert [line.split()[0] for line in table[1:]] == ["no", "->", "look", "->", "good", "good"]


def test_the_conclusion_counts_what_is_wanting() -> None:
    assert conclusion(FINDINGS) == "It does not fit: 1 measure would spoil the leather."
    assert conclusion(FINDINGS[2:3] * 2) == "It fits, but look at 2 measures before you cut."
    assert conclusion(FINDINGS[:2]) == "It fits: all 2 measures are good."
