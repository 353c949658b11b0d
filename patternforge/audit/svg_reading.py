"""SVG files as cut files: every element that is drawn, on a page whose lower left corner is the origin, in mm."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from math import hypot

from patternforge.audit.affine import Affine, translation
from patternforge.audit.model import CutFile, Entity, FileKind, Look, Odd, Oddity, Shape
from patternforge.audit.shapes import carried, carried_ring, drawn
from patternforge.audit.svg_page import page, viewport
from patternforge.audit.svg_shapes import SHAPES, Round, parts
from patternforge.audit.svg_style import START, Rule, rules, style
from patternforge.audit.svg_tree import Element, svg_tree
from patternforge.audit.svg_values import affine, user_length
from patternforge.errors import ReadingError
from patternforge.geometry.point import Point

__all__ = ["svg_file"]

_GROUPS = ("g", "svg", "a", "switch")
_KEPT = ("defs", "symbol", "clipPath", "mask", "marker", "pattern", "linearGradient", "radialGradient", "filter")
_UNSEEN = (*_KEPT, "metadata", "style", "title", "desc", "script")
_ODD_KINDS = {"text": Odd.TEXT, "image": Odd.IMAGE, "foreignObject": Odd.FOREIGN}
_DEEPEST = 12  # uses in uses
_MOST = 300_000
_NOTHING = 1e-6


@dataclass(frozen=True, slots=True)
class _Place:
    """Where elements stand: the map to the page, what is handed down to them, their layer, what is odd about all."""

    affine: Affine
    handed: Mapping[str, str]
    layer: str = ""
    depth: int = 0
    odd: tuple[Oddity, ...] = ()


@dataclass(frozen=True, slots=True)
class _Reader:
    sheet: Sequence[Rule]
    named: Mapping[str, Element]
    found: list[Entity] = field(default_factory=list)

    def read(self, element: Element, place: _Place) -> None:
        """Adds an element and all in it, in order."""
        if not element.name or element.name in _UNSEEN:
            return
        inner = self._inside(element, place)
        if element.name == "svg":
            corner = translation(user_length(element.get("x")), user_length(element.get("y")))
            inner = replace(inner, affine=inner.affine.after(corner).after(viewport(element, element)))
        if element.name in _GROUPS:
            for child in element.children:
                self.read(child, inner)
        elif element.name == "use":
            self._use(element, inner)
        elif element.name in SHAPES:
            self._draw(element, inner)
        elif element.name in _ODD_KINDS:
            at = inner.affine.point(Point(user_length(element.get("x")), user_length(element.get("y"))))
            words = " ".join(each.text for each in element.every()).strip()[:40]
            self._add(element, None, at, inner, (Oddity(_ODD_KINDS[element.name], at, words or element.name),))

    def _inside(self, element: Element, place: _Place) -> _Place:
        """What holds for an element and what is in it."""
        values = style(element, place.handed, self.sheet)
        moves = element.get("transform")
        map_ = place.affine.after(affine(moves, element.line)) if moves else None
        layer = element.get("label") or element.get("id") if element.name == "g" else ""
        odd = place.odd
        if values.get("display") == "none" or values.get("opacity") in ("0", "0%"):
            odd = (*odd, Oddity(Odd.HIDDEN, None, "set not to show"))
        if any(values.get(word, "none") != "none" for word in ("clip-path", "mask")):
            odd = (*odd, Oddity(Odd.CLIPPED, None))
        if map_ is not None and not map_.is_even and place.affine.is_even:
            across, up = map_.factors
            words = "skewed" if abs(across - up) <= 1e-6 * across else f"{up / across:.4g} times as high as wide"
            odd = (*odd, Oddity(Odd.UNEVEN, None, words))
        return replace(place, affine=map_ or place.affine, handed=values, layer=layer or place.layer, odd=odd)

    def _use(self, element: Element, place: _Place) -> None:
        name = element.get("href")
        shift = translation(user_length(element.get("x")), user_length(element.get("y")))
        inner = replace(place, affine=place.affine.after(shift), depth=place.depth + 1)
        at = inner.affine.point(Point(0.0, 0.0))
        target = self.named.get(name.removeprefix("#"))
        odd = [Oddity(Odd.BLOCK, at, name)]
        if target is None:
            odd.append(Oddity(Odd.BROKEN, at, f"{name!r} is not in the file"))
        self._add(element, None, at, inner, tuple(odd))
        if target is None or place.depth >= _DEEPEST:
            return
        if target.name != "symbol":
            self.read(target, inner)
            return
        inner = replace(inner, affine=inner.affine.after(viewport(target, element)))
        for child in target.children:
            self.read(child, self._inside(target, inner))

    def _draw(self, element: Element, place: _Place) -> None:
        map_ = place.affine
        for part in parts(element, max(map_.factors)):
            if isinstance(part, Round):
                at = map_.point(part.centre)
                small = part.radius * map_.factor <= _NOTHING
                shape: Shape | None = None if small else carried_ring(part.centre, part.radius, map_)
                empty: tuple[Point, ...] = (at,) if small else ()
                odd: set[Odd] = set()
            else:
                made = drawn(carried(part.vertices, part.closed, map_), part.closed)
                shape, empty, odd = made.shape, made.empty, part.odd
                at = map_.point(Point(*part.vertices[0][:2]))
            if shape is not None or empty:
                told = tuple(Oddity(each, at) for each in sorted(odd))
                self._add(element, shape, at, place, (*told, *(Oddity(Odd.ZERO, where) for where in empty)))

    def _add(self, element: Element, shape: Shape | None, at: Point, place: _Place, odd: tuple[Oddity, ...]) -> None:
        if len(self.found) >= _MOST:
            raise ReadingError(f"the file draws more than {_MOST} things; take some out")
        values = place.handed
        general = tuple(replace(each, at=at) for each in place.odd)
        look = _look(values, place)
        if values["visibility"] != "visible":
            general = (*general, Oddity(Odd.HIDDEN, at, "set not to show"))
        elif shape is not None and not look.colour:
            general = (*general, Oddity(Odd.HIDDEN, at, "neither line nor fill"))
        self.found.append(Entity(element.name, len(self.found) + 1, at, shape, look, (*odd, *general)))


def svg_file(data: bytes, name: str) -> CutFile:
    """The SVG file ``data`` as it is read; ReadingError, saying why, when it is none or is broken."""
    root = svg_tree(data)
    sheet = page(root)
    every = list(root.every())
    named = {element.get("id"): element for element in reversed(every) if element.get("id")}
    reader = _Reader(rules(every), named)
    place = _Place(sheet.onto_page, START)
    for child in root.children:
        reader.read(child, replace(place, handed=style(root, START, reader.sheet)))
    version = root.get("version") or "1.1"
    return CutFile(
        name,
        FileKind.SVG,
        version,
        sheet.unit,
        sheet.scale,
        tuple(reader.found),
        sheet.box,
        sheet.oddities,
        sheet.size,
    )


def _look(values: Mapping[str, str], place: _Place) -> Look:
    stroke, fill = values["stroke"], values["fill"]
    stroked = stroke not in ("none", "transparent")
    width = user_length(values["stroke-width"], 1.0) * hypot(*place.affine.factors) / hypot(1, 1) if stroked else 0.0
    filled = fill not in ("none", "transparent") and values["fill-opacity"] not in ("0", "0%")
    dashed = values["stroke-dasharray"] not in ("none", "", "0")
    return Look(place.layer, stroke if stroked else fill if filled else "", width=width, filled=filled, dashed=dashed)
