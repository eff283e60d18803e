"""story.py: a window test as a story of parts, told in TAP.

    story = Story("take-in")

    @story.part("the window opens")
    def opens():
        story.start()
        ...

    story.run()

Parts share one desk and run in order. A part that fails keeps a screenshot and the tree of widgets in
WM_BUILD_DIR/tests/window/screenshots and says where; the parts after it are not run and
count as failed, because they build on it.
"""
import contextlib
import os
import pathlib
import re
import shutil
import sqlite3
import subprocess
import sys
import tempfile
import time
import traceback

from drive import Desk, wait_for

PROGRAM = pathlib.Path(os.environ["WM_BUILD_DIR"], "src", "wearmark")
SAMPLES = pathlib.Path(os.environ.get("WM_SAMPLES", ""))
SHOTS = pathlib.Path(os.environ["WM_BUILD_DIR"], "tests", "window", "screenshots")

# Lines of the log that are not ours, and why.
KNOWN_LINES = [
    # No session manager, portal or settings daemon on the test's own bus.
    r"Unable to acquire session bus|portal|xdg-desktop|dconf",
    # GTK tells of its own theme engine's want of a GL driver on a plain X server.
    r"libEGL warning|MESA|failed to load driver|Vulkan",
    # AT-SPI's registry has no cache before a screen reader has come.
    r"dbind-WARNING",
    # The desk has no icon theme daemon, nor recently used files.
    r"recently-used\.xbel",
    # The key caps of GTK's own help overlay: the theme draws single letters in by 3 px.
    r"GtkLabel 0x[0-9a-f]+ \(label\) reported min width -3",
]
BAD_LINE = re.compile(
    r"CRITICAL|WARNING|ERROR|AddressSanitizer|LeakSanitizer|runtime error|UndefinedBehavior"
    r"|Gtk-Message.*[Ff]ail|\*\* Message")


LOOK_S = 0.6

LEAK = re.compile(r"^(?:Direct|Indirect) leak of .*?(?:\n\n|\Z)", re.M | re.S)
LEAK_WORDS = re.compile(
    r"^.*(?:ERROR: LeakSanitizer|SUMMARY: AddressSanitizer: \d+ byte).*\n?", re.M)
OUR_CODE = re.compile(r"\.\./src/(?!window/run\.c|main\.c|libsanitizer/)")


def without_foreign_leaks(log):
    """The log without leaks that GTK made by itself: no function of ours is on the stack
    but the one that runs the main loop. (GTK 4.8's accessibility texts and file chooser
    lose some; their functions have no names to suppress them by.) What we allocate, or
    have GTK allocate for us, has our function on its stack and stays."""
    leaks = LEAK.findall(log)
    if not leaks or any(OUR_CODE.search(leak) for leak in leaks):
        return log, False
    return LEAK_WORDS.sub("", LEAK.sub("", log)), True


def bad_lines(log):
    """What the program should not have said."""
    known = re.compile("|".join(KNOWN_LINES))
    return [line for line in log.splitlines()
            if BAD_LINE.search(line) and not known.search(line)]


def wearmark(archive, *words, check=True):
    """The command line, without a display: what it printed."""
    env = {k: v for k, v in os.environ.items() if k != "DISPLAY"}
    run = subprocess.run([str(PROGRAM), "--archive", str(archive), *map(str, words)],
                         capture_output=True, text=True, env=env, timeout=180)
    if check and run.returncode != 0:
        raise AssertionError(f"wearmark {' '.join(map(str, words))} ended with "
                             f"{run.returncode}: {run.stderr}")
    return run.stdout


class Records:
    """What is on the disk, read beside the program with another SQLite connection."""

    def __init__(self, archive):
        self.path = pathlib.Path(archive, "records.sqlite")

    def rows(self, sql, *values):
        connection = sqlite3.connect(f"file:{self.path}?mode=ro", uri=True, timeout=10)
        connection.row_factory = sqlite3.Row
        try:
            return [dict(row) for row in connection.execute(sql, values)]
        finally:
            connection.close()

    def row(self, sql, *values):
        rows = self.rows(sql, *values)
        assert len(rows) == 1, f"{sql}: {len(rows)} rows"
        return rows[0]

    def piece(self):
        """The only piece."""
        return self.row('SELECT * FROM piece')

    def owner(self):
        return self.row("SELECT person.* FROM person JOIN piece ON piece.owner_id = person.id")

    def visit(self):
        return self.row("SELECT * FROM visit")

    def checks(self):
        return self.rows('SELECT * FROM "check" ORDER BY position')

    def severities(self):
        return [check["severity"] for check in self.checks()]

    def photos(self):
        return self.rows("SELECT * FROM photo ORDER BY position")

    def marks(self):
        marks = self.rows("SELECT * FROM mark ORDER BY id")
        for mark in marks:
            mark["places"] = read_points(mark["points"])
        return marks


def read_points(text):
    """[(x, y), ...] of a mark's points, photo pixels."""
    numbers = [float(n) for n in re.findall(r"-?\d+(?:\.\d+)?(?:e-?\d+)?", text or "")]
    return list(zip(numbers[0::2], numbers[1::2]))


