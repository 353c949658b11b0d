"""Figures for laser, die and paper: what they hold, in which order, which way round."""

from __future__ import annotations

from dataclasses import replace
from math import cos, radians, sin
from typing import Any

import pytest

from patternforge.drafting.holes import seam_strokes
from patternforge.drafting.pieces import figures
from patternforge.drafting.purpose import (
    CutFace,
    DieHoles,
    DieOptions,
    DraftingOptions,
    FoldTicks,
    LaserOptions,
    Purpose,
)
from patternforge.drawing.extent import extent, moved
from patternforge.drawing.model import Dot, Figure, Role, Stroke, Text
from patternforge.errors import DraftError
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import polyline
from patternforge.geometry.point import Point
from patternforge.geometry.transform import flipped_x
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import BankPart, BankShape, Design, Edge, HoleShape, HoleSpec, SeamSpec
from tests.designs_built import SLITS, STITCHING, sleeve, three_fold, two_fold, with_holes

CUT_ORDER = [Role.MARK, Role.HOLE, Role.OPENING, Role.OUTLINE]
WINDOW = rounded_rectangle(30, 30, 60, 50, 2).cw()


@pytest.fixture(scope="module")
def two() -> Pattern:
    return drafted(two_fold())


@pytest.fixture(scope="module")
def windowed(two: Pattern) -> Pattern:
    """The same with a window cut into the shell."""
    shell, *others = two.pieces
    return replace(two, pieces=(replace(shell, openings=(WINDOW,)), *others))


def laser(**choices: Any) -> DraftingOptions:
    return DraftingOptions(laser=LaserOptions(**choices))


def roles(figure: Figure) -> list[Role]:
    return [ink.role for ink in figure.inks]


def test_every_piece_is_one_figure_in_the_group_of_its_leather(two: Pattern) -> None:
    for purpose in Purpose:
        drawn = figures(two, purpose)
        assert [(f.name, f.group) for f in drawn] == [(p.name, p.leather) for p in two.pieces]


@pytest.mark.parametrize("design", [two_fold(), sleeve(), three_fold(), with_holes(two_fold(), SLITS)])
def test_a_laser_figure_holds_cuts_alone_in_cutting_order_and_the_outline_once_at_the_end(design: Design) -> None:
    for figure in figures(drafted(design), Purpose.LASER):
        order = [CUT_ORDER.index(role) for role in roles(figure)]
        assert order == sorted(order)
        assert roles(figure).count(Role.OUTLINE) == 1
        assert not any(isinstance(ink, Text) for ink in figure.inks)


def test_windows_are_cut_after_the_holes_and_before_the_outline(windowed: Pattern) -> None:
    shell = figures(windowed, Purpose.LASER, laser(fold_ticks=FoldTicks.SCORED))[0]
    assert list(dict.fromkeys(roles(shell))) == CUT_ORDER


def test_round_holes_are_full_circles_of_their_diameter_where_the_pattern_has_them(two: Pattern) -> None:
    for figure, piece in zip(figures(two, Purpose.LASER), two.pieces, strict=True):
        dots = [ink for ink in figure.inks if isinstance(ink, Dot)]
        assert [(dot.centre, dot.diameter, dot.role) for dot in dots] == [(h.at, 1.0, Role.HOLE) for h in piece.holes]


def test_a_slit_is_one_straight_line_of_its_length_along_its_direction() -> None:
    pattern = drafted(with_holes(two_fold(), SLITS))
    for figure, piece in zip(figures(pattern, Purpose.LASER), pattern.pieces, strict=True):
        slits = [ink for ink in figure.inks if ink.role is Role.HOLE]
        for slit, hole in zip(slits, piece.holes, strict=True):
            assert isinstance(slit, Stroke)
            (segment,) = slit.path.segments
            run = segment.end - segment.start
            assert (run.x, run.y) == pytest.approx(
                (2 * cos(radians(hole.direction)), 2 * sin(radians(hole.direction))), abs=1e-9
            )
            middle = (segment.start + segment.end) / 2
            assert middle.distance_to(hole.at) < 1e-9


def test_holes_to_be_pricked_are_marks_and_holes_not_wanted_leave_no_ink() -> None:
    pricked = figures(drafted(with_holes(sleeve(), HoleSpec(HoleShape.MARK))), Purpose.LASER)
    bare = figures(drafted(with_holes(sleeve(), HoleSpec(HoleShape.NONE))), Purpose.LASER)
    assert [set(roles(f)) for f in pricked] == [{Role.MARK, Role.OUTLINE}] * 3
    assert [roles(f) for f in bare] == [[Role.OUTLINE]] * 3


