"""Names on what a picture shows, written where there is room between its lines."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from patternforge.drafting.rooms import Barrier, Floor, floor, path_barriers, room
from patternforge.drafting.wording import OVER, UNDER
from patternforge.drawing.lettering import text_width
from patternforge.drawing.model import Align, Role, Text
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.regions import region, united

__all__ = ["name_on"]

_CLEAR = 0.6  # words to any line, mm
_HEIGHTS = (2.2, 2.0)  # of letters, mm
_PITCH = 1.6  # from line to line, over their height


def name_on(
    name: str, ground: Path, openings: Iterable[Path], above: Iterable[Path], drawn_over: Sequence[Barrier] = ()
) -> tuple[Text, ...]:
    """``name`` on what can be seen of ``ground``, in one line or a line for each word, clear of every line.

    ``above`` covers parts of the ground; ``drawn_over`` is what else the words must keep clear of. Empty where there
    is no room.

    >>> from patternforge.geometry.corners import rounded_rectangle
    >>> card, slit = rounded_rectangle(0, 0, 22, 20, 1), rounded_rectangle(10, 6, 11, 19, 0)
    >>> [(text.content, text.at.y < 6) for text in name_on("left pocket", card, (slit,), ())]
    [('left pocket', True)]
    """
    covers = united(region(path) for path in above)
    seen = region(ground).without(covers)
    walls = [wall for path in seen.paths for wall in path_barriers(path, _CLEAR, bounds=True)]
    walls += [wall for path in openings for wall in path_barriers(path, _CLEAR, bounds=False)]
    free = floor((*walls, *drawn_over))
    for lines in dict.fromkeys(((name,), tuple(name.split()))):
        for height in _HEIGHTS:
            found = _written(free, lines, height)
            if found:
                return found
    return ()


def _written(free: Floor, lines: Sequence[str], height: float) -> tuple[Text, ...]:
    deep = (_PITCH * (len(lines) - 1) + 1 + OVER + UNDER) * height
    box = room(free, max(text_width(line, height) for line in lines), deep)
    if box is None:
        return ()
    first = Point(box.centre.x, box.y1 - (1 + OVER) * height)
    return tuple(
        Text(Role.LABEL, first - Point(0.0, _PITCH * height * row), height, line, 0.0, Align.CENTRE)
        for row, line in enumerate(lines)
    )
