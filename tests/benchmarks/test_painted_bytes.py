"""How much has to go through a slow link for one key press, at 80 by 24?

Run with: python -m pytest tests/benchmarks/test_painted_bytes.py -m benchmark --benchmark-enable -s

The program runs on a terminal of its own; counted is what it writes from a key until it is quiet. A
cursor that blinks meanwhile is counted too.
"""

from __future__ import annotations

import os
import sys
import time
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parents[1] / "screens"))

from resuming import FREE_BODY, REACTIONS, kept
from test_terminal import LAMP, ROOT, Terminal

pytestmark = [
    pytest.mark.benchmark,
    pytest.mark.skipif(os.name == "nt", reason="the system has no pseudo-terminals"),
]
LETTER, TAB, DOWN, VERDICT, NEXT = 400, 1_500, 2_500, 6_000, 12_000
OPENING = 10_000
FIRST_START = 15_000
QUIET, SETTLED = 1.0, 4.0


def painted(terminal: Terminal, keys: bytes, seconds: float = QUIET) -> int:
    """How many bytes come within so many seconds after these keys."""
    before = len(terminal.output)
    os.write(terminal.controller, keys)
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        terminal.read(0.05)
    return len(terminal.output) - before


def told(rows: list[tuple[str, int, int]]) -> None:
    """Print what was counted beside what is allowed, and hold it to that."""
    for name, count, most in rows:
        print(f"{name:<36}{count:>8} of {most}")
    assert all(count <= most for _, count, most in rows)


def test_the_list(tmp_path: Path) -> None:
    terminal = Terminal(tmp_path, ROOT / "problems")
    try:
        terminal.read_until(b"Bell")
        painted(terminal, b"", SETTLED)
        down = [painted(terminal, b"\x1b[B") for _ in range(4)]
        told([("down in the list", max(down), DOWN)])
    finally:
        terminal.close()


def test_the_first_start(tmp_path: Path) -> None:
    terminal = Terminal(tmp_path, ROOT / "problems", settings="{}")
    try:
        terminal.read_until(b"looks right")
        painted(terminal, b"", SETTLED)
        told([("from the first start to its question", len(terminal.output), FIRST_START)])
    finally:
        terminal.close()


def test_a_file_opened_at_once(tmp_path: Path) -> None:
    terminal = Terminal(tmp_path, LAMP)
    try:
        terminal.read_until(b"type watch")
        painted(terminal, b"", SETTLED)
        told([("from the start to the first question", len(terminal.output), OPENING)])
    finally:
        terminal.close()


def test_the_counts(tmp_path: Path) -> None:
    kept(tmp_path, FREE_BODY[:1])
    terminal = Terminal(tmp_path, LAMP)
    try:
        terminal.read_until(b"afresh")
        os.write(terminal.controller, b"1")
        terminal.read_until(b"you left")
        painted(terminal, b"", SETTLED)
        tab = [painted(terminal, b"\t") for _ in range(3)]
        told([("tab to the next field", max(tab), TAB)])
    finally:
        terminal.close()


def test_the_line(tmp_path: Path) -> None:
    kept(tmp_path, REACTIONS)
    terminal = Terminal(tmp_path, LAMP)
    try:
        terminal.read_until(b"afresh")
        os.write(terminal.controller, b"1")
        terminal.read_until(b"you left")
        painted(terminal, b"", SETTLED)
        letter = [painted(terminal, b"A", 0.4) for _ in range(5)]
        rows = [("a letter in the line", max(letter), LETTER)]
        wrong = painted(terminal, b"\x15Fx: A_x = 3\r", 3.0)
        rows.append(("a wrong line", wrong, VERDICT))
        for line in ("M A: B_x = 360", "B_x = 360", "Fx: A_x = B_x", "A_x = 360"):
            right = painted(terminal, b"\x15" + line.encode() + b"\r", 3.0)
            rows.append((f"a right line, {line}", right, VERDICT))
        painted(terminal, b"Fy: A_y = 150\r", 3.0)
        rows.append(("the next question", painted(terminal, b"A_y = 150\r", 3.0), NEXT))
        told(rows)
    finally:
        terminal.close()
