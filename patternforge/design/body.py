"""The laid-open body: panels, folds, the order they close in, and what is inside then."""

from __future__ import annotations

import math
import re

from patternforge.design.arithmetic import as_length
from patternforge.design.entries import Entries, entries
from patternforge.design.forms import CornersForm, FoldForm, LoadForm
from patternforge.design.located import Node, Scalar
from patternforge.design.places import sides
from patternforge.design.scope import Kind, Scope
from patternforge.design.values import ANY, POSITIVE, Bounds, count_of, number_of
from patternforge.design.words import nearest, word_advice
from patternforge.units import counted
from patternforge.wallet.spec import BodySpec, Edge, FoldSpec, Load, PanelSpec

__all__ = ["body", "corners_of", "fit_or_length", "load_share"]

_MOST_PANELS = 8
_BODY = BodySpec((), (), ())
_FOLD = FoldSpec()
_FULL = Load()
_SHARE = Bounds(0.0, 1.0)
_PER_CENT = re.compile(r"(\d{1,3}(?:\.\d+)?) ?%", re.ASCII)


def body(table: Entries) -> BodySpec:
    """The body that ``table`` declares; its panels are without an entry if they could not be read."""
    panels = _panels(table)
    folds = _folds(table)
    count_holds = _fold_count_holds(table, len(panels), len(folds))
    return BodySpec(
        panels=panels,
        folds=folds,
        closing=_closing(table, len(folds)) if count_holds else (),
        height=fit_or_length(table, "height"),
        corner=table.length("corner", _BODY.corner),
        corners=corners_of(table.table("corners", CornersForm)),
        shapes=sides(table),
        turned=table.flag("turned", _BODY.turned),
        clearance=table.length("clearance", _BODY.clearance),
        headroom=table.length("headroom", _BODY.headroom),
    )


def _panels(table: Entries) -> tuple[PanelSpec, ...]:
    named = table.named("panels")
    if table.node("panels") and not named:
        table.add_fault("panels", "the body has no panels", "name at least one, such as {body: fit}")
    if len(named) > _MOST_PANELS:
        table.add_fault("panels", f"the body has {len(named)} panels", f"it may have at most {_MOST_PANELS}")
    return tuple(PanelSpec(key.text, _width(key, node, table.scope)) for key, node in named)


def _width(key: Scalar, node: Node, scope: Scope) -> float | None:
    what = f"the width of panel '{key.text}'"
    if not isinstance(node, Scalar) or node.is_blank:
        scope.leave_open()
        scope.faults.add(node.at, f"{what} is missing", "write a length, or fit")
        return math.nan
    return _fit_or_length(node, what, scope)


def corners_of(table: Entries) -> tuple[tuple[tuple[Edge, Edge], float], ...]:
    """Single corners, each named by its lower or upper and its left or right side."""
    named = [(low, side) for low in (Edge.BOTTOM, Edge.TOP) for side in (Edge.LEFT, Edge.RIGHT)]
    return tuple((ends, table.length(" ".join(ends))) for ends in named if " ".join(ends) in table.nodes)


def fit_or_length(table: Entries, key: str) -> float | None:
    """A length in mm; None for the word fit, or if the key is left out."""
    scalar = table.scalar(key)
    return None if scalar is None else _fit_or_length(scalar, f"'{key}' of {table.what}", table.scope)


def _fit_or_length(scalar: Scalar, what: str, scope: Scope) -> float | None:
    if scalar.text == "fit":
        return None
    if nearest(scalar.text, ("fit",)):
        scope.faults.add(scalar.at, f"{what} cannot be '{scalar.text}'", "did you mean 'fit'?")
        return math.nan
    return number_of(scalar, what, scope, as_length, POSITIVE)


def _folds(table: Entries) -> tuple[FoldSpec, ...]:
    return tuple(_fold(node, number, table.scope) for number, node in enumerate(table.row("folds"), start=1))


def _fold(node: Node, number: int, scope: Scope) -> FoldSpec:
    table = entries(node, FoldForm, f"fold {number}", scope)
    angle = table.angle("angle", _FOLD.angle, Bounds(-180.0, 180.0))
    if angle == 0:
        table.add_fault("angle", f"fold {number} is not folded at all", "give an angle from -180 to 180, not 0")
    compensation = table.number("compensation", _FOLD.compensation, Bounds(0.0, 1.2))
    relief = table.length("relief", _FOLD.relief)
    core = _core(table)
    if core:
        return FoldSpec(angle, compensation, relief, _core_thickness(core, scope), core)
    return FoldSpec(angle, compensation, relief, table.length("around", _FOLD.around))


def _core(table: Entries) -> str:
    """The content a fold goes round, if ``around`` names one and not a thickness."""
    scalar = table.scalar("around")
    contents = table.scope.names_of(Kind.CONTENT)
    if scalar is None or scalar.text.strip() not in contents:
        return ""
    return table.use("around", Kind.CONTENT)


def _core_thickness(core: str, scope: Scope) -> float:
    size = scope.values.get(f"{core}.thickness")
    return math.nan if size is None else size.number


def _fold_count_holds(table: Entries, panels: int, folds: int) -> bool:
    if not 0 < panels <= _MOST_PANELS or table.is_refused("folds"):
        return False
    if folds == panels - 1:
        return True
    key = "folds" if "folds" in table.nodes else "panels"
    what = f"{counted(panels, 'panel')} and {counted(folds, 'fold')} do not go together"
    table.add_fault(key, what, f"give {counted(panels - 1, 'fold')}, one between each two panels")
    return False


def _closing(table: Entries, folds: int) -> tuple[int, ...]:
    every = tuple(range(1, folds + 1))
    if "closing" not in table.nodes:
        return every
    scalars = table.scalars("closing")
    before = len(table.scope.faults.found)
    order = tuple(count_of(scalar, "a fold in 'closing'", table.scope, ANY) for scalar in scalars)
    is_sound = len(table.scope.faults.found) == before and not table.is_refused("closing")
    if is_sound and tuple(sorted(order)) != every:
        said = ", ".join(str(number) for number in order)
        wanted = ", ".join(str(number) for number in every)
        table.add_fault("closing", f"'closing' names the folds [{said}]", f"name each of [{wanted}] once")
    return order


def load_share(node: Node | None, scope: Scope) -> Load:
    """How full the wallet is when it closes true; full if nothing is said."""
    if node is None:
        return _FULL
    if isinstance(node, Scalar) and not node.is_blank and ":" not in node.text:
        if node.text not in ("full", "empty"):
            scope.faults.add(node.at, f"'load' cannot be '{node.text[:40]}'", _load_advice(node.text))
        return Load(0.0, 0.0, 0.0) if node.text == "empty" else _FULL
    table = entries(node, LoadForm, "'load'", scope)
    return Load(*(table.number(key, getattr(_FULL, key), _SHARE) for key in ("cards", "notes", "loose")))


def _load_advice(text: str) -> str:
    """What to write in place of a load that is no word: a share of 0 to 1, also for one in per cent."""
    share = _PER_CENT.fullmatch(text.strip())
    if share and float(share.group(1)) <= 100:
        part = f"{float(share.group(1)) / 100:g}"
        return f"write shares from 0 to 1: {{cards: {part}, notes: {part}}}"
    return f"{word_advice(text, ('full', 'empty'))} or give shares {{cards: 0.5}}"
