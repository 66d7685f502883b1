"""Pressing a button twice and meaning it: the app takes two presses at once for a slip of the finger."""

from __future__ import annotations

from tests.browser.engines import Browser

_LONGER_THAN_A_SLIP = "() => new Promise((done) => setTimeout(done, 350))"


def let_a_slip_pass(browser: Browser) -> None:
    """Return when another press of the same button counts."""
    browser.evaluate(_LONGER_THAN_A_SLIP)
