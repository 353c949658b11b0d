"""Designs whose keys and names do not fit together: unknown, missing, repeated, unused, miscounted, out of order."""

from __future__ import annotations

from tests.unit.design.broken import broken, whole
from tests.unit.design.good_design import line_of

_KEYS = (
    broken(
        "an unknown key of the file", {"revision: A": "¦revison: A"}, ("no key 'revison'", "did you mean 'revision'?")
    ),
    broken("a key in capitals", {"revision: A": "¦Revision: A"}, "did you mean 'revision'?"),
    broken(
        "a key like no other", {"revision: A": "¦colour: red"}, ("no key 'colour'", "known here: design, revision")
    ),
    broken("an unknown key of a leather", {"neutral: 0.5": "¦neutrl: 0.5"}, ("leather 'outer'", "'neutral'?")),
    broken(
        "an unknown key of a parameter",
        {"meaning: stitch": "¦meanin: stitch"},
        "parameter 'margin' has no key 'meanin'",
    ),
    broken("an unknown key of a content", {"corner_radius: 2 mm": "¦radius: 2 mm"}, "'corner_radius'?"),
    broken("an unknown key of the body", {"clearance: 1.5 mm": "¦clearence: 1.5 mm"}, "'clearance'?"),
    broken("an unknown key of a fold", {"compensation: 1": "¦comp: 1"}, ("fold 1 has no key 'comp'",)),
    broken("an unknown key of the load", {"cards: 0.5": "¦card: 0.5"}, "'cards'?"),
    broken("an unknown key of the stitching", {"tails: 150 mm": "¦tail: 150 mm"}, "'tails'?"),
    broken("an unknown key of a hole", {"slant: 45": "¦slent: 45"}, "'slant'?"),
    broken(
        "an unknown key of a layer",
        {"drop: 8 mm": "drop: 8 mm\n    ¦step: 3 mm"},
        "layer 'divider' has no key 'step'",
    ),
    broken("an unknown key of a bank", {"overlap: 8 mm": "¦overlp: 8 mm"}, ("bank 'left cards'", "'overlap'?")),
    broken(
        "an unknown key of a pocket",
        {"    depth: reach": "    depth: reach\n    ¦slots: 3"},
        "pocket 'sleeve' has no key",
    ),
    broken("an unknown key of a mouth", {"dipped, depth: 3 mm": "dipped, ¦dept: 3 mm"}, "did you mean 'depth'?"),
    broken("a pocket sewn to no layer", {"sewn_to: [shell]": "sewn_to: [¦shel]"}, ("no layer 'shel'", "'shell'?")),
    broken("a pocket sewn to a pocket", {"sewn_to: [shell]": "sewn_to: [¦left cards]"}, "no layer 'left cards'"),
    broken("a layer sewn to twice", {"sewn_to: [shell]": "sewn_to: [shell, ¦shell]"}, "stands twice in 'sewn_to'"),
    broken("a layer held by nails", {"fastened: sewn": "fastened: ¦nailed"}, ("cannot be 'nailed'", "sewn, glued")),
    broken("an unknown edge to trim", {"{top: 1 mm}": "{¦up: 1 mm}"}, "'trim' of layer 'divider' has no key 'up'"),
    broken(
        "an unknown key of a seam", {"    end: 3 mm": "    ¦ends: 3 mm"}, ("seam 'rim' has no key 'ends'", "'end'?")
    ),
    broken("an unknown key of a limit", {"hole_to_mouth": "¦hole_to_mounth"}, "'hole_to_mouth'?"),
    broken(
        "a misspelt key with a bad value", {"step: 12 mm": "¦stpe: ¦1,2"}, "did you mean 'step'?", "'1,2' may be one"
    ),
    broken("a misspelt needed key", {"step: 12 mm": "¦stpe: 12 mm"}, "did you mean 'step'?"),
    broken("a key said right and wrong", {"step: 12 mm": "step: 12 mm\n    ¦stepp: 3 mm"}, "no key 'stepp'"),
    broken("no title", {"design: Three-fold wallet\nrevision": "¦revision"}, ("the design has no 'design'", "title")),
    broken("a title without words", {"design: Three-fold wallet": "design: ¦''"}, "'design' of the design is empty"),
    broken(
        "a title that is a truth word", {"design: Three-fold wallet": "design: ¦NO"}, "'NO', which many programs read"
    ),
    broken("a title that is a table", {"design: Three-fold wallet": "design: ¦{a: 1}"}, "is one value, not a table"),
    broken(
        "a leather without thickness", {"inner: {thickness: 2-3 oz}": "inner: ¦{neutral: 0.4}"}, "has no 'thickness'"
    ),
    broken(
        "a leather that is a value",
        {"inner: {thickness: 2-3 oz}": "inner: ¦1 mm"},
        ("leather 'inner'", "thickness: ..."),
    ),
    broken(
        "a parameter that is a value", {"{value: 3, from: 1, to: 6, meaning: card pockets}": "¦3"}, ("value: ...",)
    ),
    broken("a parameter without value", {"{value: 3, from": "¦{from"}, "parameter 'slots' has no 'value'"),
    broken(
        "an item of no thickness",
        {", thickness: 4 mm, corner_radius: 2 mm": "", "comb: {": "comb: ¦{"},
        ("content 'comb' has no thickness", "all three sizes"),
    ),
    broken(
        "an item of one size", {"{item: note-eur-50, thick": "¦{thick"}, "content 'note' has no length and no height"
    ),
    broken(
        "a body without panels",
        {
            "  panels: {left: fit, middle: 105 mm, right: card.length + 15 mm}\n": "",
            "  height: fit": "  ¦height: fit",
        },
        ("the body has no 'panels'", "panels from left to right"),
    ),
    broken(
        "a bank without a step",
        {"    step: 12 mm\n": "", "  - bank": "  - ¦bank"},
        ("no 'step'", "rise from slot to slot"),
    ),
    broken(
        "a bank without an item", {"    item: card\n": "", "  - bank": "  - ¦bank"}, "bank 'left cards' has no 'item'"
    ),
    broken(
        "a bank without a panel", {"    on: left\n": "", "  - bank": "  - ¦bank"}, "bank 'left cards' has no 'on'"
    ),
    broken(
        "a bank without slots",
        {"    slots: slots\n": "", "  - bank": "  - ¦bank"},
        "bank 'left cards' has no 'slots'",
    ),
    broken(
        "a layer without a leather",
        {"  - layer: shell\n    leather: outer": "  - ¦layer: shell"},
        ("layer 'shell' has no 'leather'", "role of the leather"),
    ),
    broken("a pocket without a depth", {"    depth: reach\n": "", "  - pocket": "  - ¦pocket"}, "has no 'depth'"),
    broken(
        "a seam without edges",
        {"    along: [left, bottom, right]\n": "", "  - seam: rim": "  - ¦seam: rim"},
        "has no 'along'",
    ),
    broken("a thumb notch without a depth", {"{width: 18 mm, depth: 9 mm}": "¦{width: 18 mm}"}, "has no 'depth'"),
    broken("a hole without a shape", {"{shape: slit, ": "¦{"}, "has no 'shape'"),
    broken(
        "two keys missing", {"    item: card\n    slots: slots\n": "", "  - bank": "  - ¦¦bank"}, "'item'", "'slots'"
    ),
    broken(
        "a part of no kind", {"  - layer: shell\n    leather": "  - ¦leather"}, ("what kind it is", "'layer: name'")
    ),
    broken("a part of a misspelt kind", {"- pocket: sleeve": "- ¦poket: sleeve"}, "did you mean 'pocket'?"),
    broken(
        "a part that is a word", {"  - layer: shell\n    leather: outer\n    showing: outside": "  - ¦shell"}, "kind"
    ),
    broken(
        "a part of two kinds", {"    count: 1\n": "    count: 1\n    ¦bank: x\n"}, "pocket 'sleeve' has no key 'bank'"
    ),
    broken(
        "parts that are a word",
        {"parts:": "parts: ¦none\n¦more_parts:"},
        "a list, not a single",
        "no key 'more_parts'",
    ),
    broken("no parts", {"parts:": "parts: ¦[]\n¦more_parts:"}, "the design has no parts", "no key 'more_parts'"),
    broken("no leathers", {"leathers:": "leathers: ¦{}\n¦hides:"}, *["the design has no leathers", "no key 'hides'"]),
    whole(
        "a file with a title only",
        "¦¦¦design: Wallet\n",
        "the design has no 'body'",
        "the design has no 'leathers'",
        "the design has no 'parts'",
    ),
    broken(
        "leathers that are a number",
        {"leathers:": "leathers: ¦5\n¦hides:"},
        "'leathers' of the design is a table of keys, not a single value",
        "no key 'hides'",
    ),
    broken(
        "contents that are a list",
        {"contents:": "contents: ¦[card]\n¦things:"},
        "table of keys, not a list",
        "'things'",
    ),
)

