"""A design is drafted anew at every save, and its faults stand over the pictures drafted last."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator
from itertools import islice
from pathlib import Path
from shutil import copy
from xml.etree import ElementTree

import pytest

from patternforge.live.shown import Standing
from patternforge.pipeline.stages import Judged
from patternforge.pipeline.watch import WatchRequest, Words, drafted_anew, saves

ROOT = Path(__file__).parents[3]


def report(wallet: Judged) -> list[str]:
    return [piece.name for piece in wallet.pattern.pieces]


def told(wallet: Judged) -> list[str]:
    return [wallet.pattern.design.title]


WORDS = Words(told, report)


@pytest.fixture
def sleeve(tmp_path: Path) -> Path:
    return Path(copy(ROOT / "designs" / "card-sleeve.yaml", tmp_path / "own.yaml"))


def test_a_save_is_told_once_and_a_quiet_file_not_at_all(sleeve: Path) -> None:
    def nothing() -> None:
        pass

    def saved() -> None:
        sleeve.write_text("a", "utf-8")

    looks: Iterator[Callable[[], None]] = iter([nothing, saved, nothing, sleeve.unlink])
    stamps = list(islice(saves(sleeve, lambda: next(looks)()), 3))
    assert len(set(stamps)) == 3
    assert stamps[-1] is None
    assert next(looks, None) is None


def test_a_save_of_the_same_length_is_told(sleeve: Path) -> None:
    def saved() -> None:
        text = sleeve.read_text("utf-8")
        sleeve.write_text(text.replace("3.5 mm", "3.6 mm", 1), "utf-8")
        os.utime(sleeve, ns=(1, 1))

    first, second = islice(saves(sleeve, saved), 2)
    assert first != second


def test_what_is_shown_is_the_design_as_it_is_saved_now(sleeve: Path) -> None:
    shown = drafted_anew(WatchRequest(sleeve), WORDS)
    assert (shown.standing, shown.lines) == (Standing.GOOD, (shown.title,))
    assert "front cards 1" in shown.report
    assert [picture.caption.split()[0] for picture in shown.pictures] == ["The", "Sections,", "Thickness"]
    for picture in shown.pictures:
        assert ElementTree.fromstring(picture.svg).tag.endswith("svg")
    wider = drafted_anew(WatchRequest(sleeve, {"margin": "4.5 mm"}), WORDS)
    assert wider.pictures[0].svg != shown.pictures[0].svg


def test_of_a_wallet_folded_from_one_piece_the_blank_is_shown() -> None:
    shown = drafted_anew(WatchRequest(ROOT / "designs" / "one-piece-card-wallet.yaml"), WORDS)
    assert len(shown.pictures) == 1


def test_faults_stand_over_the_pictures_drafted_last(sleeve: Path) -> None:
    before = drafted_anew(WatchRequest(sleeve), WORDS)
    sleeve.write_text(sleeve.read_text("utf-8").replace("leathers:", "lethers:"), "utf-8")
    after = drafted_anew(WatchRequest(sleeve), WORDS, before)
    assert (after.standing, after.title, after.pictures) == (Standing.FAULT, before.title, before.pictures)
    assert any("own.yaml:" in line and "leathers" in line for line in after.lines)
    sleeve.unlink()
    gone = drafted_anew(WatchRequest(sleeve), WORDS)
    assert (gone.standing, gone.pictures) == (Standing.FAULT, ())
    assert "there is no such file" in gone.lines[0]


def test_a_wallet_that_does_not_fit_is_shown_and_called_so() -> None:
    tight = WatchRequest(ROOT / "designs" / "two-fold.yaml", {"outer": "5 mm", "inner": "4 mm"})
    shown = drafted_anew(tight, WORDS)
    assert (shown.standing, len(shown.pictures)) == (Standing.NO, 3)
