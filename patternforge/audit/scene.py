"""A cut file laid out for judging: runs, what lies in what, single strokes, which strokes lie near one another."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from patternforge.audit.model import CutFile, Entity, Ring, box_of
from patternforge.audit.nesting import parents
from patternforge.audit.runs import Run, runs
from patternforge.geometry.boxes import Box, loose_box
from patternforge.geometry.nearby import near_pairs
from patternforge.geometry.segment import Segment

__all__ = ["NEAR", "Scene", "Stroke", "scene"]

NEAR = 0.02  # mm; cuts nearer than this are one cut


@dataclass(frozen=True, slots=True)
class Stroke:
    """One line, arc or circle: the number of its entity among the cuts, its place in it, its run if it is in one."""

    cut: int
    place: int
    run: int | None
    line: Segment | Ring

    @property
    def box(self) -> Box:
        """A box round it."""
        return box_of(self.line) if isinstance(self.line, Ring) else loose_box(self.line)


@dataclass(frozen=True, slots=True)
class Scene:
    """Everything that judging asks for more than once. ``pairs`` are strokes within 0.02 mm of each other."""

    file: CutFile
    cuts: tuple[Entity, ...]
    runs: tuple[Run, ...]
    parents: tuple[int | None, ...]
    strokes: tuple[Stroke, ...]
    pairs: tuple[tuple[Stroke, Stroke], ...]

    @property
    def outlines(self) -> list[int]:
        """The numbers of the closed runs that lie in no other."""
        return [i for i, run in enumerate(self.runs) if run.closed and self.parents[i] is None]

    def children(self) -> dict[int, list[int]]:
        """The numbers of the runs directly inside each run that has any."""
        found: dict[int, list[int]] = {}
        for index, parent in enumerate(self.parents):
            if parent is not None:
                found.setdefault(parent, []).append(index)
        return found


def scene(file: CutFile) -> Scene:
    """``file`` laid out for judging."""
    cuts = file.cuts
    joined = runs(cuts)
    strokes = tuple(_strokes(cuts, joined))
    near = near_pairs([stroke.box for stroke in strokes], NEAR)
    pairs = tuple((strokes[i], strokes[j]) for i, j in near)
    return Scene(file, cuts, joined, parents(joined), strokes, pairs)


def _strokes(cuts: Sequence[Entity], joined: Sequence[Run]) -> Iterator[Stroke]:
    run_of = {member.number: index for index, run in enumerate(joined) for member in run.members}
    for index, entity in enumerate(cuts):
        run = run_of.get(entity.number)
        if isinstance(entity.shape, Ring):
            yield Stroke(index, 0, run, entity.shape)
        elif entity.shape is not None:
            yield from (Stroke(index, i, run, segment) for i, segment in enumerate(entity.shape.segments))
