"""Designs with a value that cannot be read or is not lawful, under a key that is right."""

from __future__ import annotations

from tests.unit.design.broken import Broken, Wording, broken

_STEP = "step: 12 mm"


def _step(name: str, value: str, *says: Wording) -> Broken:
    """The good design with another step of its bank."""
    return broken(f"a step {name}", {_STEP: f"step: ¦{value}"}, *says)


_LENGTHS = (
    _step("with a decimal comma and no unit", "1,2", ("'1,2' may be one number or two", "write 1.2", "'1,2 mm'")),
    _step("that may be 1.2 or 1200", "1,200 mm", ("'1,200' may mean 1.200 or 1200",)),
    _step("with a leading zero", "012", ("'012' begins with a zero", "octal")),
    _step("with a leading zero and a unit", "012 mm", "'012' begins with a zero"),
    _step("that looks like a clock time", "1:30", ("'1:30' is a clock time", "decimal point")),
    _step("called no", "no", "'no' is a yes-or-no word, not a number"),
    _step("called Yes", "Yes", "'Yes' is a yes-or-no word"),
    _step("called on", "on", "'on' is a yes-or-no word"),
    _step("called off in quotes", '"off"', "'off' is a yes-or-no word"),
    _step("called true", "true", "'true' is a yes-or-no word"),
    _step("that is not a number", ".nan", "'.nan' is not a finite number"),
    _step("without end", "-.inf", "'-.inf' is not a finite number"),
    _step("called infinity", "Infinity", "'Infinity' is not a finite number"),
    _step("of 26 digits", "1" * 26, ("far too large", "below 1000000000")),
    _step("of 11 metres", "11000", "'step' of bank 'left cards' is 11000 mm; it must be at most 10000 mm"),
    _step("with a product beyond reach", "900000000 * 900000000", "far too large"),
    _step("in digits of full width", "１２ mm", ("'１' is not one of the digits 0 to 9",)),
    _step("in Arabic digits", "٣ mm", "not one of the digits 0 to 9"),
    _step("with a minus sign of print", "12 mm − 1 mm", ("'−' cannot be read here", "write -")),
    _step("with a half of print", "½ in", ("'½'", "write 1/2")),
    _step("with an inch sign of print", "3″", ("'″'", "write in")),
    _step("with a picture", "12 mm 🙂", "cannot stand in a number"),
    _step("in exponent notation", "1e1", "'1e1' is not a plain decimal number"),
    _step("in hexadecimal", "0x1f", "'0x1f' is not a plain decimal number"),
    _step("with an underscore", "1_0", "'1_0' is not a plain decimal number"),
    _step("with a unit that does not exist", "12 inch", ("'inch' is not a unit of length", "mm, cm, in")),
    _step("with a unit in capitals", "12 MM", "'MM' is not a unit of length"),
    _step("with two points", "1.2.3 mm", "a point too many"),
    _step("with two numbers", "12 13 mm", "'13 mm' follows without a sign"),
    _step("with a fraction without a unit", "9 3/8", ("follows without a sign", "9 3/8 in")),
    _step("with a fraction over zero", "1/0 in", "divides by zero"),
    _step("with a dash between inches and their fraction", "9-3/8 in", ("plain number 9", "say its unit")),
    _step("divided by zero", "12 mm / (2 - 2)", "this divides by zero"),
    _step("that breaks off", "12 mm +", "breaks off"),
    _step("with an open bracket", "2 * (3 mm", "a bracket is not closed"),
    _step("with a bracket too many", "2 * 3 mm)", "')' cannot stand here"),
    _step("with too many brackets", "(" * 21 + "1 mm" + ")" * 21, "more than 20 levels deep"),
    _step("with a power", "2 mm ** 2", "'*' cannot stand here"),
    _step("with a call", "max(3 mm, 4 mm)", "'max(...)' calls a function"),
    _step("with a look inside an object", "card.__class__", "content 'card' has no size '__class__'"),
    _step("of more than 200 characters", "1 + " * 50 + "1", ("characters long", "at most 200")),
    _step("that is an area", "margin * margin", ("mm to the power of 2 where a length is wanted",)),
    _step("that is a plain number", "slots", ("the plain number 3 where a length is wanted", "unit")),
    _step("that is a ratio", "card.length / card.height", "the plain number 1.58577 where a length is wanted"),
    _step("that adds a number to a length", "margin + 2", ("plain number 2 are added", "'2 mm'")),
    _step("that adds a count to a length", "margin + slots", "plain number 3 are added"),
    _step("that adds an area to a length", "margin + margin * margin", "values of different dimension"),
    _step("of nothing", "0", "'step' of bank 'left cards' is 0 mm; it must be more than 0 mm"),
    _step("below nothing", "-3 mm", "is -3 mm; it must be more than 0 mm"),
    _step("in brackets", "[12 mm]", ("'step' of bank 'left cards' is one value, not a list",)),
    _step("as a table", "{mm: 12}", "is one value, not a table"),
    _step("with an empty text", "''", "there is no number here"),
    broken("a step without a value", {_STEP: "¦step:"}, "'step' of bank 'left cards' has no value"),
    broken("a step that is null", {_STEP: "step: ¦null"}, "'step' of bank 'left cards' has no value"),
)

