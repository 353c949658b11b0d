"""DXF files each with one thing wrong: how each is made, what is to be found, and where."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import partial
from math import cos, pi, sin

from ezdxf.document import Drawing
from ezdxf.entities.lwpolyline import LWPolyline
from ezdxf.layouts.layout import Modelspace
from ezdxf.math import Vec3

from patternforge.export.dxf import DxfVersion
from tests.unit.audit.clean import clean_dxf, dxf_of, opened, written

__all__ = ["DXF_FAULTS", "Fault"]

ON_CUT = {"layer": "OUTLINE"}


@dataclass(frozen=True, slots=True)
class Fault:
    """A damaged file, the kind of flaw that it has, and its place (None: the file as a whole)."""

    name: str
    text: str
    kind: str
    at: tuple[float, float] | None = None


def _changed(change: Callable[[Drawing, Modelspace], object], version: DxfVersion = DxfVersion.R2010) -> str:
    document = opened(version)
    change(document, document.modelspace())
    return written(document)


def _replaced(pattern: str, by: str, version: DxfVersion = DxfVersion.R2010) -> str:
    text, count = re.subn(pattern, by, clean_dxf(version), count=1)
    assert count == 1, pattern
    return text


def _added(*points: tuple[float, float], close: bool = False, **more: object) -> str:
    attributes = {**ON_CUT, **more}
    return _changed(lambda _, space: space.add_lwpolyline(points, close=close, dxfattribs=attributes))


def _outline(document: Drawing, space: Modelspace, number: int = 0) -> LWPolyline:
    return [each for each in space if isinstance(each, LWPolyline) and each.dxf.layer == "OUTLINE"][number]


def _with_outline(change: Callable[..., object]) -> str:
    return _changed(lambda document, space: change(space, _outline(document, space)))


def _opened_by(space: Modelspace, outline: LWPolyline, gap: float) -> None:
    """The left outline as an open polyline that ends ``gap`` mm before it closes, on its upright left side."""
    points = list(outline.get_points("xyb"))
    x, y, _ = points[0]
    space.add_lwpolyline(
        [(10, 40 - gap, 0), (10, 15, points[-1][2]), *points[:-1], (10, 40, 0)], "xyb", dxfattribs=ON_CUT
    )
    assert (x, y) == (15, 10)
    space.delete_entity(outline)


def _exploded(space: Modelspace, outline: LWPolyline) -> None:
    for part in list(outline.explode()):
        part.dxf.layer = "OUTLINE"


def _exploded_with_gap(space: Modelspace, outline: LWPolyline) -> None:
    _exploded(space, outline)
    bottom = next(each for each in space if each.dxftype() == "LINE" and each.dxf.start.isclose(Vec3(15, 10)))
    bottom.dxf.end = (104.8, 10)


def _shifted_lines(space: Modelspace, outline: LWPolyline) -> None:
    """Outline of separate lines whose top line ends beyond the corner and is cut again by the next."""
    for start, end in (((10, 85), (50, 85)), ((50, 85), (50, 89)), ((50, 89), (10, 89)), ((10, 89), (10, 85))):
        space.add_line(start, end, dxfattribs=ON_CUT)
    space.add_line((50, 87), (50, 89.5), dxfattribs=ON_CUT)


def _doubled(space: Modelspace, outline: LWPolyline) -> None:
    space.add_entity(outline.copy())


def _doubled_backwards(space: Modelspace, outline: LWPolyline) -> None:
    points = [(10, 15), (10, 75), (15, 80), (105, 80), (110, 75), (110, 15), (105, 10), (15, 10)]
    bulge = -0.41421356237309503
    twin = [(x, y, bulge if i % 2 else 0) for i, (x, y) in enumerate(points)]
    space.add_lwpolyline(twin, "xyb", close=True, dxfattribs=ON_CUT)


def _stacked(document: Drawing, space: Modelspace) -> None:
    for each in list(space)[:26]:
        space.add_entity(each.copy())


def _polygon_of(count: int, centre: tuple[float, float], radius: float) -> list[tuple[float, float]]:
    turns = (2 * pi * i / count for i in range(count))
    return [(centre[0] + radius * cos(t), centre[1] + radius * sin(t)) for t in turns]


def _facetted_corner(space: Modelspace, outline: LWPolyline) -> None:
    corner = [(105 + 5 * cos(t * pi / 48), 75 + 5 * sin(t * pi / 48)) for t in range(25)]
    points = [(15.0, 10.0), (110.0, 10.0), *corner, (10.0, 80.0), (10.0, 10.0)]
    space.add_lwpolyline(points[:-1], close=True, dxfattribs=ON_CUT)
    space.delete_entity(outline)


def _with_block(document: Drawing, space: Modelspace, **scale: float) -> None:
    block = document.blocks.new("SNAP", base_point=(1, 1))
    block.add_circle((1, 1), 2, dxfattribs={"layer": "0"})
    space.add_blockref("SNAP", (150, 40), dxfattribs={"layer": "OPENING", **scale})


def _nested(document: Drawing, space: Modelspace) -> None:
    inner = document.blocks.new("STUD")
    inner.add_circle((0, 0), 2, dxfattribs={"layer": "0"})
    document.blocks.new("SNAP").add_blockref("STUD", (3, 0), dxfattribs={"layer": "0"})
    space.add_blockref("SNAP", (150, 40), dxfattribs={"layer": "OPENING", "rotation": 90})


def _hatched(document: Drawing, space: Modelspace) -> None:
    hatch = space.add_hatch(color=1, dxfattribs=ON_CUT)
    hatch.paths.add_polyline_path([(140, 30), (150, 30), (150, 40)], is_closed=True)


def _dimensioned(document: Drawing, space: Modelspace) -> None:
    space.add_linear_dim(base=(60, 85), p1=(10, 82), p2=(110, 82), dxfattribs=ON_CUT).render()


def _on_layer(state: str, document: Drawing, space: Modelspace) -> None:
    layer = document.layers.add("NOTES")
    getattr(layer, state)()
    space.add_circle((150, 40), 3, dxfattribs={"layer": "NOTES"})


def _invisible(document: Drawing, space: Modelspace) -> None:
    space.add_circle((150, 40), 3, dxfattribs={"layer": "OPENING", "invisible": 1})


def _on_paper(document: Drawing, space: Modelspace) -> None:
    document.layout("Layout1").add_circle((20, 20), 3, dxfattribs={"layer": "OUTLINE"})


def _old_light() -> str:
    """R12 as some programs write it: with a light polyline, which that release does not know."""
    corners = "".join(f" 10\n{x}\n 20\n{y}\n" for x, y in ((140.0, 30.0), (150.0, 30.0), (150.0, 40.0)))
    light = f"  0\nLWPOLYLINE\n  8\nOUTLINE\n 90\n3\n 70\n1\n{corners}"
    text = clean_dxf(DxfVersion.R12)
    head, entities, rest = text.partition("ENTITIES\n")
    return head + entities + light + rest


def _scaled(factor: float, version: DxfVersion = DxfVersion.R2010, unit: int | None = None) -> str:
    document = opened(version)
    from ezdxf.math import Matrix44

    for each in document.modelspace():
        each.transform(Matrix44.scale(factor))
    if unit is not None:
        document.header["$INSUNITS"] = unit
    return written(document)


def _lifted(document: Drawing, space: Modelspace) -> None:
    space.add_circle((150, 40, 5), 3, dxfattribs={"layer": "OPENING"})


def _from_behind(document: Drawing, space: Modelspace) -> None:
    space.add_circle((-150, 40), 3, dxfattribs={"layer": "OPENING", "extrusion": (0, 0, -1)})


def _outline_first(space: Modelspace, outline: LWPolyline) -> None:
    for each in [each for each in list(space) if each is not outline]:
        space.unlink_entity(each)
        space.add_entity(each)


def _far(document: Drawing, space: Modelspace) -> None:
    from ezdxf.math import Matrix44

    for each in space:
        each.transform(Matrix44.translate(12000, 500, 0))


def _old_smooth(document: Drawing, space: Modelspace) -> None:
    line = space.add_polyline2d([(140, 30), (150, 30), (150, 40)], close=True, dxfattribs=ON_CUT)
    line.dxf.flags |= 4


def _faults() -> Iterator[Fault]:
    yield from _open_faults()
    yield from _double_faults()
    yield from _crossing_faults()
    yield from _bit_faults()
    yield from _kind_faults()
    yield from _unit_faults()
    yield from _order_and_look_faults()


def _open_faults() -> Iterator[Fault]:
    for gap in (0.005, 0.05, 0.4):
        text = _with_outline(lambda space, outline, gap=gap: _opened_by(space, outline, gap))
        yield Fault(f"outline open by {gap:g}", text, "open contour", (10, 40 - gap / 2))
    yield Fault("line of an outline too short", _with_outline(_exploded_with_gap), "open contour", (104.9, 10))
    yield Fault("outline in separate lines", _with_outline(_exploded), "contour in parts", (15, 10))
    ends = [(140.0, 30.0), (150.0, 30.0), (150.0, 40.0), (140.0, 30.0)]
    yield Fault("closed by its ends alone", _added(*ends), "contour in parts", (140, 30))
    yield Fault("side missing", _added((20, 85), (60, 85), (60, 89)), "loose line", (20, 85))
    less = _replaced(r"(AcDbPolyline\n *90\n\d+\n(?:.*\n)*?) *10\n.*\n *20\n.*\n", r"\1")
    yield Fault("vertex lost from an outline", less, "broken")
    half = _replaced(r"(AcDbPolyline\n(?:.*\n)*? *10\n.*\n) *20\n.*\n", r"\1")
    yield Fault("half of a vertex lost from an outline", half, "broken")
    yield Fault("bulge left over", _changed(_stray_bulge), "bulge on the last vertex of an open polyline", (150, 40))


def _stray_bulge(document: Drawing, space: Modelspace) -> None:
    space.add_lwpolyline([(140, 40, 0), (150, 40, 0.5)], "xyb", dxfattribs={"layer": "MARK"})


def _double_faults() -> Iterator[Fault]:
    yield Fault("outline twice", _with_outline(_doubled), "drawn twice", (60, 10))
    yield Fault("outline twice, once each way", _with_outline(_doubled_backwards), "drawn twice", (60, 10))
    arcs = _changed(lambda _, space: _arcs_both_ways(space))
    yield Fault("arc over an arc the other way", arcs, "drawn twice", (160 + 5 * cos(pi / 4), 40 + 5 * sin(pi / 4)))
    yield Fault("hole twice", _changed(lambda _, s: s.add_circle((16, 13), 0.5)), "drawn twice", (16, 13.5))
    twin = _changed(lambda _, s: s.add_circle((16.008, 13), 0.505))
    yield Fault("hole nearly twice", twin, "drawn twice", (16, 13.5))
    along = _changed(lambda _, s: s.add_line((30, 10.01), (50, 10.01), dxfattribs=ON_CUT))
    yield Fault("line along an outline", along, "drawn twice", (40, 10))
    part = _changed(lambda _, s: s.add_line((90, 10), (120, 10), dxfattribs=ON_CUT))
    yield Fault("line partly along an outline", part, "drawn twice", (97.5, 10))
    yield Fault("piece on its copy", _changed(_stacked), "drawn twice", (15, 10))
    back = _added((140, 40), (150, 40), (143, 40))
    yield Fault("line back over itself", back, "drawn twice", (146.5, 40))
    twins = _with_outline(_outlined)
    yield Fault("line turned into its outline", twins, "outlined line", (15, 10.05))
    rings = _changed(lambda _, s: [s.add_circle((150, 40), r, dxfattribs={"layer": "OPENING"}) for r in (3, 3.1)])
    yield Fault("hole turned into its outline", rings, "outlined line", (153, 40))
    half = _changed(lambda _, s: s.add_arc((16, 13), 0.5, 0, 180))
    yield Fault("arc over a hole", half, "drawn twice", (16, 13.5))


def _outlined(space: Modelspace, outline: LWPolyline) -> None:
    """The left outline as the two sides of a line 0.1 mm wide."""
    for points in _sides_of_line(0.05), _sides_of_line(-0.05):
        space.add_lwpolyline(points, "xyb", close=True, dxfattribs=ON_CUT)
    space.delete_entity(outline)


def _sides_of_line(off: float) -> list[tuple[float, float, float]]:
    left, right, bottom, top = 10 - off, 110 + off, 10 - off, 80 + off
    ends = [(15, bottom), (105, bottom), (right, 15), (right, 75), (105, top), (15, top), (left, 75), (left, 15)]
    return [(x, y, 0.41421356237309503 if i % 2 else 0) for i, (x, y) in enumerate(ends)]


def _arcs_both_ways(space: Modelspace) -> None:
    space.add_lwpolyline([(165, 40, 0.41421356237309503), (160, 45, 0)], "xyb", dxfattribs={"layer": "MARK"})
    space.add_lwpolyline([(160, 45, -0.41421356237309503), (165, 40, 0)], "xyb", dxfattribs={"layer": "MARK"})


def _crossing_faults() -> Iterator[Fault]:
    bow = _added((140, 30), (150, 40), (150, 30), (140, 40), close=True)
    yield Fault("bow tie", bow, "crossing", (145, 35))
    eight = _added((140, 30), (145, 35), (150, 30), (150, 40), (145, 35), (140, 40), close=True)
    yield Fault("touching itself in a corner", eight, "crossing", (145, 35))
    over = _changed(lambda _, s: s.add_circle((110, 40), 3, dxfattribs={"layer": "OPENING"}))
    yield Fault("hole over the outline", over, "crossing", (110, 43))
    two = _changed(lambda _, s: s.add_circle((16.9, 13), 0.5, dxfattribs={"layer": "STITCH-HOLE"}))
    yield Fault("holes run into one another", two, "crossing", (16.45, 13.218))
    out = _changed(lambda _, s: s.add_line((105, 30), (115, 30), dxfattribs={"layer": "MARK"}))
    yield Fault("mark out of the piece", out, "crossing", (110, 30))
    yield Fault("line beyond a corner", _with_outline(_shifted_lines), "drawn twice", (50, 88))


def _bit_faults() -> Iterator[Fault]:
    sliver = _added((140, 30), (150, 30), (150.01, 30.02), (150, 40), close=True)
    yield Fault("tiny line", sliver, "tiny line", (150, 30))
    zero = _changed(lambda _, s: s.add_line((150, 40), (150, 40), dxfattribs={"layer": "MARK"}))
    yield Fault("line without length", zero, "line without length", (150, 40))
    twice = _added((140, 30), (150, 30), (150, 30), (150, 40), close=True)
    yield Fault("corner given twice", twice, "line without length", (150, 30))
    point = _changed(lambda _, s: s.add_circle((150, 40), 0, dxfattribs={"layer": "MARK"}))
    yield Fault("circle without radius", point, "line without length", (150, 40))
    hole = _changed(lambda _, s: s.add_lwpolyline(_polygon_of(96, (150, 40), 6), close=True, dxfattribs=ON_CUT))
    yield Fault("circle of 96 bits", hole, "broken arc", (144, 40))
    yield Fault("corner of 24 bits", _with_outline(_facetted_corner), "broken arc", (108.5355, 78.5355))
    fine = _changed(lambda _, s: _lines(s, _polygon_of(64, (150, 40), 6)))
    yield Fault("circle of 64 lines", fine, "broken arc", (144, 40))


def _lines(space: Modelspace, corners: list[tuple[float, float]]) -> None:
    for start, end in zip(corners, [*corners[1:], corners[0]], strict=True):
        space.add_line(start, end, dxfattribs={"layer": "OPENING"})


def _kind_faults() -> Iterator[Fault]:
    spline = _changed(lambda _, s: s.add_spline([(140, 30), (150, 35), (160, 30)], dxfattribs=ON_CUT))
    yield Fault("spline of fit points", spline, "spline", (140, 30))
    control = _changed(
        lambda _, s: s.add_open_spline([(140, 30), (150, 45), (160, 30), (165, 40)], dxfattribs=ON_CUT)
    )
    yield Fault("spline of control points", control, "spline", (140, 30))
    yield Fault("smoothed polyline", _changed(_old_smooth), "spline", (140, 30))
    ellipse = _changed(lambda _, s: s.add_ellipse((150, 40), (6, 0), 0.5, dxfattribs=ON_CUT))
    yield Fault("ellipse", ellipse, "ellipse", (156, 40))
    yield Fault("text", _changed(lambda _, s: s.add_text("A").set_placement((150, 40))), "text", (150, 40))
    many = _changed(lambda _, s: s.add_mtext("A", dxfattribs={"insert": (150, 40)}))
    yield Fault("text in lines", many, "text", (150, 40))
    yield Fault("block", _changed(_with_block), "block", (150, 40))
    yield Fault("block in a block", _changed(_nested), "block", (150, 43))
    uneven = _changed(lambda d, s: _with_block(d, s, xscale=2.0, yscale=1.0))
    yield Fault("block scaled unevenly", uneven, "scaled unevenly", (150, 40))
    missing = _changed(lambda _, s: s.add_blockref("NOWHERE", (150, 40), dxfattribs=ON_CUT))
    yield Fault("block that is not there", missing, "broken", (150, 40))
    yield Fault("hatch", _changed(_hatched), "hatch", None)
    yield Fault("dimension", _changed(_dimensioned), "dimension", None)
    yield Fault("point", _changed(lambda _, s: s.add_point((150, 40), dxfattribs=ON_CUT)), "point", (150, 40))
    solid = _changed(lambda _, s: s.add_solid([(150, 40), (155, 40), (150, 45)], dxfattribs=ON_CUT))
    yield Fault("filled corner", solid, "hatch", (150, 40))
    face = _changed(lambda _, s: s.add_3dface([(150, 40), (155, 40), (150, 45)], dxfattribs=ON_CUT))
    yield Fault("face in space", face, "thing that cannot be cut", (150, 40))
    yield Fault("above the plane", _changed(_lifted), "drawn above or below the plane", (150, 40))
    rising = _changed(lambda _, s: s.add_line((150, 40, 0), (155, 40, 2), dxfattribs={"layer": "MARK"}))
    yield Fault("rising out of the plane", rising, "drawn above or below the plane", (150, 40))
    course = [(150, 40, 1.5), (155, 40, 1.5), (155, 45, 1.5)]
    space_line = _changed(lambda _, s: s.add_polyline3d(course, close=True, dxfattribs={"layer": "OPENING"}))
    yield Fault("polyline in space", space_line, "drawn above or below the plane", (150, 40))
    yield Fault("drawn from behind", _changed(_from_behind), "drawn in a plane of its own", (150, 40))
    yield Fault("light polyline in R12", _old_light(), "light polyline in R12", (140, 30))


def _unit_faults() -> Iterator[Fault]:
    for name, value in (("no unit", "0"), ("inches", "1"), ("cm", "5"), ("m", "6")):
        yield Fault(f"says {name}", _replaced(r"(\$INSUNITS\n *70\n *)4\n", rf"\g<1>{value}\n"), "unit")
    yield Fault("says nothing of units", _replaced(r"  9\n\$INSUNITS\n *70\n *4\n", ""), "unit")
    mixed = _replaced(r"(\$MEASUREMENT\n *70\n *)1\n", r"\g<1>0\n")
    yield Fault("says mm and inches", mixed, "broken")
    yield Fault("25.4 times too large", _scaled(25.4), "size")
    yield Fault("25.4 times too small", _scaled(1 / 25.4), "size")
    yield Fault("inches under the sign of mm in R12", _scaled(1 / 25.4, DxfVersion.R12), "size")
    yield Fault("mm under the sign of inches", _replaced(r"(\$INSUNITS\n *70\n *)4\n", r"\g<1>1\n"), "size")
    yield Fault("ten times too small", _scaled(0.1), "size")
    empty = dxf_of("R2010")
    yield Fault("nothing to cut", written(empty), "size")


def _order_and_look_faults() -> Iterator[Fault]:
    yield Fault("outline first", _with_outline(_outline_first), "order", (15, 10))
    stray = _changed(lambda _, s: s.add_circle((120, 40), 0.5, dxfattribs={"layer": "STITCH-HOLE"}))
    yield Fault("hole beside the pieces", stray, "hole outside", (120.5, 40))
    inner = _changed(lambda _, s: s.add_circle((60, 45), 2, dxfattribs={"layer": "OPENING"}))
    yield Fault("hole in a window", inner, "in an opening", (62, 45))
    zero = _changed(lambda _, s: s.add_circle((150, 40), 3, dxfattribs={"layer": "0"}))
    yield Fault("on layer 0", zero, "layer 0", (150, 40))
    red = _changed(lambda _, s: s.add_circle((150, 40), 3, dxfattribs={"layer": "OPENING", "color": 1}))
    yield Fault("colour of its own", red, "colours", (150, 40))
    for state in ("off", "freeze"):
        text = _changed(partial(_on_layer, state))
        yield Fault(f"layer {state}", text, "hidden", (150, 40))
    yield Fault("invisible", _changed(_invisible), "hidden", (150, 40))
    yield Fault("on paper", _changed(_on_paper), "drawn on a paper layout", (20, 20))
    yield Fault("far from the origin", _changed(_far), "far off", (12010, 510))
    lost = _changed(lambda _, s: s.add_circle((9000, 40), 3, dxfattribs={"layer": "OPENING"}))
    yield Fault("hole far from the rest", lost, "far off", (9000, 40))
    wide = _added((140, 30), (150, 30), (150, 40), close=True, const_width=2.0)
    yield Fault("wide line", wide, "wide line", (140, 30))
    yield Fault("dashed outline", _changed(_dashed), "dashed", (15, 10))


def _dashed(document: Drawing, space: Modelspace) -> None:
    document.linetypes.add("DASHED", [6.0, 4.0, -2.0])
    _outline(document, space).dxf.linetype = "DASHED"


DXF_FAULTS = tuple(_faults())
