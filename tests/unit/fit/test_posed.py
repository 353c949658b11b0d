"""The wallet posed between laid open and closed: layers keep their lengths, plates lie where fit lays them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import combinations, pairwise
from math import dist, pi

import pytest

from patternforge.fit.bulk_map import closed_map
from patternforge.fit.close import closed_wallet
from patternforge.fit.folded import closed_as_loaded
from patternforge.fit.folded_close import ClosedFolded
from patternforge.fit.layout import Layout
from patternforge.fit.posed.model import Body, FlatCell, Model, Place
from patternforge.fit.posed.pose import Pose, bent_place, flat_place, pose, standing
from patternforge.fit.posed.row import row_model
from patternforge.fit.section import closed_section
from patternforge.geometry.path import polygon
from patternforge.geometry.point import Point
from patternforge.wallet.pattern import Piece
from patternforge.wallet.spec import FoldSpec, Part
from tests.posed_wallets import DESIGNS, FOLDED, ROWS, closed_row, laid, model, pattern, walked
from tests.unit.fit.found import small
from tests.unit.fit.test_section import laid as laid_out
from tests.unit.wallet.built import pocket, shell

SHARES = (0.0, 0.5, 1.0)
TRUE = 0.05  # mm
STEP = 0.2  # mm from place to place along a layer

# Rows whose folds all close flat; the others keep a spine between their covers.
FLAT = [name for name in ROWS if "angle: 90" not in DESIGNS[name].read_text(encoding="utf-8")]
FOLDING = [name for name in ROWS if "angle:" in DESIGNS[name].read_text(encoding="utf-8")]


def of_shell(angle: float = 180.0, panels: int = 2, *parts: Part) -> tuple[Layout, Model]:
    """A shell of 1.2 mm whose panels are 100 mm wide, and what else lies on it."""
    folds = (FoldSpec(angle, relief=5.0),) * (panels - 1)
    closing = tuple(range(1, panels))
    found = laid_out(small(shell(panels), *parts, widths=(100.0,) * panels, folds=folds, closing=closing))
    return found, row_model(found, closed_wallet(found))


def steps(low: float, high: float) -> list[float]:
    count = max(int((high - low) / STEP), 1)
    return [low + (high - low) * i / count for i in range(count + 1)]


def named(found: Model, name: str) -> Body:
    (body,) = [body for body in found.bodies if body.name == name]
    return body


def height(found: Model, now: Pose) -> float:
    """From the lowest to the highest of all prisms on plates."""
    levels = [place[2] for body in found.bodies for cell in body.flat for place in placed(found, now, cell)]
    return max(levels) - min(levels)


def placed(found: Model, now: Pose, cell: FlatCell) -> list[Place]:
    places = [(x, y, z) for z in (cell.low, cell.high) for x, y in cell.ground.corners]
    return [standing(found, now, flat_place(found, now, cell.plate, cell.track, place)) for place in places]


# ---- lengths


def tracks_of(name: str, piece: Piece) -> dict[int, int]:
    """The track of a piece's thickest leather in every fold it crosses, by the panel to the right."""
    found = model(name)
    cells = sorted(named(found, piece.name).bent, key=lambda cell: cell.high - cell.low)
    plies = {c.track for c in cells}
    tracks = {}
    for cell in cells:
        crossing = found.crossings[found.tracks[cell.track].crossing]
        if crossing.length == pytest.approx(flat_length(piece, name, crossing.plate)) and cell.track in plies:
            tracks[crossing.plate] = min(
                (t for t in crossing.tracks if t in plies), key=lambda t: abs(t - crossing.tracks[0])
            )
    return tracks


def flat_length(piece: Piece, name: str, plate: int) -> float:
    fold, flat = pattern(name).folds[plate - 1], piece.placement.development.flat
    return flat(fold.x1) - flat(fold.x0)


def layer_length(name: str, piece: Piece, share: float) -> float:
    """How long a piece is along its fibre from edge to edge, halfway up, through all the folds it crosses."""
    found, wallet, flat = model(name), pattern(name), piece.placement.development.flat
    now, tracks = pose(found, share), tracks_of(name, piece)
    y, (x0, x1) = level_ends(name, piece)
    total = 0.0
    for panel in sorted(piece.placement.panels):
        drafted, left, right = wallet.panels[panel], tracks.get(panel, -1), tracks.get(panel + 1, -1)
        level = found.tracks[left].high if left >= 0 else found.tracks[right].low
        across = steps(max(x0, drafted.x0), min(x1, drafted.x1))
        total += walked([flat_place(found, now, panel, left, (x, y, level)) for x in across])
        if right >= 0:
            fold = wallet.folds[panel]
            bend = [bent_place(found, now, right, (flat(x) - flat(fold.x0), y, 0.0)) for x in steps(fold.x0, fold.x1)]
            total += walked(bend)
            before = flat_place(found, now, panel, left, (fold.x0, y, found.tracks[right].low))
            beyond = flat_place(found, now, panel + 1, right, (fold.x1, y, found.tracks[right].high))
            assert dist(before, bend[0]) < TRUE
            assert dist(beyond, bend[-1]) < TRUE
    return total


