#!/usr/bin/env python3
"""The report made from the window, read back by poppler and qpdf and compared with the
record; then the same from the command line."""
import hashlib
import re
import subprocess

from drive import wait_for
from story import SAMPLES, Story, equal, wearmark

story = Story("report")
PHOTO = SAMPLES / "photos" / "ring" / "before-top.jpg"
KEY_REPAIR, KEY_ENTER = 89, 104  # number pad, Num Lock off
WORDS = {0: "not looked at", 1: "sound", 3: "repair"}  # reckon/severity.h


def run(*words):
    return subprocess.run([str(word) for word in words], capture_output=True, text=True,
                          check=True).stdout


def squeeze(text):
    return re.sub(r"\s+", " ", text)


@story.part("a piece with a photo, a marked finding and its note")
def begin():
    app = story.start()
    story.take_in(owner="Ludo Brandis", kind="Ring with claws")
    app.key("alt+2")
    app.find("Claw tips, not looked at", "button")
    story.desk.copy_files(PHOTO)
    app.key("ctrl+v")
    story.on_disk("the photo", lambda r: r.photos())
    canvas = app.find(re.compile("^Before, "), "group")
    app.key(KEY_ENTER)
    app.find("If left", "label")
    x, y, width, height = app.place_of(canvas)
    app.click_at(x + width * 0.6, y + height * 0.45)
    story.on_disk("the mark", lambda r: r.marks())
    app.key(KEY_REPAIR)
    story.on_disk("the answer", lambda r: 3 in r.severities())


@story.part("the window saves the report as PDF")
def save():
    app = story.app
    story.pdf = story.home / "from the window.pdf"
    app.key("alt+5")
    app.find("Save report as PDF", "button")
    app.key("ctrl+shift+p")
    wait_for("the file chooser",
             lambda: "Save report as PDF" in {w[4] for w in app.windows()})
    app.key("ctrl+a")
    app.type(story.pdf)
    app.key("Return")
    wait_for("the file", story.pdf.exists)
    assert "No syntax or stream encoding errors found" in run("qpdf", "--check", story.pdf)


@story.part("its text is what the record says")
def text():
    record = story.records()
    words = squeeze(run("pdftotext", "-layout", story.pdf, "-"))
    piece = record.piece()
    for wanted in (piece["number"], "Ludo Brandis", "Ring with claws"):
        assert wanted in words, f"«{wanted}» is not on the paper"
    checks = record.checks()
    for check in checks:
        title = check["fault"] if check["severity"] == 3 else check["title"]
        assert title in words, f"the check «{title}» is not on the paper"
    open_ones = sum(1 for check in checks if check["severity"] == 0)
    equal(words.count(WORDS[0]), open_ones, "checks printed as not looked at")


@story.part("its picture is the photo itself, byte for byte")
def picture():
    out = story.home / "picture"
    run("pdfimages", "-j", "-f", "1", "-l", "1", story.pdf, out)
    first = sorted(story.home.glob("picture-*.jpg"))[0]
    equal(picture_data(first.read_bytes()), picture_data(PHOTO.read_bytes()),
          "the photo's picture data")


def picture_data(jpeg):
    """What lies between the start of scan and the end: the picture without its notes."""
    return hashlib.sha256(jpeg[jpeg.index(b"\xff\xda"):]).hexdigest()


@story.part("the command line makes the same pages")
def command():
    number = story.records().piece()["number"]
    other = story.home / "from the command line.pdf"
    wearmark(story.archive, "report", number, "-o", other)
    equal(squeeze(run("pdftotext", "-layout", other, "-")),
          squeeze(run("pdftotext", "-layout", story.pdf, "-")), "the text")


@story.part("and it closes with nothing to complain about")
def close():
    story.close_cleanly()


story.run()
