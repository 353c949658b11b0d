"""The blank: its outline, tabs, slits, openings and fold lines; what is refused."""

from __future__ import annotations

from dataclasses import replace
from math import pi
from typing import Any

import pytest

from patternforge.errors import DraftError
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.geometry.regions import fault_of
from patternforge.wallet.assemble import drafted
from patternforge.wallet.features import EdgeShape, ThumbNotch
from patternforge.wallet.folded.pattern import DraftedFolded
from patternforge.wallet.folded.spec import FaceOpening, FaceSpec, FoldedSpec, TabShape, TabSpec
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import Design, Edge, Side
from tests.folded_built import design_of, envelope, flap, with_folded

BACK = FaceSpec("back", width=90.0, height=60.0)


def one_flap(lid: FaceSpec | None = None, back: FaceSpec = BACK, t: float = 1.0, **changes: Any) -> Design:
    folded = FoldedSpec("main", (back, lid or flap("lid", "back", "top", 40.0)), ("lid",))
    return design_of(replace(folded, **changes), t)


def folded_of(pattern: Pattern) -> DraftedFolded:
    assert pattern.folded is not None
    return pattern.folded


def bare(path: Path) -> tuple[int, int]:
    """How many lines and arcs a path has."""
    arcs = sum(segment.is_arc for segment in path.segments)
    return len(path.segments) - arcs, arcs


def test_a_flap_as_wide_as_its_face_makes_a_plain_rectangle() -> None:
    pattern = drafted(one_flap())
    (piece,) = pattern.pieces
    assert bare(piece.outline) == (4, 0)
    # Leather of 1 mm round nothing: inside radius 0.5, fibre 0.5 further out.
    assert (piece.width, piece.height) == pytest.approx((90.0, 60.0 + pi + 40.0))
    assert [(line.start.y, line.end.y) for line in piece.fold_lines] == [
        pytest.approx((60.0, 60.0)),
        pytest.approx((60.0 + pi, 60.0 + pi)),
    ]


def test_a_short_hinge_is_relieved_at_both_ends() -> None:
    (piece,) = drafted(
        one_flap(flap("lid", "back", "top", 40.0, inset={"left": 10.0, "right": 20.0}), relief=1.5)
    ).pieces
    assert bare(piece.outline) == (8, 2)
    holes = [segment for segment in piece.outline.segments if segment.is_arc]
    # Seen from the outside: 20 mm from the left, 10 mm from the right.
    assert sorted((hole.centre.x, hole.centre.y) for hole in holes) == [
        pytest.approx((20.0, 60.0)),
        pytest.approx((80.0, 60.0)),
    ]
    assert piece.area == pytest.approx(90 * 60 + 60 * (40 + pi) - 2 * 0.75 * pi * 1.5**2)
    assert piece.fold_lines[0].length == pytest.approx(60 - 2 * 1.5)
    assert piece.fold_lines[1].length == pytest.approx(60)


def test_without_relief_corners_stay_sharp_and_fold_lines_whole() -> None:
    (piece,) = drafted(one_flap(flap("lid", "back", "top", 40.0, inset={"left": 10.0}), relief=0.0)).pieces
    assert bare(piece.outline) == (6, 0)
    assert piece.fold_lines[0].length == pytest.approx(80)


def test_two_folds_that_meet_in_a_corner_share_one_hole() -> None:
    both = (flap("left", "back", "left", 20.0), flap("lid", "back", "top", 40.0))
    (piece,) = drafted(design_of(FoldedSpec("main", (BACK, *both), ("left", "lid")))).pieces
    (hole,) = [segment for segment in piece.outline.segments if segment.is_arc]
    # Mirrored: the left flap lies on the right.
    assert (hole.centre.x, hole.centre.y) == pytest.approx((90.0, 60.0))


def test_the_blank_is_drawn_from_the_side_its_face_shows_to() -> None:
    shapes = flap("lid", "back", "top", 40.0, inset={"left": 10.0})
    outside = drafted(one_flap(shapes)).pieces[0]
    inside = drafted(one_flap(shapes, showing=Side.INSIDE)).pieces[0]
    assert outside.placement.onto_piece.is_mirror
    assert not inside.placement.onto_piece.is_mirror
    assert outside.fold_lines[0].bounds.x1 == pytest.approx(80 - 1)
    assert inside.fold_lines[0].bounds.x0 == pytest.approx(10 + 1)
    assert outside.outline.is_ccw
    assert inside.outline.is_ccw


