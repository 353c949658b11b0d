"""Designs whose folds round bars, mouths, thumb notches or notches are broken."""

from __future__ import annotations

from tests.unit.design.broken import broken_case

__all__ = ["BROKEN_CUTS"]

_MOUTH = "{shape: dipped, depth: 3 mm}"
_THUMB = "{width: 20 mm, depth: 7 mm, panel: middle}"

_ROUND_BARS = (
    broken_case("a fold round nothing known", {"around: bar": "around: ¦baar"}, "there is no number called 'baar'"),
    broken_case("a fold round less than nothing", {"around: 2 mm": "around: ¦-2 mm"}, "'around' of fold 2 is -2 mm"),
    broken_case("a fold round an area", {"around: 2 mm": "around: ¦margin * margin"}, "to the power of 2"),
    broken_case("a fold round a leather", {"around: 2 mm": "around: ¦outer"}, "is not a number by itself"),
    broken_case("a fold round a list", {"around: bar": "around: ¦[bar]"}, "'around' of fold 1 is one value"),
    broken_case("a fold round a key misspelt", {"around: 2 mm": "¦arond: 2 mm"}, "did you mean 'around'?"),
    broken_case(
        "a bar that nothing goes round",
        {"around: bar": "around: 3 mm", "  bar: {length": "  ¦bar: {length"},
        "nothing uses the content 'bar'",
    ),
)

_ROUND_ITEMS = (
    broken_case(
        "a round item of a size that is not known yet",
        {"  coin: coin-eur-2": "  coin: {length: 25 mm, height: ¦margin, thickness: ¦margin, section: round}"},
        "'margin' is not known yet",
        "'margin' is not known yet",
    ),
)

_MOUTHS = (
    broken_case("a layer's mouth slanted", {"shape: dipped": "shape: ¦slanted"}, ("'slanted'", "straight, dipped")),
    broken_case("a layer's mouth in a word alone", {f"mouth: {_MOUTH}": "mouth: ¦dipped"}, "needs a depth"),
    broken_case("a layer's dip without a depth", {_MOUTH: "¦{shape: dipped}"}, "a dipped mouth needs a depth"),
    broken_case(
        "a layer's straight mouth with a depth",
        {"shape: dipped, depth: 3 mm": "shape: straight, depth: ¦3 mm"},
        ("has no depth", "make the mouth dipped"),
    ),
    broken_case("a layer's dip of nothing", {"depth: 3 mm}": "depth: ¦0 mm}"}, "it must be more than 0 mm"),
    broken_case(
        "an unknown key of a layer's mouth",
        {"depth: 3 mm}": "¦deep: 3 mm}"},
        "did you mean 'depth'?",
    ),
    broken_case("a layer's thumb deeper than round", {"depth: 7 mm": "depth: ¦11 mm"}, "use at most 10 mm"),
    broken_case("a layer's thumb without a width", {_THUMB: "¦{depth: 7 mm}"}, "has no 'width'"),
    broken_case("a layer's thumb on no panel", {"panel: middle}": "panel: ¦midle}"}, "did you mean 'middle'?"),
    broken_case(
        "a layer's thumb beside it",
        {
            "- layer: lining": "- layer: lining\n    over: [left, middle]",
            "panel: middle}": "panel: ¦right}",
            "at: {fold: 2}": "at: {fold: 1}",
        },
        ("lies on panel 'right', which layer 'lining' does not cover", "it covers left, middle"),
    ),
    broken_case("an unknown key of a layer's thumb", {"panel: middle}": "¦pannel: middle}"}, "'panel'?"),
)

_NOTCHES = (
    broken_case("a notch without a name", {"- notch: grip": "- notch: ¦''"}, "'notch' of this notch is empty"),
    broken_case(
        "a notch without a width", {"        width: 4 mm\n": "", "- notch: m": "- ¦notch: m"}, "has no 'width'"
    ),
    broken_case(
        "a notch without an edge", {"        edge: bottom\n": "", "- notch: m": "- ¦notch: m"}, "has no 'edge'"
    ),
    broken_case(
        "a notch without a depth", {"        depth: 6 mm\n": "", "- notch: g": "- ¦notch: g"}, "has no 'depth'"
    ),
    broken_case("a notch of nothing", {"depth: 2.5 mm": "depth: ¦0 mm"}, "must be more than 0 mm"),
    broken_case("a notch in an unknown edge", {"edge: bottom": "edge: ¦botom"}, "did you mean 'bottom'?"),
    broken_case("a notch of an unknown shape", {"shape: vee": "shape: ¦square"}, "vee, round"),
    broken_case("a round notch too deep", {"depth: 6 mm": "depth: ¦6.5 mm"}, "use at most 6 mm"),
    broken_case("an unknown key of a notch", {"width: 4 mm": "¦witdh: 4 mm\n        width: 4 mm"}, "'width'?"),
)

