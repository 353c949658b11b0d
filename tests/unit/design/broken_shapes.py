"""Designs whose openings, straps, fittings, seams over some panels or sheets other than leather are broken."""

from __future__ import annotations

from tests.unit.design.broken import broken
from tests.unit.design.good_design import line_of

_HOLE = (
    "      - hole: push hole\n        at: {left: 20 mm, bottom: 15 mm}\n        diameter: 15 mm\n        border: 4 mm"
)
_FILM = "{leather: film, overlap: 7 mm, margin: 2.5 mm}"

_SHEETS = (
    broken("a material unknown", {"made_of: film": "made_of: ¦flim"}, ("cannot be 'flim'", "did you mean 'film'?")),
    broken("a material that is a truth word", {"made_of: film": "made_of: ¦no"}, "leather, film, cloth, elastic"),
    broken("a misspelt material key", {"made_of: film": "¦mad_of: film"}, ("no key 'mad_of'", "'made_of'?")),
    broken("a film that was tanned", {"made_of: film": "made_of: film, tannage: ¦chrome"}, "has no 'tannage'"),
    broken("a cloth with a flesh side", {"made_of: film": "made_of: cloth, face: ¦flesh"}, "has no 'face'"),
    broken(
        "a film nothing uses",
        {f"        film: {_FILM}\n": "", "  film: {thickness": "  ¦film: {thickness"},
        "nothing uses the leather 'film'",
    ),
)

_OPENINGS = (
    broken("openings in no list", {f"    openings:\n{_HOLE}": "    openings: ¦round"}, "is a list, not a single"),
    broken("openings as a table", {f"    openings:\n{_HOLE}": "    openings: ¦{hole: a}"}, "a list, not a table"),
    broken("an opening of no kind", {"- hole: push hole": "- ¦name: push hole"}, ("what kind", "'window: name'")),
    broken("an opening that is a word", {_HOLE: "      - ¦round"}, "this opening of pocket 'sleeve' does not say"),
    broken("an opening of a misspelt kind", {"- slot: bar slot": "- ¦slott: bar slot"}, "did you mean 'slot'?"),
    broken("an opening without a name", {"- slot: bar slot": "- slot: ¦''"}, "'slot' of this slot is empty"),
    broken(
        "two openings of one name", {"slot: bar slot": "slot: ¦push hole"}, ("taken by the opening", "of its own")
    ),
    broken(
        "an unknown key of a hole through",
        {"diameter: 15 mm": "diameter: 15 mm\n        ¦width: 3"},
        "no key 'width'",
    ),
    broken("an unknown key of a window", {"corner: 4 mm": "¦cornr: 4 mm"}, ("window 'ID window'", "'corner'?")),
    broken(
        "an unknown key of a slot", {"height: 3.2 mm": "height: 3.2 mm\n        ¦corner: 1 mm"}, "slot 'bar slot'"
    ),
    broken(
        "a hole without a diameter",
        {"        diameter: 15 mm\n": "", "- hole: push": "- ¦hole: push"},
        "no 'diameter'",
    ),
    broken("a window without a width", {"        width: 50 mm\n": "", "- window": "- ¦window"}, "has no 'width'"),
    broken("a window without a height", {"        height: 20 mm\n": "", "- window": "- ¦window"}, "has no 'height'"),
    broken("a slot without a height", {"        height: 3.2 mm\n": "", "- slot": "- ¦slot"}, "has no 'height'"),
    broken("a hole of no width", {"diameter: 15 mm": "diameter: ¦0 mm"}, "is 0 mm; it must be more than 0 mm"),
    broken("a window below nothing", {"width: 50 mm": "width: ¦-50 mm"}, "'width' of window 'ID window' is -50 mm"),
    broken("a window with a comma", {"height: 20 mm": "height: ¦1,2"}, "'1,2' may be one number or two"),
    broken("a slot that is an area", {"height: 3.2 mm": "height: ¦margin * margin"}, "to the power of 2"),
    broken(
        "a corner rounder than round", {"corner: 4 mm": "corner: ¦11 mm"}, ("does not fit window", "at most 10 mm")
    ),
    broken("a corner of a window below 0", {"corner: 4 mm": "corner: ¦-1 mm"}, "it must be at least 0 mm"),
    broken("a border below nothing", {"border: 4 mm": "border: ¦-4 mm"}, "'border' of hole 'push hole' is -4 mm"),
)

