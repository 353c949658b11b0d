"""Whether items go in, rest and show: clear widths between stitch lines, floors, mouths, measured on the pieces."""

from __future__ import annotations

import math
from collections.abc import Iterator

from patternforge.fit.findings import Finding, Limit, Stretch, at_least, at_most, reaches, within
from patternforge.fit.layout import LaidHole, Layout, across, along
from patternforge.fit.means import to_lower
from patternforge.geometry.point import Point
from patternforge.leather.contents import Item, Section
from patternforge.wallet.pattern import EdgeRole, Pocket
from patternforge.wallet.spec import Edge, Side
from patternforge.wallet.strip import StripPlacement

__all__ = ["pocket_findings"]

_REST = 0.3  # mm an item may rest off its place
_SNUG = 0.0  # ease below which an item does not go in
_NOTE_EASE = 4.0  # mm a note wants over its length; common practice 6 to 15 over the note with its margins, no source
_LOOSE_EASE = 1.5  # mm an item on one panel wants beyond its taut path; common practice, no source
_SAG = 3.0  # mm an item may sink past its place
_KEPT = 0.5  # share of a pocket's depth left at its mouth's deepest cut, and the least; common practice, no source
_BARELY_KEPT = 0.3
_GRIP = 4.0  # mm of an item a finger and thumb hold; common practice, no source


def pocket_findings(layout: Layout) -> Iterator[Finding]:
    """Width, rest and show of every pocket, room behind layers, distance of items from the folds; not of gussets."""
    strips = {piece.name for piece in layout.pattern.pieces if isinstance(piece.placement, StripPlacement)}
    for pocket in (each for each in layout.pattern.pockets if each.piece not in strips):
        yield from (_held_findings if pocket.held else _slot_findings)(layout, pocket)


def _corners(pocket: Pocket) -> tuple[Point, Point]:
    x0, y0, x1, y1 = pocket.box
    return Point(x0, y0), Point(x1, y1)


def _rise(pocket: Pocket) -> tuple[float, float]:
    """The item's extent towards the opening."""
    low, high = sorted(along(pocket.opening, corner) for corner in _corners(pocket))
    return low, high


def _breadth(pocket: Pocket) -> tuple[float, float]:
    """The item's extent along the mouth."""
    low, high = sorted(across(pocket.opening, corner) for corner in _corners(pocket))
    return low, high


def _slot_findings(layout: Layout, pocket: Pocket) -> Iterator[Finding]:
    holes = _joined_behind(layout, pocket)
    floor = _floor(pocket, holes)
    where = f"{pocket.content} in {pocket.piece}"
    if floor is None:
        yield Finding("item rests on a row of stitches", where, 0, at_least(1, 1), "give the pocket a floor seam", "")
        return
    yield _width(layout, pocket, holes, floor, where)
    yield _rest(pocket, floor, where)
    yield from _shows(layout, pocket, floor, where)
    yield _kept(layout, pocket, floor, where)
    yield from _covered(layout, pocket, where)
    yield from _off_folds(layout, pocket, where)


def _joined_behind(layout: Layout, pocket: Pocket) -> tuple[LaidHole, ...]:
    """The holes of the pocket's wall that also go through something behind the item: only they hold it in."""
    wall = layout.pattern.piece(pocket.piece)
    sheets = {p.name for p in layout.pattern.pieces if p.lines == wall.name}
    side = 1 if wall.showing is Side.OUTSIDE else -1
    behind = {
        (hole.seam, hole.index)
        for piece in layout.pattern.pieces
        if side * (piece.level - wall.level) > 0 and piece.name not in sheets
        for hole in piece.holes
    }
    return tuple(hole for hole in layout.holes[wall.name] if (hole.seam, hole.index) in behind)


