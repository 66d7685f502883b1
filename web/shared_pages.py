"""What a link leads to: the shell, which shows the plan, and the code of the link."""

from __future__ import annotations

from flask import Blueprint, Response, request
from werkzeug.exceptions import Gone, NotFound, ServiceUnavailable, TooManyRequests

from web.api.links import LinkDesk
from web.link_codec import LinkError, payload_of
from web.pages import Pages
from web.qr import code_of
from web.settings import Settings
from web.stored import ASK_AGAIN, Stored, answer

ABOUT_CODE = "A code that leads to {}"
SVG = "image/svg+xml"
NO_ROBOTS = "noindex, nofollow"


def shared_pages(made: Pages, desk: LinkDesk, settings: Settings) -> Blueprint:
    """The addresses under /p. No search engine is to keep any of them."""
    blueprint = Blueprint("shared_pages", __name__)

    @blueprint.get("/p")
    def carried() -> Response:
        """A plan that stands in the address itself, behind the #, which no server sees."""
        return answer(made.shell, request)

    @blueprint.get("/p/<name>")
    def shared(name: str) -> Response:
        """A published plan. The shell says what is there instead, and opens what the phone keeps."""
        status = 200
        try:
            desk.text_of(name)
        except (NotFound, Gone) as error:
            status = error.code
        except (ServiceUnavailable, TooManyRequests):
            pass
        return answer(made.shell, request, status)

    @blueprint.get("/p/<name>/qr.svg")
    def code(name: str) -> Response:
        """The code of a published plan: all of it where a phone can read that, else the short address."""
        text = desk.text_of(name)
        base = settings.public_url or request.host_url.rstrip("/")
        addresses = (*_carried(base, text), f"{base}/p/{name}")
        return answer(Stored(code_of(*addresses, about=ABOUT_CODE).svg, SVG, ASK_AGAIN), request)

    @blueprint.after_request
    def keep_robots_off(response: Response) -> Response:
        response.headers["X-Robots-Tag"] = NO_ROBOTS
        return response

    return blueprint


def _carried(base: str, text: str) -> tuple[str, ...]:
    try:
        return (f"{base}/p#{payload_of(text.encode('utf-8'))}",)
    except LinkError:
        return ()