_PLACES = (
    broken("a place that is a panel", {"at: {panel: middle}": "at: ¦middle"}, ("'at' of slot 'bar slot'", "a table")),
    broken("an unknown key of a place", {"bottom: 15 mm}": "¦botom: 15 mm}"}, ("'at' of hole", "'bottom'?")),
    broken(
        "a place below nothing", {"{left: 20 mm,": "{left: ¦-20 mm,"}, "'left' of 'at' of hole 'push hole' is -20"
    ),
    broken(
        "a place from both sides",
        {"{left: 20 mm,": "{left: 20 mm, right: ¦3 mm,"},
        ("counts from left and", "keep one"),
    ),
    broken(
        "a place from below and above", {"bottom: 15 mm}": "bottom: 15 mm, top: ¦3 mm}"}, "from bottom and from top"
    ),
    broken("a place on an unknown panel", {"panel: right, right": "panel: ¦rigt, right"}, ("'rigt'", "'right'?")),
    broken(
        "a place on a panel not covered",
        {"panel: right, right": "panel: ¦left, right"},
        ("which layer 'strap' does not cover", "it covers middle, right"),
    ),
    broken(
        "a place on a panel of another pocket",
        {"{left: 20 mm,": "{panel: ¦left, left: 20 mm,"},
        ("which pocket 'sleeve' does not cover", "it covers right"),
    ),
    broken(
        "a place on none of two panels",
        {"at: {panel: middle}\n        width: 18": "at: ¦{left: 9 mm}\n        width: 18"},
        ("does not say on which panel of layer 'strap'", "add 'panel: middle'"),
    ),
    broken(
        "no place on two panels",
        {"        at: {panel: middle}\n        width: 18": "        width: 18", "- slot": "- ¦slot"},
        "does not say on which panel",
    ),
)

_FILMS = (
    broken("a film that is a word", {_FILM: "¦film"}, "'film' of window 'ID window' is a table of keys"),
    broken("a film of an unknown sheet", {"{leather: film,": "{leather: ¦filmm,"}, ("no leather 'filmm'", "'film'?")),
    broken("a film of no sheet", {_FILM: "¦{overlap: 7 mm}"}, ("has no 'leather'", "role of the sheet")),
    broken("an unknown key of a film", {"overlap: 7 mm": "¦overlp: 7 mm"}, "did you mean 'overlap'?"),
    broken("a film no larger than its window", {"overlap: 7 mm": "overlap: ¦0 mm"}, "more than 0 mm"),
    broken("a film sewn beyond its edge", {"margin: 2.5 mm": "margin: ¦7 mm"}, ("7 mm off the window", "only 7 mm")),
    broken(
        "a film too small for its usual stitches", {"overlap: 7 mm, margin: 2.5 mm": "overlap: ¦2 mm"}, "only 2 mm"
    ),
    broken(
        "a film called like a part",
        {
            "- layer: strap": "- layer: ID window film",
            "on: strap": "on: shell",
            "of: strap": "of: shell",
            "- window: ID": "- window: ¦ID",
            "panel: left}": "panel: right}",
        },
        ("'ID window film', like the part", "another name"),
    ),
    broken(
        "a film sewn like another seam",
        {"seam: strap seam": "seam: ID window seam", "- window: ID": "- window: ¦ID"},
        ("'ID window seam', like the seam", "another name"),
    ),
)

_STRAPS = (
    broken(
        "an inset that is a length", {"{left: 40 mm, bottom: 30 mm, top: 25 mm}": "¦5 mm"}, "'inset' of layer 'strap'"
    ),
    broken(
        "an unknown edge of an inset", {"bottom: 30 mm, top: 25": "¦botom: 30 mm, top: 25"}, "did you mean 'bottom'?"
    ),
    broken("an inset below nothing", {"top: 25 mm": "top: ¦-25 mm"}, "'top' of 'inset' of layer 'strap' is -25 mm"),
    broken("an inset of a number without sense", {"top: 25 mm": "top: ¦012"}, "'012' begins with a zero"),
    broken(
        "a corner of a strap below 0", {"corner: 10 mm": "corner: ¦-10 mm"}, "'corner' of layer 'strap' is -10 mm"
    ),
    broken(
        "a corner without an inset",
        {"    notch: 2 mm": "    corner: ¦3 mm\n    notch: 2 mm"},
        ("no inset", "leave it"),
    ),
    broken("an inset of a bank", {"    columns: 1": "    columns: 1\n    ¦inset: {left: 3}"}, "has no key 'inset'"),
)

_MEETS = "    meets: {part: shell, panel: left}\n"

