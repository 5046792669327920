"""Corpora of right and wrong lines, each made from a seed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from random import Random
from typing import NamedTuple

from lines import Piece, Style, abouts, figures, pieces, random_senses, written
from slips import Slipped, form, same_form, slips
from strategies import make_truss

from tutor.judge import Equation, M
from tutor.model import Problem
from tutor.statics import solve

UNITS = ("unit", "arm-unit")
Named = frozenset[tuple[str, str | None]]


@dataclass(frozen=True)
class Wrong:
    """A wrong line as typed, and the slips it was made with.

    `line` is the true line it was made from, `slipped` the wrong one, both in pieces.
    """

    problem: Problem
    about: Equation
    senses: dict[str, str]
    known: dict[str, str]
    text: str
    made: Named
    line: tuple[Piece, ...]
    target: dict[str | None, float]
    slipped: tuple[Piece, ...]

    def is_explained_by(self, named: Named) -> bool:
        """Whether these are the slips it was made with, or others that make the very same line.

        That may be a line with all the student's own values put in, as well as the one it was made from.
        """
        if named == self.made:
            return True
        values = {name: float(value) for name, value in self.known.items()}
        put_in = tuple(pieces(self.problem, self.about, self.senses, values))
        return self._made_from(self.line, named) or self._made_from(put_in, named)

    def _made_from(self, line: tuple[Piece, ...], named: Named) -> bool:
        for first in slips(self.problem, self.about, line, self.senses, every=True):
            one = (first.code, first.force)
            if one not in named:
                continue
            if len(named) == 1:
                if same_form(form(first.line), self.target, 0.006):
                    return True
                continue
            for second in slips(self.problem, self.about, first.line, self.senses, every=True):
                if {one, (second.code, second.force)} == named and same_form(
                    form(second.line), self.target, 0.006
                ):
                    return True
        return False


def own_values(
    rng: Random, problem: Problem, senses: dict[str, str], share: float
) -> dict[str, str]:
    """Some true values, rounded to four figures, under the student's senses."""
    known = {}
    for name, value in solve(problem).values.items():
        if rng.random() < share:
            sign = -1.0 if senses.get(name) in ("left", "down", "C", "against") else 1.0
            known[name] = figures(sign * value, 4)
    return known


class TrueEquation(NamedTuple):
    """The true line of an equation, in pieces, as a student with these senses and values has it."""

    problem: Problem
    about: Equation
    senses: dict[str, str]
    known: dict[str, str]
    line: tuple[Piece, ...]


def true_line(rng: Random) -> TrueEquation:
    """The true line of any equation of any truss, with some of the known values put in."""
    problem = make_truss(rng.randrange(10**6), rng.randint(3, 9))
    senses = random_senses(rng, problem)
    known = own_values(rng, problem, senses, rng.choice((0.0, 0.4)))
    about = rng.choice(abouts(problem))
    substituted = {n: float(v) for n, v in known.items() if rng.random() < 0.8}
    return TrueEquation(
        problem, about, senses, known, tuple(pieces(problem, about, senses, substituted))
    )


def wrong_line(seed: int, count: int = 1) -> Wrong | None:
    """The wrong line of a seed, with `count` slips at different forces; None where none fits."""
    rng = Random(seed)
    problem, about, senses, known, line = true_line(rng)
    if not any(p.symbol and p.coefficient for p in line):
        return None
    values = solve(problem).values
    idle = {p.force for p in line if p.symbol and float(known.get(p.symbol, "1")) == 0.0}
    unsaid = {("missing", name) for name, value in values.items() if value == 0.0}
    chosen, made = Slipped("", None, line), frozenset[tuple[str, str | None]]()
    for _ in range(count):
        used = {force for _, force in made}
        fresh = [
            s
            for s in slips(problem, about, chosen.line, senses)
            if s.force not in used | idle
            and (count == 1 or s.force is not None)
            and not (s.code in UNITS and any(code in UNITS for code, _ in made))
        ]
        if not fresh:
            return None
        chosen = rng.choice(fresh)
        made |= {(chosen.code, chosen.force)}
    if made & unsaid:
        return None
    target = form(chosen.line)
    if not target or same_form(target, form(line), 0.04):
        return None
    if still_true(problem, chosen.line, senses, known):
        return None
    if count == 2 and _could_be_scaled(target, form(line)):
        return None
    scale = rng.choice((1.0, 1.0, -1.0, 2.0)) if count == 1 else 1.0
    copied = any(code == "angle-mode" for code, _ in made)
    style = Style(figures=5, scale=scale, trig=not copied)
    text = written(rng, problem, chosen.line, style)
    return Wrong(problem, about, senses, known, text, made, line, target, chosen.line)


def _could_be_scaled(target: dict[str | None, float], true: dict[str | None, float]) -> bool:
    """Whether the true line at another scale differs in one place only: then two slips are one."""
    for anchor in target.keys() & true.keys():
        scale = target[anchor] / true[anchor]
        if abs(abs(scale) - 1.0) < 0.02 and scale > 0:
            continue
        off = [
            name
            for name in target.keys() | true.keys()
            if abs(target.get(name, 0.0) - scale * true.get(name, 0.0))
            > 0.01 * abs(scale * true.get(name, 0.0))
        ]
        if len(off) <= 1:
            return True
    return False


def still_true(
    problem: Problem, line: Sequence[Piece], senses: dict[str, str], known: dict[str, str]
) -> bool:
    """Whether a changed line holds all the same, as when what was changed is a zero force."""
    values = solve(problem).values
    total = parts = 0.0
    for piece in line:
        size = piece.size
        if piece.symbol is not None:
            sign = -1.0 if senses.get(piece.symbol) in ("left", "down", "C", "against") else 1.0
            size = float(known.get(piece.symbol, sign * values[piece.symbol]))
        total += piece.coefficient * (size or 0.0)
        parts += abs(piece.coefficient * (size or 0.0))
    return abs(total) <= 2e-3 * parts


@dataclass(frozen=True)
class Right:
    """A right line as typed."""

    problem: Problem
    about: Equation
    senses: dict[str, str]
    known: dict[str, str]
    text: str


def right_line(seed: int) -> Right:
    """The right line of a seed: any spelling, side, order, scale, sense, values put in, rounding."""
    rng = Random(seed)
    problem, about, senses, known, line = true_line(rng)
    scale = rng.choice((1.0, 1.0, 1.0, -1.0, 2.0, 0.5, 3.0))
    units = scale == 1.0 and not isinstance(about, M) and rng.random() < 0.3
    style = Style(scale=scale, figures=rng.choice((3, 4, 5)), units=units)
    return Right(problem, about, senses, known, written(rng, problem, line, style))
