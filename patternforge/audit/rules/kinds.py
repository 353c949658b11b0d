"""Is there nothing but lines, arcs and circles, flat, plainly scaled and in sight?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from patternforge.audit.flaws import Flaw
from patternforge.audit.model import Odd
from patternforge.audit.scene import Scene
from patternforge.fit.findings import Verdict

__all__ = ["kind_flaws", "sight_flaws", "zero_flaws"]


@dataclass(frozen=True, slots=True)
class _Word:
    """What is said of an oddity; ``{}`` stands for its detail."""

    verdict: Verdict
    what: str
    remedy: str


_STROKES = "take it out; letters that are to be cut or scored go in as strokes"
_WORDS: Mapping[Odd, _Word] = MappingProxyType(
    {
        Odd.SPLINE: _Word(Verdict.NO, "a spline: many machines refuse it or break it up", "export curves as arcs"),
        Odd.ELLIPSE: _Word(Verdict.NO, "an ellipse: many machines refuse it", "draw it with arcs"),
        Odd.CURVE: _Word(
            Verdict.LOOK, "a curve that is no arc: it is cut in short bits", "draw round corners with arcs"
        ),
        Odd.TEXT: _Word(Verdict.NO, "text {}: it hangs on fonts, and is dropped or cut", _STROKES),
        Odd.HATCH: _Word(Verdict.NO, "a filled area ({})", "take it out and leave its outline"),
        Odd.DIMENSION: _Word(Verdict.NO, "a dimension ({})", "take it out"),
        Odd.POINT: _Word(
            Verdict.LOOK, "a point: some machines prick it, most drop it", "draw a small circle instead"
        ),
        Odd.IMAGE: _Word(Verdict.NO, "a picture ({})", "take it out"),
        Odd.BLOCK: _Word(
            Verdict.NO, "a block ({}): some machines drop what is in it", "explode it, or unlink the copy"
        ),
        Odd.FOREIGN: _Word(Verdict.NO, "{} is nothing that can be cut", "take it out"),
        Odd.LIGHT: _Word(
            Verdict.NO,
            "a light polyline in R12, which does not know it",
            "export as R2000 or newer, or as old polylines",
        ),
        Odd.STRAY_BULGE: _Word(
            Verdict.LOOK, "a bulge of {} on the last vertex of an open polyline", "close it, or take the bulge off"
        ),
        Odd.LIFTED: _Word(Verdict.LOOK, "lies off the plane: {}", "flatten it to z = 0"),
        Odd.TILTED: _Word(Verdict.NO, "{}: some machines cut it mirrored", "flatten it and mirror it in the plane"),
        Odd.UNEVEN: _Word(Verdict.NO, "scaled unevenly: {}", "draw it true to size"),
        Odd.BROKEN: _Word(Verdict.NO, "{}", "set it right and export again"),
        Odd.ZERO: _Word(Verdict.LOOK, "a line without length: some machines burn a spot", "take it out"),
        Odd.HIDDEN: _Word(
            Verdict.LOOK, "hidden ({}): some machines cut it all the same", "take out what is not to be cut"
        ),
        Odd.PAPER: _Word(Verdict.LOOK, "on a paper layout: some machines cut it too", "take it out"),
        Odd.CLIPPED: _Word(
            Verdict.NO, "clipped: what is clipped away is cut all the same", "cut the lines off where they are to end"
        ),
    }
)
_SIGHT = frozenset((Odd.HIDDEN, Odd.PAPER, Odd.CLIPPED))


def kind_flaws(scene: Scene) -> Iterator[Flaw]:
    """Whatever is no line, arc or circle, or does not lie plainly in the plane."""
    yield from _flaws(scene, frozenset(_WORDS) - _SIGHT - {Odd.ZERO})


def sight_flaws(scene: Scene) -> Iterator[Flaw]:
    """Whatever is hidden or clipped."""
    yield from _flaws(scene, _SIGHT)


def zero_flaws(scene: Scene) -> Iterator[Flaw]:
    """Lines that start where they end."""
    yield from _flaws(scene, frozenset((Odd.ZERO,)))


def _flaws(scene: Scene, odds: frozenset[Odd]) -> Iterator[Flaw]:
    found = [(each, "") for each in scene.file.oddities]
    found += [(each, entity.name) for entity in scene.file.entities for each in entity.oddities]
    for oddity, name in found:
        if oddity.odd in odds:
            word = _WORDS[oddity.odd]
            yield Flaw(word.verdict, oddity.odd.value, _said(word.what, oddity.detail), word.remedy, oddity.at, name)


def _said(words: str, detail: str) -> str:
    return words.format(detail) if detail else words.replace(" ({})", "").replace(" {}", "").replace("{}", "it")
