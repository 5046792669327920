"""A report holds what a title, a story or a name says as words only, and no more of it than they may be."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from tutor.lesson import Lesson
from tutor.model import Problem, load_problem
from tutor.model.read_words import LONGEST_STORY, LONGEST_TITLE
from tutor.records.report import markdown
from tutor.shipped import shipped_problems

ARM = load_problem(shipped_problems() / "first-steps" / "lamp-arm.toml")
HOSTILE = (
    "![x](http://evil.example/y.png)",
    "[a](http://evil.example)",
    "<img src=x> <b>",
    "one\n# two",
    "one\n\n| a | b |\n|---|---|",
    "`code` ~~~ **bold** _it_",
    "<http://evil.example>",
)
LIVE = re.compile(r"(?<!\\)!\[|(?<!\\)\]\(|(?<!\\)<[a-z/]|^ {0,3}\|--", re.MULTILINE)


def report_of(problem: Problem) -> str:
    return markdown(Lesson(problem))


@pytest.mark.parametrize("text", HOSTILE)
def test_nothing_in_a_title_or_a_story_is_alive_in_the_report_of_a_lesson(text: str) -> None:
    report = report_of(replace(ARM, title=text, story=text))
    plain = report_of(replace(ARM, title="T", story="S"))
    assert not LIVE.findall(report)
    headings = [line for line in report.splitlines() if line.startswith("#")]
    assert len(headings) == len([line for line in plain.splitlines() if line.startswith("#")])


def test_the_report_of_the_longest_title_and_story_is_not_much_longer_than_they_are() -> None:
    title, story = "*" * LONGEST_TITLE, "*" * LONGEST_STORY
    report = report_of(replace(ARM, title=title, story=story))
    assert len(report) <= 2 * (len(title) + len(story)) + 2000
