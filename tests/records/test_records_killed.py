"""Is every confirmed event still there after the program was killed?"""

from __future__ import annotations

import itertools
import os
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from tutor.records import Journal
from tutor.records.kept_lines import WHOLE_EVERY, KeptLines

APPENDING = """
import sys
from pathlib import Path
from tutor.records import Keep

journal = Keep(Path(sys.argv[1])).start("lamp-arm", "Lamp arm")
print(journal.path, flush=True)
number = 0
while True:
    assert journal.append({"number": number, "long": "x" * (37 * number % 5000)})
    print(number, flush=True)
    number += 1
"""


@pytest.mark.skipif(os.name == "nt", reason="the system has no SIGKILL")
@pytest.mark.parametrize("after", [0, 1, 3, 10, 40])
def test_every_event_confirmed_before_a_kill_is_in_the_journal(tmp_path, after):
    program = subprocess.Popen(
        [sys.executable, "-c", APPENDING, str(tmp_path)], stdout=subprocess.PIPE, text=True
    )
    assert program.stdout is not None
    with program.stdout as said:
        path = Path(said.readline().strip())
        confirmed = [int(line) for line in itertools.islice(said, after)]
        program.send_signal(signal.SIGKILL)
        confirmed += [int(line) for line in said if line.endswith("\n")]
    program.wait()
    assert len(confirmed) >= after
    with Journal.resume(path) as journal:
        numbers = [event["number"] for event in journal.events]
        assert numbers[: len(confirmed)] == confirmed
        assert numbers == list(range(len(numbers)))
        assert len(numbers) <= len(confirmed) + 1
        assert journal.append({"number": len(numbers)})


WRITING = """
import sys
from pathlib import Path
from tutor.records.kept_lines import KeptLines

kept = KeptLines(Path(sys.argv[1]), "truss", sys.argv[2])
lines, number = [], 0
while True:
    lines = lines[: number % 7] + [f"P{number} {number} {'9' * (41 * number % 600)}"]
    assert not kept.write(lines)
    print(number, flush=True)
    number += 1
"""


def lines_after(number: int) -> tuple[str, ...]:
    """The lines that stand once so many were written and confirmed."""
    lines: list[str] = []
    for n in range(number + 1):
        lines = [*lines[: n % 7], f"P{n} {n} {'9' * (41 * n % 600)}".strip()]
    return tuple(lines)


@pytest.mark.skipif(os.name == "nt", reason="the system has no SIGKILL")
@pytest.mark.parametrize(
    ("what", "after"), [("drawing", 1), ("homework", 5), ("homework", WHOLE_EVERY + 3)]
)
def test_a_drawing_and_a_homework_are_there_as_last_confirmed_after_a_kill(
    tmp_path: Path, what: str, after: int
) -> None:
    program = subprocess.Popen(
        [sys.executable, "-c", WRITING, str(tmp_path), what], stdout=subprocess.PIPE, text=True
    )
    assert program.stdout is not None
    with program.stdout as said:
        confirmed = [int(line) for line in itertools.islice(said, after)]
        program.send_signal(signal.SIGKILL)
        confirmed += [int(line) for line in said if line.endswith("\n")]
    program.wait()
    last = confirmed[-1]
    kept = KeptLines(tmp_path, "truss", what)
    assert kept.read() in (lines_after(last), lines_after(last + 1))
    told = " ".join(kept.news())
    assert not told or "put aside" in told or "kept aside" in told, told
    assert kept.write(["A 0 0"]) == ""
    kept.close()
    assert KeptLines(tmp_path, "truss", what).read() == ("A 0 0",)
