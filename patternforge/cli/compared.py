"""What is said once two sets of pieces are held against each other."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from textwrap import wrap

from patternforge.cli.lines import WIDTH
from patternforge.cli.table import columns
from patternforge.comparison.distance import TOLERANCE
from patternforge.comparison.made import MadeSet
from patternforge.comparison.pieces import PieceChange
from patternforge.comparison.sets import Comparison
from patternforge.comparison.telling import told
from patternforge.pipeline.compare import Compared
from patternforge.units import MM2_PER, MM_PER_M, mm

__all__ = ["change_lines", "compare_report", "names_line"]


def compare_report(done: Compared) -> list[str]:
    """What stays, what changes and by how much, what the wallet takes in all, and the picture."""
    found = done.found
    return [
        f"{found.new.title}: old against new",
        *columns([["  old", found.old.label], ["  new", found.new.label]]),
        *columns(list(_leathers(found))),
        f"  What differs by {mm(TOLERANCE)} mm or less counts as the same.",
        "",
        *change_lines(found),
        "",
        *columns(list(_in_all(found)), right=[1, 3]),
        *(["", f"Old over new: {done.delivery.folder}", *_files(done)] if done.delivery else ()),
    ]


def change_lines(found: Comparison) -> Iterator[str]:
    """Pieces by what becomes of their dies and templates, each change in words below its piece."""
    if not (found.other_die or found.other_template or found.added or found.gone):
        yield f"Nothing changes: all {len(found.same)} dies and templates stay."
        return
    yield from _changed("New die, new template", found.other_die)
    yield from _changed("Die stays, new template", found.other_template)
    yield from names_line("New piece", [piece.name for piece in found.added])
    yield from names_line("No longer there", [piece.name for piece in found.gone])
    yield from names_line("Die and template stay", [change.new.name for change in found.same])


def names_line(word: str, names: Sequence[str]) -> list[str]:
    """The names behind a word and their count, broken into lines; nothing for no names."""
    if not names:
        return []
    return wrap(f"{word} ({len(names)}): {', '.join(names)}", WIDTH, subsequent_indent="  ")


def _changed(word: str, changes: Sequence[PieceChange]) -> Iterator[str]:
    if not changes:
        return
    yield f"{word} ({len(changes)})"
    for change in changes:
        yield f"  {change.new.name}"
        for line in told(change):
            yield from wrap(line, WIDTH, initial_indent="    ", subsequent_indent="      ")


def _leathers(found: Comparison) -> Iterator[list[str]]:
    old, new = dict(found.old.leathers), dict(found.new.leathers)
    for role in (*old, *(role for role in new if role not in old)):
        yield [f"  {role}", _change(_thickness(old, role), _thickness(new, role))]


def _thickness(leathers: dict[str, float], role: str) -> str:
    return f"{mm(leathers[role])} mm" if role in leathers else "none"


def _change(before: str, after: str) -> str:
    return before if before == after else f"{before} -> {after}"


def _in_all(found: Comparison) -> Iterator[list[str]]:
    """Leather, thread and thickness of both, one under the other."""
    old, new = found.old, found.new
    for role in dict.fromkeys(role for role, _ in (*old.leathers, *new.leathers)):
        before, after = (made.area(role) / MM2_PER["dm2"] for made in (old, new))
        yield [f"leather, {role}", f"{mm(before)}", "->", f"{mm(after)}", "dm2"]
    if old.thread or new.thread:
        yield ["thread", mm(old.thread / MM_PER_M), "->", mm(new.thread / MM_PER_M), "m"]
    yield ["closed, as loaded", _closed(old), "->", _closed(new), "mm thick"]


def _closed(made: MadeSet) -> str:
    return "?" if made.closed is None else mm(made.closed)


def _files(done: Compared) -> Iterator[str]:
    assert done.delivery
    yield from (f"  {name}" for name in done.delivery.written if name.endswith(".svg"))
