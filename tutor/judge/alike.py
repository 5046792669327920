"""Which forces stand in a line as one that is alike: 2 F_DF sin 30 for F_DE sin 30 + F_DF sin 30?"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from typing import NamedTuple

from tutor.judge.mirror import mirrored
from tutor.judge.same import are_same, one_way
from tutor.judge.true_equation import TrueEquation
from tutor.judge.typed import TypedEquation
from tutor.notation.elements.fact import fact, kept

ALIKE = 1e-6
NOTHING = 1e-9
TWICE = 2.0
STAND_FOR = "{shown} stands here for {gone} too: they are alike."
STAND_OPPOSED = "{shown} stands here for {gone} too: they have one size."


class Apart(NamedTuple):
    """A line with each of such forces by itself; `said` is what is told of them where it is right."""

    line: TypedEquation
    said: str


@fact
class _Alike:
    """By what a student can know that two forces of an equation are alike."""

    true: TrueEquation
    lines: tuple[TypedEquation, ...]
    values: Mapping[str, float]

    @kept
    def _images(self) -> Mapping[str, str]:
        return mirrored(self.true.problem, self.values).images

    def may_be_known(self, gone: str, shown: str) -> bool:
        """By the student's own values, by a line that says so, or by the symmetry of the truss."""
        own = self.true.own.known
        if gone in own and shown in own:
            return math.isclose(abs(own[gone].value), abs(own[shown].value), rel_tol=ALIKE)
        if any(line.names == {gone, shown} and not line.constants for line in self.lines):
            return True
        return self._images.get(gone) == shown


def apart(
    typed: TypedEquation,
    true: TrueEquation,
    lines: Sequence[TypedEquation],
    values: Mapping[str, float],
) -> Apart | None:
    """A sum of forces with the forces that stand in it as one each by itself, or None for any other line.

    Two are alike where both add the same to the sum, and the student can know: by own values, by the
    symmetry of truss, loads and reactions, or by a line of their own. `values` are the true ones, in the
    positive sense.
    """
    if true.is_moment:
        return None
    alike = _Alike(true, tuple(lines), values)
    pairs: dict[str, str] = {}
    for gone, shown in _of_one_size(typed, true, values):
        if alike.may_be_known(gone, shown):
            pairs[gone] = shown
    if not pairs:
        return None
    unknowns, said = dict(typed.unknowns), list[str]()
    for gone, shown in pairs.items():  # equal in the student's senses, or in size alone
        half = unknowns[shown].times(0.5)
        equal = one_way(true.unknowns[gone].true, true.unknowns[shown].true)
        unknowns |= {shown: half, gone: half if equal else half.times(-1.0)}
        said.append((STAND_FOR if equal else STAND_OPPOSED).format(shown=shown, gone=gone))
    return Apart(replace(typed, unknowns=unknowns), " ".join(said))


def _of_one_size(
    typed: TypedEquation, true: TrueEquation, values: Mapping[str, float]
) -> Iterator[tuple[str, str]]:
    """A force that is left out, and one in the line that adds the same to the true sum and may stand for it.

    One that stands there as in the true sum is no two; one that stands whole or alone is none either,
    unless it was typed twice, or with a 2.
    """
    out = true.acting - typed.names - typed.cancelled
    for gone in sorted(out):
        added = _adds(gone, true, values)
        for shown in sorted(typed.names & true.acting):
            same = math.isclose(added, _adds(shown, true, values), rel_tol=ALIKE)
            one_size = math.isclose(
                abs(true.unknowns[gone].true), abs(true.unknowns[shown].true), rel_tol=ALIKE
            )
            if abs(added) > NOTHING and same and one_size and _may_be_two(shown, typed, true):
                yield gone, shown


def _may_be_two(name: str, typed: TypedEquation, true: TrueEquation) -> bool:
    if are_same(abs(typed.unknowns[name].value), abs(true.unknowns[name].true)):
        return False
    factors = typed.factors_beside(name)
    twice = len(typed.terms_beside(name)) > 1 or factors.holds(TWICE)
    return twice or (len(typed.names) > 1 and not factors.whole)


def _adds(name: str, true: TrueEquation, values: Mapping[str, float]) -> float:
    return true.unknowns[name].true * true.own.sign(name) * values[name]
