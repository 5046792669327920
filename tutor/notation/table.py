"""How do symbols join, by the table that lark makes of the grammar?

lark's own walk through the table is made for files: at every step it hashes a rule and compares
tokens, which for one typed line costs more than all the rest of reading it. This walks the same
table with plain keys.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, NamedTuple

from lark import Lark
from lark.grammar import Rule

from tutor.notation.symbols import Symbol


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


@dataclass(frozen=True)
class Table:
    """What to do in each state: which symbols lead to a state or a reduction, and where that leads.

    `steps` are by the terminal that comes, `after` by the rule that has been reduced.
    """

    steps: Mapping[int, Mapping[str, int | Reduction]]
    after: Mapping[int, Mapping[str, int]]
    start: int
    end: int

    @classmethod
    def of(cls, grammar: Lark, start: str) -> Table:
        """The table of a grammar with a transformer, for texts that are a `start`."""
        conf = grammar.parse_interactive(start=start).parser_state.parse_conf
        steps: dict[int, dict[str, int | Reduction]] = {}
        after: dict[int, dict[str, int]] = {}
        for state, row in conf.states.items():
            steps[state], after[state] = {}, {}
            for key, (_, to) in row.items():
                if not isinstance(to, int):
                    steps[state][str(key)] = _reduction(to, conf.callbacks[to])
                elif key.isupper():
                    steps[state][str(key)] = to
                else:
                    after[state][str(key)] = to
        return cls(steps, after, conf.start_state, conf.end_state)

    def joined(self, symbols: Sequence[Symbol]) -> Any:
        """What `symbols`, the last of them "$END", join into; raises Misplaced."""
        steps, after, states, values = self.steps, self.after, [self.start], list[Any]()
        for index, symbol in enumerate(symbols):
            kind = symbol.type
            while not isinstance(step := steps[states[-1]].get(kind), int):
                if step is None:
                    raise Misplaced(index)
                size, build, origin = step
                del states[-size:]
                if build is not None:
                    values[-size:] = [build(values[-size:])]
                states.append(after[states[-1]][origin])
                if states[-1] == self.end:
                    return values[-1]
            states.append(step)
            values.append(symbol)
        raise Misplaced(len(symbols) - 1)


def _reduction(rule: Rule, build: Callable[[list[Any]], Any]) -> Reduction:
    stays = rule.options.expand1 and len(rule.expansion) == 1 and rule.alias is None
    return Reduction(len(rule.expansion), None if stays else build, str(rule.origin.name))
