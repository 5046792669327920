"""Wrong lines with a known slip, made from the free body alone and never from the judge.

`slips(problem, about, line, ...)` lists every single slip that students make in one line: its code,
the force it concerns, and the line as it then stands. Two slips that make the same line are both
right answers to what is wrong with it.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from lines import Piece, pieces

from tutor.judge import Along, Equation, Fx, Fy, M
from tutor.model import Problem

NEAR = 0.03


@dataclass(frozen=True)
class Slipped:
    """A wrong line: what was done to it, to which force, and the pieces it is written from."""

    code: str
    force: str | None
    line: tuple[Piece, ...]


def slips(
    problem: Problem,
    about: Equation,
    line: Sequence[Piece],
    senses: Mapping[str, str],
    every: bool = False,
) -> list[Slipped]:
    """Every single slip in `line` that changes what it says.

    With `every`, those too that often look like another slip: the number of another load.
    """
    found: list[Slipped] = []
    for i, piece in enumerate(line):
        for code, coefficient in _changes(problem, about, piece, line):
            if abs(coefficient - piece.coefficient) > NEAR * max(
                abs(piece.coefficient), abs(coefficient)
            ):
                changed = (*line[:i], replace(piece, coefficient=coefficient), *line[i + 1 :])
                found.append(Slipped(_named(code, piece, senses, line), piece.force, changed))
        if piece.coefficient != 0.0:
            found.append(Slipped("double", piece.force, (*line, piece)))
        for code, size in _sizes(piece, line, every):
            changed = (*line[:i], replace(piece, size=size), *line[i + 1 :])
            found.append(Slipped(code, piece.force, changed))
    found += _strays(problem, about, line, senses)
    members = [p for p in line if p.force in problem.member and p.coefficient != 0]
    others = [p for p in line if p.force not in problem.member and p.value != 0]
    if len(members) > 1 and others and about.joint is not None:
        turned = tuple(
            replace(p, coefficient=-p.coefficient) if p.force in problem.member else p for p in line
        )
        found.append(Slipped("pull-push", None, turned))
    return [s for s in found if not _same(s.line, line)]


def _named(code: str, piece: Piece, senses: Mapping[str, str], line: Sequence[Piece]) -> str:
    beside = [p for p in line if p.of == piece.of and p.source is not piece.source and p.value]
    if code == "missing" and piece.force.startswith("load") and beside:
        return "lost-load"
    if code in ("sign", "turning") and piece.size is not None and piece.size < 0:
        return "minus"
    if code in ("sign", "turning") and senses.get(piece.force) in ("left", "down", "C", "against"):
        turned_twice = code == "sign" and piece.symbol is None and piece.coefficient > 0
        return "minus" if turned_twice else "sense"
    return code


def _changes(
    problem: Problem, about: Equation, piece: Piece, line: Sequence[Piece]
) -> Iterator[tuple[str, float]]:
    """(code, wrong coefficient) for one piece."""
    c = piece.coefficient
    if c == 0.0:
        if not isinstance(about, M):
            yield "extra", 1.0
            yield "extra", -1.0
        return
    slanted = piece.ux != 0.0 and piece.uy != 0.0
    yield ("turning" if isinstance(about, M) else "sign"), -c
    yield "missing", 0.0
    if isinstance(about, M):
        yield from _moment_changes(problem, about, piece, slanted)
        return
    across = math.sqrt(max(0.0, 1 - c * c))
    if across > 0.01:
        yield "component", math.copysign(across, c)
    if abs(c) < 0.99:
        upright = direction_of(about) % 90.0 == 0.0
        inclined = piece.force.startswith("R_") and upright
        yield ("inclined-support" if inclined else "whole-force"), math.copysign(1.0, c)
        if isinstance(about, Fx | Fy):
            angle = math.degrees(math.acos(abs(c)))
            yield "angle-mode", math.copysign(1.0, c) * math.cos(round(angle, 2))
    if isinstance(about, Fx | Fy) and piece.force in problem.member and slanted:
        for other in line:
            if other.force in problem.member and other.ux != 0.0 and other.uy != 0.0:
                part = abs(other.ux if isinstance(about, Fx) else other.uy)
                yield "slope", math.copysign(part, c)


def _moment_changes(
    problem: Problem, about: M, piece: Piece, slanted: bool
) -> Iterator[tuple[str, float]]:
    c, dx, dy = piece.coefficient, piece.dx, piece.dy
    yield "no-arm", math.copysign(1.0, c)
    yield "arm-unit", c * 1000
    if slanted:
        if piece.force.startswith("R_"):
            if dx != 0.0:
                yield "inclined-support", dx * math.copysign(1.0, piece.uy)
        else:
            for arm in (dx, dy):
                if arm != 0.0:
                    yield "whole-force", math.copysign(arm, c)
            along = isinstance(about.at, str) and problem.between(about.at, piece.of.split()[-1])
            yield ("arm-from" if along else "arm"), math.copysign(math.hypot(dx, dy), c)
        return
    parallel = dy if piece.ux == 0.0 else dx
    if parallel != 0.0:
        yield "arm", math.copysign(parallel, c)


def _sizes(piece: Piece, line: Sequence[Piece], every: bool) -> Iterator[tuple[str, float]]:
    """(code, wrong size) for a piece typed as a number."""
    if piece.size is None or piece.coefficient == 0.0 or piece.size == 0.0:
        return
    load = piece.force.startswith("load")
    if load:
        yield "magnitude", piece.size * 1.37
        yield "unit", piece.size * 1000
        for other in line if every else ():
            if other.force.startswith("load") and other.size not in (None, piece.size):
                yield "magnitude", other.size
    for other in line:
        if load or other.size is None or other.force.startswith("load") or other is piece:
            continue
        if other.size != 0 and abs(abs(other.size) - abs(piece.size)) > NEAR * abs(piece.size):
            yield "carried", math.copysign(other.size, piece.size)


def _strays(
    problem: Problem, about: Equation, line: Sequence[Piece], senses: Mapping[str, str]
) -> Iterator[Slipped]:
    """A load or reaction of another joint in a joint's line."""
    if about.joint is None:
        return
    for member in problem.meeting[about.joint]:
        far = member.other(about.joint)
        elsewhere: Equation = replace(about, joint=far)
        for piece in pieces(problem, elsewhere, senses, {}):
            if piece.coefficient == 0.0:
                continue
            if piece.force.startswith("load"):
                yield Slipped("stray-load", piece.force, (*line, piece))
            elif piece.force in problem.reaction:
                yield Slipped("stray-reaction", piece.force, (*line, piece))


def form(line: Sequence[Piece]) -> dict[str | None, float]:
    """The linear form of a line: coefficients by unknown, the sum of numbers under None."""
    sums: dict[str | None, float] = {}
    for piece in line:
        sums[piece.symbol] = sums.get(piece.symbol, 0.0) + piece.value
    return {name: value for name, value in sums.items() if abs(value) > 1e-9}


def _same(one: Sequence[Piece], other: Sequence[Piece]) -> bool:
    return same_form(form(one), form(other), 0.025)


def same_form(
    one: Mapping[str | None, float], other: Mapping[str | None, float], share: float
) -> bool:
    """Whether two lines say the same, up to scale and a share of each coefficient."""
    if one.keys() != other.keys() or not one:
        return one.keys() == other.keys()
    for anchor in one:
        scale = other[anchor] / one[anchor]
        if all(abs(other[n] - scale * v) <= share * abs(other[n]) for n, v in one.items()):
            return True
    return False


def direction_of(about: Equation) -> float:
    """The direction of a sum of forces, in degrees."""
    match about:
        case Fx():
            return 0.0
        case Fy():
            return 90.0
        case Along(degrees=degrees):
            return degrees
    raise ValueError("a moment has no direction")
