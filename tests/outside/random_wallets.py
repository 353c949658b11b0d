"""Design files of wallets drawn at random: thicknesses, counts, steps, folds, loads and seams as in workshops."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import yaml
from hypothesis import strategies as st

__all__ = ["wallets"]

_PANELS = ("left", "middle", "right")
_RIMS = (["left", "bottom", "right"], ["right", "bottom", "left"], ["left", "bottom", "right", "top"])


@st.composite
def wallets(draw: st.DrawFn) -> str:
    """The text of a design file with one to three panels.

    A pocket that does not open at the top stands as high as the wallet, so no layer behind it is lowered.
    """
    panels = _PANELS[: draw(st.integers(1, 3))]
    layers = draw(_layers(len(panels)))
    stitching = draw(_stitchings())
    openings = ("top",) if "drop" in layers[-1] else ("top", "top", "top", "bottom", "left", "right")
    pockets = [draw(_pockets(panel, openings)) for panel in panels]
    design = {
        "design": "Drawn at random",
        "leathers": {"outer": draw(_leathers(0.8, 2.4)), "inner": draw(_leathers(0.4, 1.2))},
        "contents": {"card": "id1", **({"note": "note-eur-50"} if "holds" in layers[-1] else {})},
        "body": draw(_bodies(panels)),
        "load": draw(st.sampled_from(("full", "empty", {"cards": 0.5, "notes": 1}, {"cards": 1, "notes": 0}))),
        "stitching": stitching,
        "parts": [*_facing(pockets, "outside"), *layers, *_facing(pockets, "inside")],
        "seams": [draw(_rims(stitching["mode"]))],
    }
    return yaml.safe_dump(design, sort_keys=False)


def _facing(pockets: list[dict[str, Any]], side: str) -> list[dict[str, Any]]:
    return [pocket for pocket in pockets if pocket["facing"] == side]


def _mm(low: float, high: float) -> st.SearchStrategy[str]:
    return st.integers(round(low * 10), round(high * 10)).map(lambda tenths: f"{tenths / 10} mm")


@st.composite
def _leathers(draw: st.DrawFn, thin: float, thick: float) -> dict[str, Any]:
    return {
        "thickness": draw(_mm(thin, thick)),
        "neutral": draw(st.sampled_from((0.5, 0.35, 0.6))),
        "min_radius": draw(st.sampled_from((0.5, 0, 1.5))),
    }


@st.composite
def _bodies(draw: st.DrawFn, panels: tuple[str, ...]) -> dict[str, Any]:
    count = len(panels) - 1
    angles = draw(st.sampled_from(((180, 180), (180, 180), (180, -180), (-180, 180), (90, 90))))
    return {
        "panels": dict.fromkeys(panels, "fit"),
        "folds": [
            {
                "angle": angles[fold] if count == 2 else 180,
                "compensation": draw(st.sampled_from((1, 1, 1, 0, 0.5, 1.2))),
                "relief": draw(_mm(3, 6)),
            }
            for fold in range(count)
        ],
        "closing": draw(st.permutations(range(1, count + 1))),
        "corner": draw(st.sampled_from(("0 mm", "3 mm", "6 mm"))),
        "turned": draw(st.booleans()),
    }


@st.composite
def _layers(draw: st.DrawFn, panels: int) -> list[dict[str, Any]]:
    """A shell, and over all or the last of its panels a lining or a divider with notes behind it."""
    shell = {"layer": "shell", "leather": "outer"}
    if not draw(st.booleans()):
        return [shell]
    inner: dict[str, Any] = {"layer": "divider", "leather": "inner", "notch": draw(st.sampled_from(("0 mm", "2 mm")))}
    if panels == 3 and draw(st.booleans()):
        inner["over"] = list(draw(st.sampled_from((("left", "middle"), ("middle", "right")))))
    if draw(st.booleans()):
        inner |= {"drop": draw(_mm(5, 8)), "holds": {"note": draw(st.integers(1, 12))}}
    return [shell, inner]


@st.composite
def _pockets(draw: st.DrawFn, panel: str, openings: Sequence[str]) -> dict[str, Any]:
    shared = {
        "on": panel,
        "leather": "inner",
        "item": "card",
        "stands": draw(st.sampled_from(("lying", "upright"))),
        "ease": draw(_mm(2, 4)),
        "facing": draw(st.sampled_from(("inside", "inside", "inside", "outside"))),
        "opening": draw(st.sampled_from(openings)),
        "trim": draw(st.sampled_from(({}, {}, {"bottom": "1 mm"}, {"left": "0.8 mm", "right": "0.8 mm"}))),
    }
    if draw(st.integers(0, 3)) == 0:
        return {"pocket": f"{panel} pocket", **shared, "depth": draw(_mm(30, 45)), "count": draw(st.integers(1, 4))}
    return {
        "bank": f"{panel} cards",
        **shared,
        "slots": draw(st.integers(1, 5)),
        "per_slot": draw(st.integers(1, 2)),
        "step": draw(_mm(10, 16)),
        "show": draw(_mm(9, 16)),
        "shape": draw(st.sampled_from(("tee", "full"))),
        "columns": draw(st.sampled_from((1, 1, 1, 2))),
        "mouth": draw(st.sampled_from(("straight", {"shape": "dipped", "depth": "3 mm"}))),
    }


@st.composite
def _stitchings(draw: st.DrawFn) -> dict[str, Any]:
    holes = (
        {"shape": "round", "diameter": "1 mm"},
        {"shape": "slit", "length": "2 mm", "width": "0.3 mm", "slant": 45},
        {"shape": "slit", "length": "1.8 mm", "width": "0.3 mm", "slant": -30},
        {"shape": "mark"},
    )
    return {
        "pitch": draw(_mm(3, 4)),
        "mode": draw(st.sampled_from(("even", "even", "iron"))),
        "hole": draw(st.sampled_from(holes)),
    }


@st.composite
def _rims(draw: st.DrawFn, mode: str) -> dict[str, Any]:
    rim = {
        "seam": "rim",
        "along": draw(st.sampled_from(_RIMS)),
        "margin": draw(_mm(3, 4.5)),
        "corners": draw(st.sampled_from(("rounded", "sharp"))),
    }
    if mode != "iron" and draw(st.integers(0, 2)) == 0:
        return {**rim, "across": "eased", "spread": draw(_mm(0, 6))}
    return {**rim, "across": "open"}
