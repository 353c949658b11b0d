"""The catalogue of hardware as a whole: every kind can be set, and says how its sizes are known."""

from __future__ import annotations

import re
import tomllib
from importlib.resources import files

import pytest

from patternforge.leather.catalogue import catalogue
from patternforge.leather.hardware import Hardware, Setting, hardware

KINDS = sorted(hardware().values(), key=lambda kind: kind.name)
each_kind = pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)


def test_no_name_is_given_twice_nor_to_an_item_too() -> None:
    data = tomllib.loads(files("patternforge.leather").joinpath("hardware.toml").read_text(encoding="utf-8"))
    names = [entry["name"] for group in data["group"] for entry in group["kinds"]]
    assert len(names) == len(set(names)) == len(KINDS)
    assert not set(names) & set(catalogue())


@each_kind
def test_a_name_is_lower_case_words_joined_by_hyphens(kind: Hardware) -> None:
    assert re.fullmatch(r"[a-z]+(-[a-z0-9]+)*", kind.name)
    assert hardware()[kind.name] == kind


@each_kind
def test_a_cap_hides_its_holes_and_every_half_has_one(kind: Hardware) -> None:
    """Unless the whole half is hidden: then it has a thickness and no hole."""
    punched = kind.setting is Setting.PUNCHED
    assert 1 <= len(kind.halves) <= 2
    assert len(kind.holes) == (len(kind.halves) if punched else 0)
    assert (kind.thickness > 0) is not punched
    assert len(set(kind.halves)) == len(kind.halves)
    assert all(0 < hole < kind.cap for hole in kind.holes)


def test_hidden_kinds_are_thinner_than_wide_and_say_their_size() -> None:
    hidden = [kind for kind in KINDS if kind.setting is Setting.COVERED]
    assert len(hidden) >= 3
    for kind in hidden:
        assert kind.thickness < kind.cap / 4
        assert f"{kind.cap:g} x {kind.thickness:g} mm" in kind.title


@each_kind
def test_a_kind_says_what_it_is_and_how_its_sizes_are_known(kind: Hardware) -> None:
    assert kind.title
    assert re.search(r"\((seen|memory|common practice)\)$", kind.source)


def test_only_the_width_of_a_snap_comes_from_print() -> None:
    """So that nobody takes a hole for a published size."""
    assert {kind.name.partition("-")[0] for kind in KINDS if "(seen)" in kind.source} == {"snap"}
    assert all(kind.source.endswith("(common practice)") for kind in KINDS)


def test_rivets_and_screw_posts_join_what_they_go_through_and_snaps_do_not() -> None:
    joining = {kind.name.split("-")[0] for kind in KINDS if kind.joins}
    assert joining == {"rivet", "post"}
