"""``draft``: files, summary, exit status."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from patternforge.cli.cautions import cautions
from patternforge.cli.choices import Awl, DxfRelease, Face, Fold, Mirrored, PaperName, Usage
from patternforge.delivery.listing import LIST
from patternforge.drafting.cautions import UNSURE
from patternforge.drafting.purpose import AwlPoints, CutFace, FoldTicks, Mirrors
from patternforge.drawing.paper import PAPERS
from patternforge.export.dxf import DxfVersion
from patternforge.leather.material import Leather, MadeOf, Tannage, Thickness
from patternforge.pipeline.request import DraftRequest, Wanted
from tests.unit.cli.running import run
from tests.unit.delivery.killing import everything
from tests.unit.small_designs import LOOK, MISFIT, saved


@pytest.fixture
def sleeve(tmp_path: Path) -> Path:
    return saved(tmp_path)


def drafted(design: Path, *words: str) -> dict[str, bytes]:
    """The files of a design drafted with these words."""
    ended = run("draft", design, "--out", design.parent / "out", *words)
    assert (ended.status, ended.err) == (0, "")
    found = everything(design.parent / "out" / "sleeve")
    return {path: data for path, data in found.items() if isinstance(data, bytes)}


def test_the_summary_says_what_a_maker_asks_first(sleeve: Path) -> None:
    ended = run("draft", sleeve, "--out", sleeve.parent / "out")
    assert ended.status == 0
    assert ended.out.splitlines()[0] == "Small sleeve, revision B"
    for line in (
        r"open +94\.9 x 60\.0 mm +3\.73 x 2\.36 in",
        r"thickness closed, as loaded +2\.8 mm +0\.11 in",
        r"back +main +94\.86 +59\.98 +57 +1",
        r"lining \(Goat\) +0\.80 mm +2\.0 oz +0\.41 dm2 +0\.04 ft2",
        r"main +1\.20 mm +3\.0 oz +0\.57 dm2 +0\.06 ft2 +price 0\.88",
        r"piece +radius +gap +slot +beside a stitch hole",
        r"back +5\.00 +59\.98 +- +\d\.\d\d",
        r"cards: show 14\.00 -> 14\.03 mm to whole stitches",
        r"It fits: all \d+ measures are good\.",
        r"pattern\.json",
    ):
        assert re.search(rf"^ *{line}$", ended.out, re.MULTILINE), line


def test_thread_is_told_by_seam_and_in_all_and_identical_pieces_are_named(tmp_path: Path) -> None:
    design = Path(__file__).parents[3] / "designs" / "two-fold.yaml"
    ended = run("draft", design, "--out", tmp_path, "--for", "die")
    seams = json.loads((tmp_path / "two-fold" / "pattern.json").read_text(encoding="utf-8"))["seams"]
    lines = re.search(r"Thread.*?\n(.*?)\n\n", ended.out, re.DOTALL)
    assert lines is not None
    told = [re.fullmatch(r"  (.+?) +([\d.]+) m +([\d.]+) ft", line) for line in lines[1].splitlines()]
    metres = {match[1]: (match[2], match[3]) for match in told if match}
    wanted = {**{seam["name"]: seam["thread"] for seam in seams}, "in all": sum(seam["thread"] for seam in seams)}
    assert metres == {name: (f"{mm / 1000:.2f}", f"{mm / 304.8:.2f}") for name, mm in wanted.items()}
    same = "identical: left cards 3, left cards 2, right cards 3, right cards 2; one die or template serves all"
    assert same in " ".join(ended.out.split())


def test_every_file_written_is_named(sleeve: Path) -> None:
    ended = run("draft", sleeve, "--out", sleeve.parent / "out")
    files = {path for path, data in everything(sleeve.parent / "out" / "sleeve").items() if data is not None}
    assert files <= set(ended.out.split())
    assert LIST in files


def test_files_taken_away_and_files_kept_are_named(sleeve: Path) -> None:
    drafted(sleeve)
    (sleeve.parent / "out" / "sleeve" / "notes.txt").write_bytes(b"mine")
    ended = run("draft", sleeve, "--out", sleeve.parent / "out", "--for", "die")
    taken, kept = ended.out.split("taken away")[1].split("left as they were")
    assert "svg/sleeve.svg" in taken
    assert "notes.txt" in kept


@pytest.mark.parametrize(
    ("usage", "said", "unsaid"),
    [
        ("laser", ["smoke is harmful", "put out a fire", "Chrome-tanned", "PVC", "supplier"], ["Press", "Blade"]),
        ("die", ["Press: hands clear"], ["smoke", "Chrome", "Blade"]),
        ("paper", ["print at 100 %", "Blade: cut away"], ["smoke", "Press"]),
        ("all", ["smoke is harmful", "Press: hands clear", "Blade: cut away"], []),
    ],
)
def test_cautions_are_those_of_the_way_it_is_cut(
    sleeve: Path, usage: str, said: list[str], unsaid: list[str]
) -> None:
    out = run("draft", sleeve, "--out", sleeve.parent / "out", "--for", usage).out
    for words in (*said, "machine's manual", "rules of your place", "people trained"):
        assert words in " ".join(out.split())
    assert not [words for words in unsaid if words in out]


def test_where_all_leather_is_vegetable_tanned_nothing_is_said_of_chrome(tmp_path: Path) -> None:
    design = saved(tmp_path, saved(tmp_path).read_text(encoding="utf-8").replace("chrome", "vegetable"))
    assert "Chrome" not in run("draft", design, "--out", tmp_path / "out", "--for", "laser").out


@pytest.mark.parametrize(("made_of", "is_told"), [(MadeOf.FILM, True), (MadeOf.LEATHER, False)])
def test_a_film_is_warned_of_under_a_laser_whatever_its_tannage(made_of: MadeOf, is_told: bool) -> None:
    sheet = Leather("window", Thickness(0.3, 0.3), tannage=Tannage.VEGETABLE, made_of=made_of)
    assert (UNSURE in cautions(DraftRequest(Path("x.yaml"), wanted=Wanted.LASER), (sheet,))) is is_told


def test_a_wallet_to_look_at_is_written_and_says_where_to_look(tmp_path: Path) -> None:
    ended = run("draft", saved(tmp_path, LOOK), "--out", tmp_path / "out", "--for", "die")
    assert ended.status == 0
    assert "look at 1 measure before you cut" in ended.out
    assert re.search(r"look +thickest stack sewn through +rim +2\.00 mm +at most 1\.80 mm\n +-> skive", ended.out)


def test_a_wallet_that_does_not_fit_ends_with_status_6_and_no_file(tmp_path: Path) -> None:
    ended = run("draft", saved(tmp_path, MISFIT), "--out", tmp_path / "out")
    assert (ended.status, ended.out) == (6, "")
    assert "thickest stack sewn through, rim: 2.00 mm, tolerable at most 1.50 mm; skive" in ended.err
    assert not (tmp_path / "out").exists()


def test_a_wallet_that_does_not_fit_is_written_when_asked_for(tmp_path: Path) -> None:
    design = saved(tmp_path, MISFIT)
    ended = run("draft", design, "--out", tmp_path / "out", "--for", "die", "--despite-findings")
    assert ended.status == 0
    assert "It does not fit: 1 measure would spoil the leather." in ended.out
    assert (tmp_path / "out" / "sleeve" / "die" / "sleeve-die-back-DOES-NOT-FIT.dxf").exists()


def test_without_out_the_files_go_to_out_where_the_command_is_run(
    sleeve: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    assert run("draft", sleeve.name, "--for", "die").status == 0
    assert (tmp_path / "out" / "sleeve" / LIST).exists()


def test_a_value_set_changes_the_pieces(sleeve: Path) -> None:
    before = drafted(sleeve, "--for", "die")
    after = drafted(sleeve, "--for", "die", "--set", "margin=4mm", "--set", "main = 2 mm")
    assert before["die/sleeve-die-back.dxf"] != after["die/sleeve-die-back.dxf"]
    leathers = json.loads(str(after["pattern.json"], "utf-8"))["inputs"]["leathers"]
    assert [leather["drafted_thickness"] for leather in leathers] == [2, 0.8]


def test_the_kerf_stands_in_the_names_of_what_it_changes(sleeve: Path) -> None:
    plain = drafted(sleeve, "--for", "laser")
    grown = drafted(sleeve, "--for", "laser", "--kerf", "0.2 mm")
    assert "laser/sleeve-laser-main-kerf-0.200.dxf" in grown
    assert "laser/sleeve-laser-main.dxf" in plain
    assert plain["pattern.json"] == grown["pattern.json"]


@pytest.mark.parametrize(
    ("words", "path"),
    [
        (["--dxf", "R12"], "laser/sleeve-laser-main.dxf"),
        (["--dxf", "r2000"], "laser/sleeve-laser-main.dxf"),
        (["--gap", "20"], "laser/sleeve-laser-main.dxf"),
        (["--bed", "230"], "laser/sleeve-laser-everything.svg"),
        (["--die-holes", "punched"], "die/sleeve-die-back-with-holes.dxf"),
        (["--cut-face", "back"], "laser/sleeve-laser-main-back.dxf"),
        (["--paper", "Letter"], "paper/sleeve-letter.pdf"),
        (["--measured", "99.2x100"], "paper/sleeve-a4.pdf"),
        (["--measured", "100 x 101 mm"], "paper/sleeve-a4.pdf"),
        (["--type", "large"], "paper/sleeve-a4.pdf"),
        (["--white", "5 mm"], "paper/sleeve-a4.pdf"),
        (["--awl", "none"], "paper/sleeve-a4.pdf"),
        (["--paper", "Letter"], "die/sleeve-die-proof.pdf"),
        (["--measured", "99.2x100"], "die/sleeve-die-proof.pdf"),
    ],
)
def test_every_option_reaches_the_file_it_is_for(sleeve: Path, words: list[str], path: str) -> None:
    assert drafted(sleeve).get(path) != drafted(sleeve, *words)[path]


def test_the_words_of_options_are_those_the_program_knows() -> None:
    assert [*Usage] == [*Wanted]
    assert [*Face] == [*CutFace]
    assert [*Fold] == [*FoldTicks]
    assert [*PaperName] == [*PAPERS]
    assert [*Mirrored] == [*Mirrors]
    assert sorted(map(str, Awl)) == sorted(map(str, AwlPoints))
    assert [release.upper() for release in DxfRelease] == [*DxfVersion]
