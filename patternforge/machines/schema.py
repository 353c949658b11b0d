"""JSON Schema of the machine table."""

from __future__ import annotations

from typing import Any

from patternforge.design.schema import form_schema
from patternforge.machines.forms import MachineForm

__all__ = ["machine_schema"]


def machine_schema() -> dict[str, Any]:
    """JSON Schema (draft 2020-12) of the machine table, for editors that complete and check while typing.

    >>> machine_schema()["required"]
    ['machine', 'tool', 'format']
    """
    return form_schema(MachineForm)
