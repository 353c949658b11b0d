"""The ledger of a design: under the name of every size what was entered for it, and where."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from patternforge.design.arithmetic import Value, evaluated
from patternforge.design.located import Entry, Node, Row, Scalar, Table
from patternforge.design.scope import Kind, Scope
from patternforge.units import RANGE, MeasureError, pitch_mm
from patternforge.wallet.entered import Entered

__all__ = ["ledger"]

_PARTS = ("layer", "bank", "pocket", "loose", "gusset")
_OPENINGS = ("window", "slot", "hole")
_LOAD = ("cards", "notes", "loose")
_SIZED_BY_FIT = {"width": "declared width", "height": "declared height"}
_EDGES = "edges"


def ledger(root: Table, scope: Scope) -> tuple[Entered, ...]:
    """Every number of a design that was read without fault, in the order of the file; settings in their places.

    >>> from patternforge.design.located import FaultList
    >>> from patternforge.design.source import located
    >>> root = located("body: {height: 80 mm, folds: [{relief: 3}]}", "a.yaml", FaultList())
    >>> [(each.name, each.text) for each in ledger(root, Scope(FaultList()))]
    [('body.declared height', '80 mm'), ('fold 1.relief', '3')]
    """
    reader = _Reader(scope)
    found = (reader.entered(name, scalar) for entry in root for name, scalar in _of_top(entry))
    return tuple(each for each in found if each is not None)


_Named = Iterator[tuple[str, Scalar]]


def _of_top(entry: Entry) -> _Named:
    """The scalars under one key of the design, each with the name of the size it stands for."""
    key, node = entry.key.text, entry.value
    match key, node:
        case "parameters", Table():
            for each in node:
                value = each.value.get("value") if isinstance(each.value, Table) else None
                yield from _one(f"parameter {each.key.text}", value)
        case ("leathers" | "contents") as kind, Table():
            for each in node:
                yield from _within(f"{kind.removesuffix('s')} {each.key.text}.", each.value)
        case "body", Table():
            yield from _of_body(node)
        case "load", Scalar():
            yield from ((f"load.{share}", replace(node, text=_share(node.text))) for share in _LOAD)
        case "parts", Row():
            for item in node.items:
                yield from _of_part(item)
        case "seams", Row():
            for item in node.items:
                yield from _of_seam(item)
        case "fittings", Row():
            for item in node.items:
                yield from _within(f"fitting {_called(item, ('fitting',))}.", item)
        case "folded", Table():
            yield from _of_folded(node)
        case (("load" | "stitching" | "limits"), Table()):
            yield from _within(f"{key}.", node)


def _share(word: str) -> str:
    return {"full": "1", "empty": "0"}.get(word, word)


def _one(name: str, node: Node | None) -> _Named:
    if isinstance(node, Scalar) and not node.is_blank:
        yield name, node


def _within(prefix: str, node: Node) -> _Named:
    """The scalars of a table, and of tables in it under both keys; a list of them is left to who knows its kind."""
    for each in node if isinstance(node, Table) else ():
        if isinstance(each.value, Table):
            yield from _within(f"{prefix}{each.key.text} ", each.value)
        else:
            yield from _one(f"{prefix}{each.key.text}", each.value)


def _of_body(body: Table) -> _Named:
    for each in body:
        match each.key.text, each.value:
            case "panels", Table() as panels:
                for panel in panels:
                    yield from _one(f"panel {panel.key.text}.declared width", panel.value)
            case "folds", Row() as folds:
                for number, fold in enumerate(folds.items, 1):
                    yield from _within(f"fold {number}.", fold)
            case "height", node:
                yield from _one("body.declared height", node)
            case _, node:
                yield from _within("body.", Table((each,), node.at))


def _called(node: Node, kinds: tuple[str, ...]) -> str | None:
    """The name a table gives itself."""
    names = (node.get(kind) for kind in kinds) if isinstance(node, Table) else ()
    return next((name.text.strip() for name in names if isinstance(name, Scalar)), None)


def _of_part(node: Node) -> _Named:
    prefix = f"part {_called(node, _PARTS)}."
    yield from _within(prefix, node)
    for each in node if isinstance(node, Table) else ():
        rows = each.value.items if isinstance(each.value, Row) else ()
        for number, row in enumerate(rows, 1):
            yield from _of_row(prefix, each.key.text, number, row)


def _of_row(prefix: str, key: str, number: int, row: Node) -> _Named:
    """What stands in one of the lists of a part: turned edges by their edge, skives by number, openings by name."""
    if key == "turned" and isinstance(row, Table):
        edges = row.get(_EDGES)
        for edge in edges.items if isinstance(edges, Row) else ():
            if isinstance(edge, Scalar):
                yield from _within(f"{prefix}turned {edge.text}.", row)
    elif key == "skives":
        yield from _within(f"{prefix}skive {number}.", row)
    elif name := _called(row, _OPENINGS):
        yield from _within(f"opening {name}.", row)


def _of_seam(node: Node) -> _Named:
    prefix = f"seam {_called(node, ('seam',))}."
    for name, scalar in _within(prefix, node):
        yield name.replace(f"{prefix}stitching ", prefix, 1), scalar


def _of_folded(folded: Table) -> _Named:
    yield from _within("folded.", folded)
    for kind in ("face", "room", "tab"):
        row = folded.get(f"{kind}s")
        for item in row.items if isinstance(row, Row) else ():
            name = _called(item, (kind,))
            for key, scalar in _within("", item):
                yield f"{kind} {name}.{_SIZED_BY_FIT.get(key, key) if kind == 'face' else key}", scalar


@dataclass(frozen=True, slots=True)
class _Reader:
    """Tells numbers from words, and which names a number was reckoned from."""

    scope: Scope

    def entered(self, name: str, scalar: Scalar) -> Entered | None:
        """What was entered; None for what is no number."""
        text = " ".join(scalar.text.split())
        names = self._names(text.removesuffix("°").removesuffix("deg"))
        if names is None:
            return None
        of = tuple((each, self._address(each)) for each in names)
        return Entered(name, text, scalar.at.line, scalar.at.setting, of)

    def _names(self, text: str) -> tuple[str, ...] | None:
        """The names in a piece of arithmetic, each once; None for what is no arithmetic."""
        if RANGE.fullmatch(text) or _is_pitch(text):
            return ()
        met: dict[str, None] = {}

        def value_of(name: str) -> Value:
            met[name] = None
            return self.scope.value_of(name)

        try:
            evaluated(text, value_of)
        except MeasureError:
            return None
        return tuple(met)

    def _address(self, name: str) -> str:
        head = name.partition(".")[0]
        kind: Kind = self.scope.declared[head][0]
        return f"{kind} {name}"


def _is_pitch(text: str) -> bool:
    try:
        pitch_mm(text)
    except MeasureError:
        return False
    return True