def equal(got, wanted, what):
    assert got == wanted, f"{what}: {got!r}, not {wanted!r}"


def near(got, wanted, within, what):
    assert abs(got - wanted) <= within, f"{what}: {got}, more than {within} from {wanted}"


class Story:
    def __init__(self, name, size="1440x900"):
        self.name, self.size = name, size
        self.parts = []
        self.app = None

    def part(self, title):
        """Adds the decorated function as the next part."""
        def add(function):
            self.parts.append((title, function))
            return function
        return add

    def run(self):
        """Runs the parts in order, tells them in TAP, and ends the test program."""
        print(f"1..{len(self.parts)}", flush=True)
        broken = None
        self.home = pathlib.Path(tempfile.mkdtemp(prefix="wearmark-ui-"))
        self.archive = self.home / "archive"
        try:
            with Desk(self.size, home=self.home) as self.desk:
                for n, (title, function) in enumerate(self.parts, 1):
                    label = f"{n} - {self.name}: {title}"
                    if broken is not None:
                        print(f"not ok {label}\n# not reached, because of «{broken}»")
                    elif not self._tell(n, label, function):
                        broken = title
        finally:
            shutil.rmtree(self.home, ignore_errors=True)
        sys.exit(0 if broken is None else 1)

    def _tell(self, n, label, function):
        began = time.monotonic()
        try:
            function()
        except Exception as problem:
            print(f"not ok {label}")
            for line in self._describe(n, problem).splitlines():
                print(f"# {line}")
            sys.stdout.flush()
            return False
        print(f"ok {label}\n# {time.monotonic() - began:.1f} s", flush=True)
        return True

    def _describe(self, n, problem):
        lines = traceback.format_exception(type(problem), problem, problem.__traceback__)
        if self.app is not None:
            SHOTS.mkdir(parents=True, exist_ok=True)
            stem = f"failed-{self.name}-{n}"
            lines.append(f"screenshot: {self.app.screenshot(SHOTS / f'{stem}.png')}\n")
            with contextlib.suppress(Exception):
                listing = SHOTS / f"{stem}.txt"
                listing.write_text(self.app.tree().listing())
                lines.append(f"widgets: {listing}\n")
            lines.append("log of the program:\n" + self.app.read_log()[-3000:])
        return "".join(lines)

    # ---- the program ---------------------------------------------------------

    def start(self, *words, **env):
        self.app = self.desk.start(PROGRAM, "--archive", self.archive, *words, env=env)
        return self.app

    def take_in(self, owner="Tilda Oskarsdotter", kind=None):
        """A new piece, as far as the other tests need it; @kind as in the list."""
        app = self.app
        app.press("Take in a piece", "button")
        app.find("Name of the customer", "text box")
        app.type(owner)
        app.key("Return")
        self.on_disk("the owner", lambda r: r.owner()["name"] == owner)
        if kind is not None:
            self.choose("Kind", kind)
            self.on_disk("the kind", lambda r: r.piece()["type"])

    def choose(self, name, item):
        """Chooses from the list of that label: opened by the pointer, then by keys."""
        app = self.app
        app.click(app.bring(lambda: app.find(name, "combo box", seen=False)))
        app.find(item, "label", within=name)
        items = app.find_all(role="list item", within=name, seen=False)
        for _step in range([item in node.words() for node in items].index(True)):
            app.key("Down")
        app.key("Return")
        wait_for("the list to close", lambda: not app.find_all(
            role="list item", within=name, seen=False))

    def put_cursor_in(self, name, within=None):
        """Clicks into the field. GTK 4.8 on X11 swallows the click after a list of a
        drop-down was closed; a person clicks again, and so does this."""
        app = self.app
        for _try in range(3):
            app.click(app.bring(lambda: app.find_field(name, within)))
            for _look in range(4):
                if "focused" in app.find_field(name, within).states:
                    return
        raise AssertionError(f"the field «{name}» does not take the cursor")

    def fill(self, name, text, within=None, key="Tab"):
        """Types @text into the field of that label, as a person does, and leaves it."""
        self.put_cursor_in(name, within)
        self.app.key("ctrl+a")
        self.app.type(text)
        self.app.key(key)

    def records(self):
        return Records(self.archive)

    def on_disk(self, what, probe):
        """Waits until the records say so, and then as long as a person looks: the
        window shows a moment after the disk has it, slowly under the sanitizers."""
        answer = wait_for(f"the record to say: {what}", lambda: probe(self.records()))
        time.sleep(LOOK_S)
        return answer

    def close_cleanly(self):
        """Ends the program as a person does; nothing bad was said and nothing leaks."""
        code, log = self.app.close()
        log, leaked = without_foreign_leaks(log)
        bad = bad_lines(log)
        assert not bad, "the program's log:\n" + "\n".join(bad[:40]) + "\n" + log[-3000:]
        if not leaked:  # the sanitizer ends the program with a code of its own
            equal(code, 0, "exit code")
        self.app = None
