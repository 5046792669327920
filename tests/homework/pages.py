"""Pages with one belief or one mistake carried through, worked out as a student would, as data.

Made from free bodies and plain geometry by `made`, never from the homework or the judge; kept in
`pages.jsonl`, one page a line; `PYTHONPATH=tests python tests/homework/pages.py` writes them anew. What a teacher
would say stands in each page: the places at which it may have begun, and the kinds of mistake that
name it (our own judgement, as of somebody who marks such pages).
"""

from __future__ import annotations

import json
import math
from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path
from random import Random

from families import plain_problem
from lines import Piece, figures, pieces
from students_work import FAMILIES, Change, Step, _det, do, plan, slip_at, solve_step

from tutor.judge import Equation, Fx, M
from tutor.model import Load, Problem, Support
from tutor.notation import Exact
from tutor.statics import joint_body

FILE = Path(__file__).with_name("pages.jsonl")
Coefficient = Callable[[Equation, Piece], float]


def load(at: str, **pushes: float) -> Load:
    return Load(at, tuple((way, Exact.of(size)) for way, size in pushes.items()))


def slanted(at: str, size: float, degrees: float) -> Load:
    return Load(at, (), Exact.of(size), Exact.of(degrees))


PIN, ROLLER = Support("A", "pin"), Support("B", "roller")
TRUSSES: dict[str, Problem] = {
    "trestle": plain_problem(
        (("A", 0, 0), ("B", 7, 0), ("C", 3, 4)), ("AB", "BC", "AC"), (PIN, ROLLER),
        (load("C", down=14, right=7),),
    ),
    "footway": plain_problem(
        (("A", 0, 0), ("C", 4, 0), ("D", 8, 0), ("B", 12, 0), ("E", 4, 3), ("F", 8, 3)),
        ("AC", "CD", "DB", "AE", "CE", "CF", "DF", "EF", "BF"), (PIN, ROLLER),
        (load("C", down=18), load("D", down=9)),
    ),
    "rafters": plain_problem(
        (("A", 0, 0), ("B", 10, 0), ("C", 4, 3), ("D", 4, 0)),
        ("AD", "DB", "AC", "BC", "CD"), (PIN, ROLLER), (load("C", down=20), load("D", down=5)),
    ),
    "outrigger": plain_problem(
        (("A", 0, 0), ("B", 3, 0), ("C", 0, 4), ("D", 3, 4), ("E", 8, 4)),
        ("AC", "BC", "BD", "CD", "DE", "BE", "AB"), (PIN, ROLLER), (load("E", down=6, right=3),),
    ),
    "steep": plain_problem(
        (("A", 0, 0), ("B", 9, 0), ("C", 2, 5), ("D", 5, 5), ("E", 5, 0)),
        ("AE", "EB", "AC", "CE", "CD", "DE", "BD"), (PIN, ROLLER), (load("C", down=8), load("D", down=16)),
    ),
    "on-a-ramp": plain_problem(
        (("A", 0, 0), ("B", 8, 0), ("C", 3, 3), ("D", 8, 3)),
        ("AB", "AC", "BC", "CD", "BD"), (PIN, Support("B", "roller", Exact.of(120))),
        (load("C", down=10), load("D", down=15)),
    ),
    "crane": plain_problem(
        (("A", 0, 0), ("B", 4, 0), ("C", 4, 5), ("D", 9, 5)),
        ("AB", "AC", "BC", "BD", "CD"), (PIN, ROLLER), (load("D", down=7, right=5),),
    ),
    "wind": plain_problem(
        (("A", 0, 0), ("B", 5, 0), ("C", 0, 4), ("D", 5, 4), ("E", 2.5, 7)),
        ("AC", "BD", "CD", "BC", "CE", "DE", "AB"), (PIN, ROLLER),
        (slanted("C", 10, 20), slanted("E", 8, 300)),
    ),
    "bank": plain_problem(
        (("A", 0, 0), ("B", 15, 0), ("C", 5, 2), ("D", 10, 4), ("E", 5, 0), ("F", 10, 0)),
        ("AE", "EF", "FB", "AC", "CE", "CD", "CF", "DF", "BD"), (PIN, ROLLER),
        (load("E", down=12), load("F", down=21)),
    ),
    "jetty": plain_problem(
        (("A", 0, 0), ("B", 6, 0), ("C", 3, 2), ("D", 9, 2), ("E", 6, 4)),
        ("AB", "AC", "BC", "CE", "BE", "DE", "BD"), (PIN, ROLLER),
        (load("D", down=9), load("C", down=4, left=6)),
    ),
    "lantern": plain_problem(
        (("A", 0, 0), ("B", 10, 0), ("C", 2, 3), ("D", 8, 3), ("E", 5, 6), ("F", 5, 0)),
        ("AF", "FB", "AC", "CF", "CE", "EF", "DE", "DF", "BD"), (PIN, ROLLER),
        (load("C", down=6, right=2), load("E", down=11), load("F", down=3)),
    ),
}  # fmt: skip


