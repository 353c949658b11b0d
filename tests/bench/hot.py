"""Where the time goes: the functions that take most of their own, in the whole process and in drafting and fit."""

from __future__ import annotations

import io
import subprocess
import sys
from collections.abc import Callable, Iterator
from cProfile import Profile
from pathlib import Path
from pstats import Stats
from tempfile import TemporaryDirectory

from patternforge.fit.judge import fit_over_range
from patternforge.pipeline.stages import design_at
from patternforge.wallet.assemble import drafted
from tests.bench.process import surroundings
from tests.bench.record import run_words

__all__ = ["hot_lines"]

_ROOT = Path(__file__).parents[2]
_SHOWN = 10
_REPEATS = 20


def hot_lines(design: Path, wanted: str) -> Iterator[str]:
    """Ten functions by own time for the whole process, for drafting, and for fit; profiling slows calls down."""
    with TemporaryDirectory() as place:
        profile = Path(place) / "profile"
        words = run_words(design, wanted, Path(place) / "out")
        command = [sys.executable, "-m", "cProfile", "-o", str(profile), "-m", "patternforge.cli", *words]
        found = surroundings(Path(place))
        for _ in range(2):  # the second finds its modules compiled
            subprocess.run(command, check=True, env=found, stdout=subprocess.DEVNULL)
        yield f"own time, whole process --for {wanted}"
        yield from _table(Stats(str(profile), stream=io.StringIO()))
    start = design_at(design)
    pattern = drafted(start)
    yield f"own time, drafting {_REPEATS} times"
    yield from _table(_profiled(lambda: drafted(start)))
    yield f"own time, fit {_REPEATS} times"
    yield from _table(_profiled(lambda: fit_over_range(pattern)))


def _profiled(work: Callable[[], object]) -> Stats:
    profile = Profile()
    for _ in range(_REPEATS):
        profile.runcall(work)
    return Stats(profile, stream=io.StringIO())


def _table(stats: Stats) -> Iterator[str]:
    functions = stats.get_stats_profile().func_profiles
    whole = sum(each.tottime for each in functions.values())
    for name, each in sorted(functions.items(), key=lambda pair: -pair[1].tottime)[:_SHOWN]:
        file = each.file_name.removeprefix(f"{_ROOT}/").rpartition("site-packages/")[2]
        yield f"  {each.tottime / whole:6.1%}  {each.ncalls:>14} calls  {file}:{each.line_number} {name}"
