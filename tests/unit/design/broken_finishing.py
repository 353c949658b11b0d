"""Designs whose skives, turned edges or linings are broken."""

from __future__ import annotations

from tests.unit.design.broken import broken_lined

__all__ = ["BROKEN_FINISHING"]

_BAND = "{along: [left, right], width: 12 mm, to: 0.4 mm}"
_SIDES = "- edges: [left, right]\n"

_SKIVES = (
    broken_lined("a skive that is a word", {_BAND: "¦thin"}, ("this skive of layer 'shell'", "'along: [left]'")),
    broken_lined("a skive without a place", {_BAND: "¦{width: 12 mm, to: 0.4 mm}"}, "does not say where it is"),
    broken_lined(
        "an unknown key of a skive", {"[left, right], width: 12 mm": "[left, right], ¦widht: 12 mm"}, "'width'?"
    ),
    broken_lined("a skive of an unknown edge", {"along: [bottom]": "along: [¦botom]"}, "did you mean 'bottom'?"),
    broken_lined("a skive along an edge twice", {"along: [bottom]": "along: [bottom, ¦bottom]"}, "stands twice"),
    broken_lined(
        "a skive along no edge", {"along: [bottom]": "along: ¦[]"}, ("names no edge", "write [left, right]")
    ),
    broken_lined("a skive along a word", {"along: [bottom]": "along: ¦bottom"}, "is a list, not a single value"),
    broken_lined("a skive of no width", {"width: 12 mm": "width: ¦0 mm"}, "it must be more than 0 mm"),
    broken_lined("a skive without a width", {_BAND: "¦{along: [left, right], to: 0.4 mm}"}, "has no 'width'"),
    broken_lined("a skive without what is left", {_BAND: "¦{along: [left, right], width: 12 mm}"}, "has no 'to'"),
    broken_lined("a skive down to nothing", {"to: 0.3 mm": "to: ¦0 mm"}, "it must be more than 0 mm"),
    broken_lined(
        "a skive that leaves all",
        {"to: 0.3 mm": "to: ¦0.8 mm"},
        ("leaves 0.8 mm of leather 0.8 mm thick", "leave less"),
    ),
    broken_lined("a skive thicker than its leather", {"to: 0.7 mm": "to: ¦1.3 mm"}, "of leather 1.2 mm thick"),
    broken_lined("a skive of no length", {"to: 0.7 mm": "to: ¦thin"}, "there is no number called 'thin'"),
    broken_lined(
        "a skive at a fold not there",
        {"fold: 1": "fold: ¦2"},
        ("layer 'shell' does not cross fold 2", "it crosses 1"),
    ),
    broken_lined("a skive at half a fold", {"fold: 1": "fold: ¦1.5"}, "it must be a whole number"),
    broken_lined(
        "a skive at a fold of a bank",
        {"{along: [bottom], width: 8 mm": "{fold: ¦1, width: 8 mm"},
        ("bank 'cards' does not cross fold 1", "it crosses none"),
    ),
    broken_lined("a patch without a height", {"        height: 14 mm\n": "", "- at:": "- ¦at:"}, "has no 'height'"),
    broken_lined("a patch on an unknown panel", {"{panel: right, right": "{panel: ¦rihgt, right"}, "mean 'right'?"),
    broken_lined("a patch from both sides", {"right: 20 mm}": "right: ¦20 mm, left: 3 mm}"}, "keep one of them"),
    broken_lined("an unknown key of a patch", {"height: 14 mm": "¦hieght: 14 mm"}, "did you mean 'height'?"),
    broken_lined(
        "skives in no list",
        {"      - {along: [bottom], width: 8 mm, to: 0.3 mm}": "      ¦{along: [bottom], width: 8 mm, to: 0.3 mm}"},
        "'skives' of bank 'cards' is a list, not a table",
    ),
)

