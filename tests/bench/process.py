"""The whole process ``patternforge draft`` against a floor that imports and writes the same and does nothing else."""

from __future__ import annotations

import marshal
import os
import subprocess
import sys
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from resource import RUSAGE_CHILDREN, getrusage
from statistics import median
from tempfile import TemporaryDirectory
from time import perf_counter

from tests.bench.record import recorded, run_words

__all__ = ["process_lines", "surroundings"]

_GOAL = 1.5
_FLOOR = Path(__file__).with_name("floor.py")


@dataclass(frozen=True, slots=True)
class _Time:
    """How long a process took: on the clock, and on the processor (user and system), s."""

    clock: float
    processor: float


def process_lines(design: Path, wanted: str, runs: int) -> Iterator[str]:
    """Program and floor in turn, ``runs`` times each after one that does not count; the ratios of their medians."""
    with TemporaryDirectory() as place:
        here = Path(place)
        record = recorded(design, wanted, here / "recorded")
        (here / "record").write_bytes(marshal.dumps(record))
        program = [sys.executable, "-m", "patternforge.cli", *run_words(design, wanted, here / "program")]
        floor = [sys.executable, str(_FLOOR), str(here / "record"), str(here / "floor")]
        found = surroundings(here)
        pairs = [(_time(program, found), _time(floor, found)) for _ in range(runs + 1)][1:]
        _check_same_files(here / "program" / design.stem, here / "floor")
    mine, least = [pair[0] for pair in pairs], [pair[1] for pair in pairs]
    count = len(record["files"])
    yield f"patternforge draft {design.name} --for {wanted}: {count} files, {runs} runs of each in turn"
    yield f"  libraries the floor imports, as the program did: {', '.join(record['libraries'])}"
    yield _ratio("on the clock", [t.clock for t in mine], [t.clock for t in least])
    yield _ratio("on the processor", [t.processor for t in mine], [t.processor for t in least])


def surroundings(here: Path) -> dict[str, str]:
    """What both processes find: their compiled modules kept from run to run, and an empty list of fonts.

    The second is for the floor's import of the DXF library, which else goes through the fonts of the system; the
    program keeps it from that by itself.
    """
    listed = here / "cache" / "ezdxf" / "font_manager_cache.json"
    listed.parent.mkdir(parents=True)
    listed.write_text('{"version": 2, "font-faces": []}', encoding="ascii")
    known = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    return {**known, "PYTHONPYCACHEPREFIX": str(here / "compiled"), "XDG_CACHE_HOME": str(here / "cache")}


def _time(command: Sequence[str], found: dict[str, str]) -> _Time:
    before, began = getrusage(RUSAGE_CHILDREN), perf_counter()
    subprocess.run(command, check=True, env=found, stdout=subprocess.DEVNULL)
    clock, after = perf_counter() - began, getrusage(RUSAGE_CHILDREN)
    return _Time(clock, after.ru_utime - before.ru_utime + after.ru_stime - before.ru_stime)


def _check_same_files(program: Path, floor: Path) -> None:
    """ValueError when the floor is no floor: it wrote other files than the program, or far less into one."""
    mine, least = _sizes(program), _sizes(floor)
    if mine.keys() != least.keys():
        raise ValueError(f"the floor wrote other files: {sorted(mine.keys() ^ least.keys())}")
    thin = [name for name, size in mine.items() if least[name] < size / 2]
    if thin:
        raise ValueError(f"the floor wrote less than half as much into {', '.join(thin)}")


def _sizes(folder: Path) -> dict[str, int]:
    return {p.relative_to(folder).as_posix(): p.stat().st_size for p in folder.rglob("*") if p.is_file()}


def _ratio(how: str, program: Sequence[float], floor: Sequence[float]) -> str:
    mine, least = median(program), median(floor)
    spread = f"{min(program) / min(floor):.2f} of the quickest runs"
    context = f"medians {mine * 1e3:.0f} and {least * 1e3:.0f} ms"
    return f"  {how}: {mine / least:.2f} times the floor (goal {_GOAL:.1f}; {spread}; {context})"
