"""The making sheet says what the pattern is: sizes, areas, holes, thread, quantities, all of them once."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
import shapely

from patternforge.design.load import load_design
from patternforge.drafting.holes import hole_inks
from patternforge.drafting.making.cutting_list import holes_made
from patternforge.drafting.making.facts import MakingFacts
from patternforge.drafting.making.leather_section import range_told
from patternforge.drafting.making.sewing_section import thread_of
from patternforge.drafting.making.sheet import making_sheet
from patternforge.drafting.making.tools_section import needle_number, usual_thread
from patternforge.drawing.document import Document, Listing, Paragraph, Picture, Tone
from patternforge.fit.findings import Finding, at_least, within
from patternforge.fit.window import ThicknessWindow
from patternforge.geometry.flatten import flattened
from patternforge.geometry.path import Path as Outline
from patternforge.geometry.path import polygon
from patternforge.geometry.point import Point
from patternforge.leather.material import Stretch, Tannage
from patternforge.units import mm
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern
from tests.designs_built import SLITS, two_fold, with_holes
from tests.unit.drafting.making_built import cells, oblong, plain_facts, table, two_fold_facts

DESIGNS = Path(__file__).parents[3] / "designs"


def _ready(name: str) -> Pattern:
    return drafted(load_design((DESIGNS / f"{name}.yaml").read_text(encoding="utf-8"), f"{name}.yaml"))


def _said(document: Document) -> str:
    words = [block.words for block in document.blocks() if isinstance(block, Paragraph)]
    return "\n".join(words)


def _titles(document: Document) -> list[str]:
    return [section.title for section in document.sections]


def _area(path: Outline) -> float:
    """By another program, from points along the outline."""
    return float(shapely.Polygon([(p.x, p.y) for p in flattened(path, 1e-4)]).area)


def test_every_piece_is_listed_once_with_its_sizes_and_quantity() -> None:
    facts = two_fold_facts()
    found = table(making_sheet(facts), "net cm2")
    assert cells(found, "piece") == [piece.name for piece in facts.pattern.pieces]
    assert cells(found, "cut") == [str(piece.quantity) for piece in facts.pattern.pieces]
    sizes = [f"{piece.width:.1f} x {piece.height:.1f}" for piece in facts.pattern.pieces]
    assert cells(found, "width x height") == sizes


def test_areas_are_those_of_the_polygons_and_totals_their_sums() -> None:
    facts = two_fold_facts()
    document = making_sheet(facts)
    areas = {
        piece.name: _area(piece.outline) - sum(_area(path) for path in piece.openings)
        for piece in facts.pattern.pieces
    }
    told = [float(cell) * 100 for cell in cells(table(document, "net cm2"), "net cm2")]
    assert told == pytest.approx(list(areas.values()), rel=1e-3, abs=5.0)
    totals = table(document, "net dm2")
    for leather, net in zip(cells(totals, "leather"), cells(totals, "net dm2"), strict=True):
        own = sum(areas[p.name] * p.quantity for p in facts.pattern.pieces if p.leather == leather)
        assert float(net) * 10_000 == pytest.approx(own, rel=1e-3, abs=50.0)


def test_pieces_cut_twice_count_twice_in_the_leather() -> None:
    pattern = oblong(100.0, 50.0)
    twice = replace(pattern, pieces=(replace(pattern.pieces[0], quantity=2),))
    totals = table(making_sheet(plain_facts(twice)), "net dm2")
    assert (cells(totals, "pieces")[0], cells(totals, "net dm2")[0]) == ("2", "1.00")


def test_waste_stands_apart_and_is_the_makers_own() -> None:
    facts = plain_facts(oblong(100.0, 200.0))
    assert "waste dm2" not in [column.head for column in table(making_sheet(facts), "net dm2").columns]
    found = table(making_sheet(replace(facts, waste=15.0)), "waste dm2")
    row = [cells(found, head)[0] for head in ("net dm2", "waste, %", "waste dm2", "with waste dm2")]
    assert row == ["2.00", "15", "0.30", "2.30"]


def test_holes_counted_are_the_holes_drawn() -> None:
    pattern = drafted(with_holes(two_fold(), SLITS))
    found = table(making_sheet(plain_facts(pattern)), "net cm2")
    drawn = [len(hole_inks(pattern, piece, 0.0)) for piece in pattern.pieces]
    assert cells(found, "holes") == [str(count) for count in drawn]
    assert f"Holes to make in all pieces: {sum(drawn)}." in _said(making_sheet(plain_facts(pattern)))


def test_holes_that_are_pierced_once_turned_in_are_not_counted_as_made() -> None:
    pattern = _ready("turned-edge-two-fold")
    shell = pattern.piece("shell")
    assert holes_made(pattern, shell) == len(hole_inks(pattern, shell, 0.0)) == 0
    assert len(shell.holes) > 0


def test_thread_and_holes_of_every_seam_are_the_patterns() -> None:
    facts = two_fold_facts()
    found = table(making_sheet(facts), "thread")
    assert cells(found, "seam") == [seam.name for seam in facts.pattern.seams]
    assert cells(found, "holes") == [str(len(seam.holes)) for seam in facts.pattern.seams]
    assert cells(found, "thread") == [f"{mm(seam.thread / 1000)} m" for seam in facts.pattern.seams]
    total = sum(seam.thread for seam in facts.pattern.seams)
    assert found.totals[0][-1] == f"{mm(total / 1000)} m"


def test_a_seam_sewn_with_another_takes_no_thread_of_its_own() -> None:
    pattern = _ready("tapered-key-strap")
    assert any(seam.meets for seam in pattern.seams)
    found = table(making_sheet(plain_facts(pattern)), "thread")
    told = [cell for cell in cells(found, "thread") if not cell.startswith("with ")]
    assert len(told) < len(pattern.seams)
    assert found.totals[0][-1] == f"{mm(sum(s.thread for s in pattern.seams if not s.meets) / 1000)} m"


def test_each_stitching_has_its_tools_once_and_the_thread_of_its_own_seams() -> None:
    pattern = drafted(with_holes(two_fold(), SLITS))
    first, *others = pattern.seams
    seams = (replace(first, stitching=replace(first.stitching, thread=0.8)), *others)
    over = replace(others[0].stitching, hole=replace(others[0].stitching.hole, slant=-45.0))
    met = replace(others[0], name="other side", stitching=over, meets=others[0].name)
    document = making_sheet(plain_facts(replace(pattern, seams=(*seams, met))))
    found = table(document, "rule")
    rows = list(zip(cells(found, "tool"), cells(found, "for"), strict=True))
    told = [use.rpartition("; ")[2] for tool, use in rows if tool == "thread"]
    rest = sum(seam.thread for seam in others)
    assert told == [f"{mm(first.thread / 1000)} m in all", f"{mm(rest / 1000)} m in all"]


def test_a_slanted_piece_is_told_its_least_rectangle_unless_its_stretch_forbids_turning() -> None:
    """A lozenge with sides of 56.57 and 28.28 mm whose upright box is 60 x 60: turned by 45 degrees it saves half."""
    pattern = oblong(10.0, 10.0)
    lozenge = polygon([Point(20.0, 0.0), Point(60.0, 40.0), Point(40.0, 60.0), Point(0.0, 20.0)])
    slanted = replace(pattern, pieces=(replace(pattern.pieces[0], outline=lozenge),))
    assert cells(table(making_sheet(plain_facts(slanted)), "net cm2"), "turned, least") == ["28.3 x 56.6 at 45 deg"]
    leathers = tuple(replace(leather, stretch=Stretch.ALONG) for leather in slanted.design.leathers)
    firm = replace(slanted, design=replace(slanted.design, leathers=leathers))
    assert cells(table(making_sheet(plain_facts(firm)), "net cm2"), "turned, least") == ["do not turn: stretch"]
    assert cells(table(making_sheet(plain_facts(pattern)), "net cm2"), "turned, least") == ["-"]


def test_pieces_that_are_the_same_cut_are_told() -> None:
    assert "The same cut: left cards 3, left cards 2. One template or die serves them all." in _said(
        making_sheet(two_fold_facts())
    )


def test_skives_tell_where_how_wide_and_what_is_left() -> None:
    pattern = _ready("turned-edge-two-fold")
    found = table(making_sheet(plain_facts(pattern)), "leave, mm")
    rows = list(zip(*(cells(found, h) for h in ("piece", "where, as drawn", "width, mm", "leave, mm")), strict=True))
    assert ("shell", "all round", "11.00", "0.40") in rows
    turned = table(making_sheet(plain_facts(pattern)), "allowance, mm")
    assert sorted(cells(turned, "where, as drawn")) == ["bottom", "left", "right", "top"]
    assert cells(turned, "stitch holes") == ["pierce once turned in"] * 4


def test_hardware_tells_every_half_with_its_hole_and_piece() -> None:
    found = table(making_sheet(plain_facts(_ready("coin-pouch"))), "half")
    assert cells(found, "half") == ["cap and socket", "stud and post"]
    assert cells(found, "on piece") == ["back", "front"]
    assert cells(found, "how") == ["punch 4.50 mm", "punch 3.50 mm"]
    assert cells(found, "sets") == ["1", ""]


def test_hidden_magnets_are_glued_in_and_not_punched() -> None:
    pattern = _ready("magnet-flap-card-case")
    found = table(making_sheet(plain_facts(pattern)), "half")
    assert len(cells(found, "how")) == sum(len(piece.fittings) for piece in pattern.pieces)
    assert all("glue in behind it" in how for how in cells(found, "how"))
    assert "hardware" not in cells(table(making_sheet(plain_facts(pattern)), "rule"), "for")


def test_initials_are_told_as_they_are_spelt() -> None:
    design = load_design(
        (DESIGNS / "monogram-card-sleeve.yaml").read_text(encoding="utf-8"),
        "monogram-card-sleeve.yaml",
        {},
        {"monogram": "ZQ"},
    )
    found = table(making_sheet(plain_facts(drafted(design))), "initials")
    assert cells(found, "text") == ["ZQ"]


def test_what_it_holds_is_counted_over_all_pockets() -> None:
    found = table(making_sheet(two_fold_facts()), "how many")
    rows = dict(zip(cells(found, "size of one"), cells(found, "how many"), strict=True))
    assert rows["85.60 x 53.98 mm"] == "6"
    assert rows["140.00 x 77.00 mm"] == "5"


def test_what_reads_look_or_no_is_told_in_words_and_signs_and_what_is_good_is_not() -> None:
    found = (
        Finding("hole to edge", "rim", 2.0, at_least(1.5, 1.0)),
        Finding("edge mismatch", "fold 1", 0.63, within(0.5, 1.5), "draft again"),
        Finding("clear width", "left cards", 80.0, at_least(85.6, 84.1), "make it wider"),
    )
    document = making_sheet(replace(two_fold_facts(), findings=found))
    rows = table(document, "verdict").rows
    assert [row[0] for row in rows] == ["× NO", "! LOOK"]
    assert rows[0][1:] == ("clear width", "left cards", "80.00 mm", "at least 85.60 mm", "make it wider")
    loud = [block.words for block in document.blocks() if isinstance(block, Paragraph) and block.tone is Tone.LOUD]
    assert any("DOES NOT FIT" in words for words in loud)


def test_a_wallet_that_fits_says_so_and_has_no_list_of_findings() -> None:
    facts = two_fold_facts()
    document = making_sheet(facts)
    assert f"It fits: all {len(facts.findings)} measures are good." in _said(document)
    assert "Look at this before you cut" not in _titles(document)


def test_leathers_tell_the_range_that_fits() -> None:
    end = Finding("edge mismatch", "fold 1", 1.51, within(0.5, 1.5))
    windows = (ThicknessWindow("outer", 1.2, (0.9, 1.5), (0.2, 2.1), (end, end), (None, end)),)
    found = table(making_sheet(two_fold_facts(windows=windows)), "fits from - to")
    assert cells(found, "fits from - to") == ["0.90 - 1.50 mm", "not looked for"]
    assert cells(found, "can be made") == ["to 2.10 mm", "not looked for"]
    assert cells(found, "drafted for") == ["1.20 mm, 3.0 oz", "0.80 mm, 2.0 oz"]
    assert range_told((0.2, 6.0), (None, None)) == "any"


def test_poisonous_fumes_are_spoken_of_unless_all_leather_is_vegetable_tanned() -> None:
    def cautions(tannage: Tannage) -> str:
        facts = two_fold_facts()
        leathers = tuple(replace(leather, tannage=tannage) for leather in facts.pattern.design.leathers)
        pattern = replace(facts.pattern, design=replace(facts.pattern.design, leathers=leathers))
        document = making_sheet(replace(facts, pattern=pattern))
        return " ".join(item for block in document.blocks() if isinstance(block, Listing) for item in block.items)

    assert "PVC" in cautions(Tannage.CHROME)
    assert "PVC" not in cautions(Tannage.VEGETABLE)
    assert "cut away from your hand" in cautions(Tannage.VEGETABLE)


def test_tools_follow_the_stitching_and_every_rule_names_its_source() -> None:
    document = making_sheet(two_fold_facts())
    found = table(document, "rule")
    sizes = dict(zip(cells(found, "tool"), cells(found, "size"), strict=True))
    assert sizes["pricking iron"] == "pitch 3.38 mm"
    assert sizes["thread"] == "0.55 mm, usual for this pitch 0.55 to 0.65 mm"
    assert sizes["two blunt needles"] == "number 4"
    notes = next(words for words in _said(document).splitlines() if words.startswith("(a)"))
    assert set(cells(found, "rule")) == {f"({letter})" for letter in "abcd" if f"({letter})" in notes}
    assert "(c) common practice, no source" in notes


@pytest.mark.parametrize(
    ("pitch", "band"),
    [
        (2.7, (0.35, 0.45)),
        (3.0, (0.45, 0.55)),
        (3.38, (0.55, 0.65)),
        (3.85, (0.55, 0.65)),
        (4.0, (0.6, 0.8)),
        (5.0, (0.8, 1.0)),
    ],
)
def test_thread_by_pitch_is_as_printed(pitch: float, band: tuple[float, float]) -> None:
    """A stitches-per-inch table and the article "Which Pricking Irons..... And Why?"."""
    assert usual_thread(pitch) == band


def test_thicker_thread_never_takes_a_finer_needle() -> None:
    """Numbers of needles fall as they grow thicker: common practice, no source."""
    numbers = [number for t in range(30, 140, 5) if (number := needle_number(t / 100)) is not None]
    assert numbers == sorted(numbers, reverse=True)
    assert needle_number(1.4) is None


def test_a_wallet_folded_from_one_piece_has_no_seams_and_no_needles() -> None:
    pattern = _ready("one-piece-card-wallet")
    document = making_sheet(plain_facts(pattern))
    assert "Holes and thread" not in _titles(document)
    assert cells(table(document, "net cm2"), "piece") == ["blank"]
    assert not any("needle" in tool for tool in cells(table(document, "rule"), "tool"))
    assert cells(table(document, "how many"), "how many") == ["6"]
    assert any(isinstance(block, Picture) for block in document.blocks())


def test_the_imprint_names_revision_and_file_without_folders() -> None:
    facts = two_fold_facts()
    design = replace(facts.pattern.design, file="some/where/two-fold.yaml", revision="C")
    document = making_sheet(replace(facts, pattern=replace(facts.pattern, design=design)))
    assert document.imprint == "two-fold.yaml, revision C: Two-fold wallet"
    assert "some" not in document.subtitle


def test_sections_with_nothing_in_them_are_left_out() -> None:
    facts: MakingFacts = two_fold_facts()
    titles = _titles(making_sheet(facts))
    assert "Costs of one wallet" not in titles
    assert "Hardware" not in titles
    assert "Initials" not in titles
    assert "Skiving and turning in" not in titles
    assert titles[0] == "The wallet"
    assert titles[-1] == "Finished"


def test_thread_in_all_leaves_out_what_is_sewn_with_another_seam_whatever_it_says() -> None:
    pattern = oblong(10.0, 10.0, thread=500.0)
    both = replace(
        pattern, seams=(pattern.seams[0], replace(pattern.seams[0], name="far", meets="rim", thread=700.0))
    )
    assert thread_of(both.seams) == 500.0
