"""What does one lesson come to, for the student who did it? How much was theirs, and how well it went."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from tutor.lesson.hints import LEVELS
from tutor.lesson.state import State
from tutor.lesson.steps import STEPS
from tutor.progress.kinds import walk_of
from tutor.progress.stages import ALONE, STAGE, StageName
from tutor.skills import Seen
from tutor.skills.seen import first_answers, shown_by

MOST_TEXT = 60
WATCHED = 0.9
"""From this share of lines shown on, the joints were watched; our own judgement."""
MOSTLY = 0.5
SOME = 0.25


@dataclass(frozen=True)
class FirstAnswer:
    """One first answer: its place and text, whether it was right, when, and of which skills it is
    evidence. `made` are the mistakes named in it."""

    place: str
    text: str
    right: bool
    time: float
    skills: tuple[str, ...]
    made: tuple[str, ...] = ()

    @property
    def seen(self) -> Iterator[Seen]:
        """The answer as evidence of skills."""
        return (Seen(code, self.time, self.right) for code in self.skills)


@dataclass(frozen=True)
class LessonAccount:
    """One lesson: the step it stands at, what had been left to the student, and the first answers.

    `told` is how many lines and values were told as a last hint, `walk` what the walk needed.
    """

    step: str
    stage: StageName
    told: int
    answers: tuple[FirstAnswer, ...]
    walk: str = ""

    @property
    def done(self) -> bool:
        """Whether it came to its table."""
        return self.step == "table"

    @property
    def share(self) -> float:
        """The share of the first answers that were right and not told; 1 where nothing was left to
        the student."""
        if not self.answers:
            return 1.0
        wrong = sum(not answer.right for answer in self.answers)
        return max(0.0, 1.0 - max(wrong, self.told) / len(self.answers))


def account_of(state: State) -> LessonAccount:
    """The account of a lesson as it stands."""
    answers = tuple(
        FirstAnswer(
            each.place,
            each.text[:MOST_TEXT],
            each.verdict == "right",
            each.time,
            shown_by(state, each),
            () if each.verdict == "right" else tuple(dict.fromkeys(each.codes)),
        )
        for each in first_answers(state.tries)
        if each.verdict in ("right", "wrong")
    )
    told = state.hints_used.count(len(LEVELS))
    return LessonAccount(state.step, stage_of(state), told, answers, walk_of(state.problem))


def stage_of(state: State) -> StageName:
    """What had been left to the student, by what was shown at the board of each step."""
    joints = _share_shown(state, "joints")
    if state.shown and joints >= WATCHED:
        return "watch"
    if joints >= SOME:
        return "half"
    if _share_shown(state, "reactions") >= MOSTLY:
        return "joints"
    return "reactions" if _share_shown(state, "free body") >= MOSTLY else ALONE


def _share_shown(state: State, step: str) -> float:
    """The share of the places of a step at which the answer was shown."""
    by_place = {made.at: made.verdict for made in state.tries if made.step == step}
    shown = sum(verdict == "shown" for verdict in by_place.values())
    return shown / len(by_place) if by_place else 0.0


def as_record(account: LessonAccount) -> dict[str, Any]:
    """The account as JSON values; skills as places in one list, since most answers show the same."""
    codes = list(dict.fromkeys(code for answer in account.answers for code in answer.skills))
    place = {code: index for index, code in enumerate(codes)}
    return {
        "step": account.step,
        "stage": account.stage,
        "told": account.told,
        "walk": account.walk,
        "codes": codes,
        "answers": [
            [a.place, a.text, a.right, a.time, [place[code] for code in a.skills], list(a.made)]
            for a in account.answers
        ],
    }


def from_record(record: Mapping[str, Any]) -> LessonAccount:
    """The account that `as_record` wrote. ValueError where the mapping is none."""
    try:
        codes = [str(code) for code in record["codes"]]
        answers = tuple(
            FirstAnswer(
                str(place),
                str(text),
                bool(right),
                float(time),
                tuple(codes[index] for index in skills),
                tuple(map(str, made)),
            )
            for place, text, right, time, skills, made in record["answers"]
        )
        step, stage, told = record["step"], record["stage"], int(record["told"])
        walk = str(record["walk"])
    except (KeyError, TypeError, IndexError, AttributeError, OverflowError) as fault:
        raise ValueError("a kept account cannot be read") from fault
    if step not in STEPS or stage not in STAGE:
        raise ValueError("a kept account names no step or stage")
    return LessonAccount(step, stage, told, answers, walk)
