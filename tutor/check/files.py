"""Are these problem files sound, and what of them may surprise the instructor?"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from pathlib import Path

from tutor.check.doubts import doubts
from tutor.check.places import FileLines
from tutor.check.spread import no_collecting, spread
from tutor.check.twins import twins
from tutor.check.varying import varying_defects
from tutor.model import Defect, Problem, ProblemError, ProblemSet, Rules, load_sets
from tutor.model.read import ReadProblem, outcome
from tutor.statics import Answer, Unsolvable, determinacy, forces_follow, solve, soundness
from tutor.text import unended

CURES = {
    "too-few": "add members or supports until m + r = 2j, with no joint free to move",
    "too-many": "take away members or supports until m + r = 2j",
    "critical": "turn or move a support, or brace what can move with a member",
}
Tell = Callable[[int, int], None]
"""Hears how many problems have been solved, of how many."""


@dataclass(frozen=True)
class FilesChecked:
    """What a check found: how many problems were looked at, and every defect of every file."""

    problems: int
    defects: tuple[Defect, ...]

    @property
    def sound(self) -> bool:
        """Whether nothing keeps any of the files from being used; warnings do not."""
        return all(defect.severity == "warning" for defect in self.defects)


def check(path: Path, tell: Tell = lambda done, of: None) -> FilesChecked:
    """The problems in a file or under a folder, each read and solved; never raises.

    `tell` hears of each problem that is done.
    """
    with no_collecting():
        try:
            sets = load_sets(path, _read)
        except ProblemError as refused:
            return FilesChecked(0, refused.problems)
        count = sum(len(each.problems) + len(set(each.broken) - {each.file}) for each in sets)
        return FilesChecked(count, tuple(_of_sets(sets, count, tell)))


def _of_sets(sets: tuple[ProblemSet, ...], count: int, tell: Tell) -> Iterator[Defect]:
    done = 0
    for each in sets:
        for refused in each.broken.values():
            yield from refused.problems
        places = {problem.source: FileLines(problem) for problem in each.problems}
        check_one = partial(_of_problem, each, twins(each, places), places)
        for found in spread(check_one, each.problems):
            yield from found
            done += 1
            tell(done, count)


def _read(files: Sequence[Path], rules: Rules) -> Iterator[ReadProblem]:
    return spread(lambda file: outcome(file, rules), files)


UNSOLVED = "a truss that statics does not solve"


def _of_problem(
    among: ProblemSet,
    similar: Mapping[Path | None, tuple[Defect, ...]],
    all_places: Mapping[Path | None, FileLines],
    problem: Problem,
) -> tuple[Defect, ...]:
    """What there is to say of a problem that could be read, in the order of its lines."""
    places = all_places[problem.source]
    found = [*similar.get(problem.source, ()), *among.warnings.get(places.path, ())]
    answer = _answer(problem, places)
    if isinstance(answer, Defect):
        found.append(answer)
    elif answer is not None:
        found += [*doubts(answer, places), *varying_defects(problem, among, places)]
    return tuple(sorted(found, key=lambda defect: defect.line))


def standing_defect(problem: Problem) -> Defect | None:
    """Why statics alone cannot give the forces of a problem, at the line of its file; or None."""
    answer = _answer(problem, FileLines(problem))
    return answer if isinstance(answer, Defect) else None


def _answer(problem: Problem, places: FileLines) -> Answer | Defect | None:
    """The forces, or why there are none; None where that is what the student has to find out."""
    if problem.truss is not None and (said := _not_so(problem)):
        key, message, cure = said
        return Defect(places.file, places.line(key), message, cure)
    if not forces_follow(problem):
        return None
    try:
        return solve(problem)
    except Unsolvable as reason:
        message = unended(f"{reason.reason} {reason.how}" if reason.how else reason.reason)
        return Defect(places.file, _line_of(places, reason), message, CURES[reason.kind])


def _not_so(problem: Problem) -> tuple[str, str, str] | None:
    """What is wrong in what the file says its truss is: at which key, what, and the cure."""
    found = soundness(problem)
    if problem.truss != found:
        return (
            "truss",
            f"truss says {problem.truss}, but the truss is {found}: {unended(determinacy(problem).said)}",
            f'write truss = "{found}", or change the truss',
        )
    if found != "determinate" and problem.vary is not None:
        return "vary", f"{UNSOLVED} has no numbers to vary", "take [vary] out"
    if found != "determinate" and problem.given:
        return "given", f"{UNSOLVED} has no reactions to give", "take given out"
    return None


def _line_of(places: FileLines, reason: Unsolvable) -> int:
    """The line of what moves where one joint does, of the supports where the whole truss does."""
    if len(reason.moving) == 1:
        return places.line("joints", reason.moving[0])
    if len(places.problem.reactions) < 3 or reason.as_one:
        return places.line("supports")
    return places.line("members")
