"""Designs whose letters or hidden hardware are broken."""

from __future__ import annotations

from tests.unit.design.broken import broken_letters

__all__ = ["BROKEN_LETTERS"]

_STAMP = "stamp: {width: 6 mm, height: 8 mm, spacing: 0.5 mm}"

_INITIALS = (
    broken_letters("initials that are a word", {"initials:\n": "initials: ¦AB\n¦letters:\n"}, "a list", "'letters'"),
    broken_letters("initials that are a text", {"seams:\n": "  - ¦AB\nseams:\n"}, "this initials is a table"),
    broken_letters("initials without a name", {"- initials: owner": "- initials: ¦''"}, "of this initials is empty"),
    broken_letters(
        "a needed key of initials", {"    width: 24 mm\n": "", "- initials: m": "- ¦initials: m"}, "'width'"
    ),
    broken_letters(
        "initials without a height", {"    height: 9 mm\n": "", "- initials: m": "- ¦initials: m"}, "has no 'height'"
    ),
    broken_letters("initials on nothing", {"    on: shell\n": "", "- initials: m": "- ¦initials: m"}, "has no 'on'"),
    broken_letters("initials on an unknown part", {"on: shell": "on: ¦shel"}, ("no part 'shel'", "'shell'?")),
    broken_letters(
        "two initials of one name", {"initials: owner": "initials: ¦monogram"}, ("is taken by the initials", "own")
    ),
    broken_letters(
        "initials almost of one name", {"initials: owner": "initials: ¦Mono-Gram"}, "by capitals, blanks or hyphens"
    ),
    broken_letters("an unknown key of initials", {"    clear: 4 mm": "    ¦cleer: 4 mm"}, "did you mean 'clear'?"),
    broken_letters("initials of no width", {"width: 24 mm": "width: ¦0 mm"}, "it must be more than 0 mm"),
    broken_letters("initials of a height below nothing", {"height: 9 mm": "height: ¦-9 mm"}, "is -9 mm"),
    broken_letters(
        "initials clear by less than nothing", {"clear: 4 mm": "clear: ¦-1 mm"}, "it must be at least 0 mm"
    ),
    broken_letters("initials of a width with a comma", {"width: 24 mm": "width: ¦2,4"}, "one number or two"),
    broken_letters("initials on no panel of two", {"at: {panel: right}": "at: ¦{}"}, "does not say on which panel"),
    broken_letters("initials on an unknown panel", {"{panel: right}": "{panel: ¦rigth}"}, "did you mean 'right'?"),
    broken_letters(
        "initials in a fold", {"{panel: right}": "{panel: right, ¦fold: 1}"}, "'at' of initials 'owner' has no key"
    ),
    broken_letters("initials from both sides", {"right: 30 mm,": "left: 3 mm, right: ¦30 mm,"}, "keep one of them"),
    broken_letters("initials in an unknown style", {"style: strokes": "style: ¦stroke"}, "did you mean 'strokes'?"),
    broken_letters(
        "initials up nowhere", {"up: top": "up: ¦north"}, ("cannot be 'north'", "left, right, bottom, top")
    ),
)

_TEXTS = (
    broken_letters("initials that are a truth value", {"text: ANW": "text: ¦NO"}, ("truth value", "write '\"NO\"'")),
    broken_letters("initials without a value", {"text: ANW": "¦text:"}, "'text' of initials 'monogram' has no value"),
    broken_letters("initials in a list", {"text: ANW": "text: ¦[A, N, W]"}, "is one value"),
    broken_letters(
        "letters nobody can draw", {"text: ANW": "text: ¦АНВ"}, ("U+0410 CYRILLIC CAPITAL LETTER A", "spell")
    ),
    broken_letters("a stamp nobody can draw", {'"7 BÉ"': "¦漢"}, "U+6F22"),
    broken_letters("initials longer than a line", {"text: ANW": f"text: ¦{'A' * 201}"}, "is too long"),
    broken_letters(
        "more stamps than the box takes",
        {'"7 BÉ"': '¦"7 BÉ9"'},
        ("5 stamps in a row take 32 mm", "'owner' is 30 mm wide", "make the box wider"),
    ),
)

_STAMPS = (
    broken_letters(
        "stamps without a stamp", {f"    {_STAMP}\n": "", "style: stamps": "style: ¦stamps"}, "size of a stamp"
    ),
    broken_letters(
        "strokes with a stamp", {"style: stamps": "style: strokes", _STAMP: "stamp: ¦{width: 6 mm}"}, "no stamp"
    ),
    broken_letters(
        "a stamp with no style",
        {"    style: stamps\n": "", "stamp: {width": "stamp: ¦{width"},
        "write 'style: stamps'",
    ),
    broken_letters(
        "a stamp higher than the box", {"height: 8 mm": "height: 11 mm", "stamp: {": "stamp: ¦{"}, "higher"
    ),
    broken_letters("a stamp that is a value", {_STAMP: "stamp: ¦6 mm"}, "'stamp' of initials 'owner' is a table"),
    broken_letters("a stamp without a height", {", height: 8 mm": "", "stamp: {": "stamp: ¦{"}, "has no 'height'"),
    broken_letters("a stamp of no width", {"{width: 6 mm": "{width: ¦0 mm"}, "it must be more than 0 mm"),
    broken_letters("stamps one over the other", {"spacing: 0.5 mm": "spacing: ¦-1 mm"}, "it must be at least 0 mm"),
    broken_letters("an unknown key of a stamp", {"spacing: 0.5 mm": "¦spaceing: 0.5 mm"}, "did you mean 'spacing'?"),
)

_HIDDEN = (
    broken_letters(
        "hidden hardware in holes", {"thickness: 1.5 mm": "holes: ¦[4 mm, 4 mm]"}, ("none", "leave them out")
    ),
    broken_letters("hidden hardware of no thickness", {"thickness: 1.5 mm": "thickness: ¦0 mm"}, "more than 0 mm"),
    broken_letters(
        "punched hardware of a thickness",
        {"hidden-magnet-10": "magnet-14", "thickness: 1.5 mm": "thickness: ¦1.5 mm"},
        ("set in holes", "leave it out"),
    ),
    broken_letters(
        "hidden hardware unknown", {"hidden-magnet-10": "¦hidden-magnet-11"}, "did you mean 'hidden-magnet-1"
    ),
)

BROKEN_LETTERS = (*_INITIALS, *_TEXTS, *_STAMPS, *_HIDDEN)
