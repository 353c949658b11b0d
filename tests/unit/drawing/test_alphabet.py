"""Every letter of the languages served is composed, each one its own, and an unknown one is refused by name."""

from __future__ import annotations

import unicodedata

import pytest

from patternforge.drawing.alphabet import glyph_of
from patternforge.drawing.glyph import CAPITAL, SMALL, Glyph
from patternforge.errors import DraftError

# Letters beyond ASCII of each language: from memory.
LANGUAGES = {
    "German": "ÄÖÜäöüßẞ",
    "French": "ÀÂÆÇÉÈÊËÎÏÔŒÙÛÜŸàâæçéèêëîïôœùûüÿ",
    "Spanish": "ÁÉÍÑÓÚÜáéíñóúü",
    "Italian": "ÀÈÉÌÒÓÙàèéìòóù",
    "Portuguese": "ÀÁÂÃÇÉÊÍÓÔÕÚàáâãçéêíóôõú",
    "Danish and Norwegian": "ÆØÅæøå",
    "Swedish and Finnish": "ÅÄÖåäö",
    "Icelandic": "ÁÐÉÍÓÚÝÞÆÖáðéíóúýþæö",
    "Northern Sami": "ÁČĐŊŠŦŽáčđŋšŧž",
    "Polish": "ĄĆĘŁŃÓŚŹŻąćęłńóśźż",
    "Czech and Slovak": "ÁÄČĎÉĚÍĹĽŇÓÔŔŘŠŤÚŮÝŽáäčďéěíĺľňóôŕřšťúůýž",
    "Hungarian": "ÁÉÍÓÖŐÚÜŰáéíóöőúüű",
    "Turkish": "ÇĞİÖŞÜçğıöşü",
    "Romanian": "ĂÂÎȘȚăâîșț",
    "Croatian": "ČĆĐŠŽčćđšž",
    "Latvian and Lithuanian": "ĀČĒĢĪĶĻŅŠŪŽĄĘĖĮŲāčēģīķļņšūžąęėįų",
    "Maltese": "ĊĠĦŻċġħż",
    "Estonian": "ÄÕÖÜŠŽäõöüšž",
}


def glyph(letter: str) -> Glyph:
    return glyph_of(unicodedata.normalize("NFD", letter))


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_letter_of_the_language_has_strokes_of_its_own(language: str) -> None:
    plain = {glyph(chr(code)).lines for code in range(ord("!"), 127)}
    # Capitals and small letters apart: the I and the l of this face are one stem.
    for case in (str.isupper, str.islower):
        letters = [letter for letter in LANGUAGES[language] if case(letter)]
        shapes = {glyph(letter).lines for letter in letters}
        assert len(shapes) == len(letters)
        assert not plain & shapes


def test_every_ascii_character_has_a_glyph_and_only_the_space_is_blank() -> None:
    blank = [chr(code) for code in range(32, 127) if not glyph(chr(code)).lines]
    assert blank == [" "]


def test_capitals_reach_the_capital_line_and_small_letters_the_small_one() -> None:
    assert {glyph(c).top for c in "AEHIMNTXZ"} == {CAPITAL}
    assert {glyph(c).top for c in "aceimnuvxz"} == {SMALL, 22.0}  # the dot of the i


def test_a_mark_takes_the_place_of_the_dot() -> None:
    assert glyph("í").lines[0] == glyph("ı").moved(*_shift("í", "ı")).lines[0]
    assert len(glyph("í").lines) == len(glyph("i").lines)


def _shift(letter: str, plain: str) -> tuple[float, float]:
    (x, y), (x0, y0) = glyph(letter).lines[0][0], glyph(plain).lines[0][0]
    return x - x0, y - y0


def test_marks_above_stay_inside_the_room_of_a_narrow_letter() -> None:
    for letter in "îïìíĩī":
        assert glyph(letter).left >= 0
        assert glyph(letter).right <= glyph(letter).width


def test_two_marks_stand_over_each_other() -> None:
    assert glyph("ǖ").top > glyph("ü").top > glyph("u").top


def test_a_half_is_not_read_as_twelve() -> None:
    half = glyph("½")
    assert min(y for _, y in half.lines[0]) > 0.4 * CAPITAL
    assert max(y for _, y in half.lines[-1]) < 0.6 * CAPITAL


@pytest.mark.parametrize(
    ("letter", "name"),
    [("あ", "HIRAGANA LETTER A"), ("Я", "CYRILLIC CAPITAL LETTER YA"), ("\t", r"U\+0009"), ("→", "RIGHTWARDS ARROW")],
)
def test_a_letter_without_strokes_is_refused_by_name(letter: str, name: str) -> None:
    with pytest.raises(DraftError, match=name):
        glyph_of(letter)


def test_a_mark_without_strokes_is_refused_by_name() -> None:
    with pytest.raises(DraftError, match="COMBINING DOT BELOW"):
        glyph("ạ")