def level_ends(name: str, piece: Piece) -> tuple[float, tuple[float, float]]:
    ply = next(ply for ply in laid(name).plies if ply.name == piece.name)
    ends = ply.edges_at(ply.bounds.centre.y)
    return ply.bounds.centre.y, (ends[0], ends[-1])


@pytest.mark.parametrize("name", FOLDING)
def test_a_layer_is_as_long_through_its_folds_as_its_flat_piece_however_far_it_is_closed(name: str) -> None:
    pieces = [piece for piece in pattern(name).pieces if len(piece.placement.panels) > 1]
    assert pieces
    for piece in pieces:
        y, ends = level_ends(name, piece)
        a, b = (piece.placement.to_piece(Point(x, y)) for x in ends)
        for share in SHARES:
            assert layer_length(name, piece, share) == pytest.approx(a.distance_to(b), abs=TRUE)


@pytest.mark.parametrize("name", FOLDED)
def test_a_fold_of_a_folded_wallet_keeps_its_length_and_both_faces(name: str) -> None:
    found = model(name)
    for share in SHARES:
        now = pose(found, share)
        for crossing in found.crossings:
            (track,) = crossing.tracks
            hinge = found.plates[crossing.plate].hinge
            assert hinge is not None
            bend = [bent_place(found, now, track, (u, 3.0, 0.0)) for u in steps(0.0, crossing.length)]
            assert walked(bend) == pytest.approx(crossing.length, abs=TRUE)
            on, off = (along(hinge.at, hinge.way, at, 3.0) for at in (0.0, hinge.zone))
            level = found.tracks[track].low
            assert dist(bend[0], flat_place(found, now, hinge.parent, -1, (on.x, on.y, level))) < TRUE
            assert dist(bend[-1], flat_place(found, now, crossing.plate, track, (off.x, off.y, level))) < TRUE


def along(at: Point, way: Point, across: float, beside: float) -> Point:
    return at + way * across + way.perpendicular() * beside


# ---- laid open


@pytest.mark.parametrize("name", ROWS)
def test_laid_open_everything_lies_where_the_assembly_has_it(name: str) -> None:
    found = model(name)
    now = pose(found, 0.0)
    for body in found.bodies:
        for cell in body.flat:
            for x, y in cell.ground.corners:
                place = flat_place(found, now, cell.plate, cell.track, (x, y, 0.0))
                assert place[:2] == pytest.approx((x, y), abs=TRUE)


@pytest.mark.parametrize("name", ROWS)
def test_the_ground_of_a_piece_that_lies_flat_covers_its_outline(name: str) -> None:
    for piece in pattern(name).pieces:
        if not piece.placement.panels or piece.turned:
            continue
        ply = next(ply for ply in laid(name).plies if ply.name == piece.name)
        assert ply.outline is not None
        wanted = abs(ply.outline.area) - sum(abs(opening.area) for opening in ply.openings)
        body = named(model(name), piece.name)
        wide = sum(area(cell.ground.corners, cell.ground.triangles) for cell in body.flat)
        for cell in body.bent:
            crossing = model(name).crossings[model(name).tracks[cell.track].crossing]
            fold = pattern(name).folds[crossing.plate - 1]
            wide += area(cell.ground.corners, cell.ground.triangles) * (fold.x1 - fold.x0) / crossing.length
        assert wide == pytest.approx(wanted, rel=1e-3)


def area(at: tuple[tuple[float, float], ...], triangles: tuple[tuple[int, int, int], ...]) -> float:
    return sum(abs(polygon([Point(*at[i]) for i in triangle]).area) for triangle in triangles)


# ---- closed


@pytest.mark.parametrize("name", FLAT)
def test_closed_the_wallet_is_as_thick_as_fit_says(name: str) -> None:
    found = model(name)
    assert height(found, pose(found, 1.0)) == pytest.approx(closed_row(name).thickness, abs=1e-6)


@pytest.mark.parametrize("name", FOLDED)
def test_a_folded_wallet_lies_closed_where_fit_lays_it(name: str) -> None:
    found, wallet = model(name), closed_folded(name)
    now = pose(found, 1.0)
    assert height(found, now) == pytest.approx(highest_of(name), abs=1e-6)
    for body in found.bodies:
        if body.leather:
            (cell,) = body.flat
            for x, y in cell.ground.corners:
                at = wallet.end.plan[body.name].point(Point(x, y))
                assert flat_place(found, now, cell.plate, cell.track, (x, y, 0.0))[:2] == pytest.approx((at.x, at.y))


