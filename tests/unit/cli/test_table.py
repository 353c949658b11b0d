"""Columns stand under one another, whatever letters they hold."""

from __future__ import annotations

from patternforge.cli.table import columns


def test_columns_are_as_wide_as_their_widest_cell() -> None:
    assert columns([["a", "1", "x"], ["bbb", "22", ""]], right=[1]) == ["a     1  x", "bbb  22"]


def test_wide_letters_take_two_places_and_marks_none() -> None:
    assert columns([["財布", "|"], ["wide", "|"], ["e\N{COMBINING ACUTE ACCENT}", "|"]]) == [
        "財布  |",
        "wide  |",
        "e\N{COMBINING ACUTE ACCENT}     |",
    ]


def test_no_rows_are_no_lines() -> None:
    assert columns([]) == []
