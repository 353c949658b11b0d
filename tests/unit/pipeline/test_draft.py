"""All files of a design are written or none; a wallet that does not fit has none."""

from __future__ import annotations

import re
from pathlib import Path

import pypdfium2 as pdfium
import pytest

from patternforge.delivery.listing import LIST
from patternforge.errors import DeliveryError, DesignError, DraftError, FitError, PatternforgeError
from patternforge.pipeline.draft import draft
from patternforge.pipeline.request import DraftRequest, OnNo, Wanted
from tests.unit.delivery.killing import everything
from tests.unit.small_designs import BROKEN, MISFIT, SLEEVE, saved

LASER = {f"laser/sleeve-laser-{what}.{kind}" for what in ("main", "lining", "everything") for kind in ("dxf", "svg")}
DIE = {"die/sleeve-die-back.dxf", "die/sleeve-die-cards.dxf", "die/sleeve-die-proof.pdf"}
PAPER = {"paper/sleeve-a4.pdf", "paper/sleeve-a4-page-01.svg", "svg/sleeve.svg"}
ALWAYS = {"pattern.json", LIST}
LOOSE = SLEEVE.replace("margin: margin}", "margin: margin, through: [back, cards]}").replace(
    "seams:", "  - {layer: held by nothing, leather: main}\nseams:"
)


def files(folder: Path) -> set[str]:
    return {path for path, data in everything(folder).items() if data is not None}


@pytest.mark.parametrize(
    ("wanted", "expected"),
    [
        (Wanted.LASER, LASER),
        (Wanted.DIE, DIE),
        (Wanted.PAPER, PAPER),
        (Wanted.ALL, LASER | DIE | PAPER),
    ],
)
def test_the_folder_of_a_design_holds_what_is_wanted(tmp_path: Path, wanted: Wanted, expected: set[str]) -> None:
    done = draft(DraftRequest(saved(tmp_path), wanted=wanted, out=tmp_path / "out"))
    assert files(tmp_path / "out" / "sleeve") == expected | ALWAYS == set(done.delivery.written)


def test_a_wallet_that_does_not_fit_is_not_written_and_the_last_set_stays(tmp_path: Path) -> None:
    request = DraftRequest(saved(tmp_path), wanted=Wanted.DIE, out=tmp_path / "out")
    draft(request)
    before = everything(tmp_path / "out")
    saved(tmp_path, MISFIT)
    with pytest.raises(FitError) as caught:
        draft(request)
    assert (
        str(caught.value)
        .splitlines()[1]
        .startswith("  thickest stack sewn through, rim: 2.00 mm, tolerable at most 1.50 mm")
    )
    assert everything(tmp_path / "out") == before


def misfit(tmp_path: Path, limits: str = "") -> dict[str, bytes]:
    """The files of a wallet that does not fit, by path."""
    design = saved(tmp_path, MISFIT.replace("limits: {", f"limits: {{{limits}"))
    draft(DraftRequest(design, out=tmp_path / "out", on_no=OnNo.WRITE))
    found = everything(tmp_path / "out" / "sleeve")
    return {path: data for path, data in found.items() if isinstance(data, bytes)}


def test_every_file_of_a_wallet_that_does_not_fit_says_so_in_its_name(tmp_path: Path) -> None:
    written = misfit(tmp_path)
    marked = {path.replace(".", "-DOES-NOT-FIT.") for path in LASER | DIE | PAPER}
    assert written.keys() == marked | ALWAYS
    assert b'"verdict": "no"' in written["pattern.json"]


