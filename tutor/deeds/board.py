"""Which words have the walk shown, a guess answered, or the truss cut by a section?"""

from __future__ import annotations

import re
from collections.abc import Collection
from dataclasses import dataclass
from functools import lru_cache

from tutor.deeds.deed import Begin, Deed, Do, Tell, Unfinished
from tutor.judge import Judge
from tutor.lesson import Lesson
from tutor.lesson.state import State
from tutor.lesson.steps.section import how_to_cut
from tutor.lesson.watching import Guess, next_move
from tutor.lesson.watching.guessing import NOTHING_TO_GUESS
from tutor.lesson.watching.show import UNTIL
from tutor.model.naming import joint_meant, member_meant

KEEP = re.compile(r"\b(?:keep|keeping|with|part)\b", re.IGNORECASE)
BETWEEN = re.compile(r"[\s,;]+|\band\b", re.IGNORECASE)
WATCH_FIRST = (
    "You can watch before you try: type watch, and the next thing is written at the board with its "
    "reason."
)
ALL_YOURS = "All of this one is yours."
HOW_TO_BEGIN = "Type begin and one of {stages}: what is written first, before you go on."
BEGINNINGS = ("watch", *(name for name in UNTIL if name != "close"), "alone")
"""How a lesson can be begun: watched, with its first steps written up to a place, or alone."""


def can_show(lesson: Lesson) -> bool:
    """Whether the next thing may be shown here: the set allows it, and something is left."""
    rules = lesson.problem.rules
    return rules.hints == "all" and rules.mode != "check" and lesson.ask.kind != "table"


def invitation(lesson: Lesson, steps_done: Collection[str], offer: str = "") -> str:
    """The `offer` made to who begins a lesson; without one, that one may watch first, for who has
    passed no step in any lesson. "" where nothing is shown, or the lesson is under way."""
    if not can_show(lesson) or lesson.events:
        return ""
    return offer or ("" if steps_done else WATCH_FIRST)


def begin(lesson: Lesson, rest: str) -> Deed | None:
    """ "begin" has the first steps written as offered, "begin joints" all before the joints."""
    if rest and rest.lower() not in BEGINNINGS:
        return Tell((HOW_TO_BEGIN.format(stages=", ".join(BEGINNINGS)),))
    return Begin(rest.lower())


def beginning(stage: str) -> Deed:
    """What is done to begin a lesson at a stage."""
    if stage in UNTIL:
        return Do("show", {"until": stage})
    return Do("show", {}) if stage == "watch" else Tell((ALL_YOURS,))


def show(lesson: Lesson, rest: str) -> Deed | None:
    """ "show" has the next thing done at the board, "show until joints" all before the joints."""
    if not rest:
        return Do("show", {})
    until = re.sub(r"^(?:until|to|up to|till)\s+(?:the\s+)?", "", rest.lower())
    if until in UNTIL:
        return Do("show", {"until": until})
    places = ", ".join(UNTIL)
    return Tell((f"Type watch for the next line, or watch until and one of {places}.",))


def guess(lesson: Lesson, rest: str) -> Deed | None:
    """A guess at what is shown next: the number of an answer, its name, or how it begins."""
    if not can_show(lesson):
        return Do("show", {})
    asked = to_guess(lesson)
    if asked is None:
        return Tell((NOTHING_TO_GUESS,))
    key = _key(asked, rest) if rest else None
    if key is not None:
        return Do("guess", {"guess": key})
    numbered = (f"{n}. {option.words}" for n, option in enumerate(asked.options, start=1))
    lines = (f"{asked.question} Type guess and one of these:", *numbered)
    return Tell(lines) if rest else Unfinished("guess", "", lines)


def to_guess(lesson: Lesson) -> Guess | None:
    """What may be guessed where the lesson stands, or None."""
    return _guess_at(_Standing(lesson.state, lesson.desk)) if can_show(lesson) else None


@dataclass(frozen=True, eq=False)
class _Standing:
    """Where a lesson stands, as a key: the same state, not an equal one, so that none is compared."""

    state: State
    desk: Judge

    def __hash__(self) -> int:
        return id(self.state)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Standing) and other.state is self.state


@lru_cache(maxsize=2)
def _guess_at(here: _Standing) -> Guess | None:
    """What may be guessed somewhere; the bar asks for it again and again."""
    move = next_move(here.state, here.desk)
    return None if move is None else move.guess


def _key(asked: Guess, text: str) -> str | None:
    if text.isascii() and text.isdigit() and 0 < int(text[:3]) <= len(asked.options):
        return asked.options[int(text[:3]) - 1].key
    said = text.casefold()
    for fits in (
        lambda key, words: said in (key, words, words.removeprefix("joint ")),
        lambda key, words: words.startswith(said) or words.removeprefix("joint ").startswith(said),
    ):
        found = [o.key for o in asked.options if fits(o.key.casefold(), o.words.casefold())]
        if len(found) == 1:
            return found[0]
    return None


def section(lesson: Lesson, rest: str) -> Deed | None:
    """ "section BC CG FG keep A" cuts three members and keeps the part with A."""
    problem = lesson.problem
    named, *kept = KEEP.split(rest)
    if not rest or len(kept) != 1:
        return Tell((how_to_cut(problem),))
    words = [word for word in BETWEEN.split(named) if word]
    members = [member_meant(problem, word) for word in words]
    if strange := [w for w, member in zip(words, members, strict=True) if member is None]:
        there = ", ".join(member.name for member in problem.members)
        return Tell((f"Cannot read {strange[0]}: the members are {there}.",))
    joint = joint_meant(problem, re.sub(r"^\s*(?:joint|of)\s+", "", kept[0]).strip())
    if joint is None:
        there = ", ".join(each.name for each in problem.joints)
        return Tell((f"Name a joint of the part you keep: {there}.",))
    return Do("section", {"members": members, "keep": joint})
