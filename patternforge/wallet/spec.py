"""A design as resolved: every length a number in mm, every choice a value. What drafting starts from.

Words: *panels* stand in a row joined by *folds*; x runs across the folds, y along them; everything is seen from
the inside of the wallet laid open. Edges are ``left``, ``right``, ``bottom``, ``top`` of that view.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from patternforge.leather.contents import Item
from patternforge.leather.material import Leather
from patternforge.wallet.declared import BankPart, LayerPart, LoosePart, Part, PocketPart
from patternforge.wallet.entered import Entered
from patternforge.wallet.features import (
    EdgeNotch,
    EdgeShape,
    Film,
    Fitting,
    Held,
    HoleSpec,
    Initials,
    MouthSpec,
    Opening,
    Spot,
    Stamp,
    Stitching,
    ThumbNotch,
)
from patternforge.wallet.folded.spec import FoldedSpec
from patternforge.wallet.gusset import GussetPart
from patternforge.wallet.words import (
    Across,
    BankShape,
    CornerStyle,
    Edge,
    Fastening,
    HoleShape,
    Lying,
    Mode,
    MouthShape,
    NotchShape,
    Side,
)

__all__ = [
    "Across",
    "BankPart",
    "BankShape",
    "BodySpec",
    "Content",
    "CornerStyle",
    "Design",
    "Edge",
    "EdgeNotch",
    "EdgeShape",
    "Fastening",
    "Film",
    "Fitting",
    "FoldSpec",
    "GussetPart",
    "Held",
    "HoleShape",
    "HoleSpec",
    "Initials",
    "LayerPart",
    "Limits",
    "Load",
    "LoosePart",
    "Lying",
    "Mode",
    "MouthShape",
    "MouthSpec",
    "NotchShape",
    "Opening",
    "PanelSpec",
    "Parameter",
    "Part",
    "PocketPart",
    "SeamSpec",
    "Side",
    "Spot",
    "Stamp",
    "Stitching",
    "ThumbNotch",
]


@dataclass(frozen=True, slots=True)
class Parameter:
    """A number the maker may change: value in mm (or a plain count), lawful range, one line of meaning."""

    name: str
    value: float
    unit: str  # "mm" or "" for a plain number
    low: float | None = None
    high: float | None = None
    meaning: str = ""


@dataclass(frozen=True, slots=True)
class Content:
    """An item under the name the design gives it."""

    name: str
    item: Item


@dataclass(frozen=True, slots=True)
class PanelSpec:
    """A panel; ``width`` None means as wide as what it holds needs (``fit``)."""

    name: str
    width: float | None = None


@dataclass(frozen=True, slots=True)
class FoldSpec:
    """A fold between neighbours: angle in degrees (+180 insides meet, -180 outsides meet).

    ``compensation`` 0 lies flat open, 1 closes true; ``relief`` is how far pockets stop short of the tangent, mm.
    ``around`` is the thickness of what the fold goes round, a ring or a bar called ``core``, mm.
    """

    angle: float = 180.0
    compensation: float = 1.0
    relief: float = 3.0
    around: float = 0.0
    core: str = ""


@dataclass(frozen=True, slots=True)
class BodySpec:
    """The wallet laid open. ``height`` None means fit; ``closing`` lists folds by number from 1, first closed first.

    ``turned`` lays the row on its side (folds horizontal, the row's left end becomes the top). ``clearance`` is how
    much shorter a panel folded in must be than the panel that covers it, mm. ``corners`` gives single corners, named
    (bottom or top, left or right), a rounding of their own; ``shapes`` slants or bows the outer sides.
    """

    panels: tuple[PanelSpec, ...]
    folds: tuple[FoldSpec, ...]
    closing: tuple[int, ...]
    height: float | None = None
    corner: float = 0.0
    turned: bool = False
    clearance: float = 1.5
    headroom: float = 3.0
    corners: tuple[tuple[tuple[Edge, Edge], float], ...] = ()
    shapes: tuple[tuple[Edge, EdgeShape], ...] = ()


@dataclass(frozen=True, slots=True)
class Load:
    """What is in the wallet when it closes true, as shares from 0 to 1.

    ``cards``: of the item pockets, ``notes``: of what lies behind layers, ``loose``: of what lies in no pocket.
    """

    cards: float = 1.0
    notes: float = 1.0
    loose: float = 1.0


@dataclass(frozen=True, slots=True)
class SeamSpec:
    """A seam along edges of the laid-open body, in order; ``through`` names parts (empty: every part it meets).

    ``margin``: stitch line to edge. ``end``: last hole to an open edge (None: clear of the corner's rounding).
    ``across``: at folds; ``stop``: how far an open seam stops short of the fold tangent (None: in line with the
    pockets' own seam); ``spread``: how far beyond the fold zone an eased seam may stretch. All mm. ``over`` keeps
    the seam to panels first..last, whose outer sides then count as edges; ``of`` follows a layer's own edges there.
    ``onto``: a seam over one panel is sewn once the wallet is folded, through this panel as well, which then lies on
    it.
    """

    name: str
    along: tuple[Edge, ...]
    margin: float = 3.5
    end: float | None = None
    corners: CornerStyle = CornerStyle.ROUNDED
    across: Across = Across.OPEN
    stop: float | None = None
    spread: float = 0.0
    through: tuple[str, ...] = ()
    stitching: Stitching = field(default_factory=Stitching)
    over: tuple[int, int] | None = None
    of: str = ""
    onto: int | None = None
    line: int = 0

    def covers(self, panel: int) -> bool:
        """Whether the seam runs over that panel."""
        return self.over is None or self.over[0] <= panel <= self.over[1]


@dataclass(frozen=True, slots=True)
class Limits:
    """Smallest distances from a hole's rim, largest stacks and deviations, in mm and shares."""

    hole_to_mouth: float = 0.6
    hole_to_edge: float = 1.5
    hole_to_fold: float = 1.0
    seam_stack: float = 6.0
    closed_thickness: float = 30.0
    pitch_look: float = 0.05
    pitch_no: float = 0.15
    max_ease: float = 8.0


@dataclass(frozen=True, slots=True)
class Design:
    """A whole design as resolved. ``file`` is its name without folders, for messages.

    A ``folded`` wallet has a body without panels, no parts and no seams. ``entered`` tells what was written for its
    sizes and where; a design that was read from no file has none of it.
    """

    name: str
    title: str
    revision: str
    notes: str
    file: str
    parameters: tuple[Parameter, ...]
    leathers: tuple[Leather, ...]
    contents: tuple[Content, ...]
    body: BodySpec
    parts: tuple[Part, ...]  # from the outside in
    seams: tuple[SeamSpec, ...]
    stitching: Stitching = field(default_factory=Stitching)
    load: Load = field(default_factory=Load)
    limits: Limits = field(default_factory=Limits)
    fittings: tuple[Fitting, ...] = ()
    initials: tuple[Initials, ...] = ()
    folded: FoldedSpec | None = None
    entered: tuple[Entered, ...] = field(default=(), compare=False, repr=False)

    @property
    def glued(self) -> frozenset[str]:
        """The names of the layers that glue alone holds."""
        layers = (part for part in self.parts if isinstance(part, LayerPart))
        return frozenset(layer.name for layer in layers if layer.fastened is Fastening.GLUED)

    def leather(self, role: str) -> Leather:
        """The leather of that role; KeyError if the design has none."""
        return {leather.role: leather for leather in self.leathers}[role]

    def content(self, name: str) -> Content:
        """The content of that name; KeyError if the design has none."""
        return {content.name: content for content in self.contents}[name]

    def item(self, name: str) -> Item:
        """The item of that content name; KeyError if the design has none."""
        return self.content(name).item
