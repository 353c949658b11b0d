"""Windows, slots and holes cut into parts."""

from __future__ import annotations

from patternforge.design.entries import Entries, entries, kind_named, titled
from patternforge.design.form import Form
from patternforge.design.located import Lost, Node
from patternforge.design.names import Covered, Names
from patternforge.design.part_forms import FilmForm, RoundForm, SlotForm, WindowForm
from patternforge.design.places import bend_spot
from patternforge.design.scope import Kind
from patternforge.design.values import POSITIVE
from patternforge.wallet.spec import Film, Opening, Spot

__all__ = ["opening_sizes", "openings"]

_KINDS: dict[str, type[Form]] = {"window": WindowForm, "slot": SlotForm, "hole": RoundForm}
_OPENING = Opening("", Spot(0), 0.0, 0.0)
_OVERLAP, _MARGIN = 6.0, 3.0  # of a film, mm


def openings(part: Entries, covered: Covered, names: Names) -> tuple[Opening, ...]:
    """The openings of a part that covers the panels ``covered``; their names are put in ``names``."""
    found = (_opening(node, part, covered, names) for node in part.row("openings"))
    return tuple(opening for opening in found if opening is not None)


def _opening(node: Node, part: Entries, covered: Covered, names: Names) -> Opening | None:
    kind = kind_named(node, _KINDS)
    if kind is None:
        part.scope.leave_open()
        if not isinstance(node, Lost):
            what = f"this opening of {part.what} does not say what kind it is"
            part.scope.faults.add(node.at, what, "begin it with 'window: name', 'slot: name' or 'hole: name'")
        return None
    table = entries(node, _KINDS[kind], titled(node, kind), part.scope)
    width, height, corner = opening_sizes(table, kind)
    called = names.take(table, kind, "opening", names.openings)
    place = bend_spot(table, names.panels, part.what, covered)
    if place.fold and "film" in table.nodes:
        table.add_fault("film", f"{table.what} lies in a fold, where no film can follow it", "leave it out")
    return Opening(
        name=called,
        spot=place,
        width=width,
        height=height,
        corner=corner,
        border=table.length("border", _OPENING.border),
        film=_film(table, called, names),
    )


def opening_sizes(table: Entries, kind: str) -> tuple[float, float, float]:
    """Width, height and radius of the corners."""
    if kind == "hole":
        diameter = table.length("diameter", bounds=POSITIVE)
        return diameter, diameter, diameter / 2
    width, height = table.length("width", bounds=POSITIVE), table.length("height", bounds=POSITIVE)
    round_end = min(width, height) / 2
    if kind == "slot":
        return width, height, round_end
    corner = table.length("corner", _OPENING.corner)
    if corner > round_end:
        what = f"a corner of {corner:g} mm does not fit {table.what}"
        table.add_fault("corner", what, f"it must be at most {round_end:g} mm")
    return width, height, corner


def _film(table: Entries, opening: str, names: Names) -> Film | None:
    if "film" not in table.nodes:
        return None
    film = table.table("film", FilmForm)
    overlap = film.length("overlap", _OVERLAP, POSITIVE)
    margin = film.length("margin", _MARGIN, POSITIVE)
    if margin >= overlap:
        key = "margin" if "margin" in film.nodes else "overlap"
        what = f"the stitches of {film.what} stand {margin:g} mm off the window, but it reaches only {overlap:g} mm"
        film.add_fault(key, what, "let it overlap by more, a hole's distance from its edge at least")
    if opening:
        names.films[opening] = table.at_of("window")
    return Film(film.use("leather", Kind.LEATHER), overlap, margin)
