#!/usr/bin/env python3
"""A mark on a place out of focus is told of, the tint says where the photo is sharp, and
the marked picture goes out without the place and camera of the original."""
import pathlib
import re
import subprocess
import time

from drive import wait_for
from story import SAMPLES, Story, wearmark

story = Story("picture")
SOFT = re.compile("^The marked place is not sharp")


def run(*words):
    return subprocess.run([str(w) for w in words], check=True, capture_output=True,
                          text=True).stdout


def make_photo():
    """The left half is out of focus; the file says where it was taken, and with what."""
    path = story.home / "half.jpg"
    run("convert", SAMPLES / "photos" / "ring" / "before-top.jpg", "-resize",
        "1800x1200!", "(", "+clone", "-crop", "900x1200+0+0", "+repage", "-blur", "0x8",
        ")", "-geometry", "+0+0", "-composite", "-quality", "95", path)
    run("exiftool", "-q", "-overwrite_original", "-GPSLatitude=48.1", "-GPSLatitudeRef=N",
        "-GPSLongitude=11.5", "-GPSLongitudeRef=E", "-Make=Invented", "-Model=Bench One",
        "-XMP:Creator=Somebody", "-Comment=private", path)
    assert "GPS" in run("exiftool", "-G1", path)
    return path


def is_told(pattern):
    """Whether a label over the photo says so: the pointer goes through those."""
    return story.app.has(pattern, seen=False)


def place(x, y):
    """Clicks that photo px of the canvas, which shows the whole photo."""
    canvas = story.app.find(re.compile("^Before, "), "group")
    left, top, width, height = story.app.place_of(canvas)
    zoom = min(width / 1800, height / 1200)
    story.app.click_at(left + width / 2 + (x - 900) * zoom,
                       top + height / 2 + (y - 600) * zoom)


@story.part("a photo comes in that is half out of focus")
def begin():
    app = story.start()
    story.photo = make_photo()
    story.take_in(kind="Ring with claws")
    app.key("alt+2")
    app.find("Add photos", "button")
    story.desk.copy_files(story.photo)
    app.key("ctrl+v")
    story.on_disk("the photo", lambda r: len(r.photos()) == 1)


@story.part("a mark on its soft half is told of, one on the sharp half is not")
def focus():
    app = story.app
    place(560, 380)  # the left shoulder's stone, in the blurred half
    story.on_disk("one mark", lambda r: len(r.marks()) == 1)
    wait_for("a word of focus", lambda: is_told(SOFT))
    app.key("Escape")
    place(1250, 590)  # the right shoulder's stone
    story.on_disk("two marks", lambda r: len(r.marks()) == 2)
    wait_for("no word of focus", lambda: not is_told(SOFT))
    time.sleep(1)
    assert not is_told(SOFT), "a sharp place is called not sharp"
    app.key("Escape")


@story.part("the tint is shown by a key, and says what it means")
def tint():
    app = story.app
    app.key("f")
    wait_for("the words", lambda: is_told(re.compile("^Blue: sharp there")))
    time.sleep(1.5)
    app.key("f")
    wait_for("the words to go", lambda: not is_told(re.compile("^Blue: sharp")))


@story.part("the marked picture is saved without place, camera and names")
def save():
    app = story.app
    for name, kind in (("out.jpg", "JPEG"), ("out.png", "PNG")):
        path = story.home / name
        app.key("ctrl+e")
        wait_for("the file chooser", lambda: any(w[4].startswith("Save marked picture")
                                                 for w in app.windows()))
        time.sleep(0.5)
        app.key("ctrl+a")
        app.type(str(path))
        app.key("Return")
        wait_for(name, path.exists)
        app.find(re.compile("^Marked picture saved"), "label")
        time.sleep(0.5)
        told = run("exiftool", "-G1", "-a", path)
        for word in ("GPS", "Invented", "Bench One", "Somebody", "private", "[IFD0]",
                     "XMP"):
            assert word not in told, f"«{word}» is in {name}:\n{told}"
        assert kind in told, told


@story.part("it is copied; and the command line writes a JPEG, too")
def copy():
    app = story.app
    app.key("ctrl+shift+e")
    app.find("Marked picture copied.", "label")
    number = story.records().piece()["number"]
    path = pathlib.Path(story.home, "verb.jpg")
    wearmark(story.archive, "picture", number, "--photo", "1", "-o", path)
    told = run("exiftool", "-G1", "-a", path)
    assert "JPEG" in told and "GPS" not in told and "IFD0" not in told, told


@story.part("the program closes cleanly")
def close():
    story.close_cleanly()
    wearmark(story.archive, "verify")


story.run()
