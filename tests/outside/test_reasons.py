"""Every size that other programs and the maker are told has a reason of the same value: pattern.json, the report."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from math import pi
from pathlib import Path
from typing import Any

import pytest

from patternforge.cli.report import wallet_report
from patternforge.drafting.description import description
from patternforge.export.json import json_bytes
from patternforge.pipeline.stages import judged
from patternforge.units import mm
from tests.reasons_told import DESIGNS, told

Size = tuple[str, float | None]
ready = pytest.mark.parametrize("path", DESIGNS, ids=lambda path: path.stem)
named = pytest.mark.parametrize(
    "name",
    ["two-fold", "three-fold", "coin-pouch", "one-piece-card-wallet", "strap-card-case", "turned-edge-two-fold"],
)

# What of the records of pattern.json is no size: names, counts of order, places of points, and what was chosen.
_NO_SIZE = {
    "number",
    "level",
    "index",
    "run",
    "count",
    "middle",
    "forward",
    "holes",
    "turned_holes",
    "outline",
    "openings",
    "fold_lines",
    "fittings",
    "inscriptions",
    "marks",
    "skives",
    "placement",
    "trim",
    "hole",
    "corners",
    "near",
    "far",
    "root",
    "slit",
    "opening",
    "box",
    "closed",
}


def sizes(told_of: Mapping[str, Any]) -> Iterator[Size]:
    """Every size of the panels, folds, pieces, seams and faces in a pattern.json, by the name its reason has."""
    yield "body.width", told_of["size"]["width"]
    yield "body.height", told_of["size"]["height"]["value"]
    for panel in told_of["panels"]:
        yield from _record(f"panel {panel['name']}", panel)
    for fold in told_of["folds"]:
        yield from _record(f"fold {fold['number']}", fold, without=("layers",))
        for layer in fold["layers"]:
            yield from _layer(f"fold {fold['number']}.{layer['part']}", layer)
    for piece in told_of["pieces"]:
        yield from _piece(piece)
    for seam in told_of["seams"]:
        yield from _seam(seam)
    if told_of["folded"]:
        yield from _folded(told_of["folded"])


def _record(name: str, record: Mapping[str, Any], without: tuple[str, ...] = ()) -> Iterator[Size]:
    """The numbers of a record, each under its own key; sums by their value."""
    for key, value in record.items():
        size = value["value"] if isinstance(value, dict) and "terms" in value else value
        if key in _NO_SIZE or key in without or isinstance(size, str | bool) or size is None:
            continue
        assert isinstance(size, int | float), f"{name}.{key} is new: say whether it is a size"
        yield f"{name}.{key}", size


def _renamed(sizes: Iterator[Size], names: Mapping[str, str]) -> Iterator[Size]:
    for name, value in sizes:
        stem, _, key = name.rpartition(".")
        yield f"{stem}{names.get(key, f'.{key}')}", value


def _layer(name: str, layer: Mapping[str, Any]) -> Iterator[Size]:
    names = {"inside_radius": ".radius", "true_length": ".true length", "flat_length": ""}
    return _renamed(_record(name, layer), names)


def _piece(piece: Mapping[str, Any]) -> Iterator[Size]:
    """The sizes of a piece but for its finest cuts, which are slow to read off; the report shows those as well."""
    yield from _record(f"piece {piece['name']}", piece, without=("turned", "finest", "edges"))
    yield f"piece {piece['name']}.holes", len(piece["holes"])
    for edge in piece["turned"]["edges"] if piece["turned"] else ():
        name = f"part {piece['part']}.turned {edge['edge']}"
        yield from _renamed(_record(name, edge, without=("over",)), {"inside_radius": ".radius"})
    for fold in piece["turned"]["folds"] if piece["turned"] else ():
        name = f"fold {fold['fold']}.{piece['part']}"
        yield f"{name}.gathers", fold["excess"]
        yield f"{name}.notch in what is turned in", fold["notch"]


def _seam(seam: Mapping[str, Any]) -> Iterator[Size]:
    names = {
        "hole_count": ".stitch holes",
        "spacing_min": ".shortest spacing",
        "spacing_max": ".longest spacing",
    }
    own = ("pieces", "thread") if seam["meets"] else ("pieces",)
    spread = ("spread",) if not seam["spread"] else ()
    yield from _renamed(_record(f"seam {seam['name']}", seam, without=(*own, *spread)), names)


def _folded(folded: Mapping[str, Any]) -> Iterator[Size]:
    for face in folded["faces"]:
        yield from _record(f"face {face['name']}", face)
    for hinge in folded["hinges"]:
        name = f"fold {hinge['number']}.{hinge['face']}"
        names = {"inside_radius": ".radius", "flat_length": ""}
        yield from _renamed(_record(name, hinge, without=("angle",)), names)
        yield f"face {hinge['face']}.angle", hinge["angle"]
    for tab in folded["tabs"]:
        yield from _record(f"tab {tab['name']}", tab)
        (ax, ay), (bx, by) = tab["slit"]
        yield f"tab {tab['name']}.slit", ((ax - bx) ** 2 + (ay - by) ** 2) ** 0.5
    x0, y0, x1, y1 = folded["closed"]
    yield "closed.width", x1 - x0
    yield "closed.height", y1 - y0


@ready
def test_every_size_in_pattern_json_has_a_reason_of_its_value(path: Path) -> None:
    pattern, reasons = told(path).pattern, told(path).reasons
    read = json.loads(json_bytes(description(pattern)))
    found = list(sizes(read))
    assert len(found) > 15
    for name, value in found:
        assert name in reasons.book.makers, f"no reason is given for {name}"
        assert reasons.book.of(name).value == pytest.approx(value, abs=1e-6), name


@named
def test_every_size_in_the_report_is_that_of_a_reason(name: str) -> None:
    path = next(each for each in DESIGNS if each.stem == name)
    pattern, reasons = told(path).pattern, told(path).reasons
    said = wallet_report(judged(path))

    def size(of: str, decimals: int = 2, by: float = 1.0) -> str:
        return mm(reasons.book.of(of).value / by, decimals)

    def fine(of: str) -> str:
        return "-" if reasons.book.of(of).words else size(of)

    tables = _tables(said)
    assert tables["Finished size"][0].split()[1:5] == [size("open.width", 1), "x", size("open.height", 1), "mm"]
    assert tables["Finished size"][1].split()[1:5] == [size("closed.width", 1), "x", size("closed.height", 1), "mm"]
    assert tables["Finished size"][2].split()[4:6] == [size("closed.thickness", 1), "mm"]
    for piece, row, cut in zip(pattern.pieces, tables["Pieces"][1:], tables["Finest cuts"][1:], strict=False):
        own = f"piece {piece.name}."
        counts = [f"{reasons.book.of(f'{own}{each}').value:g}" for each in ("holes", "quantity")]
        assert row.split()[-4:] == [size(f"{own}width"), size(f"{own}height"), *counts]
        finest = ("finest radius", "finest gap", "finest slot", "beside a stitch hole")
        assert cut.split()[-4:] == [fine(f"{own}{each}") for each in finest]
    for leather, row in zip(pattern.design.leathers, tables["Leather"], strict=True):
        own = f"leather {leather.role}."
        assert f" {size(f'{own}thickness')} mm " in row
        assert f" {size(f'{own}area', 2, 10_000)} dm2 " in row
    sewn = [f"seam {seam.name}.thread" for seam in pattern.seams if not seam.meets]
    for of, row in zip([*sewn, "thread in all"], tables.get("Thread", []), strict=bool(sewn)):
        assert f" {size(of, 2, 1000)} m " in row
    for moved in pattern.adjustments:
        reason = reasons.book.of(f"part {moved.part}.{moved.size}")
        assert f"{mm(reason.parts[0].value)} -> {mm(reason.value)} mm" in "\n".join(tables["Sizes that moved"])


def _tables(lines: list[str]) -> dict[str, list[str]]:
    """The tables of the report by the beginning of their heads; rows are indented."""
    tables: dict[str, list[str]] = {}
    for line in lines:
        if line and not line.startswith(" "):
            head = line.partition(",")[0]
            tables[head] = []
        elif line.strip():
            tables[head].append(line + " ")
    return tables


def test_a_size_without_a_reason_is_noticed() -> None:
    path = next(each for each in DESIGNS if each.stem == "two-fold")
    read = json.loads(json_bytes(description(told(path).pattern)))
    read["panels"][0]["slope"] = 3.0
    assert ("panel left.slope", 3.0) in list(sizes(read))
    assert "panel left.slope" not in told(path).reasons.book.makers


def test_the_shell_of_the_two_fold_by_hand() -> None:
    """ISO/IEC 7810 gives 85.60 x 53.98 x 0.76 mm; the rest is what the design enters, added up on paper."""
    reasons = told(next(each for each in DESIGNS if each.stem == "two-fold")).reasons
    panel = 85.60 + 3 * 0.76 + 2.5 + 3.5 + 4.0 + 3.5
    gap = 2 * (6 * 0.11 + 0.8 + 3 * 0.8 + 3 * 0.76)
    fold = pi * (gap / 2 + 0.5 * 1.2)
    assert reasons["left.width"].value == pytest.approx(panel, abs=1e-9)
    assert reasons["fold 1.shell.gap"].value == pytest.approx(gap, abs=1e-9)
    assert reasons["fold 1.shell"].value == pytest.approx(fold, abs=1e-9)
    assert reasons["shell.width"].value == pytest.approx(2 * panel + fold, abs=1e-9)
