"""The server of `sld watch`: one page and its changes, on the loopback address, below a word that nobody can guess."""

from __future__ import annotations

import secrets
from http import HTTPStatus
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer

from sld.cli.watching.latest import FEED, Latest

__all__ = ["Server"]

LOOPBACK = "127.0.0.1"
_PULSE_S = 10.0
"""How long the feed is silent before a comment tells whether somebody still listens."""


class Server(ThreadingHTTPServer):
    """Serves the latest page. port: 0 for any that is free. Raises OSError for one that is taken."""

    daemon_threads = True

    def __init__(self, latest: Latest, port: int = 0) -> None:
        self.latest = latest
        self.token = secrets.token_urlsafe(16)
        super().__init__((LOOPBACK, port), _Handler)

    @property
    def address(self) -> str:
        """Return the address of the page."""
        return f"http://{LOOPBACK}:{self.server_port}/{self.token}/"


class _Handler(BaseHTTPRequestHandler):
    server: Server
    protocol_version = "HTTP/1.1"

    def do_GET(self) -> None:
        """Answer with the page or its changes; with nothing where the word or the name of the host is another.

        A page from elsewhere that gets a name of its own to lead here would ask by that name.
        """
        hosts = {f"{name}:{self.server.server_port}" for name in (LOOPBACK, "localhost")}
        own = f"/{self.server.token}/"
        if self.headers.get("Host") not in hosts:
            self.send_error(HTTPStatus.NOT_FOUND)
        elif secrets.compare_digest(self.path.encode(), own.encode()):
            self._page()
        elif secrets.compare_digest(self.path.encode(), f"{own}{FEED}".encode()):
            self._changes()
        else:
            self.send_error(HTTPStatus.NOT_FOUND)

    def _begin(self, kind: str) -> None:
        self.send_response(HTTPStatus.OK)
        self.send_header("Content-Type", f"{kind}; charset=utf-8")
        self.send_header("Cache-Control", "no-store")
        self.send_header("X-Content-Type-Options", "nosniff")
        self.send_header("Content-Security-Policy", "frame-ancestors 'none'")
        self.send_header("Cross-Origin-Resource-Policy", "same-origin")

    def _page(self) -> None:
        page = self.server.latest.page
        self._begin("text/html")
        self.send_header("Content-Length", str(len(page)))
        self.end_headers()
        self.wfile.write(page)

    def _changes(self) -> None:
        """Write an event for each change until nobody listens (server-sent events of the HTML standard)."""
        self._begin("text/event-stream")
        self.send_header("Connection", "close")
        self.end_headers()
        self.close_connection = True
        version = self.server.latest.version
        try:
            while True:
                self.wfile.write(b": listening\n\n")
                self.wfile.flush()
                now = self.server.latest.wait(version, _PULSE_S)
                if now != version:
                    version = now
                    self.wfile.write(b"event: changed\ndata: \n\n")
                    self.wfile.flush()
        except OSError:
            return

    def log_message(self, format: str, *arguments: object) -> None:
        """Say nothing of requests."""
