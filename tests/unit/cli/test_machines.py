"""``machines`` and ``draft --machine``."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from patternforge.machines.load import load_machine
from patternforge.machines.schema import machine_schema
from tests.unit.cli.running import run
from tests.unit.delivery.killing import everything
from tests.unit.machines.good_machine import GOOD, PLOT
from tests.unit.small_designs import MISFIT, saved


@pytest.fixture(autouse=True)
def _no_settings(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "settings"))


@pytest.fixture
def sleeve(tmp_path: Path) -> Path:
    return saved(tmp_path)


def drafted(design: Path, *words: str) -> dict[str, bytes]:
    """The files of a design drafted with these words."""
    ended = run("draft", design, "--out", design.parent / "out", *words)
    assert (ended.status, ended.err) == (0, "")
    found = everything(design.parent / "out" / "sleeve")
    return {path: data for path, data in found.items() if isinstance(data, bytes)}


def folders(files: dict[str, bytes]) -> set[str]:
    return {path.partition("/")[0] for path in files if "/" in path}


def test_every_ready_table_is_listed_and_how_to_start_ones_own_is_said() -> None:
    out = run("machines").out
    lines = out.splitlines()
    assert [line.split()[0] for line in lines[1:5]] == ["die-shop", "drag-knife", "hand", "laser"]
    assert "machines laser --out my-laser.yaml" in out
    assert "--machine my-laser.yaml" in out


def test_a_table_is_shown_and_copied_as_it_is_and_never_over_another_file(tmp_path: Path) -> None:
    shown = run("machines", "laser").out
    mine = tmp_path / "mine.yaml"
    assert run("machines", "laser", "--out", mine).status == 0
    assert mine.read_text(encoding="utf-8") == shown
    assert load_machine(shown, "mine.yaml").title == "General laser"
    assert run("machines", "hand", "--out", mine).status == 7
    assert run("machines", "--out", mine).status == 2


def test_an_unknown_table_is_a_fault_with_the_nearest_name(sleeve: Path) -> None:
    for words in (["machines", "lazer"], ["draft", sleeve, "--machine", "lazer"]):
        ended = run(*words)
        assert (ended.status, ended.out) == (4, "")
        assert "did you mean laser?" in ended.err


def test_the_schema_of_a_machine_is_written() -> None:
    assert '"MachineForm"' in run("schema", "machine").out
    assert machine_schema()["title"] in run("schema", "machine").out


def test_the_files_of_a_machine_lie_in_a_folder_of_its_name(sleeve: Path) -> None:
    def of(machine: str, *options: str) -> set[str]:
        return folders(drafted(sleeve, "--machine", machine, *options))

    assert of("drag-knife") == {"drag-knife", "drag-knife-to-look-at", "die", "paper", "svg"}
    assert of("die-shop") == {"die-shop", "laser", "paper", "svg"}  # dies are looked at on their proof
    assert of("hand", "--for", "laser") == {"hand", "hand-to-look-at"}
    assert "drag-knife/sleeve-drag-knife-main.hpgl" in drafted(sleeve, "--machine", "drag-knife")


def test_a_table_in_a_file_is_called_as_the_file(sleeve: Path) -> None:
    (sleeve.parent / "shop.yaml").write_text(PLOT, encoding="utf-8")
    files = drafted(sleeve, "--machine", str(sleeve.parent / "shop.yaml"), "--for", "laser")
    assert "shop/sleeve-shop-lining.hpgl" in files


def test_a_broken_table_writes_nothing_and_says_where(sleeve: Path) -> None:
    table = sleeve.parent / "shop.yaml"
    table.write_text(GOOD.replace("gap: 12 mm", "gap: 1 mm"), encoding="utf-8")
    ended = run("draft", sleeve, "--machine", table, "--out", sleeve.parent / "out")
    assert ended.status == 4
    assert f"{table}:9:6: the gap between pieces is 1 mm; it must be at least 2.2 mm" in ended.err
    assert not (sleeve.parent / "out").exists()


@pytest.mark.parametrize(
    ("words", "path"),
    [
        (["--kerf", "0.2"], "laser/sleeve-laser-main-kerf-0.200.dxf"),
        (["--cut-face", "back"], "laser/sleeve-laser-main-back.dxf"),
        (["--fold-ticks", "scored"], "laser/sleeve-laser-main.dxf"),
        (["--gap", "20"], "laser/sleeve-laser-main.dxf"),
        (["--bed", "130"], "laser/sleeve-laser-everything.dxf"),
        (["--dxf", "r12"], "laser/sleeve-laser-main.dxf"),
    ],
)
def test_an_option_goes_before_what_the_table_says(sleeve: Path, words: list[str], path: str) -> None:
    plain = drafted(sleeve, "--machine", "laser")
    if words[0] == "--fold-ticks":  # a sleeve has no fold: the option is taken and changes nothing
        assert drafted(sleeve, "--machine", "laser", *words)[path] == plain[path]
    else:
        assert drafted(sleeve, "--machine", "laser", *words)[path] != plain.get(path)


def test_punched_holes_go_before_what_the_table_of_a_die_shop_says(sleeve: Path) -> None:
    plain, punched = (drafted(sleeve, "--machine", "die-shop", *words) for words in ([], ["--die-holes", "punched"]))
    path = "die-shop/sleeve-die-shop-back.dxf"
    assert plain[path].count(b"CIRCLE") < punched[path].count(b"CIRCLE")


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["--machine", "laser", "--for", "paper"], "--machine: the files of General laser are sheets; ask for --for"),
        (["--machine", "laser", "--for", "die"], "ask for --for laser, or for all"),
        (["--machine", "die-shop", "--for", "laser"], "are pieces; ask for --for die"),
        (["--machine", "die-shop", "--kerf", "0.2"], "--kerf: a die takes nothing away"),
        (["--machine", "laser", "--kerf", "3"], "--kerf: the kerf is 3 mm"),
        (["--machine", "laser", "--kerf", "1", "--gap", "2"], "--gap: the gap between pieces is 2 mm"),
        (["--machine", "laser", "--kerf", "0.2", "--bed", "0"], "--bed: the bed is 0 mm wide"),
        (
            ["--machine", "drag-knife", "--for", "laser", "--dxf", "r12"],
            "--dxf: General drag-knife plotter reads hpgl",
        ),
        (
            ["--machine", "laser", "--for", "laser", "--die-holes", "punched"],
            "--die-holes: General laser is sent she",
        ),
        (["--machine", "laser", "--for", "laser", "--white", "5"], "--white: it changes nothing"),
    ],
)
def test_an_option_that_does_not_go_with_the_machine_is_named(sleeve: Path, words: list[str], says: str) -> None:
    ended = run("draft", sleeve, "--out", sleeve.parent / "out", *words)
    assert (ended.status, ended.out) == (2, "")
    assert says in " ".join(ended.err.split())


@pytest.mark.parametrize(
    ("words", "said", "unsaid"),
    [
        (["laser", "--for", "laser"], ["smoke is harmful", "Chrome-tanned"], ["Press", "blade", "Blade"]),
        (["drag-knife", "--for", "laser"], ["offset of the blade", "the carriage while they move"], ["smoke"]),
        (["die-shop", "--for", "die"], ["smallest bend", "Press: hands clear"], ["smoke", "Blade"]),
        (["hand", "--for", "laser"], ["Blade: cut away"], ["smoke", "Press"]),
        (["drag-knife"], ["offset of the blade", "Press", "print at 100 %", "Blade: cut away"], ["smoke"]),
    ],
)
def test_cautions_are_those_of_the_table_and_of_its_tool(
    sleeve: Path, words: list[str], said: list[str], unsaid: list[str]
) -> None:
    out = " ".join(run("draft", sleeve, "--out", sleeve.parent / "out", "--machine", *words).out.split())
    assert [each for each in said if each not in out] == []
    assert [each for each in unsaid if each in out] == []


def test_files_of_a_wallet_that_does_not_fit_say_so_whatever_the_machine(tmp_path: Path) -> None:
    design = saved(tmp_path, MISFIT)
    files = drafted(design, "--machine", "drag-knife", "--for", "laser", "--despite-findings")
    assert "drag-knife/sleeve-drag-knife-main-DOES-NOT-FIT.hpgl" in files


def test_what_is_cut_is_told_by_operation_with_the_way_saved_and_the_smallest(sleeve: Path) -> None:
    out = run("draft", sleeve, "--out", sleeve.parent / "out", "--machine", "laser", "--for", "laser").out
    described = json.loads((sleeve.parent / "out" / "sleeve" / "pattern.json").read_text(encoding="utf-8"))
    told = out.partition("Cut by ")[2].partition("\n\n")[0].splitlines()
    assert told[0] == "General laser, dxf R2010"
    net = {each["operation"]: each for each in described["cutting"]["operations"]}
    for line in told[2:4]:
        operation, layer, count, length = re.split(r" {2,}", line.strip())
        assert layer == operation.upper().replace(" ", "-")
        assert (count, length) == (str(net[operation]["count"]), f"{net[operation]['length'] / 1000:.2f} m")
    assert re.fullmatch(r"  way between them \d\.\d\d m, as drawn it was \d\.\d\d m: \d+ % saved", told[4])
    assert told[5] == "  smallest hole 1.00 mm (back), the machine can cut 0.40 mm"


def test_a_plot_is_told_by_pens_and_what_it_changes_stands_in_the_head(sleeve: Path) -> None:
    table = sleeve.parent / "shop.yaml"
    table.write_text(PLOT.replace("knife\n", "knife\nkerf: 0.1 mm\nsanding: 0.3 mm\nface: back\n"), encoding="utf-8")
    out = run("draft", sleeve, "--out", sleeve.parent / "out", "--machine", table, "--for", "laser").out
    head = "Shop plotter, hpgl, kerf 0.10 mm, 0.30 mm left on, arcs as chords within 0.005 mm, back up"
    assert f"Cut by {head}" in out
    assert re.search(r"^  outline +3 +2 ", out, re.MULTILINE)


def test_an_order_as_drawn_saves_nothing_and_says_so(sleeve: Path) -> None:
    table = sleeve.parent / "shop.yaml"
    table.write_text(PLOT + "travel: as drawn\n", encoding="utf-8")
    out = run("draft", sleeve, "--out", sleeve.parent / "out", "--machine", table, "--for", "laser").out
    assert re.search(r"way between them \d\.\d\d m, as they were drawn$", out, re.MULTILINE)


def test_a_gap_or_radius_smaller_than_the_machine_cuts_is_told(sleeve: Path) -> None:
    table = sleeve.parent / "shop.yaml"
    table.write_text(PLOT + "smallest: {gap: 2 mm, radius: 6 mm}\n", encoding="utf-8")
    out = run("draft", sleeve, "--out", sleeve.parent / "out", "--machine", table, "--for", "laser").out
    assert re.search(r"smallest gap 1\.\d\d mm \(\w+\): look, the machine can cut no smaller than 2\.00 mm", out)
    assert "look, the machine can cut no smaller than 6.00 mm" in out


@pytest.mark.parametrize(
    ("lines", "says"),
    [
        (
            "smallest: {hole: 1.2 mm}\n",
            "piece 'back': a hole of 1.00 mm is smaller than Shop plotter can cut (1.20 mm);",
        ),
        ("kerf: 1 mm\n", "piece 'back': a stitch hole of 1 mm vanishes under a kerf of 1 mm; make the hole larger"),
    ],
)
def test_a_hole_too_small_for_the_machine_is_refused_and_nothing_written(sleeve: Path, lines: str, says: str) -> None:
    table = sleeve.parent / "shop.yaml"
    table.write_text(PLOT + lines, encoding="utf-8")
    ended = run("draft", sleeve, "--out", sleeve.parent / "out", "--machine", table)
    assert (ended.status, ended.out) == (5, "")
    assert says in ended.err
    assert not (sleeve.parent / "out").exists()
    table.write_text(PLOT + lines + "holes: marked\n", encoding="utf-8")
    assert run("draft", sleeve, "--out", sleeve.parent / "out", "--machine", table).status == 0
