"""How much may be asked for from one address: so many requests over any minute, or any hour."""

from __future__ import annotations

import time
from contextlib import suppress
from math import ceil

from flask import Request
from limits import RateLimitItemPerHour, RateLimitItemPerMinute
from limits.errors import ConfigurationError, StorageError
from limits.storage import MemoryStorage, Storage, storage_from_string
from limits.strategies import MovingWindowRateLimiter
from werkzeug.exceptions import TooManyRequests

from web.settings import CannotStart

PERIODS = {"minute": RateLimitItemPerMinute, "hour": RateLimitItemPerHour}


def counts_at(address: str) -> Storage:
    """Where requests are counted: memory, or one place for several machines. Raises CannotStart."""
    try:
        counts = storage_from_string(address, wrap_exceptions=True)
    except (ConfigurationError, ValueError) as error:
        raise CannotStart(f'RATE_LIMITS_URL is "{address}": {error}') from None
    assert isinstance(counts, Storage)
    return counts


class Allowance:
    """An allowance of requests for each address; a whole gym may share one.

    Where the place of the counts cannot be reached, nothing is counted: an allowance keeps others from being
    crowded out, and must not itself keep anybody out.
    """

    def __init__(self, what: str, most: int, period: str = "minute", counts: Storage | None = None) -> None:
        self._what, self._period = what, period
        self._item = PERIODS[period](most)
        self._limiter = MovingWindowRateLimiter(counts or MemoryStorage())

    def take(self, request: Request, of: str = "") -> None:
        """Count a request, apart for each thing that is named. Raises 429, saying when there is room."""
        with suppress(StorageError):
            if not self._limiter.hit(self._item, self._what, request.remote_addr or "", of):
                raise self._used_up(request, of)

    def look(self, request: Request, of: str = "") -> None:
        """Count nothing. Raises 429 where nothing more could be taken."""
        with suppress(StorageError):
            if not self._limiter.test(self._item, self._what, request.remote_addr or "", of):
                raise self._used_up(request, of)

    def _used_up(self, request: Request, of: str) -> TooManyRequests:
        window = self._limiter.get_window_stats(self._item, self._what, request.remote_addr or "", of)
        seconds = max(1, ceil(window.reset_time - time.time()))
        article = "an" if self._period == "hour" else "a"
        return TooManyRequests(
            f"more than {self._item.amount} {self._what} were asked for in {article} {self._period}: "
            f"try again in {seconds} s",
            retry_after=seconds,
        )
