"""Whole small wallets: which seam goes through which piece, how long and with how much thread, what is refused."""

from __future__ import annotations

from dataclasses import replace

import pytest

from patternforge.errors import DraftError
from patternforge.wallet.assemble import drafted
from patternforge.wallet.pattern import EdgeRole, Pattern, Seam
from patternforge.wallet.spec import (
    CornerStyle,
    Edge,
    Fastening,
    FoldSpec,
    Held,
    LayerPart,
    Mode,
    SeamSpec,
    Side,
    Stitching,
)
from tests.unit.wallet.built import RIM, STITCHING, bank, corners_of, pocket, shell, wallet

SHARP = replace(RIM, end=4.0, corners=CornerStyle.SHARP)
ROUND = (Edge.LEFT, Edge.BOTTOM, Edge.RIGHT, Edge.TOP)
LINING = LayerPart("lining", "inner", 0, 0)
PADDING = LayerPart("padding", "inner", 0, 0, fastened=Fastening.GLUED, line=6)


def seam(pattern: Pattern, name: str) -> Seam:
    return next(each for each in pattern.seams if each.name == name)


def test_pieces_come_from_the_outside_in_slot_one_last() -> None:
    outer = bank(name="front", facing=Side.OUTSIDE, slots=2)
    pattern = drafted(wallet(outer, shell(1), bank(slots=2), seams=(SHARP,)))
    assert [(piece.name, piece.part, piece.level) for piece in pattern.pieces] == [
        ("front 1", "front", 0),
        ("front 2", "front", 1),
        ("shell", "shell", 2),
        ("bank 2", "bank", 3),
        ("bank 1", "bank", 4),
    ]


def test_a_seam_takes_every_hole_that_lies_in_a_piece_and_no_other() -> None:
    # Holes at 4, 8 ... 76 on both sides and 4 ... 96 along the bottom: 18 + 23 + 18 stitches, 60 holes.
    pattern = drafted(wallet(shell(1), pocket(depth=38.0), seams=(SHARP,)))
    assert len(seam(pattern, "rim").holes) == 60
    assert len(pattern.piece("shell").holes) == 60
    # The pocket's mouth at 42: holes up to 40 on both sides, ten each with the corner's, and 22 between the corners.
    assert len(pattern.piece("pocket").holes) == 2 * 10 + 22


def test_an_open_seam_is_as_long_as_its_stitches_and_takes_two_threads_and_two_stacks() -> None:
    pattern = drafted(wallet(shell(1), LINING, seams=(SHARP,)))
    rim = seam(pattern, "rim")
    assert rim.length == pytest.approx(72 + 92 + 72)
    assert rim.spacings == pytest.approx([4.0] * 59)
    # Two leathers of 1.2 and 0.8 mm at each of 59 stitches: 2 x (236 + 59 x 2) and 150 of tails.
    assert rim.thread == pytest.approx(2 * (236 + 118) + 150)


def test_a_loop_has_a_stitch_for_every_hole() -> None:
    pattern = drafted(wallet(shell(1), LINING, seams=(replace(SHARP, along=ROUND),)))
    rim = seam(pattern, "rim")
    assert len(rim.holes) == len(rim.spacings) == 82
    assert rim.length == pytest.approx(2 * (92 + 72))
    assert rim.thread == pytest.approx(2 * (328 + 82 * 2) + 150)


def test_a_stack_counts_only_the_pieces_that_are_there() -> None:
    # Above the pocket's mouth at 42 the rim passes the shell alone: 9 stitches down to 40 leave holes above it on
    # the left and, on the right, 8 of the holes at 44 and up, as a stack is counted where a stitch begins.
    pattern = drafted(wallet(shell(1), pocket(depth=38.0), seams=(SHARP,)))
    rim = seam(pattern, "rim")
    high = sum(hole.at.y > 42 for hole in rim.holes[:-1])
    assert high == 9 + 8
    assert rim.thread == pytest.approx(2 * (236 + 59 * 1.2 + (59 - high) * 0.8) + 150)


def test_a_seam_through_named_parts_leaves_the_others_whole() -> None:
    named = replace(SHARP, through=("shell", "lining"))
    pattern = drafted(wallet(shell(1), LINING, pocket(depth=38.0), seams=(named, replace(SHARP, name="two"))))
    assert {hole.seam for hole in pattern.piece("pocket").holes} == {"two"}
    assert seam(pattern, "rim").pieces == ("shell", "lining")
    assert {hole.seam for hole in pattern.piece("shell").holes} == {"rim", "two"}


def test_stop_rows_hold_a_tee_to_the_layer_behind() -> None:
    pattern = drafted(wallet(shell(1), LINING, bank(), seams=(SHARP,)))
    # The stem of slot 3 ends at 20, above the row of slot 2 at 14.
    assert seam(pattern, "bank stop 2").pieces == ("lining", "bank 2")
    assert seam(pattern, "bank stop 3").pieces == ("lining", "bank 3")
    assert seam(pattern, "bank stop 3").inner
    assert not seam(pattern, "rim").inner


