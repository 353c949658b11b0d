"""Does the file say mm, and is what it says of a size that leather is cut in?"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from patternforge.audit.flaws import Flaw
from patternforge.audit.model import CutFile, FileKind, Ring
from patternforge.audit.scene import Scene
from patternforge.fit.findings import Verdict
from patternforge.geometry.point import Bounds
from patternforge.units import MM_PER_INCH, mm

__all__ = ["size_flaws", "unit_flaws"]

# What leather goods and the sheets they are cut from measure over all, mm, with much room on either side; and the
# holes that are punched or cut in rows. Common practice, no source.
_SMALLEST, _LARGEST = 12.0, 2200.0
_FINEST, _COARSEST = 0.2, 12.0
_ROW = 6  # as many equal small circles are stitch holes
_PX = {"96": MM_PER_INCH / 96, "90": MM_PER_INCH / 90, "72": MM_PER_INCH / 72}
_UNITLESS = ("R10", "R12")  # releases that can name no unit (DXF reference, HEADER: $INSUNITS)


def unit_flaws(scene: Scene) -> Iterator[Flaw]:
    """A unit that is missing or is not mm."""
    file = scene.file
    if file.kind is FileKind.SVG:
        yield from _page_flaws(file)
    elif file.kind is FileKind.HPGL:
        return  # its unit is the machine's
    elif not file.unit and file.version not in _UNITLESS:
        what = f"the file names no unit: it was taken for mm, {_size(file.extent)}"
        yield Flaw(Verdict.LOOK, "unit", what, "set $INSUNITS to 4 (mm) and export again")
    elif file.unit and file.unit != "mm":
        what = f"the unit is {file.unit}: {_size(file.extent)} in all"
        remedy = "export in mm; if this is not the size, the unit alone is wrong: set $INSUNITS to 4 (mm)"
        yield Flaw(Verdict.LOOK, "unit", what, remedy)


def _page_flaws(file: CutFile) -> Iterator[Flaw]:
    if file.unit in ("", "px"):
        sizes = ", ".join(f"{_size(file.extent, px / file.scale)} at {dpi} dpi" for dpi, px in _PX.items())
        as_mm = f"{_size(file.extent, 1 / file.scale)} if its units are mm"
        what = f"width and height ({file.size}) are not in mm: programs guess; {sizes}, {as_mm}"
        yield Flaw(Verdict.NO, "unit", what, "give width and height in mm, and a viewBox with the same numbers")
    elif file.unit != "mm":
        what = f"width and height ({file.size}) are not in mm"
        yield Flaw(Verdict.LOOK, "unit", what, "give width and height in mm, and a viewBox with the same numbers")
    elif abs(file.scale - 1) > 1e-3:
        dpi = MM_PER_INCH / file.scale
        what = f"one unit of the drawing is {mm(file.scale, 4)} mm ({mm(dpi, 1)} to the inch), not 1 mm"
        remedy = "draw in mm: programs that pass over the viewBox get another size"
        yield Flaw(Verdict.LOOK, "unit", what, remedy)


def size_flaws(scene: Scene) -> Iterator[Flaw]:
    """A drawing so small or so large that it is likely to be in another unit."""
    extent = scene.file.extent
    if extent is None:
        yield Flaw(Verdict.NO, "size", "nothing in the file can be cut", "export the outlines")
        return
    if _is_sensible(scene, extent, 1.0):
        return
    factors = {"inches taken for mm": MM_PER_INCH, "mm taken for inches": 1 / MM_PER_INCH}
    factors |= {"cm taken for mm": 10.0, "mm taken for cm": 0.1, "mm taken for px": 1 / _PX["96"]}
    likely = [word for word, factor in factors.items() if _is_sensible(scene, extent, factor)]
    guess = f"; it would be {_size(extent, factors[likely[0]])} if these are {likely[0]}" if likely else ""
    what = f"{_size(extent)} in all{_holes_said(scene)} is no size for leather goods{guess}"
    yield Flaw(Verdict.NO, "size", what, "compare with the size of the pattern and export in mm")


def _is_sensible(scene: Scene, extent: Bounds, factor: float) -> bool:
    size = max(extent.width, extent.height) * factor
    hole = _stitch_hole(scene)
    return _SMALLEST <= size <= _LARGEST and (hole is None or _FINEST <= hole * factor <= _COARSEST)


def _stitch_hole(scene: Scene) -> float | None:
    """The diameter of the most frequent circle, if there is a row of it."""
    rings = Counter(round(2 * each.shape.radius, 3) for each in scene.cuts if isinstance(each.shape, Ring))
    diameter, count = max(rings.items(), key=lambda item: item[1], default=(0.0, 0))
    return diameter if count >= _ROW else None


def _holes_said(scene: Scene) -> str:
    hole = _stitch_hole(scene)
    return "" if hole is None else f", with holes of {mm(hole)} mm,"


def _size(extent: Bounds | None, factor: float = 1.0) -> str:
    return "" if extent is None else f"{mm(extent.width * factor)} x {mm(extent.height * factor)} mm"
