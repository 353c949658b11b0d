"""Command words put together to what the pipeline is asked for."""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping
from types import MappingProxyType
from typing import TypeVar

import typer

from patternforge.cli.choices import Awl, DxfRelease, Engraved, Face, Fold, Mirrored, Punching, TypeSize, Usage
from patternforge.cli.words import Corrections
from patternforge.drafting.purpose import (
    AwlPoints,
    CutFace,
    DieHoles,
    DieOptions,
    DraftingOptions,
    Engraving,
    FoldTicks,
    LaserOptions,
    Mirrors,
    PaperOptions,
)
from patternforge.drawing.printing import Letters, PrintSettings
from patternforge.errors import DraftError
from patternforge.export.dxf import DxfVersion
from patternforge.pipeline.request import OnNo

__all__ = ["cutting", "on_no", "printing", "refuse_unused", "release", "within_range"]

_Made = TypeVar("_Made")

_WIDE = 1000.0  # mm: a gap that goes with every lawful kerf

_LASER, _DIE, _PAPER = Usage.LASER, Usage.DIE, Usage.PAPER
_USED_FOR: Mapping[str, tuple[Usage, ...]] = MappingProxyType(
    {
        "kerf": (_LASER,),
        "cut_face": (_LASER,),
        "fold_ticks": (_LASER,),
        "bed": (_LASER,),
        "gap": (_LASER,),
        "engrave": (_LASER,),
        "dxf": (_LASER, _DIE),
        "die_holes": (_DIE,),
        "die_mirrors": (_DIE,),
        "paper": (_PAPER, _DIE),
        "white": (_PAPER, _DIE),
        "measured": (_PAPER, _DIE),
        "awl": (_PAPER,),
        "type_size": (_PAPER, _DIE),
    }
)


def refuse_unused(usage: Usage, written: Collection[str]) -> None:
    """A usage error for the first option among ``written`` (names of parameters) that no file for ``usage`` heeds."""
    for name, uses in _USED_FOR.items():
        if name in written and usage not in (*uses, Usage.ALL):
            raise typer.BadParameter(
                f"it changes nothing in files for {usage}; leave it out, or ask for --for {uses[0]}",
                param_hint=f"--{name.removesuffix('_size').replace('_', '-')}",
            )


def cutting(
    kerf: float,
    face: Face,
    ticks: Fold,
    gap: float,
    bed: float | None,
    punching: Punching,
    engraved: Engraved,
    mirrored: Mirrored = Mirrored.SHARED,
    awl: Awl = Awl.CROSSES,
) -> DraftingOptions:
    """How laser and die files are made; a usage error, naming the option, for a size out of its range."""
    within_range("--kerf", lambda: LaserOptions(kerf, gap=_WIDE))
    within_range("--bed", lambda: LaserOptions(bed=bed))
    within_range("--engrave", lambda: LaserOptions(cut_face=CutFace(face), engraving=Engraving(engraved)))
    laser = within_range(
        "--gap", lambda: LaserOptions(kerf, CutFace(face), FoldTicks(ticks), gap, bed, Engraving(engraved))
    )
    holes = {Punching.NONE: DieHoles.LEFT_OUT, Punching.PUNCHED: DieHoles.PUNCHED}
    return DraftingOptions(laser, DieOptions(holes[punching], Mirrors(mirrored)), PaperOptions(awl=AwlPoints(awl)))


def release(dxf: DxfRelease) -> DxfVersion:
    """The release of the DXF files."""
    return DxfVersion(dxf.upper())


def printing(white: float, measured: Corrections, size: TypeSize) -> PrintSettings:
    """How pages are printed; the design gives the title. A usage error for a rim out of its range."""
    within_range("--white", lambda: PrintSettings("", margin=white))
    letters = {TypeSize.USUAL: Letters.USUAL, TypeSize.LARGE: Letters.LARGE}[size]
    return PrintSettings(
        "", margin=white, x_correction=measured.across, y_correction=measured.upright, letters=letters
    )


def on_no(despite_findings: bool) -> OnNo:
    """What becomes of the files of a wallet that does not fit."""
    return OnNo.WRITE if despite_findings else OnNo.STOP


def within_range(option: str, made: Callable[[], _Made]) -> _Made:
    """What is made; a usage error that names the option when it is refused, so nothing else may be made with it."""
    try:
        return made()
    except DraftError as error:
        raise typer.BadParameter(str(error), param_hint=option) from error
