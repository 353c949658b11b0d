"""What a design asked for, as plain data: every length a number in mm, every choice a word."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from typing import Any

from patternforge.drafting.finishing import skive_inputs
from patternforge.drafting.folded import folded_inputs
from patternforge.drafting.plain import plain, trims
from patternforge.leather.material import Leather
from patternforge.wallet.parts import kind_of
from patternforge.wallet.spec import (
    BodySpec,
    Design,
    Edge,
    EdgeNotch,
    EdgeShape,
    Fitting,
    Initials,
    Opening,
    Part,
    SeamSpec,
    Spot,
    ThumbNotch,
)

__all__ = ["inputs", "leathers_told", "plain", "trims"]

_PANEL_FIELDS = ("first", "last", "panel")


def inputs(design: Design) -> dict[str, Any]:
    """Everything declared, under the names of the design file.

    Parts stand from the outside in. Sizes that moved to whole stitches are given as drafted.
    """
    panels = [panel.name for panel in design.body.panels]
    return {
        "parameters": plain(design.parameters),
        "leathers": leathers_told(design.leathers),
        "contents": [{"as": content.name, **plain(content.item)} for content in design.contents],
        "body": None if design.folded else _body(design.body),
        "parts": [_part(part, panels) for part in design.parts],
        "seams": [_seam(seam, panels) for seam in design.seams],
        "fittings": [_fitting(fitting, panels) for fitting in design.fittings],
        "initials": [_initials(initials, panels) for initials in design.initials],
        "stitching": plain(design.stitching),
        "folded": folded_inputs(design.folded) if design.folded else None,
        "load": plain(design.load),
        "limits": plain(design.limits),
    }


def leathers_told(leathers: Sequence[Leather]) -> list[dict[str, Any]]:
    """Each leather as declared, and the thickness drafted for."""
    return [_leather(leather) for leather in leathers]


def _leather(leather: Leather) -> dict[str, Any]:
    return {**plain(leather), "drafted_thickness": leather.t}


def _body(body: BodySpec) -> dict[str, Any]:
    corners = {" ".join(edge.value for edge in edges): radius for edges, radius in body.corners}
    return {**plain(body), "corners": corners, "shapes": _shapes(body.shapes)}


def _shapes(pairs: Iterable[tuple[Edge, EdgeShape]]) -> dict[str, Any]:
    return {edge.value: plain(shape) for edge, shape in pairs}


def _part(part: Part, panels: Sequence[str]) -> dict[str, Any]:
    """The fields of a part, its panels by name."""
    named = {key: panels[getattr(part, key)] for key in _PANEL_FIELDS if hasattr(part, key)}
    tellers: dict[str, Callable[[Any], Any]] = {
        "trim": trims,
        "inset": trims,
        "shapes": _shapes,
        "openings": lambda cut: [_placed(each, panels) for each in cut],
        "notches": lambda cut: [_placed(each, panels) for each in cut],
        "thumb": lambda thumb: _thumb(thumb, panels),
        "spot": lambda spot: _spot(spot, panels),
        "skives": lambda skives: skive_inputs(skives, lambda spot: _spot(spot, panels)),
        "follows": lambda name: name or None,
    }
    own = plain(part)
    told = {key: tell(getattr(part, key)) for key, tell in tellers.items() if key in own}
    return {"kind": kind_of(part).word, **own, **named, **told}


def _placed(cut: Opening | EdgeNotch, panels: Sequence[str]) -> dict[str, Any]:
    sizes = {key: value for key, value in plain(cut).items() if key != "spot"}
    return {**sizes, "at": _spot(cut.spot, panels)}


def _spot(spot: Spot, panels: Sequence[str]) -> dict[str, Any]:
    beside = trims(pair for pair in (spot.beside, spot.above) if pair)
    return {"panel": panels[spot.panel], "from": beside, "fold": spot.fold or None}


def _thumb(thumb: ThumbNotch | None, panels: Sequence[str]) -> dict[str, Any] | None:
    on = None if thumb is None or thumb.panel is None else panels[thumb.panel]
    return None if thumb is None else {**plain(thumb), "panel": on}


def _seam(seam: SeamSpec, panels: Sequence[str]) -> dict[str, Any]:
    over = [panels[end] for end in seam.over] if seam.over else None
    onto = None if seam.onto is None else panels[seam.onto]
    return {**plain(seam), "over": over, "of": seam.of or None, "onto": onto}


def _fitting(fitting: Fitting, panels: Sequence[str]) -> dict[str, Any]:
    meets = {"part": fitting.meets, "panel": panels[fitting.meets_panel]} if fitting.meets else None
    return {
        "name": fitting.name,
        "kind": fitting.kind,
        "part": fitting.part,
        "at": _spot(fitting.spot, panels),
        "meets": meets,
        "holes": list(fitting.holes if fitting.meets else fitting.holes[:1]),
        "reach": fitting.reach,
        "setting": fitting.setting.value,
        "thickness": fitting.thickness,
    }


def _initials(initials: Initials, panels: Sequence[str]) -> dict[str, Any]:
    kept = {key: value for key, value in plain(initials).items() if key != "spot"}
    return {**kept, "at": _spot(initials.spot, panels)}
