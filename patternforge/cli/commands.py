"""The command words: options in, one use case, a report out. What is heavy is loaded by the command that needs it."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from patternforge import __version__
from patternforge.cli import options
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
from patternforge.cli.comparing import comparing
from patternforge.cli.guard import guarded
from patternforge.cli.lines import say, searching
from patternforge.cli.making import making
from patternforge.cli.trials import trials
from patternforge.cli.watching import watching
from patternforge.cli.why import reasons
from patternforge.cli.words import TRUE, given, pairs, texts

__all__ = ["app"]

app = typer.Typer(
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
    add_completion=False,
    no_args_is_help=True,
    context_settings={"help_option_names": ["-h", "--help"]},
    help="Drafts leather wallets from declared measurements and writes the cutting files.",
)


def _version(wanted: bool) -> None:
    if wanted:
        print(f"patternforge {__version__}")
        raise typer.Exit


@app.callback()
def _top(
    version: Annotated[
        bool, typer.Option("--version", callback=_version, is_eager=True, help="Show the version and exit.")
    ] = False,
) -> None:
    pass


@app.command(short_help="Draft a design and write its files, all of them or none.")
@guarded
def draft(
    context: typer.Context,
    design: options.DesignFile,
    usage: options.For = Usage.ALL,
    settings: options.Settings = [],  # noqa: B006
    initials: options.Initials = [],  # noqa: B006
    out: options.OutFolder = Path("out"),
    machine: options.MachineName = None,
    kerf: options.Kerf = 0.0,
    cut_face: options.CutFace = Face.FRONT,
    fold_ticks: options.FoldTicks = Fold.NONE,
    bed: options.Bed = None,
    gap: options.Gap = 10.0,
    engrave: options.Engrave = Engraved.NONE,
    dxf: options.Dxf = DxfRelease.R2010,
    die_holes: options.DieHoles = Punching.NONE,
    die_mirrors: options.DieMirrors = Mirrored.SHARED,
    paper: options.PaperSize = PaperName.A4,
    white: options.White = 10.0,
    measured: options.Measured = TRUE,
    type_size: options.Type = TypeSize.USUAL,
    awl: options.AwlPoints = Awl.CROSSES,
    despite_findings: options.DespiteFindings = False,
    keep: options.Keep = None,
) -> None:
    """Draft DESIGN and write its files into a folder of its own, all of them or none.

    The last set of the design is replaced. Files in the folder that are not the program's are left as they are.
    """
    from patternforge.cli.report import draft_report
    from patternforge.cli.request import cutting, on_no, printing, refuse_unused, release
    from patternforge.drawing.paper import paper_named
    from patternforge.pipeline.draft import draft as drafted
    from patternforge.pipeline.request import DraftRequest, Wanted

    written = given(context)
    chosen = cutting(kerf, cut_face, fold_ticks, gap, bed, die_holes, engrave, die_mirrors, awl)
    request = DraftRequest(
        design,
        pairs(settings),
        Wanted(usage),
        out,
        chosen,
        release(dxf),
        paper_named(paper),
        printing(white, measured, type_size),
        on_no(despite_findings),
        texts(initials),
        keep=keep,
    )
    if machine is None:
        refuse_unused(usage, written)
    else:
        from patternforge.cli.machines import with_machine

        request = with_machine(request, machine, written)
    say(draft_report(drafted(request, searching), request))


@app.command(short_help="Draft a design and say how it fits. Writes nothing.")
@guarded
def check(
    design: options.DesignFile,
    settings: options.Settings = [],  # noqa: B006
    initials: options.Initials = [],  # noqa: B006
    every: options.Every = False,
    cure_looks: options.CureLooks = False,
) -> None:
    """Draft DESIGN, close it on what it holds, and say how it fits. Writes nothing.

    Below what does not fit stand the smallest changes of one parameter that cure it. The exit status is 0 when it
    fits, also where something wants a look, and 6 when it does not fit. A title or name with a letter that cannot be
    drawn on paper is told too, with status 5.
    """
    from patternforge.cli.checking import check_report, full_report
    from patternforge.errors import FitError
    from patternforge.fit.findings import Verdict
    from patternforge.pipeline.check import check as checked
    from patternforge.pipeline.stages import lettered

    cured = (Verdict.NO, Verdict.LOOK) if cure_looks else (Verdict.NO,)
    done = checked(design, pairs(settings), texts(initials), cured, searching)
    say(full_report(done) if every else check_report(done))
    wallet = lettered(done.wallet)
    if wallet.verdict is Verdict.NO:
        raise typer.Exit(FitError.exit_status)


@app.command(short_help="Draw a wallet to be looked at, and how it is made up.")
@guarded
def views(
    design: options.DesignFile,
    settings: options.Settings = [],  # noqa: B006
    out: options.OutFolder = Path("out"),
    paper: options.PaperSize = PaperName.A4,
) -> None:
    """Draw DESIGN to be looked at before it is cut, and how it is made up step by step.

    Thickness over every point, sections, the wallet folded, all pieces pulled apart, a picture for each step: as SVG,
    on pages, and as a page that turns and closes the wallet.
    """
    from patternforge.cli.viewing import views_report
    from patternforge.drawing.paper import paper_named
    from patternforge.pipeline.views import ViewsRequest
    from patternforge.pipeline.views import views as viewed

    say(views_report(viewed(ViewsRequest(design, pairs(settings), out, paper_named(paper)))))


@app.command(short_help="Say what in cutting files would spoil leather, and where.")
@guarded
def audit(
    files: options.CutFiles,
    every: options.EveryCheck = False,
    smallest_hole: options.SmallestHole = 0.0,
    smallest_gap: options.SmallestGap = 0.0,
    smallest_radius: options.SmallestRadius = 0.0,
    smallest_slot: options.SmallestSlot = 0.0,
) -> None:
    """Read cutting files of any program and say what in them would spoil leather, where, and what to do.

    The exit status is 0 when all files are clean, 10 when something was found, and 9 when a file cannot be read.
    """
    from patternforge.audit.flaws import Limits
    from patternforge.cli.audit import audit_report, every_check
    from patternforge.errors import AuditError
    from patternforge.pipeline.audit import audit as audited

    limits = Limits(smallest_hole, smallest_gap, smallest_radius, smallest_slot)
    reports = [audited(path, limits) for path in files]
    for report in reports:
        say([*(every_check(report) if every else audit_report(report)), ""])
    if any(report.flaws for report in reports):
        raise typer.Exit(AuditError.exit_status)


@app.command(short_help="Start a design of your own from a ready one.")
@guarded
def new(
    start: options.From = None,
    name: options.Name = None,
    settings: options.Settings = [],  # noqa: B006
    out: options.OutFile = None,
) -> None:
    """Start a design of your own from a ready one; with no options it asks a few questions. Overwrites nothing."""
    from patternforge.cli.called import to_type
    from patternforge.cli.start import Wish, started, wished

    path = started(wished(Wish(start or "", name or "", pairs(settings), out)))
    fits, drafts = to_type("check", path), to_type("draft", path)
    say([f"{path} is written.", f"See how it fits: {fits}", f"Draft it: {drafts}"])


@app.command(short_help="Write the JSON Schema of design files or other files.")
@guarded
def schema(of: options.SchemaOf = SchemaName.DESIGN, out: options.OutFile = None) -> None:
    """Write the JSON Schema of design files, machine tables or price lists, for editors, or of pattern.json."""
    from patternforge.cli.schemas import schema_text
    from patternforge.delivery import file_delivered

    text = schema_text(of)
    if out is None:
        print(text, end="")
    else:
        say([f"{file_delivered(out, text.encode('ascii'))} is written."])


@app.command(short_help="List what a wallet can hold and what closes it.")
@guarded
def items(word: options.Word = None) -> None:
    """List what a wallet can hold and what closes it by name, with sizes in mm and where they come from."""
    from patternforge.cli.items import items_table

    say(items_table(word or ""))


@app.command(short_help="List the machine tables, show one, or copy one.")
@guarded
def machines(name: options.MachineWord = None, out: options.OutFile = None) -> None:
    """List the machine tables that have a name; with a NAME show that table, or copy it to a file of your own."""
    from patternforge.cli.machines import machines_table
    from patternforge.delivery import file_delivered
    from patternforge.pipeline.machines import table_text

    if name is None:
        if out is not None:
            raise typer.BadParameter("name the table to copy, such as laser", param_hint="--out")
        say(machines_table(Path()))
    elif out is None:
        print(table_text(name, Path()), end="")
    else:
        say([f"{file_delivered(out, table_text(name, Path()).encode('utf-8'))} is written."])


# Commands that stand in modules of their own are commands like the others.
app.add_typer(trials)
app.add_typer(watching)
app.add_typer(comparing)
app.add_typer(reasons)
app.add_typer(making)
