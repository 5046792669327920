"""What stands on the student's paper? Values, lines, senses and the order of joints, as typed."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from tutor.judge import Equation, in_words
from tutor.model import Problem


@dataclass(frozen=True)
class Paper:
    """A homework as far as it was entered; writing gives a new paper.

    `place` is the joint whose lines are being written, None for the whole truss.
    """

    values: Mapping[str, str] = field(default_factory=dict)
    lines: tuple[tuple[Equation, str], ...] = ()
    senses: Mapping[str, str] = field(default_factory=dict)
    order: tuple[str, ...] = ()
    place: str | None = None

    def with_value(self, name: str, text: str) -> Paper:
        """With one value written, or taken off where the text is blank."""
        values = {**self.values, name: text}
        if not text:
            del values[name]
        return replace(self, values=values)

    def with_line(self, about: Equation, text: str) -> Paper:
        return replace(self, lines=(*self.lines, (about, text)))

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
            "order": list(self.order),
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
        if self.order:
            said.append(f"order: {', '.join(self.order)}")
        blank = [n for n in problem.unknowns if n not in self.values]
        if blank:
            said.append(f"not done: {', '.join(blank)}")
        return tuple(said)


def _drawn(sense: str) -> str:
    """A sense in words; members are drawn pulling or pushing on their joints."""
    return {"T": "pulling", "C": "pushing", "along": "as stated"}.get(sense, sense)
