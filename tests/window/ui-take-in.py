#!/usr/bin/env python3
"""A piece is taken in: the fields check what they get, all of it is in the archive."""
import json

from drive import wait_for
from story import Story, equal, near, wearmark

story = Story("take-in")


fill = story.fill


def remark_beside(name):
    """What stands under the field of that label, in its column."""
    app = story.app
    field = app.find_field(name)
    app.bus.measure(list(field.parent.walk()))
    x, y, width, height = field.box
    below = [node.name for node in field.parent.walk()
             if node.role == "label" and node.has_name and node.box[1] >= y + height - 2
             and node.box[0] >= x - 2 and node.box[0] + node.box[2] <= x + width + 40]
    return below[0] if below else None


@story.part("the empty window offers to take in the first piece")
def empty():
    app = story.start()
    app.find("No pieces yet", "label")
    app.press("Take in a piece", "button")
    app.find("Name of the customer", "text box")
    story.on_disk("a piece with a number", lambda r: r.piece()["number"])


@story.part("a customer the shop does not know is entered by typing the name")
def owner():
    app = story.app
    app.type("Tilda Oskarsdotter")
    app.find("New customer: Tilda Oskarsdotter")
    app.key("Return")
    story.on_disk("the owner", lambda r: r.owner()["name"] == "Tilda Oskarsdotter")


@story.part("a wrong e-mail says so beside its field and is not kept; the right one is")
def email():
    fill("E-mail", "tilda at example.org")
    wait_for("the remark on the e-mail", lambda: remark_beside("E-mail"))
    equal(remark_beside("E-mail"), "An e-mail address has one @: name@example.org.",
          "remark")
    assert "invalid" in story.app.find_field("E-mail").states, \
        "a screen reader is not told"
    equal(story.records().owner()["email"], None, "e-mail on the disk")
    fill("E-mail", "tilda@example.org")
    story.on_disk("the e-mail", lambda r: r.owner()["email"] == "tilda@example.org")
    wait_for("the remark to go", lambda: remark_beside("E-mail") is None)


@story.part("a wrong telephone number, amount and date say so beside their fields")
def wrong():
    for field, text, remark in (
            ("Telephone", "call me",
             "A telephone number has only digits, blanks and + ( ) / -."),
            ("Declared value", "12,345.678,9", "This is not an amount. Write 6800.00."),
            ("Weight", "heavy", "This is not a weight. Write grams: 18.42."),
            ("Promised for", "31 November", "There is no such day in the calendar.")):
        fill(field, text)
        wait_for(f"the remark on «{field}»", lambda: remark_beside(field))
        equal(remark_beside(field), remark, f"remark on «{field}»")
    piece, visit, owner = (story.records().piece(), story.records().visit(),
                           story.records().owner())
    equal((owner["phone"], piece["declared_minor"], visit["mass_in_mg"],
           visit["promised_on"]), (None, None, None, None), "on the disk")


@story.part("right words take their place")
def right():
    fill("Telephone", "+46 31 555 0146")
    fill("Declared value", "6 800,50")
    fill("Weight", "4.182")
    fill("Promised for", "2 December 2026")
    fill("In the owner’s words", "Please keep grandmother's engraving", key="Tab")
    story.on_disk("the visit", lambda r: r.visit()["wishes"] is not None)
    records = story.records()
    equal(records.owner()["phone"], "+46 31 555 0146", "telephone")
    equal(records.piece()["declared_minor"], 680050, "declared value in minor units")
    visit = records.visit()
    equal(visit["mass_in_mg"], 4182, "weight in mg")
    equal(visit["promised_on"], "2026-12-02", "promised day")
    equal(visit["wishes"], "Please keep grandmother's engraving", "wishes")


@story.part("the kind brings its checklist; the metal brings its fineness")
def piece():
    story.choose("Kind", "Ring with claws")
    story.on_disk("the kind", lambda r: r.piece()["type"] == "ring_claw")
    checks = story.on_disk("the checks", lambda r: r.checks())
    assert 8 <= len(checks) <= 20, f"{len(checks)} checks"
    assert all(c["severity"] == 0 for c in checks), "a check is answered already"
    fill("Metal", "18 k yellow gold")
    fill("Size", "54")
    fill("Description", "Solitaire with six claws")
    fill("What makes it unlike its twins", "A nick under the third claw")
    story.on_disk("what makes it unlike", lambda r: r.piece()["unlike"] is not None)
    piece = story.records().piece()
    equal(piece["fineness"], 750, "fineness")
    equal(piece["size"], "54", "size")
    equal(piece["description"], "Solitaire with six claws", "description")
    equal(piece["unlike"], "A nick under the third claw", "unlike")


@story.part("stones are entered")
def stones():
    app = story.app
    app.click(app.bring(lambda: app.find("Add stones", "button", seen=False)))
    story.on_disk("a group of stones", lambda r: r.rows("SELECT * FROM stone_group"))
    wait_for("the row of the stones", lambda: app.find_field("Species"))
    fill("Species", "Diamond, untreated")
    fill("Count", "1")
    fill("Cut", "Round brilliant")
    fill("Width", "6.5")
    stone = story.on_disk("the width", lambda r: [
        s for s in r.rows("SELECT * FROM stone_group") if s["width_mm"] is not None])[0]
    equal((stone["species"], stone["count"], stone["cut"]), ("diamond", 1, "round"),
          "stone")
    near(stone["width_mm"], 6.5, 1e-9, "width in mm")


@story.part("undo takes the last field back, redo brings it again")
def undo():
    app = story.app
    app.key("ctrl+z")
    story.on_disk("no width", lambda r: r.rows(
        "SELECT * FROM stone_group WHERE width_mm IS NULL"))
    app.key("ctrl+shift+z")
    story.on_disk("the width again", lambda r: r.rows(
        "SELECT * FROM stone_group WHERE width_mm = 6.5"))


@story.part("the program closes with nothing to complain about")
def close():
    story.close_cleanly()


@story.part("the command line shows the piece as it was typed")
def show():
    number = story.records().piece()["number"]
    shown = json.loads(wearmark(story.archive, "--json", "show", number))
    text = json.dumps(shown, ensure_ascii=False)
    for words in ("Tilda Oskarsdotter", "tilda@example.org", "+46 31 555 0146",
                  "Solitaire with six claws", "A nick under the third claw",
                  "Please keep grandmother's engraving", "2026-12-02", number):
        assert words in text, f"«{words}» is not shown"
    listed = json.loads(wearmark(story.archive, "--json", "pieces", "Oskarsdotter"))
    equal([p["number"] for p in listed], [number], "pieces found by the owner")
    wearmark(story.archive, "verify")


story.run()
