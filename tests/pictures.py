"""``python -m tests.pictures``: drafts ready designs and renders them into ``.pictures``, for the README."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from io import BytesIO
from pathlib import Path
from types import MappingProxyType

import pypdfium2
import resvg_py
from PIL import Image, ImageOps

from patternforge.drafting.pieces import figures
from patternforge.drafting.purpose import Purpose
from patternforge.drafting.sheets import laser_sheets, printed_pages
from patternforge.drawing.arrange import arranged
from patternforge.drawing.lettering import letter_strokes
from patternforge.drawing.model import Figure, Role, Sheet, Text
from patternforge.drawing.paper import A4
from patternforge.export.pdf import pdf_bytes
from patternforge.export.svg import PENS, SvgOptions, svg_bytes
from patternforge.pipeline.making import MakingRequest, making_files
from patternforge.pipeline.stages import Judged, judged
from patternforge.pipeline.views import view_sheets
from tests.thickness_picture import OPTIONS, thickness_sheet

__all__ = ["PICTURES"]

_ROOT = Path(__file__).parents[1]
_WIDTH = 1400  # pixels
_COLOURS = 64  # enough for the soft edges of a few line colours
# Lines to be looked at on a screen, not measured: all but those that would close a hole of 1 mm are drawn bolder.
_BOLDER = {Role.OUTLINE: 1.8, Role.FOLD: 1.8, Role.LABEL: 1.8}
_PENS = MappingProxyType({role: replace(pen, width=_BOLDER.get(role, 1.0) * pen.width) for role, pen in PENS.items()})


def main() -> None:
    """Writes every picture and says how large it is."""
    folder = _ROOT / ".pictures"
    folder.mkdir(exist_ok=True)
    for name, picture in PICTURES.items():
        path = folder / name
        path.write_bytes(picture())
        print(f"{path.relative_to(_ROOT)}: {path.stat().st_size / 1000:.0f} kB")


def _wallet(name: str) -> Judged:
    return judged(_ROOT / "designs" / f"{name}.yaml")


def _pieces(name: str, width: float) -> bytes:
    """All pieces of a design as drawn for paper, on a sheet that is ``width`` mm wide at most."""
    drawn = figures(_wallet(name).pattern, Purpose.PAPER)
    return _rendered(_lettered(arranged(drawn, 12.0, width, name)))


def _laser(name: str) -> bytes:
    """The sheet with every piece as a laser gets it."""
    return _rendered(laser_sheets(_wallet(name).pattern)[-1].sheet)


def _page(name: str) -> bytes:
    """The first printed page, taken from the PDF file, with the edge of the paper."""
    pages = printed_pages(_wallet(name).pattern, A4)
    with pypdfium2.PdfDocument(pdf_bytes(pages, name)) as document:
        image = document[0].render(scale=_WIDTH / document[0].get_width()).to_pil()
    return _png(ImageOps.expand(image, 2, "#b0b0b0"))


def _making(name: str, numbers: tuple[int, ...]) -> bytes:
    """Pages of the making sheet side by side, taken from the PDF file, each with the edge of the paper."""
    data = making_files(_wallet(name), MakingRequest(_ROOT / "designs" / f"{name}.yaml"))[f"{name}-making.pdf"]
    with pypdfium2.PdfDocument(data) as document:
        width = _WIDTH // len(numbers)
        shown = [document[number].render(scale=width / document[number].get_width()).to_pil() for number in numbers]
    image = Image.new("RGB", (sum(page.width for page in shown), shown[0].height), "white")
    for index, page in enumerate(shown):
        image.paste(
            ImageOps.expand(page.crop((2, 2, page.width - 2, page.height - 2)), 2, "#b0b0b0"), (index * width, 0)
        )
    return _png(image)


def _lettered(sheet: Sheet) -> Sheet:
    """Letters as on paper, so that the picture is the same whatever fonts there are."""
    return replace(sheet, figures=tuple(_in_strokes(figure) for figure in sheet.figures))


def _in_strokes(figure: Figure) -> Figure:
    inks = (stroke for ink in figure.inks for stroke in (letter_strokes(ink) if isinstance(ink, Text) else (ink,)))
    return replace(figure, inks=tuple(inks))


def _rendered(sheet: Sheet, options: SvgOptions | None = None) -> bytes:
    drawing = svg_bytes(sheet, options or SvgOptions(pens=_PENS)).decode("utf-8")
    png = bytes(resvg_py.svg_to_bytes(svg_string=drawing, background="#ffffff", dpi=96.0, width=_WIDTH))
    return _png(Image.open(BytesIO(png)))


def _png(image: Image.Image) -> bytes:
    out = BytesIO()
    image.convert("RGB").quantize(_COLOURS, Image.Quantize.FASTOCTREE, dither=Image.Dither.NONE).save(
        out, "PNG", optimize=True
    )
    return out.getvalue()


PICTURES: Mapping[str, Callable[[], bytes]] = MappingProxyType(
    {
        "two-fold-pieces.png": lambda: _pieces("two-fold", 345.0),
        "two-fold-laser.png": lambda: _laser("two-fold"),
        "two-fold-page.png": lambda: _page("two-fold"),
        "three-fold-pieces.png": lambda: _pieces("three-fold", 400.0),
        "card-sleeve-pieces.png": lambda: _pieces("card-sleeve", 360.0),
        "strap-card-case-pieces.png": lambda: _pieces("strap-card-case", 400.0),
        "coin-pouch-pieces.png": lambda: _pieces("coin-pouch", 400.0),
        "one-piece-card-wallet-pieces.png": lambda: _pieces("one-piece-card-wallet", 400.0),
        "two-fold-sections.png": lambda: _rendered(_lettered(view_sheets(_wallet("two-fold"))[1])),
        "two-fold-making.png": lambda: _making("two-fold", (2, 3)),
        "thickness.png": lambda: _rendered(_lettered(thickness_sheet()), OPTIONS),
    }
)


if __name__ == "__main__":
    main()
