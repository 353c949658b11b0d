"""A good design as it is resolved, settings given beside it, and bytes that are no text."""

from __future__ import annotations

import dataclasses
import re
import subprocess
import sys

import pytest

from patternforge.design import decoded, load_design
from patternforge.errors import DesignError
from patternforge.leather.contents import Section
from patternforge.leather.material import MadeOf, Stretch, SurfaceFace, Tannage, Thickness
from patternforge.wallet.spec import (
    Across,
    BankPart,
    BankShape,
    BodySpec,
    CornerStyle,
    Design,
    Edge,
    EdgeShape,
    Fastening,
    Film,
    Fitting,
    FoldSpec,
    Held,
    HoleShape,
    HoleSpec,
    LayerPart,
    Limits,
    Load,
    Lying,
    Mode,
    MouthShape,
    MouthSpec,
    Opening,
    PanelSpec,
    Parameter,
    PocketPart,
    SeamSpec,
    Side,
    Spot,
    Stitching,
    ThumbNotch,
)
from tests.unit.design.good_design import GOOD, line_of

_SLIT = HoleSpec(HoleShape.SLIT, length=2.0, width=0.3, slant=45.0)


def _good(**settings: str) -> Design:
    return load_design(GOOD, "folder/wallet.yaml", {key.replace("__", "."): text for key, text in settings.items()})


def _with(old: str, new: str) -> Design:
    assert GOOD.count(old) == 1
    return load_design(GOOD.replace(old, new), "wallet.yaml")


def test_the_file_gives_the_design_its_name() -> None:
    design = _good()
    assert (design.name, design.file, design.title, design.revision) == (
        "wallet",
        "wallet.yaml",
        "Three-fold wallet",
        "A",
    )
    assert design.notes == "Free text, on as many lines as it takes."


def test_parameters_carry_value_unit_and_range() -> None:
    margin, slots, reach = _good().parameters
    assert margin == Parameter("margin", 3.5, "mm", 2.5, 6.0, "stitch line to edge")
    assert slots == Parameter("slots", 3.0, "", 1.0, 6.0, "card pockets")
    assert (reach.unit, reach.low, reach.high) == ("mm", None, 70.0)
    assert reach.value == 2 * 3.5 + 53.98


def test_leathers_carry_what_is_measured() -> None:
    outer, inner, _ = _good().leathers
    assert outer.thickness == Thickness(1.2, 1.2)
    assert (outer.role, outer.tolerance, outer.neutral, outer.min_radius) == ("outer", 0.1, 0.5, 0.5)
    assert (outer.tannage, outer.face, outer.stretch) == (Tannage.VEGETABLE, SurfaceFace.GRAIN, Stretch.ACROSS)
    assert (outer.name, outer.price, outer.price_area) == ("Shoulder", 14.5, "ft2")
    assert inner.thickness == Thickness(0.79375, 1.190625)
    assert (inner.role, inner.price) == ("inner", None)


def test_contents_are_of_the_catalogue_changed_or_own() -> None:
    card, note, comb = (content.item for content in _good().contents)
    # ISO/IEC 7810: ID-1 is 85.60 x 53.98 x 0.76 mm.
    assert (card.length, card.height, card.thickness) == (85.6, 53.98, 0.76)
    # European Central Bank: the 50 euro note is 140 x 77 mm; its thickness is said in the design.
    assert (note.length, note.height, note.thickness) == (140.0, 77.0, 0.12)
    assert note.source.endswith("but thickness from the design")
    assert (comb.length, comb.height, comb.thickness, comb.corner_radius) == (120.0, 28.0, 4.0, 2.0)


def test_the_body_is_resolved_to_mm() -> None:
    assert _good().body == BodySpec(
        panels=(PanelSpec("left"), PanelSpec("middle", 105.0), PanelSpec("right", 85.6 + 15)),
        folds=(FoldSpec(180.0, 1.0, 4.0), FoldSpec(180.0, 1.0, 1.2 * 3)),
        closing=(2, 1),
        corner=6.0,
        headroom=3.175,
        corners=(
            ((Edge.BOTTOM, Edge.LEFT), 12.0),
            ((Edge.BOTTOM, Edge.RIGHT), 11.0),
            ((Edge.TOP, Edge.LEFT), 7.0),
            ((Edge.TOP, Edge.RIGHT), 3.5),
        ),
        shapes=((Edge.BOTTOM, EdgeShape(-1.0)),),
    )


def test_an_item_may_be_round() -> None:
    comb = _with(
        "height: 28 mm, thickness: 4 mm, corner_radius: 2 mm, section: flat",
        "height: 9, thickness: 9, section: round",
    )
    assert [content.item.section for content in comb.contents] == [Section.FLAT, Section.FLAT, Section.ROUND]


