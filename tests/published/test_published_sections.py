"""Are sections as textbooks make them taken, their lines judged right, and their values the printed ones?

The sources stand beside the trusses in `worked_sections.py`; all from memory.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest
from worked_sections import COMPOUND, WORKED, Cut, Sections

from tutor.judge import judge
from tutor.judge.about import as_text
from tutor.lesson import Lesson, Reply
from tutor.statics import joint_order, section_through, solve

BY_TITLE = pytest.mark.parametrize("worked", WORKED, ids=lambda worked: worked.problem.title)


def printed(text: str) -> tuple[str, float, float]:
    """The member of a printed value, its force, and half of the last place that is printed."""
    name, _, value = text.partition(" = ")
    number, *words = value.split()
    places = len(number.partition(".")[2])
    return name, float(number) * (-1 if "(C)" in words else 1), 0.5001 * 10.0**-places


def values_of(worked: Sections) -> list[str]:
    return [*(text for cut in worked.cuts for text in cut.values), *worked.found]


def parts_of(worked: Sections, cut: Cut) -> tuple[str, ...]:
    return section_through(worked.problem, [own(worked, each) for each in cut.members]).part_with(
        cut.keep
    )


def own(worked: Sections, name: str) -> str:
    """A member as the problem calls it: GI for IG."""
    member = worked.problem.between(name[0], name[1])
    assert member is not None, name
    return member.name


@BY_TITLE
def test_a_solved_truss_has_the_reactions_and_the_members_that_are_printed(
    worked: Sections,
) -> None:
    answer = solve(worked.problem)
    for name, value in worked.reactions.items():
        assert answer.reaction(name) == pytest.approx(value, abs=0.005)
    for text in values_of(worked):
        name, value, within = printed(text)
        assert answer.force(name[0], name[1]) == pytest.approx(value, abs=within), text


@BY_TITLE
def test_every_printed_line_of_a_section_is_right_by_itself(worked: Sections) -> None:
    senses = {own(worked, each): "C" for each in worked.pushing}
    for cut in worked.cuts:
        for about, text in cut.steps:
            verdict = judge(
                worked.problem, replace(about, part=parts_of(worked, cut)), text, senses=senses
            )
            assert verdict.right, (text, verdict.text)


def turned(text: str) -> str:
    """The line with its first sign between two terms the other way."""
    return re.sub(r" [-+] ", lambda sign: {" - ": " + ", " + ": " - "}[sign[0]], text, count=1)


@BY_TITLE
@pytest.mark.parametrize("changed", [turned, lambda text: text.replace("F_", "1.2 F_", 1)])
def test_a_printed_line_of_a_section_with_one_thing_changed_is_not_right(
    worked: Sections, changed: Callable[[str], str]
) -> None:
    senses = {own(worked, each): "C" for each in worked.pushing}
    for cut in worked.cuts:
        for about, text in cut.steps:
            wrong = changed(text)
            assert wrong != text
            about = replace(about, part=parts_of(worked, cut))
            assert not judge(worked.problem, about, wrong, senses=senses).right, wrong


@BY_TITLE
def test_the_printed_sections_are_made_in_a_lesson_as_the_book_makes_them(
    worked: Sections,
) -> None:
    lesson = Lesson(worked.problem)

    def do(kind: str, **data: Any) -> Reply:
        reply = lesson.take(kind, now=float(len(lesson.events)), **data)
        assert reply.accepted, (kind, data, reply.text)
        assert all(say.tone != "wrong" for say in reply.said)
        return reply

    do("show", until="joints")
    for each in worked.pushing:
        do("assume", member=own(worked, each), sense="C")
    for cut in worked.cuts:
        do("section", members=list(cut.members), keep=cut.keep)
        for about, text in cut.steps:
            do("type", about=as_text(replace(about, part=lesson.state.part)), text=text)
        for text in cut.values:
            do("type", text=text)
        if lesson.state.part:
            do("section", members=[])
    for about, text in worked.then:
        if lesson.state.joint != about.joint:
            do("joint", joint=about.joint)
        do("type", about=as_text(about), text=text)
    for text in worked.found:
        name = own(worked, text)
        assert name in lesson.state.result or do("type", text=text)
    for text in values_of(worked):
        name, value, within = printed(text)
        assert lesson.state.signed(own(worked, name)) == pytest.approx(value, abs=within)


def test_the_board_cuts_the_compound_truss_as_the_book_does_where_the_joints_end() -> None:
    assert joint_order(COMPOUND.problem).stuck
    lesson = Lesson(COMPOUND.problem)
    lesson.take("show", until="joints", now=1.0)
    for now in range(2, 20):
        assert lesson.take("show", now=float(now)).accepted
        if lesson.state.part:
            break
    assert lesson.state.shown[-1].startswith("Cut BC, JC and HG")
