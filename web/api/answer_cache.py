"""Answers of a pure function, kept in memory for when the very same request comes again."""

from __future__ import annotations

import hashlib
from collections import OrderedDict
from threading import Lock

from web.stored import Stored

KEPT_ANSWERS = 256
KEPT_BYTES = 16 * 1024 * 1024


class AnswerCache:
    """The answers asked for last, by the digest of the request; bounded in number and in bytes."""

    def __init__(self, most: int = KEPT_ANSWERS, most_bytes: int = KEPT_BYTES) -> None:
        self.most, self.most_bytes = most, most_bytes
        self._answers: OrderedDict[bytes, Stored] = OrderedDict()
        self._bytes = 0
        self._lock = Lock()

    def get(self, request: bytes) -> Stored | None:
        """The answer to this request, if it is still kept."""
        key = _key(request)
        with self._lock:
            found = self._answers.get(key)
            if found:
                self._answers.move_to_end(key)
            return found

    def put(self, request: bytes, answer: Stored) -> None:
        """Keep an answer; those not asked for longest go when there is no room."""
        key = _key(request)
        with self._lock:
            if key in self._answers:
                return
            self._answers[key] = answer
            self._bytes += len(answer.body)
            while len(self._answers) > self.most or self._bytes > self.most_bytes:
                _, gone = self._answers.popitem(last=False)
                self._bytes -= len(gone.body)

    def __len__(self) -> int:
        return len(self._answers)


def _key(request: bytes) -> bytes:
    return hashlib.sha256(request).digest()
