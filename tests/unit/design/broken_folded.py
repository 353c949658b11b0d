"""Designs folded from one piece whose faces, rooms or tabs are broken."""

from __future__ import annotations

from tests.unit.design.broken import broken, broken_folded

__all__ = ["BROKEN_FOLDED"]

_WING = "    - face: wing\n      on: back\n      edge: left\n"
_LID = "    - face: lid\n      on: back\n      edge: top\n"
_TAB = "    - tab: tongue\n      on: flap\n      edge: left\n"
_ROOM = "      between: [back, front]\n      item: card\n      count: 3\n"
_WHOLE_TAB = (
    "      at: {top: 20 mm}\n      width: 16 mm\n      length: 11 mm\n      shape: pointed\n      into: back\n"
    "      slit: 18 mm\n"
)

_WHOLE = (
    broken_folded("a folded wallet with a body", {"folded:": "body: ¦{panels: {left: fit}}\nfolded:"}, "no 'body'"),
    broken_folded("a folded wallet with parts", {"folded:": "parts: ¦[{layer: a}]\nfolded:"}, "no 'parts'"),
    broken_folded(
        "a folded wallet with seams",
        {"folded:": "seams: ¦[]\nfolded:"},
        ("folded from one piece has no 'seams'", "leave it out, or leave out 'folded'"),
    ),
    broken_folded("a folded wallet with stitching", {"folded:": "stitching: ¦{pitch: 3 mm}\nfolded:"}, "'stitching'"),
    broken_folded("a folded wallet with fittings", {"folded:": "fittings: ¦[]\nfolded:"}, "no 'fittings'"),
    broken_folded("a folded wallet with initials", {"folded:": "initials: ¦[]\nfolded:"}, "no 'initials'"),
    broken_folded("a folded wallet of a key misspelt", {"  leather: main\n": "  ¦leatherr: main\n"}, "'leather'?"),
    broken(
        "a wallet both sewn and folded",
        {
            "body:\n  height": "folded: ¦{leather: outer}\nbody:\n  ¦height",
            "stitching:\n  pitch": "stitching:\n  ¦pitch",
            "parts:\n  - layer": "parts:\n  ¦- layer",
            "fittings:\n  - fitting": "fittings:\n  ¦- fitting",
            "seams:\n  - seam": "seams:\n  ¦- seam",
        },
        "has no 'faces'",
        "no 'body'",
        "no 'stitching'",
        "no 'parts'",
        "no 'fittings'",
        "no 'seams'",
    ),
    broken_folded("an unknown key of a folded wallet", {"  ease: 3 mm": "  ¦eas: 3 mm"}, "did you mean 'ease'?"),
    broken_folded(
        "a folded wallet of no leather", {"leather: main": "leather: ¦mian"}, ("no leather 'mian'", "'main'?")
    ),
    broken_folded("a relief hole below nothing", {"relief: 0.8 mm": "relief: ¦-1 mm"}, "it must be at least 0 mm"),
    broken_folded("an ease below nothing", {"ease: 3 mm": "ease: ¦-3 mm"}, "'ease' of the folded wallet is -3 mm"),
    broken_folded("an unknown showing side", {"showing: inside": "showing: ¦insde"}, "did you mean 'inside'?"),
)

