from __future__ import annotations

import pytest

from patternforge.reasons.asked import asked_for
from patternforge.reasons.book import Book, spoken
from patternforge.reasons.reason import How, leaf
from patternforge.wallet.assemble import drafted
from patternforge.wallet.sums import COUNTED, MEASURED, Sum, Term, taken_off
from tests.designs_built import sleeve


def book() -> Book:
    found = Book(drafted(sleeve()))
    found.enter(iter([("part bank.ease", lambda: leaf("bank.ease", 2.5, How.ENTERED))]))
    found.close()
    return found


def test_the_word_for_the_kind_is_left_out_where_one_size_alone_is_called_so() -> None:
    names = ["piece back.width", "panel back.width", "part bank.step", "fold 1.shell", "parameter margin"]
    assert list(spoken(names).values()) == [
        "piece back.width",
        "panel back.width",
        "bank.step",
        "fold 1.shell",
        "margin",
    ]


@pytest.mark.parametrize(
    ("term", "how", "value"),
    [
        (Term("ease", 2.5, ("part bank.ease",)), How.SUM, 2.5),
        (Term("3 x ease", 7.5, ("part bank.ease",), 3), How.PRODUCT, 7.5),
        (Term("half", 1.25, ("part bank.ease",), 0.5), How.PRODUCT, 1.25),
        (Term("whole stitches", 0.3, (COUNTED,)), How.COUNTED, 0.3),
        (Term("outline", 9.0, (MEASURED,)), How.MEASURED, 9.0),
        (Term("both", 2.5, parts=(Term("ease", 2.5, ("part bank.ease",)),)), How.SUM, 2.5),
        (taken_off(Term("ease", 2.5, ("part bank.ease",))), How.LESS, -2.5),
    ],
)
def test_a_term_says_what_it_is_made_of(term: Term, how: How, value: float) -> None:
    reason = book().term(term)
    assert (reason.how, reason.value) == (how, value)


def test_an_empty_sum_says_that_nothing_lies_there() -> None:
    reason = book().total("fold 1.shell.gap", Sum("gap", ()))
    assert (reason.value, [part.name for part in reason.parts]) == (0, ["nothing lies there"])


def test_of_two_sizes_under_one_name_the_first_stays() -> None:
    found = book()
    found.enter(iter([("part bank.ease", lambda: leaf("bank.ease", 9.0, How.DEFAULT))]))
    assert found.of("part bank.ease").value == 2.5


NAMES = {
    "left.width": "panel left.width",
    "panel back.width": "panel back.width",
    "piece back.width": "piece back.width",
    "fold 1.shell": "fold 1.shell",
    "fold 1.shell.gap": "fold 1.shell.gap",
}


@pytest.mark.parametrize(
    ("word", "found"),
    [
        ("left.width", ("left.width",)),
        ("panel left.width", ("left.width",)),
        ("  Fold  1.Shell ", ("fold 1.shell",)),
        ("back.width", ("panel back.width", "piece back.width")),
        ("back", ("panel back.width", "piece back.width")),
        ("fold 1", ("fold 1.shell", "fold 1.shell.gap")),
        ("width", ()),
    ],
)
def test_a_word_asks_for_a_whole_name_or_for_all_that_begin_so(word: str, found: tuple[str, ...]) -> None:
    assert asked_for(word, NAMES) == found
