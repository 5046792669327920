"""Which mistakes can be made in a line that no single term of it shows?"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from tutor.judge.true_equation import TrueEquation


def of_line(line: TrueEquation) -> frozenset[str]:
    """The codes of those mistakes that can be made in this line."""
    return frozenset(code for code, can_be_made in OF_LINES.items() if can_be_made(line))


def _loads(line: TrueEquation) -> list[str]:
    """The joints of the loads that add something to the line."""
    return [load.force.joint for load in line.loads if load.true != 0.0]


def _members(line: TrueEquation) -> int:
    return sum(t.true != 0.0 and t.force.kind == "member" for t in line.unknowns.values())


def _reversible(line: TrueEquation) -> bool:
    acting = sum(term.true != 0.0 for term in line.unknowns.values()) + len(_loads(line))
    return line.about.joint is not None and 2 <= _members(line) < acting


def _share_a_joint(loads: list[str]) -> bool:
    return len(set(loads)) < len(loads)


def _has_loads_elsewhere(line: TrueEquation) -> bool:
    return any(load.joint != line.about.joint for load in line.problem.loads)


def _has_reactions_elsewhere(line: TrueEquation) -> bool:
    return any(reaction.joint != line.about.joint for reaction in line.problem.reactions)


OF_LINES: Mapping[str, Callable[[TrueEquation], bool]] = {
    "pull-push": _reversible,
    "magnitude": lambda line: bool(_loads(line)),
    "lost-load": lambda line: _share_a_joint(_loads(line)),
    "stray-load": lambda line: line.about.joint is not None and _has_loads_elsewhere(line),
    "stray-reaction": lambda line: line.about.joint is not None and _has_reactions_elsewhere(line),
}
