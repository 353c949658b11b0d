"""Catalogue sizes against what issuers and standards print, restated here by hand.

Values in mm as length x height (coins: diameter x thickness). "(memory)" marks those without a source at hand.
"""

from __future__ import annotations

import pytest

from patternforge.leather.catalogue import catalogue
from patternforge.units import MM_PER_INCH

ITEMS = catalogue()

# ISO/IEC 7810 nominal sizes, as reported by the encyclopaedia article "ISO/IEC 7810".
CARDS = {"id1": (85.60, 53.98), "id2": (105, 74), "id3": (125, 88), "id000": (25, 15)}

# Size tables at papersizes.io and origamijapan.net.
BUSINESS_CARDS = {
    "eu": (85, 55),
    "us": (3.5 * MM_PER_INCH, 2 * MM_PER_INCH),
    "jp": (91, 55),
    "cn": (90, 54),
    "nordic": (90, 55),
    "kr": (90, 50),
    "a8": (74, 52),
}

NOTES = {
    # European Central Bank sizes, as reported by the Croatian National Bank ("Denominations of euro banknotes") and
    # liquisearch.com; 100 and 200 as reported by coinworld.com ("Last Europa series notes to be issued").
    "eur-5": (120, 62),
    "eur-10": (127, 67),
    "eur-20": (133, 72),
    "eur-50": (140, 77),
    "eur-100": (147, 77),
    "eur-200": (153, 77),
    "eur-100-2002": (147, 82),
    "eur-200-2002": (153, 82),
    "eur-500-2002": (160, 82),
    # Pages quoting the US Bureau of Engraving and Printing: 6.14 x 2.61 in.
    "usd": (6.14 * MM_PER_INCH, 2.61 * MM_PER_INCH),
    # Bank of England notes, as reported by a collectors' page of July 2017; the 50 by the press.
    "gbp-5": (125, 65),
    "gbp-10": (132, 69),
    "gbp-20": (139, 73),
    "gbp-50": (146, 77),
    # Bank of Japan, boj.or.jp, page on the sizes of its notes.
    "jpy-1000": (150, 76),
    "jpy-2000": (154, 76),
    "jpy-5000": (156, 76),
    "jpy-10000": (160, 76),
    # Bank of Canada Review, spring 2006: 6.0 x 2.75 in.
    "cad": (6.0 * MM_PER_INCH, 2.75 * MM_PER_INCH),
    # Reserve Bank of Australia (5); a historical society's page (10, 20, 50); 100 (memory).
    "aud-5": (130, 65),
    "aud-10": (137, 65),
    "aud-20": (144, 65),
    "aud-50": (151, 65),
    "aud-100": (158, 65),
    # Press on releases of the Reserve Bank of India; 20 (memory).
    "inr-10": (123, 63),
    "inr-20": (129, 63),
    "inr-50": (135, 66),
    "inr-100": (142, 66),
    "inr-200": (146, 66),
    "inr-500": (150, 66),
    # Encyclopaedia article "Fifth series of the renminbi"; the height of the 100 (memory).
    "cny-1": (130, 63),
    "cny-5": (135, 63),
    "cny-10": (140, 70),
    "cny-20": (145, 70),
    "cny-50": (150, 70),
    "cny-100": (155, 77),
    # Korean and Swedish notes (memory).
    "krw-1000": (136, 68),
    "krw-5000": (142, 68),
    "krw-10000": (148, 68),
    "krw-50000": (154, 68),
    "sek-20": (120, 66),
    "sek-50": (126, 66),
    "sek-100": (133, 66),
    "sek-200": (140, 66),
    "sek-500": (147, 66),
    "sek-1000": (154, 66),
}

