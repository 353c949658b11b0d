"""A drawing inside an HTML page: the SVG of the drawing without what only a file of its own needs."""

from __future__ import annotations

from xml.etree import ElementTree

from patternforge.drawing.model import Sheet
from patternforge.export.html_words import lawful_words
from patternforge.export.svg import svg_bytes

__all__ = ["inline_svg"]


def inline_svg(sheet: Sheet, told: str) -> str:
    """``sheet`` as an SVG element of its true size; ``told`` is what it shows, for those who cannot see it.

    Elements bear no names: of several pictures on one page two would bear the same.

    >>> inline_svg(Sheet("ring", 30.0, 20.0, ()), "a ring")[:52]
    '<svg role="img" aria-label="a ring" width="30mm" hei'
    """
    drawn = ElementTree.fromstring(svg_bytes(sheet))
    size = {key: drawn.attrib[key] for key in ("width", "height", "viewBox")}
    drawn.attrib.clear()
    drawn.attrib.update({"role": "img", "aria-label": lawful_words(told), **size})
    for element in drawn.iter():
        element.tag = element.tag.rpartition("}")[2]
        element.attrib.pop("id", None)
        # A title inside is shown as a hint wherever the pointer rests; what there is to say stands in the caption.
        for title in [child for child in element if child.tag.endswith("title")]:
            element.remove(title)
    for empty in [child for child in drawn if child.tag == "defs"]:
        drawn.remove(empty)
    return ElementTree.tostring(drawn, encoding="unicode")
