"""Can everything be typed that the guide on one's own truss and numbers shows?"""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tutor.drafting import Draft, soundness_of
from tutor.homework.paper import Paper
from tutor.homework.typed import write_line
from tutor.model import load_problem
from tutor.model.caution import CAUTION
from tutor.shipped import shipped_problems

TEXT = (Path(__file__).parents[2] / "docs" / "homework.md").read_text("utf-8")
DRAWINGS = re.findall(r"^```draw\n([\s\S]*?)^```$", TEXT, re.M)
PAPERS = re.findall(r"^```paper\n([\s\S]*?)^```$", TEXT, re.M)
TABLE = re.findall(r"^\| [\w ]+ \| (.*?) \|$", TEXT.partition("## Enter your work")[0], re.M)
TYPED = [text for row in TABLE[1:] for text in re.findall(r"`([^`]+)`", row)]


@pytest.mark.parametrize("block", DRAWINGS)
def test_every_drawing_is_taken_line_by_line(block: str) -> None:
    draft = Draft()
    for line in block.splitlines():
        assert draft.type(line).taken, line
    assert soundness_of(draft.problem).stable


@pytest.mark.parametrize("line", TYPED)
def test_every_example_in_the_table_is_taken(line: str) -> None:
    draft = Draft()
    draft.type("A 0 0 B 4 0 C 2 3/2 D 6 3 U2 9 9 L2 3 9; AB BC; A pin; C 1 up")
    draft.type("spread 2 down AB" if line.startswith("drop spread") else "title x")
    draft.type("rename U2 U1" if "U1-" in line else "title x")
    assert draft.type(line).taken, line


@pytest.mark.parametrize("block", PAPERS)
def test_every_line_of_the_paper_is_noted(block: str) -> None:
    problem = load_problem(shipped_problems() / "first-steps" / "lamp-arm.toml")
    paper = Paper()
    for line in block.splitlines():
        written = write_line(problem, paper, line)
        assert written.noted, line
        assert not written.refused, line
        paper = written.paper


def test_the_guide_has_its_examples_and_the_caution() -> None:
    assert len(DRAWINGS) == 4
    assert len(PAPERS) == 2
    assert len(TYPED) > 20
    assert " ".join(CAUTION.split()) in " ".join(TEXT.split())
