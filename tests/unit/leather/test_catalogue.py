"""The catalogue as a whole: every entry can be used, and says how its sizes are known."""

from __future__ import annotations

import re
import tomllib
from importlib.resources import files

import pytest

from patternforge.leather.catalogue import catalogue
from patternforge.leather.contents import Item, Section

ITEMS = sorted(catalogue().values(), key=lambda item: item.name)
each_item = pytest.mark.parametrize("item", ITEMS, ids=lambda item: item.name)


def test_no_name_is_given_twice() -> None:
    data = tomllib.loads(files("patternforge.leather").joinpath("items.toml").read_text(encoding="utf-8"))
    names = [entry["name"] for group in data["group"] for entry in group["items"]]
    assert len(names) == len(set(names)) == len(ITEMS)


@each_item
def test_a_name_is_lower_case_words_joined_by_hyphens(item: Item) -> None:
    assert re.fullmatch(r"[a-z]+[a-z0-9]*(-[a-z0-9]+)*", item.name)
    assert catalogue()[item.name] == item


@each_item
def test_an_item_is_longer_than_high_and_flat_or_as_thick_as_high_and_round(item: Item) -> None:
    assert item.length >= item.height >= item.thickness > 0
    assert (item.height == item.thickness) == (item.section is Section.ROUND)
    assert 0 <= item.corner_radius <= item.height / 2


@each_item
def test_an_item_says_what_it_is_and_how_its_sizes_are_known(item: Item) -> None:
    assert item.title
    assert re.search(r"\((seen|memory|common practice)\)", item.source)


@each_item
def test_only_coins_are_round(item: Item) -> None:
    assert (item.corner_radius == item.height / 2 == item.length / 2) == item.name.startswith("coin-")
