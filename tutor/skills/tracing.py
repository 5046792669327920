"""How likely is a skill learnt, after these answers? Bayesian knowledge tracing, nothing else.

After an answer, by Bayes' rule with `L` for learnt before it, `G` for guess and `S` for slip:

    right:  L' = L (1 - S) / (L (1 - S) + (1 - L) G)
    wrong:  L' = L S       / (L S       + (1 - L) (1 - G))

and then the step to the next answer, in which the skill may be learnt: L = L' + (1 - L') T.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import reduce

from tutor.skills.table import Parameters


def after(likely: float, right: bool, by: Parameters) -> float:
    """How likely the skill is learnt after one more answer, as it will be at the next one."""
    with_skill = likely * ((1.0 - by.slip) if right else by.slip)
    without = (1.0 - likely) * (by.guess if right else (1.0 - by.guess))
    learnt = with_skill / (with_skill + without)
    return learnt + (1.0 - learnt) * by.learnt


def trace(answers: Iterable[bool], by: Parameters) -> float:
    """How likely the skill is learnt after these answers, right or wrong, in their order."""
    return reduce(lambda likely, right: after(likely, right, by), answers, by.known)
