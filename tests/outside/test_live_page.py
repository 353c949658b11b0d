"""The live page in headless Chromium: shown, refreshed by itself, without a word on the console."""

from __future__ import annotations

import subprocess
from pathlib import Path
from threading import Event

import pytest

from patternforge.live.server import started
from patternforge.live.shown import Board, Picture, Shown, Standing
from tests.outside.chromium_reading import CHROMIUM

SVG = b'<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="20mm"><rect width="9" height="9"/></svg>'
FIRST = Shown("First <sleeve>", Standing.GOOD, ("all is well",), (Picture("Pieces", SVG),))
SECOND = Shown("Second sleeve", Standing.NO, ("too narrow",), (Picture("Pieces", SVG),))


class SavedWhileLoading(Board):
    """A board on which a newer state is put up while the page's picture is on its way, which waits for it.

    A browser without a screen looks at a page once it is loaded; so that is when the page must have refreshed itself.
    """

    def __init__(self) -> None:
        super().__init__(FIRST)
        self.asked = 0
        self.fetched = Event()

    @property
    def newest(self) -> tuple[int, Shown]:
        self.asked += 1
        if self.asked == 2:  # the picture; the page itself was the first
            self.put(SECOND)
            self.fetched.wait(20.0)
        if self.asked > 4:  # the content and its picture have been fetched anew
            self.fetched.set()
        return super().newest


def seen(address: str, folder: Path) -> tuple[str, list[str]]:
    """The page as the browser has it once it is loaded, and what was said on its console."""
    words = [str(CHROMIUM), "--headless", "--no-sandbox", "--disable-gpu", "--enable-logging=stderr"]
    words += [f"--user-data-dir={folder / 'profile'}", "--dump-dom", address]
    done = subprocess.run(words, capture_output=True, check=True, timeout=120)
    said = [line for line in done.stderr.decode("utf-8", "replace").splitlines() if "CONSOLE" in line]
    return done.stdout.decode("utf-8"), said


@pytest.mark.skipif(CHROMIUM is None, reason="no Chromium on this machine: the live page is not looked at")
def test_the_page_refreshes_itself_when_something_newer_is_put_up(tmp_path: Path) -> None:
    server = started(SavedWhileLoading())
    try:
        page, said = seen(server.address, tmp_path)
    finally:
        server.shutdown()
        server.server_close()
    assert said == []
    assert "<title>Second sleeve</title>" in page
    assert "too narrow" in page
    assert "all is well" not in page
    assert "/picture/2/0.svg" in page
