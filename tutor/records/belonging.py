"""Which problem does something kept belong to, and has its truss been changed since?

A lesson belongs to its problem by a key that stays: the problem's `id`, or the names of its set and
its file; a truss without a file is its own key. The problem as it was then stands beside the key. So
a corrected word, a comment or another writer of the file changes nothing, and a changed truss is seen.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import lru_cache

from tutor.model import Problem, write_problem
from tutor.model.read import read_text
from tutor.model.read_vary import with_words
from tutor.model.vary import gaps
from tutor.variants import is_turned

MOST_TOLD = 4
NO_FILE = "truss "
"""How the key begins of a truss that is of no file."""


def key_of(problem: Problem) -> str:
    """The key by which lessons and homeworks on a problem are found."""
    if problem.id:
        return f"id {problem.id}"
    if problem.source is not None:
        return f"{problem.source.absolute().parent.name}/{problem.source.stem}"
    return f"{NO_FILE}{digest(truss_text(problem))}"


def folder_of(key: str) -> str | None:
    """The folder of the file that a key is of, empty where that is not told; None where it is of none."""
    if key.startswith(NO_FILE):
        return None
    folder, _, file = key.rpartition("/")
    return folder if file else ""


def first_key_of(problem: Problem) -> str:
    """The key of version 0.1.0, a digest of the file as it was written anew then.

    What `write_problem` writes of a problem that version 0.1.0 knew must stay as it is for this.
    """
    return digest(write_problem(problem, schema=""))


def digest(text: str) -> str:
    """The first 24 hexadecimal figures of the SHA-256 of a text."""
    return hashlib.sha256(text.encode()).hexdigest()[:24]


def content_of(problem: Problem) -> str:
    """The problem as a file, without its story: what stands beside the key."""
    return write_problem(replace(problem, story="", topics=()), schema="")


@lru_cache(maxsize=256)
def problem_in(content: str) -> Problem | None:
    """The problem that `content_of` wrote, or None where it cannot be read."""
    return read_text(content, "kept").problem if content else None


def facts(problem: Problem) -> dict[str, str]:
    """What there is to a truss, by what each fact is called, whichever way the file puts it."""
    found = {"the unit of force": problem.force, "the unit of length": problem.length}
    for joint in problem.joints:
        x, y = joint.at
        found[f"joint {joint.name}"] = f"({size_in_words(x)}, {size_in_words(y)})"
    for member in problem.members:
        found[f"member {'-'.join(sorted((member.start, member.end)))}"] = "there"
    for reaction in problem.reactions:
        way = reaction.direction
        acts = f"{'pull ' if reaction.pull else ''}({size_in_words(way.x)}, {size_in_words(way.y)})"
        found[f"the reaction {reaction.name}"] = acts
    forces: dict[str, tuple[float, float]] = {}
    for load in problem.loads:
        x, y = forces.get(load.joint, (0.0, 0.0))
        forces[load.joint] = (x + load.vector[0], y + load.vector[1])
    for at, (x, y) in forces.items():
        found[f"the load at {at}"] = load_in_words(x, y)
    if problem.given:
        found["what is given"] = ", ".join(sorted(problem.given))
    return found


def size_in_words(value: float) -> str:
    """A number as far as files tell it, without a minus before a nought."""
    return f"{value + 0.0 if abs(value) > 1e-12 else 0.0:.10g}"


def load_in_words(x: float, y: float) -> str:
    """ "14 down", "3 right and 14 down": a load by its parts."""
    parts = (
        [f"{size_in_words(abs(x))} {'right' if x > 0 else 'left'}"]
        if size_in_words(x) != "0"
        else []
    )
    parts += (
        [f"{size_in_words(abs(y))} {'up' if y > 0 else 'down'}"] if size_in_words(y) != "0" else []
    )
    return " and ".join(parts) or "0"


def truss_text(problem: Problem) -> str:
    """The facts of a truss as one text, the same for every file that says the same."""
    return "\n".join(f"{name}: {fact}" for name, fact in sorted(facts(problem).items()))


def differences(then: Problem, now: Problem) -> tuple[str, ...]:
    """What of the truss is another now: "the load at C is 14 down now, was 12 down"."""
    old, new = facts(then), facts(now)
    return tuple(_differences(old, new))


def _differences(old: Mapping[str, str], new: Mapping[str, str]) -> Iterator[str]:
    for name in dict.fromkeys((*old, *new)):
        if name not in new:
            yield f"{name} is gone"
        elif name not in old:
            fact = "" if new[name] == "there" else f", {new[name]}"
            yield f"{name} is new{fact}"
        elif old[name] != new[name]:
            yield f"{name} is {new[name]} now, was {old[name]}"


def changes_in_short(changes: tuple[str, ...]) -> str:
    """The first few changes in one phrase."""
    more = len(changes) - MOST_TOLD
    return "; ".join((*changes[:MOST_TOLD], *([f"and {more} more changes"] if more > 0 else [])))


@dataclass(frozen=True)
class Belonging:
    """How something kept belongs to a problem: `changes` of the truss since, none where it is as it was.

    `problem` is what it was done on: that truss, with today's words, which say its numbers, and today's
    tolerance.
    """

    problem: Problem
    changes: tuple[str, ...] = ()


def belonging(problem: Problem, key: str, content: str, title: str) -> Belonging | None:
    """How what is kept under this key, with this content and title, belongs to a problem, or None.

    Without a content (version 0.1.0) the key alone tells.
    """
    then = problem_in(content)
    if then is None:
        return Belonging(problem) if key in (first_key_of(problem), key_of(problem)) else None
    if key != key_of(problem) and not (
        title == problem.title and truss_text(then) == truss_text(problem)
    ):
        return None
    changes = differences(then, problem)
    if changes and title != problem.title and not _is_alike(then, problem):
        return None
    title, story = words_for(then, problem)
    then = replace(
        then,
        title=title,
        story=story,
        topics=problem.topics,
        level=problem.level,
        id=problem.id,
        tolerance=problem.tolerance,
        source=problem.source,
    )
    return Belonging(then, changes)


def words_for(then: Problem, now: Problem) -> tuple[str, str]:
    """Today's title and story with the numbers and the side of the truss as it was then; as they are
    today where they have no gaps, or one that nothing of that truss fills."""
    vary = now.vary
    if vary is None or "{" not in vary.title + vary.story:
        return now.title, now.story
    told = with_words(replace(then, vary=vary), mirrored=is_turned(then, now))
    if any(True for text in (told.title, told.story) for _ in gaps(text)):
        return now.title, now.story
    return told.title, told.story


def _is_alike(then: Problem, now: Problem) -> bool:
    """Whether two trusses have the same joints, by name."""
    return {joint.name for joint in then.joints} == {joint.name for joint in now.joints}
