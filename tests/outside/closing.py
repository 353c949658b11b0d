"""A wallet closed from its written files: where holes and edges of the pieces come to lie, and what does not meet.

Nothing of the program is imported. Every piece is laid back on the assembly, panel by panel, with what
``pattern.json`` says of its place; then each layer is folded for true: laid by its first panel's outer edge, then
round every fold on its own neutral fibre (``closed_stack``). A fault is a line of words; a sound wallet has none.
"""

from __future__ import annotations

from cmath import exp, phase
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from math import degrees, radians

import shapely

from tests.outside.closed_stack import Bend, bends
from tests.outside.cut_layers import Json, Layer, Sewn, cut_layers
from tests.outside.cut_strips import Strip, cut_strips
from tests.outside.dxf_reading import CutPiece

__all__ = ["MEET", "Wallet"]

MEET = 0.05  # mm; the most by which what is to meet may miss
HALVES_MEET = 0.3  # mm; the same for the two halves of hardware; common practice, no source
SLANT = 0.1  # degrees; the same for slits
_SAME = 1e-6
_ON_EDGE = 0.05  # mm; so near to an outline a hole counts as neither in nor out


@dataclass(frozen=True, slots=True)
class _Side:
    """An edge that is to be flush: its place on its panel as declared, as laid open, and as closed."""

    words: str
    declared: float
    open: float
    closed: float