def test_a_die_is_the_net_edge_alone_unless_it_is_to_punch_the_holes(windowed: Pattern) -> None:
    with_kerf = DraftingOptions(LaserOptions(kerf=0.3))
    plain = figures(windowed, Purpose.DIE, with_kerf)
    punched = figures(windowed, Purpose.DIE, DraftingOptions(die=DieOptions(DieHoles.PUNCHED)))
    assert roles(plain[0]) == [Role.OPENING, Role.OUTLINE]
    assert all(roles(figure) == [Role.OUTLINE] for figure in plain[1:])
    for figure, more, piece in zip(plain, punched, windowed.pieces, strict=True):
        edge = figure.inks[-1]
        assert isinstance(edge, Stroke)
        assert edge.path == piece.outline
        assert roles(more).count(Role.HOLE) == len(piece.holes)


def test_kerf_widens_the_outline_and_narrows_holes_and_openings_once(windowed: Pattern) -> None:
    net, cut = (figures(windowed, Purpose.LASER, laser(kerf=kerf)) for kerf in (0.0, 0.2))
    for before, after in zip(net, cut, strict=True):
        small, large = extent(before.inks), extent(after.inks)
        assert (large.width - small.width, large.height - small.height) == pytest.approx((0.2, 0.2))
        dots = [ink.diameter for ink in after.inks if isinstance(ink, Dot)]
        assert dots == pytest.approx([0.8] * len(dots))
    (opening,) = [ink for ink in cut[0].inks if ink.role is Role.OPENING]
    assert extent([opening]).width == pytest.approx(29.8)


def test_a_slit_is_drawn_shorter_by_the_kerf_that_burns_on_past_its_ends() -> None:
    pattern = drafted(with_holes(sleeve(), SLITS))
    for figure in figures(pattern, Purpose.LASER, laser(kerf=0.2)):
        lengths = [ink.path.length for ink in figure.inks if isinstance(ink, Stroke) and ink.role is Role.HOLE]
        assert lengths == pytest.approx([1.8] * len(lengths))
        assert lengths


def test_a_kerf_as_wide_as_the_holes_is_refused(two: Pattern) -> None:
    with pytest.raises(DraftError, match="piece 'shell': a stitch hole of 1 mm vanishes under a kerf of 1 mm"):
        figures(two, Purpose.LASER, laser(kerf=1.0))


def test_no_kerf_draws_the_outlines_of_the_pattern_themselves(two: Pattern) -> None:
    for figure, piece in zip(figures(two, Purpose.LASER), two.pieces, strict=True):
        edge = figure.inks[-1]
        assert isinstance(edge, Stroke)
        assert edge.path is piece.outline


def test_cut_from_the_back_every_figure_is_the_mirror_image_in_the_same_place(windowed: Pattern) -> None:
    front = figures(windowed, Purpose.LASER)
    back = figures(windowed, Purpose.LASER, laser(cut_face=CutFace.BACK))
    for one, other in zip(front, back, strict=True):
        a, b = extent(one.inks), extent(other.inks)
        assert (a.x0, a.y0, a.x1, a.y1) == pytest.approx((b.x0, b.y0, b.x1, b.y1))
        again = moved(other, flipped_x(at=a.centre.x))
        for ink, twice in zip(one.inks, again.inks, strict=True):
            if isinstance(ink, Dot):
                assert isinstance(twice, Dot)
                assert ink.centre.distance_to(twice.centre) < 1e-9
            elif isinstance(ink, Stroke):
                assert isinstance(twice, Stroke)
                assert ink.path.start.distance_to(twice.path.start) < 1e-9
                assert abs(ink.path.length - twice.path.length) < 1e-9


def test_outlines_run_counter_clockwise_and_openings_clockwise_from_front_and_back(windowed: Pattern) -> None:
    for face in CutFace:
        for figure in figures(windowed, Purpose.LASER, laser(cut_face=face)):
            for ink in figure.inks:
                if isinstance(ink, Stroke) and ink.path.closed:
                    assert ink.path.is_ccw is (ink.role is Role.OUTLINE)


def test_a_slit_seen_from_the_back_slants_the_other_way() -> None:
    pattern = drafted(with_holes(sleeve(), SLITS))
    slants = []
    for face in CutFace:
        stroke = next(i for i in figures(pattern, Purpose.LASER, laser(cut_face=face))[0].inks if i.role is Role.HOLE)
        assert isinstance(stroke, Stroke)
        run = stroke.path.end - stroke.path.start
        slants.append(run.y / run.x)
    assert slants[0] == pytest.approx(-slants[1])


