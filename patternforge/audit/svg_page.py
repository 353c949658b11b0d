"""The page of an SVG file: how large it says it is, how its units become mm (SVG 1.1, sections 7.7, 7.8, 7.10)."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from patternforge.audit.affine import IDENTITY, Affine, scaling, translation
from patternforge.audit.model import Odd, Oddity
from patternforge.audit.svg_tree import Element
from patternforge.audit.svg_values import MM_PER_PX, Measure, measure, numbers, user_length
from patternforge.geometry.point import Bounds

__all__ = ["Page", "page", "viewport"]

_SAME = 1e-3  # relative; width and height that disagree with the viewBox by less are rounded


@dataclass(frozen=True, slots=True)
class Page:
    """``unit`` is that of width and height, empty when they say none; ``scale`` mm to one unit of the drawing;
    ``size`` both as written; ``onto_page`` leads from the units of the drawing to mm with y up."""

    unit: str
    scale: float
    size: str
    box: Bounds | None
    onto_page: Affine
    oddities: tuple[Oddity, ...]


def page(root: Element) -> Page:
    """The page of a file."""
    width, height = measure(root.get("width", "100%")), measure(root.get("height", "100%"))
    view = numbers(root.get("viewBox"))
    view = view if len(view) == 4 and view[2] > 0 and view[3] > 0 else []
    across, up = _side(width, view[2:3]), _side(height, view[3:4])
    left, top, wide, high = view or (0.0, 0.0, across / MM_PER_PX, up / MM_PER_PX)
    scales = (across / wide, up / high) if view else (MM_PER_PX, MM_PER_PX)
    odd = tuple(_oddities(root, view, *scales))
    lies = root.get("preserveAspectRatio", "xMidYMid").split() or ["xMidYMid"]
    if lies[0] != "none":
        scales = (max(scales),) * 2 if "slice" in lies else (min(scales),) * 2
    free = (across - wide * scales[0], up - high * scales[1])
    aside, down = (_share(lies[0], way) * room for way, room in zip("xY", free, strict=True))
    seat = translation(aside, up - down).after(scaling(scales[0], -scales[1]))
    box = Bounds(0.0, 0.0, across, up) if across and up else None
    written = f"{root.get('width') or 'none'} x {root.get('height') or 'none'}"
    return Page(_unit(width, height), scales[0], written, box, seat.after(translation(-left, -top)), odd)


def _share(lies: str, way: str) -> float:
    """How much of the free room lies before the drawing (``xMidYMin`` and the like; section 7.8)."""
    return {"Min": 0.0, "Max": 1.0}.get(lies.partition(way)[2][:3], 0.0 if lies == "none" else 0.5)


def _unit(width: Measure | None, height: Measure | None) -> str:
    """The unit both sides share; empty when either says none."""
    if width is None or height is None or width.mm is None or height.mm is None:
        return ""
    return width.unit.lower() if width.unit.lower() == height.unit.lower() else f"{width.unit} and {height.unit}"


def _side(said: Measure | None, view: list[float]) -> float:
    """A side of the page in mm; a number without a unit is px, and without a number the viewBox is."""
    if said is not None and said.mm is not None:
        return said.mm
    if said is not None and not said.unit:
        return said.number * MM_PER_PX
    return view[0] * MM_PER_PX if view else 0.0


def _oddities(root: Element, view: list[float], scale: float, tall: float) -> Iterator[Oddity]:
    if root.get("viewBox") and not view:
        yield Oddity(Odd.BROKEN, None, f"its viewBox is {root.get('viewBox')!r}, which is no box")
    if view and abs(scale - tall) > _SAME * max(scale, tall):
        words = f"a unit is {scale:.4g} mm across and {tall:.4g} mm up by width, height and viewBox"
        yield Oddity(Odd.UNEVEN, None, words)


def viewport(symbol: Element, use: Element) -> Affine:
    """What a symbol or an inner drawing does to what is in it: its viewBox laid on its width and height."""
    view = numbers(symbol.get("viewBox"))
    if len(view) != 4 or view[2] <= 0 or view[3] <= 0:
        return IDENTITY
    width = user_length(use.get("width") or symbol.get("width"), view[2])
    height = user_length(use.get("height") or symbol.get("height"), view[3])
    factor = min(width / view[2], height / view[3])
    middle = translation((width - view[2] * factor) / 2, (height - view[3] * factor) / 2)
    return middle.after(scaling(factor, factor)).after(translation(-view[0], -view[1]))
