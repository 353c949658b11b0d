"""The JSON Schema of price lists agrees with the loader."""

from __future__ import annotations

import pytest
from jsonschema import Draft202012Validator

from patternforge.design.located import FaultList
from patternforge.design.source import located
from patternforge.prices.load import PRICES
from patternforge.prices.schema import prices_schema
from tests.unit.design.test_schema import as_json
from tests.unit.prices.test_load import GOOD


def faults(text: str) -> list[str]:
    data = as_json(located(text, "p.yaml", FaultList(), subject=PRICES))
    return [error.json_path for error in Draft202012Validator(prices_schema()).iter_errors(data)]


def test_it_is_lawful_and_every_key_has_a_description() -> None:
    schema = prices_schema()
    Draft202012Validator.check_schema(schema)
    tables = (schema, *schema["$defs"].values())
    keys = [value for table in tables for value in table.get("properties", {}).values()]
    assert len(keys) == 13
    assert all(value.get("description") for value in keys)


def test_a_good_list_is_good_to_the_schema_too() -> None:
    assert faults(GOOD) == []
    assert faults("prices: A\ncurrency: £\n") == []


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("currency: crowns\n", ""),
        ("price: 14.50, ", ""),
        ("waste: 25", "waist: 25"),
        ("{price: 90, per: km}", "0.09"),
        ("  rate: 24\n", ""),
    ],
)
def test_what_lacks_a_key_or_has_an_unknown_one_is_refused_by_the_schema_too(old: str, new: str) -> None:
    assert old in GOOD
    assert faults(GOOD.replace(old, new))
