"""Designs that are broken as a text: bytes and signs, YAML itself, and the parts of YAML that are left out."""

from __future__ import annotations

from tests.unit.design.broken import broken, whole
from tests.unit.design.good_design import line_of

BROKEN_TEXT = (
    whole("an empty file", "¦", "the file is empty"),
    whole("nothing but blank lines", "¦\n\n  \n", "the file is empty"),
    whole("nothing but a comment", "¦# later\n", "the file is empty"),
    whole("a lone null", "¦~\n", "the file is empty"),
    whole("a list for a file", "¦- design: A\n", ("holds a list", "begin with 'design:")),
    whole("a sentence for a file", "¦just a wallet\n", "holds a single text"),
    whole("an alias for a file", "¦*wallet\n", "'*wallet' refers to another place"),
    broken("a tab for indenting", {"  corner: 6 mm": "¦\tcorner: 6 mm"}, ("tab", "use spaces")),
    broken("a tab behind a value", {"step: 12 mm": "step: 12 mm¦\t"}, "there is a tab here"),
    broken("tabs in two lines", {"revision: A": "revision:¦\tA", "step: 12 mm": "step:¦\t12 mm"}, "tab", "tab"),
    broken("a control character", {"revision: A": "revision: A¦\x07"}, "control character U+0007"),
    broken("a null character", {"revision: A": "revision: ¦\x00"}, "control character U+0000"),
    broken("a line separator of Unicode", {"on as many": "on¦\u2028as many"}, "control character U+2028"),
    broken("a lone surrogate", {"revision: A": "revision: ¦\ud800"}, "control character U+D800"),
    broken("a byte order mark inside", {"revision: A": "revision: ¦\ufeffA"}, "control character U+FEFF"),
    broken(
        "no space after the colon of the first key",
        {"  height: fit": "  ¦height:fit"},
        ("no space after the colon of 'height'", "write 'height: fit'"),
    ),
    broken("no space after a colon further down", {"  corner: 6 mm": "  ¦corner:6 mm"}, "colon of 'corner'"),
    broken("no space after a colon in a list", {"    leather: outer": "    ¦leather:outer"}, "colon of 'leather'"),
    broken(
        "no space after a colon in braces", {"{thickness: 2-3 oz}": "{¦thickness:2-3 oz}"}, "colon of 'thickness'"
    ),
    broken("no space before a brace", {"inner: {thickness": "¦inner:{thickness"}, "colon of 'inner'"),
    broken(
        "no space in a table of one key", {"load: {cards: 0.5, notes: 0}": "load:\n  ¦cards:0.5"}, "colon of 'cards'"
    ),
    broken("a key without a colon", {"  corner: 6 mm": "  ¦corner 6 mm"}, ("'corner 6 mm'", "key: value")),
    broken("two colons in a line", {"design: Three-fold": "design: Wallet¦: Three-fold"}, "a second colon"),
    broken("a line too far to the right", {"  corner: 6 mm": "    corner¦: 6 mm"}, "continues the one above"),
    broken("a line too far to the left", {"    neutral: 0.5": "   ¦neutral: 0.5"}, "does not line up"),
    broken("a list entry between keys", {"  closing: [2, 1]": "  ¦- closing"}, "a list entry stands between keys"),
    broken("no space after a dash", {"  - pocket: sleeve": "  ¦-pocket: sleeve"}, "no space after the dash"),
    broken(
        "a brace left open",
        {"notes: 0}\nstitching:": "notes: 0\nstitching¦:"},
        ("'}' is missing", f"line {line_of('load:')}"),
    ),
    broken(
        "a bracket left open",
        {"[2, 1]\n  turned:": "[2, 1\n  turned¦:"},
        ("']' is missing", f"line {line_of('closing:')}"),
    ),
    broken(
        "a bracket too many", {"closing: [2, 1]": "closing: [2, 1]¦]"}, "']' closes a bracket that was not opened"
    ),
    broken("a closing bracket for a value", {"closing: [2, 1]": "closing: ¦]"}, "a value is missing before this"),
    broken("a quotation left open", {"revision: A": "revision: ¦'A"}, "a quotation begins here and never ends"),
    broken("a value that begins with an at sign", {"revision: A": "revision: ¦@A"}, ("'@'", "single quotes")),
    broken("a value that begins with a per cent sign", {"revision: A": "revision: ¦%A"}, "'%'"),
    broken("a backslash in double quotes", {"revision: A": 'revision: ¦"\\q"'}, "a backslash in double quotes"),
    broken(
        "a repeated key",
        {"    drop: 8 mm": "    drop: 8 mm\n    ¦drop: 9 mm"},
        ("'drop' is repeated", f"line {line_of('drop:')}"),
    ),
    broken("a repeated key of the file", {"revision: A": "revision: A\n¦revision: B"}, ("'revision'", "line 2")),
    broken("a repeated name", {"  card: id1": "  card: id1\n  ¦card: id3"}, "'card' is repeated"),
    broken("a key in three places", {"drop: 8 mm": "drop: 8 mm\n    ¦drop: 1\n    ¦drop: 2"}, "repeated", "repeated"),
    broken(
        "a merge key", {"inner: {thickness: 2-3 oz}": "inner: {¦<<: {neutral: 1}, thickness: 1 mm}"}, "'<<' merges"
    ),
    broken("an anchor", {"step: 12 mm": "step: ¦&s 12 mm"}, ("'&s' names this value", "use a parameter")),
    broken("an alias", {"show: 13 mm": "show: ¦*s"}, ("'*s' refers to another place", "write the value out")),
    broken(
        "an anchor and its alias",
        {"step: 12 mm": "step: ¦&s 12 mm", "show: 13 mm": "show: ¦*s"},
        "'&s' names this value",
        "'*s' refers to another place",
    ),
    broken("an alias for a leather", {"    leather: outer": "    leather: ¦*o"}, "'*o' refers to another place"),
    broken("an alias for a list", {"[shell, divider]": "¦*every"}, "'*every' refers to another place"),
    broken("a tag", {"revision: A": "revision: ¦!!str A"}, "a tag (!)"),
    broken("a tag of a program", {"revision: A": "revision: ¦!!python/object:os.system A"}, "a tag (!)"),
    broken("a tag before a table", {"load: {cards": "load: ¦!odd {cards"}, "a tag (!)"),
    broken("a list for a key", {"revision: A": "¦[a, b]: A"}, "a list or table stands where a key is wanted"),
    broken("a second document", {"limits:": "¦---\nlimits:"}, ("a second document", "one design in one file")),
    broken("brackets without end", {"revision: A": "revision: " + "[" * 39 + "¦" + "["}, "more than 40 levels"),
)
