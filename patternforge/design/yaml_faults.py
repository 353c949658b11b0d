"""What the YAML scanner stumbled over, said in the words of someone who wrote a design and not a parser."""

from __future__ import annotations

import re

import yaml

from patternforge.errors import Fault

__all__ = ["syntax_fault"]

_NO_SPACE_AFTER_COLON = re.compile(r"\s*(?:-\s+)?([\w. -]+):([^\s:/].*)")
_NO_SPACE_AFTER_DASH = re.compile(r"\s*-([^\s-].*)")
_TWO_COLONS = re.compile(r"[^'\"#]*:\s[^'\"#]*:(\s|$)")


def syntax_fault(error: yaml.MarkedYAMLError, text: str, file: str) -> Fault:
    """The located fault for a text that is no YAML; ``error`` is what the scanner or parser raised.

    The wording rests on the text round the place, because the compiled and the plain scanner name things differently.
    """
    lines = text.splitlines() or [""]
    mark = error.problem_mark or error.context_mark
    line, column = (mark.line, mark.column) if mark else (0, 0)
    opened = (error.context_mark.line, error.context_mark.column) if error.context_mark else (line, column)
    line, column, what, remedy = _reading(str(error.problem), lines, (line, column), opened)
    return Fault(file, min(line, len(lines) - 1) + 1, column + 1, what, remedy)


_Reading = tuple[int, int, str, str]
_Place = tuple[int, int]


def _reading(problem: str, lines: list[str], at: _Place, opened: _Place) -> _Reading:
    if "mapping values" in problem or "mapping keys" in problem:
        return _misplaced_colon(lines, at)
    if "expected ':'" in problem:
        return _missing_colon(lines, opened)
    if "unexpected end of stream" in problem or "document separator" in problem:
        advice = "close the quotation; write inches as in, not as a quote mark"
        return (*opened, "a quotation begins here and never ends", advice)
    if "',' or" in problem:
        closing = "}" if "}" in problem else "]"
        where = f"line {opened[0] + 1}, column {opened[1] + 1}"
        what = f"a comma or '{closing}' is missing before this; the bracket was opened in {where}"
        return (*at, what, f"put a comma between the entries and '{closing}' at the end")
    if "node content" in problem:
        return (*at, "a value is missing before this", "write the value, or leave the key out")
    if "start any token" in problem:
        sign = _sign(lines, at)
        return (*at, f"a value cannot begin with {sign}", "put the value in single quotes")
    if "escape" in problem:
        return (*opened, "a backslash in double quotes begins a special sign", "use single quotes")
    if "expected key" in problem or "<block end>" in problem or "'-' indicator" in problem:
        return _misaligned(lines, at)
    return (*at, "the file cannot be read on from here", "compare this line with one that works")


def _sign(lines: list[str], at: _Place) -> str:
    line = lines[at[0]] if at[0] < len(lines) else ""
    return f"'{line[at[1]]}'" if at[1] < len(line) else "this sign"


def _misplaced_colon(lines: list[str], at: _Place) -> _Reading:
    row, column = at
    unspaced = _unspaced_colon(lines, row - 1) if row else None
    if unspaced:
        return unspaced
    if row < len(lines) and _TWO_COLONS.match(lines[row][: column + 2]):
        return (*at, "a second colon stands in this line", "put the text after the first colon in quotes")
    what = "this line continues the one above, which has a value already or no colon"
    return (*at, what, "indent it like the keys beside it, and end the key above with a colon")


def _missing_colon(lines: list[str], opened: _Place) -> _Reading:
    unspaced = _unspaced_colon(lines, opened[0])
    if unspaced:
        return unspaced
    word = lines[opened[0]][opened[1] :].strip() if opened[0] < len(lines) else ""
    return (*opened, f"'{word[:40]}' is not followed by a colon and a value", "write 'key: value'")


def _unspaced_colon(lines: list[str], row: int) -> _Reading | None:
    """``height:fit``, found in the line ``row`` or the blank-free line above it."""
    while row > 0 and not lines[row].strip():
        row -= 1
    match = _NO_SPACE_AFTER_COLON.match(lines[row]) if row < len(lines) else None
    if match is None:
        return None
    name, rest = match.group(1).strip(), match.group(2).strip()[:40]
    what = f"there is no space after the colon of '{name}'"
    return (row, match.start(1), what, f"write '{name}: {rest}'")


def _misaligned(lines: list[str], at: _Place) -> _Reading:
    row = at[0]
    for candidate in (row - 1, row):
        dash = _NO_SPACE_AFTER_DASH.match(lines[candidate]) if 0 <= candidate < len(lines) else None
        if dash:
            what = "there is no space after the dash"
            return (candidate, dash.start(1) - 1, what, f"write '- {dash.group(1)[:40]}'")
    sign = _sign(lines, at)
    if sign in ("']'", "'}'"):
        return (*at, f"{sign} closes a bracket that was not opened", "delete it")
    if sign == "'-'":
        return (*at, "a list entry stands between keys", "indent it under the key it belongs to")
    return (*at, "this line does not line up with the lines above it", "indent it exactly like its neighbours")