_NAMES = (
    broken("a leather unknown to a part", {"leather: outer": "leather: ¦outr"}, ("no leather 'outr'", "'outer'?")),
    broken("a panel unknown to a bank", {"on: left": "on: ¦lft"}, ("no panel 'lft'", "did you mean 'left'?")),
    broken(
        "a panel unknown to a layer",
        {"over: [left, middle]": "over: [left, ¦center]"},
        ("'center'", "left, middle, right"),
    ),
    broken(
        "a content unknown to a bank", {"item: card": "item: ¦cards"}, ("no content 'cards'", "did you mean 'card'?")
    ),
    broken("a content unknown to a layer", {"{note: 10}": "{¦bill: 10}"}, ("no content 'bill'", "card, note, comb")),
    broken(
        "an item unknown to the catalogue", {"card: id1": "card: ¦id11"}, ("no item 'id11'", "did you mean 'id1'?")
    ),
    broken("an item unknown in a table", {"note-eur-50": "¦note-eur-55"}, "no item 'note-eur-55'"),
    broken("a part unknown to a seam", {"[shell, divider]": "[shell, ¦dividor]"}, "did you mean 'divider'?"),
    broken("a part twice in a seam", {"[shell, divider]": "[shell, ¦shell]"}, "'shell' stands twice"),
    broken("a parameter unknown", {"margin: margin": "margin: ¦margn"}, ("no number called 'margn'", "'margin'?")),
    broken(
        "a size unknown", {"card.length + 15": "¦card.width + 15"}, ("no size 'width'", "card.length or card.height")
    ),
    broken(
        "a content without a size", {"card.length + 15": "¦card + 15"}, "content 'card' is not a number by itself"
    ),
    broken(
        "a leather without a size",
        {"outer.thickness * 3": "¦outer * 3"},
        ("leather 'outer'", "write outer.thickness"),
    ),
    broken("a parameter with a size", {"margin: margin": "margin: ¦margin.value"}, "parameter 'margin' has no sizes"),
    broken("a parameter used above itself", {"value: 3.5 mm": "value: ¦reach"}, "'reach' is not known yet here"),
    broken(
        "a parameter that uses itself", {"2 * margin + card.height": "¦reach + margin"}, "'reach' is not known yet"
    ),
    broken(
        "a content that uses a parameter", {"length: 120 mm": "length: ¦reach * 2"}, "'reach' is not known yet here"
    ),
    broken(
        "a leather nothing uses",
        {"  inner: {": "  ¦suede: {thickness: 1 mm}\n  inner: {"},
        "nothing uses the leather 'suede'",
    ),
    broken(
        "a content nothing uses",
        {"  card: id1": "  card: id1\n  ¦coin: coin-eur-2"},
        "nothing uses the content 'coin'",
    ),
    broken(
        "a parameter nothing uses",
        {"  slots: {": "  ¦gap: {value: 1 mm}\n  slots: {"},
        "nothing uses the parameter 'gap'",
    ),
    broken(
        "a name taken by another kind", {"  card: id1": "  card: id1\n  ¦outer: id3"}, "name of a leather already"
    ),
    broken("a name with a minus in it", {"  card: id1": "  card: id1\n  ¦id-card: id3"}, "cannot be used as a name"),
    broken(
        "a name that is a unit", {"  slots: {": "  ¦mm: {value: 1 mm}\n  slots: {"}, "meaning of its own in lengths"
    ),
    broken(
        "a panel called on",
        {
            "{left: fit": "{¦on: fit, left: fit",
            "    - {angle: 180 deg,": "    - {}\n    - {angle: 180 deg,",
            "[2, 1]": "[2, 1, 3]",
        },
        "truth value",
    ),
    broken(
        "two parts of one name",
        {"bank: left cards": "bank: ¦shell"},
        ("'shell' is taken", f"line {line_of('- layer: shell')}"),
    ),
    broken(
        "two seams of one name",
        {"limits:": "  - seam: ¦rim\n    along: [top]\nlimits:"},
        f"taken by the seam on line {line_of('- seam: rim')}",
    ),
    broken("an exact size of another part", {"exact: [drop]": "exact: [¦step]"}, "cannot be 'step'"),
    broken("an exact size twice", {"exact: [step, show]": "exact: [step, ¦step]"}, "'step' stands twice"),
    broken("an exact size in no list", {"exact: [drop]": "exact: ¦drop"}, "is a list, not a single value"),
)

