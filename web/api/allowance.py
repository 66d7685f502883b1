"""How much may be asked for from one address: so many requests a minute, over any minute."""

from __future__ import annotations

import time
from math import ceil

from flask import Request
from limits import RateLimitItemPerMinute
from limits.storage import MemoryStorage
from limits.strategies import MovingWindowRateLimiter
from werkzeug.exceptions import TooManyRequests


class Allowance:
    """An allowance of requests a minute for each address; a whole gym may share one."""

    def __init__(self, what: str, a_minute: int) -> None:
        self._what = what
        self._item = RateLimitItemPerMinute(a_minute)
        self._limiter = MovingWindowRateLimiter(MemoryStorage())

    def take(self, request: Request) -> None:
        """Count a request. Raises 429, saying when there is room again."""
        address = request.remote_addr or ""
        if self._limiter.hit(self._item, address):
            return
        seconds = max(1, ceil(self._limiter.get_window_stats(self._item, address).reset_time - time.time()))
        raise TooManyRequests(
            f"more than {self._item.amount} {self._what} were asked for in a minute: "
            f"try again in {seconds} s",
            retry_after=seconds,
        )
