"""Slabs on pages."""

from __future__ import annotations

import pytest

from patternforge.drawing.slabs import Slab, poured
from patternforge.errors import DraftError


def _heights(pages: tuple[tuple[Slab, ...], ...]) -> list[list[float]]:
    return [[slab.height for slab in page] for page in pages]


def test_no_slab_is_parted_and_none_lost() -> None:
    pages = poured([Slab(float(height)) for height in (60, 50, 40, 30, 20, 10)], 100.0)
    assert _heights(pages) == [[60], [50, 40], [30, 20, 10]]


def test_a_head_is_set_again_over_a_row_that_heads_a_page() -> None:
    head = Slab(10.0)
    rows = [Slab(35.0, head=head) for _ in range(4)]
    assert _heights(poured([Slab(10.0, keeps=True), *rows], 100.0)) == [[10, 35, 35], [10, 35, 35]]


def test_what_is_left_free_above_counts_unless_the_slab_heads_the_page() -> None:
    slabs = [Slab(50.0), Slab(45.0, above=6.0)]
    assert _heights(poured(slabs, 100.0)) == [[50], [45]]
    assert _heights(poured(slabs, 101.0)) == [[50, 45]]


def test_a_title_is_never_left_alone_at_the_foot_of_a_page() -> None:
    slabs = [Slab(80.0), Slab(10.0, keeps=True), Slab(5.0, keeps=True), Slab(20.0)]
    assert _heights(poured(slabs, 100.0)) == [[80], [10, 5, 20]]


def test_what_belongs_together_and_goes_on_no_page_is_refused() -> None:
    with pytest.raises(DraftError, match="110 mm of words or pictures"):
        poured([Slab(20.0), Slab(60.0, keeps=True), Slab(50.0)], 100.0)
