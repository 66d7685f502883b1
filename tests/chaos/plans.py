"""The plans of the random schedules: short blocks of every kind, so that much happens in little time."""

from __future__ import annotations

from tests.browser.device import Device
from tests.browser.targets import button, heading
from tests.browser.writing import write_plan

PLANS = {
    "Chaos by the clock": """\
title: Chaos by the clock
warm-up
20" r20 light
10" rest
40" r24 half
15 strokes r30 full
12" light
gap 1'
main
30" r26 race
20" r22 half
cool-down
25" r18 light
""",
    "Chaos by taps": """\
title: Chaos by taps
main
100m r28 @2:00
20" rest
open r18 light
2 x 30" r26 full / 15" rest
200m r24
30" r20 light
""",
}


def prepare(device: Device) -> dict[str, str]:
    """Write the plans in a browser that has none, and read the cautions; each plan's address by its title."""
    browser, addresses = device.browser, {}
    for title, text in PLANS.items():
        write_plan(browser, device.server, text)
        browser.see(heading(title))
        addresses[title] = str(browser.evaluate("() => location.href"))
    browser.click(button("Row it"))
    browser.click(button("I have read this, go on"))
    browser.see(button("Start rowing"))
    return addresses
