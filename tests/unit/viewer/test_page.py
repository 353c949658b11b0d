"""The page of the wallet folded: whole in itself, always the same, safe with any title, legible with no script."""

from __future__ import annotations

import json
import re
from dataclasses import replace
from functools import cache
from html.parser import HTMLParser
from itertools import pairwise
from xml.etree import ElementTree

import pytest

from patternforge.fit.posed.pose import pose
from patternforge.viewer.page import LeatherWords, PageWords, folded_page
from patternforge.viewer.tones import leather_tones
from patternforge.viewer.wallet import wallet_page
from tests.posed_wallets import DESIGNS, model, pattern

LARGEST = 1_500_000  # bytes
EVERY = list(DESIGNS)


@cache
def page(name: str) -> str:
    return wallet_page(pattern(name)).decode("utf-8")


def data_text(text: str) -> str:
    found = re.search(r'<script type="application/json" id="wallet">(.*?)</script>', text)
    assert found
    return found[1]


def data(text: str) -> dict[str, list[list[float]]]:
    read: dict[str, list[list[float]]] = json.loads(data_text(text))
    return read


class Elements(HTMLParser):
    """Every start tag with what it is told, and whether all are closed in their order."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.tags: list[tuple[str, dict[str, str | None]]] = []
        self.open: list[str] = []
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, dict(attrs)))
        if tag not in ("meta", "input", "br"):
            self.open.append(tag)

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag


@pytest.mark.parametrize("name", EVERY)
def test_a_page_is_small_and_asks_nothing_of_a_network(name: str) -> None:
    text = page(name)
    assert len(text.encode("utf-8")) < LARGEST
    for word in ("http:", "https:", "//cdn", " src=", " href=", "url(", "import ", "import(", "fetch(", "XMLHttp"):
        assert word not in text
    elements = Elements(text)
    assert elements.open == []
    assert {tag for tag, _ in elements.tags}.isdisjoint({"link", "img", "iframe", "object", "embed", "base"})


@pytest.mark.parametrize("name", ["two-fold", "one-piece-coin-envelope"])
def test_the_same_wallet_gives_the_same_bytes(name: str) -> None:
    assert wallet_page(pattern(name)) == wallet_page(pattern(name))


def test_a_title_or_name_that_looks_like_a_page_is_shown_as_it_is_written() -> None:
    evil = '</script><script>alert("x")</script>&amp;<b'
    found = model("card-sleeve")
    renamed = replace(found, bodies=(replace(found.bodies[0], name=evil), *found.bodies[1:]))
    leathers = tuple(LeatherWords(leather.role, evil) for leather in pattern("card-sleeve").design.leathers)
    text = folded_page(renamed, PageWords(evil, (evil,), leathers)).decode("utf-8")
    assert "<script>alert" not in text
    assert text.count("</script>") == page("card-sleeve").count("</script>")
    assert "<" not in data_text(text)
    written = "&lt;/script&gt;&lt;script&gt;alert(&quot;x&quot;)&lt;/script&gt;&amp;amp;&lt;b"
    assert text.count(written) == 4 + len(leathers)
    assert f'"name":{json.dumps(evil)}' in data_text(text).replace("\\u003c", "<").replace("\\u003e", ">").replace(
        "\\u0026", "&"
    )


@pytest.mark.parametrize("name", EVERY)
def test_without_a_script_there_is_a_picture_and_a_sentence(name: str) -> None:
    text = page(name)
    still = text[text.index("<svg") : text.index("</svg>") + 6]
    root = ElementTree.fromstring(still)
    shapes = root.findall("path")
    assert len(shapes) >= len(model(name).bodies)
    _, _, width, height = map(float, root.attrib["viewBox"].split())
    numbers = [
        tuple(map(float, pair.split(",")))
        for shape in shapes
        for pair in re.findall(r"[-\d.]+,[-\d.]+", shape.attrib["d"])
    ]
    assert 0 < min(x for x, _ in numbers) < max(x for x, _ in numbers) < width
    assert 0 < min(y for _, y in numbers) < max(y for _, y in numbers) < height
    assert "JavaScript switched on" in text


@pytest.mark.parametrize("name", EVERY)
def test_every_body_has_a_tick_box_under_its_leather(name: str) -> None:
    text, bodies = page(name), model(name).bodies
    boxes = [told["data-body"] for tag, told in Elements(text).tags if tag == "input" and "data-body" in told]
    assert sorted(map(int, filter(None, boxes))) == list(range(len(bodies)))
    assert text.count("<fieldset>") == len({body.leather for body in bodies})


def test_the_data_are_the_poses_of_the_program_to_a_thousandth() -> None:
    read, found = data(page("three-fold")), model("three-fold")
    rows = len(read["turns"])
    assert rows == len(read["arcs"]) == 61
    for at in (0, 17, 60):
        now = pose(found, at / (rows - 1))
        turns = [v for turn in now.turns for v in (turn.x, turn.z, turn.angle)]
        arcs = [v for a in now.arcs for v in (a.heading, a.curvature, a.length, a.before, a.after)]
        assert read["turns"][at] == pytest.approx(turns, abs=1e-6)
        assert read["arcs"][at] == pytest.approx(arcs, abs=1e-6)


def test_leathers_differ_in_lightness_from_each_other_and_from_contents() -> None:
    def lightness(tone: tuple[int, int, int]) -> float:
        # Relative luminance weights of ITU-R BT.709, applied to the stored values; from memory.
        return 0.2126 * tone[0] + 0.7152 * tone[1] + 0.0722 * tone[2]

    tones = sorted(map(lightness, leather_tones(["outer", "inner", "lining", "film"]).values()))
    assert min(b - a for a, b in pairwise(tones)) > 25


def test_what_has_no_fold_has_no_slider_to_be_moved() -> None:
    assert "It has no fold to close." in page("card-sleeve")
    assert '<div class="row" hidden>' in page("card-sleeve")
    assert '<div class="row" hidden>' not in page("two-fold")


def test_what_is_not_drawn_is_said() -> None:
    assert "Not drawn: closure." in page("coin-pouch")
    assert "Drawn as it stands closed, at every opening: side." in page("coin-pouch")
    assert "Not drawn" not in page("two-fold")
