"""How much of a problem is left to the student, and how much is written for them first?

A worked example that fades: first the whole walk is watched, then its last steps are the student's own,
then ever earlier ones. A. Renkl and R. K. Atkinson, Structuring the transition from example study to
problem solving in cognitive skill acquisition: a cognitive load perspective, Educational Psychologist
38 (2003) 15-22 (that the last steps are left out first: from memory); J. Sweller and G. A. Cooper, The
use of worked examples as a substitute for problem solving in learning algebra, Cognition and
Instruction 2 (1985) 59-89. The stages are the steps of this method; where who begins is our own judgement.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

StageName = Literal["watch", "half", "joints", "reactions", "alone"]
ALONE: StageName = "alone"


@dataclass(frozen=True)
class Stage:
    """One stage: up to where all is written at once (`until`, as a `show` event has it; empty where
    nothing is, or everything in the student's tempo), what stands then, and what is the student's."""

    name: StageName
    until: str = ""
    stands: str = ""
    yours: str = ""


STAGES: tuple[Stage, ...] = (
    Stage("watch"),
    Stage("half", "half", "the reactions and about half of the members", "the rest is"),
    Stage("joints", "joints", "the free body and the reactions", "the joints are"),
    Stage("reactions", "reactions", "the free body", "the reactions and the joints are"),
    Stage(ALONE),
)
STAGE: Mapping[str, Stage] = {stage.name: stage for stage in STAGES}

WELL = 0.85
"""From this share of right first answers on, one stage is passed over."""
POORLY = 0.5
"""Below this share the stage is taken once more."""
FIRST_STAGES: tuple[StageName, ...] = ("watch", "half", "joints", "reactions", "alone")
"""Where a kind not met yet begins, by how many other kinds were done alone before: with some of the
method at hand, less of it has to be shown. All three numbers are our own judgement."""


@dataclass(frozen=True)
class Past:
    """One finished lesson: of which kind its problem is, what was left to the student, and the share
    of right first answers (0 to 1)."""

    kind: str
    stage: StageName
    share: float


def next_stage(past: Sequence[Past], kind: str) -> StageName:
    """The stage at which a problem of this kind is offered, from the finished lessons in their order.

    A kind that was not met begins by `FIRST_STAGES`. From there each finished lesson leaves one step
    more to the student, two where it went well, none more where it went poorly; it never goes back.
    """
    mastered = {each.kind for each in past if each.stage == ALONE and each.share >= POORLY}
    own = [each for each in past if each.kind == kind]
    at = _place(FIRST_STAGES[min(len(mastered - {kind}), len(FIRST_STAGES) - 1)])
    for each in own:
        at = max(at, _after(each))
    return STAGES[at].name


def _after(done: Past) -> int:
    """The stage that a finished lesson leads to."""
    further = 2 if done.share >= WELL else 1 if done.share >= POORLY else 0
    if done.stage == "watch":
        further = 1
    return min(_place(done.stage) + further, len(STAGES) - 1)


def _place(name: StageName) -> int:
    return STAGES.index(STAGE[name])


FIRST_OF_KIND = (
    "This is the first of its {among} for you. You can watch it: type watch, and the next thing is written "
    "at the board with its reason."
)
OFFER = "{past} Type begin, and {stands} {are} written for you; {yours} yours. Or do all of it yourself."


def offered(stage: StageName, past: Sequence[Past], kind: str, among: str = "set") -> str:
    """The sentence that offers a stage on opening; empty where all is left to the student.

    `among` is what problems of one kind are called together.
    """
    if stage == "watch":
        return FIRST_OF_KIND.format(among=among)
    if stage == ALONE:
        return ""
    found = STAGE[stage]
    return OFFER.format(
        past=_told(past, kind, among),
        stands=found.stands,
        are=_are(found.stands),
        yours=found.yours,
    )


def _are(stands: str) -> str:
    return "are" if " and " in stands else "is"


def _told(past: Sequence[Past], kind: str, among: str) -> str:
    """What was done of a kind, in a sentence."""
    own = [each for each in past if each.kind == kind]
    watched = sum(each.stage == "watch" for each in own)
    if not own:
        return f"This is the first of its {among} for you."
    if watched == len(own):
        return f"You have watched {_counted(watched)} of these."
    return f"You have done {_counted(len(own))} of these."


def _counted(count: int) -> str:
    words = ("no", "one", "two", "three", "four", "five", "six")
    return words[count] if count < len(words) else str(count)
