#!/usr/bin/env python3
"""Photos come in by the file chooser and the clipboard; bad files are named, the good
ones come in all the same and are kept byte for byte."""
import hashlib
import pathlib
import shutil

from drive import wait_for
from story import SAMPLES, Story, equal, wearmark

story = Story("photos")


def make_files():
    """One good photo beside files of every bad kind."""
    folder = story.home / "from the camera"
    folder.mkdir()
    good = SAMPLES / "photos" / "ring" / "before-top.jpg"
    shutil.copy(good, folder / "ring top.jpg")
    shutil.copy(SAMPLES / "photos" / "ring" / "before-finger.jpg", folder / "-finger.jpg")
    (folder / "empty.jpg").write_bytes(b"")
    (folder / "letter.jpg").write_text("Dear jeweller, this is no photo at all.\n" * 30)
    (folder / "cut short.jpg").write_bytes(good.read_bytes()[:20000])
    (folder / "a folder.jpg").mkdir()
    return folder


def sha256(path):
    return hashlib.sha256(pathlib.Path(path).read_bytes()).hexdigest()


@story.part("a piece is taken in and its inspection opened")
def begin():
    story.start()
    story.take_in(kind="Ring with claws")
    story.app.key("alt+2")
    story.app.find("Add photos", "button")


@story.part("the file chooser brings a photo in by its typed path")
def chooser():
    app = story.app
    story.folder = make_files()
    app.key("ctrl+o")
    wait_for("the file chooser", lambda: "Add photos" in {w[4] for w in app.windows()})
    app.type(story.folder / "ring top.jpg")
    app.key("Return")
    photos = story.on_disk("one photo", lambda r: r.photos())
    equal(photos[0]["sha256"], sha256(story.folder / "ring top.jpg"), "the photo's hash")
    equal((photos[0]["width"], photos[0]["height"], photos[0]["format"]),
          (2000, 1334, "jpeg"), "size and format")
    equal(photos[0]["moment"], "before", "moment")
    equal(photos[0]["original_name"], "ring top.jpg", "name")


@story.part("pasted files: the bad ones are named with their reason, the good one comes in")
def paste():
    app = story.app
    bad = ["empty.jpg", "letter.jpg", "cut short.jpg", "a folder.jpg"]
    story.desk.copy_files(*(story.folder / name for name in [*bad, "-finger.jpg"]))
    app.key("ctrl+v")
    app.find("4 files were left out", "label")
    told = app.find("Files that were left out", "list", seen=False)
    words = told.words()
    for name in bad:
        rows = [row for row in told.children if name in row.words()]
        assert rows, f"«{name}» is not named among {words}"
        reasons = [w for w in rows[0].words() if w != name]
        assert any(len(reason) > 20 for reason in reasons), \
            f"no reason for «{name}»: {reasons}"
    assert app.has("1 photo came in and is kept.", "label"), "the good one is not told of"
    app.key("Escape")
    app.wait_gone("4 files were left out", "label")


@story.part("the archive holds the good files byte for byte, and nothing of the bad ones")
def archive():
    photos = story.on_disk("two photos", lambda r: len(r.photos()) == 2 and r.photos())
    equal({p["original_name"] for p in photos}, {"ring top.jpg", "-finger.jpg"}, "photos")
    for photo in photos:
        kept = list((story.archive / "photos").rglob(photo["sha256"] + ".*"))
        equal(len(kept), 1, f"files of {photo['original_name']}")
        equal(sha256(kept[0]), photo["sha256"], f"bytes of {photo['original_name']}")
    files = [f for f in (story.archive / "photos").rglob("*") if f.is_file()]
    equal(len(files), 2, f"files in the archive, {files}")


@story.part("a removed photo comes back by undo")
def remove():
    app = story.app
    app.key("ctrl+Delete")
    story.on_disk("one photo left", lambda r: len(r.photos()) == 1)
    app.key("ctrl+z")
    story.on_disk("two photos again", lambda r: len(r.photos()) == 2)
    app.key("ctrl+y")
    story.on_disk("one photo left again", lambda r: len(r.photos()) == 1)
    app.key("ctrl+z")
    story.on_disk("two photos once more", lambda r: len(r.photos()) == 2)


@story.part("the program closes with nothing to complain about, the archive is sound")
def close():
    story.close_cleanly()
    wearmark(story.archive, "verify")


story.run()
