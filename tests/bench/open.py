#!/usr/bin/env python3
"""open.py: memory with a 48-megapixel photo open, beside a window that shows it whole.

Ours has it taken in by paste, looked at whole, at true pixels, and dragged across; the
peer is a GtkPicture of the same file. The photo is invented: smooth colours with grain.
"""
import os
import pathlib
import subprocess
import sys
import tempfile
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent.parent / "window"))
from drive import Desk, wait_for  # noqa: E402
from story import Story  # noqa: E402

PEER_S = 6  # long after the peer has drawn


def memory_mb(pid, what):
    for line in pathlib.Path(f"/proc/{pid}/status").read_text().splitlines():
        if line.startswith(what):
            return int(line.split()[1]) / 1024
    raise SystemExit(f"no {what} of {pid}")


def make_photo(folder):
    path = folder / "large.jpg"
    subprocess.run(["convert", "-size", "8000x6000", "plasma:tan-gray", "-attenuate", "0.3",
                    "+noise", "Gaussian", "-quality", "90", path], check=True)
    return path


def open_ours(story, photo):
    """Peak and settled memory."""
    app = story.start()
    story.take_in(kind="Ring with claws")
    app.key("alt+2")
    app.find("Add photos", "button")
    story.desk.copy_files(photo)
    app.key("ctrl+v")
    story.on_disk("the photo", lambda r: r.photos())
    wait_for("the photo", lambda: [
        node for node in app.tree().walk() if (node.name or "").startswith("Before,")])
    app.key("ctrl+1")
    time.sleep(2)
    x, y = 500, 400  # in the middle of the photo, on the desk's 1440 x 900
    for step in range(6):
        app.drag((x, y), (x - 300 + 100 * step, y - 200))
    app.key("ctrl+0")
    time.sleep(2)
    pid = app.process.pid
    return memory_mb(pid, "VmHWM"), memory_mb(pid, "VmRSS")


def open_peer(photo):
    window = pathlib.Path(os.environ["WM_BENCH_PROGRAMS"]) / "empty-window"
    process = subprocess.Popen([window, photo], stderr=subprocess.DEVNULL)
    time.sleep(PEER_S)
    found = memory_mb(process.pid, "VmHWM"), memory_mb(process.pid, "VmRSS")
    process.terminate()
    process.wait()
    return found


def main():
    with tempfile.TemporaryDirectory() as name:
        story = Story("bench-open")
        story.home = pathlib.Path(name)
        story.archive = story.home / "archive"
        photo = make_photo(story.home)
        with Desk(home=name) as story.desk:
            mine = open_ours(story, photo)
            theirs = open_peer(photo)
    for what, a, b in zip(("48 megapixels open, memory at its peak", "the same, settled"),
                          mine, theirs):
        print(f"{what}\t{a:.0f} MB\t{b:.0f} MB\t{a / b:.2f}\t")


main()
