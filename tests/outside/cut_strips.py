"""Gussets as cut: a straight strip laid along its two seams again by arc length, and folded at its fold lines.

Knows the cutting file and ``pattern.json`` and nothing of the program that wrote them. Points are complex numbers
x + iy in mm, as in ``dxf_reading``.
"""

from __future__ import annotations

from cmath import exp, phase
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from math import atan, degrees, hypot, pi

import shapely

from tests.outside.cut_layers import Json
from tests.outside.dxf_reading import CutPiece

__all__ = ["Strip", "cut_strips", "room_height", "strips_of"]


@dataclass(frozen=True, slots=True)
class StripHole:
    """A hole as cut: seam and number, its place on the strip, the direction of a slit (a unit number)."""

    seam: str
    index: int
    at: complex
    axis: complex | None


@dataclass(frozen=True)
class Strip:
    """One strip as cut, and what ``pattern.json`` says of it and of its part.

    ``turn``: from the stitch line to the outside of a channel's web.
    """

    json: Json
    part: Json
    leather: Json
    cut: CutPiece
    turn: float

    @property
    def name(self) -> str:
        """Its name."""
        return str(self.json["name"])

    @cached_property
    def holes(self) -> tuple[StripHole, ...]:
        """The holes as cut, in the order of ``pattern.json``. ValueError when there are more or fewer."""
        drawn = [hole for hole in self.json["holes"] if hole["shape"] != "none"]
        described = sorted(drawn, key=lambda hole: hole["shape"] != "mark")  # marks are cut first
        if len(described) != len(self.cut.holes):
            raise ValueError(f"{self.name}: {len(self.cut.holes)} holes are cut, {len(described)} are described")
        found = []
        for hole, cut in zip(described, self.cut.holes, strict=True):
            slit = cut.kind == "LINE"
            way = cut.contour.points[1] - cut.contour.points[0] if slit else 0j
            found.append(StripHole(hole["seam"], hole["index"], cut.centre, way / abs(way) if slit else None))
        return tuple(found)

    def along(self, hole: StripHole) -> tuple[complex, float]:
        """Where a hole comes to lie on the assembly, walked along its seam's line from the middle of that line, and
        how far beside its own row it is cut."""
        row = self.row(hole.seam)
        line = _pieces(row["line"])
        way = sum(length for _, _, _, length in line) / 2
        way += self.json["placement"]["forward"] * (hole.at.real - self.json["placement"]["middle"])
        return _walked(line, way), hole.at.imag - row["y"]

    @property
    def rows(self) -> list[Json]:
        """Its two rows of holes."""
        return list(self.json["placement"]["rows"])

    def row(self, seam: str) -> Json:
        """The row of that seam."""
        return next(row for row in self.rows if row["seam"] == seam)

    def margin(self, seam: str) -> float:
        """How far its holes are cut from the long edge of the strip next to them, on average."""
        ys = [hole.at.imag for hole in self.holes if hole.seam == seam]
        y = sum(ys) / len(ys)
        _, low, _, high = self.cut.outline.box
        return min(y - low, high - y)

    @property
    def outer(self) -> str:
        """The seam whose row is cut lower on the strip: that of the outer wall."""
        return str(min(self.rows, key=lambda row: row["y"])["seam"])

    def slant(self, hole: StripHole) -> float:
        """Degrees a slit slants against the way of sewing, seen from the outside.

        Bent round its fold the flange on the outer wall shows the wallet's inside what the strip shows, that on the
        inner wall the other face; a strip that faces inside is cut the other way up.
        """
        forward = complex(self.json["placement"]["forward"])
        axis = (hole.axis or 1) / forward
        from_inside = axis if (hole.seam == self.outer) == (self.json["faces"] == "outside") else axis.conjugate()
        return -degrees(phase(from_inside))

    def bends(self) -> list[tuple[float, float]]:
        """The tangents of its bends, rising."""
        ys = sorted(line[0][1] for line in self.json["fold_lines"])
        return list(zip(ys[::2], ys[1::2], strict=True))

    def faults(self) -> Iterator[str]:
        """Where its section, folded on its neutral fibre, is not what was asked for: bends, depth or leaves."""
        t, k, sharpest = self.json["thickness"], self.leather["neutral"], self.leather["min_radius"]
        pleats = self.part["pleats"]
        turn = pi if pleats else pi / 2
        wanted = 2 * pleats - 1 if pleats else 2
        zones = self.bends()
        if len(zones) != wanted:
            yield f"{self.name}: {len(zones)} bends, not {wanted}"
            return
        for low, high in zones:
            radius = (high - low) / turn - k * t
            if abs(radius - sharpest * t) > 1e-6:
                yield f"{self.name}: bent round {radius:.4f} mm, not {sharpest * t:.4f} mm"
        crown = (1 + sharpest) * t
        flats = [b - a for a, b in zip([0.0, *(high for _, high in zones)], self._ends(zones), strict=True)]
        if pleats:
            asked = [self.part["leaf"], *[self.part["leaf"] - crown] * (2 * pleats - 2), self.part["leaf"]]
        else:
            edges = [self.margin(row["seam"]) for row in self.rows]
            asked = [self.turn + edges[0] - crown, self.part["depth"] - 2 * crown, self.turn + edges[1] - crown]
        for number, (has, needs) in enumerate(zip(flats, asked, strict=True), 1):
            if abs(has - needs) > 0.01:
                yield f"{self.name}: flat {number} is {has:.3f} mm, not {needs:.3f} mm"

    def _ends(self, zones: Sequence[tuple[float, float]]) -> list[float]:
        _, low, _, high = self.cut.outline.box
        return [*(first for first, _ in zones), high - low]


