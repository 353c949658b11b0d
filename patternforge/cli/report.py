"""What is said on the screen once a design is drafted."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import astuple
from textwrap import fill
from typing import TYPE_CHECKING

from patternforge.cli.cautions import cautions
from patternforge.cli.findings import conclusion, findings_table
from patternforge.cli.lines import WIDTH, wrapped
from patternforge.cli.table import columns
from patternforge.drafting.alike import alike
from patternforge.fit.findings import Verdict
from patternforge.fit.fineness import fineness
from patternforge.pipeline.draft import Draft
from patternforge.pipeline.finished import (
    Size,
    closed_size,
    closed_thickness,
    leather_needs,
    open_size,
)
from patternforge.pipeline.request import DraftRequest
from patternforge.pipeline.stages import Judged
from patternforge.units import MM2_PER, MM_PER_FOOT, MM_PER_M, MM_PER_OUNCE, counted, inches, mm
from patternforge.wallet.pattern import Adjustment, Pattern

if TYPE_CHECKING:
    from patternforge.pipeline.cutter import CutFiles
    from patternforge.pipeline.dies import DieFiles
    from patternforge.pipeline.keep import Kept

__all__ = ["draft_report", "wallet_report"]


def draft_report(done: Draft, request: DraftRequest) -> list[str]:
    """The wallet, what wants the maker's eye, the files and the cautions."""
    wanting = [found for found in done.wallet.findings if found.verdict is not Verdict.GOOD]
    return [
        *wallet_report(done.wallet),
        *(["", *_kept(done.kept)] if done.kept else ()),
        "",
        conclusion(done.wallet.findings),
        *(findings_table(wanting) if wanting else ()),
        *(["", *_cutting(done.cut)] if done.cut else ()),
        *(["", *_dies(done.dies)] if done.dies else ()),
        "",
        *_files(done),
        "",
        "Before you cut",
        *(_point(caution) for caution in cautions(request, done.wallet.as_cut.design.leathers)),
    ]


def _kept(kept: Kept) -> list[str]:
    from patternforge.cli.keeping import keeping_report

    return keeping_report(kept)


def wallet_report(wallet: Judged) -> list[str]:
    """Title, finished sizes, pieces, leather, thread and the sizes that moved."""
    pattern = wallet.pattern
    design = pattern.design
    return [
        f"{design.title}, revision {design.revision}" if design.revision else design.title,
        "",
        *_sizes(wallet),
        "",
        *_pieces(pattern),
        "",
        *_finest(pattern),
        "",
        *_leather(wallet.as_cut),
        *(["", *_thread(pattern)] if pattern.seams else ()),
        *(["", *_letters(pattern)] if pattern.design.initials else ()),
        *(["", *_adjustments(pattern.adjustments)] if pattern.adjustments else ()),
    ]


def _sizes(wallet: Judged) -> list[str]:
    thickness = closed_thickness(wallet.findings)
    rows = [
        ("open", *_both(open_size(wallet.pattern))),
        ("closed", *_both(closed_size(wallet.as_cut))),
        ("thickness closed, as loaded", f"{mm(thickness, 1)} mm", f"{inches(thickness, 2)} in"),
    ]
    return ["Finished size", *_indented(columns(rows))]


def _both(size: Size) -> tuple[str, str]:
    return (
        f"{mm(size.width, 1)} x {mm(size.height, 1)} mm",
        f"{inches(size.width, 2)} x {inches(size.height, 2)} in",
    )


def _pieces(pattern: Pattern) -> list[str]:
    head = ("piece", "leather", "width", "height", "holes", "cut")
    rows = [
        (piece.name, piece.leather, mm(piece.width), mm(piece.height), str(len(piece.holes)), str(piece.quantity))
        for piece in pattern.pieces
    ]
    table = _indented(columns([head, *rows], right=(2, 3, 4, 5)))
    same = (f"identical: {', '.join(names)}; one die or template serves all" for names in alike(pattern))
    return ["Pieces, sizes in mm", *table, *(line for each in same for line in wrapped(each))]


