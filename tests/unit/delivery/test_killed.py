"""Deliveries cut short at every step: the folder holds the old set or the new one, whole, with all of the user's.

Each step is a call to the system that changes the disk; the process ends right before it (in the middle of it, where
bytes are written), so that every state that a kill can leave is met.
"""

from __future__ import annotations

import shutil
from collections.abc import Callable
from functools import partial
from pathlib import Path

import pytest

from patternforge.delivery.folder import delivered
from patternforge.delivery.listing import LIST, listing
from tests.unit.delivery.killing import DIED, DONE, OVERCOME, REFUSED, everything, in_two_steps, outcome, outcomes

OLD = {"a.txt": b"old a", "laser/b.txt": b"old b", "die/c.txt": b"old c"}
NEW = {"a.txt": b"new a", "laser/b.txt": b"new b " * 40, "paper/d.txt": b"new d"}
NEXT = {"a.txt": b"next"}
MINE = {"notes.txt": b"mine", "laser/mine/drawing.txt": b"mine too", "z.txt": b""}
FEWEST_STEPS = 30


@pytest.fixture(autouse=True)
def _no_waiting_for_the_disk(monkeypatch: pytest.MonkeyPatch) -> None:
    """A kill loses nothing that the system has taken, on the disk or not; waiting takes nearly all of the time."""
    monkeypatch.setattr("patternforge.delivery.staging.settle", lambda tree: None)
    monkeypatch.setattr("patternforge.delivery.folder.settle_names", lambda folder: None)


def whole(files: dict[str, bytes], mine: dict[str, bytes]) -> dict[str, bytes | str | None]:
    """A folder with these files, their list, and these of the user's."""
    content = {**files, **mine, LIST: listing(files)}
    folders = {str(parent): None for path in content for parent in Path(path).parents if str(parent) != "."}
    return {**content, **folders}


def old_set(place: Path) -> Callable[[], None]:
    """Lays out a folder with the old set and files of the user's."""

    def lay_out() -> None:
        shutil.rmtree(place.parent, ignore_errors=True)
        delivered(place, OLD)
        for path, data in MINE.items():
            (place / path).parent.mkdir(parents=True, exist_ok=True)
            (place / path).write_bytes(data)

    return lay_out


def nothing_yet(place: Path) -> Callable[[], None]:
    def lay_out() -> None:
        shutil.rmtree(place.parent, ignore_errors=True)
        place.parent.mkdir()

    return lay_out


@pytest.mark.parametrize("end", [DIED, REFUSED])
def test_a_run_cut_short_at_any_step_leaves_the_old_set_or_the_new_one(tmp_path: Path, end: int) -> None:
    place = tmp_path / "out" / "wallet"
    lawful = [whole(OLD, MINE), whole(NEW, MINE)]
    seen = []
    for status in outcomes(partial(delivered, place, NEW), old_set(place), end):
        assert status in (end, DONE, OVERCOME)
        assert everything(place) in lawful
        seen.append(lawful.index(everything(place)))
        delivered(place, NEXT)
        assert everything(place.parent) == {"wallet": None, **_under("wallet", whole(NEXT, MINE))}
    assert len(seen) > FEWEST_STEPS
    assert {0, 1} == set(seen)


def test_a_first_run_cut_short_at_any_step_leaves_no_folder_or_a_whole_one(tmp_path: Path) -> None:
    place = tmp_path / "out" / "wallet"
    seen = []
    for _ in outcomes(partial(delivered, place, NEW), nothing_yet(place)):
        seen.append(place.exists())
        assert not place.exists() or everything(place) == whole(NEW, {})
        delivered(place, NEXT)
        assert everything(place.parent) == {"wallet": None, **_under("wallet", whole(NEXT, {}))}
    assert {False, True} == set(seen)


def test_in_two_steps_the_next_run_puts_back_what_was_missing_for_a_moment(tmp_path: Path) -> None:
    place = tmp_path / "out" / "wallet"
    lawful = [whole(OLD, MINE), whole(NEW, MINE)]
    missing = 0
    for _ in outcomes(lambda: in_two_steps(place, NEW), old_set(place)):
        missing += not place.exists()
        assert not place.exists() or everything(place) in lawful
        delivered(place, NEXT)
        assert everything(place.parent) == {"wallet": None, **_under("wallet", whole(NEXT, MINE))}
    assert missing == 1


def test_a_run_that_tidies_up_after_a_killed_one_may_be_killed_as_well(tmp_path: Path) -> None:
    place = tmp_path / "out" / "wallet"
    killed_at = _step_that_leaves_no_folder(place)

    def two_runs_ago() -> None:
        old_set(place)()
        outcome(lambda: in_two_steps(place, NEW), killed_at)
        assert not place.exists()

    for _ in outcomes(partial(delivered, place, NEXT), two_runs_ago):
        assert not place.exists() or everything(place) in (whole(OLD, MINE), whole(NEXT, MINE))
        delivered(place, NEW)
        assert everything(place.parent) == {"wallet": None, **_under("wallet", whole(NEW, MINE))}


def _step_that_leaves_no_folder(place: Path) -> int:
    for step, _ in enumerate(outcomes(lambda: in_two_steps(place, NEW), old_set(place))):
        if not place.exists():
            return step
    raise AssertionError("no step leaves the folder missing")


def _under(folder: str, content: dict[str, bytes | str | None]) -> dict[str, bytes | str | None]:
    return {f"{folder}/{path}": what for path, what in content.items()}
