"""Whatever the program writes for a machine, of any design and in any release, its audit finds clean."""

from __future__ import annotations

from pathlib import Path

from patternforge.audit.checks import checked
from patternforge.audit.model import FileKind
from patternforge.audit.reading import cut_file
from tests.outside.file_sets import EVERY_DESIGN, EVERY_RELEASE, FileSet, described


def cut_files(folder: Path) -> list[Path]:
    """Every file for a laser or a die."""
    return sorted(path for part in ("laser", "die") for path in (folder / part).iterdir())


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
    assert len(cut_files(folder)) >= 3 + len(described(folder)["pieces"])