def _finest(pattern: Pattern) -> list[str]:
    """What the tool that cuts must manage, piece by piece."""
    head = ("piece", "radius", "gap", "slot", "beside a stitch hole")
    rows = [
        (piece.name, *("-" if size is None else mm(size) for size in astuple(fineness(pattern, piece))))
        for piece in pattern.pieces
    ]
    return ["Finest cuts, sizes in mm", *_indented(columns([head, *rows], right=(1, 2, 3, 4)))]


def _leather(pattern: Pattern) -> list[str]:
    rows = [
        (
            f"{need.role} ({need.name})" if need.name else need.role,
            f"{mm(need.thickness)} mm",
            f"{mm(need.thickness / MM_PER_OUNCE, 1)} oz",
            f"{mm(need.area / MM2_PER['dm2'])} dm2",
            f"{mm(need.area / MM2_PER['ft2'])} ft2",
            "" if need.price is None else f"price {mm(need.price)}",
        )
        for need in leather_needs(pattern)
    ]
    return ["Leather, net: add your own waste", *_indented(columns(rows, right=(1, 2, 3, 4)))]


def _thread(pattern: Pattern) -> list[str]:
    """Thread for each seam as a saddle stitch with two needles, tails included, and in all."""
    lengths = [(seam.name, seam.thread) for seam in pattern.seams if not seam.meets]
    rows = [(name, *_long(thread)) for name, thread in (*lengths, ("in all", sum(thread for _, thread in lengths)))]
    return ["Thread, saddle stitch with tails", *_indented(columns(rows, right=(1, 2)))]


def _letters(pattern: Pattern) -> list[str]:
    """Every text as it is to be read on its piece: the proof of its spelling."""
    rows = [
        (letters.name, piece.name, letters.text or "no letters yet", "stamped" if letters.stamp else "strokes")
        for piece in pattern.pieces
        for letters in piece.inscriptions
    ]
    return ["Letters, to be proved", *_indented(columns(rows))]


def _long(length: float) -> tuple[str, str]:
    return f"{mm(length / MM_PER_M)} m", f"{mm(length / MM_PER_FOOT)} ft"


def _adjustments(moved: Sequence[Adjustment]) -> list[str]:
    """One line for each change, with all the parts that share it."""
    changes = Counter((each.size, mm(each.asked), mm(each.drafted), each.reason) for each in moved)
    return ["Sizes that moved", *_indented(list(_changes(moved, list(changes))))]


def _changes(moved: Sequence[Adjustment], changes: Sequence[tuple[str, str, str, str]]) -> Iterator[str]:
    for size, asked, drafted, reason in changes:
        own = [each.part for each in moved if (each.size, mm(each.asked), mm(each.drafted)) == (size, asked, drafted)]
        yield f"{', '.join(own)}: {size} {asked} -> {drafted} mm {reason}"


def _cutting(cut: CutFiles) -> list[str]:
    from patternforge.cli.cutting import cutting_report

    return cutting_report(cut)


def _dies(dies: DieFiles) -> list[str]:
    from patternforge.cli.dies import dies_report

    return dies_report(dies.pack)


def _files(done: Draft) -> list[str]:
    delivery = done.delivery
    lines = [f"Files in {delivery.folder}", *_indented(list(delivery.written)), *_proved(done.proved)]
    if delivery.removed:
        lines += ["No longer in the set, taken away", *_indented(list(delivery.removed))]
    if delivery.kept:
        lines += ["Yours, left as they were", *_indented(list(delivery.kept))]
    return lines


def _proved(count: int) -> list[str]:
    if not count:
        return []
    files, were = counted(count, "file"), "was" if count == 1 else "were"
    return [f"{files} to cut by {were} read back and proved line by line before any file was written."]


def _point(caution: str) -> str:
    return fill(caution, WIDTH, initial_indent="  - ", subsequent_indent="    ")


def _indented(lines: Sequence[str]) -> list[str]:
    return [f"  {line}" for line in lines]
