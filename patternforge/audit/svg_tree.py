"""SVG files as a tree of elements, read so that a file cannot make the program fetch or swell anything."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from xml.parsers import expat

from patternforge.errors import ReadingError

__all__ = ["Element", "svg_tree"]

_SPACE = "http://www.w3.org/2000/svg"
_LONGEST_ENTITY = 400  # letters; drawing programs abbreviate the names of name spaces so
_DEEPEST = 200


@dataclass(slots=True)
class Element:
    """An element: its plain name (empty for one of another name space), attributes, children, text and line.

    Of attributes only those without a name space are kept, and ``href`` and ``label`` of any.
    """

    name: str
    attributes: Mapping[str, str]
    line: int
    children: list[Element] = field(default_factory=list)
    text: str = ""

    def get(self, name: str, default: str = "") -> str:
        """The value of an attribute."""
        return self.attributes.get(name, default)

    def every(self) -> Iterator[Element]:
        """This element and all below it, in the order of the file."""
        yield self
        for child in self.children:
            yield from child.every()


@dataclass(slots=True)
class _Builder:
    parser: expat.XMLParserType
    root: Element | None = None
    open: list[Element] = field(default_factory=list)

    def start(self, name: str, attributes: Mapping[str, str]) -> None:
        element = Element(_plain(name), _kept(attributes), self.parser.CurrentLineNumber)
        if self.open:
            self.open[-1].children.append(element)
        elif self.root is None:
            self.root = element
        self.open.append(element)
        if len(self.open) > _DEEPEST:
            raise ReadingError(f"line {element.line}: groups lie more than {_DEEPEST} deep; ungroup and save again")

    def end(self, name: str) -> None:
        self.open.pop()

    def text(self, words: str) -> None:
        if self.open:
            self.open[-1].text += words

    def entity(
        self, name: str, is_parameter: bool, value: str | None, base: str | None, system: str | None, *_: object
    ) -> None:
        if system is not None:
            raise ReadingError(f"the file asks for {system!r} to be fetched ({name}); take that out")
        if value is None or "&" in value or "%" in value or len(value) > _LONGEST_ENTITY:
            raise ReadingError(f"the file abbreviates {name!r} by something that could swell; save it as plain SVG")


def svg_tree(data: bytes) -> Element:
    """The root element of an SVG file; ReadingError, with the line, when it is none or is broken."""
    _refuse_others(data)
    parser = expat.ParserCreate(namespace_separator=" ")
    parser.buffer_text = True
    builder = _Builder(parser)
    parser.StartElementHandler = builder.start
    parser.EndElementHandler = builder.end
    parser.CharacterDataHandler = builder.text
    parser.EntityDeclHandler = builder.entity
    try:
        parser.Parse(data, True)
    except expat.ExpatError as error:
        raise ReadingError(
            f"line {error.lineno}: the file is no sound XML from here on ({expat.ErrorString(error.code)}): it was"
            " cut short or damaged; save it again"
        ) from error
    if builder.root is None or builder.root.name != "svg":
        raise ReadingError("this is no SVG file: its first element is not svg; export it again as SVG")
    return builder.root


def _refuse_others(data: bytes) -> None:
    if data[:2] == b"\x1f\x8b":
        raise ReadingError("this is a packed SVG (svgz), which cutting programs seldom read; save it as plain SVG")
    if not data.strip():
        raise ReadingError("the file is empty; export it again")


def _plain(name: str) -> str:
    """The name of an SVG element; files that forget to name their name space are taken all the same."""
    space, _, plain = name.rpartition(" ")
    return plain if space in ("", _SPACE) else ""


def _kept(attributes: Mapping[str, str]) -> dict[str, str]:
    kept: dict[str, str] = {}
    for name, value in attributes.items():
        space, _, plain = name.rpartition(" ")
        if not space or plain in ("href", "label"):
            kept.setdefault(plain, value)
    return kept
