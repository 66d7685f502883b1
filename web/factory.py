"""Makes the app: a list of what it is put together from."""

from __future__ import annotations

import logging
from contextlib import suppress

from flask import Flask, Response, request
from werkzeug.exceptions import NotFound

from web.api.allowance import Allowance, counts_at
from web.api.answer_cache import AnswerCache
from web.api.athletes import athletes_api
from web.api.document import document_api
from web.api.errors import answer_errors, problem_for
from web.api.exports import exports_api
from web.api.holdings import holdings_api
from web.api.links import LinkDesk, links_api
from web.api.loads import loads_api
from web.api.plans import LIBRARY, plan_answers, plans_api
from web.api.publishing import PublishingRule
from web.api.reading import BODY_BYTES
from web.api.sessions import sessions_api
from web.api.shorthand import shorthand_api
from web.api.technique import technique_api
from web.api.timelines import timelines_api
from web.api.walls import WallDesk, walls_api
from web.assets import load_assets, static_files
from web.builtin_plans import Library, load_library
from web.pages import Pages, make_pages, not_found, pages
from web.phone.pages import PAGE as PHONE
from web.phone.pages import Room, phone_pages
from web.security_headers import add_security_headers
from web.settings import ROOT, CannotStart, Settings
from web.shared_pages import shared_pages
from web.store.connection import BadAddress, Database
from web.store.links import LinkShelf
from web.store.walls import WallShelf

COMPUTATIONS_A_MINUTE = 3_000
"""A hundred phones of one gym, and a text sent at every pause of the writing on some of them."""

_log = logging.getLogger("slipway")


def create_app(settings: Settings, room: Room | None = None) -> Flask:
    """The app with these settings, and with a page for phones where there is a way for them.

    Raises CannotStart when the client has not been built.
    """
    app = Flask("slipway", root_path=str(ROOT), template_folder="templates", static_folder=None)
    app.config["MAX_CONTENT_LENGTH"] = BODY_BYTES
    add_security_headers(app, settings.https)
    answer_errors(app)

    library = load_library(settings.plans)
    _name_damaged(library)
    answers = plan_answers(library)
    assets = load_assets(settings)
    with app.app_context():
        made = make_pages(assets, {LIBRARY: answers[LIBRARY]}, PHONE if room else "")
        if room:
            app.register_blueprint(phone_pages(room, assets))
    _answer_missing_pages(app, made)

    database = _database(settings)
    counts = counts_at(settings.rate_limits_url)
    rule = PublishingRule(settings, counts)
    computations = Allowance("computations", COMPUTATIONS_A_MINUTE, counts=counts)
    desk = LinkDesk(LinkShelf(database), rule, counts)

    app.register_blueprint(pages(made, frozenset(library.plans), database.is_well))
    app.register_blueprint(shared_pages(made, desk, settings))
    app.register_blueprint(static_files(assets))
    app.register_blueprint(plans_api(answers))
    app.register_blueprint(technique_api())
    app.register_blueprint(timelines_api(AnswerCache(), computations, counts))
    app.register_blueprint(sessions_api(computations))
    app.register_blueprint(holdings_api(computations))
    app.register_blueprint(shorthand_api(computations))
    app.register_blueprint(athletes_api(computations))
    app.register_blueprint(loads_api(computations))
    app.register_blueprint(links_api(desk, settings))
    app.register_blueprint(walls_api(WallDesk(WallShelf(database), rule, counts), settings))
    app.register_blueprint(exports_api(assets.alone, counts))
    app.register_blueprint(document_api())
    return app


def _database(settings: Settings) -> Database:
    """Opened when it is first needed: all but short links works without."""
    with suppress(OSError):
        settings.data.mkdir(parents=True, exist_ok=True)
    try:
        return Database(settings.database)
    except BadAddress as error:
        raise CannotStart(f"DATABASE_URL is no address of a database: {error}") from None


def _name_damaged(library: Library) -> None:
    for damaged in library.damaged:
        _log.warning("plan file left out: %s, line %d: %s", damaged.file, damaged.line, damaged.reason)


def _answer_missing_pages(app: Flask, made: Pages) -> None:
    """People get a page, programs a problem document."""

    @app.errorhandler(NotFound)
    def missing(error: NotFound) -> Response:
        wants_page = (
            request.accept_mimetypes.best_match(["application/problem+json", "text/html"]) == "text/html"
        )
        if wants_page and not request.path.startswith(("/api/", "/static/")):
            return not_found(made)
        return problem_for(error)
