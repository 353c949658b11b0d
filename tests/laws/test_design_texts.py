"""Any text at all gives a design or the faults of a design, and nothing else."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Mapping
from dataclasses import asdict
from types import MappingProxyType

import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from patternforge.design import decoded, load_design
from patternforge.design.located import FaultList, Table
from patternforge.design.source import located
from patternforge.errors import DesignError, Fault
from patternforge.wallet.spec import Design
from tests.unit.design.good_design import GOOD

_LINES = GOOD.split("\n")
_SIGNS = st.text("{}[]()<>:;,.-+*/'\"!&#|>%@`~?=_0123456789 amnoyx\t\né１½\u2028\x00", max_size=12)
_VALUES = st.one_of(
    _SIGNS,
    st.sampled_from(
        ["no", "1:30", "012", "1,2", ".nan", "~", "[]", "{}", "fit", "3 mm", "[left]", "*a", "&a 1", "!!str x"]
    ),
    st.integers().map(str),
    st.floats().map(str),
)


def _outcome(text: str, given_settings: Mapping[str, str] = MappingProxyType({})) -> Design | tuple[Fault, ...]:
    try:
        return load_design(text, "any.yaml", given_settings)
    except DesignError as error:
        return error.faults


def _numbers(value: object) -> Iterator[float]:
    if isinstance(value, dict):
        value = tuple(value.values())
    if isinstance(value, tuple):
        for inner in value:
            yield from _numbers(inner)
    elif isinstance(value, float):
        yield value


def _assert_design_or_faults_inside(text: str) -> None:
    outcome = _outcome(text)
    if isinstance(outcome, Design):
        assert all(map(math.isfinite, _numbers(asdict(outcome))))
        return
    lines = re.split("\r\n|\n|\r", text)
    assert outcome
    for fault in outcome:
        assert fault.what
        assert fault.remedy
        assert 1 <= fault.line <= max(1, len(lines))
        assert 1 <= fault.column <= len(lines[fault.line - 1]) + 1


@given(st.text(max_size=300))
@settings(max_examples=100, deadline=None)
def test_any_text_gives_a_design_or_its_faults(text: str) -> None:
    _assert_design_or_faults_inside(text)


@given(st.text("{}[]:,-# \nab'\"&*!|>?%@\t", max_size=80))
@settings(max_examples=100, deadline=None)
def test_any_heap_of_yaml_signs_gives_a_design_or_its_faults(text: str) -> None:
    _assert_design_or_faults_inside(text)


@given(st.integers(0, len(GOOD)), st.integers(0, 12), _SIGNS)
@settings(max_examples=100, deadline=None)
def test_a_design_with_signs_put_in_or_cut_out_gives_a_design_or_its_faults(at: int, cut: int, signs: str) -> None:
    _assert_design_or_faults_inside(GOOD[:at] + signs + GOOD[at + cut :])


@given(
    st.lists(st.sampled_from(range(len(_LINES))), max_size=5),
    st.lists(st.sampled_from(range(len(_LINES))), max_size=3),
)
@settings(max_examples=100, deadline=None)
def test_a_design_with_lines_lost_or_doubled_gives_a_design_or_its_faults(
    lost: list[int], doubled: list[int]
) -> None:
    kept = [line for number, line in enumerate(_LINES) if number not in lost for _ in range(1 + (number in doubled))]
    _assert_design_or_faults_inside("\n".join(kept))


@given(st.sampled_from([n for n, line in enumerate(_LINES) if re.search(r": \S", line)]), _VALUES)
@settings(max_examples=100, deadline=None)
def test_a_design_with_one_value_exchanged_gives_a_design_or_its_faults(number: int, value: str) -> None:
    line = _LINES[number]
    changed = line[: line.index(": ") + 2] + value
    _assert_design_or_faults_inside("\n".join([*_LINES[:number], changed, *_LINES[number + 1 :]]))


@given(st.binary(max_size=60))
@settings(max_examples=100, deadline=None)
def test_any_bytes_give_text_or_one_fault(data: bytes) -> None:
    try:
        assert decoded(data, "any.yaml").encode().removeprefix(b"\xef\xbb\xbf") == data.removeprefix(b"\xef\xbb\xbf")
    except DesignError as error:
        (fault,) = error.faults
        assert fault.line >= 1


@given(st.dictionaries(st.sampled_from(["margin", "slots", "outer", "inner.neutral", "outer.x", "", "x"]), _VALUES))
@settings(max_examples=100, deadline=None)
def test_any_settings_give_a_design_or_faults(given_settings: dict[str, str]) -> None:
    outcome = _outcome(GOOD, given_settings)
    if isinstance(outcome, Design):
        assert set(given_settings) <= {"margin", "slots", "outer", "inner.neutral"}
    else:
        assert given_settings
        assert all(fault.what and fault.remedy for fault in outcome)


def _read(text: str, loader: type[yaml.SafeLoader]) -> Table | None:
    try:
        return located(text, "any.yaml", FaultList(), loader)
    except DesignError:
        return None


@given(st.integers(0, len(GOOD)), st.integers(0, 6), st.text("{}[]:,-# \nab'\"", max_size=4))
@settings(max_examples=100, deadline=None)
def test_what_both_scanners_read_they_read_alike(at: int, cut: int, signs: str) -> None:
    """They do not refuse quite the same texts (``{a:, b: 1}`` is one), but no text may mean two designs."""
    text = GOOD[:at] + signs + GOOD[at + cut :]
    compiled: type[yaml.SafeLoader] = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
    tables = [_read(text, loader) for loader in (compiled, yaml.SafeLoader)]
    assert None in tables or tables[0] == tables[1]
