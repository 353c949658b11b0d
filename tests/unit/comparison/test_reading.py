"""Reading ``pattern.json``: what is read is what was drafted, and what is none is refused in one line."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any

import pytest

from patternforge.comparison.reading import stored
from patternforge.drafting.description import description
from patternforge.drafting.source import Source
from patternforge.errors import ReadingError
from patternforge.export.json import json_bytes
from patternforge.wallet.assemble import drafted
from tests.designs_built import sleeve, two_fold
from tests.unit.comparison.built import written

TEXT = written(sleeve())


def test_pieces_are_read_as_they_were_drafted() -> None:
    pattern = drafted(two_fold())
    read = stored(written(two_fold()), "pattern.json").made
    assert [piece.name for piece in read.pieces] == [piece.name for piece in pattern.pieces]
    for piece, own in zip(read.pieces, pattern.pieces, strict=True):
        assert (piece.width, piece.height, piece.area) == pytest.approx((own.width, own.height, own.area), abs=1e-6)
        assert [hole.at.x for hole in piece.holes] == pytest.approx([hole.at.x for hole in own.holes], abs=1e-6)
    assert dict(read.leathers) == {"outer": 1.2, "inner": 0.8}
    assert read.thread == pytest.approx(sum(seam.thread for seam in pattern.seams), abs=1e-6)
    assert read.closed is None


def test_what_it_was_drafted_from_is_read_back_letter_by_letter() -> None:
    source = Source("design: Zür 'x'\n", {"outer": "1.3 mm"}, {"owner": "Ä"})
    read = stored(json_bytes(description(drafted(sleeve()), (), source=source)), "pattern.json")
    assert read.source == source
    assert stored(TEXT, "pattern.json").source is None


def changed(change: Callable[[dict[str, Any]], object]) -> bytes:
    document = json.loads(TEXT)
    change(document)
    return json.dumps(document).encode()


BROKEN: dict[str, tuple[bytes, str]] = {
    "empty": (b"", "x.json:1:1: the file ends too soon"),
    "blank": (b"  \n", "the file ends too soon"),
    "cut short in a list": (TEXT[:2000].rsplit(b",", 1)[0], "the file ends too soon"),
    "cut short in a word": (TEXT[: TEXT.index(b"sleeve") + 3], "the file ends too soon"),
    "a design file": (b"design: Sleeve\nleathers: {}\n", "x.json:1:1: this is no JSON"),
    "no text": (b"\xff\xfe\x00\x01", "this is no text"),
    "an endless nest": (b"[" * 100_000, "this is no pattern.json"),
    "not a number": (TEXT.replace(b'"x": ', b'"x": NaN, "y": ', 1), "this is no pattern.json"),
    "other JSON": (b'{"type": "FeatureCollection"}', "no pattern.json of this program"),
    "a list": (b"[1, 2]", "no pattern.json of this program"),
    "a number": (b"3", "no pattern.json of this program"),
    "a later version": (changed(lambda d: d.update(version=99)), "version 99; this program reads version 1"),
    "a version in words": (changed(lambda d: d.update(version="one")), 'version is "one", not a whole number'),
    "no pieces": (changed(lambda d: d.update(pieces=[])), "pieces is [], not a list of pieces"),
    "pieces missing": (changed(lambda d: d.pop("pieces")), "pieces is missing"),
    "a piece without outline": (changed(lambda d: d["pieces"][1].pop("outline")), "pieces[1].outline is missing"),
    "a vertex cut short": (changed(lambda d: d["pieces"][0]["outline"][2].pop()), "pieces[0].outline[2] is ["),
    "a vertex in words": (changed(lambda d: d["pieces"][0]["outline"].__setitem__(0, ["a", 0, 0])), "not a number"),
    "a vertex twice": (changed(lambda d: d["pieces"][0].update(outline=[[0, 0, 0]] * 3)), "outline is no line"),
    "true for a number": (changed(lambda d: d["pieces"][0]["holes"][0].update(x=True)), "holes[0].x is true"),
    "a number beyond all": (changed(lambda d: d["pieces"][0]["holes"][0].update(y=10**400)), "holes[0].y is 1000"),
    "a source in pieces": (changed(lambda d: d.update(source={"text": 3})), "source.text is 3, not a text"),
    "two pieces of one name": (
        changed(lambda d: d["pieces"][1].update(name=d["pieces"][0]["name"])),
        "not a name that no other piece has",
    ),
    "a piece without a name": (changed(lambda d: d["pieces"][0].update(name="")), 'pieces[0].name is ""'),
    "an unknown leather": (changed(lambda d: d["pieces"][0].update(leather="x")), "not a leather of the design"),
    "no thickness": (changed(lambda d: d["pieces"][0].update(thickness=-1)), "not a thickness above 0"),
    "no thread": (changed(lambda d: d["seams"][0].update(thread=None)), "seams[0].thread is null, not a number"),
}


@pytest.mark.parametrize("name", BROKEN)
def test_a_broken_file_is_refused_in_one_line_that_names_it(name: str) -> None:
    data, words = BROKEN[name]
    with pytest.raises(ReadingError) as refusal:
        stored(data, "x.json")
    assert words in str(refusal.value)
    assert str(refusal.value).startswith("x.json")
    assert "\n" not in str(refusal.value)
