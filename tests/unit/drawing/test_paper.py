"""Sizes of paper against their published values."""

from __future__ import annotations

import pytest

from patternforge.drawing.paper import PAPERS, paper_named
from patternforge.errors import DraftError

# ISO 216 (A series); 8.5 x 11 in and 8.5 x 14 in in published tables of paper sizes, 1 in = 25.4 mm exactly.
PUBLISHED = {"A4": (210, 297), "A3": (297, 420), "Letter": (8.5 * 25.4, 11 * 25.4), "Legal": (8.5 * 25.4, 14 * 25.4)}


@pytest.mark.parametrize("name", PUBLISHED)
def test_paper_has_its_published_size(name: str) -> None:
    paper = paper_named(name)
    assert (paper.width, paper.height) == pytest.approx(PUBLISHED[name], abs=1e-9)


def test_every_paper_is_upright_and_says_where_its_size_comes_from() -> None:
    assert len(PAPERS) == len(PUBLISHED)
    for paper in PAPERS.values():
        assert paper.width < paper.height
        assert paper.source


def test_a_turned_paper_has_its_sides_exchanged() -> None:
    letter = paper_named("letter")
    assert (letter.turned().width, letter.turned().height) == (letter.height, letter.width)


def test_a_misspelt_paper_is_refused_with_the_nearest_name() -> None:
    with pytest.raises(DraftError, match=r"'Leter'.*did you mean Letter\?"):
        paper_named("Leter")


def test_an_unknown_paper_is_refused_with_all_names() -> None:
    with pytest.raises(DraftError, match=r"only A4, A3, Letter, Legal$"):
        paper_named("foolscap 1800")
