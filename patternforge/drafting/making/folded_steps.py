"""The steps of making a wallet folded from one piece: cut, crease, fold in order, push the tabs through."""

from __future__ import annotations

from collections.abc import Iterator

from patternforge.drafting.rooms import Barrier, floor, path_barriers, room
from patternforge.drafting.wording import OVER, UNDER
from patternforge.drawing.document import Picture, Step
from patternforge.drawing.extent import extent, placed
from patternforge.drawing.lettering import text_width
from patternforge.drawing.model import Area, Figure, Ink, Role, Sheet, Stroke, Text
from patternforge.drawing.scaled import scaled_ink, scaled_path
from patternforge.geometry.path import Path, polyline
from patternforge.geometry.point import Point
from patternforge.geometry.transform import translation
from patternforge.wallet.folded.pattern import DraftedFolded, DraftedHinge
from patternforge.wallet.pattern import Pattern

__all__ = ["folded_steps"]

_LETTERS = 2.0  # mm
_CLEAR = 0.5  # words to any line, mm
_RIM = 2.0  # mm
_NOW, _DONE = 0.35, 0.1  # tones of the flap that is folded and of those that are
_SHARE = 0.44  # of the width of a page, so that words go beside the picture


def folded_steps(pattern: Pattern, folded: DraftedFolded, width: float, height: float) -> Iterator[Step]:
    """Steps with a picture of the blank seen from the inside; the flap that a step folds is toned."""
    hinges = sorted(folded.hinges, key=lambda hinge: hinge.number)
    cut = "Cut the blank with its slits and openings; punch the small round holes where a cut ends at a fold first."
    words = [cut, "Crease every fold between its two lines, and finish the edges while the piece lies flat."]
    words += [_fold_words(folded, hinge) for hinge in hinges]
    if folded.rooms:
        words.append(f"Put in what it holds: {', '.join(_room_words(folded))}.")
    for number, told in enumerate(words, start=1):
        at = number - 3
        now = hinges[at] if 0 <= at < len(hinges) else None
        done = frozenset(hinge.face for hinge in hinges[: max(at, 0)])
        yield Step(
            number, told, _picture(pattern, folded, now, done, (width * _SHARE, height), f"step {number}: {told}")
        )


def _fold_words(folded: DraftedFolded, hinge: DraftedHinge) -> str:
    way = "inwards, over all that is folded" if hinge.angle > 0 else "outwards"
    tabs = [tab for tab in folded.tabs if tab.face == hinge.face]
    pushed = "".join(f" Push {tab.name} through the slit in {tab.into}." for tab in tabs)
    return f"Fold {hinge.face} {way}, by {abs(hinge.angle):g} degrees, on {hinge.on}.{pushed}"


def _room_words(folded: DraftedFolded) -> Iterator[str]:
    yield from (
        f"{room.count} x {room.content} between {room.between[0]} and {room.between[1]}" for room in folded.rooms
    )


def _picture(
    pattern: Pattern,
    folded: DraftedFolded,
    now: DraftedHinge | None,
    done: frozenset[str],
    most: tuple[float, float],
    told: str,
) -> Picture:
    drawn = list(_blank(pattern, folded, now, done))
    box = extent(drawn)
    factor = min(1.0, (most[0] - 2 * _RIM) / box.width, (most[1] - 2 * _RIM) / box.height)
    small = [scaled_ink(ink, factor) for ink in drawn]
    names = tuple(_names(pattern, folded, factor))
    shift = translation(_RIM - box.x0 * factor, _RIM - box.y0 * factor)
    inks = tuple(placed(ink, shift) for ink in (*small, *names))
    size = (box.width * factor + 2 * _RIM, box.height * factor + 2 * _RIM)
    return Picture(Sheet(f"{pattern.design.name}-fold", *size, (Figure("blank", "", inks),)), "", told)


def _blank(pattern: Pattern, folded: DraftedFolded, now: DraftedHinge | None, done: frozenset[str]) -> Iterator[Ink]:
    for face in folded.faces:
        tone = _NOW if now and face.name == now.face else _DONE if face.name in done else 0.0
        if tone:
            yield Area(Role.TINT, (face.outline,), tone)
    piece = pattern.pieces[0]
    back = piece.placement.onto_piece.inverse()
    yield from (Stroke(Role.OUTLINE, back.path(path)) for path in (piece.outline, *piece.openings))
    for hinge in folded.hinges:
        role = Role.OUTLINE if hinge is now else Role.FOLD
        yield from (Stroke(role, polyline(line)) for line in (hinge.near, hinge.far))


def _names(pattern: Pattern, folded: DraftedFolded, factor: float) -> Iterator[Text]:
    """The name of every face that has room for it clear of its edges and of what is cut out of it."""
    piece = pattern.pieces[0]
    back = piece.placement.onto_piece.inverse()
    openings = [wall for each in piece.openings for wall in _walls(back.path(each), factor, bounds=False)]
    for face in folded.faces:
        ground = floor((*_walls(face.outline, factor, bounds=True), *openings))
        box = room(ground, text_width(face.name, _LETTERS), (1 + OVER + UNDER) * _LETTERS)
        if box:
            yield Text(Role.LABEL, Point(box.x0, box.y0 + UNDER * _LETTERS), _LETTERS, face.name)


def _walls(path: Path, factor: float, bounds: bool) -> tuple[Barrier, ...]:
    return path_barriers(scaled_path(path, factor), _CLEAR, bounds=bounds)
