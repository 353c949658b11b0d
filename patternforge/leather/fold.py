"""How much length a layer needs to go round a fold.

A bend leaves one fibre of the leather unstretched, the neutral one, at ``neutral`` thicknesses from the inside of
the bend; the flat length of the bend is the length of that fibre. Workshop sheet-metal practice computes a bend
allowance in the same way. No value of ``neutral`` for leather is in print, so it can be measured with a strip.
"""

from __future__ import annotations

from math import isfinite, pi

from patternforge.errors import DraftError

__all__ = ["MAX_COMPENSATION", "arc_length", "eased_length", "inside_radius", "neutral_from_strip"]

MAX_COMPENSATION = 1.2


def inside_radius(gap: float, thickness: float, min_radius: float) -> float:
    """Inside radius of a layer in a fold, mm: half of what its flanks enclose, but no sharper than it can bend.

    ``gap``: thickness of all that lies between the layer's flanks when closed, mm (0 or more). ``thickness`` of the
    layer, mm (0 or more). ``min_radius``: smallest inside radius in thicknesses (0 or more). DraftError otherwise.

    >>> inside_radius(gap=4.0, thickness=1.2, min_radius=0.5), inside_radius(gap=0.4, thickness=1.2, min_radius=0.5)
    (2.0, 0.6)
    """
    _check_not_negative({"gap": gap, "thickness": thickness, "smallest inside radius": min_radius})
    return max(gap / 2, min_radius * thickness)


def arc_length(angle_radians: float, radius: float, thickness: float, neutral: float) -> float:
    """Flat length of a layer's bend, mm: angle * (radius + neutral * thickness).

    The angle's sign only says which way the fold turns, and is set aside. ``radius`` is the inside radius and
    ``thickness`` the layer's, mm (0 or more); ``neutral`` lies within 0 and 1. DraftError otherwise.
    Source: bend allowance as in the US Navy training course NAVEDTRA 14119, p. 13-43, there with neutral 1/2.

    >>> round(arc_length(pi / 2, radius=3.0, thickness=0.5, neutral=0.5), 4)
    5.1051
    """
    _check_not_negative({"angle": abs(angle_radians), "inside radius": radius, "thickness": thickness})
    if not 0 <= neutral <= 1:
        raise DraftError(f"the neutral fibre lies {neutral:g} thicknesses from the inside; lawful is 0 to 1")
    return abs(angle_radians) * (radius + neutral * thickness)


def eased_length(true: float, innermost: float, compensation: float) -> float:
    """Length a layer is given in a fold zone, mm: innermost + compensation * (true - innermost).

    ``true``: the layer's own bend (see `arc_length`); ``innermost``: that of the innermost layer crossing the fold,
    mm (0 or more). ``compensation`` 0 lies flat when open, 1 closes true; lawful is 0 to 1.2. DraftError otherwise.

    >>> eased_length(true=9.0, innermost=5.0, compensation=0.5)
    7.0
    """
    _check_not_negative({"true length": true, "innermost length": innermost})
    if not 0 <= compensation <= MAX_COMPENSATION:
        raise DraftError(f"compensation {compensation:g} is not lawful; give 0 to {MAX_COMPENSATION:g}")
    return innermost + compensation * (true - innermost)


def neutral_from_strip(length: float, legs: float, gauge: float, thickness: float) -> float:
    """Place of the neutral fibre, in thicknesses from the inside, as read from a test strip (0 to 1).

    A strip ``length`` mm long when flat is folded by 180 degrees round a gauge (a stack of cards) ``gauge`` mm
    thick. ``legs`` is the sum of both readings, each from the outside of the bend to one end of the strip, mm;
    ``thickness`` is the strip's, mm. Each leg reaches half a gauge and one thickness past the bend's start, so the
    bend itself took length - legs + gauge + 2 * thickness. DraftError when a size is not positive (the gauge may
    be 0) or the reading puts the fibre outside of the leather.

    >>> round(neutral_from_strip(length=100.0, legs=98.8, gauge=3.0, thickness=1.2), 2)
    0.5
    """
    _check_not_negative({"length": length, "reading": legs, "gauge": gauge, "thickness": thickness})
    if 0 in (length, legs, thickness):
        raise DraftError("a test strip has a length, a thickness and two readings, all greater than 0")
    bend = length - legs + gauge + 2 * thickness
    neutral = (bend / pi - gauge / 2) / thickness
    if not 0 <= neutral <= 1:
        raise DraftError(
            f"the strip's readings put the neutral fibre {neutral:.2f} thicknesses from the inside of the bend; it "
            "must lie within the leather (0 to 1): read the strip and its thickness again"
        )
    return neutral


def _check_not_negative(sizes: dict[str, float]) -> None:
    for name, size in sizes.items():
        if not (isfinite(size) and size >= 0):
            raise DraftError(f"a fold's {name} of {size:g} is not lawful; give 0 or more")
