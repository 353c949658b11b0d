"""SVG files read by an XML reader: one group for each piece, in it groups by operation (SVG 1.1, chapters 8 and 9).

Lengths are taken in mm through the file's own width, height and ``viewBox``; y is turned to run upwards.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from math import asin, tan
from xml.etree import ElementTree

from tests.outside.dxf_reading import Contour
from tests.outside.read_pieces import ReadHole, ReadPiece

__all__ = ["SvgFile", "svg_file"]

SPACE = "{http://www.w3.org/2000/svg}"


@dataclass(frozen=True)
class SvgFile:
    """The root of a file, how many mm one of its units is, and its height in mm."""

    root: ElementTree.Element
    scale: float
    height: float

    @property
    def groups(self) -> list[ElementTree.Element]:
        """The groups of the pieces, in order."""
        return [each for each in self.root.iter(f"{SPACE}g") if each.get("class") == "piece"]

    @property
    def pieces(self) -> list[ReadPiece]:
        """The pieces in order. ValueError for one without exactly one outline."""
        return [self._piece(group) for group in self.groups]

    def operation(self, word: str) -> list[Contour]:
        """All that is drawn of one operation, in mm."""
        groups = [each for each in self.root.iter(f"{SPACE}g") if each.get("class") == word]
        return [line for group in groups for path in group.iter(f"{SPACE}path") for line in self.contours(path)]

    def contours(self, path: ElementTree.Element) -> Iterator[Contour]:
        """The parts of a path, each begun by an M, in mm."""
        for part in re.findall(r"M[^M]*", path.attrib["d"]):
            yield self._contour(part)

    def _piece(self, group: ElementTree.Element) -> ReadPiece:
        holes: list[ReadHole] = []
        (outline,) = (line for g in self._of(group, "outline") for p in g for line in self._lines(p))
        for word in ("mark", "stitch-hole"):
            for operation in self._of(group, word):
                drawn = [element for element in operation if word != "mark" or element.tag == f"{SPACE}circle"]
                holes += [hole for element in drawn for hole in self._holes(element)]
        if not outline.closed:
            raise ValueError(f"{group.get('id')}: the outline is open")
        return ReadPiece(tuple(outline.flattened(64)), tuple(holes))

    def _of(self, group: ElementTree.Element, word: str) -> list[ElementTree.Element]:
        return [each for each in group.iter(f"{SPACE}g") if each.get("class") == word]

    def _lines(self, element: ElementTree.Element) -> Iterator[Contour]:
        return self.contours(element) if element.tag == f"{SPACE}path" else iter(())

    def _holes(self, element: ElementTree.Element) -> Iterator[ReadHole]:
        if element.tag == f"{SPACE}circle":
            at = self._place(float(element.attrib["cx"]), float(element.attrib["cy"]))
            yield ReadHole(at, 2 * float(element.attrib["r"]) * self.scale)
        for line in self._lines(element):
            start, end = line.points
            yield ReadHole((start + end) / 2, abs(end - start), (end - start) / abs(end - start))

    def _place(self, x: float, y: float) -> complex:
        return complex(x * self.scale, self.height - y * self.scale)

    def _contour(self, part: str) -> Contour:
        points: list[complex] = []
        bulges: list[float] = []
        for letter, words in re.findall(r"([MLA])([^MLAZ]*)", part):
            numbers = [float(word) for word in re.findall(r"-?[\d.]+", words)]
            at = self._place(*numbers[-2:])
            if points:
                bulges.append(self._bulge(points[-1], at, numbers) if letter == "A" else 0.0)
            points.append(at)
        closed = part.rstrip().endswith("Z")
        if closed and abs(points[-1] - points[0]) < 1e-9:
            return Contour(tuple(points[:-1]), tuple(bulges), True)
        return Contour(tuple(points), (*bulges, 0.0), closed)

    def _bulge(self, start: complex, end: complex, numbers: list[float]) -> float:
        """The bulge of an arc of at most half a circle; swept flag 1 runs clockwise once y is turned upwards."""
        rx, ry, _, large, clockwise, *_ = numbers
        if rx != ry or large:
            raise ValueError("an ellipse, or an arc of more than half a circle")
        half = asin(min(1.0, abs(end - start) / 2 / (rx * self.scale)))
        return tan(half / 2) * (-1 if clockwise else 1)


def svg_file(text: str) -> SvgFile:
    """The file; ValueError when width and height are not in mm or do not agree with the ``viewBox``."""
    root = ElementTree.fromstring(text)
    sizes = [root.attrib[side] for side in ("width", "height")]
    x0, y0, *box = (float(word) for word in root.attrib["viewBox"].split())
    if (x0, y0) != (0, 0) or not all(size.endswith("mm") for size in sizes):
        raise ValueError(f"a size of {sizes} and a viewBox from {x0}, {y0}")
    width, height = (float(size.removesuffix("mm")) for size in sizes)
    if abs(width / box[0] - height / box[1]) > 1e-9:
        raise ValueError("width and height do not agree with the viewBox")
    return SvgFile(root, width / box[0], height)
