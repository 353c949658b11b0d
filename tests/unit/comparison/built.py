"""Sets of pieces as ``pattern.json`` gives them, from designs built without a file."""

from __future__ import annotations

import json
from dataclasses import replace
from functools import cache
from typing import Any

from patternforge.comparison.made import MadeSet
from patternforge.comparison.reading import stored
from patternforge.drafting.description import description
from patternforge.export.json import json_bytes
from patternforge.leather.material import Leather, Thickness
from patternforge.wallet.assemble import drafted
from patternforge.wallet.spec import Design

__all__ = ["in_leather", "made", "written"]


@cache
def written(design: Design) -> bytes:
    """The ``pattern.json`` of a design, its fit not measured."""
    return json_bytes(description(drafted(design)))


def made(design: Design, **changes: Any) -> MadeSet:
    """What is read back; ``changes`` are names of the document that are given another value first."""
    document = {**json.loads(written(design)), **changes}
    return stored(json.dumps(document).encode(), design.file or "pattern.json").made


def in_leather(design: Design, role: str, t: float) -> Design:
    """The design with one leather of another thickness, mm."""

    def taken(leather: Leather) -> Leather:
        return replace(leather, thickness=Thickness(t, t)) if leather.role == role else leather

    return replace(design, leathers=tuple(taken(leather) for leather in design.leathers))
