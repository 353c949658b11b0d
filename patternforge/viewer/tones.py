"""The tones of leathers and contents: far enough apart in lightness to be told from each other in black and white."""

from __future__ import annotations

from collections.abc import Sequence

__all__ = ["CONTENTS", "Tone", "leather_tones"]

Tone = tuple[int, int, int]
"""Red, green and blue, 0 to 255."""

CONTENTS: Tone = (238, 242, 244)
_DARK: Tone = (112, 74, 46)
_LIGHT: Tone = (214, 180, 134)


def leather_tones(roles: Sequence[str]) -> dict[str, Tone]:
    """A tone for every leather, the first the darkest, and for contents under the empty name.

    >>> leather_tones(["outer", "inner"])["outer"]
    (112, 74, 46)
    """
    steps = max(len(roles) - 1, 1)
    tones = {role: _between(number / steps) for number, role in enumerate(roles)}
    return {**tones, "": CONTENTS}


def _between(share: float) -> Tone:
    red, green, blue = (round(dark + share * (light - dark)) for dark, light in zip(_DARK, _LIGHT, strict=True))
    return red, green, blue