_COUNTS = (
    broken(
        "a fold too few",
        {
            "    - {angle: 180 deg, relief: outer.thickness * 3}\n": "",
            "    - {angle: 180, c": "    ¦- {angle: 180, c",
        },
        ("3 panels and 1 fold do not go together", "give 2 folds"),
    ),
    broken(
        "a fold too many",
        {"    - {angle: 180, c": "    ¦- {angle: 90}\n    - {angle: 180, c"},
        ("3 panels and 3 folds", "give 2 folds"),
    ),
    broken("a fold named twice to close", {"[2, 1]": "¦[2, 2]"}, ("names the folds [2, 2]", "each of [1, 2] once")),
    broken("a fold forgotten to close", {"[2, 1]": "¦[2]"}, "names the folds [2]"),
    broken("a fold that does not exist to close", {"[2, 1]": "¦[2, 1, 3]"}, "names the folds [2, 1, 3]"),
    broken(
        "nine panels",
        {"{left: fit, ": "¦{left: fit, " + ", ".join(f"p{number}: fit" for number in range(6)) + ", "},
        ("the body has 9 panels", "at most 8"),
    ),
    broken("a layer over no panel", {"over: [left, middle]": "over: ¦[]"}, "names 0 panels"),
    broken("a layer over three names", {"over: [left, middle]": "over: ¦[left, middle, right]"}, "names 3 panels"),
    broken(
        "a layer from right to left", {"over: [left, middle]": "over: ¦[middle, left]"}, "runs from right to left"
    ),
)

_TOGETHER = (
    broken(
        "faults all over the file",
        {
            "value: 3.5 mm": "value: 1,¦2",
            "thickness: 1.2 mm": "thickness: ¦1:30",
            "card: id1": "card: ¦id11",
            "turned: false": "turned: ¦no",
            "on: left": "on: ¦lft",
            "along: [left": "along: [¦lefft",
        },
        "a comma ends the value of 'value'",
        "clock time",
        "no item 'id11'",
        "true or false",
        "'left'?",
        "did you mean 'left'?",
    ),
    broken("a leather with a bad thickness used elsewhere", {"thickness: 1.2 mm": "thickness: ¦0"}, "more than 0 mm"),
    broken("a parameter with a bad value used elsewhere", {"value: 3.5 mm": "value: ¦012 mm"}, "begins with a zero"),
    broken("a content that is lost and used", {"card: id1": "card: ¦bankcard"}, "no item 'bankcard'"),
    broken(
        "a body that is a word",
        {"body:": "body: ¦wide\n¦bodies:"},
        "the body is a table",
        "no key 'bodies'",
    ),
)

BROKEN_NAMES = (*_KEYS, *_NAMES, *_COUNTS, *_TOGETHER)
