"""``sheet``."""

from __future__ import annotations

from pathlib import Path

import pypdfium2 as pdfium
import pytest

from tests.unit.cli.running import run
from tests.unit.small_designs import SLEEVE, saved

PRICES = "prices: Spring\ncurrency: EUR\nleathers:\n  main: {price: 12, per: ft2, waste: 20}\n"
UNPRICED = SLEEVE.replace(", price: 14.5, price_area: ft2", "")


def _text(pdf: Path) -> str:
    document = pdfium.PdfDocument(pdf)
    return "\n".join(page.get_textpage().get_text_range() for page in document)


@pytest.fixture
def design(tmp_path: Path) -> Path:
    saved(tmp_path, UNPRICED)
    return tmp_path / "sleeve.yaml"


@pytest.fixture
def quick(monkeypatch: pytest.MonkeyPatch) -> None:
    """No search for the thicknesses that fit, which takes most of the time and has tests of its own."""
    monkeypatch.setattr("patternforge.fit.window.thickness_windows", lambda pattern: ())


def test_both_files_are_written_and_told(design: Path, tmp_path: Path) -> None:
    ended = run("sheet", design, "--out", tmp_path)
    assert (ended.status, ended.err) == (0, "")
    folder = tmp_path / "sleeve-making"
    assert {path.name for path in folder.iterdir()} == {"sleeve-making.html", "sleeve-making.pdf", "files.txt"}
    assert "sleeve-making.pdf" in ended.out
    page = (folder / "sleeve-making.html").read_text(encoding="utf-8")
    assert "Small sleeve" in page
    assert "Step by step" in page
    assert "Costs" not in page
    assert "fits from - to" in page
    assert "not looked for" not in page


@pytest.mark.usefixtures("quick")
def test_prices_and_waste_come_from_the_maker(design: Path, tmp_path: Path) -> None:
    prices = tmp_path / "prices.yaml"
    prices.write_text(PRICES, encoding="utf-8")
    assert run("sheet", design, "--prices", prices, "--out", tmp_path).status == 0
    page = (tmp_path / "sleeve-making" / "sleeve-making.html").read_text(encoding="utf-8")
    assert "Costs of one wallet" in page
    assert "leather main, waste 20 %" in page
    assert run("sheet", design, "--prices", prices, "--waste", "33", "--out", tmp_path).status == 0
    page = (tmp_path / "sleeve-making" / "sleeve-making.html").read_text(encoding="utf-8")
    assert "leather main, waste 33 %" in page


def test_a_broken_price_list_is_told_and_nothing_is_written(design: Path, tmp_path: Path) -> None:
    prices = tmp_path / "prices.yaml"
    prices.write_text(PRICES.replace("12,", "12 EUR,"), encoding="utf-8")
    ended = run("sheet", design, "--prices", prices, "--out", tmp_path / "new")
    assert ended.status == 4
    assert "prices.yaml:4:17: " in ended.err
    assert not (tmp_path / "new").exists()
    assert run("sheet", design, "--prices", tmp_path / "none.yaml", "--out", tmp_path / "new").status == 4


@pytest.mark.usefixtures("quick")
def test_what_a_price_list_lacks_and_what_of_it_is_not_used_is_told(design: Path, tmp_path: Path) -> None:
    prices = tmp_path / "prices.yaml"
    prices.write_text(PRICES.replace("main:", "mian:") + "hardware: {snap: 0.3}\n", encoding="utf-8")
    told = run("sheet", design, "--prices", prices, "--out", tmp_path)
    assert (told.status, told.err) == (0, "")
    assert told.out.splitlines()[2:-2] == [
        "  sleeve-making.pdf",
        "",
        "Not in the costs, for want of a price: leather main, leather lining, thread, work",
        "In the price list, but in nothing of this wallet: leather mian, hardware: snap",
    ]
    whole = "  lining: {price: 9, per: ft2}\nthread: {price: 0.1, per: m}\nwork: {rate: 30, minutes: {sewing: 20}}\n"
    prices.write_text(PRICES + whole, encoding="utf-8")
    for words in (["--prices", prices], []):
        said = run("sheet", design, *words, "--out", tmp_path).out.splitlines()
        assert said[3:] == ["", told.out.splitlines()[-1]]


def test_a_wallet_that_cannot_be_drafted_is_not_blamed_on_the_waste(design: Path, tmp_path: Path) -> None:
    text = design.read_text(encoding="utf-8")
    design.write_text(text.replace("Small sleeve", "右"), encoding="utf-8")
    ended = run("sheet", design, "--waste", "20", "--out", tmp_path / "new")
    assert ended.status == 5
    assert "右" in ended.err
    assert "--waste" not in ended.err
    ended = run("sheet", design, "--waste", "20", "--white", "60", "--out", tmp_path / "new")
    assert (ended.status, "--waste" in ended.err, "--white" in ended.err) == (2, False, True)


def test_waste_that_is_no_waste_is_a_usage_error(design: Path, tmp_path: Path) -> None:
    for word in ("-5", "900", "nan", "some"):
        ended = run("sheet", design, "--waste", word, "--out", tmp_path / "new")
        assert ended.status == 2
        assert "--waste" in ended.err
    assert not (tmp_path / "new").exists()


@pytest.mark.usefixtures("quick")
def test_a_wallet_that_does_not_fit_has_a_sheet_that_says_so(design: Path, tmp_path: Path) -> None:
    text = design.read_text(encoding="utf-8")
    design.write_text(text + "\nlimits: {closed_thickness: 0.5 mm}\n", encoding="utf-8")
    ended = run("sheet", design, "--out", tmp_path)
    assert ended.status == 0
    assert "does not fit" in ended.out
    files = {path.name for path in (tmp_path / "sleeve-making").iterdir()}
    assert files == {"sleeve-making-DOES-NOT-FIT.html", "sleeve-making-DOES-NOT-FIT.pdf", "files.txt"}
    assert "DOES NOT FIT" in _text(tmp_path / "sleeve-making" / "sleeve-making-DOES-NOT-FIT.pdf")


@pytest.mark.usefixtures("quick")
@pytest.mark.parametrize(("paper", "size"), [("a4", (210.0, 297.0)), ("letter", (215.9, 279.4))])
def test_it_prints_on_the_paper_asked_for(
    paper: str, size: tuple[float, float], design: Path, tmp_path: Path
) -> None:
    assert run("sheet", design, "--paper", paper, "--type", "large", "--out", tmp_path).status == 0
    document = pdfium.PdfDocument(tmp_path / "sleeve-making" / "sleeve-making.pdf")
    for page in document:
        assert tuple(side * 25.4 / 72 for side in page.get_size()) == pytest.approx(size, abs=0.01)
    style = (tmp_path / "sleeve-making" / "sleeve-making.html").read_text(encoding="utf-8")
    assert f"size: {size[0]:g}mm {size[1]:g}mm" in style


@pytest.mark.usefixtures("quick")
def test_a_letter_of_a_price_list_that_cannot_be_drawn_is_refused_in_its_place(design: Path, tmp_path: Path) -> None:
    prices = tmp_path / "prices.yaml"
    prices.write_text(PRICES.replace("EUR", "₿"), encoding="utf-8")
    ended = run("sheet", design, "--prices", prices, "--out", tmp_path / "new")
    assert ended.status == 4
    assert "prices.yaml:2:11: 'currency' of the price list: no stroke letter for" in ended.err
    assert "U+20BF" in ended.err
    assert not (tmp_path / "new").exists()