def test_corners_between_free_edges_are_rounded_those_at_folds_are_not() -> None:
    (piece,) = drafted(one_flap(flap("lid", "back", "top", 40.0, corner=6.0), back=replace(BACK, corner=4.0))).pieces
    radii = sorted(round(segment.radius, 6) for segment in piece.outline.segments if segment.is_arc)
    assert radii == [4.0, 4.0, 6.0, 6.0]


def test_a_corner_named_beside_a_short_hinge_is_rounded() -> None:
    back = replace(BACK, corners=(((Edge.TOP, Edge.LEFT), 5.0),))
    (piece,) = drafted(one_flap(flap("lid", "back", "top", 40.0, inset={"left": 12.0}), back)).pieces
    assert 5.0 in {round(segment.radius, 6) for segment in piece.outline.segments if segment.is_arc}


def test_a_corner_named_at_the_end_of_a_hinge_is_refused() -> None:
    back = replace(BACK, corners=(((Edge.TOP, Edge.LEFT), 5.0),))
    with pytest.raises(DraftError, match="the hinge of 'lid' reaches the corner that is to be rounded"):
        drafted(one_flap(back=back))


def test_a_thumb_notch_takes_its_segment_out() -> None:
    notched = flap("lid", "back", "top", 40.0, thumb=ThumbNotch(18.0, 9.0), thumb_edge=Edge.TOP)
    (piece,) = drafted(one_flap(notched)).pieces
    assert piece.area == pytest.approx(90 * (100 + pi) - pi * 81 / 2)


def test_openings_lie_in_their_face_and_after_the_slits() -> None:
    design = envelope()
    assert design.folded is not None
    window = FaceOpening("window", 20.0, 10.0, 2.0, beside=(Edge.LEFT, 30.0), above=(Edge.TOP, 20.0))
    faces = (replace(design.folded.faces[0], openings=(window,)), *design.folded.faces[1:])
    pattern = drafted(with_folded(design, faces=faces))
    (piece,) = pattern.pieces
    slit, cut = piece.openings
    back = piece.placement.onto_piece.inverse().path(cut).bounds
    assert (back.x0, back.y0, back.x1, back.y1) == pytest.approx((20, 35, 40, 45))
    assert not slit.is_ccw
    assert not cut.is_ccw


def test_an_opening_over_the_edge_of_its_face_is_refused() -> None:
    back = replace(BACK, openings=(FaceOpening("window", 20.0, 10.0, beside=(Edge.LEFT, 5.0)),))
    with pytest.raises(DraftError, match="opening 'window' reaches beyond face 'back'"):
        drafted(one_flap(back=back))


def test_a_slit_is_as_long_as_its_tab_is_wide_and_a_thickness_and_one_thickness_wide() -> None:
    pattern = drafted(envelope(t=1.4))
    (slit,) = pattern.pieces[0].openings
    assert (slit.bounds.width, slit.bounds.height) == pytest.approx((20 + 1.4, 1.4))
    assert bare(slit) == (2, 2)


def test_a_slit_lies_under_the_root_of_its_tab() -> None:
    folded = folded_of(drafted(envelope()))
    (tab,) = folded.tabs
    # The lid's far edge comes to lie 35 mm under the top of the back, the front's far edge 40 mm above its foot.
    length = {hinge.face: hinge.length for hinge in folded.hinges}["front"]
    assert [(end.x, end.y) for end in tab.slit] == [
        pytest.approx((45 + 10.5, -length - 25.0)),
        pytest.approx((45 - 10.5, -length - 25.0)),
    ]


@pytest.mark.parametrize(("end", "middle"), [(Edge.RIGHT, 58.5), (Edge.LEFT, 31.5)])
def test_a_tab_stands_where_it_is_told_from_an_end_of_its_edge(end: Edge, middle: float) -> None:
    tab = TabSpec("tongue", "lid", Edge.TOP, 20.0, 12.0, "front", beside=(end, 30.0))
    (found,) = folded_of(drafted(envelope(tabs=(tab,)))).tabs
    # The lid hangs on the back from 1.5 to 88.5 mm.
    assert (found.root[0].x + found.root[1].x) / 2 == pytest.approx(middle)


def test_a_slit_off_the_face_it_is_cut_in_is_refused() -> None:
    with pytest.raises(DraftError, match=r"tab 'tongue': its slit does not lie within 'left'.*mm off that face"):
        drafted(envelope(tabs=(TabSpec("tongue", "lid", Edge.TOP, 20.0, 12.0, "left"),)))


