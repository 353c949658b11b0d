"""Places on panels, the openings cut round them, and the clear sheets behind windows."""

from __future__ import annotations

from dataclasses import replace

from patternforge.errors import DraftError
from patternforge.geometry.corners import rounded_rectangle
from patternforge.geometry.path import Path
from patternforge.geometry.point import Point
from patternforge.wallet.blank import Blank, InnerRun
from patternforge.wallet.body import Body
from patternforge.wallet.outline import Shape
from patternforge.wallet.pattern import EdgeRole
from patternforge.wallet.spec import Edge, Film, Opening, Spot, Stitching

__all__ = ["film_blank", "film_run", "opening_path", "spot_point"]


def spot_point(body: Body, spot: Spot) -> Point:
    """The assembly point of a spot: measured from the edges or tangents it names, else in the panel's middle.

    Across the folds it may be the middle of a fold's bend instead.
    """
    panel = body.panels[spot.panel]
    x, y = (panel.x0 + panel.x1) / 2, body.height / 2
    if spot.fold:
        x = (body.folds[spot.fold - 1].x0 + body.folds[spot.fold - 1].x1) / 2
    elif spot.beside:
        edge, distance = spot.beside
        x = panel.x0 + distance if edge is Edge.LEFT else panel.x1 - distance
    if spot.above:
        edge, distance = spot.above
        y = distance if edge is Edge.BOTTOM else body.height - distance
    return Point(x, y)


def opening_path(body: Body, opening: Opening) -> Path:
    """The outline of an opening on the assembly, counter-clockwise.

    DraftError when it reaches beyond its panel, or beyond both panels of the fold it lies in.
    """
    path = _grown(body, opening, 0.0)
    spot, box = opening.spot, path.bounds
    first, last = body.panels[spot.panel], body.panels[spot.panel + (1 if spot.fold else 0)]
    if box.x0 < first.x0 or box.x1 > last.x1 or box.y0 < 0 or box.y1 > body.height:
        raise DraftError(f"opening '{opening.name}' reaches beyond panel '{first.name}'")
    return path


def film_blank(body: Body, opening: Opening, film: Film, front: Blank) -> Blank:
    """The clear sheet behind a window, reaching ``overlap`` beyond the opening all round."""
    path = _grown(body, opening, film.overlap)
    outline = Shape(path, (EdgeRole.SEWN,) * len(path.segments))
    return Blank(f"{opening.name} film", film.leather, outline, front.showing, front.panels, lines=front.name)


def film_run(body: Body, opening: Opening, film: Film, piece: str, stitching: Stitching) -> InnerRun:
    """The seam that holds a clear sheet: a loop ``margin`` outside the opening, through it and its piece."""
    loop = _grown(body, opening, film.margin)
    return InnerRun(f"{opening.name} seam", loop, (piece, f"{opening.name} film"), replace(stitching), film.margin)


def _grown(body: Body, opening: Opening, by: float) -> Path:
    """The opening's outline, ``by`` mm larger all round; its corners keep their centres."""
    middle = spot_point(body, opening.spot)
    half_width, half_height = opening.width / 2 + by, opening.height / 2 + by
    radius = opening.corner + by if opening.corner > 0 else 0.0
    return rounded_rectangle(
        middle.x - half_width, middle.y - half_height, middle.x + half_width, middle.y + half_height, radius
    )
