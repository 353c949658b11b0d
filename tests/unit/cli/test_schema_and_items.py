"""``schema`` and ``items``."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from patternforge.design import design_schema
from patternforge.drafting.schema import pattern_schema
from patternforge.leather.catalogue import catalogue
from patternforge.prices.schema import prices_schema
from tests.unit.cli.running import run


def test_the_schema_of_designs_is_written_without_a_word() -> None:
    assert json.loads(run("schema").out) == design_schema()
    assert json.loads(run("schema", "design").out) == design_schema()


def test_the_schema_of_pattern_json_is_written_on_request(tmp_path: Path) -> None:
    ended = run("schema", "pattern", "--out", tmp_path / "pattern.schema.json")
    assert ended.status == 0
    text = (tmp_path / "pattern.schema.json").read_text(encoding="ascii")
    assert json.loads(text) == pattern_schema()
    assert text == run("schema", "pattern").out


def test_the_schema_of_price_lists_is_written_on_request() -> None:
    assert json.loads(run("schema", "prices").out) == prices_schema()


def test_a_schema_is_written_again_but_never_over_another_file(tmp_path: Path) -> None:
    path = tmp_path / "a.json"
    assert [run("schema", "--out", path).status for _ in range(2)] == [0, 0]
    assert run("schema", "pattern", "--out", path).status == 7
    assert json.loads(path.read_text(encoding="ascii")) == design_schema()


def test_another_schema_is_a_wrong_word() -> None:
    ended = run("schema", "drawing")
    assert ended.status == 2
    assert "drawing" in ended.err


def test_every_item_is_listed_with_its_size_and_source() -> None:
    out = run("items").out
    assert all(f"\n{name} " in out for name in catalogue())
    assert all(item.source in out for item in catalogue().values())


def test_items_are_found_by_a_word_of_their_name() -> None:
    lines = run("items", "ID3").out.splitlines()
    assert lines[1].split() == ["id3", "passport", "page,", "ID-3", "125.00", "88.00", "0.76", "[1]"]
    assert not [line for line in lines if line.startswith("note-")]


@pytest.mark.parametrize(("word", "substance"), [("pasport", "did you mean passport?"), ("zzz", "nothing has 'zzz'")])
def test_a_word_that_nothing_has_is_refused(word: str, substance: str) -> None:
    ended = run("items", word)
    assert (ended.status, ended.out) == (2, "")
    assert substance in ended.err


def test_hardware_is_listed_with_its_holes() -> None:
    head, row, *_ = run("items", "snap-line-24").out.splitlines()
    assert head.split("  ")[0] == "name"
    # 24 lignes of 1/40 in; the holes are common practice, no source.
    assert row.split() == ["snap-line-24", "snap,", "line", "24", "15.24", "5.00", "4.00", "[1]"]
    assert run("items", "eyelet-4").out.splitlines()[1].split()[-3:] == ["8.00", "5.00", "[1]"]