def test_a_layer_may_hold_none_of_a_content() -> None:
    divider = _with("{note: 10}", "{note: 0}").parts[1]
    assert isinstance(divider, LayerPart)
    assert divider.holds == (Held("note", 0),)


def test_parts_keep_their_order_and_the_line_they_begin_on() -> None:
    lines = GOOD.splitlines()
    starts = [
        number for number, line in enumerate(lines, 1) if line.startswith(("  - layer", "  - bank", "  - pocket"))
    ]
    shell, divider, cards, sleeve, strap = _good().parts
    assert [part.line for part in (shell, divider, cards, sleeve, strap)] == starts
    assert shell == LayerPart("shell", "outer", 0, 2, showing=Side.OUTSIDE, line=starts[0])
    assert divider == LayerPart(
        "divider",
        "inner",
        0,
        1,
        8.0,
        Edge.TOP,
        (Held("note", 10),),
        None,
        2.0,
        ((Edge.TOP, 1.0),),
        ("drop",),
        line=starts[1],
    )
    assert cards == BankPart(
        name="left cards",
        leather="inner",
        panel=0,
        content="card",
        slots=3,
        step=12.0,
        show=13.0,
        shape=BankShape.TEE,
        lying=Lying.LYING,
        mouth=MouthSpec(MouthShape.DIPPED, 3.0),
        thumb=ThumbNotch(18.0, 9.0),
        exact=("step", "show"),
        sewn_to=("shell",),
        line=starts[2],
    )
    hole = Opening("push hole", Spot(2, (Edge.LEFT, 20.0), (Edge.BOTTOM, 15.0)), 15.0, 15.0, 7.5, 4.0)
    assert sleeve == PocketPart("sleeve", "inner", 2, "comb", 2 * 3.5 + 53.98, openings=(hole,), line=starts[3])


def test_a_strap_keeps_its_edges_inside_and_has_openings() -> None:
    strap = _good().parts[4]
    assert isinstance(strap, LayerPart)
    assert (strap.first, strap.last, strap.corner, strap.lying) == (1, 2, 10.0, Lying.UPRIGHT)
    assert strap.shapes == ((Edge.LEFT, EdgeShape(2.0, 1.5)),)
    assert dict(strap.inset) == {Edge.LEFT: 40.0, Edge.BOTTOM: 30.0, Edge.TOP: 25.0}
    window, slot = strap.openings
    assert window == Opening(
        "ID window",
        Spot(2, (Edge.RIGHT, 40.0), (Edge.TOP, 45.0)),
        50.0,
        20.0,
        4.0,
        5.0,
        Film("film", 7.0, 2.5),
    )
    assert slot == Opening("bar slot", Spot(1), 18.0, 3.2, 1.6, 5.0)


def test_a_layer_is_sewn_unless_it_is_said_to_be_glued() -> None:
    text = GOOD.replace("fastened: sewn", "fastened: glued").replace("    of: strap\n", "")
    shell, _, _, _, strap = load_design(text, "wallet.yaml").parts
    assert isinstance(shell, LayerPart)
    assert isinstance(strap, LayerPart)
    assert (shell.fastened, strap.fastened) == (Fastening.SEWN, Fastening.GLUED)


def test_an_opening_of_a_part_on_one_panel_need_not_name_it() -> None:
    (hole,) = _with("        at: {left: 20 mm, bottom: 15 mm}\n", "").parts[3].openings
    assert hole.spot == Spot(2)


def test_a_film_reaches_and_is_sewn_as_usual_unless_told() -> None:
    window, _ = _with("{leather: film, overlap: 7 mm, margin: 2.5 mm}", "{leather: film}").parts[4].openings
    assert window.film == Film("film", 6.0, 3.0)


def test_a_fitting_has_the_holes_and_cap_it_is_given_or_those_of_the_catalogue() -> None:
    (closure,) = _good().fittings
    assert closure == Fitting(
        "closure",
        "snap-line-20",
        "strap",
        Spot(1, (Edge.LEFT, 60.0)),
        (5.0, 4.0),
        6.5,
        "shell",
        0,
        line_of("- fitting: closure"),
    )
    (usual,) = _with("    holes: [5 mm, 4 mm]\n    cap: 13 mm\n", "").fittings
    # 20 lignes of 1/40 in; the holes are common practice, no source.
    assert usual.holes == (4.5, 3.5)
    assert usual.reach == pytest.approx(6.35)