_FACES = (
    broken_folded(
        "a base that hangs", {"    - face: back\n": "    - face: back\n      on: ¦lid\n"}, ("is the base", "no 'on'")
    ),
    broken_folded(
        "a base with an edge", {"      height: 60 mm\n": "      height: 60 mm\n      edge: ¦top\n"}, "'edge'"
    ),
    broken_folded(
        "a base with a reach", {"      height: 60 mm\n": "      height: 60 mm\n      reach: ¦9\n"}, "'reach'"
    ),
    broken_folded(
        "a base with an angle", {"      height: 60 mm\n": "      height: 60 mm\n      angle: ¦180\n"}, "'angle'"
    ),
    broken_folded(
        "a base with an inset",
        {"      height: 60 mm\n": "      height: 60 mm\n      inset: ¦{top: 1}\n"},
        "no 'inset'",
    ),
    broken_folded(
        "a flap with a width",
        {"      reach: deep\n": "      reach: deep\n      width: ¦50 mm\n"},
        ("hangs on another, so it has no 'width'", "say its 'reach'"),
    ),
    broken_folded(
        "a flap with a height", {"      reach: deep\n": "      reach: deep\n      height: ¦50 mm\n"}, "no 'height'"
    ),
    broken_folded("a face without a name", {"face: wing": "face: ¦''"}, "'face' of this face is empty"),
    broken_folded(
        "two faces of one name", {"face: wing": "face: ¦front"}, ("taken by the face on line", "of its own")
    ),
    broken_folded(
        "a flap on no face", {_WING: _WING.replace("on: back", "on: ¦bakc")}, ("no face 'bakc'", "'back'?")
    ),
    broken_folded(
        "a flap on a face below it", {_WING: _WING.replace("on: back", "on: ¦lid")}, "there is no face 'lid'"
    ),
    broken_folded(
        "a flap that does not say where it hangs",
        {_WING: "    - ¦face: wing\n      edge: left\n"},
        ("it has no 'on'", "such as 'on: back'"),
    ),
    broken_folded(
        "a flap that does not say by which edge",
        {_WING: "    - ¦face: wing\n      on: back\n"},
        ("it has no 'edge'", "'edge: top'"),
    ),
    broken_folded("an unknown edge of a face", {_WING: _WING.replace("left", "¦lefft")}, "did you mean 'left'?"),
    broken_folded(
        "a flap on another's hinge",
        {"      on: lid\n      edge: top": "      on: lid\n      edge: ¦bottom"},
        ("'lid' hangs by its bottom edge, so nothing can hang there", "name another edge"),
    ),
    broken_folded("a reach of nothing", {"reach: 40 mm": "reach: ¦0 mm"}, "'reach' of face 'wing' is 0 mm"),
    broken_folded("a reach misspelt", {"reach: fit": "reach: ¦fitt"}, "did you mean 'fit'?"),
    broken_folded("a width of the base of nothing", {"width: fit": "width: ¦-3"}, "it must be more than 0 mm"),
    broken_folded(
        "a height that is a list", {"height: 60 mm": "height: ¦[60]"}, "'height' of face 'back' is one value"
    ),
    broken_folded(
        "a flap folded halfway", {"angle: -180 deg": "angle: ¦90"}, ("folded by 90 degrees", "write 180 or -180")
    ),
    broken_folded("a flap folded too far", {"angle: -180 deg": "angle: ¦-190"}, "it must be at least -180"),
    broken_folded(
        "an inset at an end the hinge has not",
        {"inset: {top: 9 mm}": "inset: {left: ¦9 mm}"},
        ("a hinge on the left edge has no left end", "bottom and top"),
    ),
    broken_folded("an inset hinge below nothing", {"inset: {top: 9 mm}": "inset: {top: ¦-9 mm}"}, "at least 0 mm"),
    broken_folded(
        "an unknown key of a face", {"reach: deep": "¦reech: deep"}, ("face 'front'", "did you mean 'reach'?")
    ),
    broken_folded(
        "a face that is a word",
        {"    - face: flap\n      on: lid\n      edge: top\n      reach: fit\n": "    - ¦flap\n"},
        "this face is a table",
    ),
    broken_folded(
        "faces in no list",
        {"  faces:\n    - face: back": "  faces: ¦back\n  ¦fases:\n    - face: back"},
        "is a list",
        "no key 'fases'",
    ),
    broken_folded(
        "a corner of a face below 0", {"corner: 4 mm": "corner: ¦-4 mm"}, "'corner' of face 'front' is -4 mm"
    ),
    broken_folded(
        "a corner at a fold",
        {"corners: {bottom left: 9 mm}": "corners: {top left: ¦9 mm}"},
        ("the top left corner of face 'front' is at its hinge", "leave it out"),
    ),
    broken_folded("an unknown corner of a face", {"bottom left: 9": "¦left bottom: 9"}, "no key 'left bottom'"),
    broken_folded(
        "a hinge that is slanted by its flap",
        {"sides: {left: {slant: -3 mm}}": "sides: {top: ¦{slant: -3 mm}}"},
        ("hangs by its top edge, which is straight", "the edge it hangs on"),
    ),
    broken_folded(
        "a side that draws in at its hinge",
        {"sides: {left: {slant: -3 mm}}": "sides: {left: ¦{slant: 3 mm}}"},
        ("slants in at its hinge", "a negative slant"),
    ),
    broken_folded("an unknown side of a face", {"{left: {slant": "{¦lefft: {slant"}, "did you mean 'left'?"),
)

