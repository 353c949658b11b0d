"""SVG files each with one thing wrong: how each is made, what is to be found, and where (mm from the lower left)."""

from __future__ import annotations

import re
from collections.abc import Iterator
from math import cos, pi, sin

from tests.unit.audit.clean import HEIGHT, WIDTH, clean_svg
from tests.unit.audit.dxf_faults import Fault

__all__ = ["SVG_FAULTS"]

_STROKE = 'fill="none" stroke="#000" stroke-width="0.2"'


def _with(element: str, before: str = "</svg>") -> str:
    text = clean_svg()
    assert before in text
    return text.replace(before, f"{element}{before}")


def _drawn(data: str, more: str = "") -> str:
    return _with(f'<path d="{data}" {_STROKE} {more}/>')


def _replaced(pattern: str, by: str) -> str:
    text, count = re.subn(pattern, by, clean_svg(), count=1)
    assert count == 1, pattern
    return text


def _sized(width: str, height: str, view: str | None = None) -> str:
    text = re.sub(r' (width|height)="[^"]*mm"', "", clean_svg())
    text = re.sub(r' viewBox="[^"]*"', "" if view is None else f' viewBox="{view}"', text)
    sizes = "".join(f' {name}="{value}"' for name, value in (("width", width), ("height", height)) if value)
    return text.replace("<svg ", f"<svg{sizes} ", 1)


def _in_px(dpi: float) -> str:
    """The drawing as programs write it that reckon in px: units of one px, size in px or in nothing."""
    factor = dpi / 25.4
    text = _sized(
        f"{WIDTH * factor:.4f}px", f"{HEIGHT * factor:.4f}px", f"0 0 {WIDTH * factor:.4f} {HEIGHT * factor:.4f}"
    )
    head, close, rest = text.partition("<defs />")
    return f'{head}{close}<g transform="scale({factor:.6f})">{rest.replace("</svg>", "</g></svg>")}'


def _in_units_of_px(dpi: float) -> str:
    """Right in mm by its viewBox, but drawn in px."""
    factor = dpi / 25.4
    text = _sized(f"{WIDTH}mm", f"{HEIGHT}mm", f"0 0 {WIDTH * factor:.4f} {HEIGHT * factor:.4f}")
    head, close, rest = text.partition("<defs />")
    return f'{head}{close}<g transform="scale({factor:.6f})">{rest.replace("</svg>", "</g></svg>")}'


def _faults() -> Iterator[Fault]:
    yield from _page_faults()
    yield from _contour_faults()
    yield from _look_faults()
    yield from _kind_faults()


def _page_faults() -> Iterator[Fault]:
    for dpi in (72, 90, 96):
        yield Fault(f"px at {dpi} dpi", _in_px(dpi), "unit")
        yield Fault(f"units of {dpi} dpi", _in_units_of_px(dpi), "unit")
    yield Fault("no size at all", _sized("", ""), "unit")
    yield Fault("viewBox alone", _sized("", "", f"0 0 {WIDTH} {HEIGHT}"), "unit")
    yield Fault("size without unit", _sized("210", "90", f"0 0 {WIDTH} {HEIGHT}"), "unit")
    yield Fault("size in per cent", _sized("100%", "100%", f"0 0 {WIDTH} {HEIGHT}"), "unit")
    yield Fault("size in inches", _sized("8.2677in", "3.5433in", f"0 0 {WIDTH} {HEIGHT}"), "unit")
    yield Fault("25.4 times too large", _sized("210in", "90in", f"0 0 {WIDTH} {HEIGHT}"), "size")
    yield Fault("too small", _sized("8.27mm", "3.543mm", f"0 0 {WIDTH} {HEIGHT}"), "size")
    yield Fault(
        "higher than wide by its viewBox", _sized("210mm", "99mm", f"0 0 {WIDTH} {HEIGHT}"), "scaled unevenly"
    )
    yield Fault("no box", _sized("210mm", "90mm", "0 0 210"), "broken")
    off = _with(f'<circle cx="300" cy="40" r="20" {_STROKE}/>')
    yield Fault("off the page", off, "off the page", (300, 50))


