"""The sets of files of the ready designs: which files belong to one, and which pieces are to be in each."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator, Sequence
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from tests.outside.written import DESIGNS, SEWN

__all__ = [
    "EVERY_DESIGN",
    "EVERY_PAPER",
    "EVERY_RELEASE",
    "EVERY_SEWN_DESIGN",
    "OPTIONS",
    "FileSet",
    "Json",
    "cutting_files",
    "described",
    "die_files",
    "dxf_files",
    "pages_file",
]

Json = dict[str, Any]
FileSet = Callable[..., Path]

# Between them every release, three papers and both kinds of die.
OPTIONS = (
    ("--dxf", "r2010", "--paper", "a4"),
    ("--dxf", "r2000", "--paper", "letter", "--die-holes", "punched"),
    ("--dxf", "r12", "--paper", "a3"),
)
EVERY_DESIGN = pytest.mark.parametrize("design", DESIGNS, ids=lambda path: path.stem)
EVERY_SEWN_DESIGN = pytest.mark.parametrize("design", SEWN, ids=lambda path: path.stem)
EVERY_RELEASE = pytest.mark.parametrize("options", OPTIONS, ids=lambda options: options[1])
EVERY_PAPER = pytest.mark.parametrize("options", OPTIONS, ids=lambda options: options[3])


@cache
def described(folder: Path) -> Json:
    """The ``pattern.json`` of a set; nobody may change it."""
    read: Json = json.loads((folder / "pattern.json").read_text(encoding="utf-8"))
    return read


def cutting_files(folder: Path, ending: str) -> Iterator[tuple[Path, list[Json]]]:
    """Every cutting file for a laser or a die, with the pieces that are to be in it."""
    pieces = described(folder)["pieces"]
    stem = folder.name
    yield folder / "laser" / f"{stem}-laser-everything.{ending}", pieces
    for leather in sorted({piece["leather"] for piece in pieces}):
        some = [piece for piece in pieces if piece["leather"] == leather]
        yield folder / "laser" / f"{stem}-laser-{leather}.{ending}", some


def die_files(folder: Path, options: Sequence[str]) -> Iterator[tuple[Path, list[tuple[Json, bool]]]]:
    """Every file for a die with the pieces it cuts, each with whether it is the mirror image of what the file holds.

    The holes of a piece are described only where the die is to punch them. The file is drawn as the first piece.
    """
    punched = "punched" in options
    pieces = {piece["name"]: piece for piece in described(folder)["pieces"]}
    for die in described(folder)["cutting"]["dies"]["dies"]:
        first = die["cuts"][0]["piece"].replace(" ", "-")
        name = f"die/{folder.name}-die-{first}{'-with-holes' if punched else ''}.dxf"
        assert die["file"] == name
        own = [(pieces[cut["piece"]], cut["mirrored"]) for cut in die["cuts"]]
        bare: Json = {} if punched else {"holes": [], "turned_holes": []}
        yield folder / name, [({**piece, **bare}, mirrored) for piece, mirrored in own]


def dxf_files(folder: Path) -> list[Path]:
    """Every DXF file of a set."""
    return sorted(folder.rglob("*.dxf"))


def pages_file(folder: Path) -> Path:
    """The printed pages of a set."""
    (file,) = (folder / "paper").glob("*.pdf")
    return file
