"""The accessibility checker axe-core, run inside a page; it sees into open shadow roots."""

from __future__ import annotations

from tests.browser.app_server import ROOT
from tests.browser.engines import Browser

CHECKER = ROOT / "node_modules" / "axe-core" / "axe.min.js"
RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]


def accessibility_faults(browser: Browser) -> list[str]:
    """What breaks WCAG 2.2 A or AA, or good practice, on the screen as it is: rule, element and reason."""
    answer = browser.evaluate(
        f"""async (rules) => {{
          {CHECKER.read_text()};
          const result = await axe.run(document, {{ runOnly: rules, resultTypes: ["violations"] }});
          return result.violations.flatMap(({{ id, nodes }}) =>
            nodes.map((node) => `${{id}}: ${{node.target.flat().join(" >> ")}}: ${{node.failureSummary}}`));
        }}""",
        RULES,
    )
    return [str(fault) for fault in answer]
