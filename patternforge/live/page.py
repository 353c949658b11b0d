"""The text of the page: a frame that stays, and what is in it, which is fetched anew at every change."""

from __future__ import annotations

from html import escape

from patternforge.live.shown import Shown, Standing

__all__ = ["SCRIPT", "STYLE", "content_html", "page_html", "picture_path"]

_WORDS = {
    Standing.GOOD: "It fits.",
    Standing.LOOK: "It can be made, but look first.",
    Standing.NO: "It does not fit.",
    Standing.FAULT: "The design cannot be drafted as it is saved now.",
}
_SIGNS = {Standing.GOOD: "\u2713", Standing.LOOK: "?", Standing.NO: "\u2717", Standing.FAULT: "\u2717"}

STYLE = """\
body { margin: 1.5rem; font: 1rem/1.45 serif; color: #221d1a; background: #fff; }
h1 { font-size: 1.4rem; margin: 0 0 .3rem; }
.standing { font-weight: bold; border: 2px solid #221d1a; display: inline-block; padding: .2rem .6rem; }
.fault, .no { border-style: double; border-width: 5px; }
pre { white-space: pre-wrap; font: .85rem/1.4 monospace; }
figure { margin: 1.5rem 0; }
figcaption { font-style: italic; margin-bottom: .4rem; }
img { max-width: 100%; border: 1px solid #bbb; }
.old img { opacity: .45; }
#away { font-weight: bold; }
"""

SCRIPT = """\
const place = document.getElementById("wallet"), away = document.getElementById("away");
const changes = new EventSource("/changes");
changes.onmessage = async () => {
  const answer = await fetch("/wallet");
  place.innerHTML = await answer.text();
  document.title = place.querySelector("h1").textContent;
  away.hidden = true;
};
changes.onopen = () => { away.hidden = true; };
changes.onerror = () => { away.hidden = false; };
"""


def page_html(number: int, shown: Shown) -> str:
    """The whole page with the state of that number in it, so that it can be read without a script as well."""
    return f"""<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<title>{escape(shown.title)}</title>
<link rel="icon" href="data:,">
<link rel="stylesheet" href="/page.css">
</head>
<body>
<p id="away" hidden>The program that draws this page has stopped; what is below may be old.</p>
<main id="wallet">
{content_html(number, shown)}</main>
<script src="/page.js"></script>
</body>
</html>
"""


def content_html(number: int, shown: Shown) -> str:
    """What is inside the frame: title, how it stands in words, what wants the maker's eye, pictures, the report."""
    return (
        f"<h1>{escape(shown.title)}</h1>\n"
        f'<p class="standing {shown.standing.value}">{_SIGNS[shown.standing]} {_WORDS[shown.standing]}</p>\n'
        f"{_told(shown.lines)}{_figures(number, shown)}{_told(shown.report)}"
    )


def _told(lines: tuple[str, ...]) -> str:
    text = "\n".join(lines)
    return f"<pre>{escape(text)}</pre>\n" if lines else ""


def picture_path(number: int, index: int) -> str:
    """The address of a picture; the number of the state keeps a browser from showing an older one.

    >>> picture_path(3, 0)
    '/picture/3/0.svg'
    """
    return f"/picture/{number}/{index}.svg"


def _figures(number: int, shown: Shown) -> str:
    old = shown.standing is Standing.FAULT
    figures = "".join(
        f"<figure><figcaption>{escape(picture.caption)}{', as drafted last' if old else ''}</figcaption>"
        f'<img src="{picture_path(number, index)}" alt="{escape(picture.caption)}"></figure>\n'
        for index, picture in enumerate(shown.pictures)
    )
    return f'<div class="old">\n{figures}</div>\n' if old and figures else figures
