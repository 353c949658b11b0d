"""The same design gives the same bytes: in another folder, locale, time zone and hash seed."""

from __future__ import annotations

from pathlib import Path

from tests.unit.cli.running import in_a_process
from tests.unit.delivery.killing import everything
from tests.unit.small_designs import SLEEVE, saved

# The title has letters and figures that locales treat in their own ways.
TEXT = SLEEVE.replace("Small sleeve", "Étui 1.5, İstanbul")


def drafted(folder: Path, **environment: str) -> dict[str, bytes | str | None]:
    """The whole set of a design drafted in ``folder`` in a process of its own."""
    folder.mkdir(parents=True)
    saved(folder, TEXT)
    ended = in_a_process("draft", "sleeve.yaml", "--kerf", "0.15", cwd=folder, **environment)
    assert (ended.status, ended.err) == (0, "")
    return everything(folder / "out")


def test_two_sets_of_one_design_are_the_same_byte_for_byte(tmp_path: Path) -> None:
    one = drafted(tmp_path / "one", LC_ALL="C.UTF-8", TZ="UTC", PYTHONHASHSEED="1")
    other = drafted(
        tmp_path / "elsewhere" / "and deeper",
        LC_ALL="tr_TR.UTF-8",
        LANG="de_DE.ISO-8859-1",
        TZ="Pacific/Kiritimati",
        PYTHONHASHSEED="4242",
        HOME=str(tmp_path),
        SOURCE_DATE_EPOCH="0",
    )
    assert one.keys() == other.keys()
    assert [path for path in one if one[path] != other[path]] == []
    assert len(one) > 10
