"""Designs whose gussets are broken, or are not held by the seams they join."""

from __future__ import annotations

from tests.unit.design.broken import broken_pouch

__all__ = ["BROKEN_GUSSETS"]

_NAMES = (
    broken_pouch("a gusset without a name", {"gusset: base": "gusset: ¦''"}, "'gusset' of this gusset is empty"),
    broken_pouch(
        "two gussets of one name",
        {
            "gusset: base": "gusset: ¦left side",
            "[base, front]": "[left side, front]",
            "[back, base]": "[back, left side]",
        },
        ("is taken by the part on line", "a name of its own"),
    ),
    broken_pouch("a misspelt kind of gusset", {"gusset: base": "¦guset: base"}, "did you mean 'gusset'?"),
    broken_pouch("an unknown key of a gusset", {"    turn: margin": "    ¦trun: margin"}, "did you mean 'turn'?"),
    broken_pouch(
        "a gusset on no panel", {"base\n    on: pouch": "base\n    on: ¦pouhc"}, ("no panel 'pouhc'", "'pouch'?")
    ),
    broken_pouch(
        "a gusset on a panel its seams leave",
        {
            "base\n    on: pouch": "base\n    on: flap",
            "joins: [back base, front base]": "joins: [¦back base, ¦front base]",
        },
        ("seam 'back base' does not keep to panel 'flap'", "'over: flap'"),
        ("seam 'front base' does not keep to panel 'flap'", "'over: flap'"),
    ),
    broken_pouch(
        "a gusset of no known leather",
        {"leather: thin\n    joins: [back base": "leather: ¦thim\n    joins: [back base"},
        ("no leather 'thim'", "'thin'?"),
    ),
    broken_pouch(
        "a gusset without seams, a needed key",
        {"    joins: [back base, front base]\n": "", "- gusset: base": "- ¦gusset: base"},
        ("gusset 'base' has no 'joins'", "the seams along its two long edges"),
    ),
    broken_pouch(
        "a gusset without a leather, a needed key",
        {"    leather: thin\n    joins: [back base": "    joins: [back base", "- gusset: base": "- ¦gusset: base"},
        "gusset 'base' has no 'leather'",
    ),
)

_SIZES = (
    broken_pouch("a gusset with half a pleat", {"pleats: 2": "pleats: ¦1.5"}, "'pleats' of gusset 'base'"),
    broken_pouch("a gusset of too many pleats", {"pleats: 2": "pleats: ¦13"}, "must be at most 12"),
    broken_pouch("a gusset of pleats below none", {"pleats: 2": "pleats: ¦-1"}, "must be at least 0"),
    broken_pouch(
        "a bellows with a depth",
        {"leaf: 9 mm": "leaf: 9 mm\n    depth: ¦20 mm"},
        ("a bellows of 2 pleats and has no 'depth'", "give 'leaf'"),
    ),
    broken_pouch(
        "a bellows with a turn",
        {"leaf: 9 mm": "leaf: 9 mm\n    turn: ¦2 mm"},
        "a bellows of 2 pleats and has no 'turn'",
    ),
    broken_pouch(
        "a channel with a leaf",
        {"depth: 20 mm": "depth: 20 mm\n    leaf: ¦9 mm"},
        ("a channel of 0 pleats and has no 'leaf'", "change 'pleats'"),
    ),
    broken_pouch(
        "a channel without a depth",
        {"    depth: 20 mm\n": "", "- gusset: left": "- ¦gusset: left"},
        ("gusset 'left side' is a channel and has no 'depth'", "add 'depth: 20 mm'"),
    ),
    broken_pouch(
        "a bellows without a leaf",
        {"    leaf: 9 mm\n": "", "- gusset: base": "- ¦gusset: base"},
        ("gusset 'base' is a bellows and has no 'leaf'", "add 'leaf: 20 mm'"),
    ),
    broken_pouch("a channel of no depth", {"depth: 20 mm": "depth: ¦0 mm"}, "it must be more than 0 mm"),
    broken_pouch("a leaf of no depth", {"leaf: 9 mm": "leaf: ¦0 mm"}, "it must be more than 0 mm"),
    broken_pouch("a turn of nothing", {"turn: margin": "turn: ¦0 mm"}, "it must be more than 0 mm"),
    broken_pouch("a gusset longer than its walls", {"short: 2 mm": "short: ¦-2 mm"}, "it must be at least 0 mm"),
    broken_pouch("a gusset of negative ease", {"ease: 3 mm": "ease: ¦-3 mm"}, "it must be at least 0 mm"),
    broken_pouch(
        "a gusset that shows a wrong side", {"showing: inside": "showing: ¦insid"}, "did you mean 'inside'?"
    ),
    broken_pouch("a gusset holding nothing known", {"{coins: 1}": "{¦coin: 1}"}, ("no content 'coin'", "'coins'?")),
    broken_pouch(
        "a gusset holding no count", {"{coins: 1}": "{coins: ¦many}"}, "the count of 'coins' in gusset 'base'"
    ),
    broken_pouch("a gusset holding a list", {"{coins: 1}": "¦[coins]"}, "'holds' of gusset 'base' is a table"),
    broken_pouch("contents of a gusset that lean", {"stands: upright": "stands: ¦upwright"}, "'upright'?"),
)