@dataclass(frozen=True)
class Wallet:
    """What ``pattern.json`` says, and the pieces as cut in the same order."""

    json: Json
    cuts: tuple[CutPiece, ...]

    @cached_property
    def layers(self) -> tuple[Layer, ...]:
        """Every piece that lies flat, from the outside in."""
        return cut_layers(self.json, self.cuts)

    @cached_property
    def strips(self) -> tuple[Strip, ...]:
        """Every gusset from the outside in."""
        return cut_strips(self.json, self.cuts)

    @cached_property
    def bends(self) -> tuple[dict[str, Bend], ...]:
        """What each crossing part needs in each fold."""
        return bends(self.json, self.layers)

    def faults(self) -> list[str]:
        """All that does not meet."""
        sewn = (self.strays, self.misses, self.closed_misses, self.slants, self.orphans, self.turned_misses)
        checks = (self.faces, *sewn, self.edges, self.gussets, self.halves, self.other_sides)
        return [fault for check in checks for fault in check()]

    def faces(self) -> Iterator[str]:
        """Pieces that would show their wrong face: cut face up, what faces outside must be turned over, else not."""
        for layer in self.layers:
            if layer.mirrored != (layer.json["faces"] == "outside"):
                yield f"{layer.name}: would show its wrong face"

    def strays(self) -> Iterator[str]:
        """Holes that, laid open, are not where their seam has them on the assembly."""
        for layer, hole in self._sewn():
            off = abs(self._open(layer, hole) - self._place(hole))
            if off > MEET:
                yield f"{layer.name}, {hole.seam} {hole.index}: {off:.3f} mm off its seam, laid open"

    def misses(self) -> Iterator[str]:
        """Mating holes that do not meet, laid open panel by panel."""
        places = [(layer, hole, self._open(layer, hole)) for layer, hole in self._sewn()]
        yield from _apart(places, "laid open")

    def closed_misses(self) -> Iterator[str]:
        """Mating holes that do not meet in the closed wallet, but for what the compensation chosen makes them miss.

        Holes whose seam is eased across a fold are left out where they share in its stretch.
        """
        places = []
        for layer, hole in self._sewn():
            panel = self._panel(self._place(hole).real, self._seams[hole.seam]["spread"])
            if panel is not None:
                u = self._closed(layer, panel, hole.flat.real) - self.chosen_miss(layer, panel)
                places.append((layer, hole, complex(u, self._level(layer, hole.flat.imag))))
                off = abs(places[-1][2] - self._place(hole) + self.json["panels"][panel]["x0"])
                if off > MEET:
                    yield f"{layer.name}, {hole.seam} {hole.index}: {off:.3f} mm off its seam, closed"
        yield from _apart(places, "closed")

    def slants(self) -> Iterator[str]:
        """Slits that do not slant by the angle declared, as seen from the outside, to the way their seam is sewn."""
        for layer, hole in self._sewn():
            if hole.axis is None:
                continue
            # Seen from the outside every direction is mirrored: x runs the other way.
            sewn = _from_outside(exp(1j * radians(self._holes[hole.seam, hole.index]["heading"])))
            slant = degrees(phase(_from_outside(hole.axis) / sewn))
            off = (slant - self._seams[hole.seam]["hole"]["slant"] + 90) % 180 - 90
            if abs(off) > SLANT:
                yield f"{layer.name}, {hole.seam} {hole.index}: slants by {off:.2f} degrees too much"

    def orphans(self) -> Iterator[str]:
        """Pieces that a stitch would go through without a hole, or that have one too many."""
        for seam in self.json["seams"]:
            if seam["hole"]["shape"] == "none":
                continue
            sides = (each for each in self.json["seams"] if seam["name"] in (each["name"], each["meets"]))
            pierced_pieces = [piece for each in sides for piece in each["pieces"]]
            if len(pierced_pieces) < min(2, len(self.layers)) and not seam["meets"]:
                yield f"{seam['name']}: joins nothing to anything"
            xs, ys = ([hole[axis] for hole in seam["holes"]] for axis in ("x", "y"))
            pierced = {
                layer.name: {h.index for h in layer.holes if h.seam == seam["name"]} | _pierced_later(layer, seam)
                for layer in self.layers
            }
            inside = {
                layer.name: shapely.contains_xy(layer.ground.buffer(-_ON_EDGE), xs, ys) for layer in self.layers
            }
            outside = {
                layer.name: ~shapely.contains_xy(layer.ground.buffer(_ON_EDGE), xs, ys) for layer in self.layers
            }
            for at, hole in enumerate(seam["holes"]):
                through = [i for i, layer in enumerate(self.layers) if hole["index"] in pierced[layer.name]]
                if not through:
                    yield f"{seam['name']} {hole['index']}: goes through no piece"
                    continue
                for i, layer in enumerate(self.layers):
                    if i in through and outside[layer.name][at]:
                        yield f"{layer.name}, {seam['name']} {hole['index']}: a hole beside the leather"
                    between = through[0] < i < through[-1] or layer.name in seam["pieces"]
                    if i not in through and between and inside[layer.name][at]:
                        yield f"{layer.name}, {seam['name']} {hole['index']}: no hole for the stitch"

    def turned_misses(self) -> Iterator[str]:
        """Holes in what is turned in that, folded over, do not lie on the hole they belong to; or that have none."""
        for layer in self.layers:
            places = {(hole.seam, hole.index): hole.flat for hole in layer.holes}
            for mate in layer.mates:
                ways = [_folded_over(layer, mate.flat, edge) for edge in layer.rolled]
                hole = places.get((mate.seam, mate.index))
                off = min((abs(at - hole) for at in ways if at is not None and hole is not None), default=None)
                if off is None:
                    yield f"{layer.name}, {mate.seam} {mate.index}: turned in over no hole"
                elif off > MEET:
                    yield f"{layer.name}, {mate.seam} {mate.index}: {off:.3f} mm off its hole, turned in"

    def edges(self) -> Iterator[str]:
        """Edges not flush with the body or the relief line, laid open and closed, but for the compensation chosen."""
        for layer in self.layers:
            for side in self._sides(layer):
                if abs(side.open - side.declared) > MEET:
                    yield f"{layer.name}: {side.words} edge {side.open - side.declared:.3f} mm off, laid open"
                if abs(side.closed - side.declared) > MEET:
                    yield f"{layer.name}: {side.words} edge {side.closed - side.declared:.3f} mm off, closed"

    def gussets(self) -> Iterator[str]:
        """Strips whose holes, walked along their seams, are not on the walls' holes, or whose section is wrong."""
        walls: dict[tuple[str, int], list[tuple[str, complex]]] = defaultdict(list)
        for layer, sewn in self._sewn():
            walls[sewn.seam, sewn.index].append((layer.name, self._open(layer, sewn)))
        for strip in self.strips:
            yield from strip.faults()
            numbers = [(hole.seam, hole.index) for hole in strip.holes]
            wanted = [
                (row["seam"], hole["index"]) for row in strip.rows for hole in self._seams[row["seam"]]["holes"]
            ]
            if self._seams[strip.outer]["hole"]["shape"] != "none" and sorted(numbers) != sorted(wanted):
                yield f"{strip.name}: {len(numbers)} holes for {len(wanted)} of its seams"
            for hole in strip.holes:
                at, beside = strip.along(hole)
                words = f"{strip.name}, {hole.seam} {hole.index}"
                if not walls[hole.seam, hole.index]:
                    yield f"{words}: goes through no wall"
                for name, place in walls[hole.seam, hole.index]:
                    if abs(at - place) > MEET:
                        yield f"{words}: {abs(at - place):.3f} mm off the hole in {name}, walked along the strip"
                if abs(beside) > MEET:
                    yield f"{words}: {abs(beside):.3f} mm beside its row"
                off = strip.slant(hole) - self._seams[hole.seam]["hole"]["slant"] if hole.axis is not None else 0.0
                if abs((off + 90) % 180 - 90) > SLANT:
                    yield f"{words}: slants by {off:.2f} degrees too much"

    def halves(self) -> Iterator[str]:
        """Halves of hardware that do not lie over each other once every fold between them is closed flat."""
        found: dict[str, list[complex]] = defaultdict(list)
        for layer in self.layers:
            for half in layer.json["fittings"]:
                flat = layer.laid_open(complex(half["x"], half["y"]))
                panel = self._panel(layer.undeveloped(flat).real, 0.0)
                if panel is None:
                    yield f"{layer.name}, {half['fitting']}: lies in a fold"
                    continue
                u = self._closed(layer, panel, flat.real) - self.chosen_miss(layer, panel)
                start, way = self._row[panel]
                found[half["fitting"]].append(complex(start + way * u, self._level(layer, flat.imag)))
        for name, places in found.items():
            for other in places[1:]:
                if abs(other - places[0]) > HALVES_MEET:
                    yield f"{name}: its halves lie {abs(other - places[0]):.3f} mm apart, closed"

    def other_sides(self) -> Iterator[str]:
        """Holes of seams sewn after folding that do not lie on each other once every fold is closed."""
        meets = {seam["name"]: seam["meets"] for seam in self.json["seams"]}
        twofold = {name for pair in meets.items() if pair[1] for name in pair}
        found: dict[tuple[str, int], list[tuple[str, complex]]] = defaultdict(list)
        for layer, hole in self._sewn():
            panel = self._panel(self._place(hole).real, 0.0)
            if hole.seam in twofold and panel is not None:
                u = self._closed(layer, panel, hole.flat.real) - self.chosen_miss(layer, panel)
                start, way = self._row[panel]
                key = (meets[hole.seam] or hole.seam, hole.index)
                found[key].append((hole.seam, complex(start + way * u, self._level(layer, hole.flat.imag))))
        for (seam, index), places in found.items():
            if {name for name, _ in places} < {name for name in twofold if seam in (name, meets[name])}:
                yield f"{seam} {index}: one of its two sides has no hole"
            for name, at in places[1:]:
                if abs(at - places[0][1]) > HALVES_MEET:
                    yield f"{name} {index}: {abs(at - places[0][1]):.3f} mm off its other side, folded"

    @cached_property
    def _row(self) -> list[tuple[float, int]]:
        """Where every panel begins along the closed wallet, and which way it runs: every fold turns the row round."""
        row = [(0.0, 1)]
        for panel in self.json["panels"][:-1]:
            start, way = row[-1]
            row.append((start + way * (panel["x1"] - panel["x0"]), -way))
        return row

    def chosen_miss(self, layer: Layer, panel: int) -> float:
        """How far a layer stands off on a panel by choice: its bends are given a share c of what they need more."""
        off = 0.0
        for zone in layer.zones[: panel - layer.panels[0]]:
            bend = self.bends[zone.fold][layer.part]
            off += (self.json["folds"][zone.fold]["compensation"] - 1) * (bend.length - bend.innermost)
        return off

    def edge_miss(self, layer: Layer) -> float:
        """How far a layer's last edge stands off where it ought to lie when closed."""
        right = self._side(layer, "right")
        return self._closed(layer, layer.panels[-1], layer.box[2]) - right

    # The declared side of the wallet

    @cached_property
    def _seams(self) -> dict[str, Json]:
        return {seam["name"]: seam for seam in self.json["seams"]}

    @cached_property
    def _holes(self) -> dict[tuple[str, int], Json]:
        return {(seam["name"], hole["index"]): hole for seam in self.json["seams"] for hole in seam["holes"]}

    @cached_property
    def _parts(self) -> dict[str, Json]:
        return {part["name"]: part for part in self.json["inputs"]["parts"]}

    def _place(self, hole: Sewn) -> complex:
        declared = self._holes[hole.seam, hole.index]
        return complex(declared["x"], declared["y"])

    def _panel(self, x: float, spread: float) -> int | None:
        """The panel that x lies on, None in a fold zone or within ``spread`` of one."""
        last = len(self.json["panels"]) - 1
        for i, panel in enumerate(self.json["panels"]):
            low = panel["x0"] + (spread if i > 0 else -_SAME)
            high = panel["x1"] - (spread if i < last else -_SAME)
            if low <= x <= high:
                return i
        return None

    def _side(self, layer: Layer, edge: str) -> float:
        """Where an edge of a piece is declared to lie: across the folds from where its panel begins, else the height.

        At the body's edge, or the relief short of a fold; moved by what is trimmed off later, by a lowered edge and
        by an inset. A clear sheet lies round its window.
        """
        part = self._parts[layer.part]
        if layer.json["lines"]:
            return self._film_side(layer, edge)
        folds, panel = self.json["folds"], self.json["panels"][layer.panels[-1]]
        lowered = part["drop"] if part["kind"] == "layer" and part["opening"] == edge else 0.0
        inset = part["inset"].get(edge, 0.0) if part["kind"] == "layer" else 0.0
        inwards: float = lowered + inset - layer.json["trim"].get(edge, 0.0)
        if edge == "left":
            return inwards + (folds[layer.panels[0] - 1]["relief"] if layer.panels[0] > 0 else 0.0)
        if edge == "right":
            relief = folds[layer.panels[-1]]["relief"] if layer.panels[-1] < len(folds) else 0.0
            return float(panel["x1"] - panel["x0"] - relief - inwards)
        height: float = self.json["size"]["height"]["value"]
        return inwards if edge == "bottom" else height - inwards

    def _film_side(self, layer: Layer, edge: str) -> float:
        """As far beyond the opening it is named after as that opening says."""
        opening = next(each for each in self._parts[layer.part]["openings"] if f"{each['name']} film" == layer.name)
        panel, ends = self.json["panels"][layer.panels[0]], opening["at"]["from"]
        along = edge in ("left", "right")
        low, high = ("left", "right") if along else ("bottom", "top")
        length: float = panel["x1"] - panel["x0"] if along else self.json["size"]["height"]["value"]
        middle = ends[low] if low in ends else length - ends[high] if high in ends else length / 2
        reach = opening["width" if along else "height"] / 2 + opening["film"]["overlap"]
        return float(middle - reach if edge == low else middle + reach)

    def _sides(self, layer: Layer) -> Iterator[_Side]:
        x0, y0, x1, y1 = layer.box
        first, last = layer.panels[0], layer.panels[-1]
        for edge, at in (("left", x0), ("right", x1)):
            if self._is_flush(layer, edge):
                panel = first if edge == "left" else last
                begins = self.json["panels"][panel]["x0"]
                closed = self._closed(layer, panel, at) - self.chosen_miss(layer, panel)
                laid_open = layer.undeveloped(complex(at, 0)).real - begins
                yield _Side(edge, self._side(layer, edge), laid_open, closed)
        for edge, at in (("bottom", y0), ("top", y1)):
            if self._is_flush(layer, edge):
                yield _Side(edge, self._side(layer, edge), at, self._level(layer, at))

    def _is_flush(self, layer: Layer, edge: str) -> bool:
        """Whether a piece reaches this edge all along: not a mouth, nor a floor behind the first of a tee bank.

        Pieces beside a slanted or bowed side have no straight edge there; their holes are held to their seams all
        the same.
        """
        part = self._parts[layer.part]
        if layer.json["lines"]:
            return True
        if edge in {**self.json["inputs"]["body"]["shapes"], **part.get("shapes", {})}:
            return False
        if part["kind"] == "layer":
            return True
        opposite = {"left": "right", "right": "left", "top": "bottom", "bottom": "top"}[part["opening"]]
        behind = part.get("shape") == "tee" and layer.name not in (layer.part, f"{layer.part} 1")
        return edge != part["opening"] and not (behind and edge == opposite)

    # Holes and edges as cut

    def _sewn(self) -> Iterator[tuple[Layer, Sewn]]:
        return ((layer, hole) for layer in self.layers for hole in layer.holes)

    def _open(self, layer: Layer, hole: Sewn) -> complex:
        return layer.undeveloped(hole.flat, self._seams[hole.seam]["spread"])

    def _closed(self, layer: Layer, panel: int, flat: float) -> float:
        """How far from where ``panel`` begins a place of the layer comes to lie, along the closed panel."""
        panels = self.json["panels"]
        laid_by_edge = flat
        if len(layer.panels) > 1 and self._is_flush(layer, "left"):
            laid_by_edge += panels[layer.panels[0]]["x0"] + self._side(layer, "left") - layer.box[0]
        walked = panels[layer.panels[0]]["x0"]
        for zone in layer.zones[: panel - layer.panels[0]]:
            walked += panels[zone.fold]["x1"] - panels[zone.fold]["x0"] + self.bends[zone.fold][layer.part].length
        return float(laid_by_edge - walked)

    def _level(self, layer: Layer, y: float) -> float:
        """A height of the layer, laid by its own lower edge when it is one that crosses folds."""
        by_edge = len(layer.panels) > 1 and self._is_flush(layer, "bottom")
        return y + (self._side(layer, "bottom") - layer.box[1] if by_edge else 0.0)