def test_a_fitting_that_meets_nothing_has_one_half() -> None:
    text = GOOD.replace("    meets: {part: shell, panel: left}\n    holes: [5 mm, 4 mm]\n    cap: 13 mm\n", "")
    (eyelet,) = load_design(text.replace("snap-line-20", "eyelet-4"), "wallet.yaml").fittings
    assert (eyelet.holes, eyelet.reach, eyelet.meets) == ((5.0, 0.0), 4.0, "")


def test_a_seam_may_follow_a_layer_over_some_panels() -> None:
    rim, strap = _good().seams
    assert (rim.over, rim.of) == (None, "")
    assert (strap.over, strap.of) == ((2, 2), "strap")
    assert _with("    over: right\n", "    over: [middle, right]\n").seams[1].over == (1, 2)


@pytest.mark.parametrize("material", ["leather", "film", "cloth", "elastic", "stiffener"])
def test_a_sheet_is_made_of_what_is_said(material: str) -> None:
    film = _with("made_of: film", f"made_of: {material}").leathers[2]
    assert film.made_of == MadeOf(material)
    assert _good().leathers[0].made_of is MadeOf.LEATHER


def test_a_seam_takes_its_stitching_from_the_design_key_by_key() -> None:
    design = _good()
    assert design.stitching == Stitching(27.07 / 8, Mode.EVEN, _SLIT, 150.0, 0.55)
    seam = design.seams[0]
    assert seam.stitching == Stitching(3.0, Mode.IRON, _SLIT, 150.0, 0.55)
    assert dataclasses.replace(seam, stitching=Stitching(), line=0) == SeamSpec(
        "rim",
        (Edge.LEFT, Edge.BOTTOM, Edge.RIGHT),
        3.5,
        3.0,
        CornerStyle.ROUNDED,
        Across.OPEN,
        5.0,
        0.0,
        ("shell", "divider"),
    )


def test_a_seam_without_a_mode_has_that_of_the_design() -> None:
    text = GOOD.replace("mode: even", "mode: iron").replace("{pitch: 3 mm, mode: iron}", "{tails: 90 mm}")
    seam, _ = load_design(text, "wallet.yaml").seams
    assert seam.stitching == Stitching(27.07 / 8, Mode.IRON, _SLIT, 90.0, 0.55)


def test_load_and_limits_are_as_said() -> None:
    design = _good()
    assert design.load == Load(0.5, 0.0)
    assert design.limits == Limits(0.6, 1.5, 1.0, 6.0, 30.0, 0.05, 0.15, 8.0)


@pytest.mark.parametrize(
    ("word", "load"), [("full", Load(1.0, 1.0)), ("empty", Load(0.0, 0.0, 0.0)), ("{cards: 1/4}", Load(0.25))]
)
def test_a_load_is_a_word_or_shares(word: str, load: Load) -> None:
    assert _with("{cards: 0.5, notes: 0}", word).load == load


def test_folds_close_from_left_to_right_unless_told() -> None:
    assert _with("  closing: [2, 1]\n", "").body.closing == (1, 2)


def test_a_layer_may_name_one_panel() -> None:
    divider = _with("over: [left, middle]", "over: middle").parts[1]
    assert isinstance(divider, LayerPart)
    assert (divider.first, divider.last) == (1, 1)


def test_a_value_in_quotes_is_worth_the_same() -> None:
    assert _with("step: 12 mm", "step: '12 mm'") == _good_as("wallet.yaml")
    assert _with("thickness: 1.2 mm", 'thickness: "1,2 mm"') == _good_as("wallet.yaml")


def _good_as(file: str) -> Design:
    return load_design(GOOD, file)


@pytest.mark.parametrize("ends", ["\r\n", "\r"])
def test_line_ends_of_other_systems_change_nothing(ends: str) -> None:
    assert load_design(GOOD.replace("\n", ends), "wallet.yaml") == _good_as("wallet.yaml")


@pytest.mark.parametrize(
    ("text", "value"), [("4", 4.0), ("4 mm", 4.0), ("1/8 in", 3.175), ("outer.thickness * 3", 3.6)]
)
def test_a_setting_replaces_a_parameter_in_its_own_unit(text: str, value: float) -> None:
    design = _good(margin=text)
    assert design.parameters[0].value == pytest.approx(value)
    assert design.seams[0].margin == pytest.approx(value)


def test_a_setting_replaces_the_thickness_or_neutral_of_a_leather() -> None:
    outer, inner = _good(outer="1.4-1.6 mm", inner__neutral="0.4", inner__thickness="3 oz").leathers[:2]
    assert outer.thickness == Thickness(1.4, 1.6)
    assert (inner.neutral, inner.thickness.low) == (0.4, 1.190625)


