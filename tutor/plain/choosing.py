"""Which problem does the student take, and does an earlier lesson on it go on?"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import repeat

from tutor.model import Problem, ProblemSet
from tutor.plain.choices import KeptChoices
from tutor.plain.listing import list_lines, set_lines, sets_lines
from tutor.plain.spelling import spelled
from tutor.plain.voice import LONGEST, TooLong, Voice
from tutor.progress.guide import Guide, Listed, guide_for, where_left
from tutor.progress.kept import Summaries
from tutor.progress.page import at_a_glance, page_lines
from tutor.progress.where import FINISHED
from tutor.records import Keep, Kept
from tutor.records.anew import anew, can_be_anew, then_told
from tutor.records.belonging import Belonging, key_of
from tutor.records.lessons import Lessons
from tutor.text import listed, raised

LEAVING = frozenset({"leave", "quit", "exit", "bye"})
AGAIN = frozenset({"again", "list", "sets", "problems", "ask", "where"})
ALL = frozenset({"all", "list all", "all problems"})
SET = re.compile(r"(?:open\s+)?set\s+(\d{1,4})", re.IGNORECASE)
HELP = frozenset({"help", "?"})
LIST_HELP = (
    "Type the number of a problem, or a part of its title.",
    "next: opens the problem to take next.",
    "skills: says what you can do now, and from which lines that is judged.",
    "list: says the sets or the problems again; set and a number, the problems of one set; all, "
    "those of every set.",
    "draw: draws a truss of your own.",
    "guide off, guide on: leaves out or brings back what comes next and what you can do.",
    "leave: ends; all is kept.",
)
NEXT = frozenset({"next", "on", "go on"})
SKILLS = frozenset({"skills", "progress"})
DRAW = frozenset({"draw", "own"})
MOST = 5
FEW = 20
"""So many problems of several sets are said one by one; of more, the sets."""
ONWARD = frozenset({"1", "go on", "go", "on", "yes", "next"})
AFRESH = frozenset({"new", "begin", "afresh", "no"})
OTHER_NUMBERS = frozenset({"anew", "other numbers", "new numbers"})


class Leaving(Exception):  # noqa: N818 - the student leaves; nothing failed
    """The student left, or the input ended."""


class Choosing:
    """The list of problems as a conversation: `listen` until one is chosen."""

    def __init__(self, voice: Voice, sets: Sequence[ProblemSet], choices: KeptChoices) -> None:
        self.voice = voice
        self.sets = sets
        self.choices = choices
        self.problems = [problem for each in sets for problem in each.problems]

    def listen(self) -> Problem | None:
        """The problem chosen, by its number or title; None to draw one. Raises Left."""
        keep = self.choices.keep
        if not self.problems:
            self.voice.say(list_lines(self.sets, Guide()))
            raise Leaving
        self.guide = guide_of(self.sets, keep)
        self.voice.note(self.guide.notices)
        self._list()
        while True:
            text = heard(self.voice)
            chosen = _one_of(self.problems, text)
            if chosen is None and text.lower() in NEXT:
                chosen = self._next()
            if chosen is not None:
                return chosen
            if text.lower() in DRAW:
                return None
            self._answer(text.lower())

    def _answer(self, word: str) -> None:
        if word in AGAIN:
            self._list()
        elif word in ALL:
            self.voice.say(list_lines(self.sets, self.guide))
        elif asked := SET.fullmatch(word):
            self.voice.say(set_lines(self.sets, self.guide, int(asked[1])))
        elif word in HELP:
            self.voice.say(LIST_HELP)
        elif word in SKILLS:
            self.voice.say(line for line in page_lines(self.guide.attained) if line)
        elif word in ("guide on", "guide off"):
            self.choices.guide(word == "guide on")
            self.voice.say(("The guide is on." if word == "guide on" else "The guide is off.",))
        else:
            most = len(self.problems)
            way = (
                f"a title,{' set and a number,' if len(self.sets) > 1 else ''} next, draw, or leave"
            )
            self.voice.say((f"Cannot read: type a number from 1 to {most}, {way}.",))

    def _list(self) -> None:
        few = len(self.sets) == 1 or len(self.problems) <= FEW
        self.voice.say((list_lines if few else sets_lines)(self.sets, self.guide))
        if self.choices.guided:
            self.voice.say(guide_lines(self.guide, self.problems))

    def _next(self) -> Problem | None:
        """The problem that is not finished and was worked on last, else the one to take next."""
        key = _to_go_on_with(self.guide)
        if key == "":
            self.voice.say(("Every problem here is finished.",))
        return next((each for each in self.problems if key_of(each) == key), None)


def _to_go_on_with(guide: Guide) -> str:
    """The key of the problem begun last and not finished, else of the next one; "" where all is done."""
    if guide.last and guide.places[guide.last] not in FINISHED:
        return guide.last
    ahead = guide.next()
    return "" if ahead is None else ahead.key


def guide_lines(guide: Guide, problems: Sequence[Problem]) -> Iterator[str]:
    """What the student can do, where they were last, and what is next and why."""
    yield from (
        f"{raised(how)}: {listed(names, most=9)}." for how, names in at_a_glance(guide.attained)
    )
    numbered = {key_of(each): f"{n}. {each.title}" for n, each in enumerate(problems, start=1)}
    if guide.last and guide.places[guide.last] not in FINISHED:
        where = guide.places[guide.last]
        yield f"You were at {numbered[guide.last]}, {where}. Type next to go on there."
    elif guide.last and (ahead := guide.next()) is not None:
        yield f"Next: {numbered[ahead.key]}. {ahead.why} Type next to open it."


def guide_of(sets: Sequence[ProblemSet], keep: Keep) -> Guide:
    """Where the student stands among these problems."""
    rows = (
        Listed(problem, each.title, tuple(key_of(p) for p in each.before(problem)))
        for each in sets
        for problem in each.problems
    )
    return guide_for(rows, Summaries(keep), opened=True)


def choose_lesson(
    voice: Voice, problem: Problem, keep: Keep, most: int | None = MOST
) -> tuple[Problem, Kept | None]:
    """The earlier lesson to go on with, or None for a new one; with the problem, which has other numbers
    where that was chosen. So many as `most` are said at once. Raises Left."""
    summaries = Summaries(keep)
    found = {each.kept.path: each for each in summaries.look()}
    voice.note(each.kept.notice for each in found.values() if not each.kept.readable)
    every = Lessons(each.kept for each in found.values()).of(problem)
    if not every:
        return problem, None
    earlier = every[:most]
    places = [where_left(found[kept.path], how, summaries) for kept, how in earlier]
    summaries.put_down()
    rows = list(map(_row, earlier, places, repeat(problem), repeat(len(earlier) > 1)))
    again = can_be_anew(problem) and any(place in FINISHED for place in places)
    rows.append("begin a new lesson; the old one stays kept")
    if again:
        rows.append("begin a new lesson with other numbers")
    new = len(rows) - again
    asked = (
        f"You worked on {problem.title}{_day(earlier[0][0])}.",
        *(f"{number}. {row}" for number, row in enumerate(rows, start=1)),
        *_older(len(every) - len(earlier)),
    )
    voice.say(asked)
    while True:
        text = heard(voice).lower()
        if text in ONWARD:
            return problem, earlier[0][0]
        if text in AFRESH or text == str(new):
            return problem, None
        if again and (text in OTHER_NUMBERS or text == str(len(rows))):
            return anew(problem, (kept for kept, _ in every)), None
        if text.isascii() and text.isdigit() and 0 < int(text[:6]) < new:
            return problem, earlier[int(text[:6]) - 1][0]
        if text in ALL:
            return choose_lesson(voice, problem, keep, None)
        voice.say((*asked, "Type a number, or leave.") if text in AGAIN | HELP else (_lost(new),))


def _lost(new: int) -> str:
    """What is said of a line that chooses no lesson; `new` is the number of a new one."""
    on = "1" if new == 2 else f"a number from 1 to {new - 1}"
    return f"Cannot read: type {on} to go on, {new} to begin a new lesson, or leave."


def _row(lesson: tuple[Kept, Belonging], place: str, problem: Problem, several: bool) -> str:
    kept, how = lesson
    return f"{_went_on(kept, then_told(problem, how), several)}, {place}"


def _older(count: int) -> Iterator[str]:
    if count:
        yield f"Type all to hear {count} older too."


def _day(kept: Kept) -> str:
    return f" on {kept.last:%Y-%m-%d}" if kept.last is not None else ""


def _went_on(kept: Kept, then: str, dated: bool) -> str:
    """A kept lesson to go on with, in words; the first of them is the one last worked on."""
    at = f" on {kept.last.astimezone():%Y-%m-%d at %H:%M}" if dated and kept.last else ""
    return f"go on where you left{at}{then}"


def heard(voice: Voice) -> str:
    """The next line typed, trimmed. Raises Left at the end of the input or for a word of leaving."""
    while True:
        try:
            text = voice.listen()
        except TooLong:
            voice.say((f"Cannot read: a line has {LONGEST} characters at most.",))
            continue
        if text is None or text.strip().lower() in LEAVING:
            raise Leaving
        return text.strip()


def _one_of(problems: Sequence[Problem], text: str) -> Problem | None:
    if text.isascii() and text.isdigit():
        number = int(text[:6])
        return problems[number - 1] if 0 < number <= len(problems) else None
    fitting = [
        problem
        for problem in problems
        if text and text.casefold() in f"{problem.title}\n{spelled(problem.title)}".casefold()
    ]
    return fitting[0] if len(fitting) == 1 else None
