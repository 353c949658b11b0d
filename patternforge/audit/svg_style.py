"""How SVG elements look: attributes, ``style``, and the plain part of style sheets (SVG 1.1, chapter 6 and 11)."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType

from patternforge.audit.svg_tree import Element

__all__ = ["START", "Rule", "rules", "style"]

# What is handed down from a group to what is in it, and how it begins.
START: Mapping[str, str] = MappingProxyType(
    {
        "stroke": "none",
        "stroke-width": "1",
        "stroke-dasharray": "none",
        "fill": "black",
        "visibility": "visible",
        "color": "black",
        "fill-opacity": "1",
        "stroke-opacity": "1",
    }
)
_OWN = ("display", "opacity", "clip-path", "mask")
_KNOWN = frozenset((*START, *_OWN))
_RULE = re.compile(r"([^{}]+)\{([^{}]*)\}")
_COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)
_SELECTOR = re.compile(r"([a-zA-Z]+|\*)?((?:[.#][-\w]+)*)")


@dataclass(frozen=True, slots=True)
class Rule:
    """One rule of a style sheet for elements of a kind, with an identifier, with classes; empty for any."""

    kind: str
    identifier: str
    classes: frozenset[str]
    values: Mapping[str, str]

    @property
    def weight(self) -> tuple[int, int, int]:
        """Which of two rules counts: the heavier one (CSS 2.1, section 6.4.3)."""
        return len(self.identifier), len(self.classes), len(self.kind)

    def fits(self, element: Element) -> bool:
        """Whether it holds for an element."""
        named = not self.identifier or element.get("id") == self.identifier
        return named and self.kind in ("", element.name) and self.classes <= set(element.get("class").split())


def rules(elements: Iterable[Element]) -> tuple[Rule, ...]:
    """The rules of all ``style`` elements, the lightest first; those with selectors of other kinds are left out.

    >>> rules([Element("style", {}, 1, text=".a, #b { fill: none }")])[0].values
    {'fill': 'none'}
    """
    sheets = (_COMMENT.sub("", element.text) for element in elements if element.name == "style")
    found = [rule for sheet in sheets for rule in _rules(sheet)]
    return tuple(sorted(found, key=lambda rule: rule.weight))


def _rules(sheet: str) -> Iterator[Rule]:
    for selectors, body in _RULE.findall(sheet):
        values = _declared(body)
        for selector in selectors.split(","):
            found = _SELECTOR.fullmatch(selector.strip())
            if found and selector.strip():
                marks = re.findall(r"[.#][-\w]+", found[2])
                identifier = next((mark[1:] for mark in marks if mark[0] == "#"), "")
                classes = frozenset(mark[1:] for mark in marks if mark[0] == ".")
                yield Rule((found[1] or "").strip("*"), identifier, classes, values)


def _declared(words: str) -> dict[str, str]:
    pairs = (part.partition(":") for part in words.split(";"))
    return {
        name.strip().lower(): value.replace("!important", "").strip()
        for name, colon, value in pairs
        if colon and name.strip().lower() in _KNOWN
    }


def style(element: Element, handed: Mapping[str, str], sheet: Sequence[Rule]) -> dict[str, str]:
    """The values that hold for an element, given those of its group: its attributes, the sheet, its own ``style``."""
    found = {name: value for name, value in handed.items() if name in START}
    own = {name: value for name, value in element.attributes.items() if name in _KNOWN}
    for rule in sheet:
        if rule.fits(element):
            own |= rule.values
    own |= _declared(element.get("style"))
    return found | {name: value for name, value in own.items() if value != "inherit"}