def closed_folded(name: str) -> ClosedFolded:
    wallet = pattern(name)
    assert wallet.folded is not None
    return closed_as_loaded(wallet, wallet.folded, {leather.role: leather for leather in wallet.design.leathers})


def highest_of(name: str) -> float:
    from patternforge.fit.folded_faces import highest

    return highest(closed_folded(name))


@pytest.mark.parametrize("name", ["cash-envelope", "cheque-book-cover", "pleated-passport-cover", "strap-card-case"])
def test_closed_as_much_stands_over_every_spot_as_the_map_of_thickness_says_and_nothing_in_another(name: str) -> None:
    found = model(name)
    now = pose(found, 1.0)
    prisms = [placed_flat(found, now, cell) for body in found.bodies for cell in body.flat]
    spots = [spot for spot in closed_map(laid(name), closed_row(name)).spots if not spot.region.shrunk(0.5).is_empty]
    assert len(spots) > 5
    for spot in spots:
        over = sorted((low, high) for triangles, low, high in prisms if covers(triangles, spot.at))
        assert sum(high - low for low, high in over) == pytest.approx(spot.thickness, abs=1e-6)
        assert all(below[1] < above[0] + 1e-6 for below, above in pairwise(over))


Triangles = list[tuple[Point, Point, Point]]


def placed_flat(found: Model, now: Pose, cell: FlatCell) -> tuple[Triangles, float, float]:
    """The triangles of a prism seen from above in the space of plate 0, and its lower and upper level."""
    at = [flat_place(found, now, cell.plate, cell.track, (x, y, cell.low)) for x, y in cell.ground.corners]
    x, y = cell.ground.corners[0]
    levels = sorted((at[0][2], flat_place(found, now, cell.plate, cell.track, (x, y, cell.high))[2]))
    points = [Point(place[0], place[1]) for place in at]
    return [(points[a], points[b], points[c]) for a, b, c in cell.ground.triangles], levels[0], levels[1]


def covers(triangles: Triangles, at: Point) -> bool:
    def turns(a: Point, b: Point) -> float:
        return (b - a).cross(at - a)

    sides = ([turns(a, b), turns(b, c), turns(c, a)] for a, b, c in triangles)
    return any(min(each) >= 0 or max(each) <= 0 for each in sides)


@pytest.mark.parametrize("name", ["two-fold", "three-fold", "long-note", "coin-pouch", "id-window-two-fold"])
def test_closed_leather_reaches_as_far_as_its_section(name: str) -> None:
    found = model(name)
    now = pose(found, 1.0)
    # Where it is thickest: elsewhere the section lets the panels come closer, and the bend stand out further.
    y = closed_map(laid(name), closed_row(name)).highest.at.y
    section = closed_section(laid(name), closed_row(name), y)
    reached = [strip.path.bounds for strip in section.strips if strip.leather]
    wide = max(box.x1 for box in reached) - min(box.x0 for box in reached)
    xs = [place[0] for body in found.bodies if body.leather for place in all_places(found, now, body)]
    assert max(xs) - min(xs) == pytest.approx(wide, abs=0.15)  # facets of 15 degrees stay that far inside the bend


def all_places(found: Model, now: Pose, body: Body) -> Iterator[Place]:
    for cell in body.flat:
        for z in (cell.low, cell.high):
            yield from (flat_place(found, now, cell.plate, cell.track, (x, y, z)) for x, y in cell.ground.corners)
    for bent in body.bent:
        for z in (bent.low, bent.high):
            yield from (bent_place(found, now, bent.track, (x, y, z)) for x, y in bent.ground.corners)


@pytest.mark.parametrize("share", SHARES)
@pytest.mark.parametrize("name", FLAT)
def test_holes_of_mates_lie_over_each_other(name: str, share: float) -> None:
    """Those on one panel however far the wallet is closed, those of two panels once they lie on each other."""
    found = model(name)
    now = pose(found, share)
    places: dict[tuple[str, int], list[tuple[int, Place]]] = {}
    other_side = {seam.name: seam.meets for seam in pattern(name).seams if seam.meets}
    for body in found.bodies:
        holes = laid(name).holes.get(body.name, ())
        for mark in body.marks:
            hole = next(hole for hole in holes if hole.at == mark.at)
            at = flat_place(found, now, mark.plate, mark.track, (mark.at.x, mark.at.y, 0.0))
            places.setdefault((other_side.get(hole.seam, hole.seam), hole.index), []).append((mark.plate, at))
    pairs = [pair for mates in places.values() for pair in combinations(mates, 2)]
    assert pairs or all(len(seam.pieces) < 2 or gusset_in(name, seam.pieces) for seam in pattern(name).seams)
    for (plate, one), (other_plate, other) in pairs:
        if plate == other_plate or share == 1.0:
            assert dist(one[:2], other[:2]) < TRUE


