"""Openings in a part's front piece, with the clear sheets and seams that windows bring."""

from __future__ import annotations

from dataclasses import replace

from patternforge.errors import DraftError
from patternforge.geometry.interior import Interior
from patternforge.wallet.blank import Blank, PartBlanks
from patternforge.wallet.body import Body
from patternforge.wallet.spec import Design, Opening, Part, Side
from patternforge.wallet.spots import film_blank, film_run, opening_path

__all__ = ["with_openings"]


def with_openings(design: Design, body: Body, part: Part, made: PartBlanks) -> PartBlanks:
    """The part with its openings cut into its front piece; a window's film lies next to that piece, behind it.

    DraftError when an opening lies on a panel its part does not cover.
    """
    for opening in part.openings:
        made = _opened(design, body, opening, made)
    return made


def _opened(design: Design, body: Body, opening: Opening, made: PartBlanks) -> PartBlanks:
    at = _front(made.blanks)
    front = made.blanks[at]
    lies_on = {opening.spot.panel, opening.spot.panel + (1 if opening.spot.fold else 0)}
    if not lies_on <= set(front.panels):
        panel = body.panels[opening.spot.panel].name
        raise DraftError(f"opening '{opening.name}' lies on panel '{panel}', which the part does not cover")
    path = opening_path(body, opening)
    inside = Interior(front.shape.path)
    if not all(inside.holds(segment.start) for segment in path.segments):
        raise DraftError(f"opening '{opening.name}' reaches beyond the edges of '{front.name}'")
    front = replace(front, openings=(*front.openings, path))
    if opening.film is None:
        return replace(made, blanks=_with(made.blanks, at, [front]))
    film = film_blank(body, opening, opening.film, front)
    outwards = front.showing is Side.OUTSIDE
    pair = [front, film] if outwards else [film, front]
    run = film_run(body, opening, opening.film, front.name, design.stitching)
    return replace(made, blanks=_with(made.blanks, at, pair), runs=(*made.runs, run))


def _front(blanks: tuple[Blank, ...]) -> int:
    """The piece nearest to the eye: the innermost, or the outermost of a part that faces outwards."""
    leathers = [i for i, blank in enumerate(blanks) if not blank.lines]
    return leathers[0] if blanks[leathers[0]].showing is Side.OUTSIDE else leathers[-1]


def _with(blanks: tuple[Blank, ...], at: int, instead: list[Blank]) -> tuple[Blank, ...]:
    return (*blanks[:at], *instead, *blanks[at + 1 :])
