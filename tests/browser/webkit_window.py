#!/usr/bin/python3
"""A bare WebKitGTK browser for WebDriver: one folder for all it stores, one script before every page.

Run by WebKitWebDriver as `webkit_window.py PROFILE` with Debian's own Python (it has the GTK bindings). The
browser that comes with WebKitGTK forgets everything when it ends under automation; ours must not, since a
killed one is opened again.
"""

import html
import json
import sys
from pathlib import Path

import gi

gi.require_version("Gtk", "3.0")
gi.require_version("WebKit2", "4.1")
from gi.repository import GLib, Gtk, WebKit2  # noqa: E402

profile = Path(sys.argv[1])
options = json.loads((profile / "options.json").read_text())


def make_context() -> WebKit2.WebContext:
    """Everything stored goes below the profile folder."""
    manager = WebKit2.WebsiteDataManager(
        base_data_directory=str(profile / "data"), base_cache_directory=str(profile / "cache")
    )
    context = WebKit2.WebContext(website_data_manager=manager)
    context.set_automation_allowed(True)
    context.connect("automation-started", on_automation)
    return context


def on_automation(context: WebKit2.WebContext, session: WebKit2.AutomationSession) -> None:
    """Give the driver its tabs; the name is the one that selenium asks for."""
    information = WebKit2.ApplicationInfo()
    information.set_name("MiniBrowser")
    information.set_version(1, 0, 0)
    session.set_application_info(information)
    session.connect("create-web-view", lambda _: make_tab(context))


def make_tab(context: WebKit2.WebContext) -> WebKit2.WebView:
    """A window without borders for each tab, as large as the page is to be."""
    view = WebKit2.WebView(
        web_context=context, is_controlled_by_automation=True, user_content_manager=scripts_before_pages()
    )
    window = Gtk.Window(decorated=False, default_width=options["width"], default_height=options["height"])
    window.add(view)
    window.show_all()
    view.connect("close", lambda _: window.destroy())
    view.connect("load-failed", on_failure)
    return view


def on_failure(view: WebKit2.WebView, _event: WebKit2.LoadEvent, url: str, error: GLib.Error) -> bool:
    """Say so in a page that the test can tell from one of the site's."""
    page = f'<!doctype html><html data-failure="{html.escape(error.message)}"><title>Failed</title></html>'
    view.load_alternate_html(page, url, None)
    return True


def scripts_before_pages() -> WebKit2.UserContentManager:
    """What runs in each page before its own scripts."""
    scripts = WebKit2.UserContentManager()
    scripts.add_script(
        WebKit2.UserScript(
            options["preload"],
            WebKit2.UserContentInjectedFrames.TOP_FRAME,
            WebKit2.UserScriptInjectionTime.START,
            None,
            None,
        )
    )
    return scripts


wishes = Gtk.Settings.get_default()
wishes.set_property("gtk-application-prefer-dark-theme", options["dark"])
wishes.set_property("gtk-enable-animations", not options["reduced_motion"])
context = make_context()
Gtk.main()
