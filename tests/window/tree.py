"""tree.py: the program's widgets as a screen reader sees them, read in one go.

Speaks AT-SPI over D-Bus itself: every question of one level of the tree is asked before
the first answer is waited for, so that a tree of some hundred widgets is read in a
fraction of a second on a busy machine, and nothing is answered from a cache.

GTK 4.8 says "visible" of everything and "showing" of windows only, so whether a widget
can be seen is found out by asking its window what lies at the widget's middle.
"""
import os

import gi

gi.require_version("Gio", "2.0")
from gi.repository import Gio, GLib  # noqa: E402

ACCESSIBLE = "org.a11y.atspi.Accessible"
COMPONENT = "org.a11y.atspi.Component"
NOBODY = "/org/a11y/atspi/null"
WINDOW_COORDS = 1  # ATSPI_COORD_TYPE_WINDOW
CALL_MS = 15000

# Bits of the state set (AtspiStateType), those that are asked for.
STATES = {0: "invalid", 1: "active", 4: "checked", 7: "editable", 8: "enabled",
          11: "focusable", 12: "focused", 20: "pressed", 23: "selected",
          24: "sensitive", 25: "showing", 30: "visible"}


class Gone(Exception):
    """The program answers no more."""


class Node:
    """One widget, as it was when the tree was read."""

    def __init__(self, path, parent):
        self.path, self.parent = path, parent
        self.role = self.name = self.description = ""
        self.states = frozenset()
        self.box = None  # x, y, width, height in its window, or None
        self.children = []

    def __repr__(self):
        return f"{self.role} «{self.name}»"

    def walk(self):
        """The widgets under this one, in the order of reading."""
        for child in self.children:
            yield child
            yield from child.walk()

    def ancestors(self):
        node = self.parent
        while node is not None:
            yield node
            node = node.parent

    @property
    def window(self):
        """The window it lies in."""
        chain = [self, *self.ancestors()]
        return chain[-2] if len(chain) > 1 else self

    @property
    def popover(self):
        """The outermost popover it lies in, or None."""
        around = [n for n in [self, *self.ancestors()] if n.name.startswith("GtkPopover")
                  and n.name != "GtkPopoverContent"]
        return around[-1] if around else None

    def take(self, name, description, words):
        self.name, self.description = name, description
        bits = sum(word << (32 * i) for i, word in enumerate(words))
        self.states = frozenset(word for bit, word in STATES.items() if bits >> bit & 1)

    @property
    def middle(self):
        x, y, width, height = self.box
        return x + width // 2, y + height // 2

    def is_inside(self):
        """Whether its middle lies within its window: not scrolled away or empty."""
        around = (self.popover or self.window).box
        if self.box is None or around is None or min(self.box[2:]) <= 0:
            return False
        x, y = self.middle
        return (0 <= x - around[0] < around[2]) and (0 <= y - around[1] < around[3])

    @property
    def has_name(self):
        """Whether it says what it is: GTK names the rest after their class."""
        return bool(self.name) and not self.name.startswith(("Gtk", "Adw", "Wm"))

    def words(self):
        """Every text of it and under it."""
        return [n.name for n in [self, *self.walk()] if n.has_name]

    def listing(self):
        lines = []

        def add(node, depth):
            lines.append("  " * depth + repr(node))
            for child in node.children:
                add(child, depth + 1)

        add(self, 0)
        return "\n".join(lines)


