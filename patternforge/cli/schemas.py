"""The schemas of the project's own files as text."""

from __future__ import annotations

import json

from patternforge.cli.choices import SchemaName

__all__ = ["schema_text"]


def schema_text(of: SchemaName) -> str:
    """The JSON Schema (draft 2020-12) of design files or of ``pattern.json``, in ASCII, a line feed at its end."""
    if of is SchemaName.DESIGN:
        from patternforge.design.schema import design_schema as wanted
    else:
        from patternforge.drafting.schema import pattern_schema as wanted
    return json.dumps(wanted(), indent=2, ensure_ascii=True) + "\n"
