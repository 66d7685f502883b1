"""The page that tells how a phone gets here, its code, and the certificate to be trusted."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from flask import Blueprint, Response, render_template, request

from web.assets import Assets
from web.pages import HTML
from web.phone.certificates import day
from web.qr import code_of
from web.stored import ASK_AGAIN, Stored, answer

PAGE, CODE, AUTHORITY = "/phone", "/phone/code.svg", "/phone/slipway-authority.crt"
ABOUT_CODE = "A code that leads to {}"
AUTHORITY_TYPE = "application/x-x509-ca-cert"
"""What Android and iOS take for an authority's certificate; not registered, common practice [M]."""


@dataclass(frozen=True, slots=True)
class Room:
    """How phones in the room reach the app, over https and before that over http; what they are to trust."""

    secure_url: str
    plain_url: str
    authority: bytes
    fingerprint: str
    ends: datetime


def phone_pages(room: Room, assets: Assets) -> Blueprint:
    """The three addresses; to be called inside an app context, for the template."""
    blueprint = Blueprint("phone_pages", __name__)
    about = room.plain_url + PAGE
    known = {"about": about, "code": CODE, "authority": AUTHORITY, "ends": day(room.ends)}
    text = render_template("phone.html", assets=assets, room=room, **known)
    page = Stored(text.encode("utf-8"), HTML)
    code = Stored(code_of(about, about=ABOUT_CODE).svg, "image/svg+xml")
    authority = Stored(room.authority, AUTHORITY_TYPE, ASK_AGAIN, compressible=False)

    @blueprint.get(PAGE)
    def phone() -> Response:
        """What to do on a phone."""
        return answer(page, request)

    @blueprint.get(CODE)
    def picture() -> Response:
        """The code of that page's address."""
        return answer(code, request)

    @blueprint.get(AUTHORITY)
    def certificate() -> Response:
        """What a phone is to trust."""
        return answer(authority, request)

    return blueprint
