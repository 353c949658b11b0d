"""``comb`` and ``kerf``."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.outside.dxf_reading import cuts
from tests.outside.hpgl_reading import runs
from tests.unit.cli.running import run


def files(folder: Path) -> set[str]:
    return {path.name for path in (folder / "kerf-comb").iterdir()} - {"files.txt"}


def test_a_comb_is_written_for_a_laser_with_the_page_it_is_read_by(tmp_path: Path) -> None:
    ended = run("comb", "--out", tmp_path, "--paper", "letter")
    assert ended.status == 0
    names = files(tmp_path)
    assert names == {"kerf-comb.dxf", "kerf-comb.svg", "kerf-comb-letter.pdf", "kerf-comb-letter-page-01.svg"}
    assert all(name in ended.out for name in names)
    read = cuts((tmp_path / "kerf-comb" / "kerf-comb.dxf").read_text("ascii"))
    comb, tongue = (each.contour.box for each in read if each.layer == "OUTLINE")
    # 13 slots of 8 - 2 x 0.05 i mm and 14 teeth of 4 mm.
    assert comb[2] - comb[0] == pytest.approx(13 * 8 - 2 * 0.05 * 78 + 14 * 4)
    assert (tongue[2] - tongue[0], tongue[3] - tongue[1]) == (8.0, 40.0)


def test_a_comb_for_a_machine_is_one_file_of_its_kind_whatever_kerf_its_table_says(tmp_path: Path) -> None:
    table = tmp_path / "shop.yaml"
    table.write_text("{machine: Shop, tool: laser, format: dxf, kerf: 0.3 mm}", encoding="utf-8")
    assert run("comb", "--machine", table, "--out", tmp_path).status == 0
    assert {name for name in files(tmp_path) if "a4" not in name} == {"kerf-comb-shop.dxf"}
    read = cuts((tmp_path / "kerf-comb" / "kerf-comb-shop.dxf").read_text("ascii"))
    tongue = [each.contour.box for each in read if each.layer == "OUTLINE"][-1]
    assert tongue[2] - tongue[0] == 8.0
    assert run("comb", "--machine", "drag-knife", "--out", tmp_path).status == 0
    plot = runs((tmp_path / "kerf-comb" / "kerf-comb-drag-knife.hpgl").read_text("ascii"))
    assert {round(each.box[2] - each.box[0], 6) for each in plot if each.pen == 1} >= {8.0}


def test_a_finer_comb_has_finer_slots(tmp_path: Path) -> None:
    assert run("comb", "--step", "0.02mm", "--out", tmp_path).status == 0
    assert "--step 0.02mm" in run("comb", "--step", "0.02mm", "--out", tmp_path).out
    assert run("kerf", "--slot", "4", "--step", "0.02mm").out.startswith("The kerf lies between 0.06 and 0.08 mm.")


def test_a_reading_comes_back_as_the_kerf_to_write_down() -> None:
    assert "Write 'kerf: 0.175 mm'." in run("kerf", "--slot", "4").out
    assert "Write 'kerf: 0.18 mm'." in run("kerf", "--tongue", "7.82mm").out


@pytest.mark.parametrize(
    ("words", "status", "says"),
    [
        (("kerf",), 2, "one of them"),
        (("kerf", "--slot", "4", "--tongue", "7.8"), 2, "one of them"),
        (("kerf", "--slot", "four"), 2, "'--slot'"),
        (("kerf", "--slot", "13"), 5, "greater --step"),
        (("kerf", "--tongue", "9"), 5, "it was drawn 8 mm wide"),
        (("comb", "--step", "1"), 5, "lawful is 0.02 to 0.2 mm"),
        (("comb", "--machine", "die-shop"), 2, "makes dies, which have no kerf"),
        (("comb", "--machine", "lazer"), 4, "did you mean laser?"),
    ],
)
def test_what_makes_no_comb_or_no_kerf_is_refused(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, words: tuple[str, ...], status: int, says: str
) -> None:
    monkeypatch.chdir(tmp_path)
    ended = run(*words)
    assert (ended.status, ended.out) == (status, "")
    assert says in " ".join(ended.err.split())
    assert list(tmp_path.iterdir()) == []


def test_a_bed_too_small_for_the_comb_is_refused(tmp_path: Path) -> None:
    table = tmp_path / "tiny.yaml"
    table.write_text("{machine: Tiny, tool: laser, format: dxf, bed: {width: 120 mm}}", encoding="utf-8")
    ended = run("comb", "--machine", table, "--out", tmp_path / "out")
    assert (ended.status, ended.out) == (5, "")
    assert "'comb' is" in ended.err
