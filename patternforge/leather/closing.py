"""What lies on what when the wallet is closed, from the fold angles and the order of closing alone.

Laid open, every panel shows its inside. Closing a fold turns one group of panels over and lays it on the other, so
the group stays together from then on: what later goes over it goes over the whole of it. Whether a panel can
leave the stack it stands in, or is caught behind a fold, depends on sizes and is not judged here.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import isclose

from patternforge.errors import DraftError

__all__ = ["Between", "Closing", "Placed", "Spine", "closing"]


@dataclass(frozen=True, slots=True)
class Placed:
    """A panel in a closed stack; ``turned``: its inside looks down."""

    panel: int
    turned: bool


@dataclass(frozen=True, slots=True)
class Between:
    """A panel that lies between the flanks of a fold once closed."""

    panel: int


@dataclass(frozen=True, slots=True)
class Spine:
    """Partial folds that close as one (two of 90 degrees round a square spine).

    ``folds`` are their numbers from 1, ``panels`` stand between them and are no part of the stack, ``between`` lies
    between the outer flanks, counted from the flank on the left.
    """

    folds: tuple[int, ...]
    panels: tuple[int, ...]
    between: tuple[Between, ...]


@dataclass(frozen=True, slots=True)
class Closing:
    """The closed wallet.

    ``stack``: the panels on panel 0's side of every fold left ajar, bottom to top, panel 0 not turned.
    ``between``: for each fold (at its number less 1) the panels between its flanks, from the left flank to the
    right one; none for a partial fold. ``spines``: partial folds that close as one. ``open_groups``: the stacks
    beyond folds left ajar, each with its first panel not turned.
    """

    stack: tuple[Placed, ...]
    between: tuple[tuple[Between, ...], ...]
    spines: tuple[Spine, ...]
    open_groups: tuple[tuple[Placed, ...], ...]


Stack = tuple[Placed, ...]


@dataclass(frozen=True, slots=True)
class _Joint:
    """Folds that close in one go, the panels either side of them, and which faces meet."""

    folds: tuple[int, ...]
    insides_meet: bool

    @property
    def left(self) -> int:
        return self.folds[0] - 1

    @property
    def right(self) -> int:
        return self.folds[-1]

    @property
    def spine_panels(self) -> tuple[int, ...]:
        return tuple(range(self.left + 1, self.right))


def closing(panel_count: int, angles_degrees: Sequence[float], order: Sequence[int]) -> Closing:
    """The closed stack of ``panel_count`` panels in a row (at least 1).

    ``angles_degrees``: one angle per fold, +180 insides meet, -180 outsides meet. ``order``: every fold's number
    (from 1) once, first closed first. Neighbouring partial folds turning the same way that add up to 180 degrees
    (looked for from the left) close as one, when the last of them does; any other partial fold stays ajar.
    DraftError when the counts do not agree, the order is no permutation of the folds, or an angle is 0 or beyond
    180 degrees.

    >>> [placed.panel for placed in closing(3, [180, 180], [1, 2]).stack]
    [2, 0, 1]
    >>> closing(3, [180, 180], [1, 2]).between
    ((), (Between(panel=0),))
    >>> closing(3, [90, 90], [1, 2]).spines
    (Spine(folds=(1, 2), panels=(1,), between=()),)
    """
    _check(panel_count, angles_degrees, order)
    joints = sorted(_joints(angles_degrees), key=lambda joint: max(order.index(fold) for fold in joint.folds))
    spine_panels = {panel for joint in joints for panel in joint.spine_panels}
    group_of: dict[int, Stack] = {
        panel: (Placed(panel, turned=False),) for panel in range(panel_count) if panel not in spine_panels
    }
    between: dict[_Joint, tuple[Between, ...]] = {}
    for joint in joints:
        merged = _merged(group_of[joint.left], group_of[joint.right], joint)
        between[joint] = _panels_between(merged, joint)
        group_of.update((placed.panel, merged) for placed in merged)
    return _closing(panel_count, between, group_of)


def _check(panel_count: int, angles: Sequence[float], order: Sequence[int]) -> None:
    if panel_count < 1:
        raise DraftError(f"a wallet of {panel_count} panels cannot be closed; it needs at least one panel")
    if len(angles) != panel_count - 1:
        raise DraftError(
            f"{panel_count} panels in a row are joined by {panel_count - 1} folds, but {len(angles)} are given"
        )
    for fold, angle in enumerate(angles, start=1):
        if not 0 < abs(angle) <= 180:
            raise DraftError(f"fold {fold} turns by {angle:g} degrees; lawful is -180 to 180, but not 0")
    if sorted(order) != list(range(1, panel_count)):
        raise DraftError(
            f"the closing order {list(order)} must name each of the folds 1 to {panel_count - 1} exactly once"
            if angles
            else f"the closing order {list(order)} must be empty: one panel has no fold to close"
        )


def _joints(angles: Sequence[float]) -> list[_Joint]:
    """Whole folds, and runs of partial folds that make one whole turn of 180 degrees, from left to right."""
    joints: list[_Joint] = []
    fold = 1
    while fold <= len(angles):
        length = _run_length(angles[fold - 1 :])
        if length:
            joints.append(_Joint(tuple(range(fold, fold + length)), angles[fold - 1] > 0))
        fold += max(length, 1)
    return joints


def _run_length(angles: Sequence[float]) -> int:
    """How many of the first angles, all of one sign, add up to 180 degrees; 0 when none do."""
    total = 0.0
    for count, angle in enumerate(angles, start=1):
        if angle * angles[0] < 0:
            return 0
        total += abs(angle)
        if isclose(total, 180, abs_tol=1e-9):
            return count
    return 0


def _merged(left: Stack, right: Stack, joint: _Joint) -> Stack:
    """Both groups as they lie with the joint still open (its flanks inside up), the right one then turned over."""
    lying = _inside_up(left, joint.left)
    turned = _turned_over(_inside_up(right, joint.right))
    return lying + turned if joint.insides_meet else turned + lying


def _inside_up(stack: Stack, panel: int) -> Stack:
    return _turned_over(stack) if Placed(panel, turned=True) in stack else stack


def _turned_over(stack: Stack) -> Stack:
    return tuple(Placed(placed.panel, not placed.turned) for placed in reversed(stack))


def _panels_between(stack: Stack, joint: _Joint) -> tuple[Between, ...]:
    panels = [placed.panel for placed in stack]
    left, right = panels.index(joint.left), panels.index(joint.right)
    step = 1 if left < right else -1
    return tuple(Between(panels[at]) for at in range(left + step, right, step))


def _closing(panel_count: int, between: dict[_Joint, tuple[Between, ...]], group_of: dict[int, Stack]) -> Closing:
    whole = {joint.left: panels for joint, panels in between.items() if not joint.spine_panels}
    spines = [
        Spine(joint.folds, joint.spine_panels, panels) for joint, panels in between.items() if joint.spine_panels
    ]
    stacks = [_inside_up(group, panel) for panel, group in sorted(group_of.items()) if panel == _first_panel(group)]
    return Closing(
        stack=stacks[0],
        between=tuple(whole.get(fold - 1, ()) for fold in range(1, panel_count)),
        spines=tuple(sorted(spines, key=lambda spine: spine.folds)),
        open_groups=tuple(stacks[1:]),
    )


def _first_panel(stack: Iterable[Placed]) -> int:
    return min(placed.panel for placed in stack)
