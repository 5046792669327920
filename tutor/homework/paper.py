"""What stands on the student's paper? Values, lines, senses and the order of joints, as typed."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from tutor.judge import Equation, in_words
from tutor.model import Problem

MOST_NEW = 2
"""A joint gives two equations."""


@dataclass(frozen=True)
class Paper:
    """A homework as far as it was entered; writing gives a new paper.

    `place` is the joint whose lines are being written, None for the whole truss; `found_at` the joint
    below whose name a member's value was written; `letters` what its lines call by a letter: angles
    (degrees) and lengths.
    """

    values: Mapping[str, str] = field(default_factory=dict)
    lines: tuple[tuple[Equation, str], ...] = ()
    senses: Mapping[str, str] = field(default_factory=dict)
    order: tuple[str, ...] = ()
    place: str | None = None
    found_at: Mapping[str, str] = field(default_factory=dict)
    letters: Mapping[str, float] = field(default_factory=dict)

    def with_value(self, name: str, text: str, at: str | None = None) -> Paper:
        """With one value written, below the name of the joint `at`; or taken off where the text is blank."""
        values = {**self.values, name: text}
        found_at = {**self.found_at}
        if at is not None and text:
            found_at.setdefault(name, at)
        if not text:
            del values[name]
            found_at.pop(name, None)
        return replace(self, values=values, found_at=found_at)

    def with_line(self, about: Equation, text: str) -> Paper:
        return replace(self, lines=(*self.lines, (about, text)))

    def with_letters(self, letters: Mapping[str, float]) -> Paper:
        return replace(self, letters={**self.letters, **letters}) if letters else self

    def without_line(self, index: int) -> Paper:
        """Without the line of this index, from 0."""
        return replace(self, lines=self.lines[:index] + self.lines[index + 1 :])

    def with_sense(self, name: str, sense: str) -> Paper:
        return replace(self, senses={**self.senses, name: sense})

    @property
    def blank(self) -> bool:
        """Whether there is nothing on it to check."""
        return not self.values and not self.lines

    def work(self, problem: Problem) -> dict[str, Any]:
        """The paper as `review` takes it."""
        parts: dict[str, Any] = {
            "reactions": {n: t for n, t in self.values.items() if n in problem.reaction},
            "forces": {n: t for n, t in self.values.items() if n in problem.member},
            "lines": list(self.lines),
            "senses": dict(self.senses),
            "letters": dict(self.letters),
            "order": list(self.order or order_worked(problem, self)),
        }
        return {key: part for key, part in parts.items() if part}

    def shown(self, problem: Problem) -> tuple[str, ...]:
        """What stands on it, line by line, in the figure's order, and what is blank."""
        said = [f"{n} = {self.values[n]}" for n in problem.unknowns if n in self.values]
        said += [f"{n} drawn {_drawn(sense)}" for n, sense in self.senses.items()]
        said += [
            f"line {n}, {in_words(about)}: {text.rpartition(':')[2].strip()}"
            for n, (about, text) in enumerate(self.lines, start=1)
        ]
        said += [f"{name} = {size:.6g}" for name, size in self.letters.items()]
        if self.order:
            said.append(f"order: {', '.join(self.order)}")
        blank = [n for n in problem.unknowns if n not in self.values]
        if blank:
            said.append(f"not done: {', '.join(blank)}")
        return tuple(said)


def order_worked(problem: Problem, paper: Paper) -> tuple[str, ...]:
    """The joints in the order in which the paper finds its members there; none where it does not.

    Every member entered has to stand below a joint of its own, where at most two are new and all
    others are found above.
    """
    entered = [name for name in paper.values if name in problem.member]
    if any(name not in paper.found_at for name in entered):
        return ()
    found: set[str] = set()
    order = tuple(dict.fromkeys(paper.found_at.values()))
    for joint in order:
        here = {member.name for member in problem.meeting[joint]}
        new = {name for name in entered if paper.found_at[name] == joint}
        if len(new) > MOST_NEW or here - new - found or new - here:
            return ()
        found |= new
    return order


def _drawn(sense: str) -> str:
    """A sense in words; members are drawn pulling or pushing on their joints."""
    return {"T": "pulling", "C": "pushing", "along": "as stated"}.get(sense, sense)