def _pierced_later(layer: Layer, seam: Json) -> set[int]:
    """Holes that are pierced once an edge is turned in: described, but neither cut nor marked."""
    found = (h for h in layer.json["holes"] if h["seam"] == seam["name"] and h["shape"] == "none")
    return {hole["index"] for hole in found if layer.rolled}


def _folded_over(layer: Layer, flat: complex, edge: str) -> complex | None:
    """Where a place beyond a finished edge comes to lie once that edge is turned in; None within it."""
    x0, y0, x1, y1 = layer.box
    at, way = {"left": (x0, -1), "right": (x1, 1), "bottom": (y0, -1), "top": (y1, 1)}[edge]
    along = flat.real if edge in ("left", "right") else flat.imag
    beyond = (along - at) * way
    if beyond <= 0:
        return None
    inside = at - way * layer.rolled[edge].folded(beyond)
    return complex(inside, flat.imag) if edge in ("left", "right") else complex(flat.real, inside)


def _from_outside(way: complex) -> complex:
    return -way.conjugate()


def _apart(places: list[tuple[Layer, Sewn, complex]], words: str) -> Iterator[str]:
    """Holes of one seam and number that lie apart."""
    mates: dict[tuple[str, int], list[tuple[str, complex]]] = defaultdict(list)
    for layer, hole, at in places:
        mates[hole.seam, hole.index].append((layer.name, at))
    for (seam, index), found in mates.items():
        first, at = found[0]
        for name, other in found[1:]:
            if abs(other - at) > MEET:
                yield f"{first} and {name}, {seam} {index}: {abs(other - at):.3f} mm apart, {words}"
