"""The bulk map as drawn."""

from __future__ import annotations

import itertools

import pytest

from patternforge.drafting.bulk_sheet import bulk_sheet
from patternforge.drawing.extent import extent
from patternforge.drawing.model import Area, Dot, Figure, Role, Sheet, Text
from patternforge.drawing.stacked import room
from patternforge.fit.bulk import seam_stacks
from patternforge.fit.bulk_map import closed_map, open_map
from patternforge.fit.close import closed_wallet
from patternforge.fit.layout import Layout, layout
from patternforge.wallet.assemble import drafted
from tests.designs_built import two_fold

PATTERN = drafted(two_fold())


def laid() -> Layout:
    return layout(PATTERN, {leather.role: leather for leather in PATTERN.design.leathers})


def sheet() -> Sheet:
    found = laid()
    maps = (open_map(found), closed_map(found, closed_wallet(found)))
    return bulk_sheet("bulk", "Two-fold", maps, seam_stacks(found))


def figure(name: str) -> Figure:
    return next(each for each in sheet().figures if each.name == name)


def words(drawn: Figure) -> list[str]:
    return [ink.content for ink in drawn.inks if isinstance(ink, Text)]


def tones(drawn: Figure) -> list[float]:
    return [ink.tone for ink in drawn.inks if isinstance(ink, Area) and ink.role is Role.TINT]


def test_every_picture_keeps_to_the_sheet_and_off_the_others() -> None:
    drawn = sheet()
    boxes = [room(each.inks) for each in drawn.figures]
    assert all(box.x0 >= 10 - 1e-9 and box.x1 <= drawn.width - 10 + 1e-9 for box in boxes)
    assert all(box.y0 >= 10 - 1e-9 and box.y1 <= drawn.height - 10 + 1e-9 for box in boxes)
    assert all(above.y0 - below.y1 >= 10 - 1e-9 for above, below in itertools.pairwise(boxes))


def test_the_map_is_drawn_at_true_size() -> None:
    tints = [ink for ink in figure("laid open").inks if ink.role is Role.TINT]
    box = extent(tints)
    assert (box.width, box.height) == pytest.approx((PATTERN.width, PATTERN.height), abs=1e-3)


def test_thicker_is_darker_and_the_thickest_is_as_dark_as_the_end_of_the_scale() -> None:
    scale = tones(figure("scale"))
    assert scale == sorted(scale)
    assert max(tones(figure("closed"))) == pytest.approx(scale[-1])
    assert max(tones(figure("laid open"))) < scale[-1]


def test_the_highest_spot_bears_its_thickness() -> None:
    found = laid()
    closed = closed_map(found, closed_wallet(found))
    assert f"{closed.highest.thickness:.2f} mm" in words(figure("closed"))


def test_every_seam_is_marked_with_its_number_and_told_in_the_table() -> None:
    stacks = seam_stacks(laid())
    marks = [ink for ink in figure("laid open").inks if isinstance(ink, Dot)]
    assert len(marks) == len(stacks) > 0
    told = words(figure("seams"))
    assert [told[1 + 3 * i : 4 + 3 * i] for i in range(len(stacks))] == [
        [str(i), stack.seam, f"{stack.thickness:.2f} mm"] for i, stack in enumerate(stacks, start=1)
    ]


def test_a_wallet_without_seams_has_no_table() -> None:
    drawn = bulk_sheet("bulk", "Two-fold", (open_map(laid()),), ())
    assert [each.name for each in drawn.figures] == ["heading", "scale", "laid open"]