_MATERIALS = (
    broken("a thickness below nothing", {"thickness: 1.2 mm": "thickness: ¦-1.2 mm"}, "is -1.2 mm; it must be more"),
    broken("a thickness that is a word", {"thickness: 1.2 mm": "thickness: ¦thick"}, "no number called 'thick'"),
    broken("a thickness range downwards", {"2-3 oz": "¦3-2 oz"}, ("'3-2 oz' runs downwards", "thinner end first")),
    broken("a thickness range without unit", {"2-3 oz": "¦2-3"}, ("'2-3' has no unit", "say mm or oz")),
    broken("a thickness range in unknown units", {"2-3 oz": "¦2-3 ounces"}, "'ounces' is not a unit"),
    broken(
        "a thickness range from nothing",
        {"2-3 oz": "¦0-3 oz"},
        "runs from 0 mm to 1.19063 mm; it must be more than 0 mm",
    ),
    broken(
        "a thickness with a comma in braces", {"{thickness: 2-3 oz}": "{thickness: 1,¦2 mm}"}, "comma ends the value"
    ),
    broken("a tolerance as large as the leather", {"tolerance: 0.1 mm": "tolerance: ¦1.2 mm"}, "as thin as 0 mm"),
    broken("a thickness range beyond any hide", {"2-3 oz": "¦2-300 oz"}, "it must be at most 20 mm"),
    broken(
        "a thickness beyond any hide",
        {"thickness: 1.2 mm": "thickness: ¦12 cm"},
        "is 120 mm; it must be at most 20 mm",
    ),
    broken("a neutral above 1", {"neutral: 0.5": "neutral: ¦1.5"}, ("is 1.5; it must be at most 1",)),
    broken("a neutral below 0", {"neutral: 0.5": "neutral: ¦-0.1"}, "is -0.1; it must be at least 0"),
    broken("a neutral that is a length", {"neutral: 0.5": "neutral: ¦0.5 mm"}, "where a plain number is wanted"),
    broken("a negative bend", {"min_radius: 0.5": "min_radius: ¦-1"}, "'min_radius' of leather 'outer' is -1"),
    broken("an unknown tannage", {"vegetable": "¦vegtable"}, ("cannot be 'vegtable'", "did you mean 'vegetable'?")),
    broken("an unknown face", {"face: grain": "face: ¦hair"}, ("cannot be 'hair'", "grain, flesh")),
    broken("an unknown stretch", {"stretch: across": "stretch: ¦acros"}, "did you mean 'across'?"),
    broken("a name that is a truth word", {"name: Shoulder": "name: ¦yes"}, ("truth value", "'\"yes\"'")),
    broken("a price below nothing", {"price: 14.5": "price: ¦-14.5"}, "is -14.5; it must be at least 0"),
    broken(
        "a price with a currency",
        {"price: 14.5": "price: ¦14.5 EUR"},
        ("'price' of leather 'outer' is '14.5 EUR'", "without a currency"),
    ),
    broken("a price for an unknown area", {"price_area: ft2": "price_area: ¦sqft"}, ("'sqft'", "ft2, dm2, m2")),
    broken(
        "an item of the wrong sort", {"card: id1": "card: ¦[id1]"}, "content 'card' is a table of keys, not a list"
    ),
    broken("an item longer upright", {"length: 120 mm": "length: ¦20 mm"}, ("20 mm long and 28 mm high", "exchange")),
    broken("an item rounder than round", {"radius: 2 mm": "radius: ¦15 mm"}, ("does not fit", "at most 14 mm")),
    broken("a note without thickness", {"thickness: 0.12 mm": "thickness: ¦0 mm"}, "it must be more than 0 mm"),
    broken("a parameter above its range", {"value: 3.5 mm": "value: ¦7 mm"}, ("'margin' is 7 mm", "at most 6 mm")),
    broken("a parameter below its range", {"value: 3.5 mm": "value: ¦2 mm"}, ("'margin' is 2 mm", "at least 2.5 mm")),
    broken("a count above its range", {"value: 3,": "value: ¦9,"}, "parameter 'slots' is 9; it must be at most 6"),
    broken("a range upside down", {"to: 6 mm": "to: ¦2 mm"}, ("'to' of parameter 'margin'", "below its 'from'")),
    broken(
        "a length for a count",
        {"value: 3,": "value: 3 mm,", "slots: slots": "slots: ¦slots"},
        ("'slots' of bank", "3 mm where a plain number"),
    ),
    broken("a range in mm for a count", {"to: 6,": "to: ¦6 mm,"}, "6 mm where a plain number is wanted"),
    broken("a parameter that is an area", {"2 * margin +": "¦2 * margin *"}, "neither a length nor a plain number"),
    broken("a parameter that is enormous", {"to: 70": "to: ¦70000"}, "it must be at most 10000 mm"),
)

