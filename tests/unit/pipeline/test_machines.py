"""Machine tables by name and by file."""

from __future__ import annotations

from pathlib import Path

import pytest

from patternforge.errors import DesignError
from patternforge.pipeline.machines import known_machines, machine_at, own_folder, table_text
from tests.unit.machines.good_machine import GOOD, PLOT

READY = ["die-shop", "drag-knife", "hand", "laser"]


@pytest.fixture(autouse=True)
def home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A user's folder for settings that is empty."""
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "settings"))
    return tmp_path / "settings" / "patternforge" / "machines"


def saved(folder: Path, name: str, text: str = GOOD) -> Path:
    folder.mkdir(parents=True, exist_ok=True)
    path = folder / name
    path.write_text(text, encoding="utf-8")
    return path


def test_the_ready_tables_are_found_by_name(tmp_path: Path) -> None:
    assert [each.name for each in known_machines(tmp_path)] == READY
    assert [machine_at(name, tmp_path).name for name in READY] == READY


def test_a_table_beside_the_design_goes_before_ones_own_and_that_before_a_ready_one(
    tmp_path: Path, home: Path
) -> None:
    saved(home, "laser.yaml", GOOD.replace("Shop laser", "Laser at home"))
    assert machine_at("laser", tmp_path).title == "Laser at home"
    saved(tmp_path / "machines", "laser.yaml", GOOD.replace("Shop laser", "Laser of this job"))
    assert machine_at("laser", tmp_path).title == "Laser of this job"
    places = {each.name: each.place for each in known_machines(tmp_path)}
    assert (places["laser"], places["hand"]) == (str(tmp_path / "machines"), "ready")


def test_without_a_folder_for_settings_ones_own_lies_below_the_home_folder(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("XDG_CONFIG_HOME")
    assert own_folder() == Path.home() / ".config" / "patternforge" / "machines"


def test_a_file_is_found_from_here_and_then_beside_the_design(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    saved(tmp_path / "designs", "mine.yaml")
    (tmp_path / "here").mkdir()
    monkeypatch.chdir(tmp_path / "here")
    assert machine_at("mine.yaml", tmp_path / "designs").title == "Shop laser"
    saved(tmp_path / "here", "mine.yaml", PLOT)
    assert machine_at("mine.yaml", tmp_path / "designs").title == "Shop plotter"
    assert machine_at("../designs/mine.yaml", tmp_path).title == "Shop laser"


@pytest.mark.parametrize(
    ("word", "says"),
    [
        ("lasre", "--machine lasre: there is no machine called 'lasre'; did you mean laser?"),
        ("zzz", "choose one of die-shop, drag-knife, hand, laser, or name a file"),
        ("no.yaml", "no.yaml: there is no such file"),
        ("deep/er/no", "deep/er/no: there is no such file; give the path of a machine file"),
    ],
)
def test_a_word_that_leads_to_no_table_says_what_there_is(tmp_path: Path, word: str, says: str) -> None:
    with pytest.raises(DesignError) as caught:
        machine_at(word, tmp_path)
    assert says in str(caught.value)


def test_faults_name_the_file_of_the_table(tmp_path: Path) -> None:
    path = saved(tmp_path, "bad.yaml", GOOD.replace("kerf: 0.2 mm", "kerf: 9 mm"))
    with pytest.raises(DesignError) as caught:
        machine_at(str(path), tmp_path)
    assert str(caught.value).startswith(f"{path}:11:7: 'kerf' of the machine is 9 mm")


def test_a_table_that_cannot_be_read_is_listed_with_the_number_of_its_faults(tmp_path: Path) -> None:
    saved(tmp_path / "machines", "one.yaml", GOOD.replace("kerf: 0.2 mm", "kerf: 9 mm"))
    saved(tmp_path / "machines", "two.yaml", "{machine: A, tool: axe, format: png}")
    titles = {each.name: each.title for each in known_machines(tmp_path)}
    assert titles["one"] == "cannot be read: 1 fault"
    assert titles["two"] == "cannot be read: 2 faults"


def test_the_text_to_copy_is_that_of_the_file(tmp_path: Path) -> None:
    assert table_text("laser", tmp_path).startswith("# A laser of no particular make.")
    with pytest.raises(DesignError, match=r"^machines lazer: there is no machine called 'lazer'; did you mean laser"):
        table_text("lazer", tmp_path)


def test_a_file_is_no_name_to_copy_by(tmp_path: Path) -> None:
    path = saved(tmp_path, "mine.yaml")
    with pytest.raises(DesignError, match=r"mine\.yaml'; choose one of die-shop, drag-knife, hand, laser$"):
        table_text(str(path), tmp_path)
