"""The page of the wallet folded as headless Chromium runs it, cut off from every network."""

from __future__ import annotations

import json
import subprocess
from html import unescape
from itertools import pairwise
from math import dist
from pathlib import Path
from typing import Any

import pytest

from patternforge.fit.posed.pose import pose
from patternforge.viewer.wallet import wallet_page
from tests.outside.chromium_reading import CHROMIUM
from tests.posed_wallets import corners, model, pattern

SHARES = (0.0, 0.21, 0.5, 0.83, 1.0)
BLENDED = 0.02  # mm that a place may stray between the moments that come with the page

# Stands in for a hand: turns, nears, closes, hides and points, and tells what became of the picture.
_HAND = """
const told = {errors: [], asked: 0};
addEventListener('error', (event) => told.errors.push(String(event.message)));
addEventListener('unhandledrejection', (event) => told.errors.push(String(event.reason)));
"""
_HANDLING = """
const canvas = document.querySelector('canvas'), slider = document.querySelector('input[type=range]');
const rest = () => new Promise((done) => setTimeout(done, 400));
const picture = () => {
  const dots = new Uint32Array(canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height).data.buffer);
  let sum = 0, inked = 0;
  for (const dot of dots) { sum = (Math.imul(sum, 31) + dot) | 0; if (dot !== 0xffffffff) inked++; }
  return {sum, inked: inked / dots.length};
};
const box = canvas.getBoundingClientRect(), x = box.left + box.width / 2, y = box.top + box.height / 2;
const pointer = (kind, dx, dy, id = 1) => canvas.dispatchEvent(
  new PointerEvent(kind, {pointerId: id, clientX: x + dx, clientY: y + dy, bubbles: true, pointerType: 'mouse'}));
const acts = {
  began: () => {},
  dragged: () => { pointer('pointerdown', 0, 0); pointer('pointermove', 60, 25); pointer('pointerup', 60, 25); },
  closed: () => { slider.value = 1000; slider.dispatchEvent(new Event('input')); },
  opened: () => canvas.dispatchEvent(new KeyboardEvent('keydown', {key: 'Home'})),
  keyed: () => canvas.dispatchEvent(new KeyboardEvent('keydown', {key: 'ArrowLeft'})),
  wheeled: () => canvas.dispatchEvent(new WheelEvent('wheel', {deltaY: -300, cancelable: true})),
  pinched: () => {
    pointer('pointerdown', -40, 0, 1); pointer('pointerdown', 40, 0, 2); pointer('pointermove', 20, 0, 2);
    pointer('pointerup', 20, 0, 2); pointer('pointerup', -40, 0, 1);
  },
  hidden: () => document.querySelector('input[data-body]').click(),
  shown: () => document.querySelector('input[data-body]').click(),
  outside: () => document.querySelectorAll('button')[2].click(),
};
(async () => {
  told.pictures = {};
  for (const [name, act] of Object.entries(acts)) { act(); await rest(); told.pictures[name] = picture(); }
  pointer('pointermove', 0, 0);
  told.pointed = document.getElementById('pointed').textContent;
  told.told = document.getElementById('told').textContent;
  told.still = getComputedStyle(document.querySelector('.still')).display;
  told.places = SHARES.map((share) => standing(share).map((place) => place.map((v) => Math.round(v * 1000) / 1000)));
  told.asked = performance.getEntriesByType('resource').length;
  const seen = document.createElement('pre');
  seen.id = 'seen';
  seen.textContent = JSON.stringify(told);
  document.body.append(seen);
})();
"""


def handled(name: str, folder: Path) -> tuple[dict[str, Any], str]:
    """What became of the page of a ready design in hand, and all that the browser logged of it."""
    text = wallet_page(pattern(name)).decode("utf-8")
    text = text.replace("<head>", f"<head><script>{_HAND}</script>", 1)
    text = text.replace("</body>", f"<script>const SHARES = {list(SHARES)};{_HANDLING}</script></body>", 1)
    page = folder / "page.html"
    page.write_text(text, encoding="utf-8")
    flags = ["--headless", "--no-sandbox", "--disable-gpu", "--window-size=500,420", "--virtual-time-budget=20000"]
    shut = [
        "--host-resolver-rules=MAP * ~NOTFOUND",
        "--enable-logging=stderr",
        f"--user-data-dir={folder / 'profile'}",
    ]
    command = [str(CHROMIUM), *flags, *shut, "--dump-dom", page.as_uri()]
    done = subprocess.run(command, capture_output=True, check=True, timeout=180)
    dom = done.stdout.decode("utf-8")
    start = dom.index('<pre id="seen">') + len('<pre id="seen">')
    return json.loads(unescape(dom[start : dom.index("</pre>", start)])), done.stderr.decode("utf-8", "replace")


@pytest.mark.skipif(CHROMIUM is None, reason="no Chromium on this machine: the page is not tried in a browser")
@pytest.mark.parametrize("name", ["three-fold", "one-piece-card-wallet"])
def test_the_page_turns_closes_and_asks_for_nothing(name: str, tmp_path: Path) -> None:
    told, log = handled(name, tmp_path)
    assert told["errors"] == []
    assert "CONSOLE" not in log
    assert told["asked"] == 0
    assert told["still"] == "none"
    pictures = told["pictures"]
    assert all(0.02 < picture["inked"] < 0.95 for picture in pictures.values())
    order = ["began", "dragged", "closed", "opened", "keyed", "wheeled", "pinched", "hidden", "shown", "outside"]
    sums = [pictures[act]["sum"] for act in order]
    assert all(one != other for one, other in pairwise(sums))
    assert pictures["shown"] == pictures["pinched"]
    assert told["pointed"] in [body.name for body in model(name).bodies]
    assert told["told"] == "laid open"
    for share, places in zip(SHARES, told["places"], strict=True):
        wanted = list(corners(model(name), pose(model(name), share)))
        assert len(places) == len(wanted)
        assert max(dist(one, other) for one, other in zip(places, wanted, strict=True)) < BLENDED
