"""``audit``: a file in short, its flaws with places and remedies, an exit status that says whether it is clean."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest

from patternforge.audit.checks import CHECKS
from patternforge.errors import AuditError, ReadingError
from tests.unit.audit.clean import clean_dxf, clean_svg
from tests.unit.cli.running import run
from tests.unit.delivery.killing import everything


def saved(folder: Path, name: str, text: str) -> Path:
    path = folder / name
    path.write_text(text, encoding="utf-8")
    return path


def with_circle(x: float, y: float, radius: float, count: int = 1) -> str:
    """The clean SVG file with circles on the sheet beside its pieces, 1.5 mm apart."""
    one = '<circle cx="{}" cy="{}" r="{}" fill="none" stroke="#000" stroke-width="0.1"/>'
    drawn = "".join(one.format(x, y + 1.5 * i, radius) for i in range(count))
    return clean_svg().replace("</svg>", f"{drawn}</svg>")


@pytest.mark.parametrize(("name", "text"), [("a.dxf", clean_dxf()), ("a.svg", clean_svg())])
def test_a_clean_file_ends_with_status_0_and_its_size(tmp_path: Path, name: str, text: str) -> None:
    ended = run("audit", saved(tmp_path, name, text))
    assert (ended.status, ended.err) == (0, "")
    assert "size over all              190.00 x 70.00 mm, 7.48 x 2.76 in, from 10.00, 10.00" in ended.out
    assert "2 outlines, 24 contours inside, 10 open lines" in ended.out
    assert re.search(r"^  smallest hole +1\.00 mm at ", ended.out, re.MULTILINE)
    assert re.search(r"^  smallest slot +25\.00 mm at 60\.00, ", ended.out, re.MULTILINE)
    assert f"Clean: {len(CHECKS)} checks found nothing." in ended.out
    assert everything(tmp_path).keys() == {name}


def test_a_flaw_is_told_with_its_place_and_what_to_do(tmp_path: Path) -> None:
    ended = run("audit", saved(tmp_path, "a.svg", with_circle(120, 50, 0.5)))
    assert ended.status == AuditError.exit_status
    lines = ended.out.splitlines()
    at = next(i for i, line in enumerate(lines) if line.startswith("no    a hole of 1.00 mm in no outline"))
    assert lines[at].split("  ")[-2:] == ["at 120.50, 50.00", "circle 37"]
    assert lines[at + 1] == "      -> move it into its piece, or take it out"
    assert "Not clean: 1 flaw would spoil leather or be refused." in ended.out


def test_three_flaws_of_a_kind_are_shown_unless_every_one_is_asked_for(tmp_path: Path) -> None:
    path = saved(tmp_path, "a.svg", with_circle(120, 50, 0.5, count=8))
    short, full = run("audit", path).out, run("audit", path, "--every").out
    assert short.count("in no outline") == 3
    assert "      and 5 more of the kind; --every shows all" in short.splitlines()
    assert full.count("in no outline") == 8
    assert "more of the kind" not in full
    assert short.count("\ngood") == 0
    assert full.count("\ngood  ") == len(CHECKS) - 1


def test_places_in_svg_count_down_from_the_top_and_in_dxf_as_in_the_file(tmp_path: Path) -> None:
    svg = run("audit", saved(tmp_path, "a.svg", clean_svg()), "--smallest-radius", "4").out
    assert "across and down from the upper left corner of the page" in svg
    assert "an arc of 3.00 mm radius; the limit is 4.00 mm  at 40.88, 54.12  path 24" in svg
    dxf = run("audit", saved(tmp_path, "a.dxf", clean_dxf()), "--smallest-radius", "4").out
    assert "an arc of 3.00 mm radius; the limit is 4.00 mm  at 40.88, 35.88  LWPOLYLINE 24" in dxf


@pytest.mark.parametrize(
    ("option", "told"),
    [
        ("--smallest-hole", "a hole of 1.00 mm; the limit is 30.00 mm"),
        ("--smallest-gap", "a gap between cuts of 2.50 mm; the limit is 30.00 mm"),
        ("--smallest-radius", "an arc of 3.00 mm radius; the limit is 30.00 mm"),
        ("--smallest-slot", "a slot of 25.00 mm; the limit is 30.00 mm"),
    ],
)
def test_limits_are_asked_for_by_option(tmp_path: Path, option: str, told: str) -> None:
    path = saved(tmp_path, "a.dxf", clean_dxf())
    ended = run("audit", path, option, "3 cm", "--every")
    assert ended.status == AuditError.exit_status
    assert told in ended.out
    assert run("audit", path, option, "0.1").status == 0


def test_several_files_are_told_one_after_another_and_one_that_is_not_clean_counts(tmp_path: Path) -> None:
    good, bad = saved(tmp_path, "a.dxf", clean_dxf()), saved(tmp_path, "b.svg", with_circle(120, 50, 0.5))
    ended = run("audit", good, bad)
    assert ended.status == AuditError.exit_status
    assert [line for line in ended.out.splitlines() if ": DXF" in line or ": SVG" in line] == [
        "a.dxf: DXF R2010, in mm",
        "b.svg: SVG 1.1, in mm",
    ]


@pytest.mark.parametrize(
    "make", [lambda path: None, lambda path: path.mkdir(), lambda path: path.write_bytes(b"%PDF")]
)
def test_what_cannot_be_read_ends_with_status_9_and_one_line(tmp_path: Path, make: Callable[[Path], object]) -> None:
    path = tmp_path / "a.dxf"
    make(path)
    ended = run("audit", path)
    assert (ended.status, ended.out) == (ReadingError.exit_status, "")
    assert len(ended.err.splitlines()) == 1
    assert "a.dxf: " in ended.err


def test_a_file_beyond_all_measure_is_not_read(tmp_path: Path) -> None:
    path = tmp_path / "a.dxf"
    with path.open("wb") as stream:
        stream.truncate(50_000_001)
    assert "larger than 50 MB" in run("audit", path).err
