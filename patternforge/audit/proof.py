"""A file held against what it was to hold, line by line; and whether what is cut by it can be cut so."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import zip_longest
from math import hypot
from types import MappingProxyType

from patternforge.audit.flaws import Flaw
from patternforge.audit.model import CutFile, Entity, FileKind, Odd, Ring, Shape, box_of
from patternforge.audit.ordered import Ordered, OrderedLine
from patternforge.audit.rules.bits import bit_flaws
from patternforge.audit.rules.contours import loose_flaws
from patternforge.audit.rules.crossings import crossing_flaws
from patternforge.audit.rules.doubles import double_flaws
from patternforge.audit.rules.kinds import kind_flaws, sight_flaws, zero_flaws
from patternforge.audit.rules.order import order_flaws
from patternforge.audit.rules.sizes import unit_flaws
from patternforge.audit.scene import Scene, scene
from patternforge.fit.findings import Verdict
from patternforge.geometry.boxes import Box
from patternforge.geometry.point import Point
from patternforge.units import counted, mm

__all__ = ["cut_flaws", "file_flaws"]

_OUTLINE = "outline"


@dataclass(frozen=True, slots=True)
class _Slack:
    """How far a file may stray by the numbers it is written with: in places, mm; in lengths and radii by a share."""

    place: float
    length: float
    radius: float

    def of_length(self, length: float) -> float:
        """By how much a line so long may differ, mm."""
        return length * self.length + 5 * self.place


# Millionths of a mm in DXF; ten-thousandths in SVG, which tell on the radius of a short arc; in plots half of 1/40 mm
# and the chords of arcs.
_SLACKS: Mapping[FileKind, _Slack] = MappingProxyType(
    {
        FileKind.DXF: _Slack(1e-5, 1e-6, 1e-3),
        FileKind.SVG: _Slack(5e-4, 1e-3, 0.02),
        FileKind.HPGL: _Slack(0.02, 0.03, 0.0),
    }
)


def file_flaws(file: CutFile, ordered: Ordered) -> Iterator[Flaw]:
    """Where a file is not what was ordered: kind, release, unit, kinds of lines, size over all, every line, counts.

    What is told first is nearest to the cause. A file without a flaw holds the ordered lines and no others, in their
    order, each in its place within the decimals of its kind of file.
    """
    bare = Scene(file, file.cuts, (), (), (), ())
    yield from _head_flaws(file, ordered)
    yield from unit_flaws(bare)
    yield from kind_flaws(bare)
    yield from sight_flaws(bare)
    yield from (flaw for flaw in zero_flaws(bare) if file.kind is not FileKind.HPGL)
    yield from _fill_flaws(file)
    yield from _size_flaws(file, ordered)
    yield from _line_flaws(file, ordered)
    yield from _count_flaws(file, ordered)


def cut_flaws(file: CutFile, ordered: Ordered) -> Iterator[Flaw]:
    """What cannot be cut as it is drawn in a file that ``file_flaws`` found nothing in, marks left out.

    Cuts that are doubled or cross, lines in no piece, an outline before what lies in it, arcs broken into bits.
    Chords that were ordered are no flaw, nor is a file that was to have no outlines.
    """
    through = [each for each, line in zip(_drawing(file), ordered.lines, strict=True) if line.through]
    laid_out = scene(replace(file, entities=tuple(through)))
    yield from double_flaws(laid_out)
    yield from crossing_flaws(laid_out)
    yield from order_flaws(laid_out)
    if any(line.word == _OUTLINE for line in ordered.lines):
        yield from loose_flaws(laid_out)
    if not ordered.stray:
        yield from bit_flaws(laid_out)


def _head_flaws(file: CutFile, ordered: Ordered) -> Iterator[Flaw]:
    if file.kind is not ordered.kind:
        yield _flaw("kind of file", f"is {file.kind} and not {ordered.kind}")
    if ordered.release and file.version != ordered.release:
        yield _flaw("release", f"is of release {file.version} and not {ordered.release}")
    if ordered.page and file.page and not _alike((file.page.width, file.page.height), ordered.page, 1e-3):
        sizes = " and not ".join(_by(*each) for each in ((file.page.width, file.page.height), ordered.page))
        yield _flaw("page", f"its page is {sizes}")


def _fill_flaws(file: CutFile) -> Iterator[Flaw]:
    for each in file.entities:
        if each.look.filled:
            yield _flaw("filled", "is filled: many machines engrave the area", each.at, each)


def _size_flaws(file: CutFile, ordered: Ordered) -> Iterator[Flaw]:
    read, wanted = _over_all([_box(each) for each in _drawing(file)]), _over_all([each.box for each in ordered.lines])
    # A line that is left out or astray changes the size too, and is told with its place; a wrong scale changes all.
    factor = _extent(read) / max(_extent(wanted), 1e-9)
    if not 0.9 < factor < 1.1:
        guess = (
            f"; that is {mm(max(factor, 1 / max(factor, 1e-9)), 1)} times too {'large' if factor > 1 else 'small'}"
        )
        what = f"measures {_by(*_sides(read))} over all and not {_by(*_sides(wanted))}{guess}"
        yield _flaw("size", what, Point(read[0], read[1]))


def _line_flaws(file: CutFile, ordered: Ordered) -> Iterator[Flaw]:
    """The first line that is not as ordered: behind a missing one nothing would be in its place."""
    read, slack = _drawing(file), _SLACKS[file.kind]
    for found, wanted in zip_longest(read, ordered.lines):
        flaw = _difference(found, wanted, slack)
        if flaw is not None:
            yield _told_by_number(flaw, found, wanted, len(read) - len(ordered.lines))
            return


def _told_by_number(flaw: Flaw, found: Entity | None, wanted: OrderedLine | None, more: int) -> Flaw:
    """The flaw, or where lines are missing or too many that they are."""
    if more < 0 and wanted is not None:
        return _flaw("missing", f"{counted(-more, wanted.word)} missing, the first here", _middle(wanted.box))
    if more > 0 and found is not None:
        return _flaw("too many", f"{counted(more, 'more line')} than drawn, the first here", found.at, found)
    return flaw


def _difference(found: Entity | None, wanted: OrderedLine | None, slack: _Slack) -> Flaw | None:
    if found is None or wanted is None:
        return _flaw("lines", "the lines are not those that were drawn")
    if found.look.layer.rpartition("--")[2] != wanted.layer and found.look.layer != wanted.layer:
        return _flaw("layer", f"a line on {found.look.layer} where {wanted.layer} was due", found.at, found)
    if wanted.colour and found.look.colour != wanted.colour:
        return _flaw("colour", f"has the colour {found.look.colour} and not {wanted.colour}", found.at, found)
    if wanted.closed and not _closes(found):
        return _open(found, wanted)
    if not _alike(_box(found), wanted.box, slack.place):
        away = _middle(_box(found)).distance_to(_middle(wanted.box))
        how = f"lies {mm(away, 3)} mm from its place" if away > slack.place else "is not of its size"
        return _flaw("place", f"{_a(wanted.word)} {how}", _middle(wanted.box), found)
    if found.shape is None:
        return None
    if _closes(found) is not wanted.closed or not _runs_alike(found.shape, wanted, slack):
        return _flaw("course", f"{_a(wanted.word)} runs another way than it is drawn", _middle(wanted.box), found)
    return _radius_flaw(found, wanted, slack) if slack.radius else None


def _runs_alike(shape: Shape, wanted: OrderedLine, slack: _Slack) -> bool:
    """Whether a line is as long as the ordered one, and holds as much, the same way round where it is no circle."""
    if abs(shape.length - wanted.length) > slack.of_length(wanted.length):
        return False
    if isinstance(shape, Ring) or not shape.closed:
        return True
    return abs(shape.area - wanted.area) <= wanted.length * slack.place


def _open(found: Entity, wanted: OrderedLine) -> Flaw:
    if found.shape is None or isinstance(found.shape, Ring):
        return _flaw("open contour", f"{_a(wanted.word)} has no length", found.at, found)
    start, end = found.shape.start, found.shape.end
    gap = start.distance_to(end)
    what = f"is open by {mm(gap, 3)} mm" if gap > 1e-6 else "ends where it began, but is not marked as closed"
    return _flaw("open contour", f"{_a(wanted.word)} {what}", (start + end) / 2, found)


def _radius_flaw(found: Entity, wanted: OrderedLine, slack: _Slack) -> Flaw | None:
    read = _radius(found)
    if read is None and wanted.radius is None:
        return None
    if read is None or wanted.radius is None or abs(read - wanted.radius) > slack.radius * wanted.radius:
        said = " and not ".join("no arc" if each is None else f"{mm(each, 3)} mm" for each in (read, wanted.radius))
        what = f"{_a(wanted.word)} whose smallest radius is {said}"
        return _flaw("radius", what, _middle(wanted.box), found)
    return None


def _count_flaws(file: CutFile, ordered: Ordered) -> Iterator[Flaw]:
    """Whether there are as many lines of each kind as the pattern has, and outlines as large as its pieces."""
    counts = Counter(line.word for line in ordered.lines)
    for word, wanted in ordered.counts.items():
        if counts[word] != wanted:
            yield _flaw("count", f"holds {counted(counts[word], word)}, but the pattern has {wanted}")
    outlines = [each for each, line in zip(_drawing(file), ordered.lines, strict=False) if line.word == _OUTLINE]
    slack = _SLACKS[file.kind].place * 2 + 2 * ordered.stray
    for entity, piece in zip(outlines, ordered.pieces, strict=False):
        read, due = _sides(_box(entity)), (piece.width, piece.height)
        if not all(-slack <= one - other <= piece.room + slack for one, other in zip(read, due, strict=True)):
            what = f"{piece.name} is {_by(*read)}, and {_by(*due)} by the pattern"
            yield _flaw("piece", what, entity.at, entity)


def _drawing(file: CutFile) -> list[Entity]:
    """What draws a line, be it as short as a dot."""
    return [each for each in file.entities if each.shape is not None or each.has(Odd.ZERO)]


def _box(entity: Entity) -> Box:
    at = entity.at
    return (at.x, at.y, at.x, at.y) if entity.shape is None else box_of(entity.shape)


def _closes(entity: Entity) -> bool:
    shape = entity.shape
    return shape is not None and (isinstance(shape, Ring) or shape.closed)


def _radius(entity: Entity) -> float | None:
    shape = entity.shape
    if shape is None or isinstance(shape, Ring):
        return None if shape is None else shape.radius
    return min((segment.radius for segment in shape.segments if segment.is_arc), default=None)


def _over_all(boxes: Sequence[Box]) -> Box:
    if not boxes:
        return 0.0, 0.0, 0.0, 0.0
    lefts, bottoms, rights, tops = zip(*boxes, strict=True)
    return min(lefts), min(bottoms), max(rights), max(tops)


def _sides(box: Box) -> tuple[float, float]:
    return box[2] - box[0], box[3] - box[1]


def _extent(box: Box) -> float:
    return hypot(*_sides(box))


def _middle(box: Box) -> Point:
    return Point((box[0] + box[2]) / 2, (box[1] + box[3]) / 2)


def _alike(one: Sequence[float], other: Sequence[float], slack: float) -> bool:
    return all(abs(a - b) <= slack for a, b in zip(one, other, strict=True))


def _by(width: float, height: float) -> str:
    return f"{mm(width)} x {mm(height)} mm"


def _a(word: str) -> str:
    return f"an {word}" if word[0] in "aeiou" else f"a {word}"


def _flaw(kind: str, what: str, at: Point | None = None, on: Entity | None = None) -> Flaw:
    return Flaw(Verdict.NO, kind, what, "write it again", at, on.name if on else "")
