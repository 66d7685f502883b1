"""Nothing of the client, libraries too, calls what the least browsers of DEVELOPERS.md do not have.

The versions are those of MDN browser-compat-data 8.1.9: each name below came later than Chrome 111,
Firefox 121 or Safari 16.4 to at least one of them. Not listed is what such a browser merely ignores, as
`text-wrap`, and what is asked for before it is used: `wakeLock`, `vibrate`, `share`, `outputLatency`.
"""

from __future__ import annotations

import re
import subprocess

import pytest

from web.build import ESBUILD, SERVICE_WORKER, TARGET
from web.settings import ROOT

NEWER = {
    "a method or property": re.compile(
        r"\.(?:withResolvers|groupBy|fromAsync|isSubsetOf|isSupersetOf|isDisjointFrom|symmetricDifference"
        r"|canParse|checkVisibility|showPopover|hidePopover|togglePopover|requestClose|closedBy|startViewTransition"
        r"|moveBefore|setHTMLUnsafe|setHTML|getHTML|requestIdleCallback|waitAsync|transferToFixedLength|f16round"
        r"|toBase64|toHex|fromBase64|fromHex|requestVideoFrameCallback|getAllRecords)\b"
        r"|\b(?:AbortSignal\.any|Promise\.try|RegExp\.escape|Error\.isError|Math\.sumPrecise|Iterator\.from|URL\.parse)\b"
    ),
    "a constructor or namespace": re.compile(
        r"\b(?:new (?:URLPattern|CloseWatcher|CookieStore)|Intl\.(?:DurationFormat|Segmenter)|Temporal\.\w)"
    ),
    # The bundler writes an expression whose flags are too new in this way.
    "an expression with the flag v": re.compile(r'new RegExp\(.*, "[a-z]*v[a-z]*"\)'),
    "an attribute": re.compile(r"<\w[^<>]*\s(?:popover|closedby|commandfor|popovertarget)\b"),
    "a style": re.compile(
        r"\blight-dark\(|@(?:property|scope|starting-style|position-try|view-transition)\b|:(?:dir\(|user-(?:in)?valid|state\()"
        r"|\b(?:subgrid|anchor-name|position-anchor|field-sizing|interpolate-size|content-visibility|text-box)\b(?=\s*[:;])"
        r"|\b(?:calc-size|anchor|round|mod|rem)\([^)]*(?:px|em|rem|%|vw|cqw)|(?:rgb|hsl|oklch|lab|lch)\(from\b"
        r"|@container[^{]*style\("
    ),
}
A_STYLE = re.compile(r"[{};]")
SAMPLES = {
    "a method or property": [
        "Promise.withResolvers()",
        "a.isSubsetOf(b)",
        "AbortSignal.any([a, b])",
        "URL.parse(x)",
    ],
    "a constructor or namespace": ["new Intl.Segmenter()", "Temporal.Now"],
    "an expression with the flag v": ['new RegExp("[\\p{L}--[a-z]]", "v")'],
    "an attribute": ['<div id="a" popover>', '<dialog class="x" closedby="any">'],
    "a style": [
        "color: light-dark(red, blue)",
        "@property --a {",
        "grid-template-rows: subgrid;",
        "width: round(1.5px, 1px)",
    ],
}


def nested_rules(css: str) -> list[str]:
    """The rules that stand inside another rule, which is new; inside `@media` and the like none is."""
    found: list[str] = []
    open_rules: list[str] = []
    at = 0
    for mark in A_STYLE.finditer(css):
        prelude, at = css[at : mark.start()].strip(), mark.end()
        if mark.group() == "{":
            if not prelude.startswith("@") and any(not rule.startswith("@") for rule in open_rules):
                found.append(prelude)
            open_rules.append(prelude)
        elif mark.group() == "}" and open_rules:
            open_rules.pop()
    return found


def own_styles() -> list[str]:
    """What our screens give to Lit's `css`."""
    comments = re.compile(r"/\*.*?\*/", re.DOTALL)
    screens = (path.read_text(encoding="utf-8") for path in sorted((ROOT / "static/src").rglob("*.ts")))
    return [
        re.sub(comments, "", style) for text in screens for style in re.findall(r"(?<!`)\bcss`([^`]*)`", text)
    ]


@pytest.fixture(scope="module")
def client(tmp_path_factory: pytest.TempPathFactory) -> str:
    """Every script and style of the client in one text, not minified."""
    to = tmp_path_factory.mktemp("client")
    entries = ["src/main.ts", "src/alone.ts", SERVICE_WORKER, "src/first-paint.ts", "styles/app.css"]
    options = ["--bundle", "--splitting", "--format=esm", f"--target={TARGET}", "--external:*.woff2"]
    command = [str(ESBUILD), *entries, *options, "--charset=utf8", "--log-level=error", f"--outdir={to}"]
    subprocess.run(command, cwd=ROOT / "static", check=True)
    files = [path for path in sorted(to.rglob("*")) if path.is_file()]
    return "\n".join(path.read_text(encoding="utf-8") for path in files)


@pytest.mark.parametrize("what", NEWER)
def test_what_is_newer_is_found_where_it_is(what: str) -> None:
    assert all(NEWER[what].search(sample) for sample in SAMPLES[what])


def test_nested_rules_are_found_where_they_are() -> None:
    assert nested_rules("a { color: red; b { color: blue } } @media print { a { top: 0 } }") == ["b"]


@pytest.mark.parametrize("what", NEWER)
def test_nothing_newer_is_called(client: str, what: str) -> None:
    assert [found.group() for found in NEWER[what].finditer(client)] == []


def test_no_style_has_a_rule_inside_a_rule() -> None:
    styles = own_styles()
    assert len(styles) > 40
    assert [rule for style in styles for rule in nested_rules(style)] == []
