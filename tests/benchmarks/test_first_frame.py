"""How long until something is on the screen, against an empty Textual app?

Run with: python -m pytest tests/benchmarks -m benchmark --benchmark-enable -s

Each is a program of its own on a terminal of its own, timed from before it is started to the moment
when Textual says that its first frame is out.
"""

from __future__ import annotations

import os
import statistics
import struct
import subprocess
import sys
import threading
import time
from pathlib import Path
from typing import Any

import pytest
from pairs import Pair

pytestmark = [
    pytest.mark.benchmark,
    pytest.mark.skipif(os.name == "nt", reason="the system has no pseudo-terminals"),
]
ROUNDS = 15
TUTOR_TO_EMPTY = 1.25
STAMP = """
import sys, time

def on_ready(app):
    with open(sys.argv[1], "w") as file:
        file.write(str(time.monotonic()))
    app.exit()
"""
EMPTY = f"""{STAMP}
from textual.app import App

class Empty(App):
    pass

Empty.on_ready = on_ready
Empty().run()
"""
TUTOR = f"""{STAMP}
from tutor.cli import main
import tutor.screens.app as screens

screens.TutorApp.on_ready = on_ready
main(["--keep", sys.argv[2]])
"""


def first_frame(program: str, place: Path) -> float:
    """Seconds from the start of a program to its first frame."""
    import fcntl
    import pty
    import termios

    stamp = place / "stamp"
    stamp.unlink(missing_ok=True)
    ours, theirs = pty.openpty()
    fcntl.ioctl(theirs, termios.TIOCSWINSZ, struct.pack("HHHH", 24, 80, 0, 0))
    listener = threading.Thread(target=drain, args=(ours,), daemon=True)
    listener.start()
    start = time.monotonic()
    subprocess.run(
        [sys.executable, "-c", program, str(stamp), str(place / "kept")],
        stdin=theirs,
        stdout=theirs,
        stderr=theirs,
        env={**os.environ, "TERM": "xterm-256color", "COLORTERM": "truecolor"},
        timeout=60,
        check=True,
    )
    os.close(theirs)
    listener.join(5)
    os.close(ours)
    return float(stamp.read_text()) - start


def drain(descriptor: int) -> None:
    """Read what a program writes to its terminal, so that it never waits for us."""
    try:
        while os.read(descriptor, 65536):
            pass
    except OSError:
        return


def test_the_first_frame_comes_nearly_as_soon_as_that_of_an_empty_app(
    benchmark: Any, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("PYTHONPATH", str(Path(__file__).parents[2]))
    times: dict[str, list[float]] = {TUTOR: [], EMPTY: []}
    for n in range(ROUNDS + 1):
        for program, spent in times.items():
            seconds = first_frame(program, tmp_path)
            if n:  # the first round only warms the disk
                spent.append(seconds)
    pair = Pair(statistics.median(times[TUTOR]), statistics.median(times[EMPTY]))
    benchmark.pedantic(lambda: first_frame(TUTOR, tmp_path), rounds=3)
    assert pair.told(benchmark) <= TUTOR_TO_EMPTY
