"""``watch``: the whole program, started, asked, and ended as at a terminal."""

from __future__ import annotations

import re
import signal
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from shutil import copy
from socket import create_server
from urllib.request import urlopen

from patternforge.errors import DesignError, ServingError
from tests.unit.cli.running import run
from tests.unit.delivery.killing import everything

ROOT = Path(__file__).parents[3]


@contextmanager
def watched(design: Path) -> Iterator[subprocess.Popen[str]]:
    words = [sys.executable, "-m", "patternforge.cli", "watch", str(design)]
    with subprocess.Popen(words, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, cwd=ROOT) as running:
        try:
            yield running
        finally:
            running.kill()


def said(running: subprocess.Popen[str]) -> str:
    assert running.stdout is not None
    return running.stdout.readline().rstrip("\n")


def test_a_page_is_served_that_follows_the_file_until_the_command_is_stopped(tmp_path: Path) -> None:
    design = Path(copy(ROOT / "designs" / "card-sleeve.yaml", tmp_path / "own.yaml"))
    with watched(design) as running:
        assert re.fullmatch(r"own\.yaml: It fits: all \d+ measures are good\.", said(running))
        address = re.fullmatch(r"Open (http://127\.0\.0\.1:\d+/) in a browser; Ctrl-C ends it\.", said(running))
        assert address is not None
        with urlopen(address[1], timeout=20) as page:
            assert b"It fits: all" in page.read()
        design.write_text("design: 3\n", "utf-8")
        assert said(running).startswith(f"{design}:1:")
        with urlopen(address[1] + "wallet", timeout=20) as page:
            assert b"cannot be drafted as it is saved now" in page.read()
        running.send_signal(signal.SIGINT)
        rest, errors = running.communicate(timeout=20)
    assert (running.returncode, errors) == (130, "stopped\n")
    assert "Traceback" not in rest
    assert everything(tmp_path).keys() == {"own.yaml"}


def test_a_design_that_is_not_there_is_refused(tmp_path: Path) -> None:
    ended = run("watch", tmp_path / "none.yaml")
    assert (ended.status, ended.out) == (DesignError.exit_status, "")
    assert "there is no such file" in ended.err


def test_a_port_that_is_taken_is_refused() -> None:
    with create_server(("127.0.0.1", 0)) as taken:
        port = taken.getsockname()[1]
        ended = run("watch", ROOT / "designs" / "card-sleeve.yaml", "--port", str(port))
    assert (ended.status, ended.out) == (ServingError.exit_status, "")
    assert f"port {port} is in use" in ended.err
