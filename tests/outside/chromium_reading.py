"""SVG files as headless Chromium lays them out: true positions on its screen, where an inch has 96 pixels (CSS 2.1).

All files stand in one page, so that the browser starts only once; a script asks it where every shape has come to lie.
"""

from __future__ import annotations

import json
import shutil
import subprocess
from collections.abc import Mapping
from html import unescape
from pathlib import Path
from typing import Any

__all__ = ["CHROMIUM", "chromium_view"]

CHROMIUM = next(
    (path for name in ("chromium", "chromium-browser", "google-chrome") if (path := shutil.which(name))), None
)

_SCRIPT = """
const mm = 25.4 / 96;
const place = (shape) => {
  const box = shape.getBBox(), seat = shape.getScreenCTM(), top = shape.ownerSVGElement.getBoundingClientRect();
  const at = (x, y) => [(seat.a * x + seat.e - top.left) * mm, (top.bottom - seat.d * y - seat.f) * mm];
  return [...at(box.x, box.y + box.height), ...at(box.x + box.width, box.y)];
};
const piece = (group) => ({
  outlines: [...group.querySelectorAll('.outline > *')].map(place),
  holes: [...group.querySelectorAll('.stitch-hole > *, .mark > *')].map(place),
});
const file = (box) => {
  const size = box.querySelector('svg').getBoundingClientRect();
  return {size: [size.width * mm, size.height * mm], pieces: [...box.querySelectorAll('.piece')].map(piece)};
};
document.getElementById('seen').textContent = JSON.stringify([...document.querySelectorAll('div')].map(file));
"""


def chromium_view(files: Mapping[str, str], folder: Path) -> dict[str, Any]:
    """For each named SVG file its size and pieces; of each shape its box x0, y0, x1, y1 (mm, y up)."""
    bodies = "".join(f"<div>{text[text.index('<svg') :]}</div>" for text in files.values())
    page = folder / "seen.html"
    page.write_text(
        f"<!doctype html><meta charset='utf-8'><body>{bodies}<pre id='seen'></pre><script>{_SCRIPT}</script>",
        encoding="utf-8",
    )
    command = [str(CHROMIUM), "--headless", "--no-sandbox", "--disable-gpu", f"--user-data-dir={folder / 'profile'}"]
    done = subprocess.run([*command, "--dump-dom", page.as_uri()], capture_output=True, check=True, timeout=120)
    dom = done.stdout.decode("utf-8")
    start = dom.index('<pre id="seen">') + len('<pre id="seen">')
    return dict(zip(files, json.loads(unescape(dom[start : dom.index("</pre>", start)])), strict=True))