def _floor(pocket: Pocket, holes: tuple[LaidHole, ...]) -> float | None:
    """The highest row of stitches under the item's middle half, within the lower half of the pocket."""
    low, high = _breadth(pocket)
    middle, reach = (low + high) / 2, (high - low) / 4
    bottom, top = _rise(pocket)
    rows = [
        along(pocket.opening, hole.at)
        for hole in holes
        if abs(across(pocket.opening, hole.at) - middle) < reach
        and along(pocket.opening, hole.at) < (bottom + top) / 2
    ]
    return max(rows, default=None)


def _width(layout: Layout, pocket: Pocket, holes: tuple[LaidHole, ...], floor: float, where: str) -> Finding:
    """Clear width between stitch lines against the taut path round all items that lie over each other there.

    Measured above the item's own rounded corners, which make room for stitches that turn a corner.
    """
    low, high = _breadth(pocket)
    middle = (low + high) / 2
    rounding = 1.0 + layout.items[pocket.content].corner_radius
    beside = [across(pocket.opening, h.at) for h in holes if along(pocket.opening, h.at) > floor + rounding]
    left, right = [a for a in beside if a < middle], [a for a in beside if a > middle]
    if not left or not right:
        return Finding(
            "clear width", where, 0.0, at_least(high - low, high - low), "a side of the pocket is not sewn"
        )
    clear = min(right) - max(left)
    taut = half_girth(layout.items[pocket.content], high - low, _thickness_over(layout, pocket))
    ease = clear - taut
    most = layout.pattern.design.limits.max_ease
    limit = Limit(Stretch(taut + min(pocket.ease, 1.5), taut + most), Stretch(low=taut + _SNUG))
    short = f"widen the pocket by {pocket.ease - ease:.2f} mm" if not reaches(ease, pocket.ease) else ""
    loose = "the item slides about: narrow the pocket" if ease > most else ""
    return Finding("clear width between stitch lines", where, clear, limit, short or loose)


def half_girth(item: Item, breadth: float, thickness: float) -> float:
    """Half the way round what lies in a pocket: a flat stack of that breadth and thickness, or one round item, mm."""
    if item.section is Section.ROUND:
        return math.pi * item.thickness / 2
    return breadth + thickness


def _thickness_over(layout: Layout, pocket: Pocket) -> float:
    """Thickness of the items of the same part that lie over each other where this one lies, mm."""
    same = [p for p in layout.pattern.pockets if p.part == pocket.part and _overlap(p.box, pocket.box)]
    thickest = 0.0
    for probe in same:
        x, y = probe.box[0] + 0.01, probe.box[1] + 0.01
        over = [p for p in same if p.box[0] <= x <= p.box[2] and p.box[1] <= y <= p.box[3]]
        corner = sum(p.count * layout.items[p.content].thickness for p in over)
        thickest = max(thickest, corner)
    return thickest


def _overlap(a: tuple[float, float, float, float], b: tuple[float, float, float, float]) -> bool:
    return a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]


def _rest(pocket: Pocket, floor: float, where: str) -> Finding:
    off = floor - _rise(pocket)[0]
    limit = within(_REST, 2.0)
    return Finding("item rests off its place", where, off, limit, "" if limit.good.holds(off) else "move its floor")


def _shows(layout: Layout, pocket: Pocket, floor: float, where: str) -> Iterator[Finding]:
    """How far the item stands out of its mouth, and whether its top stays below the closed edge."""
    bottom, top = _rise(pocket)
    height = top - bottom
    ply = next(p for p in layout.plies if p.outline and p.name == pocket.piece)
    mouth = max(along(pocket.opening, Point(x, y)) for x, y, _ in ply.outline.vertices) if ply.outline else 0.0
    trim = dict(layout.pattern.piece(pocket.piece).trims).get(pocket.opening, 0.0)
    show = floor + height - (mouth - trim)
    if show >= 0:
        remedy = "" if show >= _GRIP else "raise show"
        yield Finding("item stands out of its mouth", where, show, at_least(_GRIP, 0.0), remedy)
    edge = _closed_edge(layout, pocket)
    below = edge - (floor + height)
    remedy = (
        "" if below >= 0.5 else f"the item would stand out of the closed wallet: {to_lower(layout.pattern, pocket)}"
    )
    yield Finding("item's top below the edge", where, below, at_least(0.5, 0.0), remedy)


