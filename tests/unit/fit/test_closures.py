"""Straps that close round what comes and goes: how much leather lacks when full, how much is to spare when empty."""

from __future__ import annotations

from dataclasses import replace
from math import pi

import pytest

from patternforge.fit.closures import closure_findings
from patternforge.fit.findings import Finding, Verdict
from patternforge.fit.layout import layout
from patternforge.wallet.assemble import drafted
from patternforge.wallet.spec import Design, Load
from tests.shapes_built import strap_case
from tests.unit.fit.found import GOOD, LOOK, NO

LACKING, SPARE = "leather lacking at the closure, full", "leather to spare at the closure, empty"


def told(design: Design) -> dict[str, Finding]:
    pattern = drafted(design)
    laid = layout(pattern, {leather.role: leather for leather in design.leathers})
    return {found.what: found for found in closure_findings(laid)}


@pytest.mark.parametrize("load", [1.0, 0.25, 0.0])
def test_the_way_between_the_halves_follows_the_contents_at_both_folds(load: float) -> None:
    # Four blocks of 0.76 mm lie on the front: between the flanks of the shell, and on what the strap goes round. The
    # shell bends no sharper than 0.6 mm inside, as round 1.2 mm.
    found = told(strap_case(0.76, 4, load=Load(notes=load)))
    empty_strap, full_strap = (2 * 1.2 + 0.8 + n * 0.76 for n in (0, 4))
    empty_shell, full_shell = (max(0.8 + n * 0.76, 1.2) for n in (0, 4))
    held = 4 * load * 0.76
    has = (2 * 1.2 + 0.8 + held) + max(0.8 + held, 1.2)
    assert found[LACKING].measured == pytest.approx(pi / 2 * (full_strap + full_shell - has), abs=1e-9)
    assert found[SPARE].measured == pytest.approx(pi / 2 * (has - empty_strap - empty_shell), abs=1e-9)


@pytest.mark.parametrize(
    ("thickness", "load", "what", "verdict"),
    # Each millimetre of contents makes up pi mm: half of it at the strap's fold and half at the shell's.
    [
        (1.0, 1.0, SPARE, GOOD),
        (4.0, 1.0, SPARE, LOOK),
        (8.0, 1.0, SPARE, NO),
        (1.0, 0.0, LACKING, GOOD),
        (2.0, 0.0, LACKING, LOOK),
        (4.0, 0.0, LACKING, NO),
    ],
)
def test_little_is_given_more_is_pointed_out_and_too_much_refused(
    thickness: float, load: float, what: str, verdict: Verdict
) -> None:
    assert told(strap_case(thickness, 1, load=Load(notes=load)))[what].verdict is verdict


def test_nothing_is_said_where_nothing_comes_or_goes_or_hardware_meets_nothing() -> None:
    assert told(strap_case(0.1, 1)) == {}
    assert told(replace(strap_case(), fittings=())) == {}


def test_what_the_fold_goes_round_stays_in() -> None:
    design = strap_case(0.1, 1)
    folds = tuple(replace(fold, around=6.0) for fold in design.body.folds)
    assert told(replace(design, body=replace(design.body, folds=folds))) == {}
