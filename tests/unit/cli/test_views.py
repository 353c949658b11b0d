"""``views``."""

from __future__ import annotations

from pathlib import Path
from xml.etree import ElementTree

import pypdfium2
import pytest

from patternforge.pipeline.stages import judged
from tests.unit.cli.running import run

DESIGNS = Path(__file__).parents[3] / "designs"


def test_all_pictures_are_written_and_the_steps_and_the_order_of_sewing_are_told(tmp_path: Path) -> None:
    ended = run("views", DESIGNS / "two-fold.yaml", "--out", tmp_path, "--paper", "letter")
    assert ended.status == 0
    folder = tmp_path / "two-fold-views"
    assert {path.name for path in folder.iterdir()} == {
        "two-fold-thickness.svg",
        "two-fold-sections.svg",
        "two-fold-exploded.svg",
        "two-fold-steps.svg",
        "two-fold-views-letter.pdf",
        "two-fold-folded.html",
        "files.txt",
    }
    lines = [line.strip() for line in ended.out.splitlines()]
    assert lines[-1] == "7. rim: lay what is sewn to note divider on shell"
    assert "1. left cards stop 3: lay left cards 3 on note divider" in lines
    assert "9. Fold between left and right until their insides meet." in lines


# A row of panels laid on its side, one that folds round a spine, and one that goes round a ring.
@pytest.mark.parametrize("stem", ["coin-pouch", "notebook-cover", "key-strap"])
def test_thickness_and_sections_are_at_true_size(stem: str, tmp_path: Path) -> None:
    path = DESIGNS / f"{stem}.yaml"
    assert run("views", path, "--out", tmp_path).status == 0
    pattern = judged(path).pattern
    for name in ("thickness", "sections"):
        root = ElementTree.parse(tmp_path / f"{stem}-views" / f"{stem}-{name}.svg").getroot()
        assert float(root.attrib["width"].removesuffix("mm")) > pattern.width
        assert root.attrib["viewBox"].split()[2] == root.attrib["width"].removesuffix("mm")


def test_a_wallet_folded_from_one_piece_is_shown_fold_by_fold(tmp_path: Path) -> None:
    ended = run("views", DESIGNS / "one-piece-card-wallet.yaml", "--out", tmp_path)
    assert ended.status == 0
    assert {path.suffix for path in (tmp_path / "one-piece-card-wallet-views").iterdir()} == {
        ".svg",
        ".pdf",
        ".html",
        ".txt",
    }
    assert "4. Fold left wing in over left. Put left tab through its slit in left pocket." in ended.out
    assert "Sew in this order" not in ended.out


def test_the_pages_hold_every_step_and_are_as_large_as_the_paper(tmp_path: Path) -> None:
    assert run("views", DESIGNS / "card-sleeve.yaml", "--out", tmp_path).status == 0
    with pypdfium2.PdfDocument(tmp_path / "card-sleeve-views" / "card-sleeve-views-a4.pdf") as document:
        sizes = {tuple(sorted(round(side / 72 * 25.4, 1) for side in page.get_size())) for page in document}
        words = " ".join(page.get_textpage().get_text_range() for page in document)
    assert sizes == {(210.0, 297.0)}
    for number, said in enumerate(("Finish", "Lay front cards 2", "Lay rear cards 2", "Lay", "Sand"), start=1):
        assert f"{number}. {said}" in words
    assert "Drawn at 1 :" not in words


def test_views_heed_what_is_set(tmp_path: Path) -> None:
    for number, words in enumerate(((), ("--set", "outer=2mm"))):
        assert run("views", DESIGNS / "two-fold.yaml", *words, "--out", tmp_path / str(number)).status == 0
    files = [next((tmp_path / str(n)).rglob("*sections.svg")).read_text(encoding="utf-8") for n in (0, 1)]
    assert "14.68 mm" in files[0]
    assert "16.28 mm" in files[1]
