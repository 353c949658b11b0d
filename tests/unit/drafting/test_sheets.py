"""Sheets and the names of their files."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations

import pytest

from patternforge.drafting.names import file_word, file_words
from patternforge.drafting.purpose import CutFace, DieHoles, DieOptions, DraftingOptions, LaserOptions
from patternforge.drafting.sheets import die_sheets, laser_sheets, printed_pages, wallet_dies
from patternforge.drawing.extent import extent
from patternforge.drawing.model import Role, Sheet, Text
from patternforge.drawing.paper import A4
from patternforge.drawing.printing import PrintSettings
from patternforge.errors import DraftError
from patternforge.geometry.point import Bounds
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import LayerPart
from tests.designs_built import two_fold
from tests.shapes_built import windowed


@pytest.fixture(scope="module")
def two() -> Pattern:
    return drafted(two_fold())


def apart(a: Bounds, b: Bounds) -> float:
    return max(a.x0 - b.x1, b.x0 - a.x1, a.y0 - b.y1, b.y0 - a.y1)


def boxes(sheet: Sheet) -> list[Bounds]:
    return [extent(figure.inks) for figure in sheet.figures]


def test_a_laser_gets_a_sheet_for_each_leather_and_one_with_everything_both_as_dxf_and_svg(two: Pattern) -> None:
    sheets = laser_sheets(two)
    assert [(one.name, one.kind) for one in sheets] == [
        (f"two-fold-laser-{word}", kind) for word in ("outer", "inner", "everything") for kind in ("dxf", "svg")
    ]
    names = [[figure.name for figure in one.sheet.figures] for one in sheets[::2]]
    assert names[0] == ["shell"]
    assert sorted(names[0] + names[1]) == sorted(names[2]) == sorted(piece.name for piece in two.pieces)
    assert {figure.group for figure in sheets[2].sheet.figures} == {"inner"}


@pytest.mark.parametrize("options", [LaserOptions(), LaserOptions(kerf=0.3, gap=2.3, bed=300.0)])
def test_pieces_on_a_sheet_keep_the_gap_from_each_other_and_from_the_rim(two: Pattern, options: LaserOptions) -> None:
    for one in laser_sheets(two, DraftingOptions(options)):
        placed = boxes(one.sheet)
        assert all(apart(a, b) >= options.gap - 1e-9 for a, b in combinations(placed, 2))
        rim = [min(b.x0, b.y0, one.sheet.width - b.x1, one.sheet.height - b.y1) for b in placed]
        assert min(rim) >= options.gap - 1e-9


def test_a_sheet_is_no_wider_than_the_bed_and_a_piece_that_is_wider_is_refused(two: Pattern) -> None:
    narrow = laser_sheets(two, DraftingOptions(LaserOptions(bed=250.0)))[-1].sheet
    assert narrow.width <= 250.0 < laser_sheets(two)[-1].sheet.width
    with pytest.raises(DraftError, match=r"piece 'shell' is 223\.59 mm wide"):
        laser_sheets(two, DraftingOptions(LaserOptions(bed=240.0)))


def test_a_sheet_without_a_bed_is_neither_a_strip_nor_a_tower(two: Pattern) -> None:
    sheet = laser_sheets(two)[-1].sheet
    assert 0.75 <= sheet.width / sheet.height <= 3


def test_a_piece_wanted_twice_lies_on_its_sheets_twice(two: Pattern) -> None:
    twice = replace(two, pieces=(replace(two.pieces[0], quantity=2), *two.pieces[1:]))
    outer, *_ = laser_sheets(twice)
    assert [figure.name for figure in outer.sheet.figures] == ["shell", "shell"]
    a, b = boxes(outer.sheet)
    assert apart(a, b) >= 10.0 - 1e-9


def test_kerf_and_cutting_from_the_back_stand_in_the_file_name(two: Pattern) -> None:
    chosen = DraftingOptions(LaserOptions(kerf=0.15, cut_face=CutFace.BACK))
    assert laser_sheets(two, chosen)[0].name == "two-fold-laser-outer-back-kerf-0.150"
    assert laser_sheets(two)[0].name == "two-fold-laser-outer"


def test_a_die_maker_gets_one_net_dxf_for_each_die_and_its_name_says_when_it_holds_holes(two: Pattern) -> None:
    plain, punched = die_sheets(two), die_sheets(two, DraftingOptions(die=DieOptions(DieHoles.PUNCHED)))
    assert [one.name for one in plain][:3] == [
        "two-fold-die-shell",
        "two-fold-die-divider",
        "two-fold-die-left-cards-3",
    ]
    dies = wallet_dies(two)
    assert len(plain) == len(dies) < len(two.pieces)
    for one, die in zip(plain, dies, strict=True):
        (figure,) = one.sheet.figures
        piece = two.piece(die.name)
        assert one.kind == "dxf"
        assert (one.sheet.width - 20, one.sheet.height - 20) == pytest.approx((piece.width, piece.height))
        assert [ink.role for ink in figure.inks] == [Role.OUTLINE]
    assert all(one.name.endswith("-with-holes") for one in punched)


def test_printed_pages_bear_title_and_revision_and_show_every_piece_once(two: Pattern) -> None:
    printed = printed_pages(two, A4)
    texts = [[ink.content for ink in page.inks if isinstance(ink, Text)] for page in printed]
    assert all("Two-fold wallet, revision A" in on_page for on_page in texts)
    for piece in two.pieces:
        assert sum(on_page.count(piece.name) for on_page in texts) == 1
    stretched = printed_pages(two, A4, PrintSettings("Other", x_correction=1.01))
    assert {page.x_factor for page in stretched} == {1.01}


@pytest.mark.parametrize(
    ("words", "word"),
    [
        ("Left cards 2", "left-cards-2"),
        ("../etc", "etc"),
        ("Köper", "koper"),
        ("STRASSE ß", "strasse-ss"),
        ("??", "x"),
    ],
)
def test_file_words_hold_letters_digits_and_hyphens_alone(words: str, word: str) -> None:
    assert file_word(words) == word


def test_names_that_would_make_the_same_file_are_numbered_apart() -> None:
    assert file_words(["a b", "A-B", "a b 2", "c"]) == ("a-b", "a-b--2", "a-b-2", "c")


def test_a_leather_called_everything_does_not_take_the_name_of_the_whole_sheet() -> None:
    design = two_fold()
    renamed = replace(
        design,
        leathers=(replace(design.leathers[0], role="everything"), design.leathers[1]),
        parts=(LayerPart("shell", "everything", 0, 1), *design.parts[1:]),
    )
    names = [one.name for one in laser_sheets(drafted(renamed))[::2]]
    assert names == [f"two-fold-laser-{word}" for word in ("everything", "inner", "everything--2")]


def test_every_material_has_a_cut_file_of_its_own() -> None:
    sheets = {one.name: one.sheet for one in laser_sheets(drafted(windowed())) if one.kind == "dxf"}
    assert list(sheets) == [f"sleeve-laser-{word}" for word in ("outer", "inner", "film", "everything")]
    assert [figure.name for figure in sheets["sleeve-laser-film"].figures] == ["window film"]
    assert "window film" not in [figure.name for figure in sheets["sleeve-laser-inner"].figures]