UPSIDE_DOWN = ("sign", "sense", "turning", "pull-push", "tension-compression")
"""Where no other outer force acts, turning all members round leaves the very same numbers."""


def inclined(piece: Piece) -> bool:
    return abs(piece.ux) > 1e-9 and abs(piece.uy) > 1e-9


def of_members(run_rise: Callable[[float, float], tuple[float, float]]) -> Coefficient:
    """Inclined members at joints: run and rise instead of their true |cos| and |sin|."""

    def change(about: Equation, piece: Piece) -> float:
        if isinstance(about, M) or not piece.of.startswith("member") or not inclined(piece):
            return piece.coefficient
        run, rise = run_rise(abs(piece.ux), abs(piece.uy))
        sized = run if isinstance(about, Fx) else rise
        return sized * math.copysign(1.0, piece.coefficient)

    return change


def of_kind(kind: str, factor: float) -> Coefficient:
    """At joints, all forces of a kind times a factor."""

    def change(about: Equation, piece: Piece) -> float:
        here = about.joint is not None and piece.of.startswith(kind)
        return piece.coefficient * (factor if here else 1.0)

    return change


def along(name: str, ux: float, uy: float) -> Coefficient:
    """One force in another direction, everywhere."""

    def change(about: Equation, piece: Piece) -> float:
        if piece.force != name:
            return piece.coefficient
        if isinstance(about, M):
            return piece.dx * uy - piece.dy * ux
        return ux if isinstance(about, Fx) else uy

    return change


def distances(about: Equation, piece: Piece) -> float:
    """In moments the distance to the joint for every arm."""
    if not isinstance(about, M) or abs(piece.coefficient) < 1e-9:
        return piece.coefficient
    return math.copysign(math.hypot(piece.dx, piece.dy), piece.coefficient)


def radians(places: int) -> Callable[[float, float], tuple[float, float]]:
    def run_rise(ux: float, uy: float) -> tuple[float, float]:
        angle = round(math.degrees(math.atan2(uy, ux)), places)
        return math.cos(angle), math.sin(angle)

    return run_rise


