#!/usr/bin/env python3
"""An inspection: marks by pointer and keys, answers by the number pad alone. What the
record says is compared with where the pointer was, not with pixels on the screen."""
import re

from drive import wait_for
from story import SAMPLES, Story, equal, near, wearmark

story = Story("inspection")

# Key codes of the number pad (evdev), so that they come as they do with Num Lock off.
PAD = {"0": 90, "1": 87, "2": 88, "3": 89, "4": 83, "Enter": 104, "*": 63}
SEVERITIES = {"1": 1, "2": 2, "3": 3, "4": 4, "0": 5}  # reckon/severity.h
WIDTH, HEIGHT = 2000, 1334  # of the photo, upright px
PHOTO = re.compile("^Before, ")  # the canvas is named after what it shows


class View:
    """How the canvas shows the whole photo: as large as fits, in the middle."""

    def __init__(self):
        canvas = story.app.find(PHOTO, "group")
        self.x, self.y, self.width, self.height = story.app.place_of(canvas)
        self.zoom = min(self.width / WIDTH, self.height / HEIGHT)

    def to_screen(self, x, y):
        return (round(self.x + self.width / 2 + (x - WIDTH / 2) * self.zoom),
                round(self.y + self.height / 2 + (y - HEIGHT / 2) * self.zoom))

    def to_photo(self, x, y):
        return ((x - self.x - self.width / 2) / self.zoom + WIDTH / 2,
                (y - self.y - self.height / 2) / self.zoom + HEIGHT / 2)


def is_at(place, wanted, within=2.0):
    return max(abs(place[0] - wanted[0]), abs(place[1] - wanted[1])) <= within


def mark_at(what, wanted, within=2.0):
    """Waits until the only mark lies at @wanted, photo px; its row."""
    marks = story.on_disk(f"{what}, the mark at {wanted}", lambda r: [
        m for m in r.marks() if is_at(m["places"][0], wanted, within)])
    equal(len(story.records().marks()), 1, "marks")
    return marks[0]


def undo_redo(what, before, after):
    """Ctrl+Z brings @before back, Ctrl+Y @after again."""
    story.app.key("ctrl+z")
    story.on_disk(f"{what} undone", before)
    story.app.key("ctrl+y")
    story.on_disk(f"{what} done again", after)


@story.part("a photo lies before the jeweller, the checklist beside it")
def begin():
    app = story.start()
    story.take_in(kind="Ring with claws")
    app.key("alt+2")
    app.find("Claw tips, not looked at", "button")
    story.desk.copy_files(SAMPLES / "photos" / "ring" / "before-top.jpg")
    app.key("ctrl+v")
    story.on_disk("the photo", lambda r: r.photos())
    app.find(PHOTO, "group")


@story.part("a click on the photo places a mark, tied to the open check")
def place():
    app = story.app
    app.key(PAD["Enter"])
    wait_for("the first check to open", lambda: app.find_all("sound", "button")
             or app.find_all("Sound", "button") or app.has("If left", "label"))
    story.view = View()
    point = story.view.to_screen(1220, 480)
    app.click_at(*point)
    story.wanted = story.view.to_photo(*point)
    mark = mark_at("placed", story.wanted)
    equal(mark["shape"], "spot", "shape")
    equal(mark["check_id"], story.records().checks()[0]["id"], "the mark's check")
    undo_redo("placing", lambda r: not r.marks(),
              lambda r: [m for m in r.marks() if is_at(m["places"][0], story.wanted)])


@story.part("a drag moves the mark: one edit")
def drag():
    app = story.app
    # On the disk it is there again; to be taken hold of it has to be on the photo, too.
    app.find(re.compile("^Mark 1"))
    start = story.view.to_screen(*story.wanted)
    end = (start[0] - 150, start[1] + 90)
    app.drag(start, end)
    old, story.wanted = story.wanted, story.view.to_photo(*end)
    mark_at("dragged", story.wanted)
    undo_redo("the drag", lambda r: is_at(r.marks()[0]["places"][0], old),
              lambda r: is_at(r.marks()[0]["places"][0], story.wanted))


