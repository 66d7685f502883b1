"""The security headers of every answer, whoever made it and however it went."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING, Any

from flask import Flask

if TYPE_CHECKING:
    from _typeshed.wsgi import StartResponse, WSGIEnvironment

# No inline script or style, nothing from elsewhere; scripts get addresses only through two named policies.
CONTENT_POLICY = {
    "default-src": "'none'",
    "script-src": "'self'",
    "style-src": "'self'",
    "img-src": "'self' data: blob:",
    "font-src": "'self'",
    "media-src": "'self' blob:",
    "connect-src": "'self'",
    "worker-src": "'self'",
    "manifest-src": "'self'",
    "base-uri": "'none'",
    "form-action": "'none'",
    "frame-ancestors": "'none'",
    "object-src": "'none'",
    "require-trusted-types-for": "'script'",
    "trusted-types": "lit-html slipway",
}

# What a session needs stays on; everything else that a page could ask for is off. Only features that every
# engine with this header knows: an unknown one is a warning in the console of each page.
ALLOWED_FEATURES = ("screen-wake-lock", "autoplay", "fullscreen")
REFUSED_FEATURES = (
    "accelerometer",
    "camera",
    "display-capture",
    "encrypted-media",
    "geolocation",
    "gyroscope",
    "hid",
    "magnetometer",
    "microphone",
    "midi",
    "payment",
    "publickey-credentials-get",
    "serial",
    "usb",
    "xr-spatial-tracking",
)

# Files made of what people wrote: wherever a browser shows one, nothing in it may act as this site.
FILES = "/api/exports/"
SANDBOX = "sandbox"

TWO_YEARS_IN_SECONDS = 63_072_000


def security_headers(https: bool) -> dict[str, str]:
    """The headers by name; only an install reached over https may tell browsers to insist on https."""
    headers = {
        "Content-Security-Policy": "; ".join(f"{name} {value}" for name, value in CONTENT_POLICY.items()),
        "Permissions-Policy": ", ".join(
            [*(f"{name}=(self)" for name in ALLOWED_FEATURES), *(f"{name}=()" for name in REFUSED_FEATURES)]
        ),
        "X-Content-Type-Options": "nosniff",
        "Referrer-Policy": "no-referrer",
        "Cross-Origin-Opener-Policy": "same-origin",
        "Cross-Origin-Resource-Policy": "same-origin",
        "X-Frame-Options": "DENY",
    }
    if https:
        headers["Strict-Transport-Security"] = f"max-age={TWO_YEARS_IN_SECONDS}"
    return headers


def add_security_headers(app: Flask, https: bool) -> None:
    """Put the headers on whatever the app answers, at its outermost layer."""
    headers = list(security_headers(https).items())
    of_files = [(n, f"{v}; {SANDBOX}" if n == "Content-Security-Policy" else v) for n, v in headers]
    inside = app.wsgi_app

    def secured(environ: WSGIEnvironment, start_response: StartResponse) -> Iterable[bytes]:
        def start(status: str, given: list[tuple[str, str]], *error: Any) -> Any:
            these = of_files if environ.get("PATH_INFO", "").startswith(FILES) else headers
            return start_response(status, [*given, *these], *error)

        return inside(environ, start)

    app.wsgi_app = secured  # type: ignore[method-assign]