def beliefs(problem: Problem) -> Iterator[tuple[str, Coefficient, tuple[str, ...]]]:
    """Each belief as it changes coefficients, and what a teacher may call it."""
    yield "sine for cosine", of_members(lambda u, v: (v, u)), ("component", "complement")
    slopes = {
        (round(abs(p.x), 9), round(abs(p.y), 9)) for p in problem.pulls.values() if p.x and p.y
    }
    for u, v in sorted(slopes)[:2] if len(slopes) > 1 else ():
        yield "one slope for all", of_members(lambda *_, u=u, v=v: (u, v)), ("slope",)
    if all(abs(u - 0.8) > 0.01 for u, _ in slopes):
        yield "3-4-5 everywhere", of_members(lambda *_: (0.8, 0.6)), ("slope", "component")
    for places in (1, 2):
        yield "radians", of_members(radians(places)), ("angle-mode",)
    yield "members whole", of_members(lambda *_: (1.0, 1.0)), ("whole-force",)
    yield "tangent for sine", of_members(lambda u, v: (u, v / u)), ("tangent",)
    yield "loads on no joint", of_kind("load", 0.0), ("missing", "lost-load")
    yield "loads up at joints", of_kind("load", -1.0), UPSIDE_DOWN
    yield "reactions turned at joints", of_kind("reaction", -1.0), UPSIDE_DOWN
    yield "long arms", distances, ("arm", "arm-from", "component-in-moment")
    for reaction in problem.reactions:
        if inclined_way(reaction.direction.x, reaction.direction.y):
            up = math.copysign(1.0, reaction.direction.y)
            kinds = ("inclined-support", "whole-force")
            yield "roller upright", along(reaction.name, 0.0, up), kinds
    for each in problem.loads:
        right, up = each.vector
        if each.size is not None:
            name = f"load {each.joint}"
            down = along(name, 0.0, math.copysign(1.0, up))
            yield "load upright", down, ("whole-force", "missing", "component")
            size = math.hypot(right, up)
            other = along(name, math.copysign(up, right) / size, math.copysign(right, up) / size)
            yield "load's components exchanged", other, ("component", "complement")


def inclined_way(x: float, y: float) -> bool:
    return abs(x) > 1e-9 and abs(y) > 1e-9


def worked(
    problem: Problem, steps: list[Step], change: Coefficient, digits: int
) -> tuple[dict[str, float], dict[str, list[str]]] | None:
    """The values as written, and what each step found; None where the lines give nothing."""
    values: dict[str, float] = {}
    found: dict[str, list[str]] = {}
    for step in steps:
        new = _solved(problem, step, values, change)
        if new is None or any(abs(v) > 1e5 for v in new.values()):
            return None
        values.update({name: float(figures(v, digits)) for name, v in new.items()})
        found[step.place] = list(step.finds)
    return values, found


def _solved(
    problem: Problem, step: Step, values: dict[str, float], change: Coefficient
) -> dict[str, float] | None:
    rows, right = [], []
    for about in step.lines:
        line = [replace(p, coefficient=change(about, p)) for p in pieces(problem, about, {}, {})]
        rows.append([sum(p.coefficient for p in line if p.force == n) for n in step.finds])
        right.append(
            -sum(
                p.coefficient * (values[p.force] if p.size is None else p.size)
                for p in line
                if p.force not in step.finds
            )
        )
    return _cramer(rows, right, step.finds)


def _cramer(
    rows: list[list[float]], right: list[float], names: tuple[str, ...]
) -> dict[str, float] | None:
    det = _det(rows)
    if abs(det) < 0.03 * math.prod(max(map(abs, row)) or 1.0 for row in rows) or det == 0.0:
        return None
    found = {}
    for k, name in enumerate(names):
        with_right = [[*r[:k], b, *r[k + 1 :]] for r, b in zip(rows, right, strict=True)]
        found[name] = _det(with_right) / det
    return found


def made() -> Iterator[dict[str, object]]:
    """Every page, from fixed seeds."""
    for number, (truss, problem) in enumerate(TRUSSES.items()):
        rng = Random(number)
        for belief, change, kinds in beliefs(problem):
            page = page_of_belief(rng, truss, belief, change, kinds)
            if page is not None:
                yield page
        for belief, factor, kinds in (
            ("newtons", 1000.0, ("unit",)),
            ("pounds", 1 / 0.00444822, ("unit",)),
            ("reversed", -1.0, ("tension-compression", "sign", "pull-push")),
        ):
            yield _scaled(rng, truss, belief, factor, kinds)
        yield from _by_hand(rng, truss)
        for _ in range(4):
            slip = _of_slip(rng, truss)
            if slip is not None:
                yield slip


def right_walk(rng: Random, problem: Problem, digits: int) -> tuple[list[Step], dict[str, float]]:
    while True:
        steps = plan(rng, problem)
        if steps is None or steps[0].place != "whole":
            continue
        done = do(problem, steps, digits, {})
        if done is not None:
            return steps, done.values


