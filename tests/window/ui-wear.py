#!/usr/bin/env python3
"""The next check is suggested and taken, the wear is drawn, and a computation goes into a
note: on the sample pendant, which was measured at three visits."""
import re

from drive import wait_for
from story import Story, equal, wearmark

story = Story("wear")
NUMBER = "2024-0001-7"


def visit():
    """The last visit of the pendant."""
    return story.records().rows(
        "SELECT visit.* FROM visit JOIN piece ON piece.id = visit.piece_id"
        " WHERE piece.number = ? ORDER BY taken_in_at_s DESC", NUMBER)[0]


@story.part("the pendant's hand-back suggests a date with its reason")
def suggestion():
    wearmark(story.archive, "sample")
    app = story.start()
    app.click(app.find("Priya Hollins", "label"))
    app.find("Visits of this piece", "group")
    app.key("alt+5")
    app.find("Suggested", "label")
    # Handed back on 21 November: 12 months, halved by "watch", and three quarters each
    # for day and night and for the loop at 62 %: 3.4 (tables/intervals.txt).
    app.find(re.compile("^In 3 months instead of the usual 12: "), "label")


@story.part("one key takes it, and undo gives the jeweller's own back")
def take():
    app = story.app
    own = visit()["next_check_on"], visit()["next_check_reason"]
    app.key("ctrl+t")
    story.on_disk("the date", lambda r: visit()["next_check_on"] == "2027-02-21")
    assert visit()["next_check_reason"].startswith("In 3 months instead of"), \
        visit()["next_check_reason"]
    app.key("ctrl+z")
    story.on_disk("the old date", lambda r: visit()["next_check_on"] == own[0])
    equal(visit()["next_check_reason"], own[1], "the reason")


@story.part("the wear over the years is drawn and told, over any page")
def wear():
    app = story.app
    app.key("alt+2", "F6")
    window = wait_for("the wear", lambda: next(
        (w for w in app.tree().children if w.name == f"Wear of {NUMBER} over the years"),
        None))
    words = "\n".join(window.words())
    # The loop: 0.83, 0.71, 0.59 mm at visits a year apart.
    assert re.search(r"0\.12\s±\s0\.03\smm thinner a year", words), words
    assert "Pendant loop" in words and "Jump rings" in words, words
    app.key("Escape")
    wait_for("it to close", lambda: not any(
        w.name.startswith("Wear of") for w in app.tree().children))


@story.part("a computation is filled from the reading and goes into the note")
def reckon():
    app = story.app
    app.key("F7")
    app.click(app.find("What is left of a worn section", "label"))
    app.find(re.compile("About half of the metal is gone"), "label")
    app.key("ctrl+Return")
    story.on_disk("the note", lambda r: r.rows(
        "SELECT id FROM \"check\" WHERE note LIKE '%What is left of a worn section:%'"))
    # The first Escape takes the toast away.
    app.key("Escape", "Escape")
    wait_for("it to close", lambda: not any(
        w.name == "At the bench: reckon" for w in app.tree().children))


@story.part("the shop's own months are kept as a setting")
def months():
    app = story.app
    app.key("ctrl+comma")
    app.press("Next checks")
    app.find("Months to the next check", "label")
    app.click(app.find("Bangle, worn daily", "spin button"))
    app.key("ctrl+a")
    app.type("9")
    app.key("Tab")
    story.on_disk("the setting", lambda r: r.rows(
        "SELECT id FROM setting WHERE name = 'check-months-bangle-daily' AND value = '9'"))
    app.key("Escape")


@story.part("and it closes with nothing to complain about")
def close():
    story.close_cleanly()


story.run()
