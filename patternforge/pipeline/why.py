"""The use case ``why``: read, assemble, and ask the pattern for the reasons of its sizes."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from patternforge.pipeline.stages import design_at
from patternforge.reasons.told import Reasons, reasons_of
from patternforge.wallet.assemble import drafted

__all__ = ["reasons_at"]


def reasons_at(path: Path, settings: Mapping[str, str]) -> Reasons:
    """The reasons of every size of the design at ``path``; ``settings`` as for ``load_design``.

    DesignError when the file cannot be read or taken, DraftError when the design cannot be drafted.
    """
    return reasons_of(drafted(design_at(path, settings)))
