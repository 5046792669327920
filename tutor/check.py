"""Are these problem files sound: readable, statically determinate and stable?"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from tutor.model import Defect, Problem, ProblemError, ProblemSet, load_sets
from tutor.model.source import file_name, read_source
from tutor.model.toml_read import read_toml
from tutor.statics import Unsolvable, solve

CURES = {
    "too-few": "add members or supports until m + r = 2j, with no joint free to move",
    "too-many": "take away members or supports until m + r = 2j",
    "critical": "turn or move a support, or brace what can move with a member",
}


@dataclass(frozen=True)
class Checked:
    """What a check found: how many problems were looked at, and every defect of every file."""

    problems: int
    defects: tuple[Defect, ...]

    @property
    def sound(self) -> bool:
        """Whether nothing keeps any of the files from being used; warnings do not."""
        return all(defect.severity == "warning" for defect in self.defects)


def check(path: Path) -> Checked:
    """The problems in a file or under a folder, each read and solved; never raises."""
    try:
        sets = load_sets(path)
    except ProblemError as refused:
        return Checked(0, refused.problems)
    count = sum(len(each.problems) + len(each.broken) for each in sets)
    return Checked(count, tuple(defect for each in sets for defect in _of_set(each)))


def standing_defect(problem: Problem) -> Defect | None:
    """Why statics alone cannot give the forces of a problem, at the line of its file; or None."""
    try:
        solve(problem)
    except Unsolvable as reason:
        file = file_name(problem.source) if problem.source is not None else problem.title
        message = f"{reason.reason.rstrip('.')}. {reason.how}".strip().rstrip(".")
        return Defect(file, _line_of(problem, reason), message, CURES[reason.kind])
    return None


def _of_set(problems: ProblemSet) -> Iterator[Defect]:
    for refused in problems.broken.values():
        yield from refused.problems
    for problem in problems.problems:
        if problem.source is not None:
            yield from problems.warnings.get(problem.source, ())
        defect = standing_defect(problem)
        if defect is not None:
            yield defect


def _line_of(problem: Problem, reason: Unsolvable) -> int:
    """The line of what moves where one joint does, of the supports where the whole truss does."""
    if problem.source is None:
        return 1
    source = read_source(problem.source)
    if source.text is None:
        return 1
    line = read_toml(source.text, source.file).findings.line
    if len(reason.moving) == 1:
        return line(("joints", reason.moving[0]))
    if len(problem.reactions) < 3 or reason.how.startswith("The whole truss"):
        return line(("supports",))
    return line(("members",))
