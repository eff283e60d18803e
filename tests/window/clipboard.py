#!/usr/bin/env python3
"""clipboard.py FILE...: a file manager that has just copied these files.

Offers them on the clipboard as text/uri-list until it is ended; says "ready" first.
"""
import pathlib
import sys

import gi

gi.require_version("Gdk", "4.0")
gi.require_version("Gtk", "4.0")
from gi.repository import Gdk, GLib, Gtk  # noqa: E402

Gtk.init()
uris = "".join(pathlib.Path(name).as_uri() + "\r\n" for name in sys.argv[1:])
provider = Gdk.ContentProvider.new_for_bytes("text/uri-list",
                                             GLib.Bytes.new(uris.encode()))
Gdk.Display.get_default().get_clipboard().set_content(provider)
print("ready", flush=True)
GLib.MainLoop().run()