@story.part("arrow keys nudge it by one photo pixel, with Shift by ten")
def nudge():
    app = story.app
    x, y = story.records().marks()[0]["places"][0]
    app.key("Right")
    mark_at("nudged to the right", (x + 1, y), 0.011)
    app.key("shift+Down")
    mark_at("nudged far down", (x + 1, y + 10), 0.011)
    undo_redo("the nudge", lambda r: is_at(r.marks()[0]["places"][0], (x + 1, y), 0.011),
              lambda r: is_at(r.marks()[0]["places"][0], (x + 1, y + 10), 0.011))


@story.part("zoomed in, a click lands within two photo pixels just the same")
def zoomed():
    app = story.app
    # In the middle from left to right: a photo narrower than the view stays there.
    anchor = story.view.to_screen(WIDTH / 2, 900)
    app.xdo("mousemove", *anchor)
    for _notch in range(4):
        app.xdo("click", 4)
    # Each notch is a quarter more; the zoom glides there.
    wait_for("the photo to be enlarged", lambda: zoom_shown() > 2 * 100 * story.view.zoom)
    # The photo px under the pointer stays there: that is where a click now lands.
    place = story.view.to_photo(*anchor)
    app.click_at(*anchor)
    story.on_disk("the second mark", lambda r: [
        m for m in r.marks() if is_at(m["places"][0], place)])
    app.key("ctrl+z")
    story.on_disk("one mark again", lambda r: len(r.marks()) == 1)
    app.key("ctrl+0")


def zoom_shown():
    """What the marking bar says, per cent."""
    return float(story.app.find(re.compile(r"^[\d.]+ %$"), "label").name[:-2])


@story.part("Delete takes the mark away, undo brings it back")
def delete():
    app = story.app
    kept = story.records().marks()[0]["places"]
    app.click_at(*story.view.to_screen(*kept[0]))
    app.key("Delete")
    story.on_disk("no mark", lambda r: not r.marks())
    app.key("ctrl+z")
    story.on_disk("the mark again", lambda r: [m for m in r.marks()
                                               if m["places"] == kept])
    app.key("ctrl+y")
    story.on_disk("no mark again", lambda r: not r.marks())
    app.key("ctrl+z")
    story.on_disk("the mark once more", lambda r: r.marks())


@story.part("every check is answered with the number pad alone")
def answer():
    app = story.app
    app.key("Escape", "Escape")
    n = len(story.records().checks())
    keys = (["1", "2", "3", "4", "0"] + ["1"] * n)[:n]
    app.key(PAD["Enter"])
    for key in keys:
        app.key(PAD[key])
        app.key(PAD["Enter"])
    wanted = [SEVERITIES[key] for key in keys]
    story.on_disk(f"the answers {wanted}", lambda r: r.severities() == wanted)
    checks = story.records().checks()
    assert all(c["answered_at_s"] for c in checks), "an answer without its time"
    numbers = [c["number"] for c in checks if c["severity"] in (2, 3, 4)]
    equal(len(set(numbers)), 3, f"numbers of the findings, {numbers}")
    assert None not in numbers, "a finding without a number"


@story.part("an answer is taken back by undo and given again by redo")
def undo_answer():
    before = story.records().severities()
    undo_redo("the last answer", lambda r: r.severities()[-1] == 0,
              lambda r: r.severities() == before)


@story.part("with everything looked at the visit is called inspected")
def conclude():
    story.app.find("All looked at, 3 findings", "label")
    story.app.key(PAD["*"])
    story.on_disk("inspected", lambda r: r.visit()["inspected_at_s"])


@story.part("the program closes with nothing to complain about, the archive is sound")
def close():
    story.close_cleanly()
    wearmark(story.archive, "verify")


story.run()
