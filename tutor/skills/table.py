"""Which skills are traced, and with which numbers? One table; the numbers are our own judgement.

No source gives numbers for this subject. They are held within bounds at which the model keeps its
meaning: whoever has not learnt a skill is right by luck in at most three of ten answers, whoever has
learnt it slips in at most one of ten, and mastered is a probability of 0.95 (the value of the study
named in this room's opening; from memory).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Literal

from tutor.judge.about import Value
from tutor.judge.called import called
from tutor.judge.claims import CLAIMS, SPREAD, SUPPORTS, ZERO
from tutor.judge.mistakes import KINDS

MOST_GUESS = 0.3
MOST_SLIP = 0.1
MASTERED = 0.95
Sort = Literal["choosing", "typing", "avoiding"]


@dataclass(frozen=True)
class Parameters:
    """The four numbers of a skill, each a probability.

    `known` before the first answer, `learnt` from one answer to the next, `guess` to be right without
    the skill, `slip` to be wrong with it. ValueError outside the bounds above.
    """

    known: float
    learnt: float
    guess: float
    slip: float

    def __post_init__(self) -> None:
        if not (0.0 < self.known < 1.0 and 0.0 <= self.learnt < 1.0):
            raise ValueError("known and learnt are probabilities below 1")
        if not (0.0 < self.guess <= MOST_GUESS and 0.0 < self.slip <= MOST_SLIP):
            raise ValueError(f"guess is at most {MOST_GUESS}, slip at most {MOST_SLIP}")


PARAMETERS: Mapping[Sort, Parameters] = {
    "choosing": Parameters(known=0.3, learnt=0.2, guess=0.3, slip=0.1),
    "typing": Parameters(known=0.3, learnt=0.15, guess=0.1, slip=0.1),
    "avoiding": Parameters(known=0.4, learnt=0.1, guess=0.3, slip=0.05),
}
"""Choosing among a few is guessed more easily than a line is; a mistake can go unmade by luck."""


@dataclass(frozen=True)
class Skill:
    """One skill: its code, what it is called, and of which sort it is.

    The code is that of a mistake, or of a step with "step " before it.
    """

    code: str
    called: str
    sort: Sort

    @property
    def parameters(self) -> Parameters:
        return PARAMETERS[self.sort]


STEPS: tuple[Skill, ...] = (
    Skill("step idealise", "idealising a truss", "choosing"),
    Skill("step free body", "replacing supports by their reactions", "choosing"),
    Skill("step reactions", "equations of the whole truss or a part of it", "typing"),
    Skill("step joints", "equations of a joint", "typing"),
    Skill("step values", "working a value out of the lines", "typing"),
    Skill("step zero", "seeing members without force", "choosing"),
    Skill("step close", "checking that the truss closes", "typing"),
)
STEP_CODES = frozenset(skill.code for skill in STEPS)
"""The codes of the skills of steps; any other skill is not making a mistake."""
ASKED: Mapping[str, Mapping[str, str]] = {
    "step idealise": {
        "reasons": "saying why members carry axial force only",
        "count": "counting members, reactions and equations",
    }
}
"""By the step of a skill, what each of its questions asks for that every problem has."""
NO_SKILL = frozenset({"not-equilibrium", "dependent", "carried", "other-equation", "other-point"})
"""Codes that say which line was written, or that nothing is known of it."""
OF_VALUES: frozenset[str] = frozenset(
    code
    for code, kind in KINDS.items()
    if kind.variants is None and any(isinstance(e.about, Value) for e in kind.examples)
)
"""What is avoided by a right value: a mistake of the value itself. That the lines behind it are right
has been seen at the lines."""
CLAIMED: Mapping[str, frozenset[str]] = {
    "support": frozenset(claim.code for claim in SUPPORTS),
    "zero": frozenset(claim.code for claim in ZERO),
    "shares": frozenset(claim.code for claim in SPREAD),
}
"""What can go wrong before a line, by the first word of its place."""


@cache
def skills() -> Mapping[str, Skill]:
    """Every skill by its code: the steps, then not making each of the mistakes."""
    codes = [code for code in (*KINDS, *CLAIMS) if code not in NO_SKILL]
    avoided = {code: Skill(code, f"avoiding: {called(code)}", "avoiding") for code in codes}
    return {**{skill.code: skill for skill in STEPS}, **avoided}


def skill_called(code: str) -> str:
    """A skill in words."""
    found = skills().get(code)
    return code if found is None else found.called
