"""Starts a program and prints how many milliseconds pass until its window is painted, and what memory it then holds.

Arguments: the program and its own. Output: milliseconds, resident kilobytes. Needs python3-xlib and a display.
"""
import subprocess
import sys
import time

from Xlib import X, display, error

SETTLE = 2.0  # seconds until memory is read
PATIENCE = 20.0


def named(window):
    try:
        if window.get_wm_name() == "Walkline" and window.get_attributes().map_state == X.IsViewable:
            return window
        for child in window.query_tree().children:
            found = named(child)
            if found:
                return found
    except error.XError:
        return None  # gone while it was looked at
    return None


def painted(window):
    try:
        size = window.get_geometry()
        strip = window.get_image(0, size.height // 2, size.width, 1, X.ZPixmap, 0xFFFFFFFF)
        return any(b not in (0, 255) for b in strip.data)  # an unpainted window is black or white
    except error.XError:
        return False


def resident(pid):
    with open(f"/proc/{pid}/status") as status:
        return next(int(line.split()[1]) for line in status if line.startswith("VmRSS"))


def main():
    screen = display.Display()
    began = time.monotonic()
    running = subprocess.Popen(sys.argv[1:])
    try:
        window = None
        while not (window and painted(window)):
            if running.poll() is not None or time.monotonic() - began > PATIENCE:
                sys.exit("no window was painted")
            window = window or named(screen.screen().root)
            time.sleep(0.002)
        took = (time.monotonic() - began) * 1000
        time.sleep(SETTLE)
        print(f"{took:.0f} {resident(running.pid)}")
    finally:
        running.terminate()
        running.wait()


main()