_FOLD_PLACES = (
    broken_case("a place in a fold there is not", {"at: {fold: 2}": "at: {fold: ¦3}"}, "it must be at most 2"),
    broken_case("a place in fold nought", {"at: {fold: 2}": "at: {fold: ¦0}"}, "it must be at least 1"),
    broken_case("a place in half a fold", {"at: {fold: 2}": "at: {fold: ¦1.5}"}, "it must be a whole number"),
    broken_case(
        "a place in a fold and on a panel", {"{fold: 1, bottom": "{fold: 1, panel: ¦left, bottom"}, "keep one of them"
    ),
    broken_case(
        "a place in a fold and from a side", {"{fold: 1, bottom": "{fold: 1, left: ¦3 mm, bottom"}, "keep one of them"
    ),
    broken_case(
        "a place in a fold its layer does not cross",
        {"- layer: shell": "- layer: shell\n    over: [middle, right]", "fold: 1,": "fold: ¦1,"},
        ("lies in fold 1, which layer 'shell' does not cross", "name a panel"),
    ),
    broken_case(
        "a film in a fold",
        {
            "- slot: bar slot": "- window: bar slot",
            "height: 3 mm\n": "height: 3 mm\n        film: ¦{leather: outer}\n",
        },
        "lies in a fold, where no film can follow it",
    ),
)

_LOOSE = (
    broken_case(
        "loose things on no panel", {"    on: right\n": "", "- loose: keys": "- ¦loose: keys"}, "has no 'on'"
    ),
    broken_case("loose things on an unknown panel", {"on: right": "on: ¦rigt"}, "did you mean 'right'?"),
    broken_case("loose things of an unknown item", {"item: coin\n": "item: ¦coinn\n"}, "did you mean 'coin'?"),
    broken_case("loose things without an item", {"    item: coin\n": "", "- loose": "- ¦loose"}, "has no 'item'"),
    broken_case("no loose things at all", {"count: 3": "count: ¦0"}, "it must be at least 1"),
    broken_case("half a loose thing", {"count: 3": "count: ¦1.5"}, "it must be a whole number"),
    broken_case("loose things of leather", {"count: 3": "count: 3\n    ¦leather: outer"}, "has no key 'leather'"),
    broken_case("loose things in a fold", {"{bottom: 40 mm}": "{¦fold: 2}"}, "has no key 'fold'"),
    broken_case(
        "loose things beside their panel",
        {"{bottom: 40 mm}": "{panel: ¦left}"},
        ("lies on panel 'left', which loose 'keys' does not cover", "it covers right"),
    ),
    broken_case(
        "a seam through loose things",
        {"right], margin: margin}": "right], margin: margin, through: [shell, lining, ¦keys]}"},
        ("'keys' lies loose", "leave it out"),
    ),
    broken_case(
        "a seam along loose things",
        {"right], margin: margin}": "right], margin: margin, of: ¦keys}"},
        "'keys' lies loose and has no leather",
    ),
    broken_case(
        "a snap in loose things",
        {"seams:": "fittings:\n  - {fitting: snap, kind: eyelet-4, on: ¦keys, at: {panel: right}}\nseams:"},
        ("'keys' lies loose and has no leather", "shell, lining"),
    ),
    broken_case("loose things called like a part", {"loose: keys": "loose: ¦lining"}, "is taken by the part on line"),
    broken_case("a load of loose things above full", {"{loose: 0.5}": "{loose: ¦1.5}"}, "it must be at most 1"),
    broken_case(
        "an unknown kind of part",
        {"- loose: keys": "- ¦name: keys"},
        "'pocket: name', 'loose: name' or 'gusset: name'",
    ),
)

_ONTO = (
    broken_case("a seam onto an unknown panel", {"onto: middle": "onto: ¦midle"}, "did you mean 'middle'?"),
    broken_case(
        "a seam onto its own panel", {"onto: middle": "onto: ¦left"}, ("panel it runs over", "folded over it")
    ),
    broken_case(
        "a seam onto a panel from all of them",
        {"over: left, onto: middle": "onto: ¦middle"},
        ("from more panels than one", "add 'over'"),
    ),
    broken_case(
        "a seam onto a panel from two",
        {"over: left, onto: middle": "over: [left, middle], onto: ¦right"},
        "from more panels than one",
    ),
    broken_case("a seam onto two panels", {"onto: middle": "onto: ¦[middle, right]"}, "is one value, not a list"),
    broken_case("a misspelt onto", {"onto: middle": "¦ontoo: middle"}, "did you mean 'onto'?"),
)

BROKEN_CUTS = (*_ROUND_BARS, *_ROUND_ITEMS, *_MOUTHS, *_NOTCHES, *_FOLD_PLACES, *_LOOSE, *_ONTO)
