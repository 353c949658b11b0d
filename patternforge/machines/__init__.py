"""Machine tables: what a cutter reads and how, so that a file need not be cleaned up before it is cut."""

from patternforge.machines.load import load_machine
from patternforge.machines.table import Machine

__all__ = ["Machine", "load_machine"]
