"""What is said on the screen of how sizes came about."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from textwrap import wrap

import typer

from patternforge.cli.branches import Tree, value_told
from patternforge.cli.lines import WIDTH
from patternforge.cli.table import columns
from patternforge.design.words import nearest
from patternforge.reasons.asked import asked_for
from patternforge.reasons.reason import How, Reason
from patternforge.reasons.told import Reasons

__all__ = ["names_told", "sizes_told"]

_MOST_TREES = 3
_GROUPS: Mapping[str, str] = {
    "open": "Finished size",
    "closed": "Finished size",
    "piece": "Pieces",
    "panel": "Panels",
    "body": "Panels",
    "fold": "Folds",
    "face": "Faces",
    "part": "Parts",
    "room": "Parts",
    "tab": "Parts",
    "opening": "Parts",
    "fitting": "Hardware",
    "folded": "Parts",
    "seam": "Seams",
    "thread": "Seams",
    "stitching": "Seams",
    "leather": "Leathers",
    "content": "Contents",
    "load": "Contents",
    "limits": "Limits",
    "parameter": "Numbers you may change",
}


def names_told(told: Reasons) -> list[str]:
    """The names of all sizes in groups: what they are of, with what there is to ask of it."""
    groups: dict[str, dict[str, list[str]]] = {}
    for called, whole in told.own.items():
        if _is_left_out(told, whole):
            continue
        of, _, size = called.rpartition(".")
        group = groups.setdefault(_GROUPS[whole.partition(" ")[0].partition(".")[0]], {})
        group.setdefault(of, []).append(size)
    lines = [
        line for title in dict.fromkeys(_GROUPS.values()) if title in groups for line in _group(title, groups[title])
    ]
    return [
        *lines,
        "Ask for one of them by its name, a point and the size: left.width. Put a name with blanks in quotes.",
    ]


def _is_left_out(told: Reasons, whole: str) -> bool:
    """Whether a size is one of the design's that nobody asked for and that is nothing."""
    return whole in told.declared and told.book.of(whole).how is How.DEFAULT and not told.book.of(whole).value


def _group(title: str, members: Mapping[str, list[str]]) -> Iterator[str]:
    """One group; what has the same sizes stands together."""
    alike: dict[tuple[str, ...], list[str]] = {}
    for of, sizes in members.items():
        alike.setdefault(tuple(sizes), []).append(of)
    yield title
    for same, owners in alike.items():
        names = ", ".join(owner for owner in owners if owner)
        words = f"{names}: {', '.join(same)}" if names else ", ".join(same)
        yield from wrap(words, WIDTH, initial_indent="  ", subsequent_indent="    ", break_on_hyphens=False)
    yield ""


def sizes_told(told: Reasons, word: str) -> list[str]:
    """How the size came about that the word names; where it means many, a line for each of them.

    A usage error, with the nearest name, where it means none.
    """
    found = asked_for(word, told.own)
    if not found:
        raise typer.BadParameter(_unknown(word, told), param_hint="NAME")
    if len(found) > _MOST_TREES:
        return _listed(told, found)
    tree = Tree()
    lines = [line for name in found for line in (*tree.lines(told[name]), "")]
    return [*lines[:-1], *(["", "Sources", *tree.sources] if tree.sources else [])]


def _unknown(word: str, told: Reasons) -> str:
    near = nearest(word, (*told.own, *told.own.values()))
    advice = f"did you mean '{near}'?" if near else "leave the name out to see them all"
    return f"there is no size '{word}'; {advice}"


def _listed(told: Reasons, names: Sequence[str]) -> list[str]:
    rows = [(name, value_told(told[name]), _made_of(told[name])) for name in names]
    return [*columns(rows, right=(1,)), "", "Say the whole name to see more of one."]


def _made_of(reason: Reason) -> str:
    """The parts of a size by name, as far as there is room for them."""
    names = ", ".join(part.name for part in reason.parts if part.name)
    return f"{names[:47]}..." if len(names) > 50 else names
