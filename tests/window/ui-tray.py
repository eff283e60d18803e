#!/usr/bin/env python3
"""New photos of the watched folder: a half-copied one is waited for, a burst comes with
its sharpest, nothing in the folder is changed."""
import hashlib
import os
import shutil
import subprocess

from drive import wait_for
from story import SAMPLES, Story, equal, wearmark

story = Story("tray")
RING = SAMPLES / "photos" / "ring"


def sha256(path):
    return hashlib.sha256(path.read_bytes()).hexdigest()


def put(name, source, blurred=0):
    """A photo as a camera's software writes it: under its real name, at once."""
    path = story.watched / name
    if blurred:
        subprocess.run(["convert", source, "-blur", f"0x{blurred}", path], check=True)
    else:
        shutil.copy(source, path)
    return path


@story.part("the folder is chosen in the settings")
def choose():
    app = story.start()
    story.watched = story.home / "from the phone"
    story.watched.mkdir()
    put("last year.jpg", RING / "before-head.jpg")
    story.take_in(kind="Ring with claws")
    app.key("ctrl+comma")
    story.fill("Watched folder", story.watched, key="Return")
    story.on_disk("the folder", lambda r: r.row(
        "SELECT value FROM setting WHERE name = 'watched-folder' AND value = ?",
        str(story.watched)))
    app.key("Escape")
    app.wait_gone("Watched folder", "text")
    app.key("alt+2")
    app.find("Add photos", "button")
    assert not app.has("Put the new photos aside", "button"), "an old photo is offered"


@story.part("a half-copied photo is waited for")
def half():
    app = story.app
    whole = (RING / "before-top.jpg").read_bytes()
    path = story.watched / "IMG_0001.jpg"
    path.write_bytes(whole[: len(whole) // 2])
    try:
        app.find("1 new photo", "status", patience=4)
        raise AssertionError("half a photo is offered")
    except AssertionError as problem:
        assert "waited" in str(problem), problem
    path.write_bytes(whole)
    app.find("1 new photo", "status")
    app.key("ctrl+t")
    photos = story.on_disk("one photo", lambda r: len(r.photos()) == 1 and r.photos())
    equal(photos[0]["sha256"], sha256(path), "its bytes")
    equal(photos[0]["original_name"], "IMG_0001.jpg", "its name")
    app.wait_gone("1 new photo", "status")
    assert path.exists(), "the file is gone from the watched folder"


@story.part("of a burst the sharpest is chosen, the rest stays in the folder")
def burst():
    app = story.app
    now = 1_790_000_000
    for i, blur in enumerate((6, 0, 3)):
        path = put(f"burst {i}.jpg", RING / "before-finger.jpg", blur)
        os.utime(path, (now + i, now + i))
    app.find("3 new photos", "status")
    names = [n.name for n in app.tree().walk() if n.name and n.name.startswith("burst ")]
    equal(len(names), 3, f"tiles, {names}")
    assert names[0].startswith("burst 1.jpg") and "sharpest" in names[0], names
    before = {p.name: p.stat().st_mtime for p in story.watched.iterdir()}
    app.find("Take in 1", "button")
    app.key("ctrl+t")
    photos = story.on_disk("two photos", lambda r: len(r.photos()) == 2 and r.photos())
    assert sha256(story.watched / "burst 1.jpg") in {p["sha256"] for p in photos}
    app.wait_gone("3 new photos", "status")
    equal({p.name: p.stat().st_mtime for p in story.watched.iterdir()}, before,
          "the folder")


@story.part("put aside is offered again by key, and one photo undone")
def aside():
    app = story.app
    put("other.jpg", RING / "before-head.jpg")
    app.find("1 new photo", "status")
    app.press("Put the new photos aside", "button")
    app.wait_gone("1 new photo", "status")
    app.key("ctrl+shift+t")
    app.find("3 new photos", "status")
    app.key("ctrl+z")
    story.on_disk("one photo", lambda r: len(r.photos()) == 1)


@story.part("a folder that is gone is told, and nothing else suffers")
def gone():
    app = story.app
    story.watched.rename(story.home / "moved")
    wait_for("the problem", lambda: app.has("Watched folder", "status"))
    (story.home / "moved").rename(story.watched)
    app.wait_gone("Watched folder", "status")


@story.part("the program closes with nothing to complain about, the archive is sound")
def close():
    story.close_cleanly()
    wearmark(story.archive, "verify")


story.run()
