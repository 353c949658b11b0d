"""The schemas of the project's own files as text."""

from __future__ import annotations

import json

from patternforge.cli.choices import SchemaName

__all__ = ["schema_text"]


def schema_text(of: SchemaName) -> str:
    """The JSON Schema (draft 2020-12) of a kind of file the project reads or writes; ASCII, a line feed last."""
    if of is SchemaName.DESIGN:
        from patternforge.design.schema import design_schema as wanted
    elif of is SchemaName.MACHINE:
        from patternforge.machines.schema import machine_schema as wanted
    elif of is SchemaName.PRICES:
        from patternforge.prices.schema import prices_schema as wanted
    else:
        from patternforge.drafting.schema import pattern_schema as wanted
    return json.dumps(wanted(), indent=2, ensure_ascii=True) + "\n"
