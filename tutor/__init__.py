"""pinjoint: a tutor for the method of joints, usable from Python.

    from tutor import load_problem, solve, judge, Fx

    problem = load_problem("arm.toml")
    solve(problem).force("A", "B")                      # tension positive
    judge(problem, Fx(joint="C"), "3/5 F_AC - 12 = 0")  # a verdict: .right, .mistakes, .remarks

These names are stable. Each is loaded when it is first asked for, so that `import tutor` costs
nothing to those who need only one of them. `judge` is the room of that name as well, which is called
as the function in it: `import tutor.judge.mistakes` works beside `judge(...)`.
"""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from tutor.cohort import ClassReport, class_report
    from tutor.homework import Finding, Review, review
    from tutor.judge import Along, Fx, Fy, M, Mistake, Remark, Value, Verdict, judge
    from tutor.lesson import Lesson
    from tutor.model import Defect, Problem, ProblemError, ProblemSet, load_problem, load_set
    from tutor.statics import Answer, Unsolvable, solve
    from tutor.variants import NoVariant, variant

ROOM_OF = {
    "Along": "judge",
    "Answer": "statics",
    "ClassReport": "cohort",
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
    "class_report": "cohort",
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
    "ClassReport",
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
    "class_report",
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
    room = import_module(f"{__name__}.{ROOM_OF[name]}")
    return room if name == ROOM_OF[name] else getattr(room, name)


def __dir__() -> list[str]:
    return sorted({*globals(), *__all__})
