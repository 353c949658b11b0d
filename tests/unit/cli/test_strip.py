"""``strip`` and ``neutral``."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.outside.dxf_reading import cuts
from tests.unit.cli.running import run


def test_a_strip_is_written_for_every_way_of_cutting(tmp_path: Path) -> None:
    ended = run("strip", "--length", "120mm", "--gauge", "4mm", "--paper", "letter", "--out", tmp_path)
    assert ended.status == 0
    folder = tmp_path / "test-strip"
    names = {path.name for path in folder.iterdir()} - {"files.txt"}
    assert names == {
        "test-strip-laser.dxf",
        "test-strip-laser.svg",
        "test-strip-die.dxf",
        "test-strip-letter.pdf",
    }
    assert all(name in ended.out for name in names)
    (edge,) = cuts((folder / "test-strip-die.dxf").read_text(encoding="ascii"))
    x0, y0, x1, y1 = edge.contour.box
    assert (x1 - x0, y1 - y0) == (120.0, 20.0)
    assert "Blade" in ended.out


def test_readings_come_back_as_a_neutral_value_to_write_down() -> None:
    # (100 - 98.8 + 3 + 2 x 1.2) / pi = 2.1008; less 1.5, over 1.2: 0.5007. With 98.7 together 0.5272.
    ended = run("neutral", "--thickness", "1.2mm", "49.4+49.4", "49.3 + 49.4mm")
    assert ended.status == 0
    assert "legs 98.80 mm together  neutral 0.50" in ended.out
    assert "legs 98.70 mm together  neutral 0.53" in ended.out
    assert "Write 'neutral: 0.51' under this leather." in ended.out
    assert "apart" not in ended.out


def test_strips_that_do_not_agree_are_told() -> None:
    assert "read them again" in run("neutral", "--thickness", "1.2mm", "49.6+49.6", "49.1+49.1").out


@pytest.mark.parametrize(
    ("words", "status", "substance"),
    [
        (("--thickness", "1.2mm", "49.4"), 2, "not LEG+LEG"),
        (("--thickness", "1.2mm", "49.4+x"), 2, "x"),
        (("--thickness", "1.2mm"), 2, "LEG+LEG"),
        (("49.4+49.4",), 2, "--thickness"),
        (("--thickness", "0mm", "49.4+49.4"), 5, "greater than 0"),
        (("--thickness", "1.2mm", "39+49"), 5, "within the leather"),
    ],
)
def test_what_cannot_be_read_is_refused_in_a_line(words: tuple[str, ...], status: int, substance: str) -> None:
    ended = run("neutral", *words)
    assert (ended.status, ended.out) == (status, "")
    assert substance in ended.err


def test_a_strip_out_of_range_writes_nothing(tmp_path: Path) -> None:
    ended = run("strip", "--length", "20mm", "--out", tmp_path)
    assert ended.status == 5
    assert list(tmp_path.iterdir()) == []
