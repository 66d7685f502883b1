"""The accessibility checker axe-core, run inside a page; it sees into open shadow roots."""

from __future__ import annotations

from tests.browser.app_server import ROOT
from tests.browser.engines import Browser

CHECKER = ROOT / "node_modules" / "axe-core" / "axe.min.js"
RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]


def accessibility_faults(browser: Browser) -> list[str]:
    """What breaks WCAG 2.2 A or AA, or good practice, on the screen as it is: theme, rule, element, reason.

    It is looked at in both themes, and left in the one it was in.
    """
    answer = browser.evaluate(
        f"""async (rules) => {{
          if (!window.axe) {{ {CHECKER.read_text()} }}
          const page = document.documentElement;
          const chosen = page.dataset.theme;
          const faults = [];
          for (const theme of ["light", "dark"]) {{
            page.dataset.theme = theme;
            const asked = {{ runOnly: rules, resultTypes: ["violations"] }};
            const {{ violations }} = await axe.run(document, asked);
            faults.push(...violations.flatMap(({{ id, nodes }}) => nodes.map((node) =>
              `${{theme}}: ${{id}}: ${{node.target.flat().join(" >> ")}}: ${{node.failureSummary}}`)));
          }}
          if (chosen) page.dataset.theme = chosen;
          else delete page.dataset.theme;
          return faults;
        }}""",
        RULES,
    )
    return [str(fault) for fault in answer]
