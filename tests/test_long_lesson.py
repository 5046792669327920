"""Does a lesson of hundreds of lines stay small?"""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from tutor.shipped import shipped_problems

LAMP = shipped_problems() / "first-steps" / "lamp-arm.toml"
MOST = 100 * 1024
"""Kilobytes, as the system counts what a process held at most."""


@pytest.mark.slow
@pytest.mark.skipif(sys.platform != "linux", reason="other systems count memory in other units")
def test_three_hundred_lines_take_less_than_a_hundred_megabytes(tmp_path: Path) -> None:
    wrong = [f"M A: B_x - {371 + number} = 0" for number in range(300)]
    typed = "\n".join(["show until reactions", *wrong, "M A: B_x = 360", "where", "leave"])
    process = subprocess.Popen(
        [sys.executable, "-m", "tutor", "--plain", "--keep", str(tmp_path / "keep"), str(LAMP)],
        stdin=subprocess.PIPE,
        stdout=(tmp_path / "said").open("w"),
        text=True,
    )
    assert process.stdin is not None
    process.stdin.write(typed + "\n")
    process.stdin.close()
    _, status, used = os.wait4(process.pid, 0)
    said = (tmp_path / "said").read_text("utf-8")
    assert status == 0
    assert said.count("Wrong: ") + said.count("Not decided: ") >= len(wrong)
    assert "\nRight: " in said
    assert used.ru_maxrss < MOST
