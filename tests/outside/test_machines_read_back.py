"""Files of several machine tables for ready designs, read by programs that did not write them.

DXF in every release, with true arcs and with chords, by GDAL and by bare group codes; SVG by an XML reader, resvg and
Chromium; all against ``pattern.json``. Plots: ``test_hpgl_read_back``.
"""

from __future__ import annotations

from cmath import phase
from collections.abc import Callable, Sequence
from itertools import pairwise, product
from pathlib import Path

import pytest
import shapely

from tests.outside.chromium_reading import CHROMIUM, chromium_view
from tests.outside.dxf_reading import cut_pieces, cuts, header_value, layer_colours, radii
from tests.outside.file_sets import FileSet, described
from tests.outside.gdal_reading import gdal_pieces, gdal_shapes
from tests.outside.read_pieces import TRUE, described_outline, differences, unmatched
from tests.outside.svg_picture import picture
from tests.outside.svg_reading import svg_file
from tests.outside.written import DESIGNS

SOME = [path for path in DESIGNS if path.stem in ("two-fold", "id-window-two-fold", "strap-card-case")]
EVERY = pytest.mark.parametrize("design", SOME, ids=lambda path: path.stem)
RELEASES = {"R12": "AC1009", "R2000": "AC1015", "R2010": "AC1024", "R2018": "AC1032"}
CHORDS = 0.005  # mm
DRAWN = "travel: as drawn\n"
Cut = Callable[..., tuple[Path, Path]]
WAYS = pytest.mark.parametrize(
    "lines",
    [f"release: {release}\n{chords}" for release, chords in product(RELEASES, ("", f"chords: {CHORDS} mm\n"))],
)


@pytest.fixture(scope="module")
def cut(tmp_path_factory: pytest.TempPathFactory, file_set: FileSet) -> Cut:
    """``cut(design, kind, lines)``: the set of a table with these lines in it, and its file with every piece."""
    known: dict[tuple[str, str], Path] = {}

    def files(design: Path, kind: str, lines: str) -> tuple[Path, Path]:
        if (kind, lines) not in known:
            path = tmp_path_factory.mktemp("machine") / "shop.yaml"
            drawn = "" if "travel" in lines else DRAWN
            path.write_text(f"machine: Shop\ntool: laser\nformat: {kind}\n{drawn}{lines}", encoding="utf-8")
            known[kind, lines] = path
        folder = file_set(design, "--machine", str(known[kind, lines]), "--for", "laser")
        (file,) = (folder / "shop").glob(f"{folder.name}-shop-everything*.{kind}")
        return folder, file

    return files


@EVERY
@WAYS
def test_gdal_reads_the_described_pieces_in_every_release_arcs_or_chords(design: Path, lines: str, cut: Cut) -> None:
    folder, file = cut(design, "dxf", lines)
    pieces = described(folder)["pieces"]
    read = gdal_pieces(gdal_shapes(file))
    assert [fault for pair in zip(pieces, read, strict=True) for fault in differences(described(folder), *pair)] == []


@EVERY
@WAYS
def test_a_file_is_of_its_release_and_has_arcs_or_none(design: Path, lines: str, cut: Cut) -> None:
    folder, file = cut(design, "dxf", lines)
    text = file.read_text("ascii")
    assert header_value(text, "$ACADVER") == RELEASES[lines.split()[1]]
    pieces = cut_pieces(cuts(text))
    if "chords" in lines:
        assert not [
            each for piece in pieces for each in piece.cuts if each.kind == "CIRCLE" or any(each.contour.bulges)
        ]
    else:
        for piece, read in zip(described(folder)["pieces"], pieces, strict=True):
            wanted = radii(described_outline(piece).stretches)
            assert radii(read.outline.stretches) == pytest.approx(wanted, abs=TRUE)


@EVERY
def test_chords_stray_by_no_more_than_the_table_says_and_the_name_says_it(design: Path, cut: Cut) -> None:
    folder, file = cut(design, "dxf", "chords: 0.05 mm\n")
    assert file.name.endswith("-chords-0.050.dxf")
    worst = 0.0
    for piece, read in zip(described(folder)["pieces"], cut_pieces(cuts(file.read_text("ascii"))), strict=True):
        true = shapely.LinearRing([(at.real, at.imag) for at in described_outline(piece).flattened(2000)])
        middles = [(start + end) / 2 for start, end, _ in read.outline.stretches]
        places = shapely.points([(at.real, at.imag) for at in middles])
        worst = max(worst, float(shapely.distance(true, places).max()))
    assert 0.5 * 0.05 < worst <= 0.05 + 1e-5


