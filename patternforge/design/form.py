"""What every table of a design file is described with, and the questions asked of such a description."""

from __future__ import annotations

from typing import Annotated, Any

from pydantic import BaseModel, ConfigDict, Field, WithJsonSchema

__all__ = [
    "Count",
    "Form",
    "Length",
    "Number",
    "Pitch",
    "Text",
    "keys_of",
    "optional",
    "required",
    "required_keys",
]


def _written(*types: str, **rest: object) -> WithJsonSchema:
    return WithJsonSchema({"type": list(types), **rest})


Text = Annotated[str, _written("string", "number")]
Length = Annotated[float, _written("number", "string", maxLength=200)]
Number = Annotated[float, _written("number", "string", maxLength=200)]
Count = Annotated[int, _written("integer", "string", maxLength=200)]
Pitch = Annotated[float, _written("string", maxLength=200)]


class Form(BaseModel):
    """A table of the design file; unknown keys are refused."""

    # The loader only reads the fields: what validates by them is built for the JSON Schema alone.
    model_config = ConfigDict(extra="forbid", defer_build=True)


def required(description: str, **rest: Any) -> Any:
    """A key that must be there, with one line of meaning."""
    return Field(description=description, **rest)


def optional(description: str, default: object = None, **rest: Any) -> Any:
    """A key that may be left out, with one line of meaning."""
    return Field(default=default, description=description, **rest)


def keys_of(form: type[Form]) -> dict[str, str]:
    """The lawful keys of a table with their one line of meaning, in the order of the form.

    >>> class Notch(Form):
    ...     width: Length = required("along the mouth")
    ...     depth: Length = optional("at most half the width", 3)
    >>> keys_of(Notch)
    {'width': 'along the mouth', 'depth': 'at most half the width'}
    """
    return {field.alias or name: field.description or "" for name, field in form.model_fields.items()}


def required_keys(form: type[Form]) -> tuple[str, ...]:
    """The keys a table must have.

    >>> class Notch(Form):
    ...     width: Length = required("along the mouth")
    ...     depth: Length = optional("at most half the width", 3)
    >>> required_keys(Notch)
    ('width',)
    """
    return tuple(field.alias or name for name, field in form.model_fields.items() if field.is_required())