_CUTS = (
    broken_folded(
        "a notch at a fold", {"edge: bottom, width: 18": "edge: ¦top, width: 18"}, "nothing can be cut there"
    ),
    broken_folded("a notch of a face deeper than round", {"depth: 6 mm": "depth: ¦10 mm"}, "use at most 9 mm"),
    broken_folded(
        "a notch of a face without a depth",
        {"width: 18 mm, depth: 6 mm}": "width: 18 mm}", "thumb: {": "thumb: ¦{"},
        "has no 'depth'",
    ),
    broken_folded(
        "a notch on an unknown edge", {"edge: bottom, width": "edge: ¦botom, width"}, "did you mean 'bottom'?"
    ),
    broken_folded("an opening of a face of no kind", {"- hole: cord hole": "- ¦name: cord hole"}, "what kind it is"),
    broken_folded(
        "two openings of a face of one name", {"hole: cord hole": "hole: ¦look-out"}, "taken by the opening"
    ),
    broken_folded("a hole in a face of nothing", {"diameter: 3 mm": "diameter: ¦0 mm"}, "more than 0 mm"),
    broken_folded(
        "a window in a face too round", {"corner: 1 mm": "corner: ¦4 mm"}, ("does not fit window", "at most 3.5")
    ),
    broken_folded(
        "an opening placed from both sides",
        {"left: 12 mm, bottom": "left: 12 mm, right: ¦1 mm, bottom"},
        "keep one of them",
    ),
    broken_folded(
        "an opening of a face on a panel", {"at: {right: 6 mm": "at: {¦panel: left, right: 6 mm"}, "no key 'panel'"
    ),
    broken_folded("a film in a face", {"border: 4 mm": "¦film: {leather: main}"}, "no key 'film'"),
    broken_folded("a border round a hole below nothing", {"border: 4 mm": "border: ¦-4 mm"}, "at least 0 mm"),
)

_CLOSING = (
    broken_folded(
        "a closing that leaves a flap out",
        {"[front, wing, flap, lid]": "¦[front, wing, lid]"},
        ("'closing' names front, wing, lid", "name each of front, wing, lid, flap once"),
    ),
    broken_folded(
        "a closing that folds a flap twice", {"[front, wing, flap, lid]": "¦[front, wing, flap, lid, wing]"}, "once"
    ),
    broken_folded(
        "a closing of an unknown flap",
        {"[front, wing, flap, lid]": "[front, wing, flap, ¦lidd]"},
        ("no flap 'lidd'", "'lid'?"),
    ),
    broken_folded(
        "a closing of the base", {"[front, wing, flap, lid]": "[¦back, front, wing, flap, lid]"}, "'back' is the base"
    ),
    broken_folded("a closing that is a word", {"[front, wing, flap, lid]": "¦front"}, "is a list"),
)

