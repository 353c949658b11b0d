"""What is written on a piece, and how it is broken into lines."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from patternforge.drawing.lettering import text_width
from patternforge.geometry.point import Point
from patternforge.leather.material import Leather, Stretch
from patternforge.units import mm
from patternforge.wallet.pattern import Pattern, Piece
from patternforge.wallet.spec import Edge

__all__ = ["TIGHT", "Block", "block", "facts"]

# The tight way of the hide lies across its stretch.
TIGHT = {Stretch.ACROSS: "up and down", Stretch.ALONG: "across"}

_HEADING = 1.5  # height of the name over the height of the rest
_PITCH = 1.7  # base line to base line over the height of the letters
_UNDER = 0.4  # what letters may hang below their base line, over their height
_OVER = 0.4  # what accents may stand above capitals, over their height
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


def facts(pattern: Pattern, piece: Piece) -> tuple[str, ...]:
    """What a maker must know of a piece besides its name, one fact each.

    Number, leather, thickness drafted for, faces, whether it is seen, tight way (if known), revision, what to trim.
    """
    leather = pattern.design.leather(piece.leather)
    known = (
        f"cut {piece.quantity} of {_leather_words(leather)}",
        f"drafted for {mm(leather.t)} mm",
        f"{leather.face.value} side up, faces {piece.showing.value}",
        "seen when made up" if piece.visible else "hidden when made up",
        f"tight way {TIGHT[leather.stretch]}" if leather.stretch in TIGHT else "",
        f"revision {pattern.design.revision}" if pattern.design.revision else "",
        *(f"trim {mm(size)} mm off the {_edge_words(piece, edge)} once glued" for edge, size in piece.trims if size),
    )
    return tuple(fact for fact in known if fact)


def _leather_words(leather: Leather) -> str:
    return f"{leather.role} ({leather.name})" if leather.name else leather.role


def _edge_words(piece: Piece, edge: Edge) -> str:
    """Where an edge of the assembly lies on the piece as drawn, which may be turned or mirrored."""
    outward = piece.placement.onto_piece.direction(_OUTWARD[edge])
    return max(_OUTWARD, key=lambda side: _OUTWARD[side].dot(outward)).value


def block(heading: str, words: Sequence[str], height: float, wrap: float | None) -> Block | None:
    """``heading`` in larger letters over ``words`` in letters of ``height`` mm.

    With ``wrap`` the facts in ``words`` run on, parted by semicolons, in lines of at most so many mm; without it each
    takes a line of its own. None when a single word is wider than ``wrap``.

    >>> [line for line, _, _ in block("shell", ["cut 1", "revision A"], 2.0, 40.0).lines]
    ['shell', 'cut 1; revision A']
    """
    large = _HEADING * height
    if wrap is None:
        return _set((heading,), tuple(words), large, height)
    first = _filled(heading.split(), large, wrap)
    rest = _filled([*(f"{fact};" for fact in words[:-1]), *words[-1:]], height, wrap)
    return _set(first, rest, large, height) if first and rest else None


def _filled(parts: Sequence[str], height: float, wrap: float) -> tuple[str, ...]:
    """Parts run on in lines of at most ``wrap`` mm, only a wider part broken within; nothing if a word is wider."""
    lines: list[str] = []
    for part in parts:
        longer = f"{lines[-1]} {part}" if lines else part
        if lines and text_width(longer, height) <= wrap:
            lines[-1] = longer
        elif text_width(part, height) <= wrap:
            lines.append(part)
        else:
            inner = _filled(part.split(), height, wrap) if " " in part else ()
            if not inner:
                return ()
            lines += inner
    return tuple(lines)


def _set(heading: tuple[str, ...], rest: tuple[str, ...], large: float, height: float) -> Block:
    lines: list[tuple[str, float, float]] = []
    down = 0.0
    for text, size in (*((line, large) for line in heading), *((line, height) for line in rest)):
        down += _PITCH * size if lines else (1 + _OVER) * size
        lines.append((text, size, down))
    width = max(text_width(text, size) for text, size, _ in lines)
    return Block(tuple(lines), width, down + _UNDER * lines[-1][1])