@EVERY
def test_layers_and_colours_are_those_of_the_table_and_no_other(design: Path, cut: Cut) -> None:
    lines = (
        "fold_ticks: scored\noperations:\n"
        "  mark: {layer: SCORE, colour: 5}\n  stitch hole: {layer: PUNCH, colour: 6}\n"
        "  opening: {layer: WINDOW, colour: 2}\n  outline: {layer: EDGE, colour: 1, weight: 0.5 mm}\n"
    )
    _, file = cut(design, "dxf", lines)
    text = file.read_text("ascii")
    colours = {"SCORE": 5, "PUNCH": 6, "WINDOW": 2, "EDGE": 1}
    used = {each.layer for each in cuts(text)}
    assert {"SCORE", "PUNCH", "EDGE"} <= used <= set(colours)
    found = layer_colours(text)
    assert {layer: found[layer] for layer in used} == {layer: colours[layer] for layer in used}
    assert [layer for layer, _ in gdal_shapes(file)] == [each.layer for each in cuts(text)]


@EVERY
def test_one_operation_on_all_pieces_comes_before_the_next(design: Path, cut: Cut) -> None:
    folder, file = cut(design, "dxf", "sequence: operation by operation\n")
    order = ("MARK", "STITCH-HOLE", "OPENING", "OUTLINE")
    layers = [each.layer for each in cuts(file.read_text("ascii"))]
    assert layers == sorted(layers, key=order.index)
    assert layers.count("OUTLINE") == len(described(folder)["pieces"])


SHORTEST = "travel: shortest\n"


def met(text: str) -> list[tuple[complex, complex]]:
    """Where each entity is begun and left: a circle at its right, a closed line where it begins."""
    found = []
    for each in cuts(text):
        points = each.contour.points
        start = points[0] + each.radius
        found.append((start, start if each.contour.closed or each.radius else points[-1]))
    return found


def way(text: str) -> float:
    return sum(abs(start - end) for (_, end), (start, _) in pairwise(met(text)))


@EVERY
@pytest.mark.parametrize("sequence", ["piece by piece", "operation by operation"])
def test_the_order_saves_way_and_pattern_json_says_how_much(design: Path, sequence: str, cut: Cut) -> None:
    _, drawn = cut(design, "dxf", f"sequence: {sequence}\n")
    folder, ordered = cut(design, "dxf", f"sequence: {sequence}\n{SHORTEST}")
    before, after = way(drawn.read_text("ascii")), way(ordered.read_text("ascii"))
    assert after < 0.85 * before
    sheets = described(folder)["cutting"]["machine"]["sheets"]
    told = next(sheet for sheet in sheets if folder / sheet["file"] == ordered)
    assert told["travel"] == {"as_drawn": pytest.approx(before, abs=0.01), "in_order": pytest.approx(after, abs=0.01)}


@EVERY
def test_in_whichever_order_the_same_pieces_are_cut_inside_before_outside(design: Path, cut: Cut) -> None:
    folder, file = cut(design, "dxf", SHORTEST)
    assert unmatched(described(folder), described(folder)["pieces"], gdal_pieces(gdal_shapes(file))) == []
    order = ("MARK", "STITCH-HOLE", "OPENING", "OUTLINE")
    for piece in cut_pieces(cuts(file.read_text("ascii"))):
        layers = [each.layer for each in piece.cuts]
        assert layers == sorted(layers, key=order.index)
        assert layers.count("OUTLINE") == 1


@EVERY
def test_outlines_are_begun_on_straight_runs_two_millimetres_from_their_ends(design: Path, cut: Cut) -> None:
    _, file = cut(design, "dxf", SHORTEST)
    for each in cuts(file.read_text("ascii")):
        if each.layer == "OUTLINE":
            (start, after, bulge), (before, _, last) = each.contour.stretches[0], each.contour.stretches[-1]
            assert (bulge, last) == (0.0, 0.0)
            turn = phase((after - start) / (start - before))
            assert abs(turn) < 1e-4
            assert min(abs(after - start), abs(start - before)) >= 2.0


