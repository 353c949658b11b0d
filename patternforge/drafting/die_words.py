"""What the proof of a die says beside its drawing, note by note."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from patternforge.drafting.die_curves import curve_words, curves, sharp_words
from patternforge.drafting.die_limits import FINE, LEATHER, SLOT
from patternforge.drafting.die_pack import DiePack
from patternforge.drafting.dies import Die
from patternforge.drafting.names import listed
from patternforge.drafting.smallest import across
from patternforge.drawing.model import Dot, Figure, Role, Stroke
from patternforge.drawing.prose import Note
from patternforge.units import counted, mm

__all__ = ["EDGE", "die_notes", "turning_words"]

EDGE = Note(
    "Which line is the edge",
    (
        "The drawn line is the edge of the cut piece: the cut size. The inside of the cutting edge stands on it, rule"
        " and bevel outside it; in an opening rule or punch stand inside the opening.",
        "Nothing is added for rule, bevel or trimming. How the edge is set to give this size in this leather is for"
        " the die maker to judge: ask before a line is moved.",
    ),
)


def die_notes(pack: DiePack, die: Die) -> tuple[Note, ...]:
    """All that is said of one die."""
    return (
        Note(f"{counted(die.count, 'cut')} for one wallet", tuple(pack.cut_words(die))),
        Note("How it is drawn", tuple(_views(pack, die))),
        EDGE,
        Note("Sizes", tuple(_sizes(pack, die))),
        Note(f"Limits: {pack.limits.whose}", tuple(_limits(pack, die))),
    )


def _limits(pack: DiePack, die: Die) -> Iterator[str]:
    """What is finest, and what is so coarse that nothing need be said of it."""
    found = pack.fines(die)
    yield from (fine.told for fine in found)
    coarse = [what for what in (LEATHER, SLOT) if what not in [fine.what for fine in found]]
    if coarse:
        yield f"no {' and no '.join(coarse)} under {FINE:g} mm"


def _views(pack: DiePack, die: Die) -> Iterator[str]:
    first = pack.side_up(die.cuts[0])
    yield (
        f"At 1:1, seen from above on the leather, {first}. The cutting edge points away from you; seen from the"
        " cutting edge the shape is the mirror image."
    )
    if die.symmetric:
        yield "Left and right are alike: either side of the leather may be up."
    else:
        yield "Left and right DIFFER: the shape is not its own mirror image."
    if die.hands == 2:
        yield turning_words(pack, die)


def turning_words(pack: DiePack, die: Die) -> str:
    """How a die cuts the mirror image of what is drawn."""
    over = [cut for cut in die.cuts if cut.over]
    names = listed([cut.piece.name for cut in over])
    return (
        f"For {names} turn the LEATHER over ({pack.side_up(over[0])}). Turning the die over instead needs a cutting"
        " edge on both faces; a rule die on a board has one."
    )


def _sizes(pack: DiePack, die: Die) -> Iterator[str]:
    yield f"over all {pack.size_words(die)}"
    yield from (curve_words(number, curve) for number, curve in enumerate(curves(die.figure)))
    sharp = sharp_words(die.figure)
    if sharp:
        yield sharp
    yield from _openings(die.figure)
    yield _holes(die.figure)
    arcs = f"arcs as chords within {mm(pack.chords, 3)} mm" if pack.chords else "true arcs"
    yield f"file {pack.file(die)}, in mm, net size, {arcs}"


def _openings(figure: Figure) -> Iterator[str]:
    """Openings that are no round holes, by their sizes over all."""
    paths = [ink.path for ink in figure.inks if isinstance(ink, Stroke) and ink.role is Role.OPENING]
    boxes = Counter(f"{mm(p.bounds.width)} x {mm(p.bounds.height)} mm" for p in paths if p.closed and not across(p))
    yield from (f"opening {size}: {count}" for size, count in boxes.items())
    cuts = [path for path in paths if not path.closed]
    yield from (f"straight cut {size} mm long: {n}" for size, n in Counter(mm(p.length) for p in cuts).items())


def _holes(figure: Figure) -> str:
    """What the die does about stitch holes."""
    holes = [ink for ink in figure.inks if ink.role is Role.HOLE]
    marks = [ink for ink in figure.inks if ink.role is Role.MARK]
    kinds = Counter(_hole_words(ink) for ink in holes if isinstance(ink, Dot | Stroke))
    if kinds:
        return "stitch holes in the die: " + ", ".join(f"{count} {kind}" for kind, count in kinds.items())
    if marks:
        return f"stitch holes only pricked by pins: {len(marks)}"
    return "stitch holes: none in the die, and no pins"


def _hole_words(ink: Dot | Stroke) -> str:
    return f"round {mm(ink.diameter)} mm" if isinstance(ink, Dot) else f"slits {mm(ink.path.length)} mm"
