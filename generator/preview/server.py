"""The server: this machine alone may ask, and only for what is on the bench."""

from __future__ import annotations

import mimetypes
from http import HTTPStatus
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from threading import Event, Thread
from typing import ClassVar
from urllib.parse import unquote, urlsplit

from generator.preview.bench import INDEX, Bench
from generator.preview.panel import CHANGES, bare_page, with_panel
from generator.preview.watching import stamps, watch
from generator.problems import MachineLacks
from generator.wording import ENGLISH

HOST = "127.0.0.1"
SECONDS_A_WAIT = 2.0


class Server(ThreadingHTTPServer):
    """Serves a bench on the loopback address; raises MachineLacks when the port is taken."""

    daemon_threads = True
    # Another server on the same port would take half of the requests.
    allow_reuse_port = False

    def __init__(self, bench: Bench, port: int) -> None:
        self.bench = bench
        self.ended = Event()
        try:
            super().__init__((HOST, port), _Answer)
        except OSError as error:
            raise MachineLacks("port-taken", port=port, reason=error.strerror or str(error)) from error
        self.hosts = {f"{name}:{self.server_port}" for name in (HOST, "localhost")}

    @property
    def address(self) -> str:
        """Where a browser finds it."""
        return f"http://{HOST}:{self.server_port}/"

    def end(self) -> None:
        """Let go of those who wait, and of the port."""
        self.ended.set()
        self.server_close()
        self.bench.close()


def watching(server: Server) -> Thread:
    """A started thread that looks at the bench's folder until the server ends."""
    seen = stamps(server.bench.folder)
    arguments = (server.bench.folder, seen, server.bench.look_again, server.ended)
    thread = Thread(target=watch, args=arguments, daemon=True)
    thread.start()
    return thread


class _Answer(BaseHTTPRequestHandler):
    """One request answered."""

    server: Server
    protocol_version: ClassVar[str] = "HTTP/1.1"  # type: ignore[misc]

    def do_GET(self) -> None:
        """Refuse whoever does not ask by a loopback name, since a web page elsewhere may point one here."""
        if self.headers.get("Host", "") not in self.server.hosts:
            self._send(HTTPStatus.FORBIDDEN, b"Only this machine may ask.\n", "text/plain")
            return
        path = unquote(urlsplit(self.path).path)
        try:
            if path == CHANGES:
                self._tell_changes()
            else:
                self._give(path.removeprefix("/") or INDEX)
        except (BrokenPipeError, ConnectionResetError):
            self.close_connection = True

    def log_message(self, format: str, *args: object) -> None:
        """A line a request would bury the faults."""

    def _give(self, name: str) -> None:
        bench, state = self.server.bench, self.server.bench.state
        found = bench.page(name) if name.endswith(".html") else None
        if found:
            page, own = found
            stale = bool(own) or name.removesuffix(".html") in state.stale
            shown = page or bare_page(ENGLISH.say("This page cannot be made yet."))
            self._send(HTTPStatus.OK, with_panel(shown, state.version, (*state.problems, *own), stale))
        elif name.endswith(".html"):
            bare = bare_page(ENGLISH.say("There is no good page here yet."))
            self._send(HTTPStatus.NOT_FOUND, with_panel(bare, state.version, state.problems, False))
        else:
            self._give_file(name)

    def _give_file(self, name: str) -> None:
        try:
            content = self.server.bench.file(name)
        except MachineLacks as lack:
            self._send(HTTPStatus.SERVICE_UNAVAILABLE, f"{lack.problem.code}\n".encode(), "text/plain")
            return
        if content is None:
            self._send(HTTPStatus.NOT_FOUND, b"There is no such file here.\n", "text/plain")
        else:
            kind = mimetypes.guess_type(name)[0] or "application/octet-stream"
            self._send(HTTPStatus.OK, content, kind)

    def _tell_changes(self) -> None:
        self.send_response(HTTPStatus.OK)
        self.send_header("Content-Type", "text/event-stream")
        self.send_header("Cache-Control", "no-store")
        self.send_header("Connection", "close")
        self.end_headers()
        self.close_connection = True
        version = self.server.bench.state.version
        while not self.server.ended.is_set():
            self.wfile.write(f"data: {version}\n\n".encode())
            self.wfile.flush()
            version = self.server.bench.wait_for_change(version, SECONDS_A_WAIT)

    def _send(self, status: HTTPStatus, content: bytes, kind: str = "text/html") -> None:
        self.send_response(status)
        charset = "; charset=utf-8" if kind.startswith("text/") else ""
        self.send_header("Content-Type", kind + charset)
        self.send_header("Content-Length", str(len(content)))
        self.send_header("Cache-Control", "no-store")
        self.send_header("X-Content-Type-Options", "nosniff")
        self.end_headers()
        self.wfile.write(content)
