"""Values are written into a design's text in their own place, and nothing else of it changes."""

from __future__ import annotations

import pytest

from patternforge.design.rewrite import rewritten
from patternforge.errors import DesignError

TEXT = """\
# mine
design: Sleeve   # the title
parameters:
  gap: {value: 3 mm, from: 1 mm}
  wide:
    value: '3 mm'    # in quotes
    to: 9 mm
leathers:
  outer: {thickness: 1.2 mm}
  inner:
    thickness: "1 mm"
"""


@pytest.mark.parametrize(
    ("settings", "old", "new"),
    [
        ({"gap": "4 mm"}, "{value: 3 mm,", "{value: 4 mm,"),
        ({"gap": "3,5 mm"}, "{value: 3 mm,", "{value: '3,5 mm',"),
        ({"gap": "it's"}, "{value: 3 mm,", "{value: 'it''s',"),
        ({"wide": "12 mm"}, "'3 mm'    #", "12 mm    #"),
        ({"outer": "1/16 in"}, "1.2 mm", "1/16 in"),
        ({"outer.thickness": "2-3 oz"}, "1.2 mm", "2-3 oz"),
        ({"inner": "0.8 mm"}, '"1 mm"', "0.8 mm"),
        ({"outer.neutral": "0.4"}, "{thickness: 1.2", "{neutral: 0.4, thickness: 1.2"),
        ({"inner.neutral": "0.4"}, '    thickness: "1', '    neutral: 0.4\n    thickness: "1'),
    ],
)
def test_a_value_stands_where_the_old_one_stood(settings: dict[str, str], old: str, new: str) -> None:
    assert TEXT.count(old) == 1
    assert rewritten(TEXT, "a.yaml", settings) == TEXT.replace(old, new)


@pytest.mark.parametrize("line_end", ["\n", "\r\n", "\r"])
def test_line_ends_stay_as_they_are(line_end: str) -> None:
    text = TEXT.replace("\n", line_end)
    assert rewritten(text, "a.yaml", {"gap": "4 mm"}, "New") == text.replace(
        "{value: 3 mm,", "{value: 4 mm,"
    ).replace("Sleeve ", "New ")


def test_a_text_without_a_title_begins_with_it() -> None:
    assert rewritten("leathers: {}\n", "a.yaml", {}, "New") == "design: New\nleathers: {}\n"


def test_without_settings_the_text_is_untouched() -> None:
    assert rewritten(TEXT, "a.yaml", {}) == TEXT


def test_a_name_that_is_not_declared_is_refused() -> None:
    with pytest.raises(DesignError, match="nothing called 'gpa'"):
        rewritten(TEXT, "a.yaml", {"gpa": "4 mm"})


def test_a_value_over_several_lines_is_refused_with_its_place() -> None:
    with pytest.raises(DesignError, match=r"a\.yaml:1:27: this value cannot be replaced"):
        rewritten("parameters: {gap: {value: 1\n  + 2}}", "a.yaml", {"gap": "4 mm"})
