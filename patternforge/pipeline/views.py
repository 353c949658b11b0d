"""The use case ``views``: pictures of a wallet to look at before cutting, and how it is made up step by step."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from types import MappingProxyType
from typing import TYPE_CHECKING

from patternforge.delivery import Delivery, delivered
from patternforge.drawing.model import Figure, Sheet
from patternforge.drawing.paper import A4, Paper
from patternforge.drawing.printing import PrintSettings
from patternforge.export.registry import writer
from patternforge.fit.close import closed_wallet
from patternforge.fit.layout import Layout, layout
from patternforge.fit.order import SewingOrder, sewing_order
from patternforge.pipeline.fileset import set_name
from patternforge.pipeline.stages import Judged, judged, lettered

if TYPE_CHECKING:
    from patternforge.drafting.assembly_sheet import StepSheet

__all__ = ["Views", "ViewsRequest", "cut_sheets", "view_sheets", "views"]


@dataclass(frozen=True, slots=True)
class ViewsRequest:
    """A design file, values set beside it, the folder that the pictures' own folder is made in, and the paper."""

    design: Path
    settings: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))
    out: Path = Path("out")
    paper: Paper = A4


@dataclass(frozen=True, slots=True)
class Views:
    """A judged wallet, the pictures written of it, the order it is sewn in and the steps it is made up in."""

    wallet: Judged
    order: SewingOrder
    delivery: Delivery
    steps: tuple[StepSheet, ...]


def views(request: ViewsRequest) -> Views:
    """Drafts a design and writes its pictures, each as SVG and all of them on pages as one PDF: all files or none.

    DesignError, DraftError and DeliveryError as the stages raise them.
    """
    from patternforge.viewer.wallet import wallet_page

    wallet = lettered(judged(request.design, request.settings))
    order = sewing_order(_laid(wallet))
    steps = _steps(wallet, order)
    sheets = _sheets(wallet, steps)
    name = set_name(wallet.pattern)
    files = {f"{sheet.name}.svg": writer("svg")(sheet) for sheet in sheets}
    files[f"{name}-views-{request.paper.name.lower()}.pdf"] = _album(wallet, sheets, steps, request.paper)
    files[f"{name}-folded.html"] = wallet_page(wallet.pattern)
    return Views(wallet, order, delivered(request.out / f"{name}-views", files), steps)


def view_sheets(wallet: Judged) -> tuple[Sheet, ...]:
    """The map of thickness and the sections, at true size, the exploded picture and the steps.

    Of a wallet folded from one piece only the last two.
    """
    return _sheets(wallet, _steps(wallet, sewing_order(_laid(wallet))))


def _sheets(wallet: Judged, steps: Sequence[StepSheet]) -> tuple[Sheet, ...]:
    from patternforge.drafting.assembly_sheet import exploded_sheet
    from patternforge.drafting.steps_sheet import steps_sheet

    laid, name, title = _laid(wallet), set_name(wallet.pattern), wallet.pattern.design.title
    cut = cut_sheets(wallet) if wallet.pattern.panels else ()
    exploded = exploded_sheet(f"{name}-exploded", title, laid)
    return (*cut, exploded, steps_sheet(f"{name}-steps", title, steps))


def cut_sheets(wallet: Judged) -> tuple[Sheet, Sheet]:
    """The map of thickness and the sections of a wallet with panels, at true size."""
    from patternforge.drafting.bulk_sheet import bulk_sheet
    from patternforge.drafting.section_sheet import section_sheet
    from patternforge.fit.bulk import seam_stacks
    from patternforge.fit.bulk_map import closed_map, open_map
    from patternforge.fit.section import closed_section, lengthwise_section, open_section

    laid, name, title = _laid(wallet), set_name(wallet.pattern), wallet.pattern.design.title
    closed = closed_wallet(laid)
    maps = (open_map(laid), closed_map(laid, closed))
    across = maps[1].highest.at.y
    cuts = [across, *_along_seam(laid, across)]
    sections = [cut for y in cuts for cut in (closed_section(laid, closed, y), open_section(laid, y))]
    sections.append(lengthwise_section(laid, closed))
    leathers = [leather.role for leather in wallet.pattern.design.leathers]
    thickness = bulk_sheet(f"{name}-thickness", title, maps, seam_stacks(laid))
    return thickness, section_sheet(f"{name}-sections", title, sections, leathers)


def _steps(wallet: Judged, order: SewingOrder) -> tuple[StepSheet, ...]:
    from patternforge.drafting.assembly_sheet import step_sheets

    return step_sheets(f"{set_name(wallet.pattern)}-step", wallet.pattern.design.title, _laid(wallet), order)


def _album(wallet: Judged, sheets: Sequence[Sheet], steps: Iterable[StepSheet], paper: Paper) -> bytes:
    """All pictures as a PDF: the exploded one and the steps first, then what is at true size."""
    from patternforge.drafting.steps_sheet import step_heading
    from patternforge.drawing.album import Picture, album_pages
    from patternforge.export.pdf import pdf_bytes

    *cut, exploded, _ = sheets
    made = [Picture(_one(exploded)), *(Picture(_one(step.sheet), step_heading(step)) for step in steps)]
    chapters = [made, *([Picture(figure, is_true=True) for figure in sheet.figures] for sheet in cut)]
    design = wallet.pattern.design
    return pdf_bytes(album_pages(chapters, paper, PrintSettings(design.title, design.revision)), design.title)


def _one(sheet: Sheet) -> Figure:
    """A sheet whose figures lie over each other as one figure."""
    return Figure(sheet.name, "", tuple(ink for figure in sheet.figures for ink in figure.inks))


def _laid(wallet: Judged) -> Layout:
    pattern = wallet.pattern
    return layout(pattern, {leather.role: leather for leather in pattern.design.leathers})


def _along_seam(laid: Layout, across: float) -> list[float]:
    """The height of the lowest level stretch of a declared seam, where it is not cut already."""
    lowest = [min(hole.at.y for hole in seam.holes) for seam in laid.pattern.seams if seam.holes and not seam.inner]
    return [y for y in lowest[:1] if abs(y - across) > 1.0]