_ROOMS = (
    broken_folded("a room without a name", {"room: cards": "room: ¦''"}, "'room' of this room is empty"),
    broken_folded("two rooms of one name", {"room: card in the lid": "room: ¦cards"}, "taken by the room on line"),
    broken_folded(
        "a room between three faces", {"[back, front]": "¦[back, front, lid]"}, ("names 3 faces", "the one over them")
    ),
    broken_folded(
        "a room between a face and itself", {"[back, front]": "¦[back, back]"}, "between 'back' and itself"
    ),
    broken_folded(
        "a room beside an unknown face", {"[back, front]": "[back, ¦frnot]"}, ("no face 'frnot'", "'front'?")
    ),
    broken_folded(
        "a room between nothing",
        {_ROOM: "      item: card\n      count: 3\n", "- room: cards": "- ¦room: cards"},
        "has no 'between'",
    ),
    broken_folded(
        "a room for an unknown item", {_ROOM: _ROOM.replace("item: card", "item: ¦crad")}, "no content 'crad'"
    ),
    broken_folded("a room for nothing", {"count: 3": "count: ¦0"}, "it must be at least 1"),
    broken_folded("a room for half an item", {"count: 3": "count: ¦2.5"}, "it must be a whole number"),
    broken_folded(
        "an unknown way of standing in a room", {"stands: lying": "stands: ¦liing"}, "did you mean 'lying'?"
    ),
    broken_folded("an unknown opening of a room", {"opening: top": "opening: ¦topp"}, "did you mean 'top'?"),
    broken_folded("an unknown key of a room", {"opening: top": "¦openning: top"}, "did you mean 'opening'?"),
)

_TABS = (
    broken_folded("a tab without a name", {"tab: tongue": "tab: ¦''"}, "'tab' of this tab is empty"),
    broken_folded("a tab on no face", {_TAB: _TAB.replace("on: flap", "on: ¦falp")}, ("no face 'falp'", "'flap'?")),
    broken_folded(
        "a tab on a hinge",
        {_TAB: _TAB.replace("left", "¦bottom"), "at: {top: 20 mm}": "at: {left: 20 mm}"},
        "nothing can stand there",
    ),
    broken_folded("a tab on an unknown edge", {_TAB: _TAB.replace("left", "¦lft")}, "did you mean 'left'?"),
    broken_folded("a tab into no face", {"into: back": "into: ¦bakc"}, "there is no face 'bakc'"),
    broken_folded(
        "a tab into its own face", {"into: back": "into: ¦flap"}, ("the face it stands on", "it closes on")
    ),
    broken_folded("a tab of no width", {"width: 16 mm": "width: ¦0"}, "it must be more than 0 mm"),
    broken_folded("a tab of no length", {"length: 11 mm": "length: ¦-1"}, "'length' of tab 'tongue' is -1 mm"),
    broken_folded("an unknown shape of a tab", {"shape: pointed": "shape: ¦pointy"}, "did you mean 'pointed'?"),
    broken_folded("a slit of nothing", {"slit: 18 mm": "slit: ¦0 mm"}, "'slit' of tab 'tongue' is 0 mm"),
    broken_folded(
        "a tab placed from an end its edge has not",
        {"at: {top: 20 mm}": "at: {left: ¦20 mm}"},
        ("the left edge has no left end", "bottom, top end"),
    ),
    broken_folded(
        "a tab placed from both ends", {"at: {top: 20 mm}": "at: {bottom: 9 mm, top: ¦20 mm}"}, "keep one of them"
    ),
    broken_folded(
        "a tab without anything",
        {_WHOLE_TAB: "      width: 16 mm\n      length: 11 mm\n", "- tab: tongue": "- ¦tab: tongue"},
        "has no 'into'",
    ),
    broken_folded("an unknown key of a tab", {"shape: pointed": "¦shap: pointed"}, "did you mean 'shape'?"),
    broken_folded(
        "a tab's place on a face", {"at: {top: 20 mm}": "at: {¦panel: a}"}, "known here: left, right, bottom, top"
    ),
)

BROKEN_FOLDED = (*_WHOLE, *_FACES, *_CUTS, *_CLOSING, *_ROOMS, *_TABS)
