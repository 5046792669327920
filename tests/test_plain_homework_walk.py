"""Does the walk of a homework's first wrong place go on where it was left?"""

from __future__ import annotations

import io
from pathlib import Path

from transcripts import Typist

from tutor.model import ProblemSet, load_problem
from tutor.plain import run
from tutor.records import Keep
from tutor.shipped import shipped_problems

ARM = load_problem(shipped_problems() / "first-steps" / "lamp-arm.toml")
WRONG = ["A_x = 360 left, A_y = 150, B_x = 360", "AB = 150 C, AC = 360, BC = 390 C"]


def said_to(lines: list[str], keep: Path) -> list[str]:
    sink = io.StringIO()
    sets = (ProblemSet("Test", (ARM,)),)
    assert run(sets, keep=keep, source=Typist(lines, sink), sink=sink, first="homework") == 0
    return sink.getvalue().splitlines()


def test_a_walk_begun_again_with_the_same_paper_is_the_same_walk(tmp_path: Path) -> None:
    said = said_to([*WRONG, "walk", "homework", "walk", "leave"], tmp_path)
    assert sum("of your values stand" in line for line in said) == 1
    assert len([kept for kept in Keep(tmp_path).lessons() if kept.events]) == 1


def test_a_walk_begun_after_mending_is_another_one(tmp_path: Path) -> None:
    again = ["AB = 150 T", "AC = 360 C", "walk", "leave"]
    said = said_to([*WRONG, "walk", "homework", *again], tmp_path)
    assert sum("of your values stand" in line for line in said) == 2
    assert len([kept for kept in Keep(tmp_path).lessons() if kept.events]) == 2