def test_fold_ticks_stand_at_both_ends_of_every_fold_line_and_are_scored_only_when_asked(two: Pattern) -> None:
    ticked = figures(two, Purpose.LASER, laser(fold_ticks=FoldTicks.SCORED))
    for figure, piece in zip(ticked, two.pieces, strict=True):
        ticks = [ink for ink in figure.inks if ink.role is Role.MARK]
        assert len(ticks) == 2 * len(piece.fold_lines)
        for tick in ticks:
            assert isinstance(tick, Stroke)
            assert tick.path.length == pytest.approx(2.0)
            assert min(piece.outline.distance_to(p) for p in (tick.path.start, tick.path.end)) < 1e-9
    assert not any(Role.MARK in roles(figure) for figure in figures(two, Purpose.LASER))


def test_a_fold_line_too_short_for_two_ticks_is_scored_whole(two: Pattern) -> None:
    short = polyline([Point(40, 0), Point(40, 3)])
    narrow = replace(two, pieces=(replace(two.pieces[0], fold_lines=(short,)),))
    (figure,) = figures(narrow, Purpose.LASER, laser(fold_ticks=FoldTicks.SCORED))
    assert [ink.path for ink in figure.inks if ink.role is Role.MARK and isinstance(ink, Stroke)] == [short]


def test_paper_shows_folds_and_stitch_lines_and_labels_after_all_that_is_cut(two: Pattern) -> None:
    shell = figures(two, Purpose.PAPER)[0]
    assert list(dict.fromkeys(roles(shell))) == [Role.HOLE, Role.OUTLINE, Role.FOLD, Role.SEAM, Role.LABEL]
    assert roles(shell).count(Role.FOLD) == 2


def test_stitch_lines_pass_through_every_hole_and_stop_where_a_seam_stops(two: Pattern) -> None:
    for piece in two.pieces:
        ends = [(x, y) for stroke in seam_strokes(two, piece) for x, y, _ in stroke.path.vertices]
        assert sorted(ends) == sorted((hole.at.x, hole.at.y) for hole in piece.holes)
    # The rim of the shell is broken at the fold: no line of it crosses the fold zone.
    shell = two.pieces[0]
    tangents = sorted(line.start.x for line in shell.fold_lines)
    for stroke in seam_strokes(two, shell):
        assert stroke.path.bounds.x1 < tangents[0] or stroke.path.bounds.x0 > tangents[1]


def test_a_stitch_line_is_broken_where_the_seam_leaves_the_piece() -> None:
    """The rim runs down one side of the tab of a tee and up the other: the stem between them is not sewn by it."""
    design = sleeve()
    bank = design.parts[1]
    assert isinstance(bank, BankPart)
    pattern = drafted(replace(design, parts=(design.parts[0], replace(bank, shape=BankShape.TEE))))
    tee = pattern.piece("cards 2")
    rim = {(hole.at.x, hole.at.y) for hole in tee.holes if hole.seam == "rim"}
    lines = [s.path for s in seam_strokes(pattern, tee) if {(x, y) for x, y, _ in s.path.vertices} <= rim]
    assert len(lines) == 2
    assert all(line.bounds.width < 1e-6 for line in lines)


def test_a_seam_all_round_is_a_closed_stitch_line() -> None:
    round_about = SeamSpec("rim", (Edge.LEFT, Edge.BOTTOM, Edge.RIGHT, Edge.TOP), margin=3.5, stitching=STITCHING)
    whole, open_above = (drafted(design) for design in (sleeve(seams=(round_about,)), sleeve()))
    assert seam_strokes(whole, whole.pieces[0])[0].path.closed
    assert not any(stroke.path.closed for stroke in seam_strokes(open_above, open_above.pieces[0]))


@pytest.mark.parametrize(
    ("choices", "lawful"),
    [
        ({"kerf": -0.1}, "0 to 2"),
        ({"kerf": 2.5}, "0 to 2"),
        ({"kerf": 0.2, "gap": 2.1}, "2.2 mm"),
        ({"bed": 0.0}, "above 0"),
    ],
)
def test_laser_options_out_of_range_are_refused_with_what_is_lawful(choices: dict[str, float], lawful: str) -> None:
    with pytest.raises(DraftError, match=lawful):
        laser(**choices)
