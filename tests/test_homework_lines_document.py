"""Does the guide to checking a homework go as it is printed, from the drawing to the report?"""

from __future__ import annotations

import io
import re
from pathlib import Path

import pytest
from transcripts import GAP, Typist, first_unlike

from tutor import cli
from tutor.homework import Paper, write_line
from tutor.lesson import CAUTION
from tutor.model import ProblemSet, load_problem
from tutor.plain import drawing, homework, run
from tutor.plain.drawing import OPENING
from tutor.shipped import shipped_problems

TEXT = (Path(__file__).parents[1] / "docs" / "homework-by-lines.md").read_text("utf-8")
BLOCKS = [(kind, body) for kind, body in re.findall(r"^```(.+)\n([\s\S]*?)^```$", TEXT, re.M)]
WALK = [body for kind, body in BLOCKS if kind in ("draw", "homework")]
EXCERPT = [line for body in WALK for line in (GAP, *body.splitlines())]
TYPED = [line.removeprefix("> ") for line in EXCERPT if line.startswith("> ")]


def code(kind: str) -> str:
    (body,) = (body for name, body in BLOCKS if name == kind)
    return body


@pytest.fixture(autouse=True)
def said(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """All that is said in the walk of the guide, in whose folder the test goes on."""
    monkeypatch.chdir(tmp_path)
    arm = load_problem(shipped_problems() / "first-steps" / "lamp-arm.toml")
    sink = io.StringIO()
    source = Typist(TYPED, sink)
    sets = (ProblemSet("Test", (arm,)),)
    assert run(sets, keep=tmp_path / "keep", source=source, sink=sink, first="draw") == 0
    return sink.getvalue().splitlines()


def test_the_walk_goes_as_it_is_printed(said: list[str]) -> None:
    assert OPENING in said
    assert first_unlike(EXCERPT, said) is None


def test_the_report_of_a_file_is_as_printed(capsys: pytest.CaptureFixture[str]) -> None:
    Path("work.txt").write_text(code("work"), "utf-8")
    command, *excerpt = code("report").splitlines()
    assert cli.main(command.removeprefix("$ pinjoint ").split()) == 1
    shown = capsys.readouterr()
    assert shown.err == ""
    lines = [
        re.sub(r"^Checked \S+ \S+ .*? with", "Checked … with", x) for x in shown.out.splitlines()
    ]
    assert (
        first_unlike(
            [line for line in excerpt if not line.startswith("Checked")],
            [line for line in lines if not line.startswith("Checked")],
        )
        is None
    )
    assert [line for line in lines if line.startswith("Checked")] == [
        line for line in excerpt if line.startswith("Checked")
    ]


def test_the_script_prints_what_is_printed(capsys: pytest.CaptureFixture[str]) -> None:
    exec(compile(code("python"), "homework-by-lines.md", "exec"), {})
    shown = [line.rstrip() for line in capsys.readouterr().out.splitlines()]
    assert shown == code("output").splitlines()


def test_everything_in_the_table_of_what_can_be_typed_can_be() -> None:
    entering = TEXT.partition("## Enter your work")[2].partition("\n## ")[0]
    rows = re.findall(r"^\| ([^|`]+) \| ([^|]*`[^|]*) \|$", entering, re.M)
    assert len(rows) >= 7
    problem = load_problem("pilot-crane.toml")
    names = {
        "CD": "BC",
        "D E": "A B",
        "B_y": "A_y",
        "3 left": "3 right",
        "ΣFx: …": "",
        "ΣFy: …": "",
    }
    paper = Paper()
    for _, typed in rows:
        for text in re.findall(r"`([^`]+)`", typed):
            for there, here in names.items():
                text = text.replace(there, here)
            written = write_line(problem, paper, text)
            assert not written.refused, (text, written.refused)


def test_every_word_named_is_one() -> None:
    known = {*homework.BY_WORD, "homework", *drawing.BY_WORD, "redo", "whole"}
    named = set(re.findall(r"`([a-z]+)(?: [A-Z.a-z-]*)?`", TEXT))
    words = named - {"pinjoint", "follows", "joint", "order", "push", "pull", "draw", "work", "lb"}
    assert {"hint", "bodies", "undo", "save", "check"} <= words | {"check"}
    assert words <= known, words - known


def test_the_guide_carries_the_caution() -> None:
    assert " ".join(CAUTION.split()) in " ".join(TEXT.split())
