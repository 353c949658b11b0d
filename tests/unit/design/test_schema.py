"""The JSON Schema for editors agrees with the loader."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml
from jsonschema import Draft202012Validator

from patternforge.design import design_schema, load_design
from patternforge.design.located import FaultList, Lost, Node, Row, Scalar
from patternforge.design.source import located
from patternforge.errors import DesignError
from tests.unit.design.broken_cuts import BROKEN_CUTS
from tests.unit.design.broken_finishing import BROKEN_FINISHING
from tests.unit.design.broken_folded import BROKEN_FOLDED
from tests.unit.design.broken_gussets import BROKEN_GUSSETS
from tests.unit.design.broken_letters import BROKEN_LETTERS
from tests.unit.design.broken_names import BROKEN_NAMES
from tests.unit.design.broken_shapes import BROKEN_SHAPES
from tests.unit.design.good_case import CASE
from tests.unit.design.good_design import GOOD
from tests.unit.design.good_folded import FOLDED
from tests.unit.design.good_letters import LETTERS
from tests.unit.design.good_lined import LINED
from tests.unit.design.good_pouch import POUCH

_DESIGNS = sorted((Path(__file__).parents[3] / "designs").glob("*.yaml"))
_TEXTS = {
    "good_design": GOOD,
    "good_case": CASE,
    "good_letters": LETTERS,
    "good_folded": FOLDED,
    "good_pouch": POUCH,
    "good_lined": LINED,
} | {path.stem: path.read_text(encoding="utf-8") for path in _DESIGNS}


def as_json(node: Node) -> Any:
    """The data an editor sees, by the core rules of YAML 1.2: true and false, null, decimal numbers, else text."""
    assert not isinstance(node, Lost)
    if isinstance(node, Row):
        return [as_json(item) for item in node.items]
    if isinstance(node, Scalar):
        return json_scalar(node)
    return {entry.key.text: as_json(entry.value) for entry in node}


def json_scalar(node: Scalar) -> Any:
    if node.plain and (node.is_blank or node.text in ("true", "false")):
        return {"true": True, "false": False}.get(node.text)
    if node.plain and re.fullmatch(r"[-+]?\d+", node.text):
        return int(node.text)
    if node.plain and re.fullmatch(r"[-+]?(\.\d+|\d+(\.\d*)?)([eE][-+]?\d+)?", node.text):
        return float(node.text)
    return node.text


def _faults(text: str) -> list[str]:
    data = as_json(located(text, "wallet.yaml", FaultList()))
    return [error.json_path for error in Draft202012Validator(design_schema()).iter_errors(data)]


def _properties(schema: dict[str, Any]) -> Iterator[tuple[str, str, dict[str, Any]]]:
    tables = {"DesignForm": schema, **schema["$defs"]}
    for title, table in tables.items():
        for key, value in table.get("properties", {}).items():
            yield title, key, value


def test_the_schema_is_lawful_json_schema() -> None:
    schema = design_schema()
    Draft202012Validator.check_schema(schema)
    assert schema["$schema"] == "https://json-schema.org/draft/2020-12/schema"


def test_every_key_has_a_description() -> None:
    keys = list(_properties(design_schema()))
    assert len(keys) > 100
    assert [(table, key) for table, key, value in keys if not value.get("description")] == []


@pytest.mark.parametrize("name", _TEXTS)
def test_a_good_design_is_good_to_the_schema_too(name: str) -> None:
    load_design(_TEXTS[name], f"{name}.yaml")
    assert _faults(_TEXTS[name]) == []


def test_the_good_designs_use_every_key_but_those_with_a_value_by_custom() -> None:
    """So that the test above says something about each of them."""
    good = GOOD + CASE + LETTERS + FOLDED + POUCH + LINED
    words = {match.group(1) for match in re.finditer(r"((?:(?:bottom|top) )?\w+):", good)}
    left = {key for _, key, _ in _properties(design_schema())} - words
    assert left == {"closed_thickness", "hole_to_fold", "max_ease"}


_STRUCTURE = [
    case
    for case in (
        *BROKEN_NAMES,
        *BROKEN_SHAPES,
        *BROKEN_CUTS,
        *BROKEN_LETTERS,
        *BROKEN_FOLDED,
        *BROKEN_GUSSETS,
        *BROKEN_FINISHING,
    )
    if re.search(r"unknown key|needed key|is a value$|of two kinds", case.name)
]


@pytest.mark.parametrize("case", _STRUCTURE, ids=lambda case: case.name)
def test_what_is_no_design_by_its_keys_is_refused_by_the_schema_too(case: Any) -> None:
    assert _faults(case.text)


def test_a_key_without_a_value_is_refused_by_both() -> None:
    text = GOOD.replace("    end: 3 mm", "    end:")
    assert _faults(text) == ["$.seams[0].end"]
    with pytest.raises(DesignError, match="has no value"):
        load_design(text, "wallet.yaml")


def test_a_value_the_schema_gives_for_a_key_left_out_is_the_one_the_loader_takes() -> None:
    schema = design_schema()
    limits = {key: value["default"] for key, value in schema["$defs"]["LimitsForm"]["properties"].items()}
    bank = _defaults(schema, "BankForm")
    fold = _defaults(schema, "FoldForm")
    text = _LEAST.replace("limits: {}", f"limits: {_flow(limits)}").replace("thumb:", f"{_flow(bank)[1:-1]}, thumb:")
    assert load_design(text.replace("[{}]", f"[{_flow(fold)}]"), "a.yaml") == load_design(_LEAST, "a.yaml")
    body, sewing = _defaults(schema, "BodyForm"), _defaults(schema, "StitchingForm")
    body.pop("folds")
    text = _LEAST.replace("folds:", f"{_flow(body)[1:-1]}, folds:").replace(
        "stitching: {}", f"stitching: {_flow(sewing)}"
    )
    leather, seam = _defaults(schema, "LeatherForm"), _defaults(schema, "SeamForm")
    leather.pop("name")
    seam.pop("through")
    text = text.replace("thickness:", f"{_flow(leather)[1:-1]}, thickness:").replace(
        "seam:", f"{_flow(seam)[1:-1]}, seam:"
    )
    assert load_design(text, "a.yaml") == load_design(_LEAST, "a.yaml")


_LEAST = """\
design: Least
leathers: {outer: {thickness: 1 mm}}
contents: {card: id1}
body: {panels: {left: fit, right: fit}, folds: [{}]}
stitching: {}
parts:
  - {layer: shell, leather: outer}
  - {bank: cards, on: left, leather: outer, item: card, slots: 2, step: 12, show: 12, thumb: {width: 18, depth: 9}}
seams: [{seam: rim, along: [left]}]
limits: {}
"""


def _defaults(schema: dict[str, Any], form: str) -> dict[str, Any]:
    keys: dict[str, dict[str, Any]] = schema["$defs"][form]["properties"]
    return {key: value["default"] for key, value in keys.items() if "default" in value}


def _flow(data: dict[str, Any]) -> str:
    return yaml.safe_dump(data, default_flow_style=True, width=10_000).strip()