def test_own_seams_keep_the_designs_pitch_by_name_and_follow_the_rims_spacing() -> None:
    # 71 mm up the side are 18 stitches: 3.944; the row of 76 mm along the floor has 19 of 4.
    pattern = drafted(wallet(shell(1), bank(), seams=(replace(SHARP, end=5.0),)))
    stop = seam(pattern, "bank stop 2")
    assert stop.stitching.pitch == 4.0
    assert stop.spacings == pytest.approx([76 / 19] * 19)


def test_an_iron_holds_its_pitch_on_every_seam() -> None:
    iron = Stitching(pitch=4.0, mode=Mode.IRON)
    part = bank(exact=())
    pattern = drafted(wallet(shell(1), part, seams=(replace(SHARP, stitching=iron),), stitching=iron, height=None))
    for each in pattern.seams:
        assert each.spacings == pytest.approx([4.0] * len(each.spacings))


def test_trimmed_edges_are_told_with_the_piece() -> None:
    trim = ((Edge.RIGHT, 1.5),)
    pattern = drafted(wallet(shell(1, trim=trim), LINING, seams=(SHARP,)))
    assert pattern.piece("shell").trims == trim
    assert pattern.piece("shell").width == pytest.approx(101.5)
    assert EdgeRole.TRIMMED in pattern.piece("shell").edges
    # Shown outside, the piece is mirrored: what is trimmed on the right of the assembly is on its left.
    assert pattern.piece("shell").holes[0].at.x == pytest.approx(101.5 - 4.0)


def test_a_pattern_carries_its_sizes_pockets_and_moves() -> None:
    notes = replace(LINING, holds=(Held("note", 4),))
    design = wallet(shell(1), notes, pocket(exact=(), depth=41.0), seams=(SHARP,))
    pattern = drafted(design)
    assert (pattern.width, pattern.height) == (100.0, 80.0)
    assert {piece.quantity for piece in pattern.pieces} == {1}
    assert [(room.part, room.content, room.count, room.held) for room in pattern.pockets] == [
        ("lining", "note", 4, True),
        ("pocket", "card", 1, False),
    ]
    assert [(move.part, move.size) for move in pattern.adjustments] == [("pocket", "depth")]
    assert corners_of(pattern.piece("pocket")) == {(0, 0), (100, 0), (100, 46), (0, 46)}


def test_one_piece_alone_needs_no_seam() -> None:
    assert drafted(wallet(shell(1), seams=())).piece("shell").holes == ()


@pytest.mark.parametrize(
    ("parts", "seams", "words"),
    [
        ((shell(1), replace(LINING, line=5)), (), r"small\.yaml:\d+: no seam holds shell, lining: let a seam go"),
        (
            (shell(1), replace(LINING, line=5)),
            (replace(SHARP, through=("shell",)),),
            r"small\.yaml:5: no seam holds lining: let a seam go through it, or write 'fastened: glued'",
        ),
        ((pocket(), shell(1)), (SHARP,), r"small\.yaml:7: 'pocket': no layer stands behind it"),
        ((shell(1), LINING), (replace(SHARP, margin=50.0),), r"seam 'rim' \(line 9\): a margin of 50\.00 mm"),
    ],
)
def test_what_cannot_be_made_is_refused(
    parts: tuple[LayerPart, ...], seams: tuple[SeamSpec, ...], words: str
) -> None:
    with pytest.raises(DraftError, match=words):
        drafted(wallet(*parts, seams=seams))


def test_no_seam_goes_through_what_is_glued_nor_is_a_pocket_sewn_to_it() -> None:
    def made(middle: LayerPart) -> Pattern:
        return drafted(wallet(shell(1), middle, pocket(opening=Edge.RIGHT), seams=(SHARP,)))

    padded, sewn = made(PADDING), made(replace(PADDING, fastened=Fastening.SEWN))
    assert {"padding"} < {name for each in sewn.seams for name in each.pieces}
    assert {name for each in padded.seams for name in each.pieces} == {"shell", "pocket"}
    assert padded.piece("padding").holes == ()
    assert set(padded.piece("padding").made_edges) == {EdgeRole.RAW}
    assert EdgeRole.SEWN in sewn.piece("padding").made_edges


def test_a_fold_that_nothing_crosses_is_refused() -> None:
    halves = (shell(1), LayerPart("other", "outer", 1, 1))
    with pytest.raises(DraftError, match="fold 1 is crossed by no layer"):
        drafted(wallet(*halves, widths=(100.0, 100.0), folds=(FoldSpec(),), seams=(SHARP,)))


def test_both_modes_of_stitching_may_stand_side_by_side() -> None:
    top = SeamSpec("top", (Edge.TOP,), margin=10.0, end=10.0, stitching=replace(STITCHING, pitch=3.0))
    pattern = drafted(wallet(shell(1), LINING, seams=(SHARP, top)))
    assert seam(pattern, "top").spacings == pytest.approx([80 / 27] * 27)