COINS = {
    # Two public tables of euro coins.
    "eur-1c": (16.25, 1.67),
    "eur-2c": (18.75, 1.67),
    "eur-5c": (21.25, 1.67),
    "eur-10c": (19.75, 1.93),
    "eur-20c": (22.25, 2.14),
    "eur-50c": (24.25, 2.38),
    "eur-1": (23.25, 2.33),
    "eur-2": (25.75, 2.20),
    # US Mint, coin specifications.
    "usd-1c": (19.05, 1.52),
    "usd-5c": (21.21, 1.95),
    "usd-10c": (17.91, 1.35),
    "usd-25c": (24.26, 1.75),
    "usd-50c": (30.61, 2.15),
    "usd-1": (26.49, 2.00),
    # Encyclopaedia article "Coins of the pound sterling" of 2002 and two public tables.
    "gbp-1p": (20.3, 1.65),
    "gbp-2p": (25.9, 1.85),
    "gbp-5p": (18.0, 1.7),
    "gbp-10p": (24.5, 1.85),
    "gbp-20p": (21.4, 1.7),
    "gbp-50p": (27.3, 1.78),
    "gbp-1": (23.43, 2.8),
    "gbp-2": (28.4, 2.5),
}

OUTLINES = {
    **CARDS,
    **{f"card-business-{country}": size for country, size in BUSINESS_CARDS.items()},
    **{f"note-{note}": size for note, size in NOTES.items()},
}


@pytest.mark.parametrize(("name", "printed"), OUTLINES.items())
def test_a_card_or_note_has_its_printed_size(name: str, printed: tuple[float, float]) -> None:
    # Inches are carried over to a hundredth of a millimetre.
    assert (ITEMS[name].length, ITEMS[name].height) == pytest.approx(printed, abs=0.005)


@pytest.mark.parametrize(("name", "printed"), COINS.items())
def test_a_coin_has_its_printed_size(name: str, printed: tuple[float, float]) -> None:
    coin = ITEMS[f"coin-{name}"]
    assert (coin.length, coin.thickness) == printed


@pytest.mark.parametrize("name", CARDS)
def test_a_card_is_as_thick_as_the_standard_has_it(name: str) -> None:
    # ISO/IEC 7810: 0.76 +/- 0.08 mm.
    assert ITEMS[name].thickness == 0.76


def test_a_bank_card_has_corners_within_the_standard() -> None:
    # ISO/IEC 7810: 2.88 to 3.48 mm, 3.18 mm nominal.
    assert 2.88 < ITEMS["id1"].corner_radius < 3.48
    assert ITEMS["id1"].corner_radius == 3.18


def test_an_embossed_card_is_the_thickest_card_and_the_highest_relief() -> None:
    # ISO/IEC 7810: at most 0.76 + 0.08 mm; ISO/IEC 7811-1: relief of at most 0.46 mm.
    assert ITEMS["id1-embossed"].thickness == pytest.approx(0.76 + 0.08 + 0.46)


def test_a_passport_is_an_id3_booklet_of_a_lawful_thickness() -> None:
    passport, page = ITEMS["passport"], ITEMS["id3"]
    assert (passport.length, passport.height) == (page.length, page.height)
    # 2.5 to 4.5 mm by pages and chip: common practice, no source.
    assert 2.5 <= passport.thickness <= 4.5


def test_paper_notes_are_as_thick_as_printed_where_print_says_it() -> None:
    # US Bureau of Engraving and Printing, as quoted: 0.0043 in. Bank of Japan: about 0.1 mm.
    assert ITEMS["note-usd"].thickness == pytest.approx(0.0043 * MM_PER_INCH, abs=0.0005)
    assert ITEMS["note-jpy-10000"].thickness == 0.1
    # Polymer, a historical society's page on Australian money: 0.126 to 0.140 mm.
    assert 0.126 < ITEMS["note-aud-50"].thickness < 0.140


def test_swiss_notes_are_of_one_height_and_grow_in_even_steps() -> None:
    # Swiss National Bank, ninth series: 70 mm high, each value 7 mm longer; the 10 is 123 mm (a bank, 2017).
    notes = [ITEMS[f"note-chf-{value}"] for value in (10, 20, 50, 100, 200, 1000)]
    assert [note.height for note in notes] == [70] * 6
    assert [note.length for note in notes] == list(range(123, 160, 7))


