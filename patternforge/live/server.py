"""The server of the page: answers this machine alone, reads nothing from the disk, and knows few addresses."""

from __future__ import annotations

import errno
from collections.abc import Callable
from http import HTTPStatus
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from threading import Thread

from patternforge.errors import ServingError
from patternforge.live.page import SCRIPT, STYLE, content_html, page_html, picture_path
from patternforge.live.shown import Board

__all__ = ["PageServer", "started"]

_HOST = "127.0.0.1"
_STILL_THERE = 15.0  # seconds after which a waiting page is told that nothing has changed
_LAWFUL = "default-src 'none'; img-src 'self' data:; style-src 'self'; script-src 'self'; connect-src 'self'"
_PICTURES = "default-src 'none'; style-src 'unsafe-inline'"  # a picture may style itself and fetch nothing

Answer = tuple[str, str, str]
"""Kind of what is sent, what it may do in a browser, its text."""


class PageServer(ThreadingHTTPServer):
    """A server bound to the loopback address, and the board whose state it shows."""

    daemon_threads = True

    def __init__(self, board: Board, port: int) -> None:
        self.board = board
        super().__init__((_HOST, port), _Asked)

    @property
    def address(self) -> str:
        """The address to open in a browser."""
        return f"http://{_HOST}:{self.server_port}/"

    @property
    def names(self) -> tuple[str, str]:
        """The names under which a page may ask; any other comes from a site that borrowed this machine's address."""
        return f"{_HOST}:{self.server_port}", f"localhost:{self.server_port}"


def started(board: Board, port: int = 0) -> PageServer:
    """A server that answers in a thread of its own until it is shut down; 0 takes any free port.

    ServingError when the port cannot be had.
    """
    try:
        server = PageServer(board, port)
    except OSError as error:
        taken = error.errno in (errno.EADDRINUSE, errno.EACCES)
        reason = "is in use or not to be had" if taken else f"cannot be opened: {error.strerror}"
        raise ServingError(f"--port: port {port} {reason}; choose another, or leave it out for a free one") from error
    Thread(target=server.serve_forever, daemon=True).start()
    return server


class _Asked(BaseHTTPRequestHandler):
    server: PageServer
    protocol_version = "HTTP/1.1"

    def do_GET(self) -> None:
        if self.headers.get("Host") not in self.server.names:
            self._refuse(HTTPStatus.MISDIRECTED_REQUEST)
        elif self.path == "/changes":
            self._tell_changes()
        else:
            answer = _answer(self.server.board, self.path)
            if answer is None:
                self._refuse(HTTPStatus.NOT_FOUND)
            else:
                self._send(answer)

    def log_message(self, format: str, *args: object) -> None:
        """Nothing: the screen is for the report."""

    def _send(self, answer: Answer) -> None:
        kind, lawful, text = answer
        data = text.encode("utf-8")
        self._head(HTTPStatus.OK, kind, lawful)
        self.send_header("Content-Length", str(len(data)))
        self.end_headers()
        self.wfile.write(data)

    def _refuse(self, status: HTTPStatus) -> None:
        self._head(status, "text/plain; charset=utf-8", _LAWFUL)
        self.send_header("Content-Length", "0")
        self.end_headers()

    def _head(self, status: HTTPStatus, kind: str, lawful: str) -> None:
        self.send_response(status)
        self.send_header("Content-Type", kind)
        self.send_header("Content-Security-Policy", lawful)
        self.send_header("X-Content-Type-Options", "nosniff")
        self.send_header("Cache-Control", "no-store")

    def _tell_changes(self) -> None:
        """Server-sent events (HTML Living Standard, 9.2): one for every newer state, until the page is gone."""
        self._head(HTTPStatus.OK, "text/event-stream", _LAWFUL)
        self.send_header("Connection", "close")
        self.end_headers()
        self.close_connection = True
        number = 0
        try:
            while True:
                newer = self.server.board.newer_than(number, _STILL_THERE)
                number = newer or number
                self.wfile.write(f"data: {newer}\n\n".encode() if newer else b": still there\n\n")
                self.wfile.flush()
        except OSError:
            return  # the page was closed


def _answer(board: Board, path: str) -> Answer | None:
    known: dict[str, Callable[[], Answer]] = {
        "/": lambda: ("text/html; charset=utf-8", _LAWFUL, page_html(*board.newest)),
        "/wallet": lambda: ("text/html; charset=utf-8", _LAWFUL, content_html(*board.newest)),
        "/page.css": lambda: ("text/css; charset=utf-8", _LAWFUL, STYLE),
        "/page.js": lambda: ("text/javascript; charset=utf-8", _LAWFUL, SCRIPT),
    }
    return known[path]() if path in known else _picture(board, path)


def _picture(board: Board, path: str) -> Answer | None:
    """The picture of the newest state at this address; a page that asks for an older one is about to ask again."""
    number, shown = board.newest
    for index, picture in enumerate(shown.pictures):
        if path == picture_path(number, index):
            return "image/svg+xml", _PICTURES, picture.svg.decode("utf-8")
    return None