class Bus:
    """The accessibility bus, and on it the program of one process."""

    def __init__(self, pid):
        session = self._connect(os.environ["DBUS_SESSION_BUS_ADDRESS"])
        address = session.call_sync(
            "org.a11y.Bus", "/org/a11y/bus", "org.a11y.Bus", "GetAddress", None, None,
            Gio.DBusCallFlags.NONE, CALL_MS, None).unpack()[0]
        self.connection = self._connect(address)
        self.pid = pid
        self.owner = None
        self.roles = {}  # of a path, which never changes

    @staticmethod
    def _connect(address):
        connection = Gio.DBusConnection.new_for_address_sync(
            address, Gio.DBusConnectionFlags.AUTHENTICATION_CLIENT
            | Gio.DBusConnectionFlags.MESSAGE_BUS_CONNECTION, None, None)
        connection.set_exit_on_close(False)
        return connection

    def _call(self, owner, path, interface, method, parameters=None):
        return self.connection.call_sync(
            owner, path, interface, method, parameters, None, Gio.DBusCallFlags.NONE,
            CALL_MS, None).unpack()

    def find_program(self):
        """Whether the program has come to the bus."""
        children, = self._call("org.a11y.atspi.Registry",
                               "/org/a11y/atspi/accessible/root", ACCESSIBLE, "GetChildren")
        for owner, path in children:
            pid, = self._call("org.freedesktop.DBus", "/org/freedesktop/DBus",
                              "org.freedesktop.DBus", "GetConnectionUnixProcessID",
                              GLib.Variant("(s)", (owner,)))
            if pid == self.pid:
                self.owner, self.root_path = owner, path
                return True
        return False

    def ask(self, questions):
        """Answers, or None, to a list of (path, interface, method, parameters)."""
        answers = [None] * len(questions)
        waiting = len(questions)
        loop = GLib.MainLoop()

        def on_answer(connection, result, at):
            nonlocal waiting
            try:
                answers[at] = connection.call_finish(result).unpack()
            except GLib.Error:
                pass  # it has gone, or has no such interface
            waiting -= 1
            if waiting == 0:
                loop.quit()

        for at, (path, interface, method, parameters) in enumerate(questions):
            self.connection.call(self.owner, path, interface, method, parameters, None,
                                 Gio.DBusCallFlags.NONE, CALL_MS, None, on_answer, at)
        if questions:
            loop.run()
        return answers

    def read(self):
        """The whole tree: a node for the program, its windows below.

        Names and states come in one answer, GTK's list of what it has told of so far;
        who is whose child is asked anew, because that list also has what is hidden now.
        """
        told = {}
        for item in self._call(self.owner, "/org/a11y/atspi/cache", "org.a11y.atspi.Cache",
                               "GetItems")[0]:
            told[item[0][1]] = item
        root = Node(self.root_path, None)
        level, seen, nodes = [root], {root.path}, []
        while level:
            nodes += level
            families = self.ask([(n.path, ACCESSIBLE, "GetChildren", None) for n in level])
            below = []
            for node, family in zip(level, families):
                for _owner, path in (family or ([],))[0]:
                    if path == NOBODY or path in seen:
                        continue
                    seen.add(path)
                    child = Node(path, node)
                    node.children.append(child)
                    below.append(child)
            level = below
        self._describe(nodes, told)
        return root

    def _describe(self, nodes, told):
        new = [n for n in nodes if n.path not in self.roles]
        for node, answer in zip(new, self.ask([(n.path, ACCESSIBLE, "GetRoleName", None)
                                               for n in new])):
            if answer:
                self.roles[node.path] = answer[0]
        untold = [n for n in nodes if n.path not in told]
        properties = GLib.Variant("(s)", (ACCESSIBLE,))
        about = self.ask([(n.path, "org.freedesktop.DBus.Properties", "GetAll", properties)
                          for n in untold])
        states = self.ask([(n.path, ACCESSIBLE, "GetState", None) for n in untold])
        for node, properties, state in zip(untold, about, states):
            node.take(properties[0].get("Name", "") if properties else "",
                      properties[0].get("Description", "") if properties else "",
                      state[0] if state else [])
        for node in nodes:
            node.role = self.roles.get(node.path, "")
            if node.path in told:
                item = told[node.path]
                node.take(item[6], item[8], item[9])

    def measure(self, nodes):
        """Asks for the boxes of @nodes, their windows and their popovers."""
        wanted = {id(n): n for node in nodes for n in (node, node.window, node.popover)
                  if n is not None}
        coords = GLib.Variant("(u)", (WINDOW_COORDS,))
        answers = self.ask([(n.path, COMPONENT, "GetExtents", coords)
                            for n in wanted.values()])
        for node, answer in zip(wanted.values(), answers):
            node.box = tuple(answer[0]) if answer else None

    def see(self, root, nodes):
        """Those of @nodes that can be seen: not hidden, scrolled away or covered.

        Where a widget without a place in the tree is on top (the text inside an entry,
        the picture of a button) the node is taken to be seen.
        """
        self.measure(nodes)
        by_path = {n.path: n for n in root.walk()}
        inside = [n for n in nodes if n.is_inside()]
        # A popover is a surface of its own, which its window does not know the inside of.
        asked = [n for n in inside if n.popover is None]
        answers = self.ask([
            (n.window.path, COMPONENT, "GetAccessibleAtPoint",
             GLib.Variant("(iiu)", (*n.middle, WINDOW_COORDS))) for n in asked])
        seen = {id(n) for n, a in zip(asked, answers)
                if a and (a[0][1] == NOBODY
                          or self._is_same_place(n, by_path.get(a[0][1])))}
        return [n for n in inside if n.popover is not None or id(n) in seen]

    @staticmethod
    def _is_same_place(node, top):
        return top is not None and (
            top is node or node in top.ancestors() or top in node.ancestors())

    def text_of(self, node):
        """What stands in an entry or a text."""
        # GTK 4.8 answers nothing to an end of -1.
        answer, = self.ask([(node.path, "org.a11y.atspi.Text", "GetText",
                             GLib.Variant("(ii)", (0, 100000)))])
        return answer[0] if answer else None
