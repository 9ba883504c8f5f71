"""Drops a file on the window called Walkline, as a file manager does (the XDND protocol, version 5).

Argument: the file's path. Needs python3-xlib and a display.
"""
import pathlib
import sys
import time

from Xlib import X, Xatom, display, error
from Xlib.protocol import event

VERSION = 5
PATIENCE = 10.0


class Drop:
    def __init__(self, path):
        self.display = display.Display()
        self.uri = pathlib.Path(path).resolve().as_uri().encode() + b"\r\n"
        root = self.display.screen().root
        self.source = root.create_window(0, 0, 1, 1, 0, self.display.screen().root_depth)
        self.target = self.named(root)
        if self.target is None:
            sys.exit("there is no window called Walkline")

    def atom(self, name):
        return self.display.intern_atom(name)

    def named(self, window):
        try:
            if window.get_wm_name() == "Walkline":
                return window
            for child in window.query_tree().children:
                found = self.named(child)
                if found:
                    return found
        except error.XError:
            return None
        return None

    def tell(self, kind, *words):
        data = (32, ([self.source.id] + list(words) + [0] * 4)[:5])
        self.target.send_event(event.ClientMessage(window=self.target, client_type=self.atom(kind), data=data))
        self.display.flush()

    def hand_over(self, request):
        """Answers the window that asks for what is dropped."""
        request.requestor.change_property(request.property, request.target, 8, self.uri)
        request.requestor.send_event(event.SelectionNotify(time=request.time, requestor=request.requestor,
            selection=request.selection, target=request.target, property=request.property))
        self.display.flush()

    def wait(self, kind):
        """Serves requests until the window has sent a message of a kind."""
        until = time.monotonic() + PATIENCE
        while time.monotonic() < until:
            if not self.display.pending_events():
                time.sleep(0.01)
                continue
            e = self.display.next_event()
            if e.type == X.SelectionRequest:
                self.hand_over(e)
            if e.type == X.ClientMessage and e.client_type == self.atom(kind):
                return
        sys.exit("the window never sent " + kind)

    def run(self):
        at = self.target.get_geometry()
        place = self.display.screen().root.translate_coords(self.target, at.width // 2, at.height // 2)
        self.source.set_selection_owner(self.atom("XdndSelection"), X.CurrentTime)
        self.source.change_property(self.atom("XdndTypeList"), Xatom.ATOM, 32, [self.atom("text/uri-list")])
        self.tell("XdndEnter", VERSION << 24, self.atom("text/uri-list"))
        self.tell("XdndPosition", 0, (abs(place.x) << 16) | abs(place.y), X.CurrentTime, self.atom("XdndActionCopy"))
        self.wait("XdndStatus")
        self.tell("XdndDrop", 0, X.CurrentTime)
        self.wait("XdndFinished")


Drop(sys.argv[1]).run()