_TURNED = (
    broken_lined("a turned edge of nothing", {"edges: [top]": "edges: ¦[]"}, "names no edge"),
    broken_lined("a turned edge unknown", {"edges: [top]": "edges: [¦topp]"}, "did you mean 'top'?"),
    broken_lined(
        "turned edges without edges", {"      - edges: [top]\n        overlap": "      - ¦overlap"}, "no 'edges'"
    ),
    broken_lined(
        "an edge turned in twice",
        {"edges: [top]": "edges: ¦[top, left]"},
        ("the left edge", "turned in twice", "once"),
    ),
    broken_lined(
        "an edge trimmed and turned in",
        {"    turned:\n": "    trim: {top: 2 mm}\n    turned:\n", "edges: [top]": "edges: ¦[top]"},
        ("the top edge of layer 'shell' is trimmed and turned in", "do one of them"),
    ),
    broken_lined("an overlap of nothing", {"overlap: 7 mm": "overlap: ¦0 mm"}, "it must be more than 0 mm"),
    broken_lined("an overlap that is an area", {"overlap: 7 mm": "overlap: ¦2 mm * 3 mm"}, "to the power of 2"),
    broken_lined("a core of less than nothing", {"core: 0.25 mm": "core: ¦-0.25 mm"}, "it must be at least 0 mm"),
    broken_lined("an unknown key of a turned edge", {"core: 0.25 mm": "¦kore: 0.25 mm"}, "did you mean 'core'?"),
    broken_lined("corners of an unknown kind", {"corners: mitre": "corners: ¦mitred"}, "did you mean 'mitre'?"),
    broken_lined("holes of an unknown kind", {"holes: marked": "holes: ¦punched"}, "pierced, marked, cut"),
    broken_lined("a mitre on the corner", {"corner_gap: 0.6 mm": "corner_gap: ¦0 mm"}, "it must be more than 0 mm"),
    broken_lined(
        "a corner turned in further than its edges",
        {"corner_overlap: 5 mm": "corner_overlap: ¦9 mm"},
        ("wider than its overlap of 8 mm", "make it narrower"),
    ),
    broken_lined(
        "a notch gap wider than the overlap", {"notch_gap: 1.5 mm": "notch_gap: ¦7.5 mm"}, "overlap of 7 mm"
    ),
    broken_lined("a notch gap of nothing", {"notch_gap: 1.5 mm": "notch_gap: ¦0 mm"}, "it must be more than 0 mm"),
    broken_lined("turned over an unknown part", {"[lining, stiffening]": "[¦linning, stiffening]"}, "mean 'lining'?"),
    broken_lined("turned over a bank", {"[lining, stiffening]": "[lining, ¦cards]"}, "there is no layer 'cards'"),
    broken_lined(
        "turned over itself",
        {"[lining, stiffening]": "¦shell"},
        ("'shell' cannot be turned in over itself", "leave it"),
    ),
    broken_lined("a bank turned in", {"    show: 12 mm": "    show: 12 mm\n    ¦turned: []"}, "no key 'turned'"),
    broken_lined(
        "turned as a table",
        {
            f"      {_SIDES}        overlap: 8": "      ¦overlap: 8",
            "      - edges: [top]\n        overlap: 7 mm\n        core: 0.25 mm\n        corners: mitre\n"
            "        corner_gap: 0.6 mm\n        notch_gap: 1.5 mm\n": "",
            "        over: [lining, stiffening]\n        corner_overlap: 5 mm\n        holes: marked\n": "",
        },
        "'turned' of layer 'shell' is a list, not a table",
    ),
)

_COPIES = (
    broken_lined("a copy of an unknown layer", {"follows: shell": "follows: ¦shel"}, ("no layer 'shel'", "'shell'?")),
    broken_lined(
        "a copy of a layer after it",
        {"follows: shell": "follows: ¦stiffening"},
        ("no layer 'stiffening' stands before layer 'lining'", "known here: shell"),
    ),
    broken_lined(
        "a copy of a list", {"follows: shell": "follows: ¦[shell]"}, "'follows' of layer 'lining' is one value"
    ),
    broken_lined(
        "a distance inside nothing", {"    follows: shell\n": "", "inside: 1.5": "inside: ¦1.5"}, "follows no layer"
    ),
    broken_lined(
        "a distance inside that is a word", {"inside: 1.5 mm": "inside: ¦close"}, "no number called 'close'"
    ),
    *(
        broken_lined(
            f"a copy with its own {key}",
            {"    inside: 1.5 mm": f"    inside: 1.5 mm\n    {key}: ¦{value}"},
            f"copies the outline of 'shell' and has no '{key}' of its own",
        )
        for key, value in (
            ("over", "left"),
            ("drop", "3 mm"),
            ("notch", "2 mm"),
            ("trim", "{top: 1 mm}"),
            ("exact", "[drop]"),
            ("mouth", "straight"),
            ("notches", "[]"),
        )
    ),
    broken_lined(
        "a copy with its own inset",
        {"    inside: 1.5 mm": "    inset: ¦{left: 3 mm}\n    corner: ¦3 mm\n    inside: 1.5 mm"},
        "has no 'inset' of its own",
        "has no 'corner' of its own",
    ),
    broken_lined("an unknown key of a copy", {"inside: 1.5 mm": "¦insde: 1.5 mm"}, "did you mean 'inside'?"),
)

BROKEN_FINISHING = (*_SKIVES, *_TURNED, *_COPIES)
