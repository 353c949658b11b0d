"""What a maker checks before cutting expensive leather, on the pieces as cut: pockets, stitches, seams.

The pieces are those of the laser's DXF file, laid open with what ``pattern.json`` says of their places.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from itertools import pairwise
from math import pi, sqrt
from pathlib import Path

import pytest
import shapely

from tests.outside.closing import Wallet
from tests.outside.cut_layers import Json, Layer
from tests.outside.dxf_reading import Cut, cut_pieces, cuts
from tests.outside.file_sets import EVERY_SEWN_DESIGN, OPTIONS, FileSet, cutting_files, described

# Turns that bring a pocket's mouth to the top.
UPRIGHT = {"top": 1, "left": -1j, "bottom": -1, "right": 1j}
SAME = 0.01  # mm
OFF_BEND = 1.0  # mm; an item this far from the tangent is flat all over
RESTS = 0.3  # mm; how far an item may rest off its place
UNIFORM = 0.05  # mm; by how much stitches of one stretch may differ


@pytest.fixture
def wallet(design: Path, file_set: FileSet) -> Wallet:
    """A ready design as cut."""
    folder = file_set(design, *OPTIONS[0])
    file, _ = next(cutting_files(folder, "dxf"))
    return Wallet(described(folder), cut_pieces(cuts(file.read_text())))


def by_name(wallet: Wallet, name: str) -> Layer:
    return next(layer for layer in wallet.layers if layer.name == name)


def rooms(wallet: Wallet) -> list[Json]:
    """The rooms behind pockets, those behind layers and between the walls of gussets left out."""
    gussets = {strip.name for strip in wallet.strips}
    return [room for room in wallet.json["pockets"] if not room["held"] and room["piece"] not in gussets]


def upright_box(room: Json) -> tuple[float, float, float, float]:
    """The item's place with the mouth of its pocket at the top."""
    x0, y0, x1, y1 = room["box"]
    ends = [complex(x0, y0) * UPRIGHT[room["opening"]], complex(x1, y1) * UPRIGHT[room["opening"]]]
    (a0, a1), (b0, b1) = (sorted(side) for side in ([at.real for at in ends], [at.imag for at in ends]))
    return a0, b0, a1, b1


def upright_holes(layer: Layer, room: Json) -> list[complex]:
    return [layer.undeveloped(hole.flat) * UPRIGHT[room["opening"]] for hole in layer.holes]


def mouth_height(layer: Layer, room: Json) -> float:
    return max((layer.undeveloped(at) * UPRIGHT[room["opening"]]).imag for at in layer.contour.points)


def thickness(wallet: Wallet, room: Json) -> float:
    return float(item_of(wallet, room)["thickness"])


def item_of(wallet: Wallet, room: Json) -> Json:
    contents: list[Json] = wallet.json["inputs"]["contents"]
    return next(each for each in contents if each["as"] == room["content"])


def over_each_other(wallet: Wallet, room: Json) -> int:
    """Most items of a part that lie over each other, in any of its columns."""
    beside = [other for other in rooms(wallet) if other["part"] == room["part"]]
    boxes = [upright_box(other) for other in beside]
    own = upright_box(room)
    column = [box for box in boxes if box[0] < own[2] and own[0] < box[2]]
    most = max(sum(b0 <= at < b1 for _, b0, _, b1 in column) for at in (box[1] for box in column))
    return int(most * room["count"])


@EVERY_SEWN_DESIGN
def test_a_pocket_is_as_wide_between_its_stitches_as_its_items_need_and_not_much_wider(wallet: Wallet) -> None:
    for room in rooms(wallet):
        layer = by_name(wallet, room["piece"])
        a0, b0, a1, _ = upright_box(room)
        # Stitches round a corner of the wallet stand beside the item's own rounded corner.
        low_end = b0 + max(wallet.json["inputs"]["body"]["corner"], 1)
        beside = [at for at in upright_holes(layer, room) if low_end < at.imag < mouth_height(layer, room)]
        low = max(at.real for at in beside if at.real < a0)
        high = min(at.real for at in beside if at.real > a1)
        taut = a1 - a0 + over_each_other(wallet, room) * thickness(wallet, room)
        if item_of(wallet, room)["section"] == "round":
            taut = pi * thickness(wallet, room) / 2
        assert taut + room["ease"] - SAME <= high - low <= taut + wallet.json["inputs"]["limits"]["max_ease"] + SAME


