"""Wallets drawn at random for the laws: any that a design file may declare, and those a maker would draft.

``designs`` takes every size from the whole of its lawful range that a wallet could meet, so many of them are
refused. ``sound_designs`` keeps to sizes of the workshop, and ``drafts`` gives those of them that draft, drafted.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import TypeVar

from hypothesis import assume
from hypothesis import strategies as st

from patternforge.errors import PatternforgeError
from patternforge.leather.catalogue import catalogue
from patternforge.leather.contents import Item
from patternforge.leather.material import Leather, Thickness
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.spec import (
    Across,
    BankPart,
    BankShape,
    BodySpec,
    Content,
    CornerStyle,
    Design,
    Edge,
    EdgeShape,
    Film,
    FoldSpec,
    GussetPart,
    Held,
    HoleShape,
    HoleSpec,
    LayerPart,
    Load,
    LoosePart,
    Lying,
    Mode,
    MouthShape,
    MouthSpec,
    Opening,
    PanelSpec,
    Part,
    PocketPart,
    SeamSpec,
    Side,
    Spot,
    Stitching,
    ThumbNotch,
)

__all__ = [
    "designs",
    "drafted_designs",
    "drafts",
    "is_level_in_columns",
    "is_slanted",
    "loaded_more",
    "mirrored",
    "sound_designs",
    "thickened",
]

_ROUND = (Edge.LEFT, Edge.BOTTOM, Edge.RIGHT, Edge.TOP)
T = TypeVar("T")
_CORNERS = tuple((level, side) for level in (Edge.BOTTOM, Edge.TOP) for side in (Edge.LEFT, Edge.RIGHT))
_ITEMS = ("id1", "id3", "card-business-eu", "passport", "coin-eur-2")


@dataclass(frozen=True, slots=True)
class _Reach:
    """How far the sizes of a design are drawn, mm or as named; ``wild`` are those a maker would never mix."""

    thickness: tuple[float, float]
    pitch: tuple[float, float]
    margin: tuple[float, float]
    relief: tuple[float, float]
    corner: tuple[float, float]
    step: tuple[float, float]
    show: tuple[float, float]
    ease: tuple[float, float]
    drop: tuple[float, float]
    cut: tuple[float, float]
    thumb: tuple[float, float]
    panels: int
    wild: bool


_WORKSHOP = _Reach(
    thickness=(0.5, 2.4),
    pitch=(2.7, 4.0),
    margin=(3.0, 5.0),
    relief=(3.0, 8.0),
    corner=(0.0, 8.0),
    step=(9.0, 18.0),
    show=(8.0, 18.0),
    ease=(2.0, 5.0),
    drop=(0.0, 9.0),
    cut=(2.0, 5.0),
    thumb=(14.0, 22.0),
    panels=3,
    wild=False,
)
_LAWFUL = _Reach(
    thickness=(0.05, 9.0),
    pitch=(0.5, 12.0),
    margin=(0.2, 25.0),
    relief=(0.0, 40.0),
    corner=(0.0, 60.0),
    step=(0.5, 60.0),
    show=(0.5, 90.0),
    ease=(0.0, 20.0),
    drop=(0.0, 120.0),
    cut=(0.1, 50.0),
    thumb=(0.2, 90.0),
    panels=5,
    wild=True,
)


def designs() -> st.SearchStrategy[Design]:
    """Designs that a file may declare, sensible or not."""
    return _designs(_LAWFUL)


def sound_designs() -> st.SearchStrategy[Design]:
    """Designs with the sizes a maker would give."""
    return _designs(_WORKSHOP)


@st.composite
def drafted_designs(draw: st.DrawFn, *conditions: Callable[[Design], bool]) -> tuple[Design, Pattern]:
    """Sound designs that meet all conditions with their patterns; those that drafting refuses are left out."""
    design = draw(_designs(_WORKSHOP))
    assume(all(condition(design) for condition in conditions))
    try:
        return design, drafted(design)
    except PatternforgeError:
        assume(False)
        raise


def drafts(*conditions: Callable[[Design], bool]) -> st.SearchStrategy[Pattern]:
    """The patterns of ``drafted_designs``."""
    return drafted_designs(*conditions).map(lambda pair: pair[1])


def thickened(design: Design, role: str, more: float) -> Design:
    """The design with one of its leathers thicker by ``more`` mm."""
    return replace(
        design,
        leathers=tuple(
            replace(leather, thickness=Thickness(leather.t + more, leather.t + more))
            if leather.role == role
            else leather
            for leather in design.leathers
        ),
    )


def loaded_more(design: Design, cards: float, notes: float) -> Design:
    """The design closed on these shares of its cards and notes."""
    return replace(design, load=Load(cards, notes))


def is_slanted(design: Design) -> bool:
    """Whether any mouth of the design falls to one side."""
    pockets = (part for part in design.parts if isinstance(part, BankPart | PocketPart))
    return any(pocket.mouth.shape is MouthShape.SLANTED for pocket in pockets)


def is_level_in_columns(design: Design) -> bool:
    """No mouth falls to one side across several columns, where the seams between them meet it at a slant."""
    banks = (part for part in design.parts if isinstance(part, BankPart))
    return all(bank.columns == 1 or bank.mouth.shape is not MouthShape.SLANTED for bank in banks)


def mirrored(design: Design) -> Design:
    """The design seen in a mirror that swaps left and right."""
    count = len(design.body.panels)
    body = replace(
        design.body,
        panels=design.body.panels[::-1],
        folds=design.body.folds[::-1],
        closing=tuple(count - fold for fold in design.body.closing),
    )
    seams = tuple(replace(seam, along=tuple(_SWAP[edge] for edge in seam.along)) for seam in design.seams)
    return replace(design, body=body, parts=tuple(_mirrored_part(p, count) for p in design.parts), seams=seams)


_SWAP = {Edge.LEFT: Edge.RIGHT, Edge.RIGHT: Edge.LEFT, Edge.TOP: Edge.TOP, Edge.BOTTOM: Edge.BOTTOM}


def _mirrored_part(part: Part, count: int) -> Part:
    if isinstance(part, LoosePart):
        return replace(part, panel=count - 1 - part.panel)
    if isinstance(part, GussetPart):
        return replace(part, panel=count - 1 - part.panel, opening=_SWAP[part.opening])
    trim = tuple((_SWAP[edge], size) for edge, size in part.trim)
    opening = _SWAP[part.opening]
    if isinstance(part, LayerPart):
        return replace(part, first=count - 1 - part.last, last=count - 1 - part.first, trim=trim, opening=opening)
    return replace(part, panel=count - 1 - part.panel, trim=trim, opening=opening)


@st.composite
def _designs(draw: st.DrawFn, reach: _Reach) -> Design:
    count = draw(st.integers(1, reach.panels))
    stitching = draw(_stitchings(reach))
    layers = draw(_layers(reach, count))
    pockets = draw(_pockets(reach, count))
    contents = draw(_contents(reach))
    return Design(
        name="drawn",
        title="Drawn at random",
        revision="A",
        notes="",
        file="drawn.yaml",
        parameters=(),
        leathers=(draw(_leathers(reach, "outer")), draw(_leathers(reach, "inner"))),
        contents=contents,
        body=draw(_bodies(reach, count)),
        parts=(*_outside(pockets), *layers, *_inside(pockets)),
        seams=draw(_seams(reach, stitching)),
        stitching=stitching,
        load=Load(draw(st.sampled_from((0.0, 0.5, 1.0))), draw(st.sampled_from((0.0, 0.5, 1.0)))),
    )


def _sizes(between: tuple[float, float]) -> st.SearchStrategy[float]:
    """Sizes to the tenth of a millimetre, as makers give them."""
    return st.integers(round(between[0] * 10), round(between[1] * 10)).map(lambda tenths: tenths / 10)


def _mixed(reach: _Reach, size: str) -> st.SearchStrategy[float]:
    """A size of the workshop, or now and then any lawful one when anything goes."""
    usual = _sizes(getattr(_WORKSHOP, size))
    return _rarely(_sizes(getattr(_LAWFUL, size)), usual) if reach.wild else usual


def _rarely(odd: st.SearchStrategy[T], usual: st.SearchStrategy[T]) -> st.SearchStrategy[T]:
    """One time in five the first, else the second."""
    return st.integers(0, 4).flatmap(lambda chance: odd if chance == 4 else usual)


@st.composite
def _leathers(draw: st.DrawFn, reach: _Reach, role: str) -> Leather:
    thin, thick = reach.thickness
    t = draw(_sizes((thin + 0.1, thick))) if role == "outer" else draw(_sizes((max(thin, 0.1), min(thick, 1.5))))
    neutral = draw(st.sampled_from((0.5, 0.4, 0.3))) if not reach.wild else draw(st.floats(0, 1))
    smallest = draw(st.sampled_from((0.5, 0.0, 1.0))) if not reach.wild else draw(st.floats(0, 20))
    return Leather(role, Thickness(t, t), neutral=neutral, min_radius=smallest)


@st.composite
def _contents(draw: st.DrawFn, reach: _Reach) -> tuple[Content, ...]:
    known = catalogue()
    card = known["id1"] if not reach.wild else known[draw(st.sampled_from(_ITEMS))]
    if reach.wild and draw(st.booleans()):
        length = draw(_sizes((2, 300)))
        card = Item("own", length, draw(_sizes((1, length))), draw(_sizes((0.1, 30))))
    return Content("card", card), Content("note", known["note-eur-50"])


@st.composite
def _bodies(draw: st.DrawFn, reach: _Reach, count: int) -> BodySpec:
    fixed = _rarely(st.one_of(st.none(), _sizes((1, 400))), _sizes((80, 250))) if reach.wild else st.none()
    angles = st.just(180.0) if not reach.wild else st.sampled_from((180.0, 180.0, -180.0, 90.0, -90.0, 45.0))
    factors = st.sampled_from((1.0, 1.0, 0.0, 0.5, 1.2))
    return BodySpec(
        panels=tuple(PanelSpec(f"panel {i}", draw(fixed)) for i in range(1, count + 1)),
        folds=tuple(FoldSpec(draw(angles), draw(factors), draw(_mixed(reach, "relief"))) for _ in range(count - 1)),
        closing=tuple(draw(st.permutations(range(1, count)))),
        height=draw(fixed),
        corner=draw(_mixed(reach, "corner")),
        turned=draw(st.booleans()),
        clearance=draw(_sizes((1, 3))),
        headroom=draw(_sizes((2, 6))),
        corners=draw(_single_corners(reach)),
        shapes=draw(_shapes(reach)),
    )


@st.composite
def _single_corners(draw: st.DrawFn, reach: _Reach) -> tuple[tuple[tuple[Edge, Edge], float], ...]:
    """Now and then, when anything goes, some corners of the body with a rounding of their own."""
    if not reach.wild or draw(st.integers(0, 3)):
        return ()
    places = draw(st.lists(st.sampled_from(_CORNERS), unique=True, max_size=2))
    return tuple((place, draw(_mixed(reach, "corner"))) for place in places)


@st.composite
def _shapes(draw: st.DrawFn, reach: _Reach) -> tuple[tuple[Edge, EdgeShape], ...]:
    """Now and then, when anything goes, sides that slant or bow."""
    if not reach.wild or draw(st.integers(0, 3)):
        return ()
    sides = draw(st.lists(st.sampled_from(Edge), unique=True, max_size=2))
    lean = st.one_of(st.just(0.0), _sizes((-6, 6)), _sizes((-60, 60)))
    return tuple((side, EdgeShape(bow=draw(lean), slant=draw(lean))) for side in sides)


@st.composite
def _openings(draw: st.DrawFn, reach: _Reach, panels: int) -> tuple[Opening, ...]:
    """Now and then, when anything goes, a window, with or without a film behind it."""
    if not reach.wild or draw(st.integers(0, 3)):
        return ()
    width, height = draw(_sizes((1, 90))), draw(_sizes((1, 60)))
    beside = draw(st.one_of(st.none(), st.tuples(st.sampled_from((Edge.LEFT, Edge.RIGHT)), _sizes((0, 90)))))
    above = draw(st.one_of(st.none(), st.tuples(st.sampled_from((Edge.BOTTOM, Edge.TOP)), _sizes((0, 60)))))
    corner = draw(st.one_of(st.just(0.0), _sizes((0.1, min(width, height) / 2))))
    film = draw(st.one_of(st.none(), st.builds(Film, st.just("inner"), _sizes((2, 12)), _sizes((1, 5)))))
    spot = Spot(draw(st.integers(0, panels - 1)), beside, above)
    return (Opening("window", spot, width, height, corner, draw(_sizes((0, 8))), film),)


@st.composite
def _layers(draw: st.DrawFn, reach: _Reach, count: int) -> tuple[LayerPart, ...]:
    """A shell, and often a divider with a lowered edge over all of it or a part of it."""
    shell = LayerPart(
        "shell", "outer", 0, count - 1, trim=draw(_trims(reach)), openings=draw(_openings(reach, count))
    )
    if not draw(st.booleans()):
        return (shell,)
    first, last = (
        (0, count - 1)
        if not reach.wild
        else sorted(draw(st.lists(st.integers(0, count - 1), min_size=2, max_size=2)))
    )
    held = (Held("note", draw(st.integers(1, 12))),) if draw(st.booleans()) else ()
    divider = LayerPart(
        "divider",
        "inner",
        first,
        last,
        drop=draw(_mixed(reach, "drop")),
        opening=draw(st.sampled_from(Edge)) if reach.wild else Edge.TOP,
        holds=held,
        showing=draw(st.sampled_from((None, Side.INSIDE, Side.OUTSIDE))),
        notch=draw(st.sampled_from((0.0, 2.0, 3.0))),
        lying=draw(st.sampled_from(Lying)) if reach.wild else Lying.LYING,
        exact=draw(_exact(reach, "drop")),
    )
    return (shell, divider)


@st.composite
def _pockets(draw: st.DrawFn, reach: _Reach, count: int) -> tuple[BankPart | PocketPart, ...]:
    """One bank or pocket on each panel, or none on some of them when anything goes."""
    found = [draw(_pocket(reach, panel)) for panel in range(count)]
    return tuple(pocket for pocket in found if pocket)


def _pocket(reach: _Reach, panel: int) -> st.SearchStrategy[BankPart | PocketPart | None]:
    banks, flat = _banks(reach, panel), _flat_pockets(reach, panel)
    pocket = st.one_of(banks, flat)
    return _rarely(st.none(), pocket) if reach.wild else pocket


@st.composite
def _banks(draw: st.DrawFn, reach: _Reach, panel: int) -> BankPart:
    mouth, thumb = draw(_mouths(reach))
    opening = draw(st.sampled_from(Edge)) if reach.wild else Edge.TOP
    return BankPart(
        name=f"bank {panel + 1}",
        leather="inner",
        panel=panel,
        content="card",
        slots=draw(st.integers(1, 6 if reach.wild else 4)),
        step=draw(_mixed(reach, "step")),
        show=draw(_mixed(reach, "show")),
        per_slot=draw(st.integers(1, 2)),
        shape=draw(st.sampled_from(BankShape)),
        lying=draw(st.sampled_from(Lying)),
        opening=opening,
        columns=draw(st.sampled_from((1, 1, 1, 2))),
        overlap=draw(_sizes((0, 30) if reach.wild else (6, 12))),
        ease=draw(_mixed(reach, "ease")),
        facing=draw(st.sampled_from((Side.INSIDE, Side.INSIDE, Side.OUTSIDE))),
        mouth=mouth,
        thumb=thumb,
        trim=draw(_trims(reach, opening)),
        exact=draw(_exact(reach, "step", "show", "overlap")),
    )


@st.composite
def _flat_pockets(draw: st.DrawFn, reach: _Reach, panel: int) -> PocketPart:
    mouth, thumb = draw(_mouths(reach))
    opening = draw(st.sampled_from(Edge)) if reach.wild else Edge.TOP
    return PocketPart(
        name=f"pocket {panel + 1}",
        leather="inner",
        panel=panel,
        content="card",
        depth=draw(_sizes((1, 150) if reach.wild else (30, 48))),
        count=draw(st.integers(1, 4)),
        lying=draw(st.sampled_from(Lying)) if reach.wild else Lying.LYING,
        opening=opening,
        ease=draw(_mixed(reach, "ease")),
        facing=draw(st.sampled_from((Side.INSIDE, Side.INSIDE, Side.OUTSIDE))),
        mouth=mouth,
        thumb=thumb,
        trim=draw(_trims(reach, opening)),
        exact=draw(_exact(reach, "depth")),
    )


@st.composite
def _mouths(draw: st.DrawFn, reach: _Reach) -> tuple[MouthSpec, ThumbNotch | None]:
    shape = draw(st.sampled_from(MouthShape))
    if shape is not MouthShape.STRAIGHT:
        return MouthSpec(shape, draw(_mixed(reach, "cut"))), None
    if not draw(st.booleans()):
        return MouthSpec(), None
    width = draw(_mixed(reach, "thumb"))
    return MouthSpec(), ThumbNotch(width, draw(_sizes((0.1, width / 2))))


@st.composite
def _trims(draw: st.DrawFn, reach: _Reach, mouth: Edge | None = None) -> tuple[tuple[Edge, float], ...]:
    """Edges to be trimmed, now and then; never the mouth."""
    if draw(st.integers(0, 3)):
        return ()
    edges = draw(st.lists(st.sampled_from([edge for edge in Edge if edge is not mouth]), unique=True, max_size=2))
    return tuple((edge, draw(_sizes((0.5, 8 if reach.wild else 2)))) for edge in edges)


def _exact(reach: _Reach, *sizes: str) -> st.SearchStrategy[tuple[str, ...]]:
    if not reach.wild:
        return st.just(())
    return st.lists(st.sampled_from(sizes), unique=True).map(tuple)


@st.composite
def _stitchings(draw: st.DrawFn, reach: _Reach) -> Stitching:
    hole = HoleSpec(
        shape=draw(st.sampled_from(HoleShape)),
        diameter=draw(_sizes((0.1, 4) if reach.wild else (0.8, 1.2))),
        length=draw(_sizes((0.1, 8) if reach.wild else (1.5, 2.2))),
        width=draw(st.sampled_from((0.2, 0.3))),
        slant=draw(st.sampled_from((45.0, -45.0, 33.0, 0.0, 90.0))),
    )
    return Stitching(draw(_mixed(reach, "pitch")), draw(st.sampled_from((Mode.EVEN, Mode.EVEN, Mode.IRON))), hole)


@st.composite
def _seams(draw: st.DrawFn, reach: _Reach, stitching: Stitching) -> tuple[SeamSpec, ...]:
    """A rim along three or four edges, or along any neighbouring ones when anything goes."""
    first = draw(st.integers(0, 3)) if reach.wild else 0
    edges = draw(st.integers(1, 4)) if reach.wild else draw(st.sampled_from((3, 3, 4)))
    along = [_ROUND[(first + i) % 4] for i in range(edges)]
    return (
        SeamSpec(
            "rim",
            tuple(along if draw(st.booleans()) else along[::-1]),
            margin=draw(_mixed(reach, "margin")),
            end=draw(st.one_of(st.none(), _sizes((0, 60) if reach.wild else (2, 6)))),
            corners=draw(st.sampled_from(CornerStyle)),
            across=draw(_acrosses(reach, stitching.mode)),
            stop=draw(st.one_of(st.none(), _sizes((0, 50) if reach.wild else (12, 16)))),
            spread=draw(_sizes((0, 20) if reach.wild else (0, 4))),
            stitching=stitching,
        ),
    )


def _acrosses(reach: _Reach, mode: Mode) -> st.SearchStrategy[Across]:
    """An iron cannot be eased, so a maker who uses one stops at the folds."""
    if mode is Mode.IRON and not reach.wild:
        return st.just(Across.OPEN)
    return st.sampled_from((Across.OPEN, Across.OPEN, Across.EASED))


def _outside(pockets: Sequence[BankPart | PocketPart]) -> tuple[BankPart | PocketPart, ...]:
    return tuple(pocket for pocket in pockets if pocket.facing is Side.OUTSIDE)


def _inside(pockets: Sequence[BankPart | PocketPart]) -> tuple[BankPart | PocketPart, ...]:
    return tuple(pocket for pocket in pockets if pocket.facing is Side.INSIDE)
