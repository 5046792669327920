"""A student who rounds every number, line and value of a whole walk to three figures, honestly."""

from __future__ import annotations

from collections.abc import Sequence
from random import Random

from lines import Style, figures, pieces, written
from strategies import make_truss

from tutor.judge import Equation, Fx, Fy, M, Value, judge, judge_of
from tutor.judge.typed import TypedEquation, typed_equation
from tutor.model import Problem
from tutor.notation import Unreadable, one_equation, read_line
from tutor.statics import joint_body, whole

TINY = 1e-6


class Walk:
    """One walk through one truss; `wrong` lists what was called wrong although it is right."""

    def __init__(self, problem: Problem, rng: Random, count: int) -> None:
        self.problem, self.rng, self.count = problem, rng, count
        self.known: dict[str, str] = {}
        self.wrong: list[str] = []

    def solve(self, names: Sequence[str], abouts: Sequence[Equation]) -> bool:
        """Write the lines of one body and solve them as typed; False where they do not suffice."""
        rows, own = [], []
        for about in abouts:
            line = pieces(self.problem, about, {}, {n: float(v) for n, v in self.known.items()})
            style = Style(figures=self.count + self.rng.choice((0, 1)))
            text = written(self.rng, self.problem, line, style)
            if not judge(self.problem, about, text, known=self.known).right:
                self.wrong.append(f"{about}: {text}")
            reading = one_equation(read_line(text, judge_of(self.problem).names))
            assert not isinstance(reading, Unreadable)
            rows.append(typed_equation(reading))
            own.append(text)
        found = solved(names, rows)
        if found is None:
            return False
        for name, value in found.items():
            text = figures(value, self.count) if abs(value) > TINY else "0"
            if not judge(self.problem, Value(name), text, known=self.known, lines=own).right:
                self.wrong.append(f"{name} = {text}")
            self.known[name] = text
        return True


def solved(names: Sequence[str], rows: Sequence[TypedEquation]) -> dict[str, float] | None:
    """The unknowns from the typed lines, as many lines as unknowns; None where they do not do."""
    import numpy as np

    matrix = np.array(
        [[r.unknowns[n].value if n in r.unknowns else 0.0 for n in names] for r in rows]
    )
    if len(names) == 1 and len(rows) > 1:
        best = int(np.argmax(np.abs(matrix[:, 0])))
        matrix, rows = matrix[[best]], [rows[best]]
    if len(names) != len(rows) or np.linalg.matrix_rank(matrix, tol=TINY) < len(names):
        return None if names else {}
    values = np.linalg.solve(matrix, np.array([-r.total for r in rows]))
    return dict(zip(names, map(float, values), strict=True))


def walk(seed: int, least: int = 5, most: int = 12, count: int = 3) -> list[str]:
    """What is called wrong in the walk of a seed, any order of joints; empty if all is well."""
    rng = Random(seed)
    problem = make_truss(rng.randrange(10**6), rng.randint(least, most))
    it = Walk(problem, rng, count)
    joints = [joint.name for joint in problem.joints]
    body = whole(problem)
    for _ in range(20):
        if it.solve(body.unknowns, (Fx(), Fy(), M(rng.choice(joints)))):
            break
    left, going = list(joints), True
    while left and going:
        going = False
        rng.shuffle(left)
        for joint in left:
            names = [n for n in joint_body(problem, joint).unknowns if n not in it.known]
            if len(names) <= 2 and it.solve(names, (Fx(joint), Fy(joint))):
                left.remove(joint)
                going = True
                break
    return it.wrong
