"""The floor: a bare script that writes recorded entities with the libraries of the program and does nothing else.

``python floor.py RECORD FOLDER``. It knows no wallet and draws nothing up. It is given the plain numbers that
``tests.bench.record`` read from files of the program; it writes as many files, with the same entities in them.
"""

from __future__ import annotations

import io
import json
import marshal
import sys
from importlib import import_module
from pathlib import Path
from typing import Any


def dxf(content: Any) -> bytes:
    """Polylines with bulges, circles and lines on their layers, in order."""
    from ezdxf.filemanagement import new

    document = new(content["version"])
    for name, colour in content["layers"]:
        document.layers.add(name, color=colour)
    space = document.modelspace()
    for kind, layer, first, second in content["entities"]:
        attributes = {"layer": layer}
        if kind == "CIRCLE":
            space.add_circle(first, second, dxfattribs=attributes)
        elif kind == "LINE":
            space.add_line(first, second, dxfattribs=attributes)
        else:
            space.add_lwpolyline(first, format="xyb", close=second, dxfattribs=attributes)
    stream = io.StringIO()
    document.write(stream)
    return document.encode(stream.getvalue())


def svg(content: Any) -> bytes:
    """Groups of paths, circles and texts."""
    from svgwrite import Drawing

    drawing = Drawing(debug=False, **content["looks"])
    for child in content["children"]:
        drawing.add(svg_element(drawing, child))
    stream = io.StringIO()
    drawing.write(stream)
    return stream.getvalue().encode("utf-8")


def svg_element(drawing: Any, element: Any) -> Any:
    kind, looks, children = element
    if kind == "path":
        return drawing.path(d=children)
    if kind == "circle":
        return drawing.circle(center=children[0], r=children[1])
    if kind == "text":
        return drawing.text(children, **looks)
    group = drawing.g(**looks)
    for child in children:
        group.add(svg_element(drawing, child))
    return group


def pdf(content: Any) -> bytes:
    """Pages with their operators, on layers."""
    import pikepdf
    from pikepdf import Array, Dictionary, Name, String

    document = pikepdf.new()
    layers = {
        name: document.make_indirect(Dictionary(Type=Name.OCG, Name=String(name))) for name in content["layers"]
    }
    font = Dictionary(Type=Name.Font, Subtype=Name.Type1, BaseFont=Name.Courier, Encoding=Name.WinAnsiEncoding)
    resources = document.make_indirect(Dictionary(Font=Dictionary(F1=font), Properties=Dictionary(layers)))
    for box, operators in content["pages"]:
        stream = document.make_stream(operators)
        page = Dictionary(Type=Name.Page, MediaBox=Array(box), Resources=resources, Contents=stream)
        document.pages.append(pikepdf.Page(document.make_indirect(page)))
    all_layers = Array(list(layers.values()))
    document.Root.OCProperties = Dictionary(OCGs=all_layers, D=Dictionary(ON=all_layers, Order=all_layers))
    out = io.BytesIO()
    document.save(out, deterministic_id=True, object_stream_mode=pikepdf.ObjectStreamMode.disable)
    return out.getvalue()


def text(content: Any) -> bytes:
    """Text as it is."""
    return str(content).encode("utf-8")


def plain(content: Any) -> bytes:
    """Plain data as JSON."""
    return json.dumps(content, indent=1).encode("utf-8")


WRITERS = {".dxf": dxf, ".svg": svg, ".pdf": pdf, ".json": plain, ".txt": text}


def main(record: str, folder: str) -> None:
    """Imports the recorded libraries and writes every recorded file below ``folder``."""
    content = marshal.loads(Path(record).read_bytes())
    for library in content["libraries"]:
        import_module(library)
    for name, drawn in content["files"]:
        path = Path(folder, name)
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(WRITERS[path.suffix](drawn))


if __name__ == "__main__":
    main(*sys.argv[1:])
