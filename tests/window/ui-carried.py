#!/usr/bin/env python3
"""A mark of the last visit comes along to today's photo: carried by the program through
the pair's matrix, accepted with one key, its check opened again, and undone. The truth
files of the two renderings say where the place is; the program never reads them."""
import json
import math
import re
import time


from story import SAMPLES, Story, equal, read_points

story = Story("carried")
WIDTH, HEIGHT = 2000, 1334
RING = SAMPLES / "photos" / "ring"


def truth(photo):
    return json.loads((RING / f"{photo}.truth.json").read_text())


def place_of(photo, name):
    return truth(photo)["places"][name]["px"]


def moved_by_the_work():
    """How much farther from the stone the seam is on the new, thicker half, px."""
    far = [math.dist(t["places"]["stone"]["mm"], t["places"]["seam"]["mm"])
           for t in (truth("before-finger"), truth("after-finger"))]
    return abs(far[1] - far[0]) / truth("after-finger")["mm_per_px"]


def add_photo(name):
    """Pastes a photo on the page of the inspection."""
    app = story.app
    before = len(story.records().photos())
    app.key("alt+2")
    app.find("Claw tips, not looked at", "button")
    story.desk.copy_files(RING / name)
    app.key("ctrl+v")
    story.on_disk("the photo", lambda r: len(r.photos()) == before + 1)
    return app.find(re.compile("^Before, "), "group")


@story.part("on the first visit a worn place is marked")
def first_visit():
    app = story.start()
    story.take_in(kind="Ring with claws")
    canvas = add_photo("before-finger.jpg")
    app.press("Claw tips, not looked at", "button")
    x, y, width, height = app.place_of(canvas)
    zoom = min(width / WIDTH, height / HEIGHT)
    story.place = place_of("before-finger", "seam")
    app.click_at(x + width / 2 + (story.place[0] - WIDTH / 2) * zoom,
                 y + height / 2 + (story.place[1] - HEIGHT / 2) * zoom)
    mark = story.on_disk("the mark", lambda r: r.marks())[0]
    off = math.dist(mark["places"][0], story.place)
    assert off < 3 / zoom, f"marked {off:.0f} px beside the place"
    story.source = mark


@story.part("on the next visit the program finds the place on the new photo")
def next_visit():
    app = story.app
    app.key("ctrl+shift+n")
    story.on_disk("a second visit", lambda r: len(r.rows("SELECT id FROM visit")) == 2)
    add_photo("after-finger.jpg")
    ghost = story.on_disk("the carried mark", lambda r: [
        mark for mark in r.marks() if mark["carried_from"] == story.source["id"]])[0]
    equal(ghost["confirmed"], 0, "confirmed")
    source, wanted = story.source["places"][0], place_of("after-finger", "seam")
    # As far beside the place as the click was, what the work moved, and the demand on the
    # fit: 3 px in 1600.
    clicked = math.dist(source, story.place)
    off = math.dist(ghost["places"][0], wanted)
    within = clicked * 1.1 + moved_by_the_work() + 3 * WIDTH / 1600
    assert off < within, f"carried {off:.1f} px beside it"
    app.find(re.compile("^Carried mark, .*not accepted yet"), seen=False)


@story.part("a check called sound before is open again once the mark is accepted")
def accept():
    app = story.app
    app.press("Claw tips, not looked at", "button")
    app.key("1")  # sound, without having seen the place
    first = story.on_disk("answered", lambda r: r.rows(
        'SELECT * FROM "check" WHERE severity = 1'))[0]
    app.key("a")
    mark = story.on_disk("accepted", lambda r: r.rows(
        "SELECT * FROM mark WHERE carried_from IS NOT NULL AND confirmed = 1"))[0]
    equal(mark["check_id"], first["id"], "the check of the same item")
    check = story.records().row('SELECT * FROM "check" WHERE id = ?', first["id"])
    equal(check["severity"], 0, "open again")


@story.part("undo brings the ghost and the answer back; Delete drops it")
def undo_and_drop():
    app = story.app
    app.key("ctrl+z")
    story.on_disk("a ghost again", lambda r: r.rows(
        "SELECT 1 FROM mark WHERE carried_from IS NOT NULL AND confirmed = 0"))
    equal(len(story.records().rows('SELECT 1 FROM "check" WHERE severity = 1')), 1,
          "sound again")
    canvas = app.find(re.compile("^Before, "), "group")
    x, y, width, height = app.place_of(canvas)
    zoom = min(width / WIDTH, height / HEIGHT)
    ghost = [m for m in story.records().marks() if m["carried_from"]][0]["places"][0]
    app.click_at(x + width / 2 + (ghost[0] - WIDTH / 2) * zoom,
                 y + height / 2 + (ghost[1] - HEIGHT / 2) * zoom)
    app.key("Delete")
    story.on_disk("dropped", lambda r: not r.rows(
        "SELECT 1 FROM mark WHERE carried_from IS NOT NULL"))
    app.key("ctrl+z")
    story.on_disk("there again", lambda r: r.rows(
        "SELECT 1 FROM mark WHERE carried_from IS NOT NULL"))


@story.part("a photo taken back takes its pair and its ghost along")
def photo_back():
    app = story.app
    for _step in range(3):  # the answer, then the photo
        if len(story.records().photos()) == 1:
            break
        app.key("ctrl+z")
        time.sleep(1)
    story.on_disk("one photo, nothing of the other", lambda r: len(r.photos()) == 1
                  and not r.rows("SELECT 1 FROM pairing")
                  and len(r.marks()) == 1)


@story.part("the window ends cleanly")
def end():
    story.close_cleanly()


story.run()
