"""Skived and turned edges as they are told: lines to be marked on a piece, words on its label, plain data."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import Any

from patternforge.geometry.path import Path
from patternforge.units import mm
from patternforge.wallet.finishing import EdgeSkive, FoldSkive, PatchSkive, SkiveSpec, TurnedHoles
from patternforge.wallet.marked import PlaceMark
from patternforge.wallet.pattern import Pattern, Piece
from patternforge.wallet.spec import Edge, Spot
from patternforge.wallet.stacks import skives_asked
from patternforge.wallet.worked import Skive, TurnIn

__all__ = [
    "edges_told",
    "finishing_facts",
    "finishing_marks",
    "skive_inputs",
    "skives_on",
    "skives_told",
    "turned_told",
]

Told = dict[str, Any]


def finishing_marks(piece: Piece) -> tuple[PlaceMark, ...]:
    """The finished edges of what is turned in, and where paring begins: lines to be marked on the back of a piece."""
    edges = piece.turned.lines if piece.turned else ()
    return (
        *(PlaceMark("finished edge", line) for line in edges),
        *(PlaceMark(f"skive to {mm(skive.left)} mm", line) for skive in piece.skives for line in skive.lines),
    )


def finishing_facts(pattern: Pattern, piece: Piece, drawn: Callable[[Piece, Edge], str]) -> tuple[str, ...]:
    """What to skive and to turn in, for the label of a piece; ``drawn`` names an edge of the assembly as drawn."""
    skived = (_skive_words(spec, piece, drawn) for spec in skives_on(pattern, piece))
    return (*skived, *(_turned_words(piece, piece.turned, drawn) if piece.turned else ()))


def skives_on(pattern: Pattern, piece: Piece) -> tuple[SkiveSpec, ...]:
    """The skives asked for of its part that a piece bears."""
    asked = next((skives_asked(part) for part in pattern.design.parts if part.name == piece.part), ())
    lefts = {skive.left for skive in piece.skives}
    return tuple(spec for spec in asked if spec.to in lefts)


def _skive_words(spec: SkiveSpec, piece: Piece, drawn: Callable[[Piece, Edge], str]) -> str:
    match spec:
        case EdgeSkive():
            return f"skive {mm(spec.width)} mm {edges_told(spec.edges, piece, drawn)} to {mm(spec.to)} mm"
        case FoldSkive():
            return f"skive fold {spec.fold + 1} and {mm(spec.width)} mm on either side to {mm(spec.to)} mm"
        case PatchSkive():
            return f"skive {mm(spec.width)} x {mm(spec.height)} mm where marked to {mm(spec.to)} mm"


def _turned_words(piece: Piece, turned: TurnIn, drawn: Callable[[Piece, Edge], str]) -> Iterator[str]:
    widths = dict.fromkeys(mm(edge.allowance) for edge in turned.turned)
    for width in widths:
        edges = tuple(edge.edge for edge in turned.turned if mm(edge.allowance) == width)
        yield f"turn in {edges_told(edges, piece, drawn)} at the marked line, {width} mm from the cut edge"
    if any(edge.holes is TurnedHoles.PIERCED for edge in turned.turned):
        yield "pierce stitch holes there once turned in"


def edges_told(edges: Sequence[Edge], piece: Piece, drawn: Callable[[Piece, Edge], str]) -> str:
    """Where something is done, in the words of the piece as drawn."""
    return "all round" if len(edges) == len(Edge) else f"along {', '.join(drawn(piece, edge) for edge in edges)}"


def skives_told(skives: Sequence[Skive]) -> list[Told]:
    """The skived boxes of a piece as plain data."""
    return [{"box": [s.box.x0, s.box.y0, s.box.x1, s.box.y1], "left": s.left} for s in skives]


def turned_told(turned: TurnIn | None) -> Told | None:
    """How the edges of a piece are turned in, as plain data."""
    if turned is None:
        return None
    return {
        "finished": _vertices(turned.finished),
        "edges": [
            {
                "edge": edge.edge.value,
                "over": list(edge.over),
                "core": edge.core,
                "thickness": edge.thickness,
                "inside_radius": edge.radius,
                "bend": edge.bend,
                "overlap": edge.overlap,
                "allowance": edge.allowance,
                "holes": edge.holes.value,
            }
            for edge in turned.turned
        ],
        "corners": [
            {
                "x": corner.at.x,
                "y": corner.at.y,
                "radius": corner.radius,
                "gap": corner.gap,
                "overlap": corner.overlap,
                "notches": corner.notches,
                "notch_width": corner.notch,
            }
            for corner in turned.corners
        ],
        "folds": [{"fold": fold, "excess": excess, "notch": notch} for fold, excess, notch in turned.gathers],
    }


def _vertices(path: Path) -> list[list[float]]:
    return [list(vertex) for vertex in path.vertices]


def skive_inputs(skives: Sequence[SkiveSpec], spot: Callable[[Spot], Told]) -> list[Told]:
    """The skives a part asks for; ``spot`` tells a place on a panel."""
    return [_skive_input(skive, spot) for skive in skives]


def _skive_input(skive: SkiveSpec, spot: Callable[[Spot], Told]) -> Told:
    match skive:
        case EdgeSkive():
            return {"along": [edge.value for edge in skive.edges], "width": skive.width, "to": skive.to}
        case FoldSkive():
            return {"fold": skive.fold + 1, "width": skive.width, "to": skive.to}
        case PatchSkive():
            return {"at": spot(skive.spot), "width": skive.width, "height": skive.height, "to": skive.to}
