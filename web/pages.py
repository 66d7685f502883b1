"""What a browser opens: the one shell of the app, its manifest, its service worker, the page for nothing."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from flask import Blueprint, Response, render_template, request

from web.assets import DIST_URL, ICONS_URL, Assets
from web.settings import VERSION
from web.stored import ASK_AGAIN, NEVER, Stored, answer

HTML = "text/html; charset=utf-8"
DARK, LIGHT = "#06101b", "#f8f7f1"
"""--water of the tokens in both themes, which a manifest cannot read."""
SHELL_ICONS = ("icon.svg", "apple-touch-180.png")
"""The icons the shell asks for; the manifest's are for the system, which keeps its own copies."""
PRECACHE_TOKEN = "self.__SLIPWAY_PRECACHE"
LATER_TOKEN = "self.__SLIPWAY_LATER"
ROBOTS = "User-agent: *\nDisallow: /api/\nDisallow: /p/\n"


@dataclass(frozen=True)
class Pages:
    """Everything a browser opens by an address of its own, made once at the start."""

    shell: Stored
    not_found: Stored
    manifest: Stored
    worker: Stored
    robots: Stored


def make_pages(assets: Assets, kept_answers: Mapping[str, Stored], phone: str = "") -> Pages:
    """The pages for these files and kept answers; to be called inside an app context, for the templates.

    `phone` is the address of the page that tells how a phone gets https, or "".
    """
    shell = _page(render_template("app.html", assets=assets, dark=DARK, light=LIGHT, phone=phone))
    manifest = Stored(_json(_manifest()), "application/manifest+json")
    known = {"/": shell, "/manifest.webmanifest": manifest, **kept_answers}
    return Pages(
        shell=shell,
        not_found=_page(render_template("not-found.html", assets=assets)),
        manifest=manifest,
        worker=_worker(assets, known),
        robots=Stored(ROBOTS.encode(), "text/plain; charset=utf-8"),
    )


def _page(html: str) -> Stored:
    return Stored(html.encode("utf-8"), HTML)


def _json(document: object) -> bytes:
    return json.dumps(document, separators=(",", ":")).encode("ascii")


def _worker(assets: Assets, known: Mapping[str, Stored]) -> Stored:
    """The built worker with its lists of what to keep. Any change to those makes it another worker."""
    script = assets.service_worker
    for token, listed in ((PRECACHE_TOKEN, precache_list(assets, known)), (LATER_TOKEN, assets.later)):
        assert token in script, f"the service worker never asks for {token}"
        script = script.replace(token, json.dumps(listed, separators=(",", ":")))
    stamp = hashlib.sha256(script.encode("utf-8")).hexdigest()[:16]
    body = f"/* Slipway {VERSION}, build {stamp} */\n{script}".encode()
    return Stored(body, "text/javascript; charset=utf-8", smallest=True)


def precache_list(assets: Assets, known: Mapping[str, Stored]) -> list[dict[str, str | None]]:
    """What a phone keeps first: built files by their hashed names, everything else by its bytes' digest."""
    icons = {ICONS_URL + name: assets.icons[name] for name in SHELL_ICONS}
    built = [DIST_URL + name for name in assets.files]
    revisions: dict[str, str | None] = {url: None for url in built if url not in assets.later}
    revisions |= {url: stored.digest for url, stored in {**known, **icons}.items()}
    return [{"url": url, "revision": revision} for url, revision in revisions.items()]


def _manifest() -> dict[str, object]:
    return {
        "id": "/",
        "name": "Slipway",
        "short_name": "Slipway",
        "description": "Row an indoor session to the stroke, with or without a signal.",
        "lang": "en",
        "dir": "ltr",
        "start_url": "/",
        "scope": "/",
        "display": "standalone",
        "orientation": "any",
        "theme_color": DARK,
        "background_color": DARK,
        "categories": ["sports", "health"],
        "icons": [
            _icon("icon.svg", "any", "any", "image/svg+xml"),
            _icon("icon-192.png", "192x192", "any"),
            _icon("icon-512.png", "512x512", "any"),
            _icon("maskable-192.png", "192x192", "maskable"),
            _icon("maskable-512.png", "512x512", "maskable"),
        ],
        "shortcuts": [{"name": "Go on with a session", "short_name": "Go on", "url": "/row"}],
    }


def _icon(name: str, sizes: str, purpose: str, kind: str = "image/png") -> dict[str, str]:
    return {"src": ICONS_URL + name, "sizes": sizes, "type": kind, "purpose": purpose}


def pages(made: Pages, slugs: frozenset[str], store_is_well: Callable[[], bool]) -> Blueprint:
    """The addresses. Every screen is the same shell, which reads its address in the browser."""
    blueprint = Blueprint("pages", __name__)

    @blueprint.get("/")
    @blueprint.get("/row")
    @blueprint.get("/write")
    @blueprint.get("/technique")
    @blueprint.get("/athlete")
    @blueprint.get("/settings")
    @blueprint.get("/log")
    @blueprint.get("/wall")
    @blueprint.get("/prompter")
    @blueprint.get("/walls")
    def screen() -> Response:
        """The first screen, the one for rowing, and those that know everything by themselves."""
        return answer(made.shell, request)

    @blueprint.get("/wall/<name>")
    def wall(name: str) -> Response:
        """A wall led from afar, which asks for itself what it is to show."""
        return answer(made.shell, request)

    @blueprint.get("/mine/<name>")
    def mine(name: str) -> Response:
        """A plan that only the device knows."""
        return answer(made.shell, request)

    @blueprint.get("/plan/<slug>")
    def plan(slug: str) -> Response:
        """A built-in plan; the shell says what is there instead when there is none of that name."""
        return answer(made.shell, request, 200 if slug in slugs else 404)

    @blueprint.get("/manifest.webmanifest")
    def manifest() -> Response:
        """What an installed app is called and looks like."""
        return answer(made.manifest, request)

    @blueprint.get("/sw.js")
    def worker() -> Response:
        """The service worker; browsers ask again each time, so that an update is seen."""
        return answer(made.worker, request)

    @blueprint.get("/robots.txt")
    def robots() -> Response:
        """What search engines may look at."""
        return answer(made.robots, request)

    @blueprint.get("/healthz")
    def health() -> Response:
        """Whether the app is well, and whether its store can be reached."""
        told = {"status": "ok", "version": VERSION, "database": "ready" if store_is_well() else "away"}
        return answer(Stored(_json(told), "application/json", NEVER), request)

    return blueprint


def not_found(made: Pages) -> Response:
    """The page for an address that is not there."""
    response = answer(made.not_found, request, 404)
    response.headers["Cache-Control"] = ASK_AGAIN
    return response
