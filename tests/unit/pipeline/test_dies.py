"""The pack for a die maker: with and without a machine table, and what ``pattern.json`` says of it."""

from __future__ import annotations

import json
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pypdfium2 as pdfium
import pytest
from jsonschema import Draft202012Validator

from patternforge.drafting.purpose import DieHoles, DieOptions, DraftingOptions, Mirrors
from patternforge.drafting.schema import pattern_schema
from patternforge.drawing.paper import LETTER
from patternforge.pipeline.draft import Draft, draft
from patternforge.pipeline.machines import machine_at
from patternforge.pipeline.request import DraftRequest, Wanted
from tests.unit.small_designs import SLEEVE, saved

# Two banks whose lowest pockets are mirror images of each other: the shell is rounded at its outer corners only.
PAIR = """\
design: Small pair
parameters:
  margin: {value: 3 mm, from: 2.5 mm, to: 5 mm, meaning: stitch line to edge}
leathers:
  main: {thickness: 1.2 mm, tannage: vegetable}
contents: {card: id1}
body: {height: fit, corner: 5 mm, panels: {left: fit, right: fit}, folds: [{angle: 180, relief: 4 mm}], closing: [1]}
parts:
  - {layer: shell, leather: main}
  - {bank: left cards, on: left, leather: main, item: card, slots: 1, step: 12 mm, show: 14 mm}
  - {bank: right cards, on: right, leather: main, item: card, slots: 1, step: 12 mm, show: 14 mm}
seams:
  - {seam: rim, along: [left, bottom, right], margin: margin}
"""


def described(done: Draft) -> dict[str, Any]:
    read: dict[str, Any] = json.loads((done.delivery.folder / "pattern.json").read_text(encoding="utf-8"))
    Draft202012Validator(pattern_schema()).validate(read)
    dies: dict[str, Any] = read["cutting"]["dies"]
    return dies


def drafted(folder: Path, text: str, **changes: Any) -> Draft:
    return draft(DraftRequest(saved(folder, text), wanted=Wanted.DIE, out=folder / "out", **changes))


def cuts(dies: Mapping[str, Any]) -> list[list[tuple[str, bool]]]:
    return [[(cut["piece"], cut["mirrored"]) for cut in die["cuts"]] for die in dies["dies"]]


def test_mirror_images_share_a_die_and_both_counts_are_told(tmp_path: Path) -> None:
    dies = described(drafted(tmp_path, PAIR))
    assert cuts(dies) == [[("shell", False)], [("left cards", False), ("right cards", True)]]
    assert dies["count_without_turning_over"] == 3


def test_mirror_images_have_a_file_each_where_asked(tmp_path: Path) -> None:
    options = DraftingOptions(die=DieOptions(mirrors=Mirrors.OWN))
    done = drafted(tmp_path, PAIR, drafting=options)
    assert cuts(described(done)) == [[("shell", False)], [("left cards", False)], [("right cards", False)]]
    assert "die/sleeve-die-right-cards.dxf" in done.delivery.written


@pytest.mark.parametrize("mirrors", Mirrors)
def test_a_die_shops_table_gives_the_same_dies_under_its_own_name(tmp_path: Path, mirrors: Mirrors) -> None:
    options = DraftingOptions(die=DieOptions(mirrors=mirrors))
    own = described(drafted(tmp_path, PAIR, drafting=options))
    done = drafted(tmp_path, PAIR, drafting=options, machine=machine_at("die-shop", tmp_path))
    dies = described(done)
    assert cuts(dies) == cuts(own)
    assert dies["proof"] == "die-shop/sleeve-die-shop-proof.pdf"
    sent = {dies["proof"], *(die["file"] for die in dies["dies"])}
    assert sent | {"pattern.json", "files.txt"} == set(done.delivery.written)


def test_a_shop_that_cannot_make_it_is_told_on_the_proof_and_in_the_list(tmp_path: Path) -> None:
    table = "machine: Coarse shop\ntool: die\nformat: dxf\nfiles: pieces\nholes: left out\nsmallest: {radius: 6 mm}\n"
    (tmp_path / "coarse.yaml").write_text(table, encoding="utf-8")
    done = drafted(tmp_path, PAIR, machine=machine_at("coarse.yaml", tmp_path))
    assert {fine["verdict"] for die in described(done)["dies"] for fine in die["finest"]} == {"no"}
    document = pdfium.PdfDocument(done.delivery.folder / described(done)["proof"])
    for number in range(len(document)):
        said = " ".join(document[number].get_textpage().get_text_bounded().split())
        assert "smallest radius 5.00 mm, limit 6.00 mm: NO, the shop cannot make it" in said


def test_a_laser_that_is_sent_single_pieces_gets_every_piece_and_no_proof(tmp_path: Path) -> None:
    (tmp_path / "single.yaml").write_text(
        "machine: Single\ntool: laser\nformat: dxf\nfiles: pieces\n", encoding="utf-8"
    )
    done = drafted(tmp_path, PAIR, machine=machine_at("single.yaml", tmp_path))
    assert described(done) is None
    files = [path for path in done.delivery.written if path.startswith("single/")]
    assert len(files) == 3
    assert all(path.endswith(".dxf") for path in files)


def test_punched_holes_are_in_the_names_and_on_the_proof(tmp_path: Path) -> None:
    done = drafted(tmp_path, SLEEVE, drafting=DraftingOptions(die=DieOptions(DieHoles.PUNCHED)), paper=LETTER)
    dies = described(done)
    assert dies["dies"][0]["file"] == "die/sleeve-die-back-with-holes.dxf"
    document = pdfium.PdfDocument(done.delivery.folder / dies["proof"])
    assert "stitch holes in the die:" in document[1].get_textpage().get_text_bounded()
    assert [round(side * 25.4 / 72, 1) for side in document[0].get_size()] == [215.9, 279.4]


def test_where_no_die_is_asked_for_nothing_is_said_of_dies(tmp_path: Path) -> None:
    done = draft(DraftRequest(saved(tmp_path), wanted=Wanted.LASER, out=tmp_path / "out"))
    assert described(done) is None


def test_the_same_design_gives_the_same_proof(tmp_path: Path) -> None:
    (tmp_path / "b").mkdir()
    once, again = (drafted(folder, PAIR) for folder in (tmp_path, tmp_path / "b"))
    proofs = [(done.delivery.folder / described(done)["proof"]).read_bytes() for done in (once, again)]
    assert proofs[0] == proofs[1]