def test_a_tab_without_room_on_its_edge_is_refused() -> None:
    with pytest.raises(DraftError, match=r"face 'lid': tab 'tongue' has no room on the top edge.*87\.00 mm long"):
        drafted(envelope(tabs=(TabSpec("tongue", "lid", Edge.TOP, 20.0, 12.0, "front", beside=(Edge.LEFT, 5.0)),)))


def test_a_tab_on_a_bowed_edge_is_refused() -> None:
    design = envelope()
    assert design.folded is not None
    lid = replace(design.folded.faces[-1], sides=((Edge.TOP, EdgeShape(bow=3.0)),))
    with pytest.raises(DraftError, match="tab 'tongue' stands on the top edge of 'lid', which is bowed"):
        drafted(with_folded(design, faces=(*design.folded.faces[:-1], lid)))


@pytest.mark.parametrize(
    ("shape", "area"),
    [
        # A neck of 6 mm with a half round of 6 mm beyond it: two quarter circles and what lies between.
        (TabShape.ROUNDED, 20 * 6 + 8 * 6 + pi * 36 / 2),
        # A neck of 6 mm and a triangle of 6 mm, less the tip its rounding takes.
        (TabShape.POINTED, 20 * 6 + 20 * 6 / 2),
    ],
)
def test_a_tab_has_a_straight_neck_and_a_round_or_pointed_end(shape: TabShape, area: float) -> None:
    tab = TabSpec("tongue", "lid", Edge.TOP, 20.0, 12.0, "back", shape)
    plain = drafted(one_flap(flap("lid", "back", "top", 30.0), relief=0.0)).pieces[0].area
    tabbed = drafted(one_flap(flap("lid", "back", "top", 30.0), relief=0.0, tabs=(tab,))).pieces[0]
    slit = abs(tabbed.openings[0].area)
    assert tabbed.area - plain + slit == pytest.approx(area, abs=0.6 if shape is TabShape.POINTED else 1e-6)


def test_faces_that_overlap_in_the_blank_are_refused_by_name() -> None:
    flaps = (
        flap("side", "back", "right", 70.0),
        flap("lid", "back", "top", 60.0),
        flap("tail", "lid", "right", 60.0),
        flap("ear", "side", "top", 40.0),
    )
    design = design_of(FoldedSpec("main", (BACK, *flaps), tuple(f.name for f in flaps)))
    with pytest.raises(DraftError, match=r"faces 'tail' and 'ear' overlap in the blank by \d+\.\d mm2"):
        drafted(design)


def test_two_flaps_on_one_edge_may_stand_side_by_side_but_not_over_each_other() -> None:
    one = flap("one", "back", "top", 20.0, inset={"left": 50.0})
    beside = flap("other", "back", "top", 20.0, inset={"right": 50.0})
    over = flap("other", "back", "top", 20.0, inset={"right": 30.0})
    made = design_of(FoldedSpec("main", (BACK, one, beside), ("one", "other")))
    assert fault_of(drafted(made).pieces[0].outline) is None
    with pytest.raises(DraftError, match="the hinge of 'other' has no room on the top edge of 'back'"):
        drafted(with_folded(made, faces=(BACK, one, over)))


def test_relief_holes_without_room_are_refused_beside_what_they_are_for() -> None:
    narrow = flap("lid", "back", "top", 40.0, inset={"left": 0.5})
    with pytest.raises(DraftError, match="no room for a relief hole beside the hinge of 'lid'"):
        drafted(one_flap(narrow))


def test_a_rounding_without_room_is_refused_by_its_face() -> None:
    with pytest.raises(DraftError, match=r"folded\.yaml:0: face 'lid': corner radii take"):
        drafted(one_flap(flap("lid", "back", "top", 40.0, corner=60.0)))


def test_an_item_rests_half_the_ease_off_the_edge_opposite_its_opening() -> None:
    room = folded_of(drafted(envelope())).rooms[0]
    assert room.box[0] == Point((90 - 85.6) / 2, 1.25)
    assert room.opening == Point(0, 1)


def test_the_closed_wallet_reaches_beyond_its_base_by_its_folds() -> None:
    found = folded_of(drafted(envelope(t=1.0, cards=2)))
    radius = {hinge.face: hinge.radius for hinge in found.hinges}
    box = found.closed
    assert (box.x0, box.x1) == pytest.approx((-radius["left"] - 1, 90 + radius["right"] + 1))
    assert (box.y0, box.y1) == pytest.approx((-radius["front"] - 1, 60 + radius["lid"] + 1))
