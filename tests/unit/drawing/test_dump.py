from __future__ import annotations

from patternforge.drawing.dump import dump
from patternforge.drawing.model import Dot, Figure, Role, Stroke, Text
from patternforge.geometry.path import from_vertices
from patternforge.geometry.point import Point
from tests.figures import panel, pocket


def test_a_dump_says_everything_the_drawing_says() -> None:
    figure = Figure(
        'odd "name"',
        "outer",
        (
            Dot(Role.HOLE, Point(1, 2), 0.8),
            Stroke(Role.OUTLINE, from_vertices([(0, 0, 0), (10, 0, 1.0)], closed=True)),
            Stroke(Role.SEAM, from_vertices([(1, 1, 0), (9, 1, 0)], closed=False)),
            Text(Role.LABEL, Point(5, 3), 2.5, "Größe", 450.0),
        ),
    )
    assert dump([figure]) == (
        'figure "odd \\"name\\"" group "outer" size 10.0000 5.0000\n'
        "  stitch hole dot at 1.0000 2.0000 diameter 0.8000\n"
        "  outline closed at 0.0000 0.0000\n"
        "    line to 10.0000 0.0000\n"
        "    arc to 0.0000 0.0000 through 5.0000 5.0000\n"
        "  stitch line open at 1.0000 1.0000\n"
        "    line to 9.0000 1.0000\n"
        '  label text at 5.0000 3.0000 height 2.5000 angle 90.0000 left "Größe"\n'
    )


def test_a_figure_without_inks_is_dumped_as_empty() -> None:
    assert dump([Figure("gap", "outer", ())]) == 'figure "gap" group "outer" empty\n'


def test_noise_far_below_a_micrometre_does_not_change_the_text() -> None:
    clean = Figure("f", "g", (Dot(Role.HOLE, Point(0.0, 0.3), 1.0),))
    noisy = Figure("f", "g", (Dot(Role.HOLE, Point(-1e-12, 0.1 + 0.2), 1.0),))
    assert dump([noisy]) == dump([clean])


def test_figures_follow_in_the_order_given() -> None:
    assert dump([panel(), pocket()]) == dump([panel()]) + dump([pocket()])
