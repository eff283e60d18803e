#!/usr/bin/env python3
"""Every widget that can be used says what it is, on every page; pages are kept as
pictures, in a small and in a large window."""
import os
import pathlib
import re
import time

from drive import wait_for
from story import SHOTS, Story, wearmark

story = Story("names")

# Nameless by GTK's own make, with what carries the name instead.
GTK_OWN = [
    ("GtkToggleButton", "combo box", "the drop-down around it has the name"),
    ("GtkListItemWidget", None, "the drop-down's shown item, not used by itself"),
    ("", "list item", "GTK 4.8 gives list items no name; the row within has it"),
    ("", "group", "a scroller that takes the focus to be scrolled by keys"),
    ("GtkListView", None, "the list inside a drop-down's popover"),
    ("GtkSearchEntry", "search box", "the search AdwPreferencesWindow brings along"),
    ("GtkListBox", "list", "the lists of AdwPreferencesWindow; their rows have names"),
]

PAGES = [("take-in", "alt+1", "Owner"), ("inspection", "alt+2", "Checklist"),
         ("bench-work", "alt+3", None), ("proof", "alt+4", "Findings after the work"),
         ("hand-back", "alt+5", None), ("diary", "ctrl+d", "Who should come back")]


def is_gtk_own(node):
    for name, role, _why in GTK_OWN:
        if node.name == name and (role is None or node.role == role or any(
                around.role == role for around in node.ancestors())):
            return True
    return False


def nameless(window=None):
    """What takes the focus and has no name, on all that is loaded now."""
    root = story.app.tree()
    return sorted({f"{n!r} in {' in '.join(repr(a) for a in list(n.ancestors())[:4])}"
                   for n in root.walk()
                   if "focusable" in n.states and not n.has_name and not is_gtk_own(n)})


def walk_pages(scheme, size):
    app = story.app
    missing = []
    for page, key, sign in PAGES:
        app.key(key)
        if sign is not None:
            app.find(sign, "label")
        else:
            wait_for(f"the page {page}", lambda: app.find_all(role="label"))
        missing += [f"{page}: {what}" for what in nameless()]
        SHOTS.mkdir(parents=True, exist_ok=True)
        app.screenshot(SHOTS / f"page-{page}-{scheme}-{size}.png")
    app.key("ctrl+d")
    assert not missing, "nameless:\n" + "\n".join(sorted(set(missing)))


def open_sample(scheme):
    # GTK_THEME does not reach libadwaita; its own switch for tests does.
    app = story.start(ADW_DEBUG_COLOR_SCHEME="prefer-dark" if scheme == "dark"
                      else "prefer-light")
    app.find(re.compile("Orla Winterbourne"), "label")
    return app


def resize(width, height):
    """Drawn smaller in steps, as by the hand: the page gives up its wide form on the way,
    and only then allows the window to be smaller."""
    app = story.app

    def has_come():
        app.xdo("search", "--onlyvisible", "--name", "^2026-0001-H$", "windowsize", width,
                height)
        window = next(w for w in app.tree().children if w.name == "2026-0001-H")
        app.bus.measure([window])
        return abs(window.box[2] - width) <= 20 and abs(window.box[3] - height) <= 20

    app.key("alt+1")
    wait_for(f"a window of {width}x{height}", has_come)


@story.part("light, at 1440x900")
def light_large():
    wearmark(story.archive, "sample")
    app = open_sample("light")
    app.click(app.find("Orla Winterbourne", "label"))
    app.find("Visits of this piece", "group")
    walk_pages("light", "1440x900")


@story.part("light, at 1000x640")
def light_small():
    resize(1000, 640)
    walk_pages("light", "1000x640")


@story.part("the help overlay has every action of the table, and every one has a key")
def help_overlay():
    app = story.app
    source = pathlib.Path(os.environ["WM_SOURCE_DIR"], "src/window/action-table.c")
    rows = re.findall(r'\{ "([a-z.:-]+)",\s*N_ ?\("([^"]+)"\),\s*"([^"]*)"',
                      source.read_text())
    assert len(rows) > 50, f"only {len(rows)} rows of the table understood"
    keyless = [name for name, _label, keys in rows if not keys]
    assert not keyless, f"actions without a key: {keyless}"
    app.key("F1")
    overlay = wait_for("the help overlay", lambda: [
        w for w in app.tree().children if w.name != "2026-0001-H"])[0]
    words = set(overlay.words())
    unknown = [label for _name, label, _keys in rows if label not in words]
    app.key("Escape")
    assert not unknown, f"not in the help overlay: {unknown}"


@story.part("the settings of the shop have names")
def settings():
    app = story.app
    app.key("ctrl+comma")
    wait_for("the settings", lambda: len(app.tree().children) > 1)
    missing = nameless()
    app.screenshot(SHOTS / "page-settings-light.png")
    app.key("Escape")
    wait_for("the settings to close", lambda: len(app.tree().children) == 1)
    time.sleep(1)  # until the window has the keyboard back
    assert not missing, "nameless:\n" + "\n".join(missing)


@story.part("it closes with nothing to complain about")
def close_light():
    story.close_cleanly()


story.run()
