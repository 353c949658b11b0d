"""The README keeps its word: its commands run, its numbers are the program's, its pictures and links are there.

What is replaced when its commands are run: the set-up of a fresh environment, which would fetch every library again,
is left out, and ``.venv/bin/patternforge`` becomes ``python -m patternforge.cli`` with the Python that runs these
tests, started in a copy of the tree, so that it is the copy that runs. The test command cannot be run inside itself;
it is compared with what ``.ci/run`` does.
"""

from __future__ import annotations

import re
import shlex
import shutil
import signal
import subprocess
import sys
import tomllib
from collections.abc import Iterator, Mapping
from math import pi
from pathlib import Path

import pytest

from patternforge.drawing.header import CHECK_INCH, CHECK_MM
from patternforge.errors import AuditError, FitError, ReadingError
from patternforge.leather.fold import neutral_from_strip
from patternforge.leather.stitching import pitch_of_french_number, pitch_per_inch
from patternforge.prices.load import load_prices
from patternforge.units import MM_PER_FRENCH_INCH, MM_PER_INCH, mm
from patternforge.wallet.assemble import drafted
from tests.outside.readme import README, ROOT, Block, blocks, links, prose, table
from tests.outside.written import DESIGNS, ready_design
from tests.pictures import PICTURES
from tests.thickness_story import THICK, THIN, edges_apart, flat_shortfall, identical_pieces, rows, told, wallet

_SET_UP = "python3 -m venv .venv && .venv/bin/pip install -e"
_NO_SET_UP = re.compile(rf"^{re.escape(_SET_UP)} \S+ && ")
_PROGRAM = ".venv/bin/patternforge"
_TESTS = ".venv/bin/python -m tests"
_HEAVIEST = 150_000  # bytes of a picture
_STOPPED = 130  # the exit status of a command stopped by Ctrl-C
_NUMBER = re.compile(r"\d+(?:\.\d+)?")
_STORY = "Why thickness matters"
_STRIP = "((strip − both legs + stack + 2 × thickness) ÷ π − stack ÷ 2) ÷ thickness"


def _is_price_list(block: Block) -> bool:
    return block.lines[0].startswith("prices:")


def _commands() -> list[str]:
    return [line for block in blocks() if block.kind == "sh" for line in block.lines]


def _run(command: str, place: Path) -> str:
    words = shlex.split(_NO_SET_UP.sub("", command))
    assert words[0] == _PROGRAM, f"nothing is known of how to run {command!r}"
    replaced = [sys.executable, "-m", "patternforge.cli", *words[1:]]
    if words[1] == "watch" and "--help" not in words:
        return _until_stopped(replaced, place)
    run = subprocess.run(replaced, cwd=place, capture_output=True, text=True, encoding="utf-8", check=False)
    assert run.returncode == 0, f"{command}\n{run.stdout}{run.stderr}"
    return run.stdout


def _until_stopped(words: list[str], place: Path) -> str:
    """What a command says that goes on until Ctrl-C, up to the address to open, once it has been stopped."""
    with subprocess.Popen(words, cwd=place, stdout=subprocess.PIPE, text=True, encoding="utf-8") as running:
        try:
            assert running.stdout is not None
            said = "".join([next(running.stdout), next(running.stdout)])
            assert "Open http://127.0.0.1:" in said
            running.send_signal(signal.SIGINT)
            assert running.wait(20) == _STOPPED
        finally:
            running.kill()
    return said