@EVERY
def test_what_is_told_of_count_and_length_is_what_another_reader_measures(design: Path, cut: Cut) -> None:
    folder, file = cut(design, "dxf", f"{SHORTEST}kerf: 0.1 mm\n")
    sheets = described(folder)["cutting"]["machine"]["sheets"]
    told = next(sheet for sheet in sheets if folder / sheet["file"] == file)
    measured: dict[str, list[float]] = {}
    for layer, shape in gdal_shapes(file):
        measured.setdefault(layer.lower().replace("-", " "), []).append(shape.length)
    assert {each["operation"]: each["count"] for each in told["operations"]} == {
        layer: len(lengths) for layer, lengths in measured.items()
    }
    for each in told["operations"]:
        assert each["length"] == pytest.approx(sum(measured[each["operation"]]), rel=1e-4)


@EVERY
@pytest.mark.parametrize("lines", ["", f"chords: {CHORDS} mm\n"])
def test_an_xml_reader_finds_the_described_pieces_in_an_svg_file(design: Path, lines: str, cut: Cut) -> None:
    folder, file = cut(design, "svg", lines)
    read = svg_file(file.read_text(encoding="utf-8"))
    outlines = read.operation("outline")
    assert len(outlines) == len(described(folder)["pieces"])
    if lines:
        assert not any(bulge for contour in outlines for bulge in contour.bulges)
        assert "<circle" not in file.read_text(encoding="utf-8")
    else:
        assert unmatched(described(folder), described(folder)["pieces"], read.pieces) == []


def test_a_renderer_shows_what_the_table_has_dark_and_nothing_of_what_it_has_pale(cut: Cut) -> None:
    pale = "".join(f"  {role}: {{colour: fefefe}}\n" for role in ("stitch hole", "opening"))
    lines = f"operations:\n  outline: {{colour: 101010, weight: 0.3 mm}}\n{pale}"
    _, file = cut(SOME[0], "svg", lines)
    text = file.read_text(encoding="utf-8")
    seen = picture(text, svg_file(text).height)
    drawn = shapely.MultiLineString([ring(each.flattened(64)) for each in svg_file(text).operation("outline")])
    shapely.prepare(drawn)
    assert len(seen.dots) > 1000
    assert bool(shapely.dwithin(drawn, shapely.points(seen.dots), 0.25).all())


def ring(points: Sequence[complex]) -> list[tuple[float, float]]:
    return [(at.real, at.imag) for at in (*points, points[0])]


@pytest.mark.skipif(CHROMIUM is None, reason="no Chromium on this machine: its reading of SVG tables is not checked")
def test_chromium_lays_out_true_arcs_and_chords_alike_and_at_true_size(cut: Cut, tmp_path: Path) -> None:
    names = {"arcs": "", "chords": f"chords: {CHORDS} mm\n"}
    files = {name: cut(SOME[0], "svg", lines) for name, lines in names.items()}
    seen = chromium_view({name: file.read_text("utf-8") for name, (_, file) in files.items()}, tmp_path)
    pieces = described(files["arcs"][0])["pieces"]
    for name in names:
        for piece, shapes in zip(pieces, seen[name]["pieces"], strict=True):
            ((x0, y0, x1, y1),) = shapes["outlines"]
            assert (x1 - x0, y1 - y0) == pytest.approx((piece["width"], piece["height"]), abs=TRUE)
            assert len(shapes["holes"]) == len(piece["holes"])


def test_a_table_gives_the_same_bytes_each_time(tmp_path: Path, file_set: FileSet) -> None:
    text = "machine: Shop\ntool: laser\nformat: dxf\nrelease: R2018\nchords: 0.01 mm\nkerf: 0.1 mm\n"
    sets = []
    for place in ("one", "other"):
        table = tmp_path / place / "shop.yaml"
        table.parent.mkdir()
        table.write_text(text, encoding="utf-8")
        folder = file_set(SOME[0], "--machine", str(table), "--for", "laser")
        sets.append({path.name: path.read_bytes() for path in sorted((folder / "shop").iterdir())})
    assert sets[0] == sets[1]
