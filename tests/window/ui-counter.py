#!/usr/bin/env python3
"""The counter view: the customer's own piece and nothing else; not left by chance."""

from drive import wait_for
from story import Story, equal, wearmark

story = Story("counter")


def view():
    """The counter view's window, or None."""
    return next((w for w in story.app.tree().children if w.name == "Your ring"), None)


def place():
    """Which finding is shown."""
    return next((w for w in view().words() if w.startswith("Finding ")), "the rest")


@story.part("the sample pieces are there, one is opened")
def begin():
    wearmark(story.archive, "sample")
    app = story.start()
    app.click(app.find("Orla Winterbourne", "label"))
    app.find("Visits of this piece", "group")


@story.part("a note for the shop alone is written")
def note():
    app = story.app
    app.key("alt+1")
    story.fill("Note, never shown to a customer", "Haggles; do not go under the price")
    story.on_disk("the note", lambda r: r.rows(
        "SELECT id FROM visit WHERE shop_note LIKE 'Haggles%'"))


@story.part("the counter view opens on the first finding, with nobody else in it")
def open_view():
    app = story.app
    app.key("F8")
    wait_for("the counter view", view)
    words = "\n".join(view().words())
    records = story.records()
    strangers = [p["name"] for p in records.rows("SELECT name FROM person")]
    hidden = strangers + [p["number"] for p in records.rows("SELECT number FROM piece")]
    for table in ("piece", "visit"):
        hidden += [r["shop_note"] for r in records.rows(f"SELECT shop_note FROM {table}")
                   if r["shop_note"]]
    assert any(h.startswith("Haggles") for h in hidden), "no shop note to look for"
    for text in hidden:
        assert text not in words, f"«{text}» is in the counter view"
    equal(place(), "Finding 1 of 5", "place")


@story.part("arrow keys go from finding to finding and back")
def arrows():
    app = story.app
    for n in range(2, 6):
        app.key("Right")
        wait_for(f"finding {n}", lambda: place() == f"Finding {n} of 5")
    app.key("Right")
    wait_for("the page behind the findings", lambda: place() == "the rest")
    for n in range(5, 0, -1):
        app.key("Left")
        wait_for(f"finding {n}", lambda: place() == f"Finding {n} of 5")
    app.key("Left")
    equal(place(), "Finding 1 of 5", "place after one step too far")


@story.part("a tap on Escape, Alt+F4 or a stray click does not leave it")
def stray():
    app = story.app
    app.key("Escape")
    app.key("alt+F4")
    app.click_at(700, 400)
    app.click_at(1400, 20)
    app.key("ctrl+w", "ctrl+q", "F8", "Tab")
    assert wait_for("the view", view) is not None, "the counter view was left"
    equal(app.process.poll(), None, "exit code")


@story.part("its key leaves it, and so does Escape held for a second")
def leave():
    app = story.app
    app.key("ctrl+shift+q")
    wait_for("the counter view to go", lambda: view() is None)
    app.key("F8")
    wait_for("the counter view", view)
    app.xdo("keydown", "Escape")
    try:
        wait_for("the counter view to go", lambda: view() is None)
    finally:
        app.xdo("keyup", "Escape")


@story.part("the program closes with nothing to complain about")
def close():
    story.close_cleanly()


story.run()
