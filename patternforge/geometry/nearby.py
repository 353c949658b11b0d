"""Which of many boxes lie near one another, found through a grid: ten times as many take ten times as long."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from math import floor, sqrt

from patternforge.geometry.boxes import Box
from patternforge.geometry.point import COINCIDENT

__all__ = ["Grid", "near_pairs"]

_WIDE = 2000  # cells; what covers more is compared with everything
_STRAY = 0.02  # share of the boxes on either side that do not decide how large a cell is

Cells = tuple[range, range]


class Grid:
    """Boxes laid on square cells, about as many as there are boxes; built once, then asked what lies near a box.

    >>> grid = Grid([(0, 0, 2, 2), (5, 5, 6, 6)])
    >>> grid.near((1, 1, 4.5, 4.5), reach=1.0)
    [0, 1]
    """

    __slots__ = ("_boxes", "_cells", "_side", "_wide")

    def __init__(self, boxes: Sequence[Box], least: float = 0.0) -> None:
        self._boxes = boxes
        self._side = max(_side(boxes), least)
        self._wide: list[int] = []
        self._cells: dict[tuple[int, int], list[int]] = {}
        for index, box in enumerate(boxes):
            columns, rows = self._under(box, 0.0)
            if len(columns) * len(rows) > _WIDE:
                self._wide.append(index)
                continue
            for column in columns:
                for row in rows:
                    self._cells.setdefault((column, row), []).append(index)

    def near(self, box: Box, reach: float = 0.0) -> list[int]:
        """The numbers of the boxes that come within ``reach`` mm of ``box`` both across and upwards, rising."""
        return sorted(index for index in self._candidates(box, reach) if _is_near(self._boxes[index], box, reach))

    def pairs(self, reach: float = 0.0) -> Iterator[tuple[int, int]]:
        """The index pairs of boxes that come so near one another, each once, the lower number first."""
        for index, box in enumerate(self._boxes):
            yield from ((index, other) for other in self.near(box, reach) if other > index)

    def _candidates(self, box: Box, reach: float) -> Iterable[int]:
        columns, rows = self._under(box, reach)
        if len(columns) * len(rows) > _WIDE:
            return range(len(self._boxes))
        cells = self._cells
        found = set(self._wide)
        for column in columns:
            for row in rows:
                if (column, row) in cells:
                    found.update(cells[column, row])
        return found

    def _under(self, box: Box, reach: float) -> Cells:
        side, slack = self._side, reach + COINCIDENT
        columns = range(floor((box[0] - slack) / side), floor((box[2] + slack) / side) + 1)
        return columns, range(floor((box[1] - slack) / side), floor((box[3] + slack) / side) + 1)


def near_pairs(boxes: Sequence[Box], reach: float = 0.0) -> Iterator[tuple[int, int]]:
    """The index pairs of the boxes that come within ``reach`` mm of each other both across and upwards, each once.

    >>> list(near_pairs([(0, 0, 2, 2), (2.5, 1, 3, 3), (9, 9, 9, 9)], reach=1.0))
    [(0, 1)]
    """
    return Grid(boxes, 2 * reach).pairs(reach)


def _side(boxes: Sequence[Box]) -> float:
    """The side of a cell when there are about as many cells as boxes; a few boxes far away do not count."""
    if not boxes:
        return 1.0
    width, height = _spread([box[0] for box in boxes]), _spread([box[1] for box in boxes])
    return max(sqrt(width * height / len(boxes)), (width + height) / (2 * len(boxes)), 1e-3)


def _spread(values: list[float]) -> float:
    ordered = sorted(values)
    left_out = int(_STRAY * len(ordered))
    return ordered[len(ordered) - 1 - left_out] - ordered[left_out]


def _is_near(a: Box, b: Box, reach: float) -> bool:
    slack = reach + COINCIDENT
    return a[0] <= b[2] + slack and b[0] <= a[2] + slack and a[1] <= b[3] + slack and b[1] <= a[3] + slack
