"""``python -m tests.bench``: prints how quick the program is, as ratios to figures taken in the same run.

It fails when something cannot be run, never because something is slow: figures are for people to judge.
"""

from __future__ import annotations

from argparse import ArgumentParser
from collections.abc import Iterable, Iterator
from pathlib import Path

from tests.bench.growth import growth_lines
from tests.bench.hot import hot_lines
from tests.bench.process import process_lines
from tests.bench.variants import variant_lines

_DESIGN = Path(__file__).parents[2] / "designs" / "two-fold.yaml"
_PARTS = ("process", "variants", "growth", "hot")


def main() -> None:
    """Runs the parts asked for, all but ``hot`` when none is named."""
    parser = ArgumentParser(prog="python -m tests.bench", description=__doc__)
    parser.add_argument("parts", nargs="*", metavar="PART", help=f"of {', '.join(_PARTS)}; hot only when named")
    parser.add_argument("--runs", type=int, default=9, help="of the whole process and its floor")
    parser.add_argument("--variants", type=int, default=1000, help="thicknesses drafted in one process")
    asked = parser.parse_args()
    if stray := set(asked.parts) - set(_PARTS):
        parser.error(f"there is no part {', '.join(sorted(stray))}; there are {', '.join(_PARTS)}")
    for part in asked.parts or _PARTS[:3]:
        _print(_lines(part, asked.runs, asked.variants))


def _lines(part: str, runs: int, variants: int) -> Iterator[str]:
    if part == "process":
        yield from process_lines(_DESIGN, "laser", runs)
        yield from process_lines(_DESIGN, "all", runs)
    elif part == "variants":
        yield from variant_lines(_DESIGN, variants)
    elif part == "growth":
        yield from growth_lines()
    else:
        yield from hot_lines(_DESIGN, "all")


def _print(lines: Iterable[str]) -> None:
    for line in lines:
        print(line, flush=True)
    print()


if __name__ == "__main__":
    main()
