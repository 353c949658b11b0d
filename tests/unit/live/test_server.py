"""The server answers this machine alone, under its own name, at its own addresses, and tells of every change."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import closing, contextmanager
from dataclasses import dataclass
from http.client import HTTPConnection, HTTPResponse

import pytest

from patternforge.errors import ServingError
from patternforge.live.page import SCRIPT, STYLE
from patternforge.live.server import PageServer, started
from patternforge.live.shown import Board, Picture, Shown, Standing

SVG = b'<svg xmlns="http://www.w3.org/2000/svg"/>'
FIRST = Shown("First", Standing.GOOD, ("all is well",), (Picture("Pieces", SVG),))
SECOND = Shown("Second", Standing.NO, ("too narrow",))


@pytest.fixture
def server() -> Iterator[PageServer]:
    running = started(Board(FIRST))
    yield running
    running.shutdown()
    running.server_close()


@dataclass(frozen=True)
class Answered:
    status: int
    lawful: str
    body: bytes

    @property
    def text(self) -> str:
        return self.body.decode()


@contextmanager
def answering(server: PageServer, path: str, method: str = "GET", host: str = "") -> Iterator[HTTPResponse]:
    with closing(HTTPConnection("127.0.0.1", server.server_port, timeout=20)) as connection:
        connection.request(method, path, headers={"Host": host or server.names[0]})
        with connection.getresponse() as answer:
            yield answer


def asked(server: PageServer, path: str, method: str = "GET", host: str = "") -> Answered:
    with answering(server, path, method, host) as answer:
        return Answered(answer.status, answer.getheader("Content-Security-Policy", ""), answer.read())


def test_it_is_bound_to_the_loopback_address(server: PageServer) -> None:
    assert server.server_address[0] == "127.0.0.1"
    assert server.address == f"http://127.0.0.1:{server.server_port}/"


def test_the_page_its_content_and_its_pictures_are_at_their_addresses(server: PageServer) -> None:
    page = asked(server, "/").text
    assert page.startswith("<!doctype html>")
    assert "all is well" in page
    assert asked(server, "/wallet").text in page
    assert asked(server, "/picture/1/0.svg").body == SVG
    assert asked(server, "/page.css").text == STYLE
    assert asked(server, "/page.js").text == SCRIPT


def test_a_page_may_load_nothing_but_what_is_here(server: PageServer) -> None:
    lawful = asked(server, "/").lawful
    assert lawful.startswith("default-src 'none'")
    assert "unsafe" not in lawful


@pytest.mark.parametrize(
    "path", ["/other", "/../pyproject.toml", "/picture/0/0.svg", "/picture/1/1.svg", "/wallet?x"]
)
def test_no_other_address_is_answered(server: PageServer, path: str) -> None:
    answer = asked(server, path)
    assert (answer.status, answer.body) == (404, b"")


def test_under_another_name_nothing_is_told(server: PageServer) -> None:
    assert asked(server, "/", host="elsewhere.example").status == 421
    assert asked(server, "/changes", host=f"elsewhere.example:{server.server_port}").status == 421
    assert asked(server, "/", host=server.names[1]).status == 200


@pytest.mark.parametrize("method", ["POST", "PUT", "DELETE"])
def test_nothing_but_reading_is_answered(server: PageServer, method: str) -> None:
    assert asked(server, "/", method=method).status == 501


def test_every_change_is_told_once(server: PageServer) -> None:
    with answering(server, "/changes") as changes:
        assert changes.getheader("Content-Type") == "text/event-stream"
        assert [changes.readline(), changes.readline()] == [b"data: 1\n", b"\n"]
        server.board.put(SECOND)
        assert [changes.readline(), changes.readline()] == [b"data: 2\n", b"\n"]
    assert "too narrow" in asked(server, "/wallet").text
    assert asked(server, "/picture/1/0.svg").status == 404


def test_a_port_in_use_is_refused(server: PageServer) -> None:
    with pytest.raises(ServingError, match=f"port {server.server_port} is in use"):
        started(Board(FIRST), server.server_port)
