"""The text of a design file as located values: a small, strict part of YAML and nothing beyond it.

Scalars stay text: what a value means is decided by the key it stands under, so no word turns into a truth value and
no digits into an octal or a clock time behind the maker's back. Left out on purpose: anchors, aliases, merge keys,
tags, further documents, tables deeper than 40 levels.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field, replace

import yaml

from patternforge.design.located import At, Entry, FaultList, Lost, Node, Row, Scalar, Table, shortened
from patternforge.design.yaml_faults import syntax_fault
from patternforge.errors import DesignError, Fault

__all__ = ["DESIGN", "Subject", "decoded", "located"]

_DEEPEST = 40
_LONGEST_FILE = 1_000_000
_BREAK = re.compile(r"\r\n|\n|\r")
# What YAML 1.1 calls printable (section 5.1), less the tab and the breaks that editors do not count as lines.
_UNLAWFUL = "[^\n\r\x20-\x7e\xa0-\u2027\u202a-\ud7ff\ue000-\ufefe\uff00-\ufffd\U00010000-\U0010ffff]"
# The compiled scanner where the library has it; what both read, they read alike, and the tests hold them to it.
_LOADER: type[yaml.SafeLoader] = getattr(yaml, "CSafeLoader", yaml.SafeLoader)


@dataclass(frozen=True, slots=True)
class Subject:
    """What a file is to hold, for messages: the word for it, how it begins, what to do instead of an anchor."""

    word: str
    beginning: str
    no_anchor: str


DESIGN = Subject("design", "design: name of the wallet", "use a parameter for a number used twice")


def decoded(data: bytes, file: str) -> str:
    """The text in ``data``, which must be UTF-8 (a byte order mark is dropped). DesignError with the place if not.

    >>> decoded(b"design: A", "a.yaml")
    'design: A'
    >>> decoded(b"design: A" + bytes([10, 120, 0xE9]), "a.yaml")
    Traceback (most recent call last):
    patternforge.errors.DesignError: a.yaml:2:2: byte 0xE9 is not UTF-8 text; save the file as UTF-8
    """
    if data[:2] in (b"\xff\xfe", b"\xfe\xff"):
        raise DesignError([Fault(file, 1, 1, "the file is saved as UTF-16", "save the file as UTF-8")])
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        before = _BREAK.split(error.object[: error.start].decode("utf-8", "replace").removeprefix("\ufeff"))
        what = f"byte 0x{error.object[error.start]:02X} is not UTF-8 text"
        raise DesignError([Fault(file, len(before), len(before[-1]) + 1, what, "save the file as UTF-8")]) from None


def located(
    text: str,
    file: str,
    faults: FaultList,
    loader: type[yaml.SafeLoader] = _LOADER,
    subject: Subject = DESIGN,
) -> Table:
    """The table that ``text`` holds. Faults that leave the rest readable go to ``faults``; others raise DesignError.

    >>> located("design: no", "a.yaml", FaultList()).get("design").text
    'no'
    """
    _refuse_unlawful_characters(text, file, faults, subject)
    builder = _Builder(file, faults, subject)
    try:
        for event in yaml.parse(text, loader):
            builder.take(event)
    except yaml.MarkedYAMLError as error:
        faults.found.append(syntax_fault(error, text, file))
        raise DesignError(faults.found) from None
    if isinstance(builder.root, Table):
        return builder.root
    _refuse_root(builder.root, file, faults, subject)
    raise DesignError(faults.found)


def _refuse_root(root: Node | None, file: str, faults: FaultList, subject: Subject) -> None:
    advice = f"begin with '{subject.beginning}'"
    if isinstance(root, Lost):
        return
    if root is None or (isinstance(root, Scalar) and root.is_blank):
        faults.add(At(file, 1, 1), "the file is empty", advice)
    else:
        kind = "a list" if isinstance(root, Row) else "a single text"
        faults.add(root.at, f"the file holds {kind} where keys with values are wanted", advice)


def _refuse_unlawful_characters(text: str, file: str, faults: FaultList, subject: Subject) -> None:
    if len(text) > _LONGEST_FILE:
        what = f"the file has {len(text)} characters"
        raise DesignError([Fault(file, 0, 0, what, f"a {subject.word} has at most {_LONGEST_FILE}")])
    for number, line in enumerate(_BREAK.split(text), start=1):
        # All that is unlawful is unprintable too; to compile the pattern takes longer than to read a whole design.
        match = None if line.isprintable() else re.search(_UNLAWFUL, line)
        if match is None:
            continue
        at = At(file, number, match.start() + 1)
        if match.group() == "\t":
            faults.add(at, "there is a tab here", "use spaces; YAML takes no tabs for indenting")
        else:
            faults.add(at, f"the control character U+{ord(match.group()):04X} cannot stand here", "delete it")
    faults.raise_if_any()


@dataclass(slots=True)
class _Frame:
    """A list or table whose end has not come yet; a table's keys and values stand in turn."""

    is_table: bool
    at: At
    parts: list[Node] = field(default_factory=list)


