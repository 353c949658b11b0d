"""Which sizes a word asks for: by the whole name, by the name without the word for its kind, or by its beginning."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

__all__ = ["asked_for"]


def asked_for(word: str, names: Mapping[str, str]) -> tuple[str, ...]:
    """The names called, of ``names`` (called to whole), that a word means; none if it means none of them.

    A name said in full means itself alone; capitals and blanks do not matter.

    >>> names = {"left.width": "panel left.width", "panel back.width": "panel back.width", "back.x0": "panel back.x0"}
    >>> asked_for("Left.width", names), asked_for("back.width", names), asked_for("back", names)
    (('left.width',), ('panel back.width',), ('panel back.width', 'back.x0'))
    """
    wanted = _plain(word)
    for means in (_is_said, _is_said_without_kind, _begins_so):
        found = tuple(called for called, whole in names.items() if means(wanted, _plain(called), _plain(whole)))
        if found:
            return found
    return ()


def _plain(word: str) -> str:
    return " ".join(word.casefold().split())


def _is_said(wanted: str, called: str, whole: str) -> bool:
    return wanted in (called, whole)


def _without_kind(name: str) -> str:
    return name.partition(" ")[2]


def _is_said_without_kind(wanted: str, _called: str, whole: str) -> bool:
    return wanted == _without_kind(whole)


def _begins_so(wanted: str, called: str, whole: str) -> bool:
    starts: Iterable[str] = (called, whole, _without_kind(whole))
    return any(name.startswith(wanted) for name in starts)
