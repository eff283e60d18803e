"""drive.py: the real window, driven the way a person drives it.

Starts the program on a private X server with a window manager, a private session bus
and the accessibility bus; finds widgets by role and name through AT-SPI; points, types
and drags with real X events (xdotool). AT-SPI extents are relative to the window, so
the window's own place is added.

    with Desk() as desk:
        app = desk.start(program, "--archive", folder)
        app.press("Take in a piece")
        ...

On a failure the caller keeps app.screenshot(path).
"""
import contextlib
import os
import pathlib
import shutil
import signal
import subprocess
import sys
import tempfile
import time

from tree import Bus

# Of a wait for the window: the sanitizers slow everything down, and so may a machine
# that is busy with other things.
PATIENCE_S = float(os.environ.get("WM_UI_PATIENCE_S", "40"))


class NotThere(AssertionError):
    """A widget or state that was waited for did not come."""


class Ended(Exception):
    """The program has ended, though nobody closed it."""


def wait_for(what, probe, patience=PATIENCE_S):
    """The first true answer of @probe; NotThere, naming @what, if it never comes."""
    end = time.monotonic() + patience
    last = None
    while time.monotonic() < end:
        try:
            answer = probe()
            if answer:
                return answer
        except (Ended, KeyboardInterrupt):
            raise
        except Exception as problem:  # a widget may vanish while it is looked at
            last = problem
        time.sleep(0.1)
    raise NotThere(f"waited {patience:.0f} s for {what}" + (f" ({last})" if last else ""))


