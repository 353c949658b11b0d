"""Words on the flaps of folded wallets."""

from __future__ import annotations

from dataclasses import replace

from patternforge.drafting.face_words import face_words
from patternforge.drafting.labels import label_inks
from patternforge.drafting.pieces import figures
from patternforge.drafting.purpose import Purpose
from patternforge.drawing.lettering import text_width
from patternforge.drawing.model import Text
from patternforge.geometry.point import Point
from patternforge.wallet.assemble import drafted
from patternforge.wallet.folded.spec import FaceSpec, FoldedSpec
from tests.designs_built import sleeve
from tests.folded_built import design_of, envelope, flap


def test_every_flap_says_when_it_is_folded_and_stands_on_its_face() -> None:
    pattern = drafted(envelope())
    piece, folded = pattern.pieces[0], pattern.folded
    texts = face_words(pattern, piece)
    assert [text.content for text in texts] == ["fold 1: left", "fold 2: right", "fold 3: front", "fold 4: lid"]
    assert folded is not None
    for text, hinge in zip(texts, folded.hinges, strict=True):
        face = next(face for face in folded.faces if face.name == hinge.face)
        outline = piece.placement.onto_piece.path(face.outline)
        width = text_width(text.content, text.height)
        assert all(outline.contains(text.at + Point(x, y)) for x in (0.0, width) for y in (0.0, text.height))


def test_a_flap_folded_outwards_says_so() -> None:
    specs = (FaceSpec("back", width=90.0, height=60.0), flap("tail", "back", "left", 60.0, -180.0))
    pattern = drafted(design_of(FoldedSpec("main", specs, ("tail",))))
    assert [text.content for text in face_words(pattern, pattern.pieces[0])] == ["fold 1 outwards: tail"]


def test_a_flap_too_small_for_words_stays_bare() -> None:
    specs = (FaceSpec("back", width=90.0, height=60.0), flap("a tail with a long name", "back", "left", 9.0))
    pattern = drafted(design_of(FoldedSpec("main", specs, ("a tail with a long name",))))
    assert face_words(pattern, pattern.pieces[0]) == ()


def test_other_wallets_have_none_and_a_label_keeps_clear_of_them() -> None:
    plain = drafted(sleeve())
    assert face_words(plain, plain.pieces[0]) == ()
    pattern = drafted(envelope())
    inks = label_inks(pattern, pattern.pieces[0])
    assert {"blank", "fold 4: lid"} <= {ink.content for ink in inks if isinstance(ink, Text)}


def test_words_are_for_paper_alone() -> None:
    for purpose in (Purpose.LASER, Purpose.DIE):
        (figure,) = figures(drafted(replace(envelope(), title="Any")), purpose)
        assert not any(isinstance(ink, Text) for ink in figure.inks)