@EVERY_SEWN_DESIGN
def test_an_item_stands_out_as_declared_and_rests_on_stitches(wallet: Wallet) -> None:
    for room in rooms(wallet):
        layer = by_name(wallet, room["piece"])
        a0, b0, a1, b1 = upright_box(room)
        assert b1 - mouth_height(layer, room) == pytest.approx(declared_show(wallet, room), abs=RESTS)
        base = [at.real for at in upright_holes(layer, room) if abs(at.imag - b0) <= RESTS and a0 < at.real < a1]
        assert len(base) >= 3
        assert max(base) - min(base) >= (a1 - a0) / 2


def declared_show(wallet: Wallet, room: Json) -> float:
    """How much of an item is to stand out of its mouth: as asked of a bank, what a pocket's depth leaves."""
    part = next(part for part in wallet.json["inputs"]["parts"] if part["name"] == room["part"])
    _, b0, _, b1 = upright_box(room)
    return float(part["show"] if part["kind"] == "bank" else b1 - b0 - part["depth"])


@EVERY_SEWN_DESIGN
def test_items_lie_on_their_panels_clear_of_every_bend(wallet: Wallet) -> None:
    panels = {panel["name"]: panel for panel in wallet.json["panels"]}
    for room in rooms(wallet):
        (panel,) = (panels[name] for name in room["panels"])
        x0, _, x1, _ = room["box"]
        assert panel["x0"] < x0 < x1 < panel["x1"]
        for fold in wallet.json["folds"]:
            assert x1 <= fold["x0"] - OFF_BEND or x0 >= fold["x1"] + OFF_BEND


@EVERY_SEWN_DESIGN
def test_what_lies_behind_a_layer_has_room_between_stitches_on_the_shortest_wall(wallet: Wallet) -> None:
    for room in (room for room in wallet.json["pockets"] if room["held"]):
        wall = by_name(wallet, room["piece"])
        outer = wallet.layers[wallet.layers.index(wall) - 1]
        joined = {(hole.seam, hole.index) for hole in outer.holes}
        flat = [h.flat * UPRIGHT[room["opening"]] for h in wall.holes if (h.seam, h.index) in joined]
        middle = (max(at.real for at in flat) + min(at.real for at in flat)) / 2
        a0, floor, a1, _ = upright_box(room)
        left, right = (sides(flat, middle, side, floor) for side in (-1, 1))
        clear = min(at.real for at in right) - max(at.real for at in left)
        assert clear >= a1 - a0 + thickness(wallet, room) * room["count"] + 1.0


def sides(holes: list[complex], middle: float, side: int, floor: float) -> list[complex]:
    """Holes of one side seam: those in line upwards, not those of the row along the floor of the room."""
    above = max(min(at.imag for at in holes) + 10, floor + 1)
    return [at for at in holes if (at.real - middle) * side > 0 and at.imag > above]


@EVERY_SEWN_DESIGN
def test_no_hole_is_too_near_to_an_edge_a_mouth_or_a_bend(wallet: Wallet) -> None:
    limits = wallet.json["inputs"]["limits"]
    for layer in wallet.layers:
        line = shapely.LinearRing([(at.real, at.imag) for at in layer.cut.outline.flattened()])
        pierced = {(hole.seam, hole.index) for hole in layer.holes}
        for hole, cut in layer.cut_holes:
            room = line.distance(rim(cut))
            # A hole beside a stitch that wraps an edge of the piece straddles that edge.
            straddles = (hole.seam, hole.index - 1) not in pierced or (hole.seam, hole.index + 1) not in pierced
            assert room >= (limits["hole_to_mouth"] if straddles else limits["hole_to_edge"]) - 0.001
            x = layer.undeveloped(hole.flat).real
            for zone in layer.zones:
                off = max(zone.x0 - x, x - zone.x1)
                assert off - reach(cut) >= limits["hole_to_fold"] - 0.001


