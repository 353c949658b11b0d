"""A drafted wallet as a page: its model posed, and what is said of it beside the picture."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from patternforge.fit.close import closed_wallet
from patternforge.fit.folded import closed_as_loaded
from patternforge.fit.folded_faces import highest
from patternforge.fit.layout import layout
from patternforge.fit.posed.model import Model
from patternforge.fit.posed.row import row_model
from patternforge.fit.posed.tree import tree_model
from patternforge.leather.material import Leather
from patternforge.units import mm
from patternforge.viewer.page import LeatherWords, PageWords, folded_page
from patternforge.wallet.folded.pattern import DraftedFolded
from patternforge.wallet.pattern import Pattern
from patternforge.wallet.strip import StripPlacement

__all__ = ["posed", "wallet_page"]

_LENGTHS = (
    "Every layer is as long as its flat piece at every opening: in a fold it bends to an arc, and a layer that is "
    "longer than the one inside it bows outwards while the wallet is open."
)


def wallet_page(pattern: Pattern) -> bytes:
    """The page of a wallet as drafted and loaded, HTML in UTF-8."""
    model, thickness = posed(pattern)
    leathers = tuple(LeatherWords(each.role, _words(each)) for each in pattern.design.leathers)
    return folded_page(model, PageWords(pattern.design.title, tuple(_sentences(pattern, thickness)), leathers))


def posed(pattern: Pattern) -> tuple[Model, float]:
    """The model of a wallet, and how thick it is closed on what it holds, mm."""
    leathers = {leather.role: leather for leather in pattern.design.leathers}
    if pattern.folded is not None:
        return _tree(pattern, pattern.folded, leathers)
    laid = layout(pattern, leathers)
    closed = closed_wallet(laid)
    return row_model(laid, closed), closed.thickness


def _tree(pattern: Pattern, folded: DraftedFolded, leathers: Mapping[str, Leather]) -> tuple[Model, float]:
    wallet = closed_as_loaded(pattern, folded, leathers)
    piece = pattern.pieces[0]
    back = piece.placement.onto_piece.inverse()
    # A slit has no width to be cut out.
    openings = tuple(back.path(opening) for opening in piece.openings[len(folded.tabs) :])
    return tree_model(wallet, openings), highest(wallet)


def _words(leather: Leather) -> str:
    return f"{leather.role}, {mm(leather.t)} mm"


def _sentences(pattern: Pattern, thickness: float) -> Iterator[str]:
    if pattern.folded is not None:
        yield f"Closed on what it holds it is {mm(thickness)} mm thick. Every fold is as long as in the flat piece."
    elif pattern.folds:
        yield f"Closed on what it holds it is {mm(thickness)} mm thick. {_LENGTHS}"
    else:
        yield f"With what it holds it is {mm(thickness)} mm thick. It has no fold to close."
    strips = [piece.name for piece in pattern.pieces if isinstance(piece.placement, StripPlacement)]
    if strips:
        yield f"Drawn as it stands closed, at every opening: {', '.join(strips)}."
    around = [fold.core for fold in pattern.design.body.folds if fold.core]
    missing = [fitting.name for fitting in pattern.design.fittings] + around
    if missing:
        yield f"Not drawn: {', '.join(missing)}."
