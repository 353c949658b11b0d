"""The use case ``audit``: read a cutting file that is brought, and look for all that a machine may stumble over."""

from __future__ import annotations

import os
import stat
from collections import Counter
from dataclasses import dataclass
from pathlib import Path

from patternforge.audit.checks import Checked, checked
from patternforge.audit.flaws import Flaw, Limits
from patternforge.audit.model import CutFile
from patternforge.audit.reading import cut_file
from patternforge.audit.scene import scene
from patternforge.audit.smallest import Measure, holes, necks, radii, slots, smallest_gaps
from patternforge.errors import ReadingError

__all__ = ["Audit", "Smallest", "audit"]

_LARGEST = 50_000_000  # bytes of a cutting file


@dataclass(frozen=True, slots=True)
class Smallest:
    """The smallest of its kind in a file; None where there is none."""

    word: str
    measure: Measure | None


@dataclass(frozen=True, slots=True)
class Audit:
    """A cutting file, what every check found in it, and what is worth comparing with the machine's own display."""

    file: CutFile
    checks: tuple[Checked, ...]
    kinds: tuple[tuple[str, int], ...]
    outlines: int
    inside: int
    loose: int
    smallest: tuple[Smallest, ...]

    @property
    def flaws(self) -> tuple[Flaw, ...]:
        """All flaws in the order of the checks."""
        return tuple(flaw for each in self.checks for flaw in each.flaws)


def audit(path: Path, limits: Limits | None = None) -> Audit:
    """The file at ``path`` read and checked; ReadingError when it cannot be read as a cutting file."""
    file = cut_file(_data_at(path), os.fsencode(path.name).decode("utf-8", "replace"))
    laid_out = scene(file)
    closed = [parent for run, parent in zip(laid_out.runs, laid_out.parents, strict=True) if run.closed]
    measures = {
        "hole": holes(laid_out),
        "radius": radii(laid_out),
        "gap between cuts": smallest_gaps(laid_out),
        "slot": slots(laid_out),
        "neck of leather": necks(laid_out),
    }
    return Audit(
        file=file,
        checks=checked(file, limits),
        kinds=tuple(sorted(Counter(each.kind for each in file.entities).items())),
        outlines=closed.count(None),
        inside=len(closed) - closed.count(None),
        loose=len(laid_out.runs) - len(closed),
        smallest=tuple(Smallest(word, found[0] if found else None) for word, found in measures.items()),
    )


def _data_at(path: Path) -> bytes:
    try:
        if not stat.S_ISREG(path.stat().st_mode):
            raise ReadingError(f"{path}: this is no file; give the path of a DXF, SVG or HPGL file")
        with path.open("rb") as stream:
            data = stream.read(_LARGEST + 1)
    except OSError as error:
        raise ReadingError(f"{path}: the file cannot be read: {error.strerror}; see to it that it can") from error
    if len(data) > _LARGEST:
        raise ReadingError(f"{path}: the file is larger than 50 MB; a cutting file has a few MB at most")
    return data