_BODY = (
    broken(
        "a height that is a word",
        {"height: fit": "height: ¦fitt"},
        ("'height' of the body cannot be 'fitt'", "did you mean 'fit'?"),
    ),
    broken("a height of nothing", {"height: fit": "height: ¦0"}, "'height' of the body is 0 mm"),
    broken("a corner below nothing", {"corner: 6 mm": "corner: ¦-6 mm"}, "is -6 mm; it must be at least 0 mm"),
    broken("a panel of no width", {"middle: 105 mm": "middle: ¦0 mm"}, "the width of panel 'middle' is 0 mm"),
    broken("a panel without a width", {"middle: 105 mm": "middle: ¦[]"}, "the width of panel 'middle' is missing"),
    broken("an angle of nothing", {"{angle: 180,": "{angle: ¦0,"}, ("fold 1 is not folded at all", "not 0")),
    broken(
        "an angle beyond closed",
        {"{angle: 180,": "{angle: ¦181,"},
        "'angle' of fold 1 is 181; it must be at most 180",
    ),
    broken("an angle beyond closed outwards", {"{angle: 180,": "{angle: ¦-181,"}, "at least -180"),
    broken("an angle in radians", {"angle: 180 deg": "angle: ¦3.14 rad"}, "'rad' is not a unit"),
    broken("a compensation beyond reason", {"compensation: 1": "compensation: ¦1.5"}, "it must be at most 1.2"),
    broken("a relief below nothing", {"relief: 4 mm": "relief: ¦-4 mm"}, "'relief' of fold 1 is -4 mm"),
    broken("folds in no list", {"  closing: [2, 1]": "  closing: ¦2"}, "is a list, not a single value"),
    broken("a closing by name", {"closing: [2, 1]": "closing: [2, ¦first]"}, "no number called 'first'"),
    broken("a closing with half a fold", {"closing: [2, 1]": "closing: [2, ¦1.5]"}, "it must be a whole number"),
    broken("turned said with no", {"turned: false": "turned: ¦no"}, ("is 'no'", "write true or false")),
    broken("turned said with a number", {"turned: false": "turned: ¦0"}, "write true or false"),
    broken("a share above 1", {"cards: 0.5": "cards: ¦1.5"}, "'cards' of 'load' is 1.5; it must be at most 1"),
    broken("a share in per cent", {"cards: 0.5": "cards: ¦50 %"}, "'%' cannot stand here"),
    broken("a negative share", {"notes: 0}": "notes: ¦-1}"}, "it must be at least 0"),
    broken("a load that is a word", {"{cards: 0.5, notes: 0}": "¦ful"}, ("cannot be 'ful'", "did you mean 'full'?")),
    broken("a load that is a list", {"{cards: 0.5, notes: 0}": "¦[1, 1]"}, "'load' is a table of keys, not a list"),
)

