"""A single file is written whole, and never over another."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

import pytest

from patternforge.delivery.single import file_delivered
from patternforge.errors import DeliveryError
from tests.unit.delivery.killing import everything, outcomes


def test_a_new_file_is_written(tmp_path: Path) -> None:
    assert file_delivered(tmp_path / "a.yaml", b"design: A") == tmp_path / "a.yaml"
    assert everything(tmp_path) == {"a.yaml": b"design: A"}


def test_a_new_file_may_be_read_by_those_the_user_lets_read(tmp_path: Path) -> None:
    plain = tmp_path / "plain"
    plain.write_bytes(b"")
    file_delivered(tmp_path / "a.yaml", b"")
    assert (tmp_path / "a.yaml").stat().st_mode == plain.stat().st_mode


@pytest.mark.parametrize("kind", ["file", "folder", "link"])
def test_what_is_there_already_is_not_overwritten(tmp_path: Path, kind: str) -> None:
    path = tmp_path / "a.yaml"
    build: dict[str, Callable[[], object]] = {
        "file": lambda: path.write_bytes(b"mine"),
        "folder": path.mkdir,
        "link": lambda: path.symlink_to("b"),
    }
    build[kind]()
    before = everything(tmp_path)
    with pytest.raises(DeliveryError, match="not overwritten"):
        file_delivered(path, b"new")
    assert everything(tmp_path) == before


def test_a_file_that_holds_these_bytes_already_is_left_alone(tmp_path: Path) -> None:
    path = file_delivered(tmp_path / "a.yaml", b"same")
    before = path.stat()
    file_delivered(path, b"same")
    assert path.stat().st_mtime_ns == before.st_mtime_ns


def test_a_missing_folder_is_named(tmp_path: Path) -> None:
    with pytest.raises(DeliveryError, match="nowhere is not a folder"):
        file_delivered(tmp_path / "nowhere" / "a.yaml", b"")


def test_a_place_that_takes_no_files_is_named_as_it_was_given() -> None:
    with pytest.raises(DeliveryError) as caught:
        file_delivered(Path("/proc/a.yaml"), b"")
    assert str(caught.value).startswith("/proc/a.yaml: ")
    assert "choose another" in str(caught.value)


@pytest.mark.parametrize("knows_second_names", [True, False])
def test_a_name_taken_in_the_last_moment_is_not_overwritten(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, knows_second_names: bool
) -> None:
    path = tmp_path / "a.yaml"

    def link(source: Path, target: Path) -> None:
        path.write_bytes(b"mine")
        if knows_second_names:
            raise FileExistsError(17, "exists", str(target))
        raise PermissionError

    monkeypatch.setattr(os, "link", link)
    with pytest.raises(DeliveryError):
        file_delivered(path, b"new")
    assert everything(tmp_path) == {"a.yaml": b"mine"}


def test_a_disk_without_second_names_takes_the_file_all_the_same(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def link(*args: object) -> None:
        raise PermissionError

    monkeypatch.setattr(os, "link", link)
    file_delivered(tmp_path / "a.yaml", b"new")
    assert everything(tmp_path) == {"a.yaml": b"new"}


def test_a_run_killed_at_any_step_leaves_no_file_or_a_whole_one(tmp_path: Path) -> None:
    path = tmp_path / "folder" / "a.yaml"
    path.parent.mkdir()
    seen = []
    for _ in outcomes(lambda: file_delivered(path, b"new"), lambda: path.unlink(missing_ok=True)):
        seen.append(path.exists())
        assert not path.exists() or path.read_bytes() == b"new"
    assert {False, True} == set(seen)
