"""A size and what it is made of as lines of text, each part indented below what it is a part of."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from textwrap import wrap

from patternforge.cli.lines import WIDTH
from patternforge.reasons.reason import LEAVES, How, Reason
from patternforge.units import mm

__all__ = ["Tree", "value_told"]

_INDENT = "  "
_NOTHING = 1e-9
_SIGNS = {How.PRODUCT: " x ", How.QUOTIENT: " / "}
_CHOICES = {How.LARGEST: "larger", How.SMALLEST: "smaller"}


def value_told(reason: Reason) -> str:
    """The value of a size with its unit.

    >>> value_told(Reason("left.width", 97.384, "mm", How.SUM))
    '97.38 mm'
    """
    if reason.how is How.MEASURED and reason.words:
        return "none"
    unit = {"mm2": " mm2", "degrees": " degrees", "mm": " mm"}.get(reason.unit, "")
    if not unit:
        return f"{reason.value:.6g}"
    return f"{mm(reason.value)}{unit}"


@dataclass(slots=True)
class Tree:
    """Tells reasons; what was told once is not told again, and sources are numbered as they are met."""

    told: set[int] = field(default_factory=set)
    numbers: dict[str, int] = field(default_factory=dict)

    @property
    def sources(self) -> list[str]:
        """Every source met, under its number."""
        lines: list[str] = []
        for source, number in self.numbers.items():
            begin = f"  [{number}] "
            lines += wrap(source, WIDTH, initial_indent=begin, subsequent_indent=" " * len(begin))
        return lines

    def lines(self, reason: Reason, depth: int = 0) -> Iterator[str]:
        """A line for the reason, and one for each of its parts that more is to be said of.

        Of the largest of several only that one is followed further, and of what comes to nothing none.
        """
        chain, last = _chain(reason)
        names = "".join(f" = {part.name}" for part in chain if part.name and part.name != reason.name)
        head = f"{_INDENT * depth}{reason.name or 'together'} = {value_told(reason)}{names}"
        if last.how in LEAVES:
            yield f"{head}{self._leaf(last)}"
        elif depth and abs(last.value) < _NOTHING:
            yield head
        elif id(last) in self.told:
            yield f"{head}, as above"
        else:
            self.told.add(id(last))
            yield f"{head}{self._done(last)}"
            for part in _followed(last):
                yield from self._part(part, depth + 1)

    def _part(self, part: Reason, depth: int) -> Iterator[str]:
        if part.how is How.LESS:
            inner = list(self.lines(part.parts[0], depth))
            yield inner[0].replace(_INDENT * depth, f"{_INDENT * depth}less ", 1)
            yield from inner[1:]
        else:
            yield from self.lines(part, depth)

    def _done(self, reason: Reason) -> str:
        """What is done with the parts: factors on the same line, all else below."""
        if reason.how is How.WRITTEN:
            return f", written '{reason.words}'{self._source(reason)}, with"
        if reason.how in _SIGNS:
            factors = [part for part in reason.parts if not _is_one(part)] or reason.parts[:1]
            told = _SIGNS[reason.how].join(self._factor(part) for part in factors)
            return f" = {told}{f', by{self._source(reason)}' if reason.source else ''}"
        if reason.how in _CHOICES:
            others = ", ".join(f"{part.name} {value_told(part)}" for part in _passed_over(reason))
            return f", {_CHOICES[reason.how]} than {others}: it is"
        return f", {'the sum of' if len(reason.parts) > 1 else 'that is'}{self._source(reason)}"

    def _source(self, reason: Reason) -> str:
        if not reason.source:
            return ""
        return f" [{self.numbers.setdefault(reason.source, len(self.numbers) + 1)}]"

    def _leaf(self, leaf: Reason) -> str:
        return self._source(leaf) or (", measured as drawn" if leaf.how is How.MEASURED else "")

    def _factor(self, part: Reason) -> str:
        chain, last = _chain(part)
        name = next((each.name for each in (part, *chain) if each.name), "")
        value = value_told(part)
        return f"{name} {value}{self._source(last) if last.how in LEAVES else ''}" if name else value


def _chain(reason: Reason) -> tuple[list[Reason], Reason]:
    """The sizes that a size is simply the same as, one after another, and the last of them."""
    chain: list[Reason] = []
    while (only := _only(reason)) is not None:
        reason = only
        chain.append(reason)
    return chain, reason


def _only(reason: Reason) -> Reason | None:
    """The one part that a size is the same as."""
    if reason.how in _CHOICES:
        return None if _passed_over(reason) else _chosen(reason)
    alone = reason.how is How.SUM and len(reason.parts) == 1 and reason.parts[0].how is not How.LESS
    return reason.parts[0] if alone else None


def _passed_over(reason: Reason) -> list[Reason]:
    """The parts that the largest or the smallest is not."""
    return [part for part in reason.parts if abs(part.value - _chosen(reason).value) > _NOTHING]


def _chosen(reason: Reason) -> Reason:
    """The part that the largest or the smallest is."""
    best = max if reason.how is How.LARGEST else min
    return best(reason.parts, key=lambda part: part.value)


def _followed(reason: Reason) -> Sequence[Reason]:
    """The parts that have lines of their own below it."""
    if reason.how in _CHOICES:
        return (_chosen(reason),)
    if reason.how in _SIGNS:
        return [part for part in reason.parts if _chain(part)[1].how not in LEAVES]
    return reason.parts


def _is_one(part: Reason) -> bool:
    """Whether a factor is a plain 1 that nobody chose, or the share of a full load."""
    plain = part.unit == "" and part.value == 1
    return plain and (_chain(part)[1].how is How.DEFAULT or part.name.startswith("load."))
