"""Straps and flaps: layers whose edges keep inside the body's."""

from __future__ import annotations

from dataclasses import replace

import pytest

from patternforge.errors import DraftError
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import EdgeRole
from patternforge.wallet.spec import Edge
from tests.shapes_built import LINING, SHELL, STRAP, strap_case


def test_a_strap_is_as_wide_as_its_insets_leave_and_reaches_short_of_the_panels_end() -> None:
    strap = drafted(strap_case()).piece("strap")
    fold = drafted(strap_case()).folds[0].layers[0].flat_length
    assert strap.height == pytest.approx(74 - 25 - 25)
    # The whole strap panel, the bend, and of the back what the relief of 4 mm and the inset of 70 mm leave.
    assert strap.width == pytest.approx(45 + fold + 102 - 4 - 70)


def test_its_corners_have_its_own_rounding_and_its_edges_are_raw() -> None:
    strap = drafted(strap_case()).piece("strap")
    arcs = [segment for segment in strap.outline.segments if segment.is_arc]
    assert [arc.radius for arc in arcs] == pytest.approx([10.0] * 4)
    assert set(strap.edges) == {EdgeRole.RAW}


def test_without_a_rounding_of_its_own_it_has_sharp_corners() -> None:
    strap = drafted(strap_case(parts=(replace(STRAP, corner=None), SHELL, LINING))).piece("strap")
    assert not any(segment.is_arc for segment in strap.outline.segments)


def test_insets_that_leave_nothing_are_refused_with_the_part_and_its_line() -> None:
    narrow = replace(STRAP, inset=((Edge.BOTTOM, 37.0), (Edge.TOP, 37.0)))
    rim = strap_case().seams[0]
    with pytest.raises(DraftError, match=r":3: 'strap': its insets leave nothing of it"):
        drafted(strap_case(parts=(narrow, SHELL, LINING), seams=(rim,)))


def test_a_seam_along_a_strap_keeps_its_margin_from_the_straps_own_edges() -> None:
    strap = drafted(strap_case()).piece("strap")
    off = [strap.outline.distance_to(hole.at) for hole in strap.holes]
    assert min(off) == pytest.approx(3.5)
    assert len(off) > 5


def test_a_seam_over_one_panel_stays_on_it() -> None:
    pattern = drafted(strap_case())
    rim = next(seam for seam in pattern.seams if seam.name == "rim")
    front = pattern.panels[2]
    assert all(front.x0 < hole.at.x < front.x1 for hole in rim.holes)