class Desk:
    """An X server with a window manager and a session bus of its own."""

    def __init__(self, size="1440x900", home=None):
        self.size = size
        self.stack = contextlib.ExitStack()
        self.home = home

    def __enter__(self):
        if self.home is None:
            self.home = tempfile.mkdtemp(prefix="wearmark-desk-")
            self.stack.callback(shutil.rmtree, self.home, True)
        self._start_x()
        self._start_bus()
        self._spawn(["openbox"], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        return self

    def __exit__(self, *what):
        self.stack.close()

    def _spawn(self, argv, **more):
        process = subprocess.Popen(argv, start_new_session=True, **more)

        def end():
            if process.poll() is None:
                os.killpg(process.pid, signal.SIGTERM)
                try:
                    process.wait(5)
                except subprocess.TimeoutExpired:
                    os.killpg(process.pid, signal.SIGKILL)
                    process.wait()

        self.stack.callback(end)
        return process

    def _start_x(self):
        read, write = os.pipe()
        self._spawn(
            ["Xvfb", "-displayfd", str(write), "-screen", "0", f"{self.size}x24",
             "-nolisten", "tcp"],
            pass_fds=[write], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        os.close(write)
        with os.fdopen(read) as pipe:
            number = pipe.readline().strip()
        if not number:
            raise NotThere("Xvfb did not start")
        os.environ["DISPLAY"] = f":{number}"

    def _start_bus(self):
        bus = self._spawn(
            ["dbus-daemon", "--session", "--print-address", "--nofork"],
            stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True)
        os.environ["DBUS_SESSION_BUS_ADDRESS"] = bus.stdout.readline().strip()
        runtime = pathlib.Path(self.home, "runtime")
        runtime.mkdir(mode=0o700, exist_ok=True)
        os.environ.update(
            HOME=str(self.home), XDG_RUNTIME_DIR=str(runtime),
            XDG_DATA_HOME=str(pathlib.Path(self.home, "data")),
            XDG_CONFIG_HOME=str(pathlib.Path(self.home, "config")),
            XDG_CACHE_HOME=str(pathlib.Path(self.home, "cache")),
            GTK_A11Y="atspi", GDK_BACKEND="x11", GSK_RENDERER="cairo",
            GSETTINGS_BACKEND="memory", NO_AT_BRIDGE="0")
        os.environ.pop("WAYLAND_DISPLAY", None)

    def copy_files(self, *paths):
        """Puts @paths on the clipboard, as a file manager does."""
        owner = self._spawn(
            [sys.executable, str(pathlib.Path(__file__).with_name("clipboard.py")),
             *map(str, paths)], stdout=subprocess.PIPE, text=True)
        if owner.stdout.readline().strip() != "ready":
            raise NotThere("the clipboard's owner did not start")
        time.sleep(1.5)  # until every program on the desk has asked what is there

    def start(self, program, *arguments, env=None):
        return App(self, program, arguments, env)


class App:
    """One run of the program."""

    def __init__(self, desk, program, arguments, env):
        self.desk = desk
        self.log = pathlib.Path(desk.home, f"log-{time.monotonic_ns()}.txt")
        self.process = desk._spawn(
            [str(program), *map(str, arguments)], stdout=open(self.log, "wb"),
            stderr=subprocess.STDOUT, env={**os.environ, **(env or {})})
        self.places = {}  # of windows on the screen, by their box
        self.bus = wait_for("the accessibility bus", lambda: Bus(self.process.pid))
        wait_for("the program on the accessibility bus", self._has_come)

    def _has_come(self):
        if self.process.poll() is not None:
            raise Ended(f"the program ended with {self.process.returncode}: "
                        + self.read_log()[-2000:])
        return self.bus.find_program()

    def read_log(self):
        return self.log.read_text(errors="replace")

    # ---- finding -----------------------------------------------------------

    def tree(self):
        """The program with its windows and all that is in them, as it is now."""
        if self.process.poll() is not None:
            raise Ended(f"the program ended with {self.process.returncode}: "
                        + self.read_log()[-2000:])
        return self.bus.read()

    def find_all(self, name=None, role=None, within=None, seen=True):
        """The widgets of that name and role; @seen: only those that can be seen.

        @name may be a compiled pattern. @within: a name that something around the
        widget must have.
        """
        root = self.tree()
        found = [node for node in root.walk()
                 if (role is None or node.role == role)
                 and (name is None or (name.search(node.name) if hasattr(name, "search")
                                       else node.name == name))
                 and (within is None
                      or any(around.name == within for around in node.ancestors()))]
        if seen:
            return self.bus.see(root, found)
        self.bus.measure(found)
        return found

    def find(self, name=None, role=None, within=None, seen=True, patience=PATIENCE_S):
        return wait_for(f"{role or 'widget'} «{name}»",
                        lambda: (self.find_all(name, role, within, seen) or [None])[0],
                        patience)

    def has(self, name=None, role=None, within=None, seen=True):
        return bool(self.find_all(name, role, within, seen))

    def wait_gone(self, name=None, role=None, patience=PATIENCE_S):
        wait_for(f"{role or 'widget'} «{name}» to go", lambda: not self.has(name, role),
                 patience)

    def find_field(self, name, within=None):
        """The place to type under that label."""
        return wait_for(f"field «{name}»", lambda: next(
            node for node in self.find_all(name, None, within, seen=False)
            if "editable" in node.states))

    def bring(self, find, turns=40):
        """The widget that find () gives, after turning the wheel until it is in view.

        Stays clear of the edges, where a widget would be half covered.
        """
        for _turn in range(turns):
            node = find()
            x, y = node.middle
            height = node.window.box[3]
            if 130 < y < height - 60:
                return node
            left, top = self.place_of(node.window)[:2]
            self.xdo("mousemove", int(left + x), int(top + height / 2))
            self.xdo("click", 5 if y >= 130 else 4)
            time.sleep(0.15)
        raise NotThere(f"{node} could not be brought into view")

    def text_of(self, node):
        return self.bus.text_of(node)

    def windows(self):
        """X windows of the program in view: (x, y, width, height, title)."""
        found = []
        for window in self._ask_x("search", "--onlyvisible", "--pid", self.process.pid,
                                  ".*").split():
            geometry = dict(line.split("=") for line in self._ask_x(
                "getwindowgeometry", "--shell", window).split() if "=" in line)
            if geometry:
                found.append((*(int(geometry[k]) for k in ("X", "Y", "WIDTH", "HEIGHT")),
                              self._ask_x("getwindowname", window).strip()))
        return found

    @staticmethod
    def _ask_x(*words):
        return subprocess.run(["xdotool", *map(str, words)], capture_output=True,
                              text=True).stdout

    def _place_of_surface(self, surface):
        """x, y of a window's or popover's box on the screen.

        Its X window is larger: by a frame for resizing, or by a shadow.
        """
        key = (surface.path, surface.box)
        if key not in self.places:
            width, height = surface.box[2:]
            same = [w for w in self.windows()
                    if 0 <= w[2] - width <= 60 and 0 <= w[3] - height <= 60]
            if not same:
                raise NotThere(f"no X window of the size of {surface} {surface.box}")
            best = min(same, key=lambda w: (w[4] != surface.name,
                                            w[2] - width + w[3] - height))
            self.places[key] = (best[0] + (best[2] - width) / 2,
                                best[1] + (best[3] - height) / 2)
        return self.places[key]

    def place_of(self, node):
        """x, y, width, height of @node on the screen."""
        surface = node.popover or node.window
        left, top = self._place_of_surface(surface)
        return (left + node.box[0] - surface.box[0], top + node.box[1] - surface.box[1],
                node.box[2], node.box[3])

    # ---- doing -------------------------------------------------------------

    @staticmethod
    def xdo(*words):
        subprocess.run(["xdotool", *map(str, words)], check=True)
        time.sleep(0.05)

    def click_at(self, x, y, button=1, repeat=1):
        self.xdo("mousemove", int(x), int(y))
        time.sleep(0.1)
        self.xdo("click", "--repeat", repeat, "--delay", 60, button)

    def click(self, node):
        x, y, width, height = self.place_of(node)
        self.click_at(x + width / 2, y + height / 2)

    def press(self, name, role=None, within=None):
        """Clicks the widget of that name with the pointer."""
        self.click(self.find(name, role, within))

    def drag(self, start, end, steps=12):
        self.xdo("mousemove", int(start[0]), int(start[1]))
        self.xdo("mousedown", 1)
        for step in range(1, steps + 1):
            share = step / steps
            self.xdo("mousemove",
                     int(start[0] + (end[0] - start[0]) * share),
                     int(start[1] + (end[1] - start[1]) * share))
        self.xdo("mouseup", 1)

    def key(self, *keys):
        for key in keys:
            self.xdo("key", "--clearmodifiers", key)

    def type(self, text):
        self.xdo("type", "--clearmodifiers", "--delay", 15, text)

    def screenshot(self, path):
        subprocess.run(["import", "-window", "root", str(path)], check=False)
        return path

    # ---- ending ------------------------------------------------------------

    def close(self, patience=PATIENCE_S):
        """Closes the window as a person does; the exit code, and what was logged."""
        self.key("ctrl+q")
        wait_for("the program to end", lambda: self.process.poll() is not None, patience)
        return self.process.returncode, self.log.read_text(errors="replace")

    def kill(self):
        os.killpg(self.process.pid, signal.SIGKILL)
        self.process.wait()
