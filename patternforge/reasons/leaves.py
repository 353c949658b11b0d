"""Where the sizes of a design come from: entered in its file, set beside it, from the catalogue, or the program's."""

from __future__ import annotations

from functools import partial

from patternforge.leather.contents import OWN_SIZES
from patternforge.leather.material import Leather
from patternforge.reasons.book import Book, Makes
from patternforge.reasons.declared import declared_sizes
from patternforge.reasons.reason import How, Reason, leaf, made, number, same
from patternforge.wallet.entered import Entered
from patternforge.wallet.pattern import Adjustment

__all__ = ["leaves"]

_PRACTICE = "common practice, no source"
_DEFAULTS = {
    "neutral": "the middle of the thickness: no value for leather is in print, measure yours with a test strip",
    "compensation": "closes true",
    "angle": "insides meet",
    "cards": "full",
    "notes": "full",
    "loose": "full",
    "count": "one",
    "per_slot": "one",
    "columns": "one",
}
_NO_FILE = "given to the program, in no file"


def leaves(book: Book) -> Makes:
    """Every size the design declares."""
    entered = {each.name: each for each in book.design.entered}
    moved = {_moved_name(each): each for each in book.pattern.adjustments}
    for name, value, unit in declared_sizes(book.design):
        yield name, partial(_declared, book, name, value, unit, entered.get(name), moved.get(name))


def _moved_name(moved: Adjustment) -> str:
    return f"part {moved.part}.{'mouth depth' if moved.size == 'mouth' else moved.size}"


def _declared(
    book: Book, name: str, value: float, unit: str, entry: Entered | None, moved: Adjustment | None
) -> Reason:
    """The reason of a declared size; one that moved to whole stitches is what was asked for and how far it moved."""
    if moved is None:
        return _asked(book, name, value, unit, entry)
    asked = _asked(book, f"{book.called(name)} as asked for", moved.asked, unit, entry, key=name)
    shift = leaf(moved.reason, moved.drafted - moved.asked, How.COUNTED, unit)
    return made(book.called(name), How.SUM, (asked, shift), value, unit)


def _asked(book: Book, name: str, value: float, unit: str, entry: Entered | None, key: str = "") -> Reason:
    called = book.called(name)
    if entry is not None:
        return _entered(book, called, value, unit, entry)
    return _referred(book, key or name, called) or _found(book, key or name, called, value, unit)


def _entered(book: Book, called: str, value: float, unit: str, entry: Entered) -> Reason:
    source = _source(book, entry)
    if entry.of:
        parts = tuple(book.of(name) for _, name in entry.of)
        if entry.text == entry.of[0][0]:
            return Reason(called, value, unit, How.SUM, parts, source)
        return Reason(called, value, unit, How.WRITTEN, parts, source, entry.text)
    how = How.SET if entry.setting else How.ENTERED
    range_of = _range(book, entry.name)
    if range_of is not None and range_of.thickness.low != range_of.thickness.high:
        return _middle(called, range_of, how, source, entry.text)
    return leaf(called, value, how, unit, source, entry.text)


def _range(book: Book, name: str) -> Leather | None:
    return next((each for each in book.design.leathers if name == f"leather {each.role}.thickness"), None)


def _middle(called: str, leather: Leather, how: How, source: str, text: str) -> Reason:
    """A thickness given as a range is drafted for the middle of it."""
    ends = (("at its thinnest", leather.thickness.low), ("at its thickest", leather.thickness.high))
    both = made("both ends", How.SUM, tuple(leaf(name, end, how, source=source, words=text) for name, end in ends))
    return made(called, How.QUOTIENT, (both, number(2.0)), leather.t)


def _source(book: Book, entry: Entered) -> str:
    where = f"--set {entry.setting}={entry.text}" if entry.setting else f"{book.design.file}:{entry.line}"
    meanings = {f"parameter {each.name}": each.meaning for each in book.design.parameters}
    meaning = meanings.get(entry.name)
    return f"{where}, {meaning}" if meaning else where


def _referred(book: Book, name: str, called: str) -> Reason | None:
    """The size that one follows where nothing is entered for it: a seam its stitching, a fold what it goes round."""
    kind, _, rest = name.partition(" ")
    _, _, size = rest.rpartition(".")
    if kind == "seam" and f"stitching.{size}" in book.makers:
        return same(called, book.of(f"stitching.{size}"))
    if kind == "fold" and size == "around":
        core = book.design.body.folds[int(rest.split(".")[0]) - 1].core
        return same(called, book.of(f"content {core}.thickness")) if core else None
    return None


def _found(book: Book, name: str, called: str, value: float, unit: str) -> Reason:
    """What nobody entered: a size of the catalogue, or the program's own."""
    for content in book.design.contents:
        if name.startswith(f"content {content.name}.") and content.item.source != OWN_SIZES:
            item = content.item
            title = f"{item.name}, {item.title}" if item.title else item.name
            return leaf(called, value, How.CATALOGUE, unit, f"catalogue item {title}: {item.source}")
    if not book.design.entered:
        return leaf(called, value, How.ENTERED, unit, _NO_FILE)
    size = name.rpartition(".")[2]
    why = _DEFAULTS.get(size) or (_PRACTICE if value else "none unless it is entered")
    return leaf(called, value, How.DEFAULT, unit, f"the program's own: {why}")
