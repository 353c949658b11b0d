"""The same drawing gives the same bytes under any hash seed, locale, time zone and working folder."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[3]
DIGESTS = """
import hashlib, locale, sys
from tests.figures import sheet
from patternforge.export.dxf import DxfOptions, DxfVersion, dxf_bytes
from patternforge.export.svg import svg_bytes
locale.setlocale(locale.LC_ALL, "")
files = [dxf_bytes(sheet(), DxfOptions(version)) for version in DxfVersion] + [svg_bytes(sheet())]
print(locale.localeconv()["decimal_point"], *[hashlib.sha256(data).hexdigest() for data in files])
"""
# Switches of the DXF library that it would read from the working folder.
LIBRARY_SETTINGS = "[core]\nwrite_fixed_meta_data_for_testing = false\nstore_proxy_graphics = false\n"


def answer(folder: Path, **surroundings: str) -> list[str]:
    """The decimal sign of the locale and one digest for each file, from a process of its own."""
    environment = os.environ | {"PYTHONPATH": str(ROOT)} | surroundings
    run = subprocess.run(
        [sys.executable, "-c", DIGESTS], capture_output=True, text=True, check=True, cwd=folder, env=environment
    )
    return run.stdout.split()


def comma_locale(folder: Path) -> dict[str, str]:
    """Surroundings with a decimal comma, built with the system's own tool; where it cannot, the plain ones."""
    built = folder / "de_DE.UTF-8"
    if shutil.which("localedef"):
        subprocess.run(["localedef", "-i", "de_DE", "-f", "UTF-8", str(built)], check=False)
    return {"LC_ALL": "de_DE.UTF-8", "LOCPATH": str(folder)} if built.exists() else {"LC_ALL": "C"}


@pytest.fixture(scope="module")
def plain(tmp_path_factory: pytest.TempPathFactory) -> list[str]:
    return answer(tmp_path_factory.mktemp("plain"), PYTHONHASHSEED="0", LC_ALL="C", TZ="UTC")


@pytest.mark.parametrize("seed", ["1", "2", "3", "random"])
def test_the_hash_seed_changes_nothing(seed: str, plain: list[str], tmp_path: Path) -> None:
    assert answer(tmp_path, PYTHONHASHSEED=seed, LC_ALL="C") == plain


def test_locale_time_zone_and_working_folder_change_nothing(plain: list[str], tmp_path: Path) -> None:
    (tmp_path / "ezdxf.ini").write_text(LIBRARY_SETTINGS, encoding="ascii")
    surroundings = comma_locale(tmp_path)
    there = answer(tmp_path, PYTHONHASHSEED="0", TZ="Pacific/Kiritimati", **surroundings)
    assert there[0] == ("." if surroundings["LC_ALL"] == "C" else ",")
    assert there[1:] == plain[1:]


def test_the_files_differ_from_one_another(plain: list[str]) -> None:
    assert len(set(plain)) == 6