def cut_strips(json: Json, cuts: Sequence[CutPiece]) -> tuple[Strip, ...]:
    """Every strip of a ``pattern.json`` with what was cut of it."""
    parts = {part["name"]: part for part in json["inputs"]["parts"]}
    leathers = {leather["role"]: leather for leather in json["inputs"]["leathers"]}
    return tuple(
        Strip(piece, parts[piece["part"]], leathers[piece["leather"]], cut, _turn(json, piece, parts[piece["part"]]))
        for piece, cut in zip(json["pieces"], cuts, strict=True)
        if "rows" in piece["placement"]
    )


def _turn(json: Json, piece: Json, part: Json) -> float:
    """As declared; else a bend, a hole and the least from a hole's rim to a fold."""
    if part["turn"] is not None:
        return float(part["turn"])
    leather = next(each for each in json["inputs"]["leathers"] if each["role"] == piece["leather"])
    holes = [seam["hole"] for seam in json["seams"] if seam["name"] in part["joins"]]
    reach = max({"round": hole["diameter"] / 2, "slit": hole["length"] / 2}.get(hole["shape"], 0.0) for hole in holes)
    crown = (1 + leather["min_radius"]) * piece["thickness"]
    return float(crown + reach + json["inputs"]["limits"]["hole_to_fold"])


def strips_of(json: Json, part: str) -> list[Json]:
    """All pieces that stand between the same two walls as the gusset of that name."""
    strips = [piece for piece in json["pieces"] if "rows" in piece["placement"]]
    own = next(piece for piece in strips if piece["part"] == part)
    return [piece for piece in strips if _walls(json, piece) == _walls(json, own)]


def _walls(json: Json, piece: Json) -> list[set[str]]:
    flat = {each["name"] for each in json["pieces"] if "rows" not in each["placement"]}
    seams = {seam["name"]: seam for seam in json["seams"]}
    return [flat & set(seams[row["seam"]]["pieces"]) for row in piece["placement"]["rows"]]


def room_height(json: Json, part: str) -> float:
    """What stands between the walls of a gusset, mm: told by the first gusset between them, 0 by any other.

    A channel or its contents, whichever is thicker; folded leaves, and what it holds over them where it reaches under
    them, beside them where not.
    """
    pieces = strips_of(json, part)
    if pieces[0]["part"] != part:
        return 0.0
    parts = {each["name"]: each for each in json["inputs"]["parts"]}
    leathers = {each["role"]: each for each in json["inputs"]["leathers"]}
    items = {each["as"]: each for each in json["inputs"]["contents"]}
    rooms = [room for room in json["pockets"] if room["part"] in {piece["part"] for piece in pieces}]
    held = (
        sum(room["count"] * items[room["content"]]["thickness"] for room in rooms) * json["inputs"]["load"]["cards"]
    )
    stands, under = 0.0, False
    for piece in pieces:
        own, leather = parts[piece["part"]], leathers[piece["leather"]]
        crown = (1 + leather["min_radius"]) * piece["thickness"]
        stands = max(stands, own["pleats"] * 2 * crown if own["pleats"] else own["depth"])
        row = piece["placement"]["rows"][0]
        leaves = shapely.LineString(_flattened(row["line"])).buffer(max(own["leaf"] + crown - row["y"], 0.0))
        under |= any(leaves.intersection(shapely.box(*room["box"])).area > 0 for room in rooms if own["pleats"])
    return float(stands + held if under else max(stands, held))


Stretch = tuple[complex, complex, float, float]
"""Start, end, bulge and length."""


def _pieces(vertices: Sequence[Sequence[float]]) -> list[Stretch]:
    found = []
    for (x0, y0, bulge), (x1, y1, _) in pairwise(vertices):
        chord = hypot(x1 - x0, y1 - y0)
        sweep = 4 * atan(bulge)
        length = chord if bulge == 0 else chord * (1 + bulge * bulge) / (4 * abs(bulge)) * abs(sweep)
        found.append((complex(x0, y0), complex(x1, y1), bulge, length))
    return found


def _walked(line: Sequence[Stretch], way: float) -> complex:
    for start, end, bulge, length in line[:-1]:
        if way <= length:
            return _on(start, end, bulge, way / length)
        way -= length
    start, end, bulge, length = line[-1]
    return _on(start, end, bulge, way / length)


def _on(start: complex, end: complex, bulge: float, share: float) -> complex:
    if bulge == 0:
        return start + (end - start) * share
    centre = (start + end) / 2 + 1j * (end - start) * (1 - bulge * bulge) / (4 * bulge)
    return centre + (start - centre) * exp(1j * 4 * atan(bulge) * share)


def _flattened(vertices: Sequence[Sequence[float]]) -> list[tuple[float, float]]:
    places = [_on(a, b, bulge, i / 16) for a, b, bulge, _ in _pieces(vertices) for i in range(17)]
    return [(at.real, at.imag) for at in places]
