"""``check``: a table in plain words, the worst first, and an exit status by the verdict."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

from patternforge.cli.findings import conclusion, every_finding, findings_table
from patternforge.fit.findings import Finding, Limit, Stretch, at_least, at_most, within
from tests.unit.cli.running import run
from tests.unit.delivery.killing import everything
from tests.unit.small_designs import BROKEN, LOOK, MISFIT, SLEEVE, saved

# Its height is given, and too low by some millimetres for the second pocket.
LOW = (
    SLEEVE.replace("slots: 1", "slots: 2")
    .replace("height: fit", "height: height")
    .replace("leathers:", "  height: {value: 69 mm, from: 60 mm, to: 90 mm, meaning: height}\nleathers:")
)
# Its corners take more than there is of it.
NARROW = SLEEVE.replace("sleeve: fit", "sleeve: width").replace(
    "leathers:", "  width: {value: 9 mm, from: 8 mm, to: 110 mm, meaning: width}\nleathers:"
)

FINDINGS = (
    Finding("hole rim to edge", "shell", 2.0, at_least(1.5, 1.0)),
    Finding("hole rim to edge", "bank", 2.5, at_least(1.5, 1.0)),
    Finding("clear width", "card in bank", 87.0, Limit(Stretch(88.0, 96.0), Stretch(low=86.0)), "widen the pocket"),
    Finding("seam stack", "rim", 7.25, at_most(6.0, 7.0), "skive"),
)


@pytest.mark.parametrize(
    ("text", "status", "last"),
    [
        (SLEEVE, 0, r"It fits: all \d+ measures are good\."),
        (LOOK, 0, r"It fits, but look at 1 measure before you cut\."),
        (MISFIT, 6, r"It does not fit: 1 measure would spoil the leather\."),
    ],
)
def test_the_status_is_that_of_the_verdict_and_nothing_is_written(
    tmp_path: Path, text: str, status: int, last: str
) -> None:
    design = saved(tmp_path, text)
    ended = run("check", design)
    assert (ended.status, ended.err) == (status, "")
    assert re.fullmatch(last, ended.out.splitlines()[-1])
    assert everything(tmp_path).keys() == {"sleeve.yaml"}


@pytest.mark.parametrize(
    ("command", "text", "told"),
    [
        ("check", MISFIT, "Looking for the smallest change that cures it ...\r\n"),
        ("check", LOOK, ""),
        ("check", NARROW, "Looking for the smallest change that cures it ...\r\n"),
        ("draft", MISFIT, "Looking for the smallest change that cures it ...\r\n"),
    ],
)
def test_a_search_is_told_on_a_terminal_before_it_begins(tmp_path: Path, command: str, text: str, told: str) -> None:
    screen = on_a_terminal(command, saved(tmp_path, text), cwd=tmp_path)
    assert screen.startswith(told)
    assert screen.count("Looking") == bool(told)


def on_a_terminal(*words: object, cwd: Path) -> str:
    """What a command shows on a terminal that its standard error goes to."""
    screen, end = os.openpty()
    ended = subprocess.run(
        [sys.executable, "-m", "patternforge.cli", *map(str, words)],
        check=False,
        stdout=subprocess.DEVNULL,
        stderr=end,
        cwd=cwd,
    )
    os.write(end, b"\0")  # what comes before it has all been read once it is
    shown = b""
    while not shown.endswith(b"\0"):
        shown += os.read(screen, 4096)
    os.close(end)
    os.close(screen)
    assert ended.returncode in (0, 5, 6)
    return shown.removesuffix(b"\0").decode("utf-8")


def test_a_broken_design_ends_with_status_4_and_all_its_faults(tmp_path: Path) -> None:
    design = saved(tmp_path, BROKEN)
    ended = run("check", design)
    assert (ended.status, ended.out) == (4, "")
    lines = ended.err.splitlines()
    assert len(lines) == 2
    assert lines[0].startswith(f"{design}:7:")
    assert "did you mean 'sleeve'?" in lines[1]


def test_a_letter_that_cannot_be_drawn_on_paper_is_told_with_its_place(tmp_path: Path) -> None:
    design = saved(tmp_path, SLEEVE.replace("bank: cards", "bank: 左").replace("Small sleeve", "Hülle 右"))
    for words in (["check", design], ["draft", design, "--out", tmp_path / "out"]):
        ended = run(*words)
        assert ended.status == 5
        assert [line.partition(";")[0] for line in ended.err.splitlines()] == [
            "sleeve.yaml: the title 'Hülle 右' cannot be drawn on paper: "
            "no stroke letter for '右' (U+53F3 CJK UNIFIED IDEOGRAPH-53F3)",
            "sleeve.yaml:13: the piece '左' cannot be drawn on paper: "
            "no stroke letter for '左' (U+5DE6 CJK UNIFIED IDEOGRAPH-5DE6)",
        ]
    assert not (tmp_path / "out").exists()


def test_files_without_letters_need_no_stroke_letters(tmp_path: Path) -> None:
    design = saved(tmp_path, SLEEVE.replace("Small sleeve", "Hülle 右"))
    assert run("draft", design, "--out", tmp_path / "out", "--for", "laser").status == 0


def test_dies_need_them_for_their_proof(tmp_path: Path) -> None:
    design = saved(tmp_path, SLEEVE.replace("Small sleeve", "Hülle 右"))
    ended = run("draft", design, "--out", tmp_path / "out", "--for", "die")
    assert ended.status == 5
    assert "the title 'Hülle 右' cannot be drawn on paper" in ended.err
    assert not (tmp_path / "out").exists()


def test_values_can_be_set(tmp_path: Path) -> None:
    design = saved(tmp_path)
    assert run("check", design, "--set", "main=6 mm").out != run("check", design).out
    assert run("check", design, "--set", "main=oak").status == 4


def test_below_what_does_not_fit_stands_what_to_set_and_setting_it_makes_it_fit(tmp_path: Path) -> None:
    design = saved(tmp_path, LOW)
    said = run("check", design)
    assert said.status == 6
    (cure,) = [line for line in said.out.splitlines() if " cures it: " in line]
    change, setting = cure.strip().split(" cures it: --set ")
    assert re.fullmatch(r"-> height 69\.0 -> (\d\d\.\d) mm", change)
    assert f"{setting}" == f"height={change.split()[-2]}mm"
    assert run("check", design, "--set", setting).status == 0


def test_the_refusal_to_draft_says_what_to_set_too(tmp_path: Path) -> None:
    ended = run("draft", saved(tmp_path, LOW), "--out", tmp_path / "out")
    assert ended.status == 6
    assert re.search(r"\n    -> height 69\.0 -> \d\d\.\d mm cures it: --set height=", ended.err)
    assert not (tmp_path / "out").exists()


@pytest.mark.parametrize("command", ["check", "draft"])
def test_what_cannot_be_drafted_is_told_with_what_lets_it_be(command: str, tmp_path: Path) -> None:
    design = saved(tmp_path, NARROW)
    ended = run(command, design)
    assert (ended.status, ended.out) == (5, "")
    found = re.search(r"(?m)^  -> width 9\.0 -> \S+ mm lets it be drafted: --set (width=\S+)$", ended.err)
    assert found
    assert run("check", design, "--set", found[1]).status == 0


def test_what_no_single_parameter_cures_is_said_to_be_so_and_its_remedy_stays(tmp_path: Path) -> None:
    lines = run("check", saved(tmp_path, MISFIT)).out.splitlines()
    at = lines.index("      -> no single parameter cures it within its range")
    assert lines[at - 1].startswith("      -> ")
    assert lines[at - 2].startswith("no ")


def test_what_wants_a_look_is_asked_about_only_if_it_is_wanted(tmp_path: Path) -> None:
    design = saved(tmp_path, LOOK)
    line = "      -> no single parameter cures it within its range"
    assert line not in run("check", design).out.splitlines()
    ended = run("check", design, "--cure-looks")
    assert ended.status == 0
    assert line in ended.out.splitlines()


def test_the_worst_comes_first_with_its_remedy_under_it() -> None:
    assert findings_table(FINDINGS) == [
        "      what was measured  where                measured                       limit",
        "no    seam stack         rim                   7.25 mm             at most 6.00 mm",
        "      -> skive",
        "look  clear width        card in bank         87.00 mm  between 88.00 and 96.00 mm",
        "      -> widen the pocket",
        "good  hole rim to edge   2 places      2.00 to 2.50 mm            at least 1.50 mm",
    ]


@pytest.mark.parametrize(
    ("limits", "told"),
    [
        ((at_least(1.0, 0.5), at_least(1.0, 0.8)), "at least 1.00 mm"),
        ((at_least(1.0, 0.5), at_least(1.5, 0.5)), "at least 1.00 to 1.50 mm"),
        ((at_most(3.0, 9.0), at_most(2.5, 9.0), at_most(2.0, 9.0)), "at most 2.00 to 3.00 mm"),
        ((within(1.0, 2.0, of=2.0), within(1.0, 3.0, of=2.0)), "between 1.00 and 3.00 mm"),
        ((within(1.0, 2.0, of=2.0), within(1.1, 2.0, of=2.0)), "each its own"),
        ((at_least(1.0, 0.5), at_most(3.0, 9.0)), "each its own"),
    ],
)
def test_a_line_for_several_places_tells_which_way_their_limits_bind(limits: tuple[Limit, ...], told: str) -> None:
    (line,) = findings_table([Finding("gap", "rim", 2.0, limit) for limit in limits])[1:]
    assert line == f"good  gap                {len(limits)} places   2.00 mm  {told}"


def test_a_count_is_whole_and_has_no_unit() -> None:
    (line,) = findings_table([Finding("seams left open", "rim", 0, at_most(0, 0), unit="")])[1:]
    assert line.split() == ["good", "seams", "left", "open", "rim", "0", "at", "most", "0"]


def test_every_finding_has_a_line_if_wanted() -> None:
    table = every_finding(FINDINGS)
    assert [line.split()[0] for line in table[1:]] == ["no", "->", "look", "->", "good", "good"]


def test_the_conclusion_counts_what_is_wanting() -> None:
    assert conclusion(FINDINGS) == "It does not fit: 1 measure would spoil the leather."
    assert conclusion(FINDINGS[2:3] * 2) == "It fits, but look at 2 measures before you cut."
    assert conclusion(FINDINGS[:2]) == "It fits: all 2 measures are good."
