"""The use case ``views``: pictures of a wallet to look at before cutting, and the order in which it is sewn."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from types import MappingProxyType

from patternforge.delivery import Delivery, delivered
from patternforge.drawing.model import Sheet
from patternforge.errors import DraftError
from patternforge.export.registry import writer
from patternforge.fit.close import closed_wallet
from patternforge.fit.layout import Layout, layout
from patternforge.fit.order import SewingOrder, sewing_order
from patternforge.pipeline.fileset import set_name
from patternforge.pipeline.stages import Judged, judged

__all__ = ["Views", "ViewsRequest", "view_sheets", "views"]


@dataclass(frozen=True, slots=True)
class ViewsRequest:
    """A design file, values set beside it, and the folder that the pictures' own folder is made in."""

    design: Path
    settings: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))
    out: Path = Path("out")


@dataclass(frozen=True, slots=True)
class Views:
    """A judged wallet, the pictures written of it and the order it is sewn in."""

    wallet: Judged
    order: SewingOrder
    delivery: Delivery


def views(request: ViewsRequest) -> Views:
    """Drafts a design and writes its pictures, all of them or none.

    A wallet folded from one piece has only the page of the wallet folded, and nothing to sew. DesignError, DraftError
    and DeliveryError as the stages raise them.
    """
    from patternforge.viewer.wallet import wallet_page

    wallet = judged(request.design, request.settings)
    name = set_name(wallet.pattern)
    sheets = view_sheets(wallet) if wallet.pattern.panels else ()
    files = {f"{sheet.name}.svg": writer("svg")(sheet) for sheet in sheets}
    files[f"{name}-folded.html"] = wallet_page(wallet.pattern)
    order = sewing_order(_laid(wallet)) if wallet.pattern.panels else SewingOrder((), ())
    return Views(wallet, order, delivered(request.out / f"{name}-views", files))


def view_sheets(wallet: Judged) -> tuple[Sheet, Sheet]:
    """The map of thickness and the sections, at true size."""
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


def _laid(wallet: Judged) -> Layout:
    pattern = wallet.pattern
    if not pattern.panels:
        raise DraftError(
            f"{pattern.design.file}: sections are drawn of panels in a row; this wallet is folded from one"
        )
    return layout(pattern, {leather.role: leather for leather in pattern.design.leathers})


def _along_seam(laid: Layout, across: float) -> list[float]:
    """The height of the lowest level stretch of a declared seam, where it is not cut already."""
    lowest = [min(hole.at.y for hole in seam.holes) for seam in laid.pattern.seams if seam.holes and not seam.inner]
    return [y for y in lowest[:1] if abs(y - across) > 1.0]
