"""The first page of a die pack: which dies there are, what each cuts, and what is to be settled with its maker."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from patternforge.drafting.cautions import ALWAYS, DIE
from patternforge.drafting.die_pack import DiePack
from patternforge.drafting.die_proof import LEGEND, MEASURE, columns_in
from patternforge.drafting.die_words import EDGE
from patternforge.drafting.dies import SAME_CUT, Die
from patternforge.drafting.names import listed
from patternforge.drafting.signing import field_inks, fields_height
from patternforge.drawing.header import UPRIGHT, Head, head_height, head_inks
from patternforge.drawing.model import Ink, Page
from patternforge.drawing.paper import Paper
from patternforge.drawing.printing import PrintSettings, printable_area
from patternforge.drawing.prose import Note, notes_height, notes_inks
from patternforge.geometry.point import Bounds, Point
from patternforge.units import counted, mm

__all__ = ["list_pages"]

_NOTES = 2.0  # height of letters, mm
_GAP = 4.0
_FIELDS = (
    "How many of each die, and by when",
    "Press, and room between its plates",
    "Kind of die, height of the rule",
    "Cutting edge on one face or on both",
    "Tolerance agreed on the cut size",
)


def list_pages(
    pack: DiePack, paper: Paper, settings: PrintSettings, proofs: Sequence[Page], cautions: Sequence[str]
) -> tuple[Page, ...]:
    """The pages before the ``proofs``: usually one, more only where the dies are too many for it.

    ``cautions`` are those of the shop's own table, said before those of every press.
    """
    area = printable_area(paper, settings)
    heading = f"Dies. {settings.heading}"
    own = Bounds(
        area.x0 + UPRIGHT.width + _GAP,
        area.y0,
        area.x1,
        area.y1 - head_height(heading, area.width, settings.letters),
    )
    notes = tuple(_said(pack, paper, proofs, cautions))
    parts = _parts(notes, own, settings)
    return tuple(_page(part, number, len(parts), own, paper, settings) for number, part in enumerate(parts, 1))


def _page(notes: Sequence[Note], number: int, of: int, own: Bounds, paper: Paper, settings: PrintSettings) -> Page:
    area, large = printable_area(paper, settings), settings.letters.factor
    imprint = f"{'List of dies' if of == 1 else f'List {number} of {of}'}. Print at 100 %, not fitted to the page."
    head = Head(f"Dies. {settings.heading}", imprint, (MEASURE,), settings.letters, LEGEND)
    inks = [*head_inks(head, area), *notes_inks(notes, own, columns_in(own.width), _NOTES * large)]
    if number == of:
        inks += _fields(own, large)
    label = "list" if of == 1 else f"list {number}"
    return Page(label, paper.width, paper.height, tuple(inks), settings.x_correction, settings.y_correction)


def _fields(own: Bounds, large: float) -> Iterator[Ink]:
    """What the die maker asks, to be filled in at the foot of the page."""
    yield from field_inks(_FIELDS, Point(own.x0, own.y0 + fields_height(_FIELDS, large)), own.width, large)


def _parts(notes: Sequence[Note], own: Bounds, settings: PrintSettings) -> list[list[Note]]:
    """The notes page by page, with room for the fields on each."""
    large = settings.letters.factor
    size, columns = _NOTES * large, columns_in(own.width)
    room = own.height - fields_height(_FIELDS, large) - _GAP
    parts: list[list[Note]] = [[]]
    for note in notes:
        if parts[-1] and notes_height([*parts[-1], note], own.width, columns, size) > room:
            parts.append([])
        parts[-1].append(note)
    return parts


def _said(pack: DiePack, paper: Paper, proofs: Sequence[Page], cautions: Sequence[str]) -> Iterator[Note]:
    yield Note(_headed(pack), tuple(_how_many(pack)))
    yield from (_die_note(pack, die) for die in pack.dies)
    yield EDGE
    yield Note("How to use these pages", tuple(_use(paper, proofs)))
    yield Note("Before you cut", (*cautions, DIE, ALWAYS))


def _headed(pack: DiePack) -> str:
    pieces = sum(die.count for die in pack.dies)
    dies, cut = counted(len(pack.dies), "die"), "cuts" if len(pack.dies) == 1 else "cut"
    return (
        f"{dies} {cut} the {pieces} pieces of one wallet" if pieces > 1 else f"{dies} {cut} the piece of one wallet"
    )


def _how_many(pack: DiePack) -> Iterator[str]:
    yield (
        f"Pieces share a die where every line agrees within {mm(SAME_CUT)} mm once they are turned. Leather is cut"
        " one layer at a time."
    )
    over = [cut.piece.name for die in pack.dies for cut in die.cuts if cut.over]
    if over:
        yield (
            f"Mirror images: {listed(over)}. They are cut with the LEATHER turned over, its other side up: look"
            " for flaws on the good side first, and mark them. A die that has a cutting edge on both faces can be"
            " turned over instead; a rule die on a board cannot."
        )
        yield (
            f"Where neither is wanted, each mirror image takes a die of its own: {pack.count_by_hand} dies in all."
            " Draft again with --die-mirrors own."
        )


def _use(paper: Paper, proofs: Sequence[Page]) -> Iterator[str]:
    yield "Measure the bars on every page, lay a rule along the sizes, then sign each page. One page is one die."
    yield "A signed page holds for the revision it names, and for no other."
    large = [page.label for page in proofs if {page.width, page.height} != {paper.width, paper.height}]
    if large:
        yield (
            f"Larger than {paper.name}: {listed(large)}. Print these at 100 % on paper of the size they say, or"
            f" have the die maker do so; the paper pattern has the same pieces on {paper.name}."
        )


def _die_note(pack: DiePack, die: Die) -> Note:
    wrong = [fine.told for fine in pack.fines(die) if fine.is_below]
    alike = "left and right alike" if die.symmetric else "left and right DIFFER"
    number = pack.dies.index(die) + 1
    return Note(
        f"Die {number}: {die.name}",
        (pack.file(die), f"{pack.size_words(die)}; {alike}", *pack.cut_words(die), *wrong),
    )
