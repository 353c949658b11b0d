"""The ready designs that come with the program, and a design of one's own started from one of them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path
from types import MappingProxyType

from patternforge.design.load import load_design
from patternforge.design.rewrite import rewritten
from patternforge.errors import DesignError, Fault
from patternforge.wallet.spec import Design

__all__ = ["Ready", "own_design", "ready_design", "ready_names"]

_NO_SETTINGS: Mapping[str, str] = MappingProxyType({})


@dataclass(frozen=True, slots=True)
class Ready:
    """A ready design under its name: the text of its file."""

    name: str
    text: str

    def resolved(self, settings: Mapping[str, str] = _NO_SETTINGS) -> Design:
        """The design with the ``settings`` in it; DesignError for a name or value it does not take."""
        return load_design(self.text, f"{self.name}.yaml", settings)


def ready_names() -> tuple[str, ...]:
    """The names of all ready designs, in alphabetical order.

    >>> "two-fold" in ready_names()
    True
    """
    return tuple(sorted(each.name.removesuffix(".yaml") for each in _shelf().iterdir() if _is_design(each)))


def ready_design(name: str) -> Ready:
    """The ready design of that name; DesignError, offering the nearest, if there is none."""
    known = ready_names()
    if name not in known:
        near = get_close_matches(name, known, n=1)
        advice = f"did you mean {near[0]}?" if near else f"choose one of {', '.join(known)}"
        raise DesignError([Fault(f"--from {name}", 0, 0, f"there is no ready design called '{name}'", advice)])
    return Ready(name, (_shelf() / f"{name}.yaml").read_text(encoding="utf-8"))


def own_design(ready: Ready, title: str, settings: Mapping[str, str]) -> str:
    """The text of a new design: the ready one with this title and these values (as for ``load_design``) in it.

    DesignError for a name or value that the design does not take.
    """
    ready.resolved(settings)
    text = rewritten(ready.text, f"{ready.name}.yaml", settings, title)
    load_design(text, f"{ready.name}.yaml")
    return text


def _shelf() -> Traversable:
    """Where the ready designs lie: in the package once it is installed, beside it where it is worked on."""
    packed = files("patternforge") / "ready"
    return packed if packed.is_dir() else Path(__file__).parents[2] / "designs"


def _is_design(entry: Traversable) -> bool:
    return entry.name.endswith(".yaml")
