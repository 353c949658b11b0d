"""What is written on a piece, and how it is broken into lines."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from patternforge.drafting.finishing import finishing_facts
from patternforge.drawing.lettering import text_width
from patternforge.geometry.point import Point
from patternforge.leather.material import MadeOf, Stretch
from patternforge.units import mm
from patternforge.wallet.pattern import Pattern, Piece
from patternforge.wallet.spec import Edge
from patternforge.wallet.strip import StripPlacement

__all__ = ["OVER", "TIGHT", "UNDER", "Block", "Wording", "block", "edge_words", "facts", "wording"]

# The tight way of the hide lies across its stretch.
TIGHT = {Stretch.ACROSS: "up and down", Stretch.ALONG: "across"}

_HEADING = 1.5  # height of the name over the height of the rest
_PITCH = 1.7  # base line to base line over the height of the letters
UNDER = 0.4  # what letters may hang below their base line, over their height
OVER = 0.4  # what accents may stand above capitals, over their height
_OUTWARD = {
    Edge.LEFT: Point(-1.0, 0.0),
    Edge.RIGHT: Point(1.0, 0.0),
    Edge.BOTTOM: Point(0.0, -1.0),
    Edge.TOP: Point(0.0, 1.0),
}


@dataclass(frozen=True, slots=True)
class Block:
    """Lines of text under one another: each with the height of its capitals and its base line, mm from the top."""

    lines: tuple[tuple[str, float, float], ...]
    width: float
    height: float


@dataclass(frozen=True, slots=True)
class Wording:
    """The name of a piece and what is to be said of it; ``widths`` of its words in letters of 1 mm height."""

    heading: str
    facts: tuple[str, ...]
    widths: Mapping[str, float]

    def width(self, text: str) -> float:
        """Width of a line of these words over the height of its letters."""
        words = text.split()
        return sum(self.widths[word] for word in words) + (len(words) - 1) * self.widths[" "]

    @property
    def longest(self) -> float:
        """Width of the longest fact over the height of its letters."""
        return max(self.width(fact) for fact in self.facts)


def facts(pattern: Pattern, piece: Piece) -> tuple[str, ...]:
    """What a maker must know of a piece besides its name, one fact each.

    Number, sheet, thickness drafted for, face (of leather), side, whether it is seen, tight way and stretch if known,
    revision, the seams of a gusset, what to trim, skive and turn in.
    """
    leather = pattern.design.leather(piece.leather)
    known = (
        f"cut {piece.quantity} of {leather.role}",
        f"{leather.made_of.value}: {leather.name}" if leather.name else "",
        f"drafted for {mm(leather.t)} mm",
        f"{leather.face.value} side up" if leather.made_of is MadeOf.LEATHER else "",
        f"lies behind {piece.lines}" if piece.lines else "",
        f"faces {piece.showing.value}",
        "seen when made up" if piece.visible else "hidden when made up",
        f"tight way {TIGHT[leather.stretch]}" if leather.stretch in TIGHT else "",
        f"stretch {leather.stretch.value}" if leather.stretch in TIGHT else "",
        f"revision {pattern.design.revision}" if pattern.design.revision else "",
        _sewn_edges(piece),
        *(f"trim {mm(size)} mm off the {edge_words(piece, edge)} once glued" for edge, size in piece.trims if size),
        *finishing_facts(pattern, piece, edge_words),
    )
    return tuple(fact for fact in known if fact)


def _sewn_edges(piece: Piece) -> str:
    """Which seam goes along which long edge of a gusset as drawn; nothing for any other piece."""
    if not isinstance(piece.placement, StripPlacement):
        return ""
    lower, upper = (row.seam for row in piece.placement.rows)
    return f"lower edge in seam {lower}, upper edge in seam {upper}"


def edge_words(piece: Piece, edge: Edge) -> str:
    """Where an edge of the assembly lies on the piece as drawn, which may be turned or mirrored."""
    outward = piece.placement.onto_piece.direction(_OUTWARD[edge])
    return max(_OUTWARD, key=lambda side: _OUTWARD[side].dot(outward)).value


def wording(heading: str, words: Sequence[str]) -> Wording:
    """``heading`` and facts, every word of them measured once; DraftError for a letter that cannot be drawn."""
    known = {part for line in (heading, *words) for word in line.split() for part in (word, f"{word};")}
    return Wording(heading, tuple(words), {word: text_width(word, 1.0) for word in sorted({" ", *known})})


def block(said: Wording, height: float, wrap: float | None) -> Block | None:
    """The heading in larger letters over the facts in letters of ``height`` mm.

    With ``wrap`` the facts run on in lines of at most so many mm, parted by semicolons within a line and by its end;
    without it each takes a line of its own. None when a single word is wider than ``wrap``.

    >>> said = wording("shell", ["cut 1", "revision A", "hidden when made up"])
    >>> [line for line, _, _ in block(said, 2.0, 40.0).lines]
    ['shell', 'cut 1; revision A', 'hidden when made up']
    """
    large = _HEADING * height
    if wrap is None:
        return _set(said, (said.heading,), said.facts, height)
    first = _filled(said, said.heading.split(), wrap / large)
    rest = _filled(said, [*(f"{fact};" for fact in said.facts[:-1]), *said.facts[-1:]], wrap / height)
    lines = tuple(line.removesuffix(";") for line in rest)
    return _set(said, first, lines, height) if first and lines else None


def _filled(said: Wording, parts: Sequence[str], wrap: float) -> tuple[str, ...]:
    """Parts run on in lines of at most ``wrap`` heights, only a wider part broken within; () if a word is wider."""
    lines: list[str] = []
    for part in parts:
        longer = f"{lines[-1]} {part}" if lines else part
        if said.width(longer) <= wrap:
            lines[-1:] = [longer]
        elif said.width(part) <= wrap:
            lines.append(part)
        else:
            inner = _filled(said, part.split(), wrap) if " " in part else ()
            if not inner:
                return ()
            lines += inner
    return tuple(lines)


def _set(said: Wording, heading: tuple[str, ...], rest: tuple[str, ...], height: float) -> Block:
    lines: list[tuple[str, float, float]] = []
    down = 0.0
    large = _HEADING * height
    for text, size in (*((line, large) for line in heading), *((line, height) for line in rest)):
        down += _PITCH * size if lines else (1 + OVER) * size
        lines.append((text, size, down))
    width = max(said.width(text) * size for text, size, _ in lines)
    return Block(tuple(lines), width, down + UNDER * lines[-1][1])