def rim(cut: Cut) -> shapely.Geometry:
    points = [(at.real, at.imag) for at in cut.contour.points]
    return shapely.LineString(points) if cut.kind == "LINE" else shapely.Point(points[0]).buffer(cut.radius, 64)


def reach(cut: Cut) -> float:
    return cut.radius or abs(cut.contour.points[1] - cut.contour.points[0]) / 2


@EVERY_SEWN_DESIGN
def test_no_two_holes_of_a_piece_are_one_where_seams_meet(wallet: Wallet) -> None:
    land = wallet.json["inputs"]["limits"]["hole_to_mouth"]
    for layer in (each for each in wallet.layers if each.holes):
        rims = [rim(cut) for cut in layer.cut.holes]
        tree = shapely.STRtree(rims)
        near = tree.query(rims, predicate="dwithin", distance=land).T.tolist()
        assert [(layer.name, a, b) for a, b in near if a < b] == []


def stretches(wallet: Wallet, seam: Json) -> Iterator[list[complex]]:
    """Holes of a seam as cut that follow one another in one straight line, laid open."""
    places = {
        hole.index: layer.undeveloped(hole.flat)
        for layer in wallet.layers
        for hole in layer.holes
        if hole.seam == seam["name"]
    }
    straight: list[complex] = []
    for before, hole in pairwise(seam["holes"]):
        same = hole["run"] == before["run"] and abs(hole["heading"] - before["heading"]) < 1e-6
        if same:
            straight = straight or [places[before["index"]]]
            straight.append(places[hole["index"]])
        elif straight:
            yield straight
            straight = []
    if straight:
        yield straight


@EVERY_SEWN_DESIGN
def test_stitches_are_of_the_pitch_and_alike_along_every_straight_stretch(wallet: Wallet) -> None:
    for seam in wallet.json["seams"]:
        for straight in stretches(wallet, seam):
            lengths = [abs(b - a) for a, b in pairwise(straight)]
            assert lengths == pytest.approx([seam["pitch"]] * len(lengths), rel=0.05)
            assert max(lengths) - min(lengths) <= UNIFORM


@EVERY_SEWN_DESIGN
def test_a_seam_meets_a_corner_in_a_hole_or_evenly(wallet: Wallet) -> None:
    for seam, edges, holes in body_seams(wallet):
        for corner, inwards in corners(wallet, edges):
            near = [at - corner for at in holes if abs(at - corner) < 4 * seam["margin"]]
            assert symmetrical(near, inwards)


@EVERY_SEWN_DESIGN
def test_a_seam_round_three_edges_ends_alike_on_both_sides(wallet: Wallet) -> None:
    for _, edges, holes in body_seams(wallet):
        if len(edges) == 3:
            first, last = holes[0], holes[-1]
            off = first.imag - last.imag if edges[0] in ("left", "right") else first.real - last.real
            assert abs(off) <= UNIFORM


def body_seams(wallet: Wallet) -> Iterator[tuple[Json, list[str], list[complex]]]:
    """Every seam along the body's edges, the edges, and its holes as cut in the piece that has most of them.

    Left out: seams over some panels or along a layer's edges, and all of a body without right angles.
    """
    asked = wallet.json["inputs"]["seams"] if not wallet.json["inputs"]["body"]["shapes"] else []
    along = {seam["name"]: seam["along"] for seam in asked if seam["over"] is None and seam["of"] is None}
    for seam in (seam for seam in wallet.json["seams"] if seam["name"] in along):
        cut = [[h for h in layer.holes if h.seam == seam["name"]] for layer in wallet.layers]
        most = max(range(len(cut)), key=lambda i: len(cut[i]))
        yield seam, along[seam["name"]], [wallet.layers[most].undeveloped(hole.flat) for hole in cut[most]]


def corners(wallet: Wallet, edges: list[str]) -> Iterator[tuple[complex, complex]]:
    """The corners of the body between edges that follow one another in a seam, and the way inwards from each."""
    width, height = wallet.json["size"]["width"], wallet.json["size"]["height"]["value"]
    neighbours = [set(pair) for pair in pairwise(edges)] + [{edges[0], edges[-1]}] * (len(edges) == 4)
    for pair in neighbours:
        x, y = ("right" in pair), ("top" in pair)
        yield complex(width * x, height * y), complex(1 - 2 * x, 1 - 2 * y)


