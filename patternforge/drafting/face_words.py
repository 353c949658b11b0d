"""What is written on the flaps of a folded wallet: when each is folded, which way if not inwards, and its name."""

from __future__ import annotations

from patternforge.drafting.rooms import floor, path_barriers, room
from patternforge.drafting.wording import OVER, UNDER
from patternforge.drawing.lettering import text_width
from patternforge.drawing.model import Role, Text
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.wallet.folded.pattern import DraftedHinge
from patternforge.wallet.pattern import Pattern, Piece

__all__ = ["face_words"]

_CLEAR = 1.0  # words to any line, mm
_HEIGHTS = (3.0, 2.5, 2.0)  # of letters, mm


def face_words(pattern: Pattern, piece: Piece) -> tuple[Text, ...]:
    """The words for every flap that has room for them, level on the piece; none for other wallets."""
    if pattern.folded is None:
        return ()
    onto = piece.placement.onto_piece
    outlines = {face.name: onto.path(face.outline) for face in pattern.folded.faces}
    found = (_words(outlines[hinge.face], piece.openings, _said(hinge)) for hinge in pattern.folded.hinges)
    return tuple(text for text in found if text)


def _said(hinge: DraftedHinge) -> str:
    return f"fold {hinge.number}{'' if hinge.angle > 0 else ' outwards'}: {hinge.face}"


def _words(outline: Path, openings: tuple[Path, ...], said: str) -> Text | None:
    walls = (
        *path_barriers(outline, _CLEAR, bounds=True),
        *(wall for opening in openings for wall in path_barriers(opening, _CLEAR, bounds=False)),
    )
    ground = floor(walls)
    for height in _HEIGHTS:
        box = room(ground, text_width(said, height), (1 + OVER + UNDER) * height)
        if box:
            return Text(Role.LABEL, Point(box.x0, box.y0 + UNDER * height), height, said)
    return None