_FITTINGS = (
    broken("fittings that are a word", {"fittings:": "fittings: ¦snap\n¦snaps:"}, "is a list", "no key 'snaps'"),
    broken(
        "a fitting that is a word", {"    cap: 13 mm\n": "    cap: 13 mm\n  - ¦snap\n"}, "this fitting is a table"
    ),
    broken(
        "two fittings of one name",
        {
            "    cap: 13 mm\n": "    cap: 13 mm\n  - {fitting: ¦closure, kind: eyelet-4, on: cards}\n",
            "bank: left cards": "bank: cards",
        },
        (f"by the fitting on line {line_of('- fitting: closure')}", "of its own"),
    ),
    broken("a fitting without a name", {"fitting: closure": "fitting: ¦''"}, "'fitting' of this fitting is empty"),
    broken(
        "a fitting of no kind",
        {"    kind: snap-line-20\n": "", "- fitting:": "- ¦fitting:"},
        ("has no 'kind'", "catalogue"),
    ),
    broken("a fitting on nothing", {"    on: strap\n": "", "- fitting:": "- ¦fitting:"}, "has no 'on'"),
    broken(
        "an unknown key of a fitting", {"    cap: 13 mm": "    ¦caps: 13 mm"}, ("'closure'", "did you mean 'cap'?")
    ),
    broken(
        "an unknown kind",
        {"snap-line-20": "¦snap-line-21"},
        ("no hardware 'snap-line-21'", "did you mean 'snap-line-2"),
    ),
    broken("a kind that is a list", {"snap-line-20": "¦[snap]"}, "'kind' of fitting 'closure' is one value"),
    broken("a fitting on an unknown part", {"on: strap": "on: ¦stap"}, ("no part 'stap'", "did you mean 'strap'?")),
    broken(
        "a fitting on a panel not covered",
        {"{panel: middle, left": "{panel: ¦left, left"},
        ("which 'strap' does not", "covers middle, right"),
    ),
    broken(
        "a fitting on none of two panels",
        {"at: {panel: middle, left: 60 mm}": "at: ¦{left: 60 mm}"},
        "on which panel of 'strap'",
    ),
    broken(
        "a fitting from both sides",
        {"{panel: middle, left: 60 mm}": "{panel: middle, left: 60 mm, right: ¦9 mm}"},
        "keep one",
    ),
    broken(
        "a second half that is a word",
        {"meets: {part: shell, panel: left}": "meets: ¦shell"},
        ("table of keys", "part: ..."),
    ),
    broken("a second half on nothing", {"{part: shell, panel: left}": "¦{panel: left}"}, "has no 'part'"),
    broken("a second half on an unknown part", {"{part: shell,": "{part: ¦shel,"}, ("no part 'shel'", "'shell'?")),
    broken(
        "a second half on an unknown panel", {"shell, panel: left}": "shell, panel: ¦lefft}"}, "did you mean 'left'?"
    ),
    broken(
        "a second half on none of three panels",
        {"{part: shell, panel: left}": "¦{part: shell}"},
        ("on which panel of 'shell'", "panel: left"),
    ),
    broken(
        "a second half on a panel not covered",
        {"part: shell, panel: left}": "part: divider, panel: ¦right}"},
        "which 'divider' does not cover",
    ),
    broken(
        "a second half where the first is",
        {"{part: shell, panel: left}": "¦{part: strap, panel: middle}"},
        ("same panel of 'strap'", "comes to lie on it"),
    ),
    broken(
        "an unknown key of the second half",
        {"{part: shell, panel: left}": "{part: shell, panel: left, ¦left: 3}"},
        "known here: part, panel",
    ),
    broken(
        "a second half of an eyelet",
        {"snap-line-20": "eyelet-4", "meets: {part": "meets: ¦{part", "    holes: [5 mm, 4 mm]\n": ""},
        ("one half", "leave it out"),
    ),
    broken("holes in no list", {"holes: [5 mm, 4 mm]": "holes: ¦5 mm"}, "'holes' of fitting 'closure' is a list"),
    broken(
        "one hole for two halves",
        {"[5 mm, 4 mm]": "¦[5 mm]"},
        ("has 1 holes, but its kind has 2", "first half's first"),
    ),
    broken("three holes for two halves", {"[5 mm, 4 mm]": "¦[5 mm, 4 mm, 3 mm]"}, "has 3 holes, but its kind has 2"),
    broken(
        "a hole of a fitting of nothing", {"[5 mm, 4 mm]": "[5 mm, ¦0 mm]"}, "a hole of fitting 'closure' is 0 mm"
    ),
    broken(
        "a hole of a fitting with a comma",
        {"[5 mm, 4 mm]": "['¦1,2', 4 mm]".replace("'¦", "¦'")},
        "may be one number or two",
    ),
    broken("a cap of nothing", {"cap: 13 mm": "cap: ¦0 mm"}, "'cap' of fitting 'closure' is 0 mm"),
    broken(
        "a cap smaller than its hole",
        {"    holes: [5 mm, 4 mm]\n": "", "cap: 13 mm": "cap: ¦4 mm"},
        ("does not cover the hole of 4.5 mm", "width of the cap"),
    ),
    broken(
        "a hole larger than its cap",
        {"[5 mm, 4 mm]": "¦[5 mm, 13 mm]"},
        "a cap of 13 mm does not cover the hole of 13 mm",
    ),
)

