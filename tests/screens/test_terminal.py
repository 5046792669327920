"""Does the program behave in a real terminal: start light, leave it sane, without colour if asked?"""

from __future__ import annotations

import contextlib
import errno
import fcntl
import os
import pty
import re
import select
import signal
import struct
import subprocess
import sys
import termios
import time
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
LEFT_ALTERNATE = b"\x1b[?1049l"
MOUSE = b"\x1b[?1000h"
SHOWN_CURSOR = b"\x1b[?25h"
COLOUR = re.compile(rb"\x1b\[(?:[\d;]*;)?(?:3[0-8]|4[0-8]|9[0-7]|10[0-7])(?:;[\d;]*)?m")
PATIENCE = 60.0
START = """
import sys
from pathlib import Path
from tutor.screens.run import run
sys.exit(run([Path(p) for p in sys.argv[2:]], keep=Path(sys.argv[1])))
"""


class Terminal:
    """The program in a terminal of its own; messages of faults go into the file `faults`."""

    def __init__(
        self,
        keep: Path,
        *paths: Path,
        mouse: bool = True,
        settings: str = '{"glyphs": "braille"}',
        **environment: str,
    ) -> None:
        self.controller, terminal = pty.openpty()
        fcntl.ioctl(terminal, termios.TIOCSWINSZ, struct.pack("HHHH", 24, 80, 0, 0))
        self.before = termios.tcgetattr(terminal)
        self.terminal = terminal
        keep.mkdir(exist_ok=True)
        (keep / "settings.json").write_text(settings, encoding="utf-8")
        script = START if mouse else START.replace("keep=", "mouse=False, keep=")
        base = {k: v for k, v in os.environ.items() if k not in ("NO_COLOR", "LC_ALL", "COLORTERM")}
        self.faults = keep / "faults"
        with self.faults.open("wb") as faults:
            self.process = subprocess.Popen(
                [sys.executable, "-c", script, str(keep), *map(str, paths)],
                stdin=terminal,
                stdout=terminal,
                stderr=faults,
                cwd=ROOT,
                env={**base, "TERM": "xterm-256color", "LANG": "C.UTF-8", **environment},
                start_new_session=True,
            )
        self.output = b""

    def read_until(self, words: bytes) -> None:
        """Read what it writes until these words are there. AssertionError if they never come."""
        end = time.monotonic() + PATIENCE
        while words not in self.output:
            assert time.monotonic() < end, self.output[-2000:]
            self.read(0.2)

    def read(self, wait: float) -> bool:
        """Read what is there; whether there was anything."""
        ready, _, _ = select.select([self.controller], [], [], wait)
        if not ready:
            return False
        try:
            self.output += os.read(self.controller, 1 << 16)
        except OSError as error:
            if error.errno != errno.EIO:
                raise
            return False
        return True

    def ended(self) -> int:
        """The exit status, once it has ended."""
        end = time.monotonic() + PATIENCE
        while self.process.poll() is None:
            assert time.monotonic() < end, "it does not end"
            self.read(0.05)
        while self.read(0.1):
            pass
        return self.process.returncode

    def close(self) -> None:
        if self.process.poll() is None:
            self.process.kill()
            self.process.wait()
        for descriptor in (self.controller, self.terminal):
            with contextlib.suppress(OSError):
                os.close(descriptor)


LAMP = ROOT / "problems" / "first-steps" / "lamp-arm.toml"


class TestASignal:
    @pytest.mark.parametrize(
        "name",
        ["SIGHUP", *(pytest.param(n, marks=pytest.mark.slow) for n in ("SIGTERM", "SIGINT"))],
    )
    def test_leaves_the_terminal_as_it_was(self, tmp_path: Path, name: str) -> None:
        """What was written until then has its colours and asks for the mouse; no fault went elsewhere."""
        number = getattr(signal, name)
        terminal = Terminal(tmp_path, LAMP)
        try:
            terminal.read_until(b"triangles")
            assert terminal.faults.read_bytes() == b""
            assert COLOUR.search(terminal.output)
            assert MOUSE in terminal.output
            assert termios.tcgetattr(terminal.terminal) != terminal.before
            terminal.process.send_signal(number)
            assert terminal.ended() == 128 + number
            assert termios.tcgetattr(terminal.terminal) == terminal.before
            assert LEFT_ALTERNATE in terminal.output
            assert (
                SHOWN_CURSOR
                in terminal.output.rpartition(LEFT_ALTERNATE)[2]
                + (terminal.output.rpartition(LEFT_ALTERNATE)[0][-200:])
            )
            assert terminal.faults.read_bytes() == b""
        finally:
            terminal.close()

    def test_in_the_midst_of_a_walk_loses_nothing(self, tmp_path: Path) -> None:
        terminal = Terminal(tmp_path, LAMP)
        try:
            terminal.read_until(b"triangles")
            os.write(terminal.controller, b"2\r")
            terminal.read_until(b"wrong")
            terminal.process.send_signal(signal.SIGTERM)
            assert terminal.ended() == 128 + signal.SIGTERM
            (journal,) = tmp_path.glob("*.jsonl")
            assert '"chosen"' in journal.read_text(encoding="utf-8")
            assert b"Everything you did is kept" in terminal.output
        finally:
            terminal.close()


class TestNoColour:
    def test_lets_not_one_colour_through(self, tmp_path: Path) -> None:
        terminal = Terminal(tmp_path, LAMP, NO_COLOR="1")
        try:
            terminal.read_until(b"triangles")
            os.write(terminal.controller, b"2\r")
            terminal.read_until(b"wrong")
            terminal.process.send_signal(signal.SIGTERM)
            terminal.ended()
            assert not COLOUR.search(terminal.output)
        finally:
            terminal.close()


class TestWithoutTheMouse:
    def test_it_is_left_to_the_terminal(self, tmp_path: Path) -> None:
        terminal = Terminal(tmp_path, LAMP, mouse=False)
        try:
            terminal.read_until(b"triangles")
            assert MOUSE not in terminal.output
        finally:
            terminal.close()


class TestANarrowLocale:
    def test_gets_ascii_alone(self, tmp_path: Path) -> None:
        terminal = Terminal(tmp_path, LAMP, LC_ALL="C")
        try:
            terminal.read_until(b"triangles")
            assert terminal.output.isascii()
        finally:
            terminal.close()


FIRST_FRAME = """
import asyncio, sys
from pathlib import Path
from tutor.records import Keep, Settings
from tutor.screens.app import TutorApp

found = []

def read_problems(app):
    found.append({"sympy", "numpy", "lark", "tutor.lesson", "tutor.judge"} & set(sys.modules))
    app.exit(0)

async def main():
    TutorApp.read_problems = read_problems
    app = TutorApp([Path(sys.argv[1])], keep=Keep(Path(sys.argv[2])), settings=Settings())
    async with app.run_test() as pilot:
        while not found:
            await pilot.pause()
    print("first frame:", *map(sorted, found))

asyncio.run(main())
"""


class TestTheStart:
    def test_loads_nothing_heavy_before_the_first_frame(self, tmp_path: Path) -> None:
        script = tmp_path / "first_frame.py"
        script.write_text(FIRST_FRAME, encoding="utf-8")
        done = subprocess.run(
            [sys.executable, str(script), str(LAMP), str(tmp_path)],
            capture_output=True,
            text=True,
            env={**os.environ, "PYTHONPATH": str(ROOT)},
            timeout=PATIENCE,
            check=True,
        )
        assert done.stdout.strip() == "first frame: []"
