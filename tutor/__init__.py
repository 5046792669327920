"""pinjoint: a tutor for the method of joints, usable from Python.

    from tutor import load_problem, solve, judge, Fx

    problem = load_problem("arm.toml")
    solve(problem).force("A", "B")                      # tension positive
    judge(problem, Fx(joint="C"), "3/5 F_AC - 12 = 0")  # a verdict: .right, .mistakes, .remarks

These names are stable. Each is loaded when it is first asked for, so that `import tutor` costs
nothing to those who need only one of them.
"""

from __future__ import annotations

import sys
from importlib import import_module
from types import ModuleType
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from tutor.homework import Finding, Review, review
    from tutor.judge import Along, Fx, Fy, M, Mistake, Remark, Value, Verdict, judge
    from tutor.lesson import Lesson
    from tutor.model import Defect, Problem, ProblemError, ProblemSet, load_problem, load_set
    from tutor.statics import Answer, Unsolvable, solve
    from tutor.variants import NoVariant, variant

ROOM_OF = {
    "Along": "judge",
    "Answer": "statics",
    "Defect": "model",
    "Finding": "homework",
    "Fx": "judge",
    "Fy": "judge",
    "Lesson": "lesson",
    "M": "judge",
    "Mistake": "judge",
    "NoVariant": "variants",
    "Problem": "model",
    "ProblemError": "model",
    "ProblemSet": "model",
    "Remark": "judge",
    "Review": "homework",
    "Unsolvable": "statics",
    "Value": "judge",
    "Verdict": "judge",
    "judge": "judge",
    "load_problem": "model",
    "load_set": "model",
    "review": "homework",
    "solve": "statics",
    "variant": "variants",
}

__all__ = [
    "Along",
    "Answer",
    "Defect",
    "Finding",
    "Fx",
    "Fy",
    "Lesson",
    "M",
    "Mistake",
    "NoVariant",
    "Problem",
    "ProblemError",
    "ProblemSet",
    "Remark",
    "Review",
    "Unsolvable",
    "Value",
    "Verdict",
    "judge",
    "load_problem",
    "load_set",
    "review",
    "solve",
    "variant",
]


def __getattr__(name: str) -> object:
    if name not in ROOM_OF:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    return getattr(import_module(f"{__name__}.{ROOM_OF[name]}"), name)


def __dir__() -> list[str]:
    return sorted({*globals(), *__all__})


class Api(ModuleType):
    """This package. Its room `judge` and the function `judge` share a name: the function has it."""

    def __setattr__(self, name: str, value: object) -> None:
        if name == "judge" and isinstance(value, ModuleType):
            value = value.judge
        super().__setattr__(name, value)


sys.modules[__name__].__class__ = Api
