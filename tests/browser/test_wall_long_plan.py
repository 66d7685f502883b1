"""A plan that no link holds comes to a wall all the same; what a wall could not show is tried again."""

from __future__ import annotations

import json
import random
import re
import string
from typing import Any
from urllib.request import Request, urlopen

from tests.browser.app_server import Server
from tests.browser.engines import Browser
from tests.browser.targets import heading, words

BREAK = """() => {
  const { prototype } = customElements.get("wall-home");
  prototype.whole = prototype.lead;
  prototype.lead = async () => { throw new Error("no room"); };
}"""
MEND = (
    """() => { const { prototype } = customElements.get("wall-home"); prototype.lead = prototype.whole; }"""
)


def asked(server: Server, method: str, path: str, body: Any, key: str = "") -> Any:
    headers = {"Content-Type": "application/json", "Authorization": f"Bearer {key}"}
    with urlopen(Request(server.url + path, json.dumps(body).encode(), headers, method=method)) as answer:
        return json.load(answer)


def plan(title: str, blocks: list[dict[str, Any]]) -> dict[str, Any]:
    return {"format": 1, "title": title, "parts": [{"kind": "main", "blocks": blocks}]}


def test_a_wall_shows_a_plan_too_long_for_a_link_and_says_what_it_cannot(
    chromium: Browser, server: Server
) -> None:
    letters = random.Random(1)
    block = {"for": {"seconds": 60}, "rate": 20}
    focuses = ("".join(letters.choices(string.ascii_letters, k=110)) for _ in range(90))
    long = plan("Long", [{**block, "focus": focus} for focus in focuses])
    wall = asked(server, "POST", "/api/walls", {})
    place = f"/api/walls/{wall['id']}"
    chromium.open(f"{server.url}/wall/{wall['id']}")
    chromium.see(heading("This wall is ready"))
    asked(server, "PUT", place, {"plans": [long]}, wall["key"])
    chromium.see(heading("Long"))

    chromium.evaluate(BREAK)
    asked(server, "PUT", place, {"plans": [plan("Short", [block])], "start_in_seconds": 3600}, wall["key"])
    chromium.see(words(re.compile("It is to show “Short”, and this device could not do that .no room.")))
    chromium.evaluate(MEND)
    chromium.see(words(re.compile("to the start at")))
    assert chromium.problems() == []
