#!/usr/bin/env python3
"""Five photos, each sharp in another fifth, are merged into one that is sharp throughout;
the frames are folded behind it and kept; one undo takes it all back."""
import hashlib
import re
import subprocess

from drive import wait_for
from story import SAMPLES, Story, equal, wearmark

story = Story("stack")
WIDTH, HEIGHT = 1200, 800


def run(*words):
    return subprocess.run([str(w) for w in words], check=True, capture_output=True,
                          text=True)


def make_frames():
    """The truth, and five frames of it: outside its own fifth each is blurred."""
    folder = story.home / "frames"
    folder.mkdir()
    story.truth = story.home / "truth.png"
    run("convert", SAMPLES / "photos" / "ring" / "before-top.jpg", "-resize",
        f"{WIDTH}x{HEIGHT}!", story.truth)
    run("convert", story.truth, "-blur", "0x5", story.home / "soft.png")
    for n in range(5):
        left = n * WIDTH // 5
        run("convert", story.home / "soft.png", "(", story.truth, "-crop",
            f"{WIDTH // 5}x{HEIGHT}+{left}+0", "+repage", ")", "-geometry", f"+{left}+0",
            "-composite", "-quality", "95", folder / f"frame {n}.jpg")
        run("exiftool", "-q", "-overwrite_original",
            f"-DateTimeOriginal=2026:03:02 10:00:{2 * n:02}", folder / f"frame {n}.jpg")
    return sorted(folder.iterdir())


def difference(path):
    """Root mean square difference from the truth, of 0 to 1 (ImageMagick)."""
    told = subprocess.run(["compare", "-metric", "RMSE", str(path), str(story.truth),
                           "null:"], capture_output=True, text=True).stderr
    return float(re.search(r"\(([0-9.e-]+)\)", told).group(1))


def shown():
    """Photos of the strip that the eye sees."""
    return [node.name for node in story.app.find_all(role="button", seen=False)
            if re.match(r"(Before|During|After).*mark", node.name)]


@story.part("five frames come in")
def begin():
    app = story.start()
    story.frames = make_frames()
    story.take_in(kind="Ring with claws")
    app.key("alt+2")
    app.find("Add photos", "button")
    story.desk.copy_files(*story.frames)
    app.key("ctrl+v")
    story.on_disk("five photos", lambda r: len(r.photos()) == 5)
    wait_for("five photos in the strip", lambda: len(shown()) == 5)


@story.part("those taken in one go are chosen, and merged in the background")
def merge():
    app = story.app
    app.key("ctrl+m")
    app.press("Merge 5 photos", "button")
    photos = story.on_disk("six photos", lambda r: len(r.photos()) == 6 and r.photos())
    merged = [p for p in photos if p["made_from"] == "stack"]
    equal(len(merged), 1, "photos made from a stack")
    frames = [p for p in photos if p["made_from"] is None]
    equal([p["stacked_into"] for p in frames], [merged[0]["id"]] * 5, "merged into")
    story.merged = merged[0]


@story.part("the merged photo is sharp where each frame was")
def truth():
    kept = next((story.archive / "photos").rglob(story.merged["sha256"] + ".*"))
    merged = difference(kept)
    frames = [difference(frame) for frame in story.frames]
    print(f"# from the truth: merged {merged:.4f}, frames "
          + " ".join(f"{one:.4f}" for one in frames))
    assert merged < 0.4 * min(frames), f"{merged} is no better than {frames}"


@story.part("the frames are kept byte for byte and folded behind it; a key shows them")
def folded():
    app = story.app
    wait_for("one photo in the strip", lambda: len(shown()) == 1)
    assert "stacked" in shown()[0], shown()
    hashes = {hashlib.sha256(f.read_bytes()).hexdigest() for f in story.frames}
    equal({p["sha256"] for p in story.records().photos()} - {story.merged["sha256"]},
          hashes, "frames in the archive")
    app.key("ctrl+shift+m")
    wait_for("all six in the strip", lambda: len(shown()) == 6)
    app.key("ctrl+shift+m")
    wait_for("one again", lambda: len(shown()) == 1)


@story.part("one undo takes the stack back, and leaves the frames")
def undo():
    app = story.app
    app.key("ctrl+z")
    photos = story.on_disk("five photos", lambda r: len(r.photos()) == 5 and r.photos())
    equal([p["stacked_into"] for p in photos], [None] * 5, "merged into")
    wait_for("five in the strip", lambda: len(shown()) == 5)
    app.key("ctrl+y")
    story.on_disk("six photos again", lambda r: len(r.photos()) == 6)


@story.part("the program closes cleanly, the archive is sound")
def close():
    story.close_cleanly()
    wearmark(story.archive, "verify")


story.run()
