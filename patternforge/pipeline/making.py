"""The use case ``sheet``: the making sheet of a wallet as a page for the screen and pages for the printer."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from types import MappingProxyType

from patternforge.delivery import Delivery, delivered
from patternforge.drafting.making.facts import Finished, MakingFacts
from patternforge.drafting.making.prices import PriceList
from patternforge.drawing.document import Document
from patternforge.drawing.paper import A4, Paper
from patternforge.drawing.printing import PrintSettings, printable_area
from patternforge.errors import DraftError
from patternforge.fit.findings import Verdict
from patternforge.pipeline.fileset import set_name
from patternforge.pipeline.finished import closed_size, closed_thickness, open_size
from patternforge.pipeline.stages import Judged, judged, lettered, shown, text_at

__all__ = ["Making", "MakingRequest", "making", "making_document", "making_files"]

_KIND = "price list"
_PICTURE = 0.54  # share of the height of a page that a picture may take
_STEP = 0.28  # the same of the picture of a step
_MOST_WASTE = 500.0  # per cent


@dataclass(frozen=True, slots=True)
class MakingRequest:
    """A design file, values and letters set beside it, the maker's figures, the paper, and where the sheet goes.

    ``waste`` in per cent of the net area is put on every leather; None leaves it to the price list, if there is one.
    """

    design: Path
    settings: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))
    texts: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))
    prices: Path | None = None
    waste: float | None = None
    paper: Paper = A4
    printing: PrintSettings = field(default_factory=lambda: PrintSettings(""))
    out: Path = Path("out")

    def __post_init__(self) -> None:
        if self.waste is not None and not 0.0 <= self.waste <= _MOST_WASTE:
            raise DraftError(f"the waste is {self.waste:g} %; lawful is 0 to {_MOST_WASTE:g} %")


@dataclass(frozen=True, slots=True)
class Making:
    """A judged wallet, the files that were written of it, and the price list that it was reckoned with."""

    wallet: Judged
    delivery: Delivery
    prices: PriceList | None = None


def making(request: MakingRequest) -> Making:
    """Drafts a design and writes its making sheet, both files or none.

    DesignError for a design or a price list that cannot be taken, DraftError and DeliveryError as the stages raise
    them. A wallet that does not fit has a sheet too, which says so in its name and in words.
    """
    wallet = lettered(judged(request.design, request.settings, request.texts))
    prices = prices_at(request.prices) if request.prices else None
    files = making_files(wallet, request, prices)
    return Making(wallet, delivered(request.out / f"{set_name(wallet.pattern)}-making", files), prices)


def prices_at(path: Path) -> PriceList:
    """The price list in the file at ``path``; DesignError with every fault when it cannot be read or taken."""
    from patternforge.prices.load import load_prices

    return load_prices(text_at(path, _KIND), shown(path))


def making_files(wallet: Judged, request: MakingRequest, prices: PriceList | None = None) -> dict[str, bytes]:
    """The sheet as HTML and as PDF, by file name."""
    from patternforge.drawing.document_pages import document_pages
    from patternforge.export.html import html_bytes
    from patternforge.export.pdf import pdf_bytes

    document = making_document(wallet, request, prices)
    settings = replace(request.printing, title=document.title)
    stem = f"{set_name(wallet.pattern)}-making"
    if wallet.verdict is Verdict.NO:
        stem = f"{stem}-DOES-NOT-FIT"
    pages = document_pages(document, request.paper, settings)
    return {
        f"{stem}.html": html_bytes(document, request.paper, settings),
        f"{stem}.pdf": pdf_bytes(pages, document.imprint),
    }


def making_document(wallet: Judged, request: MakingRequest, prices: PriceList | None = None) -> Document:
    """The content that both files are written from."""
    from patternforge.drafting.making.sheet import making_sheet
    from patternforge.drafting.making.steps import making_steps_told
    from patternforge.fit.window import thickness_windows

    pattern = wallet.pattern
    area = printable_area(request.paper, request.printing)
    finished = Finished(
        (open_size(pattern).width, open_size(pattern).height),
        (closed_size(pattern).width, closed_size(pattern).height),
        closed_thickness(wallet.findings),
    )
    letters = request.printing.letters.factor
    return making_sheet(
        MakingFacts(
            pattern,
            wallet.findings,
            finished,
            thickness_windows(pattern),
            making_steps_told(pattern, area.width, _STEP * area.height, letters),
            request.waste,
            prices,
            area.width,
            _PICTURE * area.height,
            letters,
        )
    )
