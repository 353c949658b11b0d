"""Design files: their text becomes a ``Design`` or every located fault at once."""

from patternforge.design.load import load_design
from patternforge.design.schema import design_schema
from patternforge.design.source import decoded

__all__ = ["decoded", "design_schema", "load_design"]
