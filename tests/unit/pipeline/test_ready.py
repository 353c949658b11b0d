"""Every ready design can be started from, and what is asked for stands in the new file."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from patternforge.design.load import load_design
from patternforge.errors import DesignError
from patternforge.pipeline import ready as module
from patternforge.pipeline.ready import Ready, own_design, ready_design, ready_names

ROOT = Path(__file__).parents[3]


def test_the_ready_designs_are_those_of_the_project() -> None:
    assert set(ready_names()) == {path.stem for path in (ROOT / "designs").glob("*.yaml")}
    assert "two-fold" in ready_names()


def test_installed_they_are_found_in_the_package(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "ready").mkdir()
    (tmp_path / "ready" / "only.yaml").write_text("design: Only\n", encoding="utf-8")
    monkeypatch.setattr(module, "files", lambda package: tmp_path)
    assert ready_names() == ("only",)
    assert ready_design("only").text == "design: Only\n"


@pytest.mark.parametrize("name", ready_names())
def test_a_design_started_without_changes_is_the_ready_one_under_another_title(name: str) -> None:
    ready = ready_design(name)
    own = load_design(own_design(ready, "Mine", {}), f"{name}.yaml")
    assert own == replace(ready.resolved(), title="Mine")


def _setting(ready: Ready) -> dict[str, str]:
    """A value for the margin of what is sewn, or for the relief of what is folded."""
    names = {parameter.name for parameter in ready.resolved().parameters}
    return {"margin": "5/32 in"} if "margin" in names else {"relief": "1/25 in"}


@pytest.mark.parametrize("name", ready_names())
def test_values_set_stand_in_the_new_file_as_if_they_were_set_beside_it(name: str) -> None:
    ready = ready_design(name)
    role = ready.resolved().leathers[0].role
    settings = {**_setting(ready), role: "1,1-1,3 mm", f"{role}.neutral": "0.45"}
    text = own_design(ready, "Mine: with 'quotes' # and signs", settings)
    own = load_design(text, f"{name}.yaml")
    assert own == replace(ready.resolved(settings), title="Mine: with 'quotes' # and signs")
    assert text.count("\n") == ready.text.count("\n")
    assert text.splitlines()[0] == ready.text.splitlines()[0]


def test_an_unknown_ready_design_is_refused_with_the_nearest() -> None:
    with pytest.raises(DesignError, match="did you mean two-fold"):
        ready_design("twofold")
    with pytest.raises(DesignError, match="card-sleeve"):
        ready_design("zzz")


@pytest.mark.parametrize(
    ("settings", "substance"),
    [({"margn": "3 mm"}, "margin"), ({"margin": "90 mm"}, "margin"), ({"outer": "x"}, "outer")],
)
def test_a_value_that_the_design_does_not_take_is_refused(settings: dict[str, str], substance: str) -> None:
    with pytest.raises(DesignError, match=substance):
        own_design(ready_design("two-fold"), "Mine", settings)
