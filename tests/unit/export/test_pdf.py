"""The PDF file as a whole: its bytes are the same on any day, under any seed and locale."""

from __future__ import annotations

import os
import subprocess
import sys

import pytest

from patternforge.drawing.model import Page
from patternforge.errors import DraftError
from patternforge.export.pdf import pdf_bytes

SCRIPT = """
import hashlib, locale, sys
locale.setlocale(locale.LC_ALL, "")
from patternforge.drawing.model import Dot, Figure, Role, Stroke, Text
from patternforge.drawing.paper import A4
from patternforge.drawing.printing import PrintSettings
from patternforge.drawing.tile import pages
from patternforge.export.pdf import pdf_bytes
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.point import Point

outline = Stroke(Role.OUTLINE, rounded_rectangle(0, 0, 430.125, 62.5, 7))
inks = (Dot(Role.HOLE, Point(5, 5), 1.1), outline, Text(Role.LABEL, Point(9, 20), 3.0, "R\\u00fcckseite \\u0142"))
figures = [Figure("strap", "outer", inks), Figure("tab", "inner", inks[:1])]
made = pages(figures, A4, PrintSettings("Sleeve", "A", x_correction=1.004))
print(hashlib.sha256(pdf_bytes(made, "Sleeve \\u20ac")).hexdigest())
"""


def digest(**environment: str) -> str:
    ran = subprocess.run(
        [sys.executable, "-c", SCRIPT], env={**os.environ, **environment}, capture_output=True, text=True, check=True
    )
    return ran.stdout.strip()


def test_bytes_do_not_hang_on_hash_seed_locale_time_zone_or_run() -> None:
    first = digest(PYTHONHASHSEED="0", LC_ALL="C", TZ="UTC")
    assert len(first) == 64
    assert digest(PYTHONHASHSEED="4711", LC_ALL="C.utf8", TZ="Pacific/Auckland") == first
    assert digest(PYTHONHASHSEED="random", LC_ALL="POSIX", TZ="America/Lima") == first


def test_no_date_and_no_tool_is_written() -> None:
    data = pdf_bytes([Page("1", 210.0, 297.0, ())], "Sleeve")
    for word in (b"Date", b"Producer", b"Creator"):
        assert word not in data


def test_the_box_of_the_page_has_five_decimals() -> None:
    assert b"/MediaBox [ 0 0 595.27559 841.88976 ]" in pdf_bytes([Page("1", 210.0, 297.0, ())], "Sleeve")


def test_no_page_is_refused() -> None:
    with pytest.raises(DraftError, match="no page"):
        pdf_bytes([], "Sleeve")
