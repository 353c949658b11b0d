"""Letters on a piece as ink: single strokes as large as their box takes, or a guide for stamping them one by one."""

from __future__ import annotations

from collections.abc import Iterator

from patternforge.drawing.glyph import CAPITAL
from patternforge.drawing.lettering import letter_bounds, letter_strokes, letters
from patternforge.drawing.model import Align, Ink, Role, Stroke, Text
from patternforge.errors import DraftError
from patternforge.fit.findings import Finding, at_least, reaches
from patternforge.geometry.path import polyline
from patternforge.geometry.point import Bounds, Point
from patternforge.units import mm
from patternforge.wallet.marked import Inscription
from patternforge.wallet.pattern import Pattern, Piece
from patternforge.wallet.spec import Stamp

__all__ = ["letter_facts", "letter_height", "letter_inks", "letter_notes", "small_letters"]

_LEAST = 3.0  # height of capitals below which strokes run together in leather, mm; common practice, no source
_SHARE = 0.6  # of a stamp's height for the letter that says which stamp goes there
_READABLE = 2.0  # height of letters on paper, mm


def letter_inks(piece: Piece) -> tuple[Ink, ...]:
    """What is marked for the letters of a piece, on the piece: they read right on its showing face.

    Strokes fill their box without leaving it; a stamping guide is a base line with a frame for each stamp on it. All
    of role MARK. DraftError when the stamps do not fit their box, or a letter cannot be drawn.
    """
    return tuple(ink for inscription in piece.inscriptions for ink in _marked(inscription))


def letter_notes(piece: Piece) -> tuple[Ink, ...]:
    """What is only drawn for them on paper: which stamp goes where, and the box of letters still to be said."""
    return tuple(ink for inscription in piece.inscriptions for ink in _noted(inscription))


def letter_facts(piece: Piece) -> tuple[str, ...]:
    """The letters of a piece in words, so that the spelling can be proved."""
    return tuple(_fact(inscription) for inscription in piece.inscriptions)


def letter_height(inscription: Inscription) -> float | None:
    """Height of capitals as drawn, mm; None where nothing is drawn as strokes.

    >>> letter_height(Inscription("monogram", "I", Point(0, 0), 90.0, 20.0, 8.0, 3.0))
    8.0
    """
    box = None if inscription.stamp else _drawn(inscription.text)
    return None if box is None else CAPITAL * _scale(inscription, _lines(box))


def small_letters(pattern: Pattern) -> Iterator[Finding]:
    """The height of all letters drawn as strokes, against the least that leather takes."""
    for piece in pattern.pieces:
        for inscription in piece.inscriptions:
            height = letter_height(inscription)
            if height is not None:
                remedy = "" if reaches(height, _LEAST) else "make the box larger or the text shorter"
                where = f"{inscription.name} on {piece.name}"
                yield Finding("height of letters", where, height, at_least(_LEAST, 0.0), remedy)


def _marked(inscription: Inscription) -> tuple[Ink, ...]:
    return tuple(_guide(inscription, inscription.stamp) if inscription.stamp else _strokes(inscription))


def _drawn(text: str) -> Bounds | None:
    """The box of letters with capitals of ``CAPITAL`` mm, from their base line on; None where nothing is drawn."""
    return letter_bounds(Text(Role.MARK, Point(0.0, 0.0), CAPITAL, text))


def _lines(box: Bounds) -> Bounds:
    """The box of letters from their base line to the top of capitals at least, so that all texts stand alike."""
    return Bounds(box.x0, min(box.y0, 0.0), box.x1, max(box.y1, CAPITAL))


def _scale(inscription: Inscription, box: Bounds) -> float:
    tall = inscription.height / box.height
    return min(tall, inscription.width / box.width) if box.width > 0 else tall


def _strokes(inscription: Inscription) -> Iterator[Stroke]:
    """The letters, their ink in the middle of the box."""
    drawn = _drawn(inscription.text)
    if drawn is None:
        return
    box = _lines(drawn)
    scale, onto = _scale(inscription, box), inscription.from_text()
    begun = Point(0.0, 0.0) - box.centre * scale
    for stroke in letter_strokes(Text(Role.MARK, begun, scale * CAPITAL, inscription.text)):
        yield Stroke(Role.MARK, onto.path(stroke.path))


def _guide(inscription: Inscription, stamp: Stamp) -> Iterator[Stroke]:
    """The base line, the uprights between stamps, and the top of each; nothing is drawn twice."""
    places = _stamp_places(inscription, stamp)
    if not places:
        return
    onto, foot, head = inscription.from_text(), -stamp.height / 2, stamp.height / 2
    lines = [((places[0], foot), (places[-1] + stamp.width, foot))]
    sides = sorted({round(x, 9) for place in places for x in (place, place + stamp.width)})
    lines += [((x, foot), (x, head)) for x in sides]
    lines += [((place, head), (place + stamp.width, head)) for place in places]
    for a, b in lines:
        yield Stroke(Role.MARK, polyline([onto.point(Point(*a)), onto.point(Point(*b))]))


def _stamp_places(inscription: Inscription, stamp: Stamp) -> list[float]:
    """Left side of every stamp from the middle of the box; DraftError when the row does not fit the box."""
    count = len(letters(inscription.text))
    row = count * stamp.width + max(count - 1, 0) * stamp.spacing
    if row > inscription.width + 1e-9 or stamp.height > inscription.height + 1e-9:
        box = f"{mm(inscription.width)} x {mm(inscription.height)} mm"
        said = f"{count} stamps take {mm(row)} x {mm(stamp.height)} mm"
        raise DraftError(f"initials '{inscription.name}': {said}, but their box is {box}; make it larger")
    return [i * (stamp.width + stamp.spacing) - row / 2 for i in range(count)]


def _noted(inscription: Inscription) -> tuple[Ink, ...]:
    stamp = inscription.stamp
    if not inscription.text:
        return (Stroke(Role.LABEL, inscription.box),)
    return tuple(_stamp_notes(inscription, stamp)) if stamp else ()


def _stamp_notes(inscription: Inscription, stamp: Stamp) -> Iterator[Text]:
    """The letter of each stamp in its frame, all of one size, where they have room enough to be read."""
    boxes = [_drawn(letter) for letter in letters(inscription.text)]
    lines = [_lines(box) for box in boxes if box]
    tall = min((_SHARE * stamp.height / box.height for box in lines), default=0.0)
    scale = min([tall, *(_SHARE * stamp.width / box.width for box in lines if box.width > 0)])
    if scale * CAPITAL < _READABLE:
        return
    onto, angle = inscription.from_text(), inscription.up - 90.0
    for place, letter, box in zip(_stamp_places(inscription, stamp), letters(inscription.text), boxes, strict=True):
        if box:
            at = onto.point(Point(place + stamp.width / 2, -scale * _lines(box).centre.y))
            yield Text(Role.LABEL, at, scale * CAPITAL, letter, angle, Align.CENTRE)


def _fact(inscription: Inscription) -> str:
    if not inscription.text:
        return f"{inscription.name}: no letters yet"
    if inscription.stamp:
        return f"{inscription.name}: stamp {' '.join(letters(inscription.text))}, from the left"
    return f"{inscription.name}: {inscription.text}"