@pytest.mark.parametrize(
    ("name", "text", "wording"),
    [
        ("margn", "4", "there is nothing called 'margn' to set; did you mean 'margin'?"),
        ("outer.tolerance", "4", "there is nothing called 'outer.tolerance'"),
        ("margin.value", "4", "there is nothing called 'margin.value'"),
        ("margin", "9 mm", "parameter 'margin' is 9 mm; it must be at most 6 mm"),
        ("margin", "9", "parameter 'margin' is 9 mm; it must be at most 6 mm"),
        ("margin", "1,2", "parameter 'margin': '1,2' may be one number or two"),
        ("slots", "3 mm", "parameter 'slots': this comes to 3 mm where a plain number is wanted"),
        ("outer", "4", "'4' says no unit for leather 'outer'; say '4 mm' or '4 oz'"),
        ("inner.thickness", "0.8", "'0.8' says no unit"),
        ("outer", "thick", "'thickness' of leather 'outer': there is no number called 'thick'"),
        ("inner.neutral", "2", "'neutral' of leather 'inner' is 2; it must be at most 1"),
        ("margin", "", "parameter 'margin': there is no number here"),
    ],
)
def test_a_setting_that_does_not_suit_is_a_fault_beside_the_file(name: str, text: str, wording: str) -> None:
    with pytest.raises(DesignError) as caught:
        load_design(GOOD, "wallet.yaml", {name: text})
    (fault,) = caught.value.faults
    assert (fault.file, fault.line, fault.column) == (f"--set {name}={text}", 0, 0)
    assert str(fault).startswith(f"--set {name}={text}: {wording}")


def test_a_long_setting_is_cut_short_and_stays_on_one_line() -> None:
    with pytest.raises(DesignError) as caught:
        load_design(GOOD, "wallet.yaml", {"margin": "9\nmm" + " + 0" * 40})
    assert str(caught.value).startswith(
        "--set margin=9 mm + 0 + 0 + 0 + 0 + 0 + 0 + 0 + 0 + 0...: parameter 'margin'"
    )


def test_faults_beside_the_file_and_in_it_come_in_one_run() -> None:
    with pytest.raises(DesignError) as caught:
        load_design(GOOD.replace("turned: false", "turned: no"), "wallet.yaml", {"margin": "9", "outer": "0 mm"})
    assert [fault.file for fault in caught.value.faults] == ["--set margin=9", "--set outer=0 mm", "wallet.yaml"]


def test_a_byte_order_mark_is_dropped() -> None:
    assert decoded(b"\xef\xbb\xbf" + GOOD.encode(), "wallet.yaml") == GOOD


@pytest.mark.parametrize(
    ("data", "line", "column", "wording"),
    [
        (b"design: A\nnotes: caf\xe9\n", 2, 11, "byte 0xE9 is not UTF-8"),
        ("é\né".encode() + b"\xff", 2, 2, "byte 0xFF"),
        (b"a\r\nb\r\xff", 3, 1, "byte 0xFF"),
        (b"\xef\xbb\xbfab\xff", 1, 3, "byte 0xFF"),
        ("design: A".encode("utf-16"), 1, 1, "saved as UTF-16"),
    ],
)
def test_bytes_that_are_no_text_are_refused_where_they_stand(
    data: bytes, line: int, column: int, wording: str
) -> None:
    with pytest.raises(DesignError) as caught:
        decoded(data, "wallet.yaml")
    (fault,) = caught.value.faults
    assert (fault.line, fault.column) == (line, column)
    assert wording in str(fault)


def test_reading_a_design_loads_no_heavy_library() -> None:
    heavy = ("shapely", "numpy", "ezdxf", "svgwrite", "pikepdf", "typer", "HersheyFonts")
    code = f"import sys, patternforge.design; print([name for name in {heavy!r} if name in sys.modules])"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


def test_every_character_that_yaml_does_not_print_is_refused() -> None:
    # YAML 1.1, section 5.1, less the tab, NEL and the breaks beyond line feed and carriage return.
    printed = re.compile("[\n\r\x20-\x7e\xa0-\u2027\u202a-\ud7ff\ue000-\ufefe\uff00-\ufffd]")
    strays = [chr(code) for code in range(0x10000) if not printed.match(chr(code))]
    assert len(strays) == 30 + 33 + 2 + 2048 + 1 + 2
    with pytest.raises(DesignError) as refused:
        load_design("\n".join(strays), "a.yaml")
    assert [fault.line for fault in refused.value.faults] == list(range(1, len(strays) + 1))
