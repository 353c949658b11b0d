"""What is said once the views of a wallet are drawn."""

from __future__ import annotations

from collections.abc import Iterator
from textwrap import wrap
from typing import TYPE_CHECKING

from patternforge.cli.lines import WIDTH
from patternforge.fit.order import SewingOrder
from patternforge.pipeline.views import Views

if TYPE_CHECKING:
    from patternforge.drafting.assembly_sheet import StepSheet

__all__ = ["views_report"]

_PICTURES = (".svg", ".pdf", ".html")
_OPENED = {".html": "  (open it in a browser: turn the wallet, and close it with the slider)"}


def views_report(done: Views) -> list[str]:
    """The files written, the steps of making the wallet, and the order of sewing."""
    return [
        f"{done.wallet.pattern.design.title}: look at it in {done.delivery.folder}",
        *(f"  {name}{_OPENED.get(name[-5:], '')}" for name in done.delivery.written if name.endswith(_PICTURES)),
        "",
        "Make it up in these steps",
        *(line for step in done.steps for line in _step(step)),
        *(["", "Sew in this order", *_order(done.order)] if done.order.steps else ()),
    ]


def _step(step: StepSheet) -> list[str]:
    return _numbered(step.number, step.words)


def _order(order: SewingOrder) -> Iterator[str]:
    for number, step in enumerate(order.steps, start=1):
        yield from _numbered(number, step.seam)
    for blocked in order.blocked:
        yield f"      {blocked.seam} cannot be sewn: {blocked.piece} covers it"


def _numbered(number: int, words: str) -> list[str]:
    return wrap(words, WIDTH, initial_indent=f"  {number:2d}. ", subsequent_indent="      ")
