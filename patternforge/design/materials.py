"""Leathers, contents and parameters: what a design declares by name, read in this order."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from dataclasses import replace
from enum import StrEnum

from patternforge.design.arithmetic import LOST, Value, as_length, as_number, evaluated, names_in
from patternforge.design.entries import Entries, entries
from patternforge.design.forms import ContentForm, LeatherForm, ParameterForm
from patternforge.design.located import Node, Scalar
from patternforge.design.scope import Scope
from patternforge.design.values import ANY, NOT_NEGATIVE, POSITIVE, Bounds, number_of, text_of
from patternforge.design.words import word_advice
from patternforge.leather.contents import OWN_SIZES, Item, Section
from patternforge.leather.material import Leather, MadeOf, Stretch, SurfaceFace, Tannage, Thickness
from patternforge.units import RANGE, MeasureError, thickness
from patternforge.wallet.spec import Content, Parameter

__all__ = ["contents", "leathers", "parameters"]

_Named = tuple[tuple[Scalar, Node], ...]
_LEATHER = Leather("", Thickness(1.0, 1.0))
_SHARE = Bounds(0.0, 1.0)
_CURRENCY = re.compile(r"[\d.,]+\s*(?:[A-Z]{3}|[$€£¥])|(?:[A-Z]{3}|[$€£¥])\s*[\d.,]+", re.ASCII)
_NUMERAL = re.compile(r"\d+(?:\.\d+)?", re.ASCII)
_OF_LEATHER = ("tannage", "face")
_HIDE = Bounds(0.0, 20.0, has_low=False)


class _PriceArea(StrEnum):
    FT2 = "ft2"
    DM2 = "dm2"
    M2 = "m2"


def leathers(named: _Named, scope: Scope) -> tuple[Leather, ...]:
    """The leathers declared, thickness ranges as written; their middle becomes known to arithmetic."""
    return tuple(_leather(key, node, scope) for key, node in named)


def _leather(key: Scalar, node: Node, scope: Scope) -> Leather:
    table = entries(node, LeatherForm, f"leather '{key.text}'", scope)
    measured = _thickness(table)
    scope.set_sizes(key.text, thickness=measured.drafted)
    tolerance = table.length("tolerance", _LEATHER.tolerance)
    if tolerance >= measured.low:
        table.add_fault("tolerance", f"{table.what} may be as thin as {measured.low - tolerance:g} mm", "lower it")
    made_of = _made_of(table)
    return Leather(
        role=key.text,
        thickness=measured,
        name=table.text("name"),
        tolerance=tolerance,
        neutral=table.number("neutral", _LEATHER.neutral, _SHARE),
        min_radius=table.number("min_radius", _LEATHER.min_radius, Bounds(0.0, 20.0)),
        tannage=table.choice("tannage", Tannage, _LEATHER.tannage),
        face=table.choice("face", SurfaceFace, _LEATHER.face),
        stretch=table.choice("stretch", Stretch, _LEATHER.stretch),
        price=_price(table),
        price_area=table.choice("price_area", _PriceArea, _PriceArea.FT2).value,
        made_of=made_of,
    )


def _price(table: Entries) -> float | None:
    scalar = table.scalar("price")
    if scalar is None:
        return None
    if _CURRENCY.fullmatch(scalar.text.strip()):
        what = f"'price' of {table.what} is '{scalar.text.strip()[:40]}'"
        table.add_fault("price", what, "write the number alone, without a currency")
        return None
    return table.number("price", bounds=Bounds(0.0, 1e6))


def _made_of(table: Entries) -> MadeOf:
    """What the sheet is made of; a fault for every key that says something only leather has."""
    made_of = table.choice("made_of", MadeOf, _LEATHER.made_of)
    for key in _OF_LEATHER if made_of is not MadeOf.LEATHER else ():
        if key in table.nodes:
            table.add_fault(key, f"{table.what} is made of {made_of} and has no '{key}'", "leave it out")
    return made_of


def _thickness(table: Entries) -> Thickness:
    scalar = table.scalar("thickness")
    if scalar is None or not RANGE.fullmatch(scalar.text.strip()):
        value = table.length("thickness", bounds=_HIDE)
        if scalar is not None and scalar.at.setting and _NUMERAL.fullmatch(scalar.text.strip()):
            what = f"'{scalar.text.strip()}' says no unit for {table.what}"
            table.add_fault("thickness", what, f"say '{scalar.text.strip()} mm' or '{scalar.text.strip()} oz'")
        return Thickness(value, value)
    try:
        low, high = thickness(scalar.text)
    except MeasureError as error:
        table.scope.faults.add_measure(scalar.at, f"'thickness' of {table.what}", error)
        return Thickness(math.nan, math.nan)
    fault = _HIDE.fault(low, " mm") or _HIDE.fault(high, " mm")
    if fault:
        table.add_fault("thickness", f"'thickness' of {table.what} runs from {low:g} mm to {high:g} mm", fault)
        return Thickness(math.nan, math.nan)
    return Thickness(low, high)


def contents(named: _Named, scope: Scope, items: Mapping[str, Item]) -> tuple[Content, ...]:
    """The contents declared, from the catalogue ``items`` or with sizes of their own, which become known."""
    return tuple(_content(key, node, scope, items) for key, node in named)


def _content(key: Scalar, node: Node, scope: Scope, items: Mapping[str, Item]) -> Content:
    what = f"content '{key.text}'"
    if isinstance(node, Scalar) and not node.is_blank and ":" not in node.text:
        item = _catalogued(node, what, scope, items)
    else:
        item = _described(entries(node, ContentForm, what, scope), key.text, items)
    scope.set_sizes(key.text, length=item.length, height=item.height, thickness=item.thickness)
    return Content(key.text, item)


_LOST_ITEM = Item("", math.nan, math.nan, math.nan)


def _catalogued(scalar: Scalar, what: str, scope: Scope, items: Mapping[str, Item]) -> Item:
    name = text_of(scalar, f"the item of {what}", scope)
    if name and name not in items:
        scope.faults.add(scalar.at, f"the catalogue has no item '{name[:40]}'", word_advice(name, items))
    return items.get(name, _LOST_ITEM)


def _described(table: Entries, name: str, items: Mapping[str, Item]) -> Item:
    scalar = table.scalar("item")
    bounds = {"length": POSITIVE, "height": POSITIVE, "thickness": POSITIVE, "corner_radius": NOT_NEGATIVE}
    sizes = {size: table.length(size, bounds=lawful) for size, lawful in bounds.items() if size in table.nodes}
    if scalar is not None:
        base = _catalogued(scalar, table.what, table.scope, items)
    else:
        base = replace(_LOST_ITEM, name=name, source=OWN_SIZES)
        _refuse_missing_sizes(table)
    changed = ", ".join(size.replace("_", " ") for size in sizes)
    source = f"{base.source}, but {changed} from the design" if scalar and changed else base.source
    item = Item(
        name=base.name,
        length=sizes.get("length", base.length),
        height=sizes.get("height", base.height),
        thickness=sizes.get("thickness", base.thickness),
        corner_radius=sizes.get("corner_radius", base.corner_radius),
        title=base.title,
        source=source,
        section=table.choice("section", Section, base.section),
    )
    _refuse_impossible_outline(table, item)
    oval = abs(item.height - item.thickness) > 0  # not so of a size that was refused already
    if item.section is Section.ROUND and oval:
        what = f"{table.what} is round, {item.height:g} mm high and {item.thickness:g} mm thick"
        table.add_fault("section", what, "a round item is as thick as it is high")
    return item


def _refuse_missing_sizes(table: Entries) -> None:
    missing = [size for size in ("length", "height", "thickness") if size not in table.nodes]
    if missing and "item" not in table.nodes:
        what = f"{table.what} has no {' and no '.join(missing)}"
        table.scope.faults.add(table.at, what, "give all three sizes, or an 'item' of the catalogue")
        table.scope.leave_open()


def _refuse_impossible_outline(table: Entries, item: Item) -> None:
    if item.length < item.height:
        key = "length" if "length" in table.nodes else "height"
        what = f"{table.what} is {item.length:g} mm long and {item.height:g} mm high"
        table.add_fault(key, what, "length is the longer side: exchange them")
    elif item.corner_radius > item.height / 2:
        what = f"a corner radius of {item.corner_radius:g} mm does not fit {table.what}"
        table.add_fault("corner_radius", what, f"it must be at most {item.height / 2:g} mm")


def parameters(named: _Named, scope: Scope) -> tuple[Parameter, ...]:
    """The parameters declared, each checked against its range; each may use those above it."""
    return tuple(_parameter(key, node, scope) for key, node in named)


def _parameter(key: Scalar, node: Node, scope: Scope) -> Parameter:
    what = f"parameter '{key.text}'"
    table = entries(node, ParameterForm, what, scope)
    value = _value(table)
    scope.values[key.text] = value
    unit = "mm" if value.power else ""
    if _lacks_unit(table, value):
        table.add_fault("value", f"{what} has no unit, but its range has one", f"write '{value.number:g} mm'")
        scope.values[key.text] = LOST
        return Parameter(key.text, math.nan, "mm")
    low, high = _limit(table, "from", value), _limit(table, "to", value)
    if low is not None and high is not None and low > high:
        table.add_fault("to", f"'to' of {what} is below its 'from' of {low:g} {unit}".rstrip(), "exchange them")
    else:
        scope.values[key.text] = _inside(table, value, low, high)
    return Parameter(key.text, value.number, unit, low, high, table.text("meaning"))


def _value(table: Entries) -> Value:
    scalar = table.scalar("value")
    if scalar is None:
        return LOST
    try:
        value = _in_declared_unit(scalar, evaluated(scalar.text, table.scope.value_of), table.scope)
    except MeasureError as error:
        table.scope.mentioned(names_in(scalar.text))
        table.scope.faults.add_measure(scalar.at, table.what, error)
        return LOST
    if value.power not in (0, 1):
        table.add_fault("value", f"{table.what} is neither a length nor a plain number", "check the factors")
        return LOST
    fault = ANY.fault(value.number, "")
    if fault:
        table.add_fault("value", f"{table.what} is {value.number:g}", fault)
        return LOST
    return replace(value, bare=value.is_lost)


def _in_declared_unit(scalar: Scalar, value: Value, scope: Scope) -> Value:
    """A setting means what the file means: a numeral set for a length is mm, a length set for a count is refused."""
    if not scalar.replaced or value.is_lost:
        return value
    declared = evaluated(scalar.replaced, scope.value_of)
    if declared.power == 1:
        return Value(as_length(value), 1)
    return Value(as_number(value)) if declared.power == 0 else value


def _lacks_unit(table: Entries, value: Value) -> bool:
    """Whether a plain number stands between limits that are lengths."""
    scalar = table.scalar("value")
    limits = [each for key in ("from", "to") if (each := table.scalar(key)) is not None]
    if scalar is None or value.power or value.is_lost or not limits or not _NUMERAL.fullmatch(scalar.text.strip()):
        return False
    try:
        return all(evaluated(each.text, table.scope.value_of).power == 1 for each in limits)
    except MeasureError:
        return False


def _limit(table: Entries, key: str, value: Value) -> float | None:
    scalar = table.scalar(key)
    if scalar is None:
        return None
    meaning = as_length if value.power else as_number
    if value.is_lost:
        return math.nan
    return number_of(scalar, f"'{key}' of {table.what}", table.scope, meaning, ANY)


def _inside(table: Entries, value: Value, low: float | None, high: float | None) -> Value:
    """The value if it is within its range; else a fault and a lost one, which nothing else is blamed for."""
    unit = " mm" if value.power else ""
    said = f"{table.what} is {value.number:g}{unit}"
    if low is not None and value.number < low:
        table.add_fault("value", said, f"it must be at least {low:g}{unit}")
    elif high is not None and value.number > high:
        table.add_fault("value", said, f"it must be at most {high:g}{unit}")
    else:
        return value
    return LOST
