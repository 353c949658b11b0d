"""The gusset: a strip between two walls, joined hole for hole to the seams that go through them."""

from __future__ import annotations

from patternforge.wallet.blank import PartBlanks, Strip
from patternforge.wallet.body import Body
from patternforge.wallet.parts.gusset_room import gusset_needs, gusset_plies, gusset_rooms
from patternforge.wallet.parts.joins import joins, turn_of
from patternforge.wallet.parts.kind import PartKind, Runs
from patternforge.wallet.parts.profile import Profile, bellows, channel
from patternforge.wallet.spec import Design, GussetPart

__all__ = ["GUSSET", "gusset_blanks", "gusset_profile"]


def gusset_profile(design: Design, part: GussetPart) -> Profile:
    """The section of the gusset, its outer edge first."""
    leather = design.leather(part.leather)
    if part.pleats:
        return bellows(leather, part.leaf, part.pleats)
    turn = turn_of(design, part)
    outer, inner = (join.seam.margin + turn for join in joins(design, part))
    return channel(leather, part.depth, (outer, inner))


def gusset_blanks(design: Design, body: Body, part: GussetPart, spacing: float) -> PartBlanks:
    """The strip of a gusset and the room between its walls; its seams are declared ones.

    DraftError when its seams do not each sew it to a wall of its own, or its bends leave nothing flat of it.
    """
    outer, inner = joins(design, part)
    profile = gusset_profile(design, part)
    strip = Strip(
        name=part.name,
        leather=part.leather,
        panel=part.panel,
        seams=(outer.seam.name, inner.seam.name),
        margins=(outer.seam.margin, inner.seam.margin),
        walls=(outer.wall, inner.wall),
        width=profile.width.value,
        folds=profile.folds,
        short=part.short,
        showing=part.showing,
    )
    return PartBlanks((), tuple(gusset_rooms(design, body, part)), (), strips=(strip,))


def _nominal(part: GussetPart) -> dict[str, float]:
    """None of its sizes carries a mouth."""
    return {}


def _whole(design: Design, body: Body, runs: Runs, part: GussetPart) -> tuple[GussetPart, float]:
    """The gusset as it is: its holes are its seams'."""
    return part, design.stitching.pitch


GUSSET = PartKind(
    word="gusset",
    plies=gusset_plies,
    needs=gusset_needs,
    nominal=_nominal,
    whole=_whole,
    blanks=gusset_blanks,
)
