"""Parts as declared: layers, banks, pockets and what lies loose; from the outside in they make up a wallet."""

from __future__ import annotations

from dataclasses import dataclass, field

from patternforge.wallet.features import EdgeNotch, EdgeShape, Held, MouthSpec, Opening, Spot, ThumbNotch
from patternforge.wallet.finishing import SkiveSpec, TurnedSpec
from patternforge.wallet.gusset import GussetPart
from patternforge.wallet.words import BankShape, Edge, Fastening, Lying, Side

__all__ = ["BankPart", "LayerPart", "LoosePart", "Part", "PocketPart"]


@dataclass(frozen=True, slots=True)
class LayerPart:
    """Covers panels ``first``..``last`` (0-based, inclusive) and the folds between.

    ``drop`` lowers its ``opening`` edge and makes it a mouth; ``holds`` lies between it and the layer outside it,
    lying or upright.
    ``notch`` is the depth of the relief notch at both ends of every fold zone (0: none). ``trim`` in mm by edge.
    ``inset`` keeps edges that far inside the body's or short of a panel's far end: a strap, a flap, a tongue;
    ``corner`` rounds the corners an inset gives it, ``shapes`` slants or bows the sides it does not share. Its
    opening edge may dip (``mouth``) and be cut for a ``thumb``; ``notches`` are cut into any straight edge.
    ``follows`` names the layer whose finished outline it copies, ``inside`` mm inside it (outside if negative).
    ``fastened`` says what holds it: no seam goes through a layer that is glued, and no pocket is sewn to it.
    """

    name: str
    leather: str
    first: int
    last: int
    drop: float = 0.0
    opening: Edge = Edge.TOP
    holds: tuple[Held, ...] = ()
    showing: Side | None = None
    notch: float = 0.0
    trim: tuple[tuple[Edge, float], ...] = ()
    exact: tuple[str, ...] = ()
    inset: tuple[tuple[Edge, float], ...] = ()
    corner: float | None = None
    shapes: tuple[tuple[Edge, EdgeShape], ...] = ()
    openings: tuple[Opening, ...] = ()
    lying: Lying = Lying.LYING
    mouth: MouthSpec = field(default_factory=MouthSpec)
    thumb: ThumbNotch | None = None
    notches: tuple[EdgeNotch, ...] = ()
    line: int = 0
    follows: str = ""
    inside: float = 0.0
    skives: tuple[SkiveSpec, ...] = ()
    turned: tuple[TurnedSpec, ...] = ()
    fastened: Fastening = Fastening.SEWN

    @property
    def panels(self) -> range:
        """The panels it covers."""
        return range(self.first, self.last + 1)


@dataclass(frozen=True, slots=True)
class BankPart:
    """``slots`` card pockets in steps on one panel, slot 1 in front. Lengths in mm.

    ``show``: how much of the item stands out of its mouth. ``step``: rise from slot to slot. ``overlap``: how much
    deeper a tee's tab reaches than the step. ``ease``: added to the taut path round the contents. ``columns`` lie
    side by side along the mouth. ``exact`` names the sizes (``step``, ``show``, ``overlap``) that may not move to
    whole stitches; ``sewn_to`` layers that its own seams go through besides the one next to it.
    """

    name: str
    leather: str
    panel: int
    content: str
    slots: int
    step: float
    show: float
    per_slot: int = 1
    shape: BankShape = BankShape.TEE
    lying: Lying = Lying.LYING
    opening: Edge = Edge.TOP
    columns: int = 1
    overlap: float = 8.0
    ease: float = 2.5
    facing: Side = Side.INSIDE
    mouth: MouthSpec = field(default_factory=MouthSpec)
    thumb: ThumbNotch | None = None
    trim: tuple[tuple[Edge, float], ...] = ()
    exact: tuple[str, ...] = ()
    openings: tuple[Opening, ...] = ()
    sewn_to: tuple[str, ...] = ()
    line: int = 0
    skives: tuple[SkiveSpec, ...] = ()

    @property
    def panels(self) -> range:
        """The one panel it lies on."""
        return range(self.panel, self.panel + 1)


@dataclass(frozen=True, slots=True)
class PocketPart:
    """One flat pocket on one panel, open at ``opening``; reaches ``depth`` mm from the seam opposite its mouth."""

    name: str
    leather: str
    panel: int
    content: str
    depth: float
    count: int = 1
    lying: Lying = Lying.LYING
    opening: Edge = Edge.TOP
    ease: float = 2.5
    facing: Side = Side.INSIDE
    mouth: MouthSpec = field(default_factory=MouthSpec)
    thumb: ThumbNotch | None = None
    trim: tuple[tuple[Edge, float], ...] = ()
    exact: tuple[str, ...] = ()
    openings: tuple[Opening, ...] = ()
    sewn_to: tuple[str, ...] = ()
    line: int = 0
    skives: tuple[SkiveSpec, ...] = ()

    @property
    def panels(self) -> range:
        """The one panel it lies on."""
        return range(self.panel, self.panel + 1)


@dataclass(frozen=True, slots=True)
class LoosePart:
    """``count`` of a content lying over each other on one panel in no pocket: keys, a pad, a booklet.

    They lie on whatever stands before them in the order of parts, their middle at ``spot``.
    """

    name: str
    panel: int
    content: str
    spot: Spot
    count: int = 1
    lying: Lying = Lying.LYING
    line: int = 0

    @property
    def panels(self) -> range:
        """The one panel it lies on."""
        return range(self.panel, self.panel + 1)

    @property
    def openings(self) -> tuple[Opening, ...]:
        """None: there is no leather to cut them into."""
        return ()


Part = LayerPart | BankPart | PocketPart | LoosePart | GussetPart
