"""The words a machine table calls what is cut by."""

from __future__ import annotations

from enum import StrEnum

from patternforge.drawing.model import Role

__all__ = ["CutWord"]


class CutWord(StrEnum):
    """The roles that are cut, by the words they have everywhere."""

    MARK = Role.MARK.value
    HOLE = Role.HOLE.value
    OPENING = Role.OPENING.value
    OUTLINE = Role.OUTLINE.value

    @property
    def role(self) -> Role:
        """The role itself."""
        return Role(self.value)