_JOINS = (
    broken_pouch("a gusset joined to one word, is a value", {"[back base, front base]": "¦back base"}, "is a list"),
    broken_pouch(
        "a gusset joined to one seam",
        {"[back base, front base]": "¦[back base]"},
        ("'joins' of gusset 'base' names 1 seams", "that of the inner wall"),
    ),
    broken_pouch(
        "a gusset joined to three seams",
        {"[back base, front base]": "¦[back base, front base, back left]"},
        "names 3 seams",
    ),
    broken_pouch(
        "a gusset joined twice to one seam", {"[back base, front base]": "¦[back base, back base]"}, "one seam twice"
    ),
    broken_pouch(
        "a gusset joined to an unknown seam",
        {"[back base, front base]": "[back base, ¦frnt base]"},
        ("no seam 'frnt base'", "'front base'?"),
    ),
    broken_pouch(
        "a gusset that a seam passes by",
        {"[back base, front base]": "[back base, ¦front base]", "[base, front]": "[front]"},
        ("seam 'front base' does not go through gusset 'base'", "add it to the seam's 'through'"),
    ),
    broken_pouch(
        "a gusset sewn to no wall",
        {"[back base, front base]": "[back base, ¦front base]", "[base, front]": "[base]"},
        ("seam 'front base' sews gusset 'base' to no wall", "name the one wall next to it"),
    ),
    broken_pouch(
        "a gusset sewn to walls on both sides",
        {"[back base, front base]": "[back base, ¦front base]", "[base, front]": "[back, base, front]"},
        "seam 'front base' sews gusset 'base' to walls on either side of it",
    ),
    broken_pouch(
        "a gusset sewn twice to one side",
        {"[back base, front base]": "[back base, ¦front base]", "[base, front]": "[base, back]"},
        ("both seams of gusset 'base' sew it to a wall outside of it", "between its two walls"),
    ),
    broken_pouch(
        "a gusset whose seam runs over all panels",
        {
            "[back base, front base]": "[¦back base, front base]",
            "along: [bottom], over: pouch, margin: margin, through: [back": (
                "along: [bottom], margin: margin, through: [back"
            ),
        },
        ("seam 'back base' does not keep to panel 'pouch'", "'over: pouch'"),
    ),
    broken_pouch(
        "a gusset open where it is sewn",
        {"opening: top": "opening: bottom", "[back base, front base]": "[¦back base, ¦front base]"},
        ("seam 'back base' runs along the bottom, where gusset 'base' is open", "change 'opening'"),
        "seam 'front base' runs along the bottom",
    ),
    broken_pouch(
        "a gusset whose inner wall holds something",
        {
            "    leather: outer\n    over: pouch": "    leather: outer\n    over: pouch\n    holds: {coins: 2}",
            "[back left, front left]": "[back left, ¦front left]",
            "[back base, front base]": "[back base, ¦front base]",
        },
        ("what layer 'front' holds lies in the room that gusset 'left side' keeps", "move it to 'holds'"),
        "lies in the room that gusset 'base' keeps",
    ),
    broken_pouch(
        "a gusset with something loose in its room",
        {
            "  - layer: front\n": "  - {loose: keys, on: pouch, item: coins}\n  - layer: front\n",
            "[back left, front left]": "[back left, ¦front left]",
            "[back base, front base]": "[back base, ¦front base]",
        },
        ("'keys' lies in the room that gusset 'left side' keeps", "move it to 'holds' of gusset 'left side'"),
        "'keys' lies in the room that gusset 'base' keeps",
    ),
    broken_pouch("a gusset open at no edge", {"opening: top": "opening: ¦topp"}, "did you mean 'top'?"),
)

BROKEN_GUSSETS = (*_NAMES, *_SIZES, *_JOINS)