@dataclass(slots=True)
class _Builder:
    """Turns the flat run of events into nodes without recursion."""

    file: str
    faults: FaultList
    subject: Subject
    frames: list[_Frame] = field(default_factory=list)
    root: Node | None = None
    documents: int = 0

    def take(self, event: yaml.Event) -> None:
        """Take the next event; DesignError if the text cannot be read on from here."""
        if isinstance(event, yaml.DocumentStartEvent):
            self._open_document(event)
        elif isinstance(event, yaml.AliasEvent):
            self.faults.add(
                self._at(event), f"'*{event.anchor}' refers to another place", "write the value out again"
            )
            self._add(Lost(self._at(event)))
        elif isinstance(event, yaml.ScalarEvent):
            self._refuse_decoration(event, is_tagged=event.tag is not None)
            self._add(Scalar(event.value, self._at(event), not event.style))
        elif isinstance(event, (yaml.MappingStartEvent, yaml.SequenceStartEvent)):
            self._refuse_decoration(event, is_tagged=event.tag is not None)
            self._open(event)
        elif isinstance(event, (yaml.MappingEndEvent, yaml.SequenceEndEvent)):
            self._close()

    def _at(self, event: yaml.Event) -> At:
        mark = event.start_mark
        return At(self.file, mark.line + 1, mark.column + 1) if mark else At(self.file, 1, 1)

    def _open_document(self, event: yaml.Event) -> None:
        self.documents += 1
        word = self.subject.word
        if self.documents > 1:
            self.faults.add(self._at(event), "a second document begins here", f"keep one {word} in one file")
            raise DesignError(self.faults.found)

    def _refuse_decoration(self, event: yaml.NodeEvent, is_tagged: bool) -> None:
        if event.anchor is not None:
            what = f"'&{event.anchor}' names this value for use elsewhere"
            self.faults.add(self._at(event), what, f"leave it out; {self.subject.no_anchor}")
        if is_tagged:
            self.faults.add(self._at(event), "a tag (!) stands before this value", "leave it out")

    def _open(self, event: yaml.Event) -> None:
        if len(self.frames) >= _DEEPEST:
            self.faults.add(
                self._at(event), f"brackets and lists go more than {_DEEPEST} levels deep", "flatten them"
            )
            raise DesignError(self.faults.found)
        self.frames.append(_Frame(isinstance(event, yaml.MappingStartEvent), self._at(event)))

    def _close(self) -> None:
        frame = self.frames.pop()
        if frame.is_table:
            self._add(Table(self._entries(frame), frame.at))
        else:
            self._add(Row(tuple(frame.parts), frame.at))

    def _add(self, node: Node) -> None:
        if self.frames:
            self.frames[-1].parts.append(node)
        else:
            self.root = node

    def _entries(self, frame: _Frame) -> tuple[Entry, ...]:
        found: dict[str, Entry] = {}
        for key, value in zip(frame.parts[::2], frame.parts[1::2], strict=True):
            if found and _stands_beside_comma(key, value):
                self._refuse_comma(key, found)
                continue
            entry = self._entry(key, value)
            if entry is None:
                continue
            name = entry.key.text
            if name in found:
                what = f"the key '{shortened(name)}' is repeated; it stands on line {found[name].key.at.line} already"
                self.faults.add(entry.key.at, what, "keep one of them")
            else:
                found[name] = entry
        return tuple(found.values())

    def _refuse_comma(self, key: Node, found: dict[str, Entry]) -> None:
        name, entry = found.popitem()
        what = f"a comma ends the value of '{shortened(name)}', and what follows is read as a key"
        self.faults.add(key.at, what, "write a decimal point, or put the number in quotes")
        found[name] = Entry(entry.key, Lost(entry.value.at))

    def _entry(self, key: Node, value: Node) -> Entry | None:
        if not isinstance(key, Scalar):
            if not isinstance(key, Lost):
                self.faults.add(key.at, "a list or table stands where a key is wanted", "write a word and a colon")
            return None
        if key.plain and key.text == "<<":
            self.faults.add(key.at, "'<<' merges another table into this one", "write its keys out")
            return None
        if key.plain and ":" in key.text:
            name, _, rest = key.text.partition(":")
            shown = shortened(rest)
            self.faults.add(key.at, f"there is no space after the colon of '{name}'", f"write '{name}: {shown}'")
            return Entry(Scalar(name, key.at), Lost(value.at))
        if isinstance(value, Scalar) and not value.text and value.plain:
            return Entry(key, replace(value, at=key.at))  # the two scanners place a missing value differently
        return Entry(key, value)


def _stands_beside_comma(key: Node, value: Node) -> bool:
    """True for the ``2 mm`` of ``{thickness: 1,2 mm}``, which YAML takes for a key without a value."""
    return (
        isinstance(key, Scalar)
        and re.match(r"\d", key.text) is not None
        and isinstance(value, Scalar)
        and value.is_blank
    )
