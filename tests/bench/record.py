"""What a run of the program left behind, as plain numbers: the entities of its files and the libraries it loaded."""

from __future__ import annotations

import json
import re
import subprocess
import sys
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import ezdxf.filemanagement
import pikepdf

__all__ = ["recorded", "run_words"]

_NUMBER = re.compile(r"[MLAZ]|-?[0-9.]+")
_LIBRARIES = """
import sys
from importlib.metadata import packages_distributions, requires
from re import match
from patternforge.cli.commands import app
try:
    app(sys.argv[1:])
except SystemExit:
    pass
own = {match("[A-Za-z0-9._-]+", line)[0].lower() for line in requires("patternforge") if "extra ==" not in line}
named = {module: {name.lower() for name in names} for module, names in packages_distributions().items()}
print("\\n" + " ".join(sorted(module for module in sys.modules if named.get(module, set()) & own)))
"""


def run_words(design: Path, wanted: str, out: Path) -> list[str]:
    """The words after ``patternforge`` that draft ``design`` into ``out``."""
    return ["draft", str(design), "--for", wanted, "--out", str(out)]


def recorded(design: Path, wanted: str, out: Path) -> dict[str, Any]:
    """Runs the program once; of ``pyproject.toml``'s libraries those it loaded, and every file it wrote, in order."""
    command = [sys.executable, "-c", _LIBRARIES, *run_words(design, wanted, out)]
    run = subprocess.run(command, check=True, capture_output=True, text=True)
    folder = out / design.stem
    files = sorted(path for path in folder.rglob("*") if path.is_file())
    content = [(path.relative_to(folder).as_posix(), _READERS[path.suffix](path)) for path in files]
    return {"libraries": run.stdout.splitlines()[-1].split(), "files": content}


def _dxf(path: Path) -> dict[str, Any]:
    document = ezdxf.filemanagement.readfile(path)
    layers = [(layer.dxf.name, layer.color) for layer in document.layers if layer.dxf.name not in ("0", "Defpoints")]
    entities = [_entity(entity) for entity in document.modelspace()]
    return {"version": document.dxfversion, "layers": layers, "entities": entities}


def _entity(entity: Any) -> tuple[Any, ...]:
    kind, layer = entity.dxftype(), entity.dxf.layer
    if kind == "CIRCLE":
        return kind, layer, tuple(entity.dxf.center), entity.dxf.radius
    if kind == "LINE":
        return kind, layer, tuple(entity.dxf.start), tuple(entity.dxf.end)
    if kind == "LWPOLYLINE":
        return kind, layer, [tuple(map(float, vertex)) for vertex in entity.get_points("xyb")], entity.closed
    raise ValueError(f"the floor cannot write a {kind}")


def _svg(path: Path) -> dict[str, Any]:
    root = ElementTree.parse(path).getroot()
    looks = {"size": (root.get("width"), root.get("height")), "viewBox": root.get("viewBox")}
    return {"looks": looks, "children": _svg_children(root)}


def _svg_children(parent: ElementTree.Element) -> list[tuple[Any, ...]]:
    drawn = {"g", "path", "circle", "text"}
    return [_svg_element(child) for child in parent if child.tag.rpartition("}")[2] in drawn]


def _svg_element(element: ElementTree.Element) -> tuple[Any, ...]:
    kind = element.tag.rpartition("}")[2]
    look = dict(element.attrib)
    if kind == "path":
        return kind, {}, [_number(word) for word in _NUMBER.findall(look["d"])]
    if kind == "circle":
        return kind, {}, ((float(look["cx"]), float(look["cy"])), float(look["r"]))
    if kind == "text":
        at = (float(look.pop("x")), float(look.pop("y")))
        return kind, {"insert": at} | _keywords(look), element.text or ""
    return kind, _keywords(look), _svg_children(element)


def _keywords(look: dict[str, str]) -> dict[str, str]:
    """Attributes as the library takes them: words that Python has for its own get a stroke at their end."""
    return {"class_" if name == "class" else name.replace("-", "_"): value for name, value in look.items()}


def _number(word: str) -> str | float:
    return word if word.isalpha() else float(word)


def _pdf(path: Path) -> dict[str, Any]:
    with pikepdf.open(path) as document:
        pages: list[Any] = list(document.pages)
        layers = sorted({name for page in pages for name, _ in page.Resources.Properties.items()})
        drawn = [([float(side) for side in page.MediaBox.as_list()], page.Contents.read_bytes()) for page in pages]
    return {"layers": layers, "pages": drawn}


def _json(path: Path) -> Any:
    return json.loads(path.read_text(encoding="utf-8"))


def _text(path: Path) -> str:
    return path.read_text(encoding="utf-8")


_READERS = {".dxf": _dxf, ".svg": _svg, ".pdf": _pdf, ".json": _json, ".txt": _text}
