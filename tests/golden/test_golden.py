"""Every design of the project drawn as it was when its golden drawing was last looked at.

A golden is the text dump of a design's paper figures: outlines, holes, fold lines, stitch lines and labels. It is
compared as geometry, so the noise of another machine's last digits is no difference. ``python -m pytest tests/golden
--renew-goldens`` writes them anew; look at what changed before you commit it.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from patternforge.design.load import load_design
from patternforge.drafting.pieces import figures
from patternforge.drafting.purpose import Purpose
from patternforge.drawing.compare import differences
from patternforge.drawing.dump import dump
from patternforge.drawing.extent import moved
from patternforge.drawing.model import Figure
from patternforge.geometry.transform import translation
from patternforge.wallet.assemble import drafted

HERE = Path(__file__).parent
DESIGNS = tuple(sorted((HERE.parents[1] / "designs").glob("*.yaml")))
TOLERANCE = 0.002  # mm; the dump gives four decimals, drafting is exact to far less
every_design = pytest.mark.parametrize("design", DESIGNS, ids=lambda path: path.stem)


def drawn(design: Path, **settings: str) -> tuple[Figure, ...]:
    loaded = load_design(design.read_text(encoding="utf-8"), design.name, settings)
    return figures(drafted(loaded), Purpose.PAPER)


def golden_of(design: Path) -> Path:
    return HERE / f"{design.stem}.txt"


def golden_text(design: Path) -> str:
    golden = golden_of(design)
    if not golden.exists():
        pytest.fail(f"{design.name} has no golden drawing; run python -m pytest tests/golden --renew-goldens")
    return golden.read_text(encoding="utf-8")


@pytest.fixture(scope="module", autouse=True)
def _renewed(request: pytest.FixtureRequest) -> None:
    """Before any test of this module: the goldens written anew if the flag says so, those without a design gone."""
    if request.config.getoption("renew_goldens"):
        for stale in HERE.glob("*.txt"):
            stale.unlink()
        for design in DESIGNS:
            golden_of(design).write_text(dump(drawn(design)), encoding="utf-8", newline="\n")


@every_design
def test_a_design_draws_as_its_golden(design: Path) -> None:
    assert differences(golden_text(design), dump(drawn(design)), TOLERANCE) == ()


def test_there_are_designs_and_every_golden_has_one() -> None:
    assert len(DESIGNS) >= 6
    assert {golden.stem for golden in HERE.glob("*.txt")} == {design.stem for design in DESIGNS}


@every_design
def test_a_margin_a_tenth_of_a_millimetre_wider_is_caught(design: Path) -> None:
    """Or, where nothing is sewn, a relief hole that is as much larger."""
    declared = load_design(design.read_text(encoding="utf-8"), design.name, {}).parameters
    size = next(parameter for parameter in declared if parameter.name in ("margin", "relief"))
    wider = dump(drawn(design, **{size.name: f"{size.value + 0.1} mm"}))
    assert differences(golden_text(design), wider, TOLERANCE)


@every_design
def test_any_one_ink_a_tenth_of_a_millimetre_off_is_caught(design: Path) -> None:
    """The ink in the middle of each figure, moved to the right."""
    for index, figure in enumerate(now := drawn(design)):
        middle = len(figure.inks) // 2
        shifted = moved(replace(figure, inks=(figure.inks[middle],)), translation(0.1, 0.0)).inks
        off = replace(figure, inks=(*figure.inks[:middle], *shifted, *figure.inks[middle + 1 :]))
        assert differences(golden_text(design), dump((*now[:index], off, *now[index + 1 :])), TOLERANCE)


@every_design
def test_the_noise_of_last_digits_is_no_change(design: Path) -> None:
    """Everything but what lies on a rounding edge of four decimals stays within the tolerance."""
    noisy = tuple(moved(figure, translation(1e-4, -1e-4)) for figure in drawn(design))
    assert differences(golden_text(design), dump(noisy), TOLERANCE) == ()
