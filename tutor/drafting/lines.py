"""Which typed lines draw a truss again? What is kept of a drawing that may still lack anything."""

from __future__ import annotations

from tutor.drafting.entries import EMPTY
from tutor.drafting.names import literal
from tutor.model import Load, Problem, Spread, Support
from tutor.notation import Exact
from tutor.text import one_line


def lines_of(problem: Problem) -> tuple[str, ...]:
    """Lines that, typed on an empty sheet, draw `problem`.

    Story, topics, level, id and tolerance are not drawn.
    """
    lines = []
    if title := one_line(problem.title):
        lines.append(f"title {title}")
    if (problem.force, problem.length) != (EMPTY.force, EMPTY.length):
        lines.append(f"{problem.force} {problem.length}")
    lines += [
        f"{literal(joint.name)} {_number(joint.x)} {_number(joint.y)}" for joint in problem.joints
    ]
    lines += [f"{member.start}-{member.end}" for member in problem.members]
    lines += [_support(support) for support in problem.supports]
    lines += [_load(load) for load in problem.given_loads]
    lines += [_spread(problem, spread) for spread in problem.spreads]
    return tuple(lines)


def _spread(problem: Problem, spread: Spread) -> str:
    ends = [problem.member[name] for name in spread.on if name in problem.member]
    sizes = " ".join(f"{_number(size)} {way}" for way, size in spread.pushes)
    end = f"{' in all' if spread.total else ''}{' by span' if spread.per == 'span' else ''}"
    return f"spread {sizes}{end} on {' '.join(f'{m.start}-{m.end}' for m in ends)}"


def _number(number: Exact) -> str:
    return number.text.replace(" ", "")


def _support(support: Support) -> str:
    words = [literal(support.joint), support.kind]
    if support.angle is not None:
        words.append(_number(support.angle))
    if support.anchor is not None:
        words += [_number(part) for part in support.anchor]
    return " ".join(words)


def _load(load: Load) -> str:
    if load.size is not None and load.angle is not None:
        return f"{literal(load.joint)} {_number(load.size)} at {_number(load.angle)}"
    return " ".join([literal(load.joint), *(f"{_number(size)} {way}" for way, size in load.pushes)])