def _contour_faults() -> Iterator[Fault]:
    yield Fault("open by 0.05", _drawn("M140 40H150V50H140V40.05"), "open contour", (140, 49.975))
    yield Fault("not closed", _drawn("M140 40H150V50H140V40"), "contour in parts", (140, 50))
    outline = re.findall(r'<path d="(M[^"]*Z)"', clean_svg())[-1]
    yield Fault("outline twice", _drawn(outline), "drawn twice", (165, 10))
    twins = _drawn("M140 40H160V55H140Z")
    twins = twins.replace("</svg>", f'<path d="M140.1 40.1H159.9V54.9H140.1Z" {_STROKE}/></svg>')
    yield Fault("line turned into its outline", twins, "outlined line", (140.1, 49.9))
    yield Fault("hole twice", _with(f'<circle cx="16" cy="77" r="0.5" {_STROKE}/>'), "drawn twice", (16, 13.5))
    yield Fault("bow tie", _drawn("M140 40L150 50V40L140 50Z"), "crossing", (145, 45))
    yield Fault("tiny line", _drawn("M140 40H150L150.01 40.02V50Z"), "tiny line", (150, 50))
    yield Fault(
        "line without length",
        _with(f'<line x1="140" y1="50" x2="140" y2="50" {_STROKE}/>'),
        "line without length",
        (140, 40),
    )
    bits = " ".join(f"{x:.4f},{y:.4f}" for x, y in _corners())
    yield Fault("circle of 72 bits", _with(f'<polygon points="{bits}" {_STROKE}/>'), "broken arc", (144, 50))
    yield Fault(
        "hole beside the pieces", _with(f'<circle cx="120" cy="50" r="0.5" {_STROKE}/>'), "hole outside", (120.5, 40)
    )
    outline_first = clean_svg().replace('<g class="piece"', f'<path d="{outline}" {_STROKE}/><g class="piece"', 1)
    yield Fault("outline first", _without_last_outline(outline_first), "order", (135, 10))


def _without_last_outline(text: str) -> str:
    """Without the outline where it belongs, at the end."""
    head, _, tail = text.rpartition("<path ")
    return head + tail.partition("/>")[2]


def _corners() -> list[tuple[float, float]]:
    return [(150 + 6 * cos(pi * i / 36), 40 + 6 * sin(pi * i / 36)) for i in range(72)]


def _look_faults() -> Iterator[Fault]:
    yield Fault(
        "filled", _with('<circle cx="150" cy="50" r="3" stroke="#000" stroke-width="0.2"/>'), "filled", (150, 40)
    )
    wide = _with('<circle cx="150" cy="50" r="3" fill="none" stroke="#000" stroke-width="2"/>')
    yield Fault("wide line", wide, "wide line", (150, 40))
    grown = _with(f'<g transform="scale(10)"><circle cx="15" cy="5" r="0.3" {_STROKE}/></g>')
    yield Fault("line widened by its group", grown, "wide line", (150, 40))
    for how in ('display="none"', 'visibility="hidden"', 'opacity="0"', 'style="display:none"'):
        yield Fault(
            f"hidden by {how}", _with(f'<circle cx="150" cy="50" r="3" {_STROKE} {how}/>'), "hidden", (150, 40)
        )
    none = _with('<circle cx="150" cy="50" r="3" fill="none" stroke="none"/>')
    yield Fault("neither line nor fill", none, "hidden", (150, 40))
    sheet = _with(f'<style>.n, #z {{ display: none; }}</style><circle class="n" cx="150" cy="50" r="3" {_STROKE}/>')
    yield Fault("hidden by a style sheet", sheet, "hidden", (150, 40))
    clip = '<clipPath id="c"><rect x="140" y="40" width="8" height="8"/></clipPath>'
    clipped = _with(f'{clip}<circle cx="150" cy="50" r="3" {_STROKE} clip-path="url(#c)"/>')
    yield Fault("clipped", clipped, "clipped", (150, 40))
    yield Fault(
        "dashed outline", _replaced('class="outline" ', 'class="outline" stroke-dasharray="2 1" '), "dashed", (15, 10)
    )


def _kind_faults() -> Iterator[Fault]:
    yield Fault("curve", _drawn("M140 40C145 35 150 45 155 40V50H140Z"), "curve", (140, 50))
    yield Fault("smooth curve", _drawn("M140 40Q145 35 150 40T160 40V50H140Z"), "curve", (140, 50))
    yield Fault("ellipse", _with(f'<ellipse cx="150" cy="50" rx="6" ry="3" {_STROKE}/>'), "ellipse", (156, 40))
    yield Fault("elliptic corner", _drawn("M140 40H150A4 2 0 0 1 154 42V50H140Z"), "ellipse", (140, 50))
    yield Fault("text", _with('<text x="150" y="50">A</text>'), "text", (150, 40))
    yield Fault("picture", _with('<image x="150" y="50" width="5" height="5" href="a.png"/>'), "picture", (150, 40))
    used = _with(f'<defs><circle id="h" r="3" {_STROKE}/></defs><use href="#h" x="150" y="50"/>')
    yield Fault("unlinked copy", used, "block", (150, 40))
    yield Fault("copy of nothing", _with('<use href="#nowhere" x="150" y="50"/>'), "broken", (150, 40))
    uneven = _with(f'<g transform="scale(2 1)"><circle cx="75" cy="50" r="3" {_STROKE}/></g>')
    yield Fault("scaled unevenly", uneven, "scaled unevenly", (150, 40))
    skewed = _with(f'<path transform="translate(150 50) skewX(20)" d="M0 0H5V5H0Z" {_STROKE}/>')
    yield Fault("skewed", skewed, "scaled unevenly", (150, 40))


SVG_FAULTS = tuple(_faults())
