#!/usr/bin/env python3
"""start.py: from starting to the first frame, on 100,000 pieces, against an empty window.

Both are started in turn on the same X server; the time runs until the window is mapped
and its first frame drawn (the window's pixels stop being the background). The archive of
100,000 pieces is made by bench-fill and kept in the build folder.
"""
import os
import pathlib
import subprocess
import sys
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent.parent / "window"))
from drive import Desk  # noqa: E402

TIMES = 5


def cpu_of(pid):
    fields = pathlib.Path(f"/proc/{pid}/stat").read_text().rsplit(")", 1)[1].split()
    return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")


def peak_mb(pid):
    for line in pathlib.Path(f"/proc/{pid}/status").read_text().splitlines():
        if line.startswith("VmHWM"):
            return int(line.split()[1]) / 1024
    return 0.0


def start(argv):
    """Wall and CPU seconds to the first frame, and the peak of memory by then."""
    begun = time.monotonic()
    process = subprocess.Popen(argv, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    found = ""
    while not found:
        if process.poll() is not None:
            raise SystemExit(f"{argv[0]} ended with {process.returncode}")
        found = subprocess.run(
            ["xdotool", "search", "--onlyvisible", "--pid", str(process.pid)],
            capture_output=True, text=True).stdout.strip()
    window = found.split()[-1]
    while True:
        picture = subprocess.run(["import", "-window", window, "xwd:-"], capture_output=True)
        colours = subprocess.run(
            ["convert", "xwd:-", "-resize", "64x64!", "-unique-colors", "-format", "%w",
             "info:"], input=picture.stdout, capture_output=True).stdout.decode().strip()
        if colours.isdigit() and int(colours) > 2:
            break
    wall = time.monotonic() - begun
    cpu, memory = cpu_of(process.pid), peak_mb(process.pid)
    process.terminate()
    process.wait()
    return wall, cpu, memory


def main():
    programs = pathlib.Path(os.environ["WM_BENCH_PROGRAMS"])
    archive = programs / "archive-100000"
    if not (archive / "records.sqlite").exists():
        subprocess.run([programs / "bench-fill", archive, "100000"], check=True,
                       stdout=sys.stderr)
    ours = [str(pathlib.Path(os.environ["WM_BUILD_DIR"]) / "src" / "wearmark"),
            "--archive", str(archive)]
    peer = [str(programs / "empty-window")]
    with Desk():
        start(peer), start(ours)  # caches warm for both
        runs = [(start(ours), start(peer)) for _ in range(TIMES)]
    for index, what, unit, scale in ((0, "start to first frame, 100,000 pieces", "ms", 1e3),
                                     (1, "the same in CPU time", "ms", 1e3),
                                     (2, "the same in memory (peak)", "MB", 1)):
        mine = min(run[0][index] for run in runs) * scale
        theirs = min(run[1][index] for run in runs) * scale
        goal = "at most 1.3" if index == 0 else ""
        print(f"{what}\t{mine:.0f} {unit}\t{theirs:.0f} {unit}\t{mine / theirs:.2f}\t{goal}")


main()