def gusset_in(name: str, pieces: tuple[str, ...]) -> bool:
    """Whether a strip that lies on no panel is among the pieces; its holes are not drawn."""
    return any(not pattern(name).piece(piece).placement.panels for piece in pieces)


@pytest.mark.parametrize(
    "name", ["strap-card-case", "cash-envelope", "coin-pouch", "magnet-flap-card-case", "key-case"]
)
def test_the_halves_of_a_closure_meet_once_closed(name: str) -> None:
    found = model(name)
    now = pose(found, 1.0)
    halves: dict[str, dict[int, Place]] = {}
    for piece in pattern(name).pieces:
        for hole in piece.fittings:
            at = piece.placement.to_assembly(hole.at)
            panel = next(i for i, p in enumerate(pattern(name).panels) if p.x0 <= at.x <= p.x1)
            halves.setdefault(hole.fitting, {})[hole.half] = flat_place(found, now, panel, -1, (at.x, at.y, 0.0))
    met = [both for both in halves.values() if len(both) == 2]
    assert met
    for both in met:
        assert dist(both[1][:2], both[2][:2]) < TRUE


# ---- small wallets reckoned by hand


def test_a_shell_halfway_closed_on_its_card_runs_a_quarter_circle() -> None:
    # A card of 1.0 mm in a pocket of 0.8: inside radius 0.9, fibre 1.5, so the fold is 1.5 pi mm long. As a quarter
    # circle its fibre has a radius of 3.0 mm, its outside of 3.6.
    _, found = of_shell(180.0, 2, pocket())
    (arc,) = pose(found, 0.5).arcs
    assert arc.length == pytest.approx(1.5 * pi)
    assert arc.heading == pytest.approx(0.0, abs=1e-9)
    assert arc.curvature * arc.length == pytest.approx(pi / 2)
    assert pose(found, 0.5).turns[1].x == pytest.approx(3.6)


def test_a_shell_too_stiff_to_lie_on_itself_bulges_so_that_its_panels_can() -> None:
    # It bends round 0.6 mm, its fibre round 1.2; lying on each other the fibres are 1.2 mm apart, not 2.4.
    _, found = of_shell()
    now = pose(found, 1.0)
    assert height(found, now) == pytest.approx(2.4)
    assert now.arcs[0].length == pytest.approx(1.2 * pi)
    assert now.arcs[0].curvature * now.arcs[0].length > pi


def test_where_outsides_meet_the_inside_of_the_panel_turned_over_lies_lowest() -> None:
    _, found = of_shell(-180.0)
    now = pose(found, 1.0)
    assert flat_place(found, now, 1, -1, (150.0, 40.0, 1.2))[2] == pytest.approx(-1.2)
    assert height(found, now) == pytest.approx(2 * 1.2)


def test_folds_close_one_after_another_in_their_order() -> None:
    found, _ = of_shell(panels=3)
    design = found.pattern.design
    for order, first in (((1, 2), 1), ((2, 1), 2)):
        body = replace(design.body, closing=order)
        laid_anew = laid_out(replace(found.pattern, design=replace(design, body=body)))
        turns = pose(row_model(laid_anew, closed_wallet(laid_anew)), 0.5).turns
        assert turns[first].angle == pytest.approx(pi)
        assert turns[3 - first].angle == 0.0


def test_a_pocket_rests_on_its_card_and_beside_it_on_the_shell() -> None:
    found = laid_out(small(shell(1), pocket()))
    body = named(row_model(found, closed_wallet(found)), "pocket")
    assert sorted((round(cell.low, 3), round(cell.high, 3)) for cell in body.flat) == [(1.2, 2.0), (2.2, 3.0)]


def test_a_layer_too_short_for_its_bend_is_drawn_along_its_panel_and_no_longer() -> None:
    short = replace(model("two-fold"))
    (longest,) = [c for c in short.crossings if c.length == max(each.length for each in short.crossings)]
    cut = replace(longest, length=longest.length - 3.0)
    short = replace(short, crossings=tuple(cut if each is longest else each for each in short.crossings))
    (track,) = cut.tracks
    arc = pose(short, 1.0).arcs[track]
    assert arc.after == pytest.approx(3.0, abs=0.01)
    assert arc.length == pytest.approx(longest.length, abs=0.01)
    x = pattern("two-fold").panels[1].x0
    tangent = flat_place(short, pose(short, 1.0), 1, track, (x, 40.0, short.tracks[track].high))
    assert dist(tangent, bent_place(short, pose(short, 1.0), track, (cut.length, 40.0, 0.0))) < 1e-6
