"""JSON Schema of the design file."""

from __future__ import annotations

from typing import Any

from pydantic.json_schema import GenerateJsonSchema, JsonSchemaValue
from pydantic_core import core_schema

from patternforge.design.form import Form
from patternforge.design.forms import DesignForm

__all__ = ["design_schema", "form_schema"]


class _WithoutNull(GenerateJsonSchema):
    """A key that may be left out has no value null: the loader refuses a key without a value."""

    def default_schema(self, schema: core_schema.WithDefaultSchema) -> JsonSchemaValue:
        if schema.get("default", 0) is None:
            return self.generate_inner(schema["schema"])
        return super().default_schema(schema)


def design_schema() -> dict[str, Any]:
    """JSON Schema (draft 2020-12) of the design file, for editors that complete and check while typing.

    >>> design_schema()["required"]
    ['design', 'leathers']
    """
    return form_schema(DesignForm)


def form_schema(form: type[Form]) -> dict[str, Any]:
    """JSON Schema (draft 2020-12) of a file whose top table is described by ``form``."""
    schema = form.model_json_schema(schema_generator=_WithoutNull)
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", **schema}
