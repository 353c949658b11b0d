"""Pieces laid on the assembly again."""

from __future__ import annotations

from dataclasses import replace

import pytest

from patternforge.fit.layout import Layout, across, along, layout
from patternforge.geometry.point import Point
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import Edge, FoldSpec, Held, LayerPart, Load, Side
from tests.unit.fit.found import small
from tests.unit.wallet.built import leather, pocket, shell

FOLDS = (FoldSpec(relief=5.0),)


def laid(pattern: Pattern) -> Layout:
    return layout(pattern, {each.role: each for each in pattern.design.leathers})


@pytest.mark.parametrize(
    ("opening", "towards", "beside"),
    [(Edge.TOP, 7, 3), (Edge.BOTTOM, -7, -3), (Edge.LEFT, -3, 7), (Edge.RIGHT, 3, -7)],
)
def test_places_are_told_as_seen_from_the_mouth(opening: Edge, towards: float, beside: float) -> None:
    at = Point(3.0, 7.0)
    assert (along(opening, at), across(opening, at)) == (towards, beside)


def test_plies_stand_from_the_outside_in_with_items_on_the_hidden_side_of_their_wall() -> None:
    divider = LayerPart("divider", "inner", 0, 0, holds=(Held("note", 4),))
    outer = pocket(name="outer", facing=Side.OUTSIDE)
    plies = laid(small(outer, shell(1), divider, pocket())).plies
    assert [(ply.name, round(ply.thickness, 6)) for ply in plies] == [
        ("outer", 0.8),
        ("card", 1.0),
        ("shell", 1.2),
        ("note", 0.4),
        ("divider", 0.8),
        ("card", 1.0),
        ("pocket", 0.8),
    ]


def test_what_is_not_in_the_wallet_is_no_ply() -> None:
    pattern = small(shell(1), pocket(count=4))
    empty = replace(pattern, design=replace(pattern.design, load=Load(0.0, 1.0)))
    assert [ply.name for ply in laid(empty).plies] == ["shell", "pocket"]
    half = replace(pattern, design=replace(pattern.design, load=Load(0.5, 0.0)))
    assert [ply.thickness for ply in laid(half).plies] == pytest.approx([1.2, 2.0, 0.8])


def test_a_ply_is_as_thick_as_the_leather_it_is_judged_for() -> None:
    pattern = small(shell(1), pocket())
    found = layout(pattern, {"outer": leather("outer", 2.5), "inner": leather("inner", 0.4)})
    assert [ply.thickness for ply in found.plies] == [2.5, 1.0, 0.4]
    assert found.thickness(pattern.piece("shell")) == 2.5


def test_pieces_lie_on_the_assembly_whichever_way_they_show() -> None:
    pattern = small(shell(2), pocket(panel=1), widths=(100.0, 100.0), folds=FOLDS)
    by_name = {ply.name: ply for ply in laid(pattern).plies}
    start = pattern.panels[1].x0
    bounds = by_name["pocket"].bounds
    assert (bounds.x0, bounds.x1, bounds.y1) == pytest.approx((start + 5, start + 100, 44.0))
    assert by_name["shell"].bounds.width == pytest.approx(pattern.width)


def test_holes_of_a_mirrored_and_stretched_piece_come_back_to_their_seam() -> None:
    pattern = small(shell(2), pocket(), widths=(100.0, 100.0), folds=FOLDS)
    seam = {hole.index: hole.at for hole in pattern.seams[0].holes}
    for hole in laid(pattern).holes["shell"]:
        if hole.seam == "rim":
            assert hole.at.distance_to(seam[hole.index]) < 1e-9


def test_a_ply_knows_where_a_level_line_enters_and_leaves_it() -> None:
    by_name = {ply.name: ply for ply in laid(small(shell(1), pocket())).plies}
    assert by_name["pocket"].edges_at(20.0) == pytest.approx([0.0, 100.0])
    assert by_name["card"].edges_at(50.0) == pytest.approx([10.0, 90.0])
    assert by_name["pocket"].edges_at(44.1) == []


def test_loose_notes_reach_over_every_panel_of_their_layer() -> None:
    divider = LayerPart("divider", "inner", 0, 1, holds=(Held("note", 4),))
    pattern = small(shell(2), divider, widths=(200.0, 200.0), folds=FOLDS)
    (note,) = (ply for ply in laid(pattern).plies if ply.name == "note")
    assert (note.bounds.x0, note.bounds.x1) == pytest.approx((0.0, pattern.width))
    assert note.panels == (0, 1)
