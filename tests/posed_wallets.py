"""Every ready design drafted and posed once, for all tests that look at the wallet folded."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from itertools import pairwise
from math import dist
from pathlib import Path

from patternforge.design.load import load_design
from patternforge.fit.close import ClosedWallet, closed_wallet
from patternforge.fit.layout import Layout, layout
from patternforge.fit.posed.model import Model, Place
from patternforge.fit.posed.pose import Pose, bent_place, flat_place, standing
from patternforge.viewer.wallet import posed
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern

__all__ = ["DESIGNS", "FOLDED", "ROWS", "closed_row", "corners", "laid", "model", "pattern", "walked"]

DESIGNS = {path.stem: path for path in sorted((Path(__file__).parents[1] / "designs").glob("*.yaml"))}
FOLDED = [name for name, path in DESIGNS.items() if "\nfolded:" in path.read_text(encoding="utf-8")]
ROWS = [name for name in DESIGNS if name not in FOLDED]


@cache
def pattern(name: str) -> Pattern:
    """A ready design drafted."""
    return drafted(load_design(DESIGNS[name].read_text(encoding="utf-8"), DESIGNS[name].name))


@cache
def model(name: str) -> Model:
    """A ready design to be posed."""
    return posed(pattern(name))[0]


@cache
def laid(name: str) -> Layout:
    """A ready row of panels as fit sees it."""
    return layout(pattern(name), {leather.role: leather for leather in pattern(name).design.leathers})


@cache
def closed_row(name: str) -> ClosedWallet:
    """A ready row of panels closed."""
    return closed_wallet(laid(name))


def corners(posed_model: Model, now: Pose) -> Iterator[Place]:
    """Where every corner of every prism stands, and every mark: as the script of the page numbers them."""
    for body in posed_model.bodies:
        for flat in body.flat:
            for z in (flat.low, flat.high):
                for x, y in flat.ground.corners:
                    yield standing(posed_model, now, flat_place(posed_model, now, flat.plate, flat.track, (x, y, z)))
        for bent in body.bent:
            for z in (bent.low, bent.high):
                for x, y in bent.ground.corners:
                    yield standing(posed_model, now, bent_place(posed_model, now, bent.track, (x, y, z)))
        for mark in body.marks:
            for z in (mark.low, mark.high):
                at = (mark.at.x, mark.at.y, z)
                yield standing(posed_model, now, flat_place(posed_model, now, mark.plate, mark.track, at))


def walked(places: list[Place]) -> float:
    """The length of the way through some places, mm."""
    return sum(dist(a, b) for a, b in pairwise(places))
