"""The board wakes those that wait when something newer is put up."""

from __future__ import annotations

from threading import Thread

from patternforge.live.shown import Board, Shown, Standing

FIRST = Shown("First", Standing.GOOD, ())
SECOND = Shown("Second", Standing.NO, ())


def test_the_first_state_has_the_number_1_and_each_newer_one_the_next() -> None:
    board = Board(FIRST)
    assert board.newest == (1, FIRST)
    board.put(SECOND)
    assert board.newest == (2, SECOND)


def test_without_anything_newer_waiting_ends_with_none() -> None:
    assert Board(FIRST).newer_than(1, 0.01) is None


def test_who_waits_is_told_as_soon_as_something_newer_is_put_up() -> None:
    board, told = Board(FIRST), []
    waiting = Thread(target=lambda: told.append(board.newer_than(1, 30.0)))
    waiting.start()
    board.put(SECOND)
    waiting.join(10.0)
    assert told == [2]
