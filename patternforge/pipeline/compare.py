"""The use case ``compare``: two states of a wallet against each other, with a picture of old over new."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from types import MappingProxyType

from patternforge.comparison.made import MadeSet
from patternforge.comparison.sets import Comparison, compared
from patternforge.delivery import Delivery, delivered
from patternforge.drafting.names import file_word
from patternforge.export.registry import writer
from patternforge.pipeline.made import is_made, made_anew, stored_at, stored_of
from patternforge.pipeline.stages import shown

__all__ = ["CompareRequest", "Compared", "compare"]


@dataclass(frozen=True, slots=True)
class CompareRequest:
    """The old state and the new, each a design file or a ``pattern.json``, and values set beside the new one.

    Without ``new`` the old one is held against itself with the ``settings``. The picture goes to a folder in ``out``.
    """

    old: Path
    new: Path | None = None
    settings: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))
    out: Path = Path("out")


@dataclass(frozen=True, slots=True)
class Compared:
    """What was found, and the picture that was written; None where there is nothing to be seen."""

    found: Comparison
    delivery: Delivery | None


def compare(request: CompareRequest) -> Compared:
    """Holds the two states against each other and writes the picture.

    DesignError, DraftError, ReadingError and DeliveryError as the stages raise them.
    """
    found = compared(_made(request.old, {}), _made(request.new or request.old, request.settings))
    if len(found.same) == len(found.changes) and not (found.added or found.gone):
        return Compared(found, None)
    from patternforge.comparison.sheet import comparison_sheet

    name = f"{file_word(found.new.name)}-compare"
    sheet = comparison_sheet(found, name)
    return Compared(found, delivered(request.out / name, {f"{name}.svg": writer("svg")(sheet)}))


def _made(path: Path, settings: Mapping[str, str]) -> MadeSet:
    label = " ".join((shown(path), *(["with"] if settings else ()), *(f"{k}={v}" for k, v in settings.items())))
    if is_made(path) and not settings:
        return stored_at(path, label).made
    pattern, source = made_anew(path, settings)
    return stored_of(pattern, source, label).made
