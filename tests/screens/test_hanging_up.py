"""Is the program gone when its terminal is, even in the midst of painting, with nothing lost?"""

from __future__ import annotations

import contextlib
import os
import pty
import random
import select
import sys
import time
from pathlib import Path

import pytest

from tutor.records import Journal, Keep

ROOT = Path(__file__).resolve().parents[2]
LAMP = ROOT / "problems" / "first-steps" / "lamp-arm.toml"
START = """
import sys
from pathlib import Path
from tutor.screens.run import run
sys.exit(run([Path(sys.argv[2])], keep=Path(sys.argv[1])))
"""
KEYS = (b"\x1b[B", b"\x1b[A", b" ", b"?", b"\x1b", b"x", b"2 4 6\r", b"\t", b"f", b"hint\r")
PATIENCE = 60.0


def started(keep: Path) -> tuple[int, int]:
    """The program in a terminal of its own, which is its controlling one: process and terminal."""
    keep.mkdir(exist_ok=True)
    (keep / "settings.json").write_text('{"glyphs": "braille"}', encoding="utf-8")
    process, terminal = pty.fork()
    if process == 0:
        os.chdir(ROOT)
        os.environ.update(TERM="xterm-256color", LANG="C.UTF-8", LINES="24", COLUMNS="80")
        os.execv(sys.executable, [sys.executable, "-c", START, str(keep), str(LAMP)])
    return process, terminal


def read_until(terminal: int, words: bytes) -> None:
    output, end = b"", time.monotonic() + PATIENCE
    while words not in output:
        assert time.monotonic() < end, output[-500:]
        if select.select([terminal], [], [], 0.2)[0]:
            with contextlib.suppress(OSError):
                output += os.read(terminal, 1 << 16)


def ended(process: int) -> tuple[int, float]:
    """The exit status, and after how many seconds. AssertionError where it never ends."""
    began = time.monotonic()
    while time.monotonic() < began + PATIENCE:
        found, status = os.waitpid(process, os.WNOHANG)
        if found:
            return os.waitstatus_to_exitcode(status), time.monotonic() - began
        time.sleep(0.02)
    os.kill(process, 9)
    os.waitpid(process, 0)
    raise AssertionError("the program outlives its terminal")


def hang_up_in_a_burst(keep: Path, seed: int) -> float:
    """Press keys faster than they are read, and take the terminal away; how long it took to end."""
    rng = random.Random(seed)
    process, terminal = started(keep)
    read_until(terminal, b"triangles")
    for _ in range(rng.choice([0, 4, 20, 60])):
        os.write(terminal, rng.choice(KEYS))
    time.sleep(rng.random() * 0.3)
    os.close(terminal)
    status, seconds = ended(process)
    assert status == 129
    for kept in Keep(keep).lessons():
        with Journal.resume(kept.path) as journal:
            assert journal.saved
            assert journal.notices == ()
    return seconds


@pytest.mark.parametrize("seed", range(2))
def test_the_program_goes_with_its_terminal(tmp_path: Path, seed: int) -> None:
    hang_up_in_a_burst(tmp_path, seed)


@pytest.mark.slow
def test_the_program_goes_with_its_terminal_fifty_times_within_two_seconds(tmp_path: Path) -> None:
    took = [hang_up_in_a_burst(tmp_path / str(seed), seed) for seed in range(50)]
    assert max(took) < 2.0
