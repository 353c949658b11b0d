"""Openings in parts: in the front piece, with their film behind it and its seam, or refused."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from patternforge.errors import DraftError
from patternforge.wallet.assemble import drafted
from patternforge.wallet.spec import Edge, Opening, Side, Spot
from tests.shapes_built import BANK, LINING, SHELL, STRAP, WINDOW, strap_case, windowed


def test_only_the_front_piece_of_a_bank_is_opened() -> None:
    pattern = drafted(windowed())
    assert {piece.name: len(piece.openings) for piece in pattern.pieces} == {
        "back": 0,
        "cards 2": 0,
        "window film": 0,
        "cards 1": 1,
    }


def test_a_film_lies_behind_its_window_and_reaches_beyond_it() -> None:
    pattern = drafted(windowed())
    film, front = pattern.piece("window film"), pattern.piece("cards 1")
    assert (film.lines, film.leather, front.lines) == ("cards 1", "film", "")
    assert film.level == front.level - 1
    assert (film.width, film.height) == (60 + 2 * 6, 22 + 2 * 6)


def test_behind_a_front_that_faces_outwards_the_film_lies_on_the_inner_side() -> None:
    design = windowed()
    bank = replace(BANK, openings=(WINDOW,), facing=Side.OUTSIDE)
    pattern = drafted(replace(design, parts=(bank, design.parts[0])))
    assert pattern.piece("window film").level == pattern.piece("cards 1").level + 1


def test_the_seam_of_a_film_goes_through_it_and_its_front_alone() -> None:
    seam = next(seam for seam in drafted(windowed()).seams if seam.name == "window seam")
    assert seam.pieces == ("window film", "cards 1")
    assert seam.inner
    # A ring 3 mm outside the window: 66 x 28 mm with corners of 4 + 3 mm.
    assert seam.length == pytest.approx(2 * (66 + 28) - 8 * 7 + 2 * math.pi * 7)


def test_a_window_without_a_film_is_a_hole_and_nothing_else() -> None:
    pattern = drafted(windowed(replace(WINDOW, film=None)))
    assert [piece.name for piece in pattern.pieces] == ["back", "cards 2", "cards 1"]
    assert not any(seam.name == "window seam" for seam in pattern.seams)


def test_an_opening_above_the_mouth_is_refused() -> None:
    high = replace(WINDOW, film=None, spot=Spot(0, None, (Edge.TOP, 20.0)))
    with pytest.raises(DraftError, match="'cards': opening 'window' reaches beyond the edges of 'cards 1'"):
        drafted(windowed(high))


def test_an_opening_beside_a_strap_is_refused() -> None:
    strap = replace(STRAP, openings=(Opening("slot", Spot(0, None, (Edge.BOTTOM, 15.0)), 10.0, 3.0, 1.5),))
    with pytest.raises(DraftError, match="reaches beyond the edges of 'strap'"):
        drafted(strap_case(parts=(strap, SHELL, LINING)))


def test_an_opening_on_a_panel_its_part_does_not_cover_is_refused() -> None:
    lining = replace(LINING, openings=(Opening("slot", Spot(0), 10.0, 3.0, 1.5),))
    with pytest.raises(DraftError, match="panel 'strap', which the part does not cover"):
        drafted(strap_case(parts=(STRAP, SHELL, lining)))
