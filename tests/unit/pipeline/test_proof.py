"""Damage between writing and proof is found, with its place; nothing is delivered, and the last set stays."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, replace
from pathlib import Path

import pytest

from patternforge.drafting.purpose import DraftingOptions, LaserOptions
from patternforge.drafting.sheets import Deliverable, die_sheets, laser_sheets
from patternforge.drawing.model import Dot, Figure, Ink, Role, Sheet, Stroke
from patternforge.errors import AuditError
from patternforge.export.dxf import DxfVersion
from patternforge.export.registry import writer
from patternforge.geometry.path import from_vertices, polygon
from patternforge.geometry.point import Point
from patternforge.machines.load import load_machine
from patternforge.machines.table import Machine
from patternforge.pipeline import cutter, fileset
from patternforge.pipeline.draft import draft
from patternforge.pipeline.request import DraftRequest, OnNo, Wanted
from tests.unit.delivery.killing import everything
from tests.unit.small_designs import SLEEVE, saved

SLITS = SLEEVE.replace("seams:", "stitching: {pitch: 3.38 mm, hole: {shape: slit, length: 2 mm, slant: 45}}\nseams:")
PLOT = load_machine("{machine: Plotter, tool: knife, format: hpgl, travel: as drawn}", "plot.yaml")
TABLE = load_machine("{machine: Laser, tool: laser, format: svg, chords: 0.02 mm}", "table.yaml")
NUMBER = r"[-\d.]+"
Damage = Callable[[bytes], bytes]


def replaced(pattern: str, by: str, count: int = 1) -> Damage:
    """Every file with the first places that fit a pattern written otherwise."""

    def damage(data: bytes) -> bytes:
        text, times = re.subn(pattern, by, data.decode("utf-8"), count=count)
        return text.encode("utf-8") if times else data

    return damage


def redrawn(change: Callable[[list[Ink]], list[Ink]], piece: int = 0) -> Callable[[Sheet], Sheet]:
    """A sheet with the inks of one of its figures changed, as a writer might that goes wrong."""

    def damage(sheet: Sheet) -> Sheet:
        figures = list(sheet.figures)
        chosen = figures[min(piece, len(figures) - 1)]
        figures[min(piece, len(figures) - 1)] = replace(chosen, inks=tuple(change(list(chosen.inks))))
        return replace(sheet, figures=tuple(figures))

    return damage


@pytest.fixture
def broken_writer(monkeypatch: pytest.MonkeyPatch) -> Callable[..., None]:
    """``broken_writer(kind, data=..., sheet=...)``: files of a kind are damaged as bytes, or drawn wrongly."""

    def breaks(kind: str, data: Damage = bytes, sheet: Callable[[Sheet], Sheet] = lambda each: each) -> None:
        def other(asked: str) -> Callable[..., bytes]:
            write = writer(asked)
            if asked != kind:
                return write
            return lambda drawn, *options: data(write(sheet(drawn), *options))

        monkeypatch.setattr(fileset, "writer", other)
        monkeypatch.setattr(cutter, "writer", other)

    return breaks


def refusal(request: DraftRequest) -> str:
    """What is said when the set is refused; the set that lies there already has not been touched."""
    before = everything(request.out)
    with pytest.raises(AuditError) as caught:
        draft(request)
    assert everything(request.out) == before
    assert "\n" not in str(caught.value)
    assert "no file was written" in str(caught.value)
    return str(caught.value)


@dataclass(frozen=True, slots=True)
class Fault:
    """How files of a kind are damaged, and what is said of it."""

    kind: str
    words: str
    data: Damage = bytes
    sheet: Callable[[Sheet], Sheet] = lambda each: each


def without(role: Role, number: int = 0) -> Callable[[list[Ink]], list[Ink]]:
    def change(inks: list[Ink]) -> list[Ink]:
        found = [index for index, ink in enumerate(inks) if ink.role is role]
        return [ink for index, ink in enumerate(inks) if index != found[number]]

    return change


def opened(inks: list[Ink]) -> list[Ink]:
    """The outline drawn open, its last line 0.05 mm short of its beginning."""
    *others, outline = inks
    assert isinstance(outline, Stroke)
    short = outline.path.sub(0.0, outline.path.length - 0.05)
    return [*others, Stroke(Role.OUTLINE, short)]


def moved(inks: list[Ink]) -> list[Ink]:
    first, *others = inks
    assert isinstance(first, Dot)
    return [replace(first, centre=first.centre + Point(0.3, 0.0)), *others]


def squared(inks: list[Ink]) -> list[Ink]:
    """The outline in straight lines from joint to joint."""
    *others, outline = inks
    assert isinstance(outline, Stroke)
    return [*others, Stroke(Role.OUTLINE, polygon([segment.start for segment in outline.path.segments]))]


def rounder(inks: list[Ink]) -> list[Ink]:
    """The first arc of the outline with another radius between the same ends."""
    *others, outline = inks
    assert isinstance(outline, Stroke)
    vertices = list(outline.path.vertices)
    arc = next(index for index, vertex in enumerate(vertices) if vertex[2])
    x, y, bulge = vertices[arc]
    vertices[arc] = (x, y, bulge * 0.95)
    return [*others, Stroke(Role.OUTLINE, from_vertices(vertices, closed=True))]


def nicked(inks: list[Ink]) -> list[Ink]:
    """An arc so small in a straight side of the outline that nothing else changes by what decimals take."""
    *others, outline = inks
    assert isinstance(outline, Stroke)
    vertices = list(outline.path.vertices)
    place, side = next((i, each) for i, each in enumerate(outline.path.segments) if not each.is_arc)
    way = side.tangent_at(0.0)
    begin, end = side.start + way, side.start + way * (1 + 1e-4)
    vertices[place + 1 : place + 1] = [(begin.x, begin.y, 0.0025), (end.x, end.y, 0.0)]
    return [*others, Stroke(Role.OUTLINE, from_vertices(vertices, closed=True))]


def reversed_outline(inks: list[Ink]) -> list[Ink]:
    *others, outline = inks
    assert isinstance(outline, Stroke)
    return [*others, Stroke(Role.OUTLINE, outline.path.reversed())]


def first_out(inks: list[Ink]) -> list[Ink]:
    return [inks[-1], *inks[:-1]]


AT = rf"at {NUMBER}, {NUMBER} mm"
FAULTS = {
    "open contour": Fault(
        "dxf", rf"{AT}: an outline is open by 0\.050 mm \(LWPOLYLINE", sheet=redrawn(opened)
    ),
    "contour not marked as closed": Fault(
        "dxf", rf"{AT}: an outline is open by {NUMBER} mm", replaced(r"(LWPOLYLINE[\s\S]*?\n 70\n)1\n", r"\g<1>0\n")
    ),
    "open contour in svg": Fault("svg", rf"{AT}: an outline is open by 0\.050 mm \(path", sheet=redrawn(opened)),
    "line twice": Fault("dxf", rf"{AT}: 1 more line than drawn", sheet=redrawn(lambda inks: [*inks, inks[-1]])),
    "hole twice in svg": Fault("svg", rf"{AT}: 1 more line than drawn", replaced(r"(<circle [^>]*>)", r"\1\1")),
    "wrong unit": Fault("dxf", "the unit is in: ", replaced(r"(\$INSUNITS\n *70\n *)4\n", r"\g<1>1\n")),
    "no unit": Fault("dxf", "the file names no unit", replaced(r"(\$INSUNITS\n *70\n *)4\n", r"\g<1>0\n")),
    "unit in svg": Fault("svg", "its page is", replaced(r'width="([\d.]+)mm"', r'width="\1"')),
    "wrong scale": Fault(
        "dxf", r"measures .* over all and not .*; that is 25\.4 times too large", sheet=lambda s: scaled(s, 25.4)
    ),
    "too small": Fault("svg", r"that is 25\.4 times too small", sheet=lambda each: scaled(each, 1 / 25.4)),
    "other page": Fault("svg", "its page is", replaced(r'height="([\d.]+)mm" ', r'height="1\1mm" ')),
    "wrong release": Fault("dxf", "is of release R2000 and not R2010", replaced("AC1024", "AC1015")),
    "hole missing": Fault("dxf", rf"{AT}: 1 stitch hole missing", sheet=redrawn(without(Role.HOLE, 5))),
    "outline missing": Fault("svg", rf"{AT}: 1 outline missing", sheet=redrawn(without(Role.OUTLINE))),
    "outline first": Fault("dxf", rf"{AT}: a line on OUTLINE where STITCH-HOLE was due", sheet=redrawn(first_out)),
    "hole moved": Fault("dxf", rf"{AT}: a stitch hole lies 0\.300 mm from its place", sheet=redrawn(moved)),
    "corner cut off": Fault("dxf", rf"{AT}: an outline runs another way than it is drawn", sheet=redrawn(squared)),
    "other radius": Fault("svg", rf"{AT}: an outline runs another way", sheet=redrawn(rounder)),
    "smaller radius": Fault("dxf", rf"{AT}: an outline whose smallest radius is 0\.010 mm", sheet=redrawn(nicked)),
    "other way round": Fault("dxf", rf"{AT}: an outline runs another way", sheet=redrawn(reversed_outline)),
    "other layer": Fault("dxf", "a line on CUT where", replaced(r"(CIRCLE[\s\S]*?\n  8\n)STITCH-HOLE", r"\1CUT")),
    "other colour": Fault("svg", "has the colour #ff0000 and not #1a1a1a", replaced("#1a1a1a", "#ff0000", 9)),
    "ellipse": Fault("dxf", "an ellipse", replaced(r"LWPOLYLINE\n", "ELLIPSE\n")),
    "filled": Fault("svg", "is filled", replaced('fill="none"', 'fill="#000000"')),
    "turned into text": Fault("svg", "text A", replaced("</svg>", '<text x="5" y="5">A</text></svg>')),
    "cut short": Fault("dxf", "the file ends before its end mark", lambda data: data[: len(data) // 2]),
    "empty": Fault("svg", "the file is empty", lambda data: b""),
    "another kind": Fault("dxf", "is SVG and not DXF", lambda data: b"<svg xmlns='http://www.w3.org/2000/svg'/>"),
}  # fmt: skip


def scaled(sheet: Sheet, factor: float) -> Sheet:
    def ink(each: Ink) -> Ink:
        if isinstance(each, Dot):
            return Dot(each.role, each.centre * factor, each.diameter * factor)
        assert isinstance(each, Stroke)
        vertices = [(x * factor, y * factor, bulge) for x, y, bulge in each.path.vertices]
        return Stroke(each.role, from_vertices(vertices, each.path.closed))

    figures = tuple(Figure(f.name, f.group, tuple(map(ink, f.inks))) for f in sheet.figures)
    return replace(sheet, figures=figures)


@pytest.mark.parametrize("fault", FAULTS.values(), ids=FAULTS)
def test_a_damaged_file_is_refused_with_its_place_and_the_last_set_stays(
    fault: Fault, tmp_path: Path, broken_writer: Callable[..., None]
) -> None:
    request = DraftRequest(saved(tmp_path), wanted=Wanted.LASER, out=tmp_path / "out")
    assert draft(request).proved == 6
    broken_writer(fault.kind, data=fault.data, sheet=fault.sheet)
    said = refusal(request)
    assert re.search(fault.words, said), said
    assert re.match(rf"laser/sleeve-laser-\w+\.{fault.kind}[: ]", said), said
    assert "please report it" in said


@pytest.mark.parametrize(
    ("fault", "words"),
    [
        (replaced(r"PD[^;]*;(?=\nPU)", "PD400,400;"), "an outline|a stitch hole"),
        (replaced(r"SP1;", "SP2;"), "a line on pen 2 where pen 1 was due"),
        (replaced(r"(PU[^;]+;\nPD[^;]*;\n)", r"\1\1"), "1 more line than drawn"),
        (replaced(r"PU[^;]+;\nPD[^;]*;\n", ""), "1 stitch hole missing"),
        (replaced("IN;", "IN;SC0,100,0,100;"), r"it scales its units \(SC\)"),
        (replaced("PU", "XX"), "the command XX is not known"),
    ],
)
def test_a_damaged_plot_is_refused(
    fault: Damage, words: str, tmp_path: Path, broken_writer: Callable[..., None]
) -> None:
    broken_writer("hpgl", data=fault)
    assert re.search(words, refusal(request_for(tmp_path, PLOT)))
    assert not (tmp_path / "out").exists()


def request_for(folder: Path, machine: Machine, text: str = SLEEVE) -> DraftRequest:
    return DraftRequest(saved(folder, text), wanted=Wanted.LASER, out=folder / "out", machine=machine)


@pytest.mark.parametrize("version", list(DxfVersion))
def test_a_file_for_a_die_is_held_against_the_piece_in_every_release(
    version: DxfVersion, tmp_path: Path, broken_writer: Callable[..., None]
) -> None:
    request = DraftRequest(saved(tmp_path), wanted=Wanted.DIE, out=tmp_path / "out", dxf=version)
    assert draft(request).proved == 2
    broken_writer("dxf", sheet=lambda each: scaled(each, 1.001))
    assert re.search(r"die/sleeve-die-back\.dxf at .*: an outline (lies|is not of its size)", refusal(request))


Change = Callable[[Sheet], Sheet]


@pytest.fixture
def draws_wrongly(monkeypatch: pytest.MonkeyPatch) -> Callable[[Change], None]:
    """Sheets for laser and die come changed from the drawing board, so that files and sheets agree."""

    def changed(change: Change) -> None:
        def drawn(sheets: Callable[..., tuple[Deliverable, ...]]) -> Callable[..., tuple[Deliverable, ...]]:
            return lambda *given: tuple(replace(each, sheet=change(each.sheet)) for each in sheets(*given))

        monkeypatch.setattr(fileset, "laser_sheets", drawn(laser_sheets))
        monkeypatch.setattr(fileset, "die_sheets", drawn(die_sheets))

    return changed


@pytest.mark.parametrize("role", [Role.HOLE, Role.OUTLINE])
def test_what_the_sheet_itself_lacks_is_found_against_the_pattern(
    role: Role, tmp_path: Path, draws_wrongly: Callable[[Change], None]
) -> None:
    draws_wrongly(redrawn(without(role)))
    said = refusal(DraftRequest(saved(tmp_path), wanted=Wanted.LASER, out=tmp_path / "out"))
    assert re.search(rf"holds \d+ {role.value}s?, but the pattern has \d+", said), said


def test_a_piece_of_another_size_is_found_against_the_pattern(
    tmp_path: Path, draws_wrongly: Callable[[Change], None]
) -> None:
    draws_wrongly(lambda sheet: scaled(sheet, 1.01))
    said = refusal(DraftRequest(saved(tmp_path), wanted=Wanted.DIE, out=tmp_path / "out"))
    assert re.search(rf"back is {NUMBER} x {NUMBER} mm, and {NUMBER} x {NUMBER} mm by the pattern", said), said


def test_cuts_that_cross_are_refused_unless_files_are_wanted_despite_findings(
    tmp_path: Path, draws_wrongly: Callable[[Change], None]
) -> None:
    draws_wrongly(redrawn(astray))
    request = DraftRequest(saved(tmp_path), wanted=Wanted.LASER, out=tmp_path / "out")
    said = refusal(request)
    assert re.search(rf"{AT}: crosses or touches", said)
    assert "change the design there" in said
    assert draft(replace(request, on_no=OnNo.WRITE)).proved == 6


def astray(inks: list[Ink]) -> list[Ink]:
    """The first hole on the outline."""
    first, outline = inks[0], inks[-1]
    assert isinstance(first, Dot)
    assert isinstance(outline, Stroke)
    return [replace(first, centre=outline.path.point_at(20.0)), *inks[1:]]


@pytest.mark.parametrize("machine", [PLOT, TABLE, replace(TABLE, kerf=0.2, sanding=0.5)])
@pytest.mark.parametrize("text", [SLEEVE, SLITS])
def test_what_was_asked_for_is_no_fault(machine: Machine, text: str, tmp_path: Path) -> None:
    assert draft(request_for(tmp_path, machine, text)).proved == 3


def test_kerf_and_the_other_face_are_no_fault(tmp_path: Path) -> None:
    drafting = DraftingOptions(laser=LaserOptions(kerf=0.2, gap=4.0))
    request = DraftRequest(saved(tmp_path, SLITS), wanted=Wanted.ALL, out=tmp_path / "out", drafting=drafting)
    assert draft(request).proved == 8


def test_files_for_paper_are_not_proved(tmp_path: Path) -> None:
    assert draft(DraftRequest(saved(tmp_path), wanted=Wanted.PAPER, out=tmp_path / "out")).proved == 0
