"""How skived and turned edges are drawn, described and told on labels."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from patternforge.drafting.alike import alike
from patternforge.drafting.description import description
from patternforge.drafting.finishing import finishing_marks
from patternforge.drafting.pieces import figures
from patternforge.drafting.purpose import DieHoles, DieOptions, DraftingOptions, Purpose
from patternforge.drafting.schema import pattern_schema
from patternforge.drafting.wording import facts
from patternforge.drawing.model import Dot, Figure, Role, Stroke
from patternforge.wallet.assemble import drafted
from patternforge.wallet.finishing import EdgeSkive, FoldSkive, PatchSkive, TurnedHoles, TurnedSpec
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import Edge, FoldSpec, LayerPart, Spot
from tests.unit.wallet.built import bank, shell, wallet

ALL = (Edge.LEFT, Edge.BOTTOM, Edge.RIGHT, Edge.TOP)


def lined(holes: TurnedHoles = TurnedHoles.PIERCED, **changes: Any) -> Pattern:
    spec = replace(TurnedSpec(ALL, 8.0, ("lining",), holes=holes), **changes)
    skives = (EdgeSkive(ALL, 12.0, 0.4), FoldSkive(0, 6.0, 0.7), PatchSkive(Spot(0), 10.0, 6.0, 0.5))
    parts = (shell(2, turned=(spec,), skives=skives), LayerPart("lining", "inner", 0, 0, follows="shell", inside=1.0))
    return drafted(wallet(*parts, bank(), widths=(100.0, 100.0), folds=(FoldSpec(relief=5.0),)))


def figure(pattern: Pattern, purpose: Purpose, options: DraftingOptions | None = None) -> Figure:
    return next(each for each in figures(pattern, purpose, options) if each.name == "shell")


def strokes(drawn: Figure, role: Role) -> list[Stroke]:
    return [ink for ink in drawn.inks if isinstance(ink, Stroke) and ink.role is role]


def dots(drawn: Figure, role: Role) -> list[Dot]:
    return [ink for ink in drawn.inks if isinstance(ink, Dot) and ink.role is role]


def test_paper_shows_the_finished_edge_and_where_paring_begins_as_marks() -> None:
    pattern = lined()
    marks = strokes(figure(pattern, Purpose.PAPER), Role.MARK)
    piece = pattern.piece("shell")
    assert [mark.path for mark in marks] == [mark.path for mark in finishing_marks(piece)]
    assert marks[0].path.length == pytest.approx(piece.made.length)
    assert [mark.name for mark in finishing_marks(piece)] == [
        "finished edge",
        *["skive to 0.40 mm"] * 4,
        *["skive to 0.70 mm"] * 2,
        *["skive to 0.50 mm"] * 4,
    ]


def test_cutting_files_hold_neither_marks_nor_holes_to_be_pierced_later() -> None:
    pattern = lined()
    laser = figure(pattern, Purpose.LASER)
    die = figure(pattern, Purpose.DIE, DraftingOptions(die=DieOptions(DieHoles.PUNCHED)))
    for drawn in (laser, die):
        assert [ink.role for ink in drawn.inks] == [Role.OUTLINE]
        assert strokes(drawn, Role.OUTLINE)[0].path == pattern.piece("shell").outline


def test_marked_holes_are_pricked_and_cut_ones_have_their_mates() -> None:
    marked, cut = lined(TurnedHoles.MARKED), lined(TurnedHoles.CUT)
    holes = len(marked.piece("shell").holes)
    assert len(dots(figure(marked, Purpose.LASER), Role.MARK)) == holes
    mates = len(cut.piece("shell").turned_holes)
    assert len(dots(figure(cut, Purpose.LASER), Role.HOLE)) == holes + mates
    assert mates > holes / 2


def test_labels_tell_what_to_skive_and_to_turn_in_where_it_lies_on_the_piece() -> None:
    pattern = lined()
    told = facts(pattern, pattern.piece("shell"))
    assert "skive 12.00 mm all round to 0.40 mm" in told
    assert "skive fold 1 and 6.00 mm on either side to 0.70 mm" in told
    assert "skive 10.00 x 6.00 mm where marked to 0.50 mm" in told
    assert "turn in all round at the marked line, 9.08 mm from the cut edge" in told
    assert "pierce stitch holes there once turned in" in told
    assert not any("skive" in fact or "turn in" in fact for fact in facts(pattern, pattern.piece("lining")))


def test_edges_are_told_as_they_lie_on_a_piece_that_shows_its_outside() -> None:
    edges = (Edge.LEFT, Edge.BOTTOM)
    part = shell(1, turned=(TurnedSpec(edges),), skives=(EdgeSkive(edges, 12.0, 0.4),))
    pattern = drafted(wallet(part, bank()))
    told = facts(pattern, pattern.piece("shell"))
    assert "skive 12.00 mm along right, bottom to 0.40 mm" in told
    assert any(fact.startswith("turn in along bottom, right at the marked line") for fact in told)


def test_a_label_speaks_of_no_piercing_where_holes_are_cut() -> None:
    pattern = lined(TurnedHoles.CUT)
    assert not any("pierce" in fact for fact in facts(pattern, pattern.piece("shell")))


@pytest.mark.parametrize("holes", list(TurnedHoles))
def test_the_description_is_valid_and_says_how_edges_are_turned(holes: TurnedHoles) -> None:
    pattern = lined(holes, corner_gap=0.7)
    told = description(pattern)
    Draft202012Validator(pattern_schema()).validate(told)
    piece = next(each for each in told["pieces"] if each["name"] == "shell")
    assert len(piece["turned"]["edges"]) == 4
    edge = piece["turned"]["edges"][0]
    assert edge["allowance"] == pytest.approx(9.084956, abs=1e-6)
    assert (edge["over"], edge["thickness"], edge["overlap"]) == (["lining"], 0.4, 8.0)
    assert [corner["gap"] for corner in piece["turned"]["corners"]] == [0.7] * 4
    assert {hole["shape"] for hole in piece["holes"]} == {
        {TurnedHoles.PIERCED: "none", TurnedHoles.MARKED: "mark", TurnedHoles.CUT: "round"}[holes]
    }
    assert bool(piece["turned_holes"]) is (holes is TurnedHoles.CUT)
    assert len(piece["skives"]) == 6
    assert {"finished edge", "skive to 0.70 mm"} <= {mark["name"] for mark in piece["marks"]}


def test_the_inputs_say_what_was_asked() -> None:
    asked = description(lined())["inputs"]["parts"][0]
    assert asked["turned"][0]["over"] == ["lining"]
    assert asked["skives"] == [
        {"along": ["left", "bottom", "right", "top"], "width": 12.0, "to": 0.4},
        {"fold": 1, "width": 6.0, "to": 0.7},
        {"at": {"panel": "P0", "from": {}, "fold": None}, "width": 10.0, "height": 6.0, "to": 0.5},
    ]
    assert asked["follows"] is None
    lining = description(lined())["inputs"]["parts"][1]
    assert (lining["follows"], lining["inside"], lining["inset"]["left"]) == ("shell", 1.0, 1.0)


def test_a_description_without_the_overlap_or_with_another_word_for_holes_is_refused() -> None:
    for spoil in ({"overlap": None}, {"holes": "punched"}):
        told = description(lined())
        told["pieces"][0]["turned"]["edges"][0].update(spoil)
        assert not Draft202012Validator(pattern_schema()).is_valid(told)


def test_pieces_that_differ_in_what_is_cut_beforehand_are_not_alike() -> None:
    pattern = lined(TurnedHoles.CUT)
    piece = pattern.piece("shell")
    twin = replace(piece, name="twin")
    assert alike(replace(pattern, pieces=(piece, twin))) == (("shell", "twin"),)
    other = replace(twin, turned_holes=twin.turned_holes[1:])
    assert alike(replace(pattern, pieces=(piece, other))) == ()
