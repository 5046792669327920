"""Which problems of a set are one and the same, or would be taken for it?"""

from __future__ import annotations

from collections.abc import Hashable, Mapping
from pathlib import Path

from tutor.check.places import FileLines
from tutor.model import Defect, Problem, ProblemSet

PLACES = 9


def twins(
    among: ProblemSet, places: Mapping[Path | None, FileLines]
) -> Mapping[Path | None, tuple[Defect, ...]]:
    """A warning at the later of two problems of a set that are alike, by its file; `places`, by file too,
    say on which line."""
    found: dict[Path | None, tuple[Defect, ...]] = {}
    for key, of in (("members", truss_of), ("id", _id_of), ("title", _title_of)):
        first: dict[Hashable, Problem] = {}
        for problem in among.problems:
            sign = of(problem)
            if sign is None:
                continue
            twin = first.setdefault(sign, problem)
            if twin is not problem:
                warning = _warning(places[problem.source], key, twin)
                found[problem.source] = (*found.get(problem.source, ()), warning)
    return found


def _warning(places: FileLines, key: str, twin: Problem) -> Defect:
    name = FileLines(twin).path.stem or twin.title
    message, cure = {
        "members": (f"this is the truss of {name} with the same loads", "change one of the two"),
        "id": (f"{name} has the same id", "kept lessons are found by it: give each its own"),
        "title": (f"{name} has the same title", "students cannot tell them apart on the list"),
    }[key]
    return places.warning("twins", (key,), message, cure)


def truss_of(problem: Problem) -> Hashable:
    """What makes a truss what it is, whatever its joints are called and wherever it stands.

    Places are taken from the lowest and leftmost joint and to nine decimals of its unit.
    """
    x0 = min(joint.x.value for joint in problem.joints)
    y0 = min(joint.y.value for joint in problem.joints)

    def place(x: float, y: float) -> tuple[float, float]:
        return round(x - x0, PLACES) + 0.0, round(y - y0, PLACES) + 0.0

    at = {joint.name: place(*joint.at) for joint in problem.joints}
    reactions = (
        (at[r.joint], round(r.direction.x, PLACES), round(r.direction.y, PLACES))
        for r in problem.reactions
    )
    loads = (
        (at[load.joint], *(round(part, PLACES) for part in load.vector)) for load in problem.loads
    )
    return (
        problem.force,
        problem.length,
        frozenset(frozenset((at[m.start], at[m.end])) for m in problem.members),
        frozenset(reactions),
        tuple(sorted(loads)),
    )


def _id_of(problem: Problem) -> Hashable:
    return problem.id or None


def _title_of(problem: Problem) -> Hashable:
    return problem.title.casefold()
