"""Every verdict agrees with the limit that is told beside it, on ready designs as drafted and as spoiled."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

from patternforge.cli.findings import every_finding
from patternforge.design.load import load_design
from patternforge.fit.findings import Finding, Verdict
from patternforge.fit.judge import fit, fit_as_cut
from patternforge.geometry.point import Point
from patternforge.leather.material import Thickness
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import Pattern
from tests.unit.fit.found import GOOD, LOOK, NO

DESIGNS = sorted((Path(__file__).parents[3] / "designs").glob("*.yaml"))
THIN, THICK = 0.3, 4.0  # mm
ROUNDED = 0.0015  # what hides a side: the micrometre forgiven, and what three decimals round
SIZE = r"-?\d+(?:\.\d+)?"
TOLD = re.compile(
    rf"({SIZE})(?: mm2?| %)?,? +(?:good |tolerable )?(at least|at most|between) ({SIZE})(?: and ({SIZE}))?"
)

# What reads good, by hand: a thing that wants room, a thing that wants little, a size to keep to.
AT_LEAST = """
border round an opening; cap clear of stitches; cap clear of the edge; clear length on the shortest wall;
clear width between the sides of a gusset; corner of the seam, for the strip to go round;
cover beyond hidden hardware; depth between the walls; face folded in, clear of the bend;
film beyond its window; flap held closed; fold that keeps an item in; gusset opens to;
hole rim to a mouth it straddles; hole rim to edge; hole rim to fold; hole rim to fold of the gusset;
hole rim to the edge turned in; item clear of the fold; item covered at the deepest cut;
item free to be gripped; item inside the edges; item stands out of its mouth; item to spare between folds;
item's top below the edge; leather between neighbouring holes; leather from slit to edge;
leather left at a mitred corner; leather left by skiving; letters clear of folds; letters clear of stitches;
letters clear of the edge; lining clear of the bend; lining held under a turned edge; nearest two holes;
panel folded in, clear of the bend; room at the spine; skived band along a turned edge;
tab's end inside the face it holds; tongues between notches; turned in flat by
"""
AT_MOST = """
drawn short by hidden hardware; edge of a gusset longer or shorter than its seam;
face that stands out over the base; halves meet within; hidden hardware stands proud, closed;
holes of a gusset that its wall lacks; hollow left in the bend; hump, laid open; item may slide past its place;
layers between a tab and its slit; leather in the way as it closes; leather lacking at the closure, full;
leather to spare at the closure, empty; letters hidden, closed; letters hidden, laid open;
mating holes miss each other by; mitred edges lap by; outer edges apart, closed;
seams closed off before they can be sewn; step in the ground behind letters;
stitched edges of a gusset differ by; stitches meet once folded, within;
stitches of a gusset longer or shorter than its wall's; tab misses its slit by; thickest stack sewn through;
thickness at the spine; thickness closed, as loaded; thickness of a turned edge;
turned edge gathers in the fold; what lies between hidden halves, closed
"""
BETWEEN = """
clear width between stitch lines; edge mismatch, closed; fold longer than it needs; item rests off its place;
slit longer than tab and thickness by; stitch furthest from the pitch
"""


@cache
def everything_found() -> tuple[Finding, ...]:
    return tuple(
        found for path in DESIGNS for found in _found(drafted(load_design(path.read_text("utf-8"), path.name)))
    )


def _found(pattern: Pattern) -> Iterator[Finding]:
    """On the pieces as drafted, in leathers far too thin and too thick, and with all that is pierced out of place."""
    yield from fit(pattern)
    for t in (THIN, THICK):
        leathers = {each.role: replace(each, thickness=Thickness(t, t)) for each in pattern.design.leathers}
        yield from fit_as_cut(pattern, leathers)
    by = Point(1.3, -2.1)
    moved = (
        replace(
            piece,
            holes=tuple(replace(hole, at=hole.at + by * (1 + hole.index % 2)) for hole in piece.holes),
            fittings=tuple(replace(half, at=half.at + by * half.half) for half in piece.fittings),
        )
        for piece in pattern.pieces
    )
    yield from fit(replace(pattern, pieces=tuple(moved)))


def _side(line: str) -> Verdict | None:
    """Whether a line tells a measure inside its limit (good) or beyond it (no); None where rounding hides it."""
    told = TOLD.search(line)
    assert told, line
    measured, end, other = (float(told[i]) if told[i] else None for i in (1, 3, 4))
    assert measured is not None
    assert end is not None
    room = {
        "at least": measured - end,
        "at most": end - measured,
        "between": min(measured - end, (end if other is None else other) - measured),
    }[told[2]]
    return None if abs(room) < ROUNDED else GOOD if room > 0 else NO


def test_the_variants_read_good_and_look_and_no() -> None:
    counts = {verdict: sum(found.verdict is verdict for found in everything_found()) for verdict in Verdict}
    assert min(counts.values()) > 100


def test_what_is_good_keeps_to_the_limit_in_its_line_and_what_is_not_does_not() -> None:
    for found in everything_found():
        line = every_finding([found])[1]
        assert _side(line) in (None, GOOD if found.verdict is GOOD else NO), line


def test_what_is_told_in_words_has_crossed_its_limit_unless_it_is_good() -> None:
    for found in everything_found():
        assert _side(found.told) in (None, GOOD if found.verdict is GOOD else NO), found
        assert (" tolerable " in found.told) is (found.verdict is NO)


def test_what_wants_a_look_is_still_tolerable() -> None:
    for found in (each for each in everything_found() if each.verdict is LOOK and each.limit.tolerable.ends):
        line = f"{found.measured:.2f} mm, {found.limit.tolerable.told()}"
        assert _side(line) in (None, GOOD), (found, line)


@pytest.mark.parametrize(
    ("way", "kinds"),
    [("at least", AT_LEAST), ("at most", AT_MOST), ("between", BETWEEN)],
    ids=["least", "most", "both"],
)
def test_every_kind_binds_the_way_that_a_maker_would_say(way: str, kinds: str) -> None:
    assert {found.what for found in everything_found() if found.limit.good.told().startswith(way)} == {
        kind.strip() for kind in kinds.replace("\n", " ").split(";")
    }