def _page(truss, belief, values, digits, places, kinds):  # type: ignore[no-untyped-def]
    problem = TRUSSES[truss]
    return {
        "truss": truss,
        "belief": belief,
        "places": sorted(places),
        "kinds": list(kinds),
        "reactions": {r.name: figures(values[r.name], digits) for r in problem.reactions},
        "forces": {m.name: figures(values[m.name], digits) for m in problem.members},
    }


def page_of_belief(rng, truss, belief, change, kinds):  # type: ignore[no-untyped-def]
    problem, digits = TRUSSES[truss], rng.choice((3, 4))
    steps, right = right_walk(rng, problem, digits)
    both = worked(problem, steps, change, digits)
    if both is None:
        return None
    values, found = both
    wrong = {n for n in values if abs(values[n] - right[n]) > 0.02 * max(map(abs, right.values()))}
    if len(wrong) < 2:
        return None
    return _page(truss, belief, values, digits, _began(problem, found, wrong), kinds)


def _began(problem: Problem, found: dict[str, list[str]], wrong: set[str]) -> set[str]:
    """The steps that found something wrong from right values alone."""
    began = set()
    for place, names in found.items():
        if place == "whole":
            if wrong & set(names):
                return {"whole"}
            continue
        used = set(joint_body(problem, place).unknowns) - set(names)
        if wrong & set(names) and not wrong & used:
            began.add(place)
    return began


def _scaled(rng, truss, belief, factor, kinds):  # type: ignore[no-untyped-def]
    problem, digits = TRUSSES[truss], rng.choice((3, 4))
    _, right = right_walk(rng, problem, digits)
    values = {n: float(figures(factor * v, digits)) for n, v in right.items()}
    return _page(truss, belief, values, digits, {"whole"}, kinds)


def _by_hand(rng, truss):  # type: ignore[no-untyped-def]
    """Half the load to each support; a pin taken as a roller: reactions set, joints worked from them."""
    problem, digits = TRUSSES[truss], rng.choice((3, 4))
    steps, right = right_walk(rng, problem, digits)
    down = -sum(each.vector[1] for each in problem.loads)
    level = -sum(each.vector[0] for each in problem.loads)
    if set(problem.reaction) != {"A_x", "A_y", "B_y"}:
        return
    for belief, start, kinds in (
        ("half to each", {"A_x": level, "A_y": down / 2, "B_y": down / 2}, ("symmetry",)),
        ("pin as roller", {"A_x": 0.0, "A_y": right["A_y"], "B_y": right["B_y"]}, ("missing",)),
    ):
        if all(abs(start[n] - right[n]) < 0.02 * down for n in start):
            continue
        values = {n: float(figures(v, digits)) for n, v in start.items()}
        for step in steps[1:]:
            new = solve_step(problem, step, values)
            if new is None:
                break
            values.update({n: float(figures(v, digits)) for n, v in new.items()})
        else:
            yield _page(truss, belief, values, digits, {"whole"}, kinds)


def _of_slip(rng, truss):  # type: ignore[no-untyped-def]
    """One slip at one force of one line, and everything after it worked from what came out."""
    problem, digits = TRUSSES[truss], rng.choice((3, 4))
    for _ in range(50):
        steps, _values = right_walk(rng, problem, digits)
        k = rng.randrange(len(steps))
        before = do(problem, steps[:k], digits, {})
        both = slip_at(rng, problem, steps[k], before.values if before else {})
        if both is None:
            continue
        slip, change = both
        changed: dict[str, Change] = {steps[k].place: change}
        done = do(problem, steps, digits, changed)
        if done is None or any(abs(v) > 1e5 for v in done.values.values()):
            continue
        kinds = sorted(FAMILIES[slip.code])
        page = _page(
            truss, f"{slip.code} of {slip.force}", done.values, digits, {slip.place}, kinds
        )
        return page
    return None


def pages() -> list[dict[str, object]]:
    """The pages as they are kept."""
    return [json.loads(line) for line in FILE.read_text("utf-8").splitlines()]


if __name__ == "__main__":
    FILE.write_text("".join(json.dumps(page) + "\n" for page in made()), "utf-8")
