"""What a delivery does with a folder: its own files come and go, everything else stays."""

from __future__ import annotations

import os
from collections.abc import Callable, Mapping
from pathlib import Path

import pytest

from patternforge.delivery import folder as delivery
from patternforge.delivery.exchange import exchanged_at_once, put_in_place
from patternforge.delivery.folder import delivered
from patternforge.delivery.listing import LIST, listed, listing
from patternforge.errors import DeliveryError
from tests.unit.delivery.killing import everything

FILES = {"a.txt": b"a", "laser/b.txt": b"b"}
OTHER = {"a.txt": b"another a"}


@pytest.fixture
def place(tmp_path: Path) -> Path:
    return tmp_path / "wallet"


def refusal(place: Path, files: Mapping[str, bytes]) -> str:
    before = everything(place.parent)
    with pytest.raises(DeliveryError) as caught:
        delivered(place, files)
    assert everything(place.parent) == before
    return str(caught.value)


def test_the_folder_holds_the_files_and_their_list(place: Path) -> None:
    done = delivered(place, FILES)
    assert everything(place) == {"a.txt": b"a", "laser": None, "laser/b.txt": b"b", LIST: listing(FILES)}
    assert (done.written, done.removed, done.kept) == (("a.txt", "laser/b.txt", LIST), (), ())


def test_files_of_the_last_set_that_are_not_in_this_one_are_taken_away_and_named(place: Path) -> None:
    delivered(place, FILES)
    assert delivered(place, OTHER).removed == ("laser/b.txt",)
    assert everything(place) == {"a.txt": b"another a", LIST: listing(OTHER)}


def test_files_links_and_empty_folders_of_the_users_are_carried_over(place: Path) -> None:
    delivered(place, FILES)
    (place / "laser" / "mine.txt").write_bytes(b"mine")
    (place / "photos").mkdir()
    (place / "link").symlink_to("nowhere")
    kept = delivered(place, OTHER).kept
    assert kept == ("laser/mine.txt", "link", "photos")
    mine = {"laser": None, "laser/mine.txt": b"mine", "link": "nowhere", "photos": None}
    assert everything(place) == {"a.txt": b"another a", LIST: listing(OTHER), **mine}


def test_a_file_of_the_users_that_is_carried_over_stays_the_same_file(place: Path) -> None:
    delivered(place, FILES)
    (place / "mine.txt").write_bytes(b"mine")
    before = (place / "mine.txt").stat()
    delivered(place, OTHER)
    after = (place / "mine.txt").stat()
    assert (after.st_mtime_ns, after.st_mode, after.st_nlink) == (before.st_mtime_ns, before.st_mode, 1)