@pytest.fixture(scope="module")
def place(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy of what the program needs, in a folder of its own."""
    copy = tmp_path_factory.mktemp("readme") / "project"
    for folder in ("patternforge", "designs"):
        shutil.copytree(ROOT / folder, copy / folder, ignore=shutil.ignore_patterns("__pycache__"))
    return copy


@pytest.fixture(scope="module")
def said(place: Path) -> Mapping[str, str]:
    """What each command printed, run once and in the order of the README."""
    commands = dict.fromkeys(command for command in _commands() if not command.endswith(_TESTS))
    return {command: _run(command, place) for command in commands}


def test_the_commands_run_the_copy_of_the_tree(place: Path) -> None:
    words = [sys.executable, "-c", "import patternforge; print(patternforge.__file__)"]
    found = subprocess.run(words, cwd=place, capture_output=True, text=True, check=True).stdout.strip()
    assert Path(found).is_relative_to(place)


def test_every_command_succeeds_and_says_something(said: Mapping[str, str]) -> None:
    assert len(said) >= 8
    assert all(said.values())


def test_the_first_command_leaves_cutting_files(said: Mapping[str, str], place: Path) -> None:
    assert next(iter(said)).startswith(_SET_UP)
    names = {path.name for path in (place / "out" / "two-fold").rglob("*") if path.is_file()}
    assert {"two-fold-laser-everything.dxf", "two-fold-a4.pdf", "pattern.json", "two-fold.svg"} <= names
    assert (place / "design.schema.json").is_file()


def test_exactly_two_commands_set_up_and_the_second_does_what_ci_does() -> None:
    setting_up = [command for command in _commands() if _SET_UP in command]
    assert len(setting_up) == 2
    assert setting_up[1] == f"{_SET_UP} '.[dev]' && {_TESTS}"
    script = (ROOT / ".ci" / "run").read_text(encoding="utf-8").splitlines()
    assert script[-1] == _TESTS
    assert "python3 -m venv .venv" in script
    assert any("pip install" in line and line.endswith("'.[dev]'") for line in script)


def test_what_is_shown_of_the_screen_is_what_the_program_prints(said: Mapping[str, str]) -> None:
    shown = list(_shown())
    assert len(shown) >= 2
    for command, lines in shown:
        printed = iter([_words(line) for line in said[command].splitlines()])
        for line in lines:
            assert any(other.startswith(_words(line)) for other in printed), f"{command} does not print {line!r}"


def _words(line: str) -> str:
    """The line without the blanks that make columns, whose width hangs on lines that are not shown."""
    return " ".join(line.split())


def _shown() -> Iterator[tuple[str, tuple[str, ...]]]:
    """Each block of screen text with the last command before it."""
    command = ""
    for block in blocks():
        if block.kind == "sh":
            command = block.lines[-1]
        elif block.kind == "text":
            yield command, block.lines


def test_every_option_that_is_named_exists(place: Path) -> None:
    named = set(re.findall(r"`(--[a-z-]+)`", README))
    assert {"--measured", "--despite-findings"} <= named
    words = (shlex.split(_NO_SET_UP.sub("", command)) for command in _commands())
    commands = dict.fromkeys(found[1] for found in words if found[0] == _PROGRAM)
    known = {word for command in commands for word in _run(f"{_PROGRAM} {command} --help", place).split()}
    assert named <= known


def test_the_parts_of_a_design_that_are_shown_stand_in_it() -> None:
    parts = [block.lines for block in blocks() if block.kind == "yaml" and not _is_price_list(block)]
    shown = ["\n".join(lines) for lines in parts]
    text = (ROOT / "designs" / "two-fold.yaml").read_text(encoding="utf-8")
    assert len(shown) >= 2
    assert all(each in text for each in shown)


def test_the_price_list_that_is_shown_can_be_read() -> None:
    shown = ["\n".join(block.lines) for block in blocks() if _is_price_list(block)]
    assert [load_prices(each, "README.md").title for each in shown] == ["My prices"]


def test_every_ready_design_is_named() -> None:
    words = " ".join(README.lower().replace("-", " ").split())
    assert [path.stem for path in DESIGNS if path.stem.replace("-", " ") not in words] == []


def test_the_table_of_thickness_is_what_the_program_drafts() -> None:
    expected = [(row.what, row.thin, row.thick, row.change) for row in rows(wallet(THIN), wallet(THICK))]
    assert table(_STORY) == expected


def test_only_the_shell_differs_between_the_two_leathers() -> None:
    thin, thick = wallet(THIN), wallet(THICK)
    names = [piece.name for piece in thin.pattern.pieces]
    assert identical_pieces(thin, thick) == [name for name in names if name != "shell"]
    assert "Only the shell changes." in README


def test_six_cards_and_six_notes_are_in_the_wallet() -> None:
    held = {"card": 0, "note": 0}
    for pocket in wallet(THIN).pattern.pockets:
        held[pocket.content] += pocket.count
    assert held == {"card": 6, "note": 6}
    assert "with six cards and six notes in it" in " ".join(README.split())


def test_sizes_move_by_about_half_a_stitch_at_most() -> None:
    for path in DESIGNS:
        pattern = drafted(ready_design(path))
        moves = [abs(each.drafted - each.asked) for each in pattern.adjustments]
        assert max(moves, default=0.0) <= 0.55 * pattern.design.stitching.pitch, path.stem


def test_the_formula_of_the_test_strip_is_the_programs() -> None:
    read = {"strip": 100.0, "both legs": 98.8, "stack": 3.0, "thickness": 1.2}
    formula = _STRIP.replace("−", "-").replace("×", "*").replace("÷", "/").replace("π", str(pi))
    for word, value in read.items():
        formula = formula.replace(word, str(value))
    expected = neutral_from_strip(read["strip"], read["both legs"], read["stack"], read["thickness"])
    assert eval(formula) == pytest.approx(expected, abs=1e-9)
    assert _STRIP in README
    assert f"gives {expected:.1f}." in " ".join(README.split())


def test_every_number_of_the_prose_is_known_and_every_known_number_stands_there() -> None:
    assert set(_NUMBER.findall(prose(without_table=_STORY).replace(_STRIP, ""))) == _known_numbers()


def _known_numbers() -> set[str]:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    thin, thick = wallet(THIN), wallet(THICK)
    outer = [drafted.pattern.design.leather("outer").t for drafted in (thin, thick)]
    further = (outer[1] - outer[0]) / 2
    assert mm(pi * further) == mm(edges_apart(thin, thick))
    lengths = (edges_apart(thin, thick), flat_shortfall(thin), flat_shortfall(thick))
    return {
        project["requires-python"].removeprefix(">="),
        *(f"{t:.1f}" for t in (*outer, thin.pattern.design.leather("inner").t, further)),
        *(told(length).removesuffix(" mm") for length in lengths),
        *(f"{inch:g}" for inch in (MM_PER_FRENCH_INCH, MM_PER_INCH)),
        *("8", f"{pitch_of_french_number(8):.2f}", f"{pitch_per_inch(8):g}"),
        *(f"{CHECK_MM:g}", f"{CHECK_INCH / MM_PER_INCH:g}"),
        *("100", "3", "98.8", "0.5"),  # the strip of the test above
        *("0", str(FitError.exit_status), str(ReadingError.exit_status), str(AuditError.exit_status)),
    }


def test_every_picture_is_there_light_enough_and_shown() -> None:
    shown = {target.removeprefix(".pictures/") for is_picture, target in links() if is_picture}
    assert shown == set(PICTURES)
    for name in shown:
        content = (ROOT / ".pictures" / name).read_bytes()
        assert content.startswith(b"\x89PNG\r\n\x1a\n"), name
        assert len(content) <= _HEAVIEST, name


def test_every_link_leads_to_a_file_of_the_project() -> None:
    targets = [target for is_picture, target in links() if not is_picture]
    assert {"DEVELOPERS.md", "LICENSE"} <= set(targets)
    assert [target for target in targets if not (ROOT / target).is_file()] == []


def test_the_licence_is_the_one_that_the_project_declares() -> None:
    declared = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]["license"]
    first, _, text = (ROOT / "LICENSE").read_text(encoding="utf-8").partition("\n")
    assert first == f"{declared} License"
    assert "the patternforge authors" in text
