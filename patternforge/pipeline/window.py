"""The use case ``window``: the thicknesses that the pieces of a design, or pieces made earlier, serve for."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from patternforge.fit.window import ThicknessWindow, thickness_windows
from patternforge.pipeline.made import is_made, made_again, made_anew
from patternforge.wallet.pattern import Pattern

__all__ = ["Windows", "windows_of"]


@dataclass(frozen=True, slots=True)
class Windows:
    """A pattern, and the thicknesses of each of its leathers that its pieces serve for."""

    pattern: Pattern
    windows: tuple[ThicknessWindow, ...]


def windows_of(path: Path, settings: Mapping[str, str]) -> Windows:
    """Those of the pieces in a ``pattern.json`` as they were made; of a design, or with ``settings``, as drafted now.

    DesignError, DraftError and ReadingError as the stages raise them.
    """
    pattern = made_again(path) if is_made(path) and not settings else made_anew(path, settings)[0]
    return Windows(pattern, thickness_windows(pattern))
