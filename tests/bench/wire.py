"""The least HTTP that a client needs, over kept connections, so that what is measured is the server."""

from __future__ import annotations

import socket
from collections.abc import Sequence
from concurrent.futures import ThreadPoolExecutor
from types import TracebackType

CONNECTIONS = 4
"""Enough at once that the server, not the way to it, is what takes the time."""
TIMEOUT_SECONDS = 30


class Connection:
    """One kept connection to a server on this machine."""

    def __init__(self, port: int) -> None:
        self._socket = socket.create_connection(("127.0.0.1", port), TIMEOUT_SECONDS)
        self._socket.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)

    def ask(self, request: bytes) -> bytes:
        """The body of the answer. Raises RuntimeError unless it is 200."""
        self._socket.sendall(request)
        received = b""
        while b"\r\n\r\n" not in received:
            received += self._more()
        head, _, body = received.partition(b"\r\n\r\n")
        if not head.startswith(b"HTTP/1.1 200 "):
            raise RuntimeError(f"the server answered {head.splitlines()[0]!r}: {body[:200]!r}")
        length = _content_length(head)
        while len(body) < length:
            body += self._more()
        return body

    def close(self) -> None:
        """Hang up."""
        self._socket.close()

    def _more(self) -> bytes:
        if chunk := self._socket.recv(1 << 18):
            return chunk
        raise RuntimeError("the server hung up in the middle of an answer")


class Crowd:
    """Several connections that share a list of requests between them."""

    def __init__(self, port: int) -> None:
        self._connections = [Connection(port) for _ in range(CONNECTIONS)]
        self._pool = ThreadPoolExecutor(CONNECTIONS)

    def __enter__(self) -> Crowd:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self._pool.shutdown()
        for connection in self._connections:
            connection.close()

    def ask_all(self, requests: Sequence[bytes]) -> None:
        """Send every request once; return when all are answered."""
        shares = [requests[start::CONNECTIONS] for start in range(CONNECTIONS)]
        for _ in self._pool.map(_ask_in_turn, self._connections, shares):
            pass


def _ask_in_turn(connection: Connection, requests: Sequence[bytes]) -> None:
    for request in requests:
        connection.ask(request)


def post(path: str, body: bytes) -> bytes:
    """A request as it goes over the wire, asking for plain bytes."""
    head = (
        f"POST {path} HTTP/1.1\r\nHost: 127.0.0.1\r\n"
        f"Content-Type: application/json\r\nContent-Length: {len(body)}\r\n\r\n"
    )
    return head.encode("ascii") + body


def _content_length(head: bytes) -> int:
    for line in head.split(b"\r\n")[1:]:
        name, _, value = line.partition(b":")
        if name.strip().lower() == b"content-length":
            return int(value)
    raise RuntimeError("the answer does not say how long it is")
