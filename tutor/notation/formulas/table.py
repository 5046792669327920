"""How do symbols join, by the table of the grammar?

lark makes the table (`make_table`), which is kept in `line_table.json`, so that a line can be read
without loading lark. Its own walk through the table is made for files: at every step it hashes a
rule and compares tokens, which for one typed line costs more than all the rest of reading it. This
walks the same table with plain keys.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, NamedTuple

from tutor.notation.naming.symbols import Symbol


class Misplaced(Exception):  # noqa: N818 - never leaves the parser
    """The symbol at `index` cannot follow the ones before it."""

    def __init__(self, index: int) -> None:
        super().__init__(index)
        self.index = index


class Reduction(NamedTuple):
    """A complete rule: its last `size` parts become what `build` makes of them, an `origin`.

    Without `build` the one part stays as it is.
    """

    size: int
    build: Callable[[list[Any]], Any] | None
    origin: str


Build = Callable[[str], Callable[[list[Any]], Any]]
Steps = Mapping[int, Mapping[str, "int | Reduction"]]
Ways = Mapping[int, Mapping[str, Mapping[str, int]]]
LEAVES = frozenset({"NUMBER", "PI", "NAME", "FRACTION"})
"""Terminals that stand for their tree node alone."""


@dataclass(frozen=True)
class ParseTable:
    """What to do in each state.

    `steps` say by the terminal that comes whether to go to a state or to reduce. `ways` say by the
    rule that has been reduced and the terminal that comes where that leads, past all rules of one
    part that stays as it is. `goal` is the rule that everything is to become.
    """

    steps: Steps
    ways: Ways
    start: int
    goal: str

    @classmethod
    def of(cls, rows: Sequence[Mapping[str, Any]], goal: str, build: Build) -> ParseTable:
        """The table that `make_table` made; `build` gives what makes a part of a rule's parts."""
        steps: dict[int, dict[str, int | Reduction]] = {}
        gotos: dict[int, dict[str, int]] = {}
        for state, row in enumerate(rows):
            steps[state], gotos[state] = {}, {}
            for key, to in row.items():
                if not isinstance(to, int):
                    size, name, origin = to
                    steps[state][key] = Reduction(size, name and build(name), origin)
                elif key.isupper():
                    steps[state][key] = to
                else:
                    gotos[state][key] = to
        return cls(steps, _ways(steps, gotos), 0, goal)

    def joined(self, symbols: Sequence[Symbol]) -> Any:
        """What `symbols`, the last of them "$END", join into; raises Misplaced."""
        steps, ways, goal = self.steps, self.ways, self.goal
        values: list[Any] = []
        state, states = self.start, [self.start]
        for index, symbol in enumerate(symbols):
            kind = symbol.type
            while (step := steps[state].get(kind)).__class__ is not int:
                if step is None:
                    raise Misplaced(index)
                size, build, origin = step  # type: ignore[misc]
                if build is not None:
                    parts = values[-size:]
                    del values[-size:]
                    made = build(parts)
                    if origin == goal:
                        return made
                    values.append(made)
                del states[-size:]
                way = ways[states[-1]][origin].get(kind)
                if way is None:
                    raise Misplaced(index)
                state = way
                states.append(state)
            state = step
            states.append(state)
            values.append(symbol.value if kind in LEAVES else symbol)
        raise Misplaced(len(symbols) - 1)


def _ways(steps: Steps, gotos: Mapping[int, Mapping[str, int]]) -> Ways:
    return {
        state: {
            origin: {kind: _way(steps, row, to, kind) for kind in steps[to]}
            for origin, to in row.items()
        }
        for state, row in gotos.items()
    }


def _way(steps: Steps, gotos: Mapping[str, int], to: int, kind: str) -> int:
    """Where `to` leads when `kind` comes and only rules are complete whose one part stays."""
    while isinstance(step := steps[to].get(kind), Reduction) and step.build is None:
        to = gotos[step.origin]
    return to
