"""The page of a posed wallet: data, script and looks in one file, and a still picture where no script runs."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from html import escape
from importlib.resources import files

from patternforge.fit.posed.model import Body, Model
from patternforge.viewer.data import wallet_text
from patternforge.viewer.still import still_svg
from patternforge.viewer.tones import Tone, leather_tones

__all__ = ["LeatherWords", "PageWords", "folded_page"]

_LOOK = (-0.35, 0.0, -0.95)  # radians about z, y and x
_QUARTER = math.pi / 2
_OPENED = 0.3  # of the first fold's way, where the page begins


@dataclass(frozen=True, slots=True)
class LeatherWords:
    """A leather: the role that bodies name, and what the page says of it."""

    role: str
    words: str


@dataclass(frozen=True, slots=True)
class PageWords:
    """What the page says besides its pictures: a title, sentences about the wallet, its leathers."""

    title: str
    sentences: tuple[str, ...]
    leathers: tuple[LeatherWords, ...]


def folded_page(model: Model, words: PageWords) -> bytes:
    """The page as HTML in UTF-8: it asks nothing of a network, and the same wallet gives the same bytes."""
    tones = leather_tones([leather.role for leather in words.leathers])
    share = _OPENED / model.steps if model.steps else 0.0
    data = wallet_text(model, tones, _LOOK, share)
    title, sentences = escape(words.title), "".join(f"<p>{escape(each)}</p>\n" for each in words.sentences)
    page = f"""<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>{title}: folded</title>
<style>
{_text("folded.css")}</style>
</head>
<body>
<h1>{title}</h1>
{sentences}<div class="still">
{still_svg(model, tones, _LOOK, share)}
<p>This is a still picture. With JavaScript switched on, the wallet can be turned and closed here.</p>
</div>
<div class="shown">
<div>
<canvas id="view" tabindex="0" role="img" aria-label="The wallet, to be turned and closed"></canvas>
{_controls(model, share)}
<p id="pointed" aria-live="polite"></p>
<p><small>Drag to turn, wheel or two fingers to come nearer. Keys on the picture: arrows turn, + and - come nearer,
Page Up opens, Page Down closes. Point at a part to read its name.</small></p>
</div>
<div>
{"".join(_legends(model.bodies, words.leathers, tones))}</div>
</div>
<script type="application/json" id="wallet">{data}</script>
<script>
{_text("folded.js")}</script>
</body>
</html>
"""
    return page.encode("utf-8")


def _text(name: str) -> str:
    return (files("patternforge.viewer") / name).read_text(encoding="utf-8")


def _controls(model: Model, share: float) -> str:
    along = (_QUARTER if model.turned else 0.0, 0.0, -_QUARTER)
    folds = len(model.plates) > 1
    edge = "Along the fold" if folds else "From below"
    looks = {"Slanting": _LOOK, "Inside": (0.0, 0.0, 0.0), "Outside": (0.0, math.pi, 0.0), edge: along}
    buttons = "".join(
        f'<button type="button" data-look="{" ".join(f"{v:.4f}" for v in look)}">{name}</button>\n'
        for name, look in looks.items()
    )
    closing = (
        f'<div class="row"{"" if folds else " hidden"}><label for="closing">Open</label>'
        f'<input id="closing" type="range" min="0" max="1000" value="{round(1000 * share)}" '
        f'aria-label="How far closed">'
        f'<span>Closed</span> <output id="told" for="closing"></output></div>\n'
    )
    return f'{closing}<div class="row">\n{buttons}</div>'


def _legends(bodies: Sequence[Body], leathers: Sequence[LeatherWords], tones: dict[str, Tone]) -> Iterator[str]:
    """A tick box for every body, by leather, contents last."""
    for leather in (*leathers, LeatherWords("", "what it holds")):
        rows = [(number, body.name) for number, body in enumerate(bodies) if body.leather == leather.role]
        if rows:
            red, green, blue = tones[leather.role]
            boxes = "".join(
                f'<label><input type="checkbox" checked data-body="{number}"> {escape(name)}</label>\n'
                for number, name in rows
            )
            tone = f'<span class="tone" style="background:rgb({red},{green},{blue})"></span>'
            yield f"<fieldset><legend>{tone}{escape(leather.words)}</legend>\n{boxes}</fieldset>\n"
