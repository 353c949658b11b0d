"""Everything that is written is waited for, with one call of the system or with one for each file."""

from __future__ import annotations

import os
from pathlib import Path
from types import SimpleNamespace

import pytest

from patternforge.delivery import settled


@pytest.fixture
def tree(tmp_path: Path) -> Path:
    (tmp_path / "laser").mkdir()
    (tmp_path / "laser" / "a.dxf").write_bytes(b"a")
    (tmp_path / "b.json").write_bytes(b"b")
    (tmp_path / "link").symlink_to("nowhere")
    return tmp_path


def test_without_the_one_call_every_file_and_folder_is_waited_for(
    tree: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    seen = []
    monkeypatch.setattr("ctypes.CDLL", lambda *args, **kwargs: SimpleNamespace())
    monkeypatch.setattr(os, "fsync", lambda handle: seen.append(Path(f"/proc/self/fd/{handle}").resolve()))
    settled.settle(tree)
    assert set(seen) == {tree, tree / "laser", tree / "laser" / "a.dxf", tree / "b.json"}


def test_the_one_call_is_made_for_the_disk_the_folder_lies_on(tree: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    seen: list[Path] = []

    def syncfs(handle: int) -> int:
        seen.append(Path(f"/proc/self/fd/{handle}").resolve())
        return 0

    monkeypatch.setattr("ctypes.CDLL", lambda *args, **kwargs: SimpleNamespace(syncfs=syncfs))
    settled.settle(tree)
    assert seen == [tree]


def test_a_disk_that_fails_is_not_passed_over(tree: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("ctypes.CDLL", lambda *args, **kwargs: SimpleNamespace(syncfs=lambda handle: -1))
    with pytest.raises(OSError, match=str(tree)):
        settled.settle(tree)
