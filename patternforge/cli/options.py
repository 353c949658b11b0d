"""The options of the commands: their words, their help, how their values are read."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from patternforge.cli.choices import (
    Awl,
    DxfRelease,
    Engraved,
    Face,
    Fold,
    Mirrored,
    PaperName,
    Punching,
    SchemaName,
    TypeSize,
    Usage,
)
from patternforge.cli.words import Corrections, corrections, length, one_of

__all__ = [
    "AwlPoints",
    "Bed",
    "CombSlot",
    "CombStep",
    "CombTongue",
    "CureLooks",
    "CutFace",
    "CutFiles",
    "DesignFile",
    "DespiteFindings",
    "DieHoles",
    "DieMirrors",
    "Dxf",
    "Engrave",
    "Every",
    "EveryCheck",
    "FoldTicks",
    "For",
    "From",
    "Gap",
    "Gauge",
    "Initials",
    "Keep",
    "Kerf",
    "Legs",
    "MachineName",
    "MachineWord",
    "Made",
    "Measured",
    "Name",
    "New",
    "Old",
    "OutFile",
    "OutFolder",
    "PaperSize",
    "Port",
    "SchemaOf",
    "Settings",
    "SmallestGap",
    "SmallestHole",
    "SmallestRadius",
    "SmallestSlot",
    "StripLength",
    "StripWidth",
    "Thickness",
    "Type",
    "White",
    "Word",
]

DesignFile = Annotated[Path, typer.Argument(metavar="DESIGN", help="A design file (YAML).", show_default=False)]
Keep = Annotated[
    Path | None,
    typer.Option(
        "--keep",
        metavar="FILE",
        help="A pattern.json whose pieces and dies are kept as they are and judged in the leathers of DESIGN.",
        show_default=False,
    ),
]
Made = Annotated[
    Path,
    typer.Argument(
        metavar="DESIGN", help="A design file (YAML), or a pattern.json that 'draft' wrote.", show_default=False
    ),
]
Old = Annotated[
    Path,
    typer.Argument(
        metavar="OLD", help="A design file (YAML), or a pattern.json that 'draft' wrote.", show_default=False
    ),
]
New = Annotated[Path | None, typer.Argument(metavar="NEW", help="Another, or none with --set.", show_default=False)]
Settings = Annotated[
    list[str],
    typer.Option(
        "--set",
        metavar="NAME=VALUE",
        help="A parameter, or a leather's thickness, instead of the file's: margin=4mm, outer=1.6mm. Repeatable.",
        show_default=False,
    ),
]
Initials = Annotated[
    list[str],
    typer.Option(
        "--initials",
        metavar="NAME=TEXT",
        help="Letters instead of the file's for this order: monogram=AW; no text keeps their box alone. Repeatable.",
        show_default=False,
    ),
]
For = Annotated[
    Usage,
    typer.Option("--for", metavar="|".join(Usage), parser=one_of(Usage), help="What the files are for."),
]
OutFolder = Annotated[Path, typer.Option("--out", metavar="DIR", help="The design's own folder is made in it.")]
OutFile = Annotated[Path | None, typer.Option("--out", metavar="FILE", help="The file to write.", show_default=False)]

Kerf = Annotated[
    float,
    typer.Option("--kerf", metavar="MM", parser=length, help="Laser: width the beam burns away, made up for."),
]
CutFace = Annotated[
    Face,
    typer.Option(
        "--cut-face",
        metavar="|".join(Face),
        parser=one_of(Face),
        help="Laser: showing face up, or its back up and all mirrored.",
    ),
]
FoldTicks = Annotated[
    Fold,
    typer.Option(
        "--fold-ticks", metavar="|".join(Fold), parser=one_of(Fold), help="Laser: short scored lines at folds."
    ),
]
Bed = Annotated[
    float | None,
    typer.Option("--bed", metavar="MM", parser=length, help="Laser: width of the machine's bed.", show_default=False),
]
Gap = Annotated[float, typer.Option("--gap", metavar="MM", parser=length, help="Laser: room between pieces.")]
Engrave = Annotated[
    Engraved,
    typer.Option(
        "--engrave",
        metavar="|".join(Engraved),
        parser=one_of(Engraved),
        help="Laser: letters too, in the operation that is marked and not cut.",
    ),
]
Dxf = Annotated[
    DxfRelease,
    typer.Option(
        "--dxf",
        metavar="|".join(DxfRelease),
        parser=one_of(DxfRelease),
        help="Release of the DXF files; r12 says no units.",
    ),
]
DieHoles = Annotated[
    Punching,
    typer.Option(
        "--die-holes", metavar="|".join(Punching), parser=one_of(Punching), help="Die: stitch holes it punches."
    ),
]
DieMirrors = Annotated[
    Mirrored,
    typer.Option(
        "--die-mirrors",
        metavar="|".join(Mirrored),
        parser=one_of(Mirrored),
        help="Die: mirror images share one, the leather turned over, or have their own.",
    ),
]
MachineName = Annotated[
    str | None,
    typer.Option(
        "--machine",
        metavar="NAME|FILE",
        help="A machine table: what reads the cutting files and how it cuts. Other options go before what it says.",
        show_default=False,
    ),
]
MachineWord = Annotated[
    str | None, typer.Argument(metavar="NAME", help="The table to show, to be copied.", show_default=False)
]
PaperSize = Annotated[
    PaperName,
    typer.Option("--paper", metavar="|".join(PaperName), parser=one_of(PaperName), help="Paper to print on."),
]
AwlPoints = Annotated[
    Awl,
    typer.Option(
        "--awl",
        metavar="|".join(Awl),
        parser=one_of(Awl),
        help="Paper: a cross in every stitch hole to set an awl on.",
    ),
]
White = Annotated[
    float, typer.Option("--white", metavar="MM", parser=length, help="Paper: rim that the printer leaves white.")
]
Measured = Annotated[
    Corrections,
    typer.Option(
        "--measured",
        metavar="AxB",
        parser=corrections,
        help="Paper: what the level and the upright 100 mm bar measure, 99.6x100.2.",
        show_default="100x100",
    ),
]
Type = Annotated[
    TypeSize,
    typer.Option(
        "--type", metavar="|".join(TypeSize), parser=one_of(TypeSize), help="Paper: letters large for poor eyesight."
    ),
]
DespiteFindings = Annotated[
    bool, typer.Option("--despite-findings", help="Write the files even if the wallet does not fit.")
]

CureLooks = Annotated[
    bool, typer.Option("--cure-looks", help="Look for changes that cure what wants a look, too; takes longer.")
]
Every = Annotated[bool, typer.Option("--every", help="A line for every measure, good ones too.")]
From = Annotated[
    str | None, typer.Option("--from", metavar="READY", help="The ready design to start from.", show_default=False)
]
Name = Annotated[
    str | None, typer.Option("--name", metavar="NAME", help="What your wallet is called.", show_default=False)
]
SchemaOf = Annotated[
    SchemaName,
    typer.Argument(metavar="|".join(SchemaName), parser=one_of(SchemaName), help="Of which kind of file."),
]

CutFiles = Annotated[
    list[Path], typer.Argument(metavar="FILE...", help="DXF, SVG or HPGL files, of any program.", show_default=False)
]
Port = Annotated[
    int, typer.Option("--port", min=0, max=65535, help="Port of the page on this machine; 0 takes a free one.")
]
EveryCheck = Annotated[bool, typer.Option("--every", help="Every flaw, and a line for every check that found none.")]


def _smallest(what: str, help_text: str) -> object:
    return typer.Option(f"--smallest-{what}", metavar="MM", parser=length, help=help_text, show_default=False)


SmallestHole = Annotated[float, _smallest("hole", "Holes and openings less across are told.")]
SmallestGap = Annotated[float, _smallest("gap", "Less left between two cuts is told.")]
SmallestRadius = Annotated[float, _smallest("radius", "Arcs of a smaller radius are told.")]
SmallestSlot = Annotated[float, _smallest("slot", "Narrower slots and notches are told.")]
Word = Annotated[str | None, typer.Argument(metavar="WORD", help="Only those with this word.", show_default=False)]

CombStep = Annotated[
    float, typer.Option("--step", metavar="MM", parser=length, help="Kerf from one slot of the comb to the next.")
]
CombSlot = Annotated[
    int | None,
    typer.Option("--slot", metavar="NUMBER", help="The last slot that takes the tongue.", show_default=False),
]
CombTongue = Annotated[
    float | None,
    typer.Option(
        "--tongue", metavar="MM", parser=length, help="What the tongue measures across.", show_default=False
    ),
]

StripLength = Annotated[float, typer.Option("--length", metavar="MM", parser=length, help="Length of the strip.")]
StripWidth = Annotated[float, typer.Option("--width", metavar="MM", parser=length, help="Width of the strip.")]
Gauge = Annotated[
    float, typer.Option("--gauge", metavar="MM", parser=length, help="Thickness of the stack inside the bend.")
]
Thickness = Annotated[
    float, typer.Option("--thickness", metavar="MM", parser=length, help="Thickness of the leather, measured.")
]
Legs = Annotated[
    list[str],
    typer.Argument(metavar="LEG+LEG", help="Both legs of a strip, from the outside of the bend.", show_default=False),
]
