"""How an HTML page looks, on a screen and on paper: black on white, nothing told by colour alone."""

from __future__ import annotations

from patternforge.drawing.paper import Paper
from patternforge.drawing.printing import PrintSettings
from patternforge.export.numbers import decimal

__all__ = ["style"]

_LETTERS = 10.5  # size of letters, pt


def style(paper: Paper, settings: PrintSettings, imprint: str) -> str:
    """The style sheet: pages of ``paper`` with the white rim of ``settings``, numbered where the printer can."""
    size, rim = decimal(_LETTERS * settings.letters.factor, 2), decimal(settings.margin, 2)
    width, height = decimal(paper.width, 2), decimal(paper.height, 2)
    page = (
        f"@page {{ size: {width}mm {height}mm; margin: {rim}mm {rim}mm 14mm {rim}mm;\n"
        f"  @bottom-left {{ content: {_quoted(imprint)}; font-size: 8pt; }}\n"
        '  @bottom-right { content: "page " counter(page) " of " counter(pages); font-size: 8pt; } }\n'
    )
    return f"{page}html {{ font-size: {size}pt; }}\n{_RULES}"


def _quoted(words: str) -> str:
    """``words`` as a CSS string that cannot end the style element (CSS Syntax 3, section 4.3.7: escapes)."""
    kept = "".join(c if c.isalnum() or c in " .,-_" else f"\\{ord(c):06x}" for c in words)
    return f'"{kept}"'


_RULES = """\
body { font-family: sans-serif; line-height: 1.35; color: #000; background: #fff; margin: 0 auto;
  max-width: 190mm; padding: 0 4mm; }
h1 { font-size: 1.7rem; margin: 0.6rem 0 0.2rem; }
h2 { font-size: 1.2rem; margin: 1.4rem 0 0.5rem; padding: 0.15rem 0.5rem; background: #d9d5d0;
  border-left: 1.2mm solid #000; break-after: avoid; print-color-adjust: exact; }
h3 { font-size: 1.05rem; margin: 0 0 0.2rem; break-after: avoid; }
p { margin: 0.25rem 0; }
ul { margin: 0.3rem 0; padding-left: 1.3rem; }
table { border-collapse: collapse; width: 100%; margin: 0.5rem 0 0.8rem; font-size: 0.92rem; }
caption { text-align: left; font-weight: bold; padding-bottom: 0.15rem; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
th { text-align: left; border-bottom: 0.4mm solid #000; background: #eceae7; print-color-adjust: exact; }
th, td { padding: 0.14rem 0.4rem; vertical-align: top; }
td { border-bottom: 0.15mm solid #777; }
tfoot { display: table-row-group; }
tfoot td { font-weight: bold; border-top: 0.3mm solid #000; border-bottom: none; }
.right { text-align: right; font-variant-numeric: tabular-nums; }
td.right { white-space: nowrap; }
.centre { text-align: center; }
.small { font-size: 0.85rem; }
.loud { border: 0.5mm solid #000; padding: 0.3rem 0.5rem; }
.tick { display: inline-block; width: 0.95em; height: 0.95em; border: 0.3mm solid #000; vertical-align: -0.12em; }
.line { display: inline-block; min-width: 24mm; border-bottom: 0.25mm solid #000; height: 1.1em; }
.fields { display: grid; grid-template-columns: 1fr 1fr; gap: 0.6rem 1.5rem; margin: 0.5rem 0; }
.fields p { display: flex; gap: 0.5rem; align-items: end; }
.fields .line { flex: 1; }
figure { margin: 0.6rem 0; break-inside: avoid; }
figure svg { max-width: 100%; height: auto; }
figcaption { font-size: 0.9rem; }
.step { break-inside: avoid; border-bottom: 0.15mm solid #777; padding: 0.5rem 0; display: flow-root; }
.step figure { margin: 0.3rem 0 0; }
footer { margin-top: 1.5rem; border-top: 0.15mm solid #777; font-size: 0.85rem; }
@media print { body { max-width: none; padding: 0; } footer { display: none; } a { color: #000; } }
"""
