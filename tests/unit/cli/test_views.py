"""``views``."""

from __future__ import annotations

from pathlib import Path
from xml.etree import ElementTree

import pytest

from patternforge.pipeline.stages import judged
from tests.unit.cli.running import run

DESIGNS = Path(__file__).parents[3] / "designs"


def test_thickness_and_sections_are_written_and_the_order_of_sewing_is_told(tmp_path: Path) -> None:
    ended = run("views", DESIGNS / "two-fold.yaml", "--out", tmp_path)
    assert ended.status == 0
    folder = tmp_path / "two-fold-views"
    assert {path.name for path in folder.iterdir()} == {
        "two-fold-thickness.svg",
        "two-fold-sections.svg",
        "two-fold-folded.html",
        "files.txt",
    }
    lines = [line.strip() for line in ended.out.splitlines()]
    assert lines[-1] == "7. rim: lay what is sewn to note divider on shell"
    assert "1. left cards stop 3: lay left cards 3 on note divider" in lines


@pytest.mark.parametrize("path", sorted(DESIGNS.glob("*.yaml")), ids=lambda path: path.stem)
def test_every_design_has_its_views_and_those_of_panels_at_true_size(path: Path, tmp_path: Path) -> None:
    ended = run("views", path, "--out", tmp_path)
    pattern = judged(path).pattern
    assert ended.status == 0
    if not pattern.panels:
        names = {entry.name for entry in (tmp_path / f"{path.stem}-views").iterdir()}
        assert names == {f"{path.stem}-folded.html", "files.txt"}
        return
    for name in ("thickness", "sections"):
        root = ElementTree.parse(tmp_path / f"{path.stem}-views" / f"{path.stem}-{name}.svg").getroot()
        assert float(root.attrib["width"].removesuffix("mm")) > pattern.width
        assert root.attrib["viewBox"].split()[2] == root.attrib["width"].removesuffix("mm")


def test_views_heed_what_is_set(tmp_path: Path) -> None:
    for number, words in enumerate(((), ("--set", "outer=2mm"))):
        assert run("views", DESIGNS / "two-fold.yaml", *words, "--out", tmp_path / str(number)).status == 0
    files = [next((tmp_path / str(n)).rglob("*sections.svg")).read_text(encoding="utf-8") for n in (0, 1)]
    assert "14.68 mm" in files[0]
    assert "16.28 mm" in files[1]