def test_a_disk_without_second_names_is_copied_on(place: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refused(*args: object, **kwargs: object) -> None:
        raise PermissionError

    delivered(place, FILES)
    (place / "mine.txt").write_bytes(b"mine")
    monkeypatch.setattr(os, "link", refused)
    delivered(place, OTHER)
    assert everything(place) == {"a.txt": b"another a", LIST: listing(OTHER), "mine.txt": b"mine"}
    assert everything(place.parent).keys() == {"wallet", *(f"wallet/{path}" for path in everything(place))}


def test_a_file_of_the_set_that_was_changed_by_hand_is_not_overwritten(place: Path) -> None:
    delivered(place, FILES)
    (place / "laser" / "b.txt").write_bytes(b"changed")
    assert "laser/b.txt" in refusal(place, FILES)


def test_a_changed_file_whose_name_is_not_needed_is_kept(place: Path) -> None:
    delivered(place, FILES)
    (place / "laser" / "b.txt").write_bytes(b"changed")
    assert delivered(place, OTHER).kept == ("laser/b.txt",)
    assert (place / "laser" / "b.txt").read_bytes() == b"changed"


def test_every_file_in_the_way_is_named_at_once(place: Path) -> None:
    (place / "laser").mkdir(parents=True)
    for path in FILES:
        (place / path).write_bytes(b"mine")
    message = refusal(place, FILES)
    assert all(str(place / path) in message for path in FILES)
    assert "--out" in message


def test_a_list_changed_by_hand_is_the_users_and_so_are_the_files_it_names(place: Path) -> None:
    delivered(place, FILES)
    text = (place / LIST).read_bytes()
    (place / LIST).write_bytes(text.replace(b"a.txt", b"A.txt"))
    message = refusal(place, OTHER)
    assert str(place / LIST) in message
    assert str(place / "a.txt") in message


def test_without_its_list_a_folder_is_written_again_if_every_byte_is_as_it_would_be(place: Path) -> None:
    delivered(place, FILES)
    (place / LIST).unlink()
    assert delivered(place, FILES).kept == ()
    (place / LIST).unlink()
    assert str(place / "a.txt") in refusal(place, OTHER)


@pytest.mark.parametrize(
    "build",
    [
        lambda place: (place / "laser").write_bytes(b"a file where a folder is needed"),
        lambda place: (place / "laser").symlink_to(place.parent),
        lambda place: (place / "a.txt").mkdir(),
        lambda place: (place / "a.txt" / "deep").mkdir(parents=True),
        lambda place: (place / "a.txt").symlink_to("elsewhere"),
    ],
)
def test_what_stands_where_another_kind_of_thing_is_needed_is_named(
    place: Path, build: Callable[[Path], None]
) -> None:
    place.mkdir()
    build(place)
    assert "names are needed" in refusal(place, FILES)


def test_a_file_where_the_folder_is_to_be_is_left_alone(place: Path) -> None:
    place.write_bytes(b"mine")
    assert "move it away" in refusal(place, FILES)


def test_a_folder_reached_through_a_link_is_filled_where_it_lies(tmp_path: Path) -> None:
    real, link = tmp_path / "disk" / "real", tmp_path / "link"
    real.mkdir(parents=True)
    link.symlink_to(real)
    delivered(link, FILES)
    assert link.is_symlink()
    assert (real / "a.txt").read_bytes() == b"a"


def test_who_may_read_the_folder_stays_as_it_was(place: Path) -> None:
    delivered(place, FILES)
    place.chmod(0o750)
    (place / "laser").chmod(0o770)
    delivered(place, FILES)
    assert [path.stat().st_mode & 0o777 for path in (place, place / "laser")] == [0o750, 0o770]


@pytest.mark.parametrize("at_once", [True, False])
def test_what_the_user_saves_while_the_folders_change_places_is_put_back(
    place: Path, monkeypatch: pytest.MonkeyPatch, at_once: bool
) -> None:
    def meanwhile(ready: Path, folder: Path, aside: Path) -> None:
        (folder / "new.txt").write_bytes(b"just saved")
        (folder / "laser" / "b.txt").write_bytes(b"just changed")
        put_in_place(ready, folder, aside, exchanged_at_once if at_once else lambda one, other: False)

    delivered(place, FILES)
    monkeypatch.setattr(delivery, "put_in_place", meanwhile)
    done = delivered(place, FILES)
    assert set(done.kept) == {"laser/b-2.txt", "new.txt"}
    assert (place / "laser" / "b-2.txt").read_bytes() == b"just changed"
    assert (place / "laser" / "b.txt").read_bytes() == b"b"
    assert (place / "new.txt").read_bytes() == b"just saved"


def test_folders_that_cannot_be_moved_leave_the_old_set(place: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def stuck(ready: Path, folder: Path, aside: Path) -> None:
        raise OSError(16, "busy", str(folder))

    delivered(place, FILES)
    monkeypatch.setattr(delivery, "put_in_place", stuck)
    assert "in use" in refusal(place, OTHER)


def test_ctrl_c_between_the_two_steps_leaves_the_old_set(place: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def interrupted(ready: Path, folder: Path, aside: Path) -> None:
        folder.rename(aside)
        raise KeyboardInterrupt

    delivered(place, FILES)
    before = everything(place.parent)
    monkeypatch.setattr(delivery, "put_in_place", interrupted)
    with pytest.raises(KeyboardInterrupt):
        delivered(place, OTHER)
    assert everything(place.parent) == before


def test_a_folder_that_may_not_be_written_to_is_named(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refused(self: Path, *args: object, **kwargs: object) -> None:
        raise PermissionError(13, "no", str(self))

    monkeypatch.setattr(Path, "mkdir", refused)
    with pytest.raises(DeliveryError, match="no permission"):
        delivered(tmp_path / "deep" / "wallet", FILES)


def test_a_folder_of_the_last_set_that_is_locked_is_named_before_anything_is_moved(
    place: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    delivered(place, FILES)
    allowed = os.access
    monkeypatch.setattr(os, "access", lambda path, mode: Path(path).name != "laser" and allowed(path, mode))
    message = refusal(place, FILES)
    assert message.startswith(f"{place / 'laser'}: there is no permission to write here")


@pytest.mark.parametrize(
    ("refusing", "named"),
    [(".wallet.patternforge", ""), ("ready/a.txt", "a.txt"), ("building/laser", "laser"), ("building", "")],
)
def test_a_refusal_on_the_workbench_names_the_place_the_user_knows(
    place: Path, monkeypatch: pytest.MonkeyPatch, refusing: str, named: str
) -> None:
    def refused(folder: Path) -> None:
        bench = folder / ".wallet.patternforge"
        raise OSError(28, "full", str(bench if refusing == bench.name else bench / refusing))

    monkeypatch.setattr(delivery, "settle_names", refused)
    with pytest.raises(DeliveryError) as caught:
        delivered(place, FILES)
    assert str(caught.value).startswith(f"{place / named}: the disk is full")


def test_a_link_that_leads_to_itself_is_refused(place: Path) -> None:
    place.symlink_to(place)
    assert str(place) in refusal(place, FILES)


@pytest.mark.parametrize("path", ["../a.txt", "/a.txt", "", "a//b.txt", "a/./b.txt", "a\nb.txt", LIST])
def test_a_path_that_is_no_plain_name_in_the_folder_is_refused(path: str) -> None:
    with pytest.raises(DeliveryError):
        listing({path: b""})


@pytest.mark.parametrize(
    "broken", [b"", b"\n", b"# Written by patternforge\n", os.urandom(200), listing(FILES)[:-1], listing(FILES) * 2]
)
def test_what_is_not_a_list_as_written_names_no_file(broken: bytes) -> None:
    assert listed(broken) == {}


def test_two_runs_at_once_wait_for_each_other(place: Path) -> None:
    """Ten processes write sets of their own into one folder; the folder then holds one of them, whole."""
    sets = [{"a.txt": bytes([65 + n]) * 5000, f"only-{n}.txt": b""} for n in range(10)]
    children = []
    for files in sets:
        child = os.fork()
        if child == 0:
            try:
                for _ in range(5):
                    delivered(place, files)
            except BaseException:
                os._exit(1)
            os._exit(0)
        children.append(child)
    assert [os.waitpid(child, 0)[1] for child in children] == [0] * 10
    assert everything(place) in [{**files, LIST: listing(files)} for files in sets]
