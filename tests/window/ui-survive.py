#!/usr/bin/env python3
"""Closing while photos come in, and the power cut: nothing told of is lost."""
import re
import shutil
import subprocess

from drive import wait_for
from story import SAMPLES, Story, equal, wearmark

story = Story("survive")


@story.part("closing while photos come in ends cleanly")
def close_while_importing():
    app = story.start()
    story.take_in(kind="Ring with claws")
    app.key("alt+2")
    app.find("Claw tips, not looked at", "button")
    folder = story.home / "many"
    folder.mkdir()
    subprocess.run(["convert", "-size", "8000x6000", "gradient:grey-gold", "-quality", "92",
                    str(folder / "0.jpg")], check=True)
    for i in range(1, 8):
        shutil.copy(folder / "0.jpg", folder / f"{i}.jpg")
        with open(folder / f"{i}.jpg", "ab") as file:
            file.write(bytes([i]))  # another file to the archive, the same picture
    story.desk.copy_files(*sorted(folder.iterdir()))
    app.key("ctrl+v")
    story.on_disk("the first photo", lambda r: r.photos())
    story.close_cleanly()
    n = len(story.records().photos())
    assert n < 8, "everything had come in: nothing was tried"


@story.part("the archive is sound afterwards")
def verify():
    wearmark(story.archive, "verify")


@story.part("closing while a photo is being loaded ends cleanly")
def close_while_loading():
    app = story.start()
    app.find(re.compile("Tilda Oskarsdotter$"), "label")  # it opens where it was left
    shutil.rmtree(story.archive / "cache")  # so that it has to be decoded again
    app.key("alt+2")
    story.close_cleanly()
    wearmark(story.archive, "verify")


def write_note():
    """The key for the note; a person types when the cursor is there, and so does this."""
    story.app.key("n")
    wait_for("the cursor in the note", lambda: [
        node for node in story.app.find_all("Note", "text box")
        if "focused" in node.states])


@story.part("killed in the middle of an edit: what was committed is there after a restart")
def kill():
    app = story.start()
    app.find(re.compile("Tilda Oskarsdotter$"), "label")  # it opens where it was left
    app.key("alt+2")
    app.find("Claw tips, not looked at", "button")
    app.key(104)
    app.key(89)
    story.on_disk("the answer", lambda r: 3 in r.severities())
    write_note()
    app.type("worn to half, seen with the loupe")
    app.key("Return")
    story.on_disk("the note", lambda r: [c for c in r.checks() if c["note"]])
    before = story.records().checks()
    write_note()
    app.type(" and not yet ended")
    app.kill()
    wearmark(story.archive, "verify")
    equal(story.records().checks(), before, "checks after the power cut")


@story.part("undo goes back over the restart, redo forward again")
def undo_after_restart():
    app = story.start()
    app.find(re.compile("Tilda Oskarsdotter$"), "label")  # it opens where it was left
    app.key("alt+2")
    app.find("All claws there, not looked at", "button")
    app.key("ctrl+z")
    story.on_disk("no note", lambda r: not [c for c in r.checks() if c["note"]])
    app.key("ctrl+z")
    story.on_disk("no answer", lambda r: 3 not in r.severities())
    app.key("ctrl+y")
    story.on_disk("the answer again", lambda r: 3 in r.severities())
    app.key("ctrl+y")
    story.on_disk("the note again", lambda r: [c for c in r.checks() if c["note"]])


@story.part("and it closes with nothing to complain about")
def close():
    story.close_cleanly()
    wearmark(story.archive, "verify")


story.run()
