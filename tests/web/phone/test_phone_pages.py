"""The page for phones, its code and the certificate."""

from __future__ import annotations

from flask.testing import FlaskClient

from tests.web.codes import read_svg
from tests.web.conftest import ROOM
from web.factory import create_app
from web.settings import Settings


def test_the_page_says_the_way_what_to_compare_and_until_when(client: FlaskClient) -> None:
    page = client.get("/phone").text
    for said in ("http://192.0.2.7:8080/phone", 'href="https://192.0.2.7:8443/"', "AB:CD", "5 March 2031"):
        assert said in page


def test_its_code_leads_to_it_over_plain_http(client: FlaskClient) -> None:
    assert read_svg(client.get("/phone/code.svg").data) == "http://192.0.2.7:8080/phone"


def test_a_phone_takes_the_authority_for_what_it_is(client: FlaskClient) -> None:
    answer = client.get("/phone/slipway-authority.crt")
    assert (answer.content_type, answer.data) == ("application/x-x509-ca-cert", ROOM.authority)


def test_the_app_names_that_page_only_where_there_is_one(client: FlaskClient, settings: Settings) -> None:
    assert '<html lang="en" data-phone="/phone">' in client.get("/").text
    without = create_app(settings).test_client()
    assert '<html lang="en">' in without.get("/").text
    assert without.get("/phone").status_code == 404
