"""Designs in which a seam, a pocket or contents want a layer to be held that is said to be glued."""

from __future__ import annotations

from tests.unit.design.broken import broken

__all__ = ["BROKEN_FASTENING"]

_STRAP = {"fastened: sewn": "fastened: glued"}
_LOOSE_STRAP = {**_STRAP, "    of: strap\n": ""}

BROKEN_FASTENING = (
    broken(
        "a seam through a glued layer",
        {**_LOOSE_STRAP, "[shell, divider]": "[shell, ¦strap, divider]"},
        ("'strap' is held by glue alone, so no seam goes through it", "leave it out, or write 'fastened: sewn'"),
    ),
    broken(
        "a seam that follows a glued layer",
        {**_STRAP, "of: strap": "of: ¦strap"},
        ("'strap' is held by glue alone, so seam 'strap seam' cannot follow its edges", "'fastened: sewn'"),
    ),
    broken(
        "a seam that follows a glued layer and goes through others",
        {**_STRAP, "of: strap": "of: ¦strap\n    through: [shell]"},
        "'strap' is held by glue alone",
    ),
    broken(
        "a seam that follows a glued layer and goes through it",
        {**_STRAP, "of: strap": "of: ¦strap\n    through: [shell, ¦strap]"},
        "so seam 'strap seam' cannot follow its edges",
        "so no seam goes through it",
    ),
    broken(
        "a bank sewn to a glued layer below it",
        {**_LOOSE_STRAP, "sewn_to: [shell]": "sewn_to: [shell, ¦strap]"},
        ("'strap' is held by glue alone, so nothing is sewn to it", "leave it out, or write 'fastened: sewn'"),
    ),
    broken(
        "a pocket sewn to a glued layer above it",
        {"notch: 2 mm": "notch: 2 mm\n    fastened: glued", "    holds: {note: 10}\n": ""}
        | {"depth: reach": "depth: reach\n    sewn_to: [¦divider]", "through: [shell, divider]": "through: [shell]"}
        | {"  note: {item: note-eur-50, thickness: 0.12 mm}\n": "", "{cards: 0.5, notes: 0}": "{cards: 0.5}"},
        "'divider' is held by glue alone, so nothing is sewn to it",
    ),
    broken(
        "a glued layer that holds something",
        {**_LOOSE_STRAP, "fastened: sewn": "fastened: glued\n    holds: ¦{note: 2}"},
        ("layer 'strap' is held by glue alone, so nothing goes behind it", "leave out 'holds', or write"),
    ),
    broken(
        "a layer that seams, pockets and contents contradict at once",
        {
            "fastened: sewn": "fastened: glued\n    holds: ¦{note: 2}",
            "sewn_to: [shell]": "sewn_to: [¦strap]",
            "[shell, divider]": "[shell, divider, ¦strap]",
            "of: strap": "of: ¦strap",
        },
        "nothing is sewn to it",
        "nothing goes behind it",
        "no seam goes through it",
        "cannot follow its edges",
    ),
)
