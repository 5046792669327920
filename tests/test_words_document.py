"""Does the page on the words name every word, and do its examples do something?"""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tutor.deeds import deed_of
from tutor.deeds.deed import Lost
from tutor.deeds.words import COMMANDS
from tutor.lesson import Lesson
from tutor.model import load_problem
from tutor.shipped import shipped_problems

TEXT = (Path(__file__).parents[1] / "docs" / "words.md").read_text("utf-8")
ROWS = [row.split("|")[1] for row in TEXT.partition("|---|---|\n")[2].split("\n\n")[0].splitlines()]
EXAMPLES = [example for row in ROWS for example in re.findall(r"`([^`]+)`", row)]


def at_reactions() -> Lesson:
    lesson = Lesson(load_problem(shipped_problems() / "first-steps" / "lamp-arm.toml"))
    for kind, data in (
        ("go", {"step": "free body"}),
        ("support", {"joint": "A", "acts": ["x", "y"]}),
        ("support", {"joint": "B", "acts": ["x"]}),
        ("sense", {"unknown": "A_x", "sense": "right"}),
        ("sense", {"unknown": "A_y", "sense": "up"}),
        ("sense", {"unknown": "B_x", "sense": "right"}),
        ("turning", {"positive": "counter-clockwise"}),
        ("go", {"step": "joints"}),
        ("joint", {"joint": "C"}),
    ):
        lesson.take(kind, **data)
    return lesson


@pytest.mark.parametrize("example", EXAMPLES)
def test_every_example_does_something(example: str) -> None:
    assert not isinstance(deed_of(at_reactions(), example), Lost)


def test_every_word_is_on_the_page() -> None:
    firsts = {example.split(" ")[0] for example in EXAMPLES}
    missing = [each.words[0] for each in COMMANDS if not firsts & set(each.words)]
    assert not missing
    assert len(EXAMPLES) > 30
