"""A drafted wallet as one plain description: what ``pattern.json`` holds. Its schema stands in ``schema``."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import isfinite
from typing import Any

from patternforge import __version__
from patternforge.drafting.cutting import net_tallies, tally_rows
from patternforge.drafting.finishing import finishing_marks, skives_told, turned_told
from patternforge.drafting.folded import folded_description
from patternforge.drafting.inputs import inputs, leathers_told, plain, trims
from patternforge.drafting.letters import letter_height
from patternforge.drafting.source import Source
from patternforge.fit.findings import Finding, Stretch, worst
from patternforge.fit.fineness import fineness
from patternforge.geometry.path import Path
from patternforge.leather.material import Leather, MadeOf
from patternforge.wallet.marked import Inscription
from patternforge.wallet.pattern import (
    DraftedFold,
    DraftedPanel,
    FittingHole,
    Hole,
    Pattern,
    Piece,
    Placement,
    Pocket,
    Seam,
    Sum,
)
from patternforge.wallet.spec import Across, HoleShape, SeamSpec
from patternforge.wallet.strip import StripPlacement

__all__ = ["FORMAT", "VERSION", "description"]

FORMAT = "patternforge pattern"
VERSION = 1  # grows whenever a reader of the version before would misread a file


def description(
    pattern: Pattern,
    findings: Sequence[Finding] = (),
    machine: Mapping[str, Any] | None = None,
    dies: Mapping[str, Any] | None = None,
    source: Source | None = None,
    kept_for: Sequence[Leather] = (),
) -> dict[str, Any]:
    """``pattern`` as dicts, lists, strings, numbers and None, valid under ``pattern_schema``.

    Lengths in mm, angles in degrees, areas in mm2; the pieces' own frames as everywhere: showing face up, lower left
    corner at the origin. ``findings`` are those of the fit; ``machine`` says what a machine was sent, and ``dies``
    what a die maker; ``source`` is what the same program drafts the same pieces from again, ``kept_for`` the leathers
    that the findings are of where the pieces were kept for others than they were drafted for.
    """
    design = pattern.design
    names = [panel.name for panel in pattern.panels]
    return {
        "format": FORMAT,
        "version": VERSION,
        "program": f"patternforge {__version__}",
        "units": {"length": "mm", "angle": "degrees", "area": "mm2"},
        "design": {
            "name": design.name,
            "title": design.title,
            "revision": design.revision,
            "notes": design.notes,
            "file": design.file,
        },
        "source": _source(source) if source else None,
        "inputs": inputs(design),
        "kept_for": leathers_told(kept_for) if kept_for else None,
        "size": {"width": pattern.width, "height": _sum(pattern.height_sum, pattern.height)},
        "panels": [_panel(panel) for panel in pattern.panels],
        "folds": [_fold(fold) for fold in pattern.folds],
        "pieces": [_piece(pattern, piece, names) for piece in pattern.pieces],
        "folded": folded_description(pattern.folded) if pattern.folded else None,
        "pockets": [_pocket(pocket, names) for pocket in pattern.pockets],
        "loose": [{**plain(loose), "panel": names[loose.panel]} for loose in pattern.loose],
        "seams": [_seam(pattern, seam) for seam in pattern.seams],
        "adjustments": plain(pattern.adjustments),
        "cutting": {"operations": tally_rows(net_tallies(pattern)), "machine": machine, "dies": dies},
        "findings": [_finding(found) for found in findings],
        "verdict": worst(findings).value if findings else None,
    }


def _finding(found: Finding) -> dict[str, Any]:
    return {
        "what": found.what,
        "where": found.where,
        "measured": found.measured,
        "unit": found.unit,
        "good": _stretch(found.limit.good),
        "tolerable": _stretch(found.limit.tolerable),
        "verdict": found.verdict.value,
        "remedy": found.remedy,
    }


def _stretch(stretch: Stretch) -> dict[str, float | None]:
    return {
        "low": stretch.low if isfinite(stretch.low) else None,
        "high": stretch.high if isfinite(stretch.high) else None,
    }


def _source(source: Source) -> dict[str, Any]:
    return {"text": source.text, "settings": dict(source.settings), "initials": dict(source.initials)}


def _sum(total: Sum, value: float) -> dict[str, Any]:
    return {"value": value, "terms": [{"label": term.label, "value": term.value} for term in total.terms]}


def _panel(panel: DraftedPanel) -> dict[str, Any]:
    return {"name": panel.name, "x0": panel.x0, "x1": panel.x1, "width": _sum(panel.width, panel.width.value)}


def _fold(fold: DraftedFold) -> dict[str, Any]:
    return {
        "number": fold.number,
        "angle": fold.angle,
        "compensation": fold.compensation,
        "relief": fold.relief,
        "x0": fold.x0,
        "x1": fold.x1,
        "layers": [
            {
                "part": layer.part,
                "gap": _sum(layer.gap, layer.gap.value),
                "inside_radius": layer.radius,
                "true_length": layer.true_length,
                "flat_length": layer.flat_length,
            }
            for layer in fold.layers
        ],
    }


def _piece(pattern: Pattern, piece: Piece, panels: Sequence[str]) -> dict[str, Any]:
    shapes = {seam.name: seam.stitching.hole.shape for seam in pattern.seams}
    leather = pattern.design.leather(piece.leather)
    return {
        "name": piece.name,
        "part": piece.part,
        "leather": piece.leather,
        "thickness": leather.t,
        "quantity": piece.quantity,
        "made_of": leather.made_of.value,
        "showing_face": leather.face.value if leather.made_of is MadeOf.LEATHER else None,
        "faces": piece.showing.value,
        "visible": piece.visible,
        "width": piece.width,
        "height": piece.height,
        "area": piece.area,
        "finest": plain(fineness(pattern, piece)),
        "trim": trims(piece.trims),
        "outline": _vertices(piece.outline),
        "edges": plain(piece.edges),
        "openings": [_vertices(opening) for opening in piece.openings],
        "fold_lines": [_vertices(line) for line in piece.fold_lines],
        "holes": [_hole(hole, shapes[hole.seam]) for hole in piece.holes],
        "turned_holes": [_hole(hole, shapes[hole.seam]) for hole in piece.turned_holes],
        "turned": turned_told(piece.turned),
        "skives": skives_told(piece.skives),
        "fittings": [_fitting(hole) for hole in piece.fittings],
        "inscriptions": [_inscription(inscription) for inscription in piece.inscriptions],
        "marks": [
            {"name": mark.name, "path": _vertices(mark.path), "closed": mark.path.closed}
            for mark in (*piece.marks, *finishing_marks(piece))
        ],
        "lines": piece.lines or None,
        "placement": _placement(piece.placement, piece.level, panels),
    }


def _vertices(path: Path) -> list[list[float]]:
    return [list(vertex) for vertex in path.vertices]


def _hole(hole: Hole, shape: HoleShape) -> dict[str, Any]:
    return {
        "seam": hole.seam,
        "index": hole.index,
        "x": hole.at.x,
        "y": hole.at.y,
        "direction": hole.direction,
        "shape": (hole.shape or shape).value,
    }


def _fitting(hole: FittingHole) -> dict[str, Any]:
    return {
        "fitting": hole.fitting,
        "half": hole.half,
        "x": hole.at.x,
        "y": hole.at.y,
        "diameter": hole.diameter,
        "reach": hole.reach,
    }


def _inscription(inscription: Inscription) -> dict[str, Any]:
    return {
        "initials": inscription.name,
        "text": inscription.text,
        "style": "stamps" if inscription.stamp else "strokes",
        "x": inscription.at.x,
        "y": inscription.at.y,
        "up": inscription.up,
        "width": inscription.width,
        "height": inscription.height,
        "clear": inscription.clear,
        "letter_height": letter_height(inscription),
    }


def _placement(placement: Placement | StripPlacement, level: int, panels: Sequence[str]) -> dict[str, Any]:
    if isinstance(placement, StripPlacement):
        return _along_seams(placement, level, panels[placement.panel])
    onto = placement.onto_piece
    return {
        "panels": [panels[index] for index in placement.panels],
        "level": level,
        "breaks": [list(pair) for pair in placement.development.breaks],
        "onto_piece": [onto.a, onto.b, onto.c, onto.d, onto.e, onto.f],
    }


def _along_seams(placement: StripPlacement, level: int, panel: str) -> dict[str, Any]:
    return {
        "panels": [],
        "stands_on": panel,
        "level": level,
        "middle": placement.middle,
        "forward": placement.forward,
        "rows": [
            {"seam": row.seam, "line": _vertices(row.line), "y": row.y, "inward": row.inward}
            for row in placement.rows
        ],
    }


def _pocket(pocket: Pocket, panels: Sequence[str]) -> dict[str, Any]:
    return {
        "part": pocket.part,
        "piece": pocket.piece,
        "content": pocket.content,
        "count": pocket.count,
        "panels": [panels[index] for index in pocket.panels],
        "opening": pocket.opening.value,
        "box": list(pocket.box),
        "show": pocket.show,
        "ease": pocket.ease,
        "held": pocket.held,
    }


def _seam(pattern: Pattern, seam: Seam) -> dict[str, Any]:
    declared = {spec.name: spec for spec in pattern.design.seams}
    return {
        "name": seam.name,
        "pieces": list(seam.pieces),
        "inner": seam.inner,
        "meets": seam.meets or None,
        "margin": seam.margin,
        "spread": _spread(declared.get(seam.name)),
        "hole": plain(seam.stitching.hole),
        "hole_count": len(seam.holes),
        "pitch": seam.stitching.pitch,
        "spacing_min": min(seam.spacings, default=None),
        "spacing_max": max(seam.spacings, default=None),
        "length": seam.length,
        "thread": seam.thread,
        "holes": [
            {"index": h.index, "run": h.run, "along": h.along, "x": h.at.x, "y": h.at.y, "heading": h.heading}
            for h in seam.holes
        ],
    }


def _spread(declared: SeamSpec | None) -> float:
    """How far beyond a fold zone the holes of an eased seam share in its stretch, mm."""
    return declared.spread if declared and declared.across is Across.EASED else 0.0
