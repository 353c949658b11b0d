"""JSON Schema of the price list."""

from __future__ import annotations

from typing import Any

from patternforge.design.schema import form_schema
from patternforge.prices.forms import PriceListForm

__all__ = ["prices_schema"]


def prices_schema() -> dict[str, Any]:
    """JSON Schema (draft 2020-12) of the price list, for editors that complete and check while typing.

    >>> prices_schema()["required"]
    ['prices', 'currency']
    """
    return form_schema(PriceListForm)
