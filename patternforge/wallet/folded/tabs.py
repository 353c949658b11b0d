"""Tabs and their slits. A slit is as long as its tab is wide and one thickness more, and one thickness wide."""

from __future__ import annotations

from patternforge.errors import DraftError
from patternforge.geometry.path import Path, from_vertices
from patternforge.geometry.point import Point
from patternforge.geometry.segment import Segment
from patternforge.wallet.folded.faces import ENDS, Face
from patternforge.wallet.folded.spec import TabShape, TabSpec
from patternforge.wallet.folded.vertex import Vertex

__all__ = ["slit_length", "slit_path", "tab_middle", "tab_root", "tab_vertices"]

_NECK = 0.5  # share of a tab's length whose sides are straight
_TIP = 8.0  # a point is rounded by this part of the tab's width


def tab_middle(face: Face, tab: TabSpec) -> float:
    """How far along its edge, counter-clockwise, the middle of a tab stands, mm."""
    length = face.side(tab.edge).length
    if tab.beside is None:
        return length / 2
    end, distance = tab.beside
    return distance if end is ENDS[tab.edge][0] else length - distance


def tab_root(face: Face, tab: TabSpec) -> tuple[Point, Point]:
    """The line a tab stands on, in the frame of its face, counter-clockwise."""
    side, middle = face.side(tab.edge), tab_middle(face, tab)
    u = side.tangent_at(0.0)
    return side.start + u * (middle - tab.width / 2), side.start + u * (middle + tab.width / 2)


def tab_vertices(tab: TabSpec, side: Segment, middle: float) -> list[Vertex]:
    """The corners of a tab from one end of its root to the other."""
    u = side.tangent_at(0.0)
    out = Point(u.y, -u.x)
    begin, end = (side.start + u * (middle + off) for off in (-tab.width / 2, tab.width / 2))
    neck = out * (_NECK * tab.length)
    match tab.shape:
        case TabShape.ROUNDED:
            radius = min(tab.width / 2, (1 - _NECK) * tab.length)
            tip = [Vertex(at + out * tab.length, radius=radius) for at in (begin, end)]
        case TabShape.POINTED:
            point = side.start + u * middle + out * tab.length
            tip = [Vertex(begin + neck), Vertex(point, radius=tab.width / _TIP), Vertex(end + neck)]
    at_root = f"tab '{tab.name}'"
    return [Vertex(begin, relief=at_root), *tip, Vertex(end, relief=at_root)]


def slit_length(tab: TabSpec, thickness: float) -> float:
    """How long the slit of a tab is, mm: as declared, else the tab's width and one thickness."""
    return tab.width + thickness if tab.slit is None else tab.slit


def slit_path(middle: Point, along: Point, length: float, width: float) -> Path:
    """A slit of ``length`` x ``width`` mm with round ends, counter-clockwise.

    DraftError when it is not longer than wide.

    >>> slit_path(Point(0, 0), Point(1, 0), 21.2, 1.2).bounds.width
    21.2
    """
    if length <= width:
        raise DraftError(f"a slit of {length:.2f} mm is no longer than the leather is thick: make the tab wider")
    u, n = along * ((length - width) / 2), Point(-along.y, along.x) * (width / 2)
    corners = ((middle - u - n, 0.0), (middle + u - n, 1.0), (middle + u + n, 0.0), (middle - u + n, 1.0))
    return from_vertices([(p.x, p.y, bulge) for p, bulge in corners], closed=True)
