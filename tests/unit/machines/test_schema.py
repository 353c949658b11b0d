"""The JSON Schema of machine tables agrees with the loader."""

from __future__ import annotations

import re
from collections.abc import Iterator
from importlib.resources import files
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from patternforge.design.located import FaultList
from patternforge.design.source import located
from patternforge.machines.load import MACHINE, load_machine
from patternforge.machines.schema import machine_schema
from patternforge.machines.table import Machine
from tests.unit.design.broken import Broken
from tests.unit.design.test_schema import as_json
from tests.unit.machines.broken_machines import BROKEN_MACHINES
from tests.unit.machines.good_machine import GOOD, PLOT, VECTOR

SHELF = files("patternforge") / "machines"
READY = {each.name: each.read_text("utf-8") for each in SHELF.iterdir() if each.name.endswith(".yaml")}
TEXTS = {"good": GOOD, "plot": PLOT, "vector": VECTOR, **READY}


def faults(text: str) -> list[str]:
    data = as_json(located(text, "shop.yaml", FaultList(), subject=MACHINE))
    return [error.json_path for error in Draft202012Validator(machine_schema()).iter_errors(data)]


def properties() -> Iterator[tuple[str, dict[str, Any]]]:
    schema = machine_schema()
    for table in (schema, *schema["$defs"].values()):
        yield from table.get("properties", {}).items()


def test_the_schema_is_lawful_json_schema() -> None:
    Draft202012Validator.check_schema(machine_schema())
    assert machine_schema()["required"] == ["machine", "tool", "format"]


def test_every_key_has_a_description() -> None:
    assert len(list(properties())) > 30
    assert [key for key, value in properties() if not value.get("description")] == []


@pytest.mark.parametrize("name", TEXTS)
def test_a_good_table_is_good_to_the_schema_too(name: str) -> None:
    assert faults(TEXTS[name]) == []


def test_the_good_tables_use_every_key() -> None:
    words = set(re.findall(r"((?:stitch )?\w+):", GOOD + PLOT))
    assert {key for key, _ in properties()} <= words


STRUCTURE = [case for case in BROKEN_MACHINES if re.search(r"unknown|^no (tool|format)|of another name", case.name)]


@pytest.mark.parametrize("case", STRUCTURE, ids=lambda case: case.name)
def test_what_is_no_table_by_its_keys_and_words_is_refused_by_the_schema_too(case: Broken) -> None:
    assert faults(case.text)


def test_a_value_the_schema_gives_for_a_key_left_out_is_the_one_the_loader_takes() -> None:
    least = "{machine: Least, tool: laser, format: dxf"
    given = {
        key: value["default"]
        for key, value in machine_schema()["properties"].items()
        if "default" in value and value["default"] not in ("", [])
    }
    assert given == {
        "release": "R2010",
        "files": "sheets",
        "gap": 10,
        "face": "front",
        "kerf": 0,
        "sanding": 0,
        "tape": 0,
        "holes": "cut",
        "fold_ticks": "none",
        "engrave": "none",
        "sequence": "piece by piece",
        "travel": "shortest",
    }
    said = ", ".join(f"{key}: {value}" for key, value in given.items())
    assert plain(f"{least}, {said}}}") == plain(f"{least}}}")


def plain(text: str) -> Machine:
    return load_machine(text, "least.yaml")