def test_a_us_cheque_has_its_printed_size() -> None:
    # Several general guides to cheque sizes: personal cheques are 6 x 2 3/4 in.
    cheque = ITEMS["cheque-us"]
    assert (cheque.length, cheque.height) == pytest.approx((6 * MM_PER_INCH, 2.75 * MM_PER_INCH))


@pytest.mark.parametrize(
    ("visa", "printed"),
    # ICAO formats MRV-A and MRV-B, as listed in public source code of travel document readers.
    [("visa-mrv-a", (120, 80)), ("visa-mrv-b", (105, 74))],
)
def test_a_visa_sheet_has_its_printed_size(visa: str, printed: tuple[float, float]) -> None:
    assert (ITEMS[visa].length, ITEMS[visa].height) == printed


@pytest.mark.parametrize("strap", [15, 20, 25])
def test_a_d_ring_goes_round_its_strap(strap: float) -> None:
    # Common practice, no source: wire of 3 mm, the strap lies free inside it.
    ring = ITEMS[f"ring-d-{strap}"]
    assert ring.length - 2 * ring.thickness == strap
    assert ring.thickness == 3


def test_a_pad_of_cheques_is_as_large_as_a_cheque() -> None:
    pad, cheque = ITEMS["cheque-pad-us"], ITEMS["cheque-us"]
    assert (pad.length, pad.height) == (cheque.length, cheque.height)
    # Common practice, no source: 25 cheques with a copy each, 0.1 mm a sheet, and a card behind them of 0.4.
    assert pad.thickness == pytest.approx(50 * cheque.thickness + 0.4)


@pytest.mark.parametrize(
    ("booklet", "printed"),
    # ISO 216: A6 105 x 148, A5 148 x 210. Pocket notebooks: 3.5 x 5.5 in, about 90 x 140 mm, in guides to notebook
    # sizes (two general pages on common notebook sizes).
    [
        ("booklet-a6", (148, 105)),
        ("booklet-a5", (210, 148)),
        ("booklet-pocket", (5.5 * MM_PER_INCH, 3.5 * MM_PER_INCH)),
    ],
)
def test_a_booklet_has_its_printed_size(booklet: str, printed: tuple[float, float]) -> None:
    assert (ITEMS[booklet].length, ITEMS[booklet].height) == pytest.approx(printed)
    # Common practice, no source: 48 pages.
    assert ITEMS[booklet].thickness == pytest.approx(24 * 0.1 + 2 * 0.3)


@pytest.mark.parametrize(
    ("bar", "thickness"),
    # 1.0, 1.2, 1.3, 1.5, 1.8, 2.0 and 2.5 mm are sold (a page on measuring spring bars); 1.8 is the most common (a
    # page of a dealer in watch straps).
    [("spring-bar-thin", 1.5), ("spring-bar", 1.8), ("spring-bar-thick", 2.0)],
)
def test_a_spring_bar_is_as_thick_as_they_are_sold(bar: str, thickness: float) -> None:
    assert (ITEMS[bar].height, ITEMS[bar].thickness) == (thickness, thickness)


def test_every_size_in_the_catalogue_is_checked_here() -> None:
    elsewhere = {"id1-embossed", "passport", "cheque-us", "visa-mrv-a", "visa-mrv-b"}
    swiss = {f"note-chf-{value}" for value in (10, 20, 50, 100, 200, 1000)}
    rings = {"ring-d-15", "ring-d-20", "ring-d-25"}
    elsewhere |= {"cheque-pad-us", "booklet-a6", "booklet-a5", "booklet-pocket"}
    elsewhere |= {"spring-bar-thin", "spring-bar", "spring-bar-thick"}
    assert set(ITEMS) == set(OUTLINES) | {f"coin-{coin}" for coin in COINS} | elsewhere | swiss | rings
