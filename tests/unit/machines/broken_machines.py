"""Machine tables that are broken, each with every fault that must be told and where."""

from __future__ import annotations

from tests.unit.design.broken import Broken, Wording, edited, whole
from tests.unit.machines.good_machine import GOOD, PLOT, VECTOR

__all__ = ["BROKEN_MACHINES"]


def broken(name: str, edits: dict[str, str], *says: Wording) -> Broken:
    return edited(name, GOOD, edits, *says)


_TEXTS = (
    whole("an empty file", "¦", ("the file is empty", "begin with 'machine: what it is called'")),
    whole("a list for a file", "¦- machine: A\n", ("holds a list", "begin with 'machine:")),
    whole("a second table", "machine: A\ntool: die\nformat: dxf\n¦---\nmachine: B\n", "one machine in one file"),
    broken("an anchor", {"gap: 12 mm": "gap: ¦&g 12 mm"}, ("'&g' names this value", "in each place")),
    broken("a tab", {"face: back": "face:¦\tback"}, "there is a tab here"),
    broken("no space after a colon", {"kerf: 0.2 mm": "¦kerf:0.2 mm"}, "colon of 'kerf'"),
    broken("a repeated key", {"face: back": "face: back\n¦face: front"}, ("'face' is repeated", "line 10")),
)
_KEYS = (
    broken("an unknown key", {"kerf: 0.2 mm": "¦kerv: 0.2 mm"}, ("no key 'kerv'", "did you mean 'kerf'?")),
    broken("a key like no other", {"gap: 12 mm": "¦colour: 3"}, ("no key 'colour'", "known here: machine, tool")),
    broken("an unknown key of the bed", {"  width:": "  ¦breadth:"}, ("'bed' of the machine", "known here: width")),
    broken("an unknown limit", {"  radius: 0.4 mm": "  ¦radios: 0.4 mm"}, "did you mean 'radius'?"),
    broken("an unknown operation", {"  opening: {": "  ¦openings: {"}, ("no key 'openings'", "'opening'?")),
    broken("an unknown key of an operation", {"weight: 0.13 mm": "¦width: 0.13 mm"}, "operation 'mark' has no key"),
    broken("no tool", {"tool: laser\n": "", "machine: Shop": "¦machine: Shop"}, ("has no 'tool'", "laser, knife")),
    broken("no format", {"format: dxf\n": "", "machine: Shop": "¦machine: Shop"}, "has no 'format'"),
    broken("a key without a value", {"kerf: 0.2 mm": "¦kerf:"}, "'kerf' of the machine has no value"),
    broken("a colour after a sign that begins a comment", {"colour: 1,": "¦colour: #ff0000\n    ,"}, "has no value"),
    broken("an operation that is a word", {"{write: false}": "¦none"}, "is a table of keys, not a single value"),
    broken("a bed that is a size", {"bed:\n  width: 600 mm\n  height: 400 mm": "bed: ¦600 mm"}, "a table of keys"),
)
_WORDS = (
    broken("a tool of another name", {"tool: laser": "tool: ¦lazer"}, ("cannot be 'lazer'", "'laser'?")),
    broken("a format nobody writes", {"format: dxf": "format: ¦bmp"}, ("cannot be 'bmp'", "known here: dxf, svg")),
    edited("a format nobody writes, with pens", PLOT, {"hpgl": "¦plot"}, "known here: dxf, svg, hpgl"),
    broken("a release in small letters", {"R2018": "¦r2018"}, "did you mean 'R2018'?"),
    broken("a release that is not written", {"R2018": "¦R14"}, "'release' of the machine cannot be 'R14'"),
    broken("files of another kind", {"files: sheets": "files: ¦sheet"}, "did you mean 'sheets'?"),
    broken("a face of another name", {"face: back": "face: ¦bottom"}, "known here: front, back"),
    broken("holes that are neither", {"holes: marked": "holes: ¦mark"}, "did you mean 'marked'?"),
    broken("fold ticks of another kind", {"scored": "¦yes"}, "'fold_ticks' of the machine cannot be 'yes'"),
    broken("letters of another kind", {"engrave: none": "engrave: ¦letters"}, "known here: none, initials"),
    broken(
        "letters on the wrong face", {"engrave: none": "engrave: ¦initials"}, ("on the showing face", "face: front")
    ),
    broken("a sequence of another kind", {"operation by operation": "¦by layer"}, "known here: piece by piece"),
    broken("a travel of another kind", {"travel: as drawn": "travel: ¦fastest"}, "did you mean 'shortest'?"),
    broken("a truth value of another kind", {"write: false": "write: ¦off"}, "write true or false"),
    broken("a title that is a truth word", {"Shop laser": "¦on"}, "'on', which many programs read"),
)
_SIZES = (
    broken("a kerf that is too wide", {"kerf: 0.2 mm": "kerf: ¦3 mm"}, ("is 3 mm", "at most 2 mm")),
    broken("a kerf below nothing", {"kerf: 0.2 mm": "kerf: ¦-0.1 mm"}, "at least 0 mm"),
    broken("a kerf that may be two numbers", {"kerf: 0.2 mm": "kerf: ¦0,2"}, "may be one number or two"),
    broken("a kerf with a name in it", {"kerf: 0.2 mm": "kerf: ¦beam"}, "there is no number called 'beam'"),
    broken("a kerf of a die", {"tool: laser": "tool: die", "kerf: 0.2 mm": "kerf: ¦0.2 mm"}, "a die takes nothing"),
    broken("a gap within two cuts", {"gap: 12 mm": "gap: ¦2.1 mm"}, ("is 2.1 mm", "at least 2.2 mm (kerf + 2 mm)")),
    broken("a bed of no width", {"width: 600 mm": "width: ¦0 mm"}, "it must be more than 0 mm"),
    broken("a bed in a unit of cloth", {"height: 400 mm": "height: ¦2 yd"}, "'yd' is not a unit of length"),
    broken("an allowance below nothing", {"sanding: 0.3 mm": "sanding: ¦-1 mm"}, "at least 0 mm"),
    broken("an allowance like a seam", {"tape: 0.1 mm": "tape: ¦6 mm"}, "at most 5 mm"),
    broken("chords of no error", {"chords: 0.02 mm": "chords: ¦0 mm"}, "at least 0.0005 mm"),
    broken("chords that are seen", {"chords: 0.02 mm": "chords: ¦1 mm"}, "at most 0.5 mm"),
    broken("a smallest hole like a window", {"hole: 0.5 mm": "hole: ¦50 mm"}, "at most 20 mm"),
)
_ORDER = (
    broken("an outline that is not last", {"opening, outline]": "¦outline, opening]"}, ("may shift", "outline last")),
    broken(
        "a role that is left out", {"[stitch hole, mark, opening": "¦[mark, opening"}, "does not name stitch hole"
    ),
    broken("a role that stands twice", {"[stitch hole, mark,": "[mark, ¦mark,"}, "'mark' stands twice"),
    broken("a role of another name", {"[stitch hole,": "[¦hole,"}, ("cannot be 'hole'", "stitch hole")),
    broken("an order that is one word", {"[stitch hole, mark, opening, outline]": "¦outline"}, "is a list"),
)
_OPERATIONS = (
    broken("a colour beyond the table", {"colour: 5": "colour: ¦256"}, "at most 255"),
    broken("a colour of half a number", {"colour: 5": "colour: ¦5.5"}, "must be a whole number"),
    broken("a colour of another format", {"colour: 5": "colour: ¦00666e"}, "'00666e' is not a plain decimal number"),
    broken("a layer with a blank", {"layer: EDGE": "layer: ¦THE EDGE"}, ("'THE EDGE'", "letters a to z")),
    broken("a layer of two operations", {"layer: EDGE": "layer: ¦score"}, ("is that of 'mark' already",)),
    broken("a weight between two weights", {"weight: 0.5 mm": "weight: ¦0.55 mm"}, "write 0.53 mm or 0.6 mm"),
    broken("a pen in a drawing", {"colour: 6}": "pen: ¦2}"}, ("a dxf file knows no pens", "leave 'pen' out")),
    broken(
        "line weights in the oldest release",
        {"release: R2018": "release: R12", "0.13 mm}": "¦0.13 mm}", "0.5 mm}": "¦0.5 mm}"},
        "R12 knows no line weights",
        "R12 knows no line weights",
    ),
    broken(
        "nothing that is written",
        {
            "operations:\n": "operations:\n  ¦",
            "  mark: {": "mark: {write: false, ",
            "hole: {l": "hole: {write: false, l",
            "line: {l": "line: {write: false, l",
        },
        "every operation is left out",
    ),
    broken("a caution that is a table", {"  - Air on?": "  - ¦{air: on}"}, "lists single words"),
    edited("a pen that no plotter has", PLOT, {"pen: 4": "pen: ¦9"}, "at most 8"),
    edited("a layer in a plot", PLOT, {"pen: 4": "layer: ¦SCORE"}, "a plot has pens and no layer"),
    edited("a colour in a plot", PLOT, {"pen: 4": "colour: ¦4"}, "a plot has pens and no colour"),
    edited(
        "a release of a plot", PLOT, {"hpgl": "hpgl\nrelease: ¦R12"}, ("a hpgl file has no release", "leave it out")
    ),
    edited("a colour by name", VECTOR, {"0000ff": "¦blue"}, ("'blue' is not a colour", "six digits")),
    edited("a colour of three digits", VECTOR, {"0000ff": "¦00f"}, "'00f' is not a colour"),
)
BROKEN_MACHINES = (*_TEXTS, *_KEYS, *_WORDS, *_SIZES, *_ORDER, *_OPERATIONS)