def _kept(layout: Layout, pocket: Pocket, floor: float, where: str) -> Finding:
    """The share of the item that its wall still covers at the deepest cut of its mouth."""
    ply = next(p for p in layout.plies if p.outline and p.name == pocket.piece)
    piece = layout.pattern.piece(pocket.piece)
    low, high = _breadth(pocket)
    cuts = [
        along(pocket.opening, at)
        for segment, role in zip(piece.made.segments, piece.made_edges, strict=True)
        if role is EdgeRole.MOUTH
        for at in piece.placement.on_assembly([segment.start, segment.point_at(segment.length / 2), segment.end])
        if low <= across(pocket.opening, at) <= high
    ]
    top = max(along(pocket.opening, Point(x, y)) for x, y, _ in ply.outline.vertices) if ply.outline else 0.0
    bottom, crown = _rise(pocket)
    share = (min([*cuts, top]) - floor) / min(crown - bottom, top - floor)
    remedy = "" if share >= _KEPT else "cut the mouth less deep, or the item tips out"
    limit = at_least(100 * _KEPT, 100 * _BARELY_KEPT)
    return Finding("item covered at the deepest cut", where, 100 * share, limit, remedy, "%")


def _covered(layout: Layout, pocket: Pocket, where: str) -> Iterator[Finding]:
    """Another part lying over the mouth on the side the item is reached from."""
    wall = layout.pattern.piece(pocket.piece)
    side = -1 if wall.showing is Side.OUTSIDE else 1
    x0, y0, x1, y1 = pocket.box
    middle = Point((x0 + x1) / 2, (y0 + y1) / 2)
    rise = {Edge.TOP: Point(0, 1), Edge.BOTTOM: Point(0, -1), Edge.LEFT: Point(-1, 0), Edge.RIGHT: Point(1, 0)}
    low, high = _rise(pocket)
    mouth = middle + rise[pocket.opening] * ((high - low) / 2 - max(pocket.show, 0.0) / 2)
    for ply in layout.plies:
        over = ply.of and side * (ply.order - wall.level) > 0 and ply.part != pocket.part
        if over and ply.holds(mouth):
            remedy = "list parts from the outside in, or lower that part below the mouth"
            yield Finding(f"mouth lies under {ply.name}", where, 1, at_most(0, math.inf), remedy, "")


def _closed_edge(layout: Layout, pocket: Pocket) -> float:
    """The edge or fold tangent the item goes in towards, in that direction, on the panels it may lie on."""
    first, last = layout.pattern.panels[pocket.panels[0]], layout.pattern.panels[pocket.panels[-1]]
    ends = {
        Edge.TOP: Point(0.0, layout.pattern.height),
        Edge.BOTTOM: Point(0.0, 0.0),
        Edge.LEFT: Point(first.x0, 0.0),
        Edge.RIGHT: Point(last.x1, 0.0),
    }
    return along(pocket.opening, ends[pocket.opening])


def _off_folds(layout: Layout, pocket: Pocket, where: str) -> Iterator[Finding]:
    panel = layout.pattern.panels[pocket.panel]
    last = len(layout.pattern.panels) - 1
    rooms = []
    if pocket.panel > 0:
        rooms.append(pocket.box[0] - panel.x0)
    if pocket.panel < last:
        rooms.append(panel.x1 - pocket.box[2])
    if rooms:
        room = min(rooms)
        remedy = "" if room >= 1.0 else "the item reaches into the bend: more relief or a wider panel"
        yield Finding("item clear of the fold", where, room, at_least(1.0, 0.0), remedy)


