"""What can a student do now, and from which lines is that judged? A page for them alone, and a line of it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from tutor.judge.called import called
from tutor.lesson.place import Question, place_of
from tutor.model.caution import CAUTION
from tutor.progress.account import FirstAnswer
from tutor.progress.attained import Attained, WorkedLesson
from tutor.progress.weakness import WEAK
from tutor.skills import Mastery, skill_called
from tutor.skills.places import place_in_words
from tutor.skills.table import STEP_CODES, STEPS
from tutor.text import in_markdown, one_line, raised

How = Literal["can do", "on the way", "to practise", "not seen yet"]
IN_SHORT = {
    "step idealise": "idealising",
    "step free body": "free bodies",
    "step reactions": "reactions",
    "step joints": "joints",
    "step values": "values",
    "step zero": "zero-force members",
    "step close": "closing",
}
MOST_LINES = 4
"""So many of the latest answers are shown for each skill."""
TITLE = "What you can do now"
NOTHING = "Nothing was answered yet: this page fills with your first answers."
HOW_JUDGED = (
    "Only your first answer at each place counts, with what you do without a hint. A right answer can be "
    "luck and a wrong one a slip, so the latest answers decide, not how many of all were right. This is no mark, and nobody sees it "
    "but you."
)


@dataclass(frozen=True)
class AnswerLine:
    """One first answer by which a skill is judged: on which problem, where, what, with which mistakes."""

    right: bool
    title: str
    place: str
    text: str
    made: tuple[str, ...] = ()


@dataclass(frozen=True)
class Skilled:
    """One skill: what it is called, how it stands, its first answers and how many were right, and the
    latest of them."""

    called: str
    how: How
    answers: int
    right: int
    lines: tuple[AnswerLine, ...]


def how_it_stands(mastery: Mastery | None) -> How:
    """How a skill stands, in words."""
    if mastery is None:
        return "not seen yet"
    if mastery.mastered:
        return "can do"
    lacking = mastery.likely < WEAK and mastery.right < mastery.answers
    return "to practise" if lacking else "on the way"


ORDER: tuple[How, ...] = ("can do", "on the way", "to practise", "not seen yet")


def at_a_glance(attained: Attained) -> tuple[tuple[How, tuple[str, ...]], ...]:
    """The steps of the method by how they stand, each in a word; empty where nothing was answered."""
    if not attained.masteries:
        return ()
    found = {each.skill: each for each in attained.masteries}
    by_how: dict[How, list[str]] = {how: [] for how in ORDER}
    for skill, short in IN_SHORT.items():
        by_how[how_it_stands(found.get(skill))].append(short)
    return tuple((how, tuple(names)) for how, names in by_how.items() if names)


def skilled(attained: Attained) -> tuple[Skilled, ...]:
    """Every step of the method, then every mistake that was made at least once, what is lacking first."""
    found = {each.skill: each for each in attained.masteries}
    steps = [_skilled(attained, step.code, found.get(step.code)) for step in STEPS]
    made = [m for m in attained.masteries if m.right < m.answers and m.skill not in STEP_CODES]
    made.sort(key=lambda mastery: mastery.likely)
    return (*steps, *(_skilled(attained, mastery.skill, mastery) for mastery in made))


def _skilled(attained: Attained, skill: str, mastery: Mastery | None) -> Skilled:
    answers = [pair for pair in attained.answers if skill in pair[1].skills]
    step = skill in STEP_CODES
    return Skilled(
        skill_called(skill) if step else f"avoiding “{called(skill)}”",
        how_it_stands(mastery),
        0 if mastery is None else mastery.answers,
        0 if mastery is None else mastery.right,
        tuple(_line(*pair) for pair in _telling(answers)),
    )


def _telling(
    answers: Sequence[tuple[WorkedLesson, FirstAnswer]],
) -> Sequence[tuple[WorkedLesson, FirstAnswer]]:
    """The latest answers, the last wrong one among them where there is one."""
    latest = list(answers[-MOST_LINES:])
    wrong = [pair for pair in answers if not pair[1].right]
    if wrong and wrong[-1] not in latest:
        latest[0] = wrong[-1]
    return latest


def _line(worked: WorkedLesson, answer: FirstAnswer) -> AnswerLine:
    counted = place_of(answer.place) == Question("count")
    made = tuple(called("count" if counted else code) for code in answer.made)
    return AnswerLine(answer.right, worked.title, place_in_words(answer.place), answer.text, made)


def page_lines(attained: Attained) -> Iterator[str]:
    """The page line by line, for reading or speaking, with the caution at its end."""
    yield f"{TITLE}."
    if not attained.masteries:
        yield NOTHING
        yield CAUTION
        return
    yield HOW_JUDGED
    for each in skilled(attained):
        yield ""
        yield _headed(each)
        yield from (f"  {_told(line)}" for line in each.lines)
    yield ""
    yield CAUTION


def _headed(each: Skilled) -> str:
    """ "Can do: equations of a joint. 7 of 8 first answers right."."""
    counted = f" {each.right} of {each.answers} first answers right." if each.answers else ""
    return f"{raised(each.how)}: {each.called}.{counted}"


def _told(line: AnswerLine) -> str:
    verdict = "right" if line.right else "wrong"
    text = f": {line.text}" if line.text else ""
    made = f" [{', '.join(line.made)}]" if line.made else ""
    return one_line(f"{verdict}: {line.title}, {line.place}{text}{made}")


def as_markdown(attained: Attained) -> str:
    """The page as a Markdown file."""
    parts = [f"# {TITLE}", HOW_JUDGED if attained.masteries else NOTHING]
    for each in skilled(attained) if attained.masteries else ():
        parts.append(f"## {in_markdown(each.called)}")
        parts.append(_headed(each))
        if each.lines:
            parts.append("\n".join(f"- {in_markdown(_told(line))}" for line in each.lines))
    return "\n\n".join((*parts, CAUTION)) + "\n"