_SEAMS = (
    broken(
        "a seam over an unknown panel", {"over: right": "over: ¦rigt"}, ("no panel 'rigt'", "did you mean 'right'?")
    ),
    broken(
        "a seam over no panel", {"over: right": "over: ¦[]"}, ("'over' of seam 'strap seam' names 0 panels", "first")
    ),
    broken("a seam over three names", {"over: right": "over: ¦[left, middle, right]"}, "names 3 panels"),
    broken("a seam from right to left", {"over: right": "over: ¦[right, middle]"}, "runs from right to left"),
    broken("a seam over a table", {"over: right": "over: ¦{right: 1}"}, "is a list, not a table"),
    broken(
        "a seam that follows an unknown part", {"of: strap": "of: ¦strp"}, ("no part 'strp'", "did you mean 'strap'?")
    ),
    broken(
        "a seam that follows a bank",
        {"of: strap": "of: ¦left cards"},
        ("'left cards' is no layer", "shell, divider, strap"),
    ),
    broken("a seam that follows a list", {"of: strap": "of: ¦[strap]"}, "'of' of seam 'strap seam' is one value"),
    broken(
        "a seam not through what it follows",
        {"of: strap": "of: ¦strap\n    through: [shell]"},
        ("does not go through it", "add it"),
    ),
    broken(
        "a seam beside what it follows",
        {"over: right": "over: ¦left"},
        ("covers no panel it runs over", "name middle, right"),
    ),
)

_OUTLINES = (
    broken(
        "an unknown corner", {"{bottom left: 12 mm": "{¦left bottom: 12 mm"}, ("no key 'left bottom'", "bottom left")
    ),
    broken(
        "a single corner below nothing",
        {"top left: 7 mm": "top left: ¦-7 mm"},
        "'top left' of 'corners' of the body is -7",
    ),
    broken(
        "corners that are a length",
        {"{bottom left: 12 mm, bottom right: 11 mm, top left: 7 mm, top right: 3.5 mm}": "¦6 mm"},
        "a table of keys",
    ),
    broken("an unknown side", {"sides: {bottom: {bow": "sides: {¦botom: {bow"}, "did you mean 'bottom'?"),
    broken(
        "a side that is a length",
        {"sides: {bottom: {bow: -1 mm}}": "sides: {bottom: ¦3 mm}"},
        "a table of keys, not a single",
    ),
    broken("an unknown key of a side", {"{bow: -1 mm}": "{¦bend: -1 mm}"}, "known here: bow, slant"),
    broken("a bow that is a word", {"{bow: -1 mm}": "{bow: ¦round}"}, "no number called 'round'"),
    broken(
        "an unknown way of standing in a layer", {"stands: upright": "stands: ¦uprigt"}, "did you mean 'upright'?"
    ),
    broken("an unknown section", {"section: flat": "section: ¦oval"}, ("cannot be 'oval'", "flat, round")),
    broken(
        "a round item that is flat",
        {"section: flat": "section: ¦round"},
        ("28 mm high and 4 mm thick", "as thick as it is high"),
    ),
)

_PLAIN_WORDS = (
    broken("a pitch finer than thread", {"8 per French inch": "¦0.01 mm"}, "is 0.01 mm; it must be at least 0.5 mm"),
    broken("a pitch coarser than a wallet", {"8 per French inch": "¦40 mm"}, "it must be at most 30 mm"),
    broken(
        "a thousand stitches in an inch",
        {"8 per French inch": "¦1000 per inch"},
        ("comes to 0.0254 mm", "at least 0.5"),
    ),
    broken("a pitch in short", {"8 per French inch": "¦8 spi"}, ("'8 spi'", "did you mean '8 per inch'?")),
    broken("a pitch with a stroke", {"8 per French inch": "¦8/inch"}, "did you mean '8 per inch'?"),
    broken(
        "a value without the unit of its range",
        {"value: 3.5 mm": "value: ¦3.5"},
        ("parameter 'margin' has no unit", "'3.5 mm'"),
    ),
    broken("a load in per cent", {"{cards: 0.5, notes: 0}": "¦50%"}, ("cannot be '50%'", "{cards: 0.5, notes: 0.5}")),
    broken(
        "a price with its currency in front", {"price: 14.5": "price: ¦$14.5"}, ("is '$14.5'", "without a currency")
    ),
    broken(
        "two parts told apart by capitals",
        {"bank: left cards": "bank: ¦Shell"},
        ("from 'shell' on line", "reads differently"),
    ),
    broken(
        "two parts told apart by a hyphen", {"pocket: sleeve": "pocket: ¦left-cards"}, "from 'left cards' on line"
    ),
)

BROKEN_SHAPES = (*_OUTLINES, *_PLAIN_WORDS, *_SHEETS, *_OPENINGS, *_PLACES, *_FILMS, *_STRAPS, *_FITTINGS, *_SEAMS)
