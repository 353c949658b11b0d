"""The words of each step of folding a wallet from one piece."""

from __future__ import annotations

from collections.abc import Iterator

from patternforge.drafting.folded_picture import FoldedWallet
from patternforge.drafting.names import listed

__all__ = ["blank_words", "filling_words", "flap_words"]


def blank_words(wallet: FoldedWallet) -> str:
    """What is done to the blank before it is folded."""
    said = ["Lay the blank with the side that will be inside up."]
    if any(wallet.openings.values()):
        said.append("See that the openings drawn bold are cut through.")
    said.append("Finish its edges, and crease every fold between its two dashed lines.")
    return " ".join(said)


def flap_words(wallet: FoldedWallet, number: int) -> str:
    """What is folded by fold ``number`` (from 1), and which tabs go into their slits then."""
    fold = wallet.closed.parts.folds[number - 1]
    way = "in over" if fold.angle > 0 else "to the back of"
    said = [f"Fold {fold.face} {way} {fold.on}."]
    said += (f"Put {tab} through its slit in {into}." for tab, into in _tabs(wallet, number))
    return " ".join(said)


def filling_words(wallet: FoldedWallet) -> str:
    """What goes in last; empty where the wallet has no room declared."""
    rooms = [
        f"{load.room.count} x {load.room.content} between {listed(load.room.between)}" for load in wallet.closed.loads
    ]
    return f"Put in {listed(rooms)}." if rooms else ""


def _tabs(wallet: FoldedWallet, number: int) -> Iterator[tuple[str, str]]:
    """The tabs that can reach their slits once this fold is closed, and not before."""
    folded = wallet.pattern.folded
    if folded is None:
        return
    closed_at = {fold.face: fold.number for fold in wallet.closed.parts.folds}
    for tab in folded.tabs:
        # Both the flap that bears the tab and the one with the slit must have been folded by then.
        if number == max(closed_at.get(tab.face, 0), closed_at.get(tab.into, 0)):
            yield tab.name, tab.into
