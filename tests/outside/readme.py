"""The README taken apart: fenced blocks in order, tables, prose, links."""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path

__all__ = ["README", "ROOT", "Block", "blocks", "links", "prose", "table"]

ROOT = Path(__file__).parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")

_FENCED = re.compile(r"^```(\w+)\n(.*?)^```$", re.MULTILINE | re.DOTALL)
_LINK = re.compile(r"(!?)\[([^]]*)\]\(([^)]+)\)")


@dataclass(frozen=True, slots=True)
class Block:
    """A fenced block: its kind and its lines."""

    kind: str
    lines: tuple[str, ...]


def blocks() -> list[Block]:
    """All fenced blocks in order."""
    return [Block(kind, tuple(text.splitlines())) for kind, text in _FENCED.findall(README)]


def links() -> list[tuple[bool, str]]:
    """Every link: whether it is a picture, and where it leads."""
    return [(mark == "!", target) for mark, _, target in _LINK.findall(README)]


def table(heading: str) -> list[tuple[str, ...]]:
    """The rows of the table below a heading, without its head."""
    return [tuple(cell.strip() for cell in row.strip("|").split("|")) for row in _table_lines(heading)[2:]]


def prose(without_table: str) -> str:
    """What is left without fenced blocks, words in backquotes, where links lead, and the table below that heading."""
    text = README
    for line in _table_lines(without_table):
        text = text.replace(f"{line}\n", "")
    return re.sub(r"`[^`]*`", "", _LINK.sub(r"\2", _FENCED.sub("", text)))


def _table_lines(heading: str) -> list[str]:
    section = README.partition(f"## {heading}\n")[2].partition("\n## ")[0]
    return [line for line in section.splitlines() if line.startswith("|")]
