"""One wallet in outer leather of two thicknesses, as the program drafts it: what moves and what stays."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from patternforge.fit.judge import fit
from patternforge.pipeline.finished import closed_size, closed_thickness
from patternforge.pipeline.stages import Judged, judged
from patternforge.units import mm
from patternforge.wallet.pattern import Piece

__all__ = ["THICK", "THIN", "Row", "edges_apart", "flat_shortfall", "identical_pieces", "rows", "told", "wallet"]

THIN, THICK = "1.2 mm", "2.0 mm"
_DESIGN = Path(__file__).parents[1] / "designs" / "two-fold.yaml"
_UNCHANGED = "same"


@dataclass(frozen=True, slots=True)
class Row:
    """A measure of the wallet in thin and in thick outer leather and the change, as words."""

    what: str
    thin: str
    thick: str
    change: str


def wallet(outer: str) -> Judged:
    """The two-fold wallet with outer leather of that thickness."""
    return judged(_DESIGN, {"outer": outer})


def rows(thin: Judged, thick: Judged) -> list[Row]:
    """Every measure of the story in both leathers."""
    one, other = _measures(thin), _measures(thick)
    return [Row(what, told(one[what]), told(other[what]), _change(one[what], other[what])) for what in one]


def told(value: float) -> str:
    """Lengths to a hundredth of a mm, counts as they are.

    >>> told(3.384), told(12)
    ('3.38 mm', '12')
    """
    return str(value) if isinstance(value, int) else f"{mm(value)} mm"


def identical_pieces(thin: Judged, thick: Judged) -> list[str]:
    """The names of the pieces that have the same outline, openings and holes in both."""
    pairs = zip(thin.pattern.pieces, thick.pattern.pieces, strict=True)
    return [a.name for a, b in pairs if (a.outline, a.openings, a.holes) == (b.outline, b.openings, b.holes)]


def edges_apart(thin: Judged, thick: Judged) -> float:
    """By how much the edges miss each other, mm, when the pieces for thin leather are cut in the thick one."""
    leathers = {leather.role: leather for leather in thick.pattern.design.leathers}
    found = (each for each in fit(thin.pattern, leathers) if each.what == "edge mismatch, closed")
    return max(abs(each.measured) for each in found)


def flat_shortfall(drafted: Judged) -> float:
    """How much longer the shell is than the divider inside it, mm: what a wallet cut flat would lack."""
    return _piece(drafted, "shell").width - _piece(drafted, "note divider").width


def _measures(drafted: Judged) -> Mapping[str, float]:
    pattern, closed = drafted.pattern, closed_size(drafted.pattern)
    return {
        "shell, width of the piece": _piece(drafted, "shell").width,
        "shell, length round the fold": pattern.folds[0].layers[0].flat_length,
        "shell, height of the piece": _piece(drafted, "shell").height,
        "note divider, width of the piece": _piece(drafted, "note divider").width,
        "each card pocket, width of the piece": _piece(drafted, "left cards 1").width,
        "stitch holes in all pieces": sum(len(piece.holes) for piece in pattern.pieces),
        "wallet closed, width": closed.width,
        "wallet closed, thickness as loaded": closed_thickness(drafted.findings),
        "thread for the rim": next(seam.thread for seam in pattern.seams if seam.name == "rim"),
    }


def _change(thin: float, thick: float) -> str:
    return _UNCHANGED if told(thin) == told(thick) else f"{'+' if thick > thin else ''}{told(thick - thin)}"


def _piece(drafted: Judged, name: str) -> Piece:
    return next(piece for piece in drafted.pattern.pieces if piece.name == name)
