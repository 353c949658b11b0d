"""What is no cutting file, or a broken one, is refused in one plain sentence with its line."""

from __future__ import annotations

import gzip

import pytest

from patternforge.audit.reading import cut_file
from patternforge.errors import ReadingError
from patternforge.export.dxf import DxfVersion
from tests.unit.audit.clean import clean_dxf, clean_svg

DXF, SVG = clean_dxf(), clean_svg()
MINI = "0\nSECTION\n2\nENTITIES\n{}\n0\nENDSEC\n0\nEOF\n"
LINE = "0\nLINE\n8\nCUT\n10\n{}\n20\n0\n11\n10\n21\n0"
SPLINE = "0\nSPLINE\n8\nCUT\n71\n3\n40\n0\n40\n1\n10\n0\n20\n0\n10\n5\n20\n5"
HEAD = '<svg xmlns="http://www.w3.org/2000/svg" width="10mm" height="10mm" viewBox="0 0 10 10">'


@pytest.mark.parametrize(
    ("data", "words"),
    [
        (b"", "the file is empty"),
        (b" \n\n", "the file is empty"),
        (b"%PDF-1.7 ...", "this is a PDF file"),
        (b"\x89PNG\r\n\x1a\n", "this is a picture"),
        (b"PK\x03\x04....", "this is a packed archive"),
        (b"%!PS-Adobe-3.0", "this is a PostScript file"),
        (b"AutoCAD Binary DXF\r\n\x1a\0...", "this is a binary DXF file"),
        (b"AC1024\0\0\0\0...", "this is a DWG file"),
        (DXF.encode("utf-16"), "this is no DXF file: it is written in UTF-16"),
        (DXF.encode("utf-16-le"), "this is no DXF file: it is not written in text"),
        (b"hello\nworld\n", "this is no DXF file: it does not begin with a group code"),
        (b"0\nEOF\n", "this is no DXF file: it has no sections"),
        (DXF[: len(DXF) // 2].encode(), "cut short"),
        (DXF.replace("CIRCLE\n", "CIRCLE\nstray\n", 1).encode(), r"line \d+: .* stands where a group code is due"),
        (MINI.format(LINE.format("abc")).encode(), "line 5: the LINE that begins here says 'abc' under group 10"),
        (MINI.format(LINE.format("nan")).encode(), "says 'nan' under group 10"),
        (MINI.format(LINE.format("1e300")).encode(), "says '1e300' under group 10"),
        (MINI.format(SPLINE).encode(), "line 5: the SPLINE .* 2 control points and 2 knots"),
        (gzip.compress(SVG.encode()), r"this is a packed SVG \(svgz\)"),
        (SVG[: len(SVG) // 2].encode(), r"line \d+: the file is no sound XML .* cut short or damaged"),
        (b"<html><body/></html>", "this is no SVG file: its first element is not svg"),
        (f'{HEAD}<g transform="turn(5)"/></svg>'.encode(), "line 1: 'turn.5.' is no transform"),
        (f'{HEAD}<path d="M0 0 L1 1 2"/></svg>'.encode(), "line 1: the path breaks off"),
        (f'{HEAD}<path d="L1 1"/></svg>'.encode(), "line 1: the path breaks off at 'L1 1'"),
        (f'{HEAD}<path d="M0 0 K1 1"/></svg>'.encode(), "line 1: the path breaks off at 'K1 1'"),
        (f"{HEAD}{'<g>' * 300}{'</g>' * 300}</svg>".encode(), "groups lie more than 200 deep"),
    ],
)
def test_what_is_no_cutting_file_is_refused_in_one_sentence(data: bytes, words: str) -> None:
    with pytest.raises(ReadingError, match=words) as caught:
        cut_file(data, "mine.dxf")
    assert str(caught.value).startswith("mine.dxf: ")
    assert "\n" not in str(caught.value)


def test_an_svg_file_cannot_have_anything_fetched() -> None:
    fetching = f'<!DOCTYPE svg [<!ENTITY all SYSTEM "file:///etc/passwd">]>{HEAD}<text>&all;</text></svg>'
    with pytest.raises(ReadingError, match="asks for 'file:///etc/passwd' to be fetched"):
        cut_file(fetching.encode(), "a.svg")


def test_an_svg_file_cannot_swell() -> None:
    swelling = "".join(f'<!ENTITY a{i} "{f"&a{i - 1};" * 9}">' for i in range(1, 9))
    text = f'<!DOCTYPE svg [<!ENTITY a0 "spite">{swelling}]>{HEAD}<text>&a8;</text></svg>'
    with pytest.raises(ReadingError, match="could swell"):
        cut_file(text.encode(), "a.svg")


def test_abbreviated_name_spaces_of_drawing_programs_are_taken() -> None:
    space = "http://www.w3.org/2000/svg"
    short = SVG.partition("?>")[2].replace(space, "&ns;")
    text = f'<!DOCTYPE svg [<!ENTITY ns "{space}">]>{short}'
    assert len(cut_file(text.encode(), "a.svg").entities) == len(cut_file(SVG.encode(), "a.svg").entities)


def test_a_block_that_holds_itself_comes_to_an_end() -> None:
    insert = "0\nINSERT\n8\nCUT\n2\nA\n10\n1\n20\n0"
    block = f"0\nSECTION\n2\nBLOCKS\n0\nBLOCK\n2\nA\n{insert}\n{LINE.format(0)}\n0\nENDBLK\n0\nENDSEC\n"
    file = cut_file((block + MINI.format(insert)).encode(), "a.dxf")
    assert 2 < len(file.entities) < 100


def test_a_copy_that_shows_itself_comes_to_an_end() -> None:
    text = f'{HEAD}<g id="a"><circle r="1"/><use href="#a" x="1"/></g></svg>'
    assert 2 < len(cut_file(text.encode(), "a.svg").entities) < 100


def test_blocks_that_swell_are_refused() -> None:
    def block(name: str, inner: str) -> str:
        inserts = "".join(f"0\nINSERT\n8\nC\n2\n{inner}\n10\n{i}\n20\n0\n" for i in range(40))
        return f"0\nBLOCK\n2\n{name}\n{inserts}0\nENDBLK\n"

    blocks = "".join(block(f"B{i}", f"B{i + 1}") for i in range(6))
    text = f"0\nSECTION\n2\nBLOCKS\n{blocks}0\nENDSEC\n" + MINI.format("0\nINSERT\n8\nC\n2\nB0\n10\n0\n20\n0")
    with pytest.raises(ReadingError, match="more than 300000 entities"):
        cut_file(text.encode(), "a.dxf")


@pytest.mark.parametrize("ending", ["\n", "\r\n", "\r"])
def test_line_ends_of_every_system_are_taken(ending: str) -> None:
    plain = cut_file(DXF.encode(), "a.dxf")
    assert cut_file(DXF.replace("\n", ending).encode(), "a.dxf") == plain


def test_a_file_with_nothing_but_entities_is_read() -> None:
    file = cut_file(MINI.format(LINE.format("5")).encode(), "a.dxf")
    assert (file.version, file.unit, len(file.entities)) == ("R12", "", 1)


def test_layer_names_in_an_old_code_page_are_read() -> None:
    text = clean_dxf(DxfVersion.R12).replace("OUTLINE", "RÄNDER")
    names = {each.look.layer for each in cut_file(text.encode("cp1252"), "a.dxf").entities}
    assert "RÄNDER" in names