_PARTS_AND_SEAMS = (
    broken("a pitch without a unit", {"8 per French inch": "¦8"}, ("the pitch 8 has no unit", "'8 per inch'")),
    broken("a pitch of bare arithmetic", {"8 per French inch": "¦2 * 2"}, "the pitch 4 has no unit"),
    broken("a pitch per foot", {"8 per French inch": "¦8 per foot"}, "'per' is not a unit of length"),
    broken("a pitch of no stitches", {"8 per French inch": "¦0 per inch"}, "no stitch in an inch"),
    broken("a pitch below nothing", {"8 per French inch": "¦-3 mm"}, "is -3 mm; it must be at least 0.5 mm"),
    broken("a pitch in a seam without a unit", {"pitch: 3 mm": "pitch: ¦3"}, "the pitch 3 has no unit"),
    broken("an unknown mode", {"mode: even": "mode: ¦evn"}, ("cannot be 'evn'", "did you mean 'even'?")),
    broken("an unknown hole", {"shape: slit": "shape: ¦slot"}, ("cannot be 'slot'", "did you mean 'slit'?")),
    broken(
        "a hole that is a word", {"{shape: slit, length: 2 mm, width: 0.3 mm, slant: 45}": "¦slit"}, "table of keys"
    ),
    broken(
        "a slit with a diameter", {"slant: 45": "slant: 45, diameter: ¦1"}, ("'slit' has no 'diameter'", "length and")
    ),
    broken(
        "a mark with a slant",
        {"slit, length: 2 mm, width: 0.3 mm, slant: 45": "mark, slant: ¦45"},
        ("'mark' has no 'slant'", "leave it out"),
    ),
    broken("a slant beyond upright", {"slant: 45": "slant: ¦95"}, "it must be at most 90"),
    broken("a thread of no thickness", {"thread: 0.55 mm": "thread: ¦0 mm"}, "it must be more than 0 mm"),
    broken("tails below nothing", {"tails: 150 mm": "tails: ¦-1 mm"}, "it must be at least 0 mm"),
    broken("a showing side unknown", {"showing: outside": "showing: ¦outsid"}, "did you mean 'outside'?"),
    broken(
        "an opening unknown",
        {"drop: 8 mm\n    opening: top": "drop: 8 mm\n    opening: ¦up"},
        "left, right, bottom, top",
    ),
    broken(
        "notes held below nothing",
        {"{note: 10}": "{note: ¦-1}"},
        "the count of 'note' in layer 'divider' is -1; it must be at least 0",
    ),
    broken("half a note held", {"{note: 10}": "{note: ¦9.5}"}, ("is 9.5", "a whole number")),
    broken("a count of mm", {"{note: 10}": "{note: ¦10 mm}"}, "where a plain number is wanted"),
    broken("a held note without a count", {"{note: 10}": "{note: ¦[]}"}, ("count of 'note'", "is missing")),
    broken("held notes as a list", {"{note: 10}": "¦[note]"}, "'holds' of layer 'divider' is a table of keys"),
    broken("a negative trim", {"{top: 1 mm}": "{top: ¦-1 mm}"}, "'top' of 'trim' of layer 'divider' is -1 mm"),
    broken(
        "no slots", {"slots: slots": "slots: ¦slots - 3"}, "'slots' of bank 'left cards' is 0; it must be at least 1"
    ),
    broken("thirteen slots", {"slots: slots": "slots: ¦slots + 10"}, "is 13; it must be at most 12"),
    broken("two and a half slots", {"slots: slots": "slots: ¦slots - 0.5"}, ("is 2.5", "whole number")),
    broken("no columns", {"columns: 1": "columns: ¦0"}, "it must be at least 1"),
    broken("a shape unknown", {"shape: tee": "shape: ¦tea"}, ("cannot be 'tea'", "did you mean 'tee'?")),
    broken("a stand unknown", {"stands: lying": "stands: ¦up"}, ("cannot be 'up'", "lying, upright")),
    broken("a dip without a depth", {"mouth: {shape: dipped, depth: 3 mm}": "mouth: ¦dipped"}, "needs a depth"),
    broken("a dip in a table without a depth", {"{shape: dipped, depth: 3 mm}": "¦{shape: dipped}"}, "needs a depth"),
    broken("a straight mouth with a depth", {"dipped, depth: 3 mm": "straight, depth: ¦3 mm"}, "has no depth"),
    broken("a mouth unknown", {"mouth: straight": "mouth: ¦strait"}, "did you mean 'straight'?"),
    broken("a mouth in a table unknown", {"shape: dipped": "shape: ¦dippd"}, "did you mean 'dipped'?"),
    broken("a notch deeper than round", {"depth: 9 mm": "depth: ¦10 mm"}, ("deeper than round", "at most 9 mm")),
    broken("a margin of nothing", {"margin: margin": "margin: ¦margin - margin"}, "it must be more than 0 mm"),
    broken("an edge unknown", {"[left, bottom, right]": "[left, ¦botom, right]"}, "did you mean 'bottom'?"),
    broken("edges in no list", {"[left, bottom, right]": "¦left"}, "is a list, not a single value"),
    broken("no edges at all", {"[left, bottom, right]": "¦[]"}, "seam 'rim' follows no edge"),
    broken("an edge twice", {"[left, bottom, right]": "[left, bottom, ¦left]"}, "'left' stands twice"),
    broken("edges that do not meet", {"[left, bottom, right]": "[left, ¦right]"}, ("do not meet", "two seams")),
    broken("corners unknown", {"corners: rounded": "corners: ¦round"}, "did you mean 'rounded'?"),
    broken("a way across unknown", {"across: open": "across: ¦closed"}, "open, eased"),
    broken("a stop below nothing", {"stop: 5 mm": "stop: ¦-5 mm"}, "'stop' of seam 'rim' is -5 mm"),
    broken("a limit below nothing", {"seam_stack: 6 mm": "seam_stack: ¦-6 mm"}, "it must be at least 0 mm"),
    broken("a limit that is a length", {"pitch_no: 0.15": "pitch_no: ¦0.15 mm"}, "where a plain number is wanted"),
    broken("a look after the no", {"pitch_look: 0.05": "pitch_look: ¦0.5"}, ("'pitch_look' is 0.5", "exchange them")),
)

BROKEN_VALUES = (*_LENGTHS, *_MATERIALS, *_BODY, *_PARTS_AND_SEAMS)