def symmetrical(holes: list[complex], inwards: complex) -> bool:
    """Whether the hole or the two holes nearest to the line through a corner lie on it or evenly beside it."""
    off = sorted((abs((at / inwards).imag), (at / inwards).imag) for at in holes)
    return off[0][0] < UNIFORM or abs(off[0][1] + off[1][1]) < UNIFORM


@EVERY_SEWN_DESIGN
def test_stacks_and_thread_reported_for_every_seam_are_those_of_the_holes_cut(wallet: Wallet) -> None:
    found = {f["where"]: f for f in wallet.json["findings"] if f["what"] == "thickest stack sewn through"}
    pierced = [(h.seam, h.index, layer.stack_at(h.flat)) for layer in wallet.layers for h in layer.passed]
    pierced += [(hole.seam, hole.index, strip.json["thickness"]) for strip in wallet.strips for hole in strip.holes]
    sewn_with = {seam["name"]: seam["meets"] for seam in wallet.json["seams"]}
    for seam in wallet.json["seams"]:
        stacks: dict[int, float] = defaultdict(float)
        for name, index, thick in pierced:
            if (sewn_with[name] or name) == (seam["meets"] or seam["name"]):
                stacks[index] += thick
        assert sorted(stacks) == [hole["index"] for hole in seam["holes"]]
        assert len(stacks) == seam["hole_count"]
        report = found[seam["name"]]
        assert report["measured"] == pytest.approx(max(stacks.values()), abs=1e-6)
        assert report["measured"] <= report["good"]["high"] == wallet.json["inputs"]["limits"]["seam_stack"]
        if seam["meets"]:  # sewn with the other side, whose thread it is
            assert seam["thread"] == 0
            continue
        # Two needles: every stitch twice, every hole twice, but for the first of a run once or twice; and tails for
        # every run.
        # The stitch that closes a ring may lie on the quarter of a circle over its chord.
        bent = 2 * closed_by(seam) * (pi / (2 * sqrt(2)) - 1)
        stitches = 2 * sewn_length(seam) + tails(wallet) * len(last_holes(seam))
        ends = sum(stacks[index] for index in last_holes(seam))
        least, most = stitches + 2 * (sum(stacks.values()) - ends), stitches + 2 * sum(stacks.values())
        assert least - SAME <= seam["thread"] <= most + bent + SAME


def last_holes(seam: Json) -> list[int]:
    return list({hole["run"]: hole["index"] for hole in seam["holes"]}.values())


def sewn_length(seam: Json) -> float:
    """All stitches along their runs; the one that closes a ring, whose ends stand a stitch apart, with them."""
    runs: dict[int, list[Json]] = defaultdict(list)
    for hole in seam["holes"]:
        runs[hole["run"]].append(hole)
    lengths = (holes[-1]["along"] - holes[0]["along"] + closing(holes, seam["pitch"]) for holes in runs.values())
    return float(sum(lengths))


def closed_by(seam: Json) -> float:
    """Chords of the stitches that close its rings."""
    runs: dict[int, list[Json]] = defaultdict(list)
    for hole in seam["holes"]:
        runs[hole["run"]].append(hole)
    return sum(closing(holes, seam["pitch"]) for holes in runs.values())


def closing(holes: list[Json], pitch: float) -> float:
    off: float = abs(complex(holes[0]["x"], holes[0]["y"]) - complex(holes[-1]["x"], holes[-1]["y"]))
    return off if len(holes) > 2 and off < 1.5 * pitch else 0.0


def tails(wallet: Wallet) -> float:
    return float(wallet.json["inputs"]["stitching"]["tails"])


@EVERY_SEWN_DESIGN
def test_the_closed_thickness_is_reported_within_its_limit_and_nothing_is_refused(wallet: Wallet) -> None:
    findings = wallet.json["findings"]
    (closed,) = (finding for finding in findings if finding["what"] == "thickness closed, as loaded")
    assert 0 < closed["measured"] <= closed["good"]["high"] == wallet.json["inputs"]["limits"]["closed_thickness"]
    assert wallet.json["verdict"] in ("good", "look")
    assert {finding["verdict"] for finding in findings} <= {"good", "look"}
