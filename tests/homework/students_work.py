"""Homeworks as students write them: a walk over any truss in any order, right or with one slip.

Everything is made from free bodies (`tutor.statics.body`) and plain geometry, never from the judge,
so that the review is held against something it did not make itself. A step solves one body for its
unknowns from lines written as a student would; the values are rounded to so many figures and
carried forward as they stand on the paper.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from random import Random

from lines import Piece, Style, figures, pieces, written
from strategies import fink, howe, make_truss, pratt, warren

from tutor.judge import Equation, Fx, Fy, M, Mistake
from tutor.model import Problem
from tutor.statics import joint_body, reactions_from_whole

KINDS = ("sign", "missing", "component", "whole-force", "extra", "arm", "no-arm", "unit")


@dataclass(frozen=True)
class Slip:
    """One wrong line: the body, the line, what kind of mistake and at which force."""

    place: str
    about: Equation
    code: str
    force: str


Change = tuple[Equation, int, float]
"""A line, the number of the force in it, and the coefficient that stands there instead."""


@dataclass(frozen=True)
class Step:
    """One body solved for `finds` by `lines`."""

    place: str
    finds: tuple[str, ...]
    lines: tuple[Equation, ...]


@dataclass
class Homework:
    """What one student did: values as written, the joints in order, the lines, and the slips."""

    problem: Problem
    order: list[str] = field(default_factory=list)
    values: dict[str, float] = field(default_factory=dict)
    solved: dict[str, list[str]] = field(default_factory=dict)
    slips: list[Slip] = field(default_factory=list)
    digits: int = 4
    steps: list[Step] = field(default_factory=list)
    changes: dict[str, Change] = field(default_factory=dict)

    def work(self, **more: object) -> dict[str, object]:
        """The homework as `review` takes it."""
        return {
            "reactions": {
                r.name: figures(self.values[r.name], self.digits)
                for r in self.problem.reactions
                if r.name in self.values
            },
            "forces": {
                m.name: self.force(m.name) for m in self.problem.members if m.name in self.values
            },
            **more,
        }

    def written_lines(self, rng: Random) -> list[tuple[Equation, str]]:
        """Every line as this student writes it, with the values found before put in."""
        known: dict[str, float] = {}
        found = []
        for step in self.steps:
            for about in step.lines:
                line = pieces(self.problem, about, {}, known)
                change = self.changes.get(step.place)
                if change is not None and change[0] == about:
                    line[change[1]] = replace(line[change[1]], coefficient=change[2])
                style = Style(figures=5, units=False)
                found.append((about, written(rng, self.problem, line, style)))
            known.update({name: self.values[name] for name in step.finds})
        return found

    def mended(self, place: str) -> Homework | None:
        """The same student once the slip at one place is put right: all that follows done again."""
        rest = {name: change for name, change in self.changes.items() if name != place}
        return do(self.problem, self.steps, self.digits, rest)

    def force(self, name: str) -> str:
        value = self.values[name]
        text = figures(abs(value), self.digits)
        return text if float(text) == 0 else f"{text} {'T' if value > 0 else 'C'}"


def any_problem(rng: Random, most: int = 9) -> Problem:
    """A random truss, now and then one of the classic families."""
    kind = rng.random()
    if kind < 0.08:
        return rng.choice((pratt, howe))(rng.choice((4, 6)), 3, rng.choice((2, 4)), 12)
    if kind < 0.12:
        return warren(rng.choice((3, 4)), 4, 3, 10)
    if kind < 0.14:
        return fink(4, 6, 12, 10)
    return make_truss(rng.randrange(10**6), rng.randint(4, most), wall=kind > 0.92)


def plan(rng: Random, problem: Problem) -> list[Step] | None:
    """The steps of a walk in a random possible order, or None where this student gets stuck."""
    known: set[str] = set()
    steps: list[Step] = []
    whole = reactions_from_whole(problem)
    if len(whole) == len(problem.reactions) == 3 and rng.random() < 0.9:
        steps.append(Step("whole", whole, _whole_lines(rng, problem)))
        known.update(whole)
    left = [joint.name for joint in problem.joints]
    while len(known) < len(problem.unknowns):
        ready = [(j, _unknown(problem, j, known)) for j in left]
        ready = [(j, names) for j, names in ready if _solvable(problem, j, names)]
        if not ready:
            if steps:
                return None
            if len(whole) != 3 or len(problem.reactions) != 3:
                return None
            steps.append(Step("whole", whole, _whole_lines(rng, problem)))
            known.update(whole)
            continue
        joint, names = rng.choice(ready)
        steps.append(Step(joint, names, _joint_lines(rng, problem, joint, names)))
        known.update(names)
        left.remove(joint)
    return steps


def _unknown(problem: Problem, joint: str, known: set[str]) -> tuple[str, ...]:
    return tuple(n for n in joint_body(problem, joint).unknowns if n not in known)


def _solvable(problem: Problem, joint: str, names: tuple[str, ...]) -> bool:
    if not 1 <= len(names) <= 2:
        return False
    forces = [f for f in joint_body(problem, joint).forces if f.name in names]
    return len(names) == 1 or abs(forces[0].x * forces[1].y - forces[0].y * forces[1].x) > 0.05


def _whole_lines(rng: Random, problem: Problem) -> tuple[Equation, ...]:
    """A moment about a support and two sums; all three reactions come from these together."""
    for _ in range(20):
        point = rng.choice([s.joint for s in problem.supports])
        lines: tuple[Equation, ...] = (M(point), Fx(), Fy())
        if rng.random() < 0.3:
            other = rng.choice([j.name for j in problem.joints if j.name != point])
            lines = (M(point), M(other), rng.choice((Fx(), Fy())))
        names = [r.name for r in problem.reactions]
        matrix = [[_at(problem, about, n) for n in names] for about in lines]
        scale = math.prod(max(map(abs, row)) or 1.0 for row in matrix)
        if abs(_det(matrix)) > 0.05 * scale:
            return lines
    return (M(problem.supports[0].joint), Fx(), Fy())


def _at(problem: Problem, about: Equation, name: str) -> float:
    return math.fsum(p.coefficient for p in pieces(problem, about, {}, {}) if p.force == name)


def _joint_lines(
    rng: Random, problem: Problem, joint: str, names: tuple[str, ...]
) -> tuple[Equation, ...]:
    if len(names) == 2:
        return Fx(joint), Fy(joint)
    sizes = {about: abs(_at(problem, about, names[0])) for about in (Fx(joint), Fy(joint))}
    good = [about for about, size in sizes.items() if size > 0.3]
    return (rng.choice(good),)


def solve_step(
    problem: Problem,
    step: Step,
    values: dict[str, float],
    change: Change | None = None,
) -> dict[str, float] | None:
    """What the lines of a step give, with one coefficient changed; None where they give nothing."""
    rows, right = [], []
    for about in step.lines:
        line = pieces(problem, about, {}, {})
        if change is not None and change[0] == about:
            line[change[1]] = replace(line[change[1]], coefficient=change[2])
        rows.append([math.fsum(p.coefficient for p in line if p.force == n) for n in step.finds])
        known = [p for p in line if p.force not in step.finds]
        right.append(
            -math.fsum(
                p.coefficient * (values[p.force] if p.size is None else p.size) for p in known
            )
        )
    det = _det(rows)
    if abs(det) < 0.04 * math.prod(max(map(abs, row)) or 1.0 for row in rows) or det == 0.0:
        return None
    found = {}
    for k, name in enumerate(step.finds):
        with_right = [[*row[:k], r, *row[k + 1 :]] for row, r in zip(rows, right, strict=True)]
        found[name] = _det(with_right) / det
    return found


def _det(m: Sequence[Sequence[float]]) -> float:
    if len(m) == 1:
        return m[0][0]
    return math.fsum(
        (-1) ** j * m[0][j] * _det([[*row[:j], *row[j + 1 :]] for row in m[1:]])
        for j in range(len(m))
    )


def wrong_coefficients(problem: Problem, about: Equation, piece: Piece) -> dict[str, float]:
    """Each kind of slip at one force, as the coefficient it leaves (per unit of the force)."""
    c = piece.coefficient
    found: dict[str, float] = {}
    moment = isinstance(about, M)
    if c == 0.0:
        if moment:
            reach = math.hypot(piece.dx, piece.dy)
            if reach:
                found["extra"] = reach
        else:
            found["extra"] = 1.0
        return found
    found["sign"] = -c
    found["missing"] = 0.0
    slanted = abs(piece.ux) > 1e-9 and abs(piece.uy) > 1e-9
    if slanted and not moment:
        other = math.sqrt(max(0.0, 1.0 - c * c))
        if abs(other - abs(c)) > 0.02:
            found["component"] = math.copysign(other, c)
        found["whole-force"] = math.copysign(1.0, c)
    if moment:
        found["no-arm"] = math.copysign(1.0, c)
        if not slanted:
            arm = math.hypot(piece.dx, piece.dy)
            if abs(arm - abs(c)) > 0.02 * arm:
                found["arm"] = math.copysign(arm, c)
    if piece.symbol is None and not moment:
        found["unit"] = c * 1000.0
    return found


def do(
    problem: Problem,
    steps: Sequence[Step],
    digits: int,
    slips: dict[str, Change],
) -> Homework | None:
    """The homework written down: values rounded and carried, with a changed line at some bodies."""
    done = Homework(problem, digits=digits, steps=list(steps), changes=dict(slips))
    for step in steps:
        found = solve_step(problem, step, done.values, slips.get(step.place))
        if found is None:
            return None
        done.values.update({n: float(figures(v, digits)) for n, v in found.items()})
        done.order.append(step.place)
        done.solved[step.place] = list(step.finds)
    return done


def matters(problem: Problem, step: Step, values: dict[str, float], change: Change) -> bool:
    """Whether a changed line moves a value by more than rounding could, given those before."""
    found = solve_step(problem, step, values, change)
    right = solve_step(problem, step, values)
    if found is None or right is None:
        return False
    line = pieces(problem, change[0], {}, {})
    here = [abs(values[p.force]) for p in line if p.force in values and p.coefficient]
    largest = max((*here, *(p.size or 0.0 for p in line), *map(abs, right.values())))
    moved = max(abs(found[n] - right[n]) - 0.04 * abs(right[n]) for n in step.finds)
    everywhere = max(map(abs, values.values()), default=0.0)
    return moved > 0.02 * max(largest, everywhere)


def slip_at(
    rng: Random, problem: Problem, step: Step, values: dict[str, float]
) -> tuple[Slip, Change] | None:
    """A random slip in one line of a step, where it matters."""
    about = rng.choice(step.lines)
    line = pieces(problem, about, {}, {})
    i = rng.randrange(len(line))
    options = wrong_coefficients(problem, about, line[i])
    if not options:
        return None
    code = rng.choice(sorted(options))
    change = (about, i, options[code])
    if not matters(problem, step, values, change):
        return None
    return Slip(step.place, about, code, line[i].force), change


FAMILIES = {
    "sign": {"sign", "turning", "minus", "sense", "tension-compression"},
    "missing": {"missing", "lost-load"},
    "component": {"component", "complement", "slope"},
    "whole-force": {"whole-force", "inclined-support"},
    "extra": {"extra", "stray-load", "stray-reaction"},
    "arm": {"arm", "arm-from"},
    "no-arm": {"no-arm", "arm"},
    "unit": {"unit"},
}
"""What the catalogue may call each kind of slip, being the same wrong coefficient."""


def names_it(done: Homework, slip: Slip, mistake: Mistake) -> bool:
    """Whether a named mistake is the slip, or one that leaves the very same line.

    Two slips in one line that change its sum by the same amount (the sign of either of two equal
    terms) cannot be told apart by anybody who does not see the line.
    """
    if mistake.force == slip.force and mistake.code in FAMILIES[slip.code]:
        return True
    line = pieces(done.problem, slip.about, {}, {})
    made = done.changes[slip.place]
    piece = line[made[1]]
    change = (made[2] - piece.coefficient) * _size(done, piece)
    slack = 0.02 * abs(change) + 1e-9
    for other in line:
        if other.force != mistake.force:
            continue
        again = other.coefficient * _size(done, other)
        if mistake.code == "double" and abs(again - change) <= slack:
            return True
        for code, wrong in wrong_coefficients(done.problem, slip.about, other).items():
            both = (wrong, -wrong) if code == "extra" else (wrong,)
            for coefficient in both:
                by = (coefficient - other.coefficient) * _size(done, other)
                if mistake.code in FAMILIES[code] and abs(by - change) <= slack:
                    return True
    return False


def _size(done: Homework, piece: Piece) -> float:
    return done.values[piece.force] if piece.size is None else piece.size


def homework(
    seed: int, mistakes: int = 1, digits: int | None = None, most: int = 9
) -> tuple[Homework, Homework] | None:
    """(as handed in, the same without the slips), or None where this seed comes to nothing."""
    rng = Random(seed)
    problem = any_problem(rng, most)
    digits = digits or rng.choice((3, 4))
    steps = plan(rng, problem)
    if steps is None:
        return None
    right = do(problem, steps, digits, {})
    if right is None:
        return None
    for _ in range(60):
        slips: dict[str, Change] = {}
        made: list[Slip] = []
        chosen = rng.sample(range(len(steps)), min(mistakes, len(steps)))
        for k in sorted(chosen):
            so_far = do(problem, steps, digits, slips)
            if so_far is None:
                break
            slip = slip_at(rng, problem, steps[k], so_far.values)
            if slip is None or not matters(problem, steps[k], right.values, slip[1]):
                break
            made.append(slip[0])
            slips[steps[k].place] = slip[1]
        if len(made) == mistakes and (wrong := do(problem, steps, digits, slips)) is not None:
            wrong.slips = made
            if all(abs(v) < 1e6 for v in wrong.values.values()):
                return wrong, right
    return None