@pytest.mark.parametrize(("limits", "count"), [("", "1 measure"), ("hole_to_edge: 9 mm, ", r"[2-9]\d* measures")])
def test_the_pages_of_a_wallet_that_does_not_fit_say_so_and_how_often(
    tmp_path: Path, limits: str, count: str
) -> None:
    written = misfit(tmp_path, limits)
    shown = [
        str(written[path], "utf-8") for path in written if path.startswith(("paper/", "svg/")) and ".svg" in path
    ]
    assert len(shown) >= 2
    for text in shown:
        assert re.search(rf">DOES NOT FIT: {count} would spoil the leather\.", text)
    assert b"/Title (DOES NOT FIT: " in written["paper/sleeve-a4-DOES-NOT-FIT.pdf"]


def test_what_a_machine_cuts_of_a_wallet_that_does_not_fit_is_what_the_design_says(tmp_path: Path) -> None:
    marked = misfit(tmp_path)
    saved(tmp_path)
    draft(DraftRequest(tmp_path / "sleeve.yaml", out=tmp_path / "out"))
    fitting = everything(tmp_path / "out" / "sleeve")
    for path in LASER | {path for path in DIE if path.endswith(".dxf")}:
        assert marked[path.replace(".", "-DOES-NOT-FIT.")] == fitting[path]


def test_the_proof_of_dies_for_a_wallet_that_does_not_fit_says_so_on_every_page(tmp_path: Path) -> None:
    document = pdfium.PdfDocument(misfit(tmp_path)["die/sleeve-die-proof-DOES-NOT-FIT.pdf"])
    said = [" ".join(document[i].get_textpage().get_text_bounded().split()) for i in range(len(document))]
    assert len(said) == 3
    assert all("DOES NOT FIT: 1 measure would spoil the leather." in words for words in said)


def test_a_wallet_that_fits_bears_no_warning(tmp_path: Path) -> None:
    draft(DraftRequest(saved(tmp_path), out=tmp_path / "out"))
    found = everything(tmp_path / "out" / "sleeve")
    assert not [path for path in found if "NOT" in path]
    assert not [path for path, data in found.items() if isinstance(data, bytes) and b"DOES NOT" in data]


@pytest.mark.parametrize(
    ("text", "expected"),
    [(BROKEN, DesignError), (LOOSE, DraftError)],
)
def test_a_design_that_cannot_be_drafted_writes_nothing(
    tmp_path: Path, text: str, expected: type[PatternforgeError]
) -> None:
    with pytest.raises(expected):
        draft(DraftRequest(saved(tmp_path, text), out=tmp_path / "out"))
    assert not (tmp_path / "out").exists()


def test_a_file_of_the_users_in_the_way_stops_the_whole_set(tmp_path: Path) -> None:
    mine = tmp_path / "out" / "sleeve" / "pattern.json"
    mine.parent.mkdir(parents=True)
    mine.write_bytes(b"mine")
    with pytest.raises(DeliveryError, match=r"pattern\.json"):
        draft(DraftRequest(saved(tmp_path), wanted=Wanted.DIE, out=tmp_path / "out"))
    assert everything(tmp_path / "out") == {"sleeve": None, "sleeve/pattern.json": b"mine"}


def test_names_that_would_leave_the_folder_or_meet_each_other_become_plain_and_different(tmp_path: Path) -> None:
    text = SLEEVE.replace("layer: back", "layer: ../../back").replace("bank: cards", "bank: 'BACK: cards?'")
    more = '  - {bank: "back/cards", on: sleeve, leather: main, item: card, slots: 1, step: 12 mm, show: 20 mm}\n'
    path = saved(tmp_path, text.replace("seams:", f"{more}seams:"), "..Sleeve & more.yaml")
    draft(DraftRequest(path, out=tmp_path / "out", on_no=OnNo.WRITE))
    assert [entry.name for entry in (tmp_path / "out").iterdir()] == ["sleeve-more"]
    names = [Path(name).name for name in files(tmp_path / "out")]
    assert len({name.casefold() for name in names}) == len(names)
    assert "sleeve-more-die-back-cards.dxf" in names
    assert "sleeve-more-die-back-cards--2.dxf" in names
    assert all(name.isascii() and " " not in name for name in names)