def _held_findings(layout: Layout, pocket: Pocket) -> Iterator[Finding]:
    """Length between the stitch lines of the shortest wall, and height from the floor to the highest edge."""
    where = f"{pocket.content} behind {pocket.piece}"
    low, high = _breadth(pocket)
    clear = min(_wall(layout, pocket, name) for name in _walls(layout, pocket))
    item = layout.items[pocket.content]
    need = half_girth(item, high - low, pocket.count * item.thickness)
    ease = _NOTE_EASE if len(pocket.panels) > 1 else _LOOSE_EASE
    limit = at_least(need + ease, need + min(1.0, ease))
    remedy = "" if limit.good.holds(clear) else f"lengthen the wallet by {need + ease - clear:.2f} mm"
    yield Finding("clear length on the shortest wall", where, clear, limit, remedy)
    yield _bed(layout, pocket, where)
    _, top = _rise(pocket)
    room = _closed_edge(layout, pocket) - top
    remedy = "" if room >= 0.5 else "the item would stand out of the closed wallet: more height"
    yield Finding("item's top below the edge", where, room, at_least(0.5, 0.0), remedy)


def _bed(layout: Layout, pocket: Pocket, where: str) -> Finding:
    """How far the item could slide on past its place before a row that joins both its walls stops it."""
    low, high = _breadth(pocket)
    bottom, _ = _rise(pocket)
    both = [{(hole.seam, hole.index) for hole in layout.holes[name]} for name in _walls(layout, pocket)]
    joined = set.intersection(*both)
    rows = [
        along(pocket.opening, hole.at)
        for hole in layout.holes[pocket.piece]
        if (hole.seam, hole.index) in joined and low < across(pocket.opening, hole.at) < high
    ]
    below = [row for row in rows if row <= bottom + _SAG]
    if not below:
        remedy = "sew the walls together below the item"
        return Finding("item rests on stitches", where, 0, at_least(1, 1), remedy, "")
    slide = max(bottom - max(below), 0.0)
    remedy = "" if slide <= _SAG else "it can slide past the fold: sew a row below it, if it must stay on its panel"
    return Finding("item may slide past its place", where, slide, at_most(_SAG, math.inf), remedy)


def _walls(layout: Layout, pocket: Pocket) -> list[str]:
    """The piece the item lies behind and the one it lies before, of those that seams hold."""
    own = layout.pattern.piece(pocket.piece)
    passed = {pocket.part, *layout.pattern.design.glued}
    before = (p for p in layout.pattern.pieces if p.level < own.level and p.part not in passed)
    outer = [p.name for p in before if set(p.placement.panels) & set(pocket.panels)]
    return [own.name, *outer[-1:]]


def _wall(layout: Layout, pocket: Pocket, name: str) -> float:
    """Flat length of a wall between the innermost stitch lines on either side of the item, mm."""
    piece = layout.pattern.piece(name)
    low, high = _breadth(pocket)
    bottom, top = _rise(pocket)
    rest = bottom + 1.0 + layout.items[pocket.content].corner_radius
    beside = [
        hole
        for hole, flat in zip(layout.holes[name], piece.holes, strict=True)
        if rest < along(pocket.opening, hole.at) < top and _declared(layout, hole.seam)
    ]
    middle = (low + high) / 2
    left = [h.at for h in beside if across(pocket.opening, h.at) < middle]
    right = [h.at for h in beside if across(pocket.opening, h.at) > middle]
    if not left or not right:
        return 0.0
    ends = (max(left, key=lambda p: across(pocket.opening, p)), min(right, key=lambda p: across(pocket.opening, p)))
    flat = [piece.placement.to_piece(end) for end in ends]
    return max(abs(flat[0].x - flat[1].x), abs(flat[0].y - flat[1].y))


def _declared(layout: Layout, seam: str) -> bool:
    return any(s.name == seam and not s.inner for s in layout.pattern.seams)
