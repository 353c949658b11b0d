"""Whatever the program writes for a machine, of any design and in any release, its audit finds clean."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from patternforge.audit.checks import checked
from patternforge.audit.model import FileKind
from patternforge.audit.reading import cut_file
from patternforge.audit.scene import scene
from patternforge.audit.smallest import necks, radii, smallest_gaps
from patternforge.export.dxf import DxfVersion
from patternforge.fit.fineness import fineness
from patternforge.pipeline.cutter import cut_files as cut_files_for
from patternforge.pipeline.machines import known_machines, machine_at
from patternforge.pipeline.proof import prove
from patternforge.wallet.assemble import drafted
from tests.outside.file_sets import EVERY_DESIGN, EVERY_RELEASE, FileSet, described
from tests.outside.written import DESIGNS, ready_design


def cut_files(folder: Path) -> list[Path]:
    """Every file for a laser or a die; the proof of the dies is for the eye."""
    files = (path for part in ("laser", "die") for path in (folder / part).iterdir())
    return sorted(path for path in files if path.suffix != ".pdf")


@EVERY_DESIGN
@EVERY_RELEASE
def test_every_file_for_a_laser_or_a_die_is_clean(design: Path, options: tuple[str, ...], file_set: FileSet) -> None:
    folder = file_set(design, *options)
    found = {}
    for path in cut_files(folder):
        file = cut_file(path.read_bytes(), path.name)
        flaws = [(each.kind, each.what, each.at) for checks in checked(file) for each in checks.flaws]
        assert file.kind is FileKind[path.suffix[1:].upper()]
        if flaws:
            found[path.name] = flaws
    assert found == {}
    assert len(cut_files(folder)) >= 3 + len(described(folder)["cutting"]["dies"]["dies"])


MACHINES = {
    **{name: machine_at(name, Path()) for name in ("laser", "drag-knife", "hand", "die-shop")},
    "laser in R2018": replace(machine_at("laser", Path()), release=DxfVersion.R2018),
}
# One design for every ready table, the others for one in turn.
FULLY = ("two-fold",)
SENT = [
    (design, name)
    for number, design in enumerate(DESIGNS)
    for place, name in enumerate(MACHINES)
    if design.stem in FULLY or number % len(MACHINES) == place
]


@pytest.mark.parametrize(("design", "name"), SENT, ids=lambda each: each if isinstance(each, str) else each.stem)
def test_every_file_for_a_ready_machine_is_proved_and_clean(design: Path, name: str) -> None:
    pattern = drafted(ready_design(design))
    files = list(cut_files_for(pattern, MACHINES[name]).written(pattern))
    prove(files)
    found = [
        (asked.path, each.kind, each.what, each.at)
        for asked, data in files
        if "-everything" not in asked.path
        for checks in checked(cut_file(data, asked.path))
        for each in checks.flaws
    ]
    assert found == []


def test_every_ready_machine_is_looked_at() -> None:
    ready = {each.name for each in known_machines(Path()) if each.place == "ready"}
    assert ready <= set(MACHINES)
    assert {name for _, name in SENT} == set(MACHINES)
    assert {design for design, _ in SENT} == set(DESIGNS)


@pytest.mark.parametrize("name", ["two-fold", "id-window-two-fold", "strap-card-case"])
def test_the_smallest_in_the_bytes_is_what_fit_measured_on_the_pieces(name: str) -> None:
    """Two measures that share no code: the audit's on the lines of a file, and that of fit on the pieces."""
    pattern = drafted(ready_design(next(path for path in DESIGNS if path.stem == name)))
    for asked, data in cut_files_for(pattern, MACHINES["die-shop"]).written(pattern):
        piece = next(each for each in pattern.pieces if each.name == asked.sheet.figures[0].name)
        fine = fineness(pattern, piece)
        laid_out = scene(cut_file(data, asked.path))
        radius, gap = radii(laid_out), [*smallest_gaps(laid_out), *necks(laid_out)]
        assert (radius[0].value if radius else None) == (fine.radius and pytest.approx(fine.radius, abs=1e-4))
        if gap and fine.gap is not None and min(each.value for each in gap) < 20:
            assert min(each.value for each in gap) == pytest.approx(fine.gap, abs=1e-3)
