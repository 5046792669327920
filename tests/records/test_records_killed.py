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
