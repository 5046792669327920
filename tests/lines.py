"""Lines as students write them: true ones in random spelling, and wrong ones with a known slip.

Everything is made from the free body alone (`tutor.statics.body`), never from the judge, so that the
judge is held against something it did not make itself.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from random import Random

from tutor.judge import Along, Equation, Fx, Fy, M
from tutor.judge.about import equation_of
from tutor.model import Problem
from tutor.statics.body import Equilibrium, Moment


@dataclass(frozen=True)
class Piece:
    """One force in a line: what stands beside it, under the student's sense.

    `coefficient` multiplies the unknown `symbol`; with no symbol, `size` is multiplied instead.
    `parts` are the two products a moment may be written as; `spread` is the sum of their sizes.
    """

    force: str
    coefficient: float
    symbol: str | None
    size: float | None
    spread: float
    ux: float
    uy: float
    dx: float
    dy: float
    of: str = ""
    source: object = None

    @property
    def value(self) -> float:
        return self.coefficient * (1.0 if self.size is None else self.size)


def pieces(
    problem: Problem,
    about: Equation,
    senses: Mapping[str, str],
    substituted: Mapping[str, float],
) -> list[Piece]:
    """The true line as pieces; `substituted` gives own values (own sense) typed as numbers."""
    equation: Equilibrium = equation_of(problem, about)
    total = equation.sum
    found = []
    for term in equation.terms:
        force = term.force
        sign = -1.0 if senses.get(force.name) in ("left", "down", "C", "against") else 1.0
        size = force.size
        coefficient = term.coefficient / (size or 1.0) * (sign if size is None else 1.0)
        symbol: str | None = force.name if size is None else None
        if force.name in substituted and size is None:
            symbol, size = None, substituted[force.name]
        dx = dy = 0.0
        if isinstance(total, Moment):
            dx, dy = force.at[0] - total.point[0], force.at[1] - total.point[1]
        spread = term.spread / (force.size or 1.0) * (1.0 if size is None else abs(size))
        ux, uy = force.x * sign, force.y * sign
        of = f"{force.kind} {force.joint}"
        found.append(
            Piece(force.name, coefficient, symbol, size, spread, ux, uy, dx, dy, of, force.source)
        )
    return found


def spelled(rng: Random, problem: Problem, name: str) -> str:
    """One of the accepted spellings of an unknown."""
    if name in problem.member:
        member = problem.member[name]
        one, other = rng.sample((member.start, member.end), 2)
        if len(one) == len(other) == 1:
            pair = f"{one}{other}"
            forms = [
                f"F_{pair}",
                f"F_{{{pair}}}",
                f"S_{pair}",
                f"N_{pair}",
                f"T_{pair}",
                pair,
                f"F{pair}",
            ]
            form = rng.choice(forms)
            reads_as_reaction = any(r.name.replace("_", "") == pair for r in problem.reactions)
            return f"F_{pair}" if form == pair and reads_as_reaction else form
        return rng.choice((f"F_{{{one}-{other}}}", f"{one}-{other}", f"F_{one}{other}"))
    joint, axis = name.rsplit("_", 1)
    return rng.choice((name, f"{joint}_{{{axis}}}"))


def figures(value: float, count: int) -> str:
    """A number to so many significant figures, never in powers of ten."""
    if abs(value) < 1e-12:
        return "0"
    places = max(0, count - 1 - math.floor(math.log10(abs(value))))
    return f"{value:.{places}f}"


def plain(rng: Random, value: float, count: int = 4, copied: int = 0) -> str:
    """A positive number: an integer or short fraction where it is one, else a decimal.

    One of no more than `copied` figures is written as it stands, however few are kept of others.
    """
    near = Fraction(value).limit_denominator(20)
    if abs(float(near) - value) <= 1e-9 * max(1.0, value):
        if near.denominator == 1:
            return str(near.numerator)
        if rng.random() < 0.7:
            return f"{near.numerator}/{near.denominator}"
    short = copied > count and math.isclose(float(figures(value, copied)), value, rel_tol=1e-9)
    return figures(value, copied if short else count)


def factor(rng: Random, piece: Piece, style: Style) -> str:
    """The size of a coefficient, in one of the ways students write it."""
    size = abs(piece.coefficient)
    moment = piece.dx != 0.0 or piece.dy != 0.0
    if style.trig and not moment and 0.0 < size < 1.0 and rng.random() < 0.4:
        angle = math.degrees(math.acos(size))
        degrees = figures(angle, 5)
        sine = figures(90.0 - angle, 5)
        if angle > 3.0 and 90.0 - angle > 3.0:
            return rng.choice(
                (f"cos {degrees}°", f"cos({degrees})", f"sin({sine}°)", f"sin {sine}")
            )
    return plain(rng, size, style.figures, style.copied)


@dataclass(frozen=True)
class Style:
    """How a line is put to paper.

    `figures` are kept of a number that was worked out; one of at most `copied` figures is copied.
    """

    figures: int = 4
    scale: float = 1.0
    shuffle: bool = True
    move: bool = True
    units: bool = False
    trig: bool = True
    copied: int = 0


def written(rng: Random, problem: Problem, line: Sequence[Piece], style: Style) -> str:
    """The line as text: every piece with a value other than zero is one term."""
    left: list[tuple[bool, str]] = []
    right: list[tuple[bool, str]] = []
    chosen = [p for p in line if p.coefficient != 0.0 and p.size != 0.0]
    if style.shuffle:
        chosen = rng.sample(chosen, len(chosen))
    for piece in chosen:
        text = _term(rng, problem, piece, style)
        minus = (piece.value * style.scale) < 0
        if style.move and rng.random() < 0.4:
            right.append((not minus, text))
        else:
            left.append((minus, text))
    return f"{_sum(left)} {rng.choice(('=', '= '))}{_sum(right)}"


def _term(rng: Random, problem: Problem, piece: Piece, style: Style) -> str:
    beside = (
        piece if style.scale == 1.0 else replace(piece, coefficient=piece.coefficient * style.scale)
    )
    number = factor(rng, beside, style)
    if piece.symbol is not None:
        name = spelled(rng, problem, piece.symbol)
        if number == "1":
            return name
        gap = rng.choice((" ", "*", "·"))
        after = (f"{name}*{number}", f"{name}({number})")
        return rng.choice((f"{number}{gap}{name}", *after))
    assert piece.size is not None
    size = plain(rng, abs(piece.size), style.figures, style.copied)
    if style.units:
        size += f" {problem.force}"
    if number == "1":
        return size
    return rng.choice(
        (
            f"{size}*{number}",
            f"{number}*{size}" if not style.units else f"{size}*{number}",
            f"{size}({number})",
        )
    )


def _sum(terms: Sequence[tuple[bool, str]]) -> str:
    text = ""
    for minus, words in terms:
        if not text:
            text = f"-{words}" if minus else words
        else:
            text += f" - {words}" if minus else f" + {words}"
    return text or "0"


def abouts(problem: Problem) -> list[Equation]:
    """Equations worth asking for: of the whole truss and of every joint."""
    found: list[Equation] = [Fx(), Fy(), *(M(j.name) for j in problem.joints)]
    for joint in problem.joints:
        found += [Fx(joint.name), Fy(joint.name)]
        here = joint.at
        for member in problem.meeting[joint.name][:1]:
            there = problem.joint[member.other(joint.name)].at
            angle = math.degrees(math.atan2(there[1] - here[1], there[0] - here[0]))
            found.append(Along(round(angle, 3), joint.name))
    return found


def random_senses(rng: Random, problem: Problem) -> dict[str, str]:
    """A sense for about half the unknowns, either way."""
    senses = {}
    for member in problem.members:
        if rng.random() < 0.3:
            senses[member.name] = rng.choice(("T", "C"))
    for reaction in problem.reactions:
        if rng.random() < 0.5:
            if reaction.name == f"R_{reaction.joint}":
                options = ("along", "against")
            else:
                options = ("right", "left") if reaction.direction.x else ("up", "down")
            senses[reaction.name] = rng.choice(options)
    return senses
