"""drive.py: the real window, driven the way a person drives it.

Starts the program on a private X server with a window manager, a private session bus
and the accessibility bus; finds widgets by role and name through AT-SPI; points, types
and drags with real X events (xdotool). AT-SPI extents are relative to the window, so
the window's own place is added.

    with Desk() as desk:
        app = desk.start("--archive", folder)
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
import tempfile
import time

PATIENCE_S = 20.0  # of a wait for the window; the sanitizers slow everything down


class NotThere(AssertionError):
    """A widget or state that was waited for did not come."""


def wait_for(what, probe, patience=PATIENCE_S):
    """The first true answer of @probe; NotThere, naming @what, if it never comes."""
    end = time.monotonic() + patience
    last = None
    while time.monotonic() < end:
        try:
            answer = probe()
            if answer:
                return answer
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
        import gi
        gi.require_version("Atspi", "2.0")
        from gi.repository import Atspi
        self.atspi = Atspi
        Atspi.set_timeout(2000, 4000)
        self.root = wait_for("the program on the accessibility bus", self._find_root)

    def _find_root(self):
        if self.process.poll() is not None:
            raise NotThere(f"the program ended with {self.process.returncode}: "
                           + self.log.read_text(errors="replace")[-2000:])
        desktop = self.atspi.get_desktop(0)
        for i in range(desktop.get_child_count()):
            child = desktop.get_child_at_index(i)
            if child is not None and child.get_process_id() == self.process.pid:
                return child
        return None

    # ---- finding -----------------------------------------------------------

    def walk(self, node=None, depth=0):
        """Every showing widget under @node."""
        node = node or self.root
        try:
            count = node.get_child_count()
        except Exception:
            return
        for i in range(count):
            child = node.get_child_at_index(i)
            if child is None:
                continue
            if depth > 0 and not self.is_showing(child):
                continue
            yield child
            yield from self.walk(child, depth + 1)

    def is_showing(self, node):
        states = node.get_state_set()
        return states.contains(self.atspi.StateType.SHOWING)

    def find_all(self, name=None, role=None, within=None):
        found = []
        for node in self.walk(within):
            if role is not None and node.get_role_name() != role:
                continue
            label = node.get_name() or ""
            if name is not None and label != name and not (
                    name.endswith("…*") and label.startswith(name[:-2])):
                continue
            found.append(node)
        return found

    def find(self, name=None, role=None, within=None, patience=PATIENCE_S):
        return wait_for(f"{role or 'widget'} «{name}»",
                        lambda: (self.find_all(name, role, within) or [None])[0], patience)

    def has(self, name=None, role=None):
        return bool(self.find_all(name, role))

    def window_place(self):
        """Top left corner and size of the program's front window on the screen."""
        out = subprocess.run(
            ["xdotool", "search", "--onlyvisible", "--pid", str(self.process.pid)],
            capture_output=True, text=True).stdout.split()
        best = None
        for window in out:
            geometry = dict(
                line.split("=") for line in subprocess.run(
                    ["xdotool", "getwindowgeometry", "--shell", window],
                    capture_output=True, text=True).stdout.split() if "=" in line)
            if not geometry:
                continue
            place = (int(geometry["X"]), int(geometry["Y"]), int(geometry["WIDTH"]),
                     int(geometry["HEIGHT"]), window)
            if best is None or place[2] * place[3] > best[2] * best[3]:
                best = place
        if best is None:
            raise NotThere("no window on the screen")
        return best

    def place_of(self, node):
        """x, y, width, height of @node on the screen."""
        extents = node.get_extents(self.atspi.CoordType.WINDOW)
        x, y, *_ = self.window_place()
        return x + extents.x, y + extents.y, extents.width, extents.height

    # ---- doing -------------------------------------------------------------

    @staticmethod
    def xdo(*words):
        subprocess.run(["xdotool", *map(str, words)], check=True)
        time.sleep(0.05)

    def click_at(self, x, y, button=1, repeat=1):
        self.xdo("mousemove", "--sync", int(x), int(y))
        self.xdo("click", "--repeat", repeat, "--delay", 60, button)

    def click(self, node):
        x, y, width, height = self.place_of(node)
        self.click_at(x + width / 2, y + height / 2)

    def press(self, name, role=None):
        """Clicks the widget of that name with the pointer."""
        self.click(self.find(name, role))

    def drag(self, start, end, steps=12):
        self.xdo("mousemove", "--sync", int(start[0]), int(start[1]))
        self.xdo("mousedown", 1)
        for step in range(1, steps + 1):
            share = step / steps
            self.xdo("mousemove", "--sync",
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

    def tree(self):
        """The widgets in view, for a failure's message."""
        lines = []

        def visit(node, depth):
            for i in range(node.get_child_count()):
                child = node.get_child_at_index(i)
                if child is None or (depth > 0 and not self.is_showing(child)):
                    continue
                lines.append(f"{'  ' * depth}{child.get_role_name()} «{child.get_name()}»")
                visit(child, depth + 1)

        visit(self.root, 0)
        return "\n".join(lines)
