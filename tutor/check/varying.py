"""Do the numbers of a problem that varies come out for a whole class, and do its words follow them?

Fifty students are tried, each with an id that is made up.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from tutor.check.places import FileLines
from tutor.model import Defect, Problem, ProblemSet
from tutor.model.vary import GAP, GapName, Vary, numbers_named
from tutor.text import shown
from tutor.variants import NoVariant, Varied

STUDENTS = tuple(f"student {number}" for number in range(1, 51))
FEW = 5
SIDES = re.compile(
    r"(?<!all )(?<!up)\b(left|right)(?:most|-hand|ward|wards)?\b"
    r"(?! angle| angled| away| now| over| after| before| to (?:the )?(?:point|work))",
    re.IGNORECASE,
)
NUMBER = re.compile(r"(?<![\w.])\d+(?:\.\d+)?(?![\w.]*\d)")


def varying_defects(problem: Problem, among: ProblemSet, places: FileLines) -> Iterator[Defect]:
    """Why a class cannot have this problem, and what of its words is not true of every variant."""
    if problem.vary is None:
        return
    if not among.rules.id and _is_first(problem, among):
        message = f"the numbers of students follow from the name of the folder, {shown(among.name)}"
        cure = 'write id = "week-3" or the like in set.toml, so that they stay when it is renamed'
        yield places.warning("set-without-id", ("vary",), message, cure)
    varied = Varied(problem)
    try:
        found = set(varied.indices_for(among.name, STUDENTS))
    except NoVariant as refused:
        cure = "widen a list, or take a condition away"
        yield Defect(places.file, places.line("vary"), str(refused), cure)
        return
    if len(found) < FEW:
        message = f"{len(STUDENTS)} students get only {len(found)} different sets of numbers"
        cure = "write longer lists, or milder conditions"
        yield places.warning("few-variants", ("vary",), message, cure)
    yield from _words(problem, problem.vary, places)


def _is_first(problem: Problem, among: ProblemSet) -> bool:
    """Whether it is the first of its set that varies: what is so of the set is said once."""
    first = next((each for each in among.problems if each.vary is not None), problem)
    return first.source == problem.source


def _words(problem: Problem, vary: Vary, places: FileLines) -> Iterator[Defect]:
    """Words in title and story that stay as they are while what they say changes."""
    plain = {
        key: GAP.sub(" ", text) for key, text in (("title", vary.title), ("story", vary.story))
    }
    changing: dict[str, list[GapName]] = {}
    if any(map(NUMBER.search, plain.values())):
        for name, value in numbers_named(problem).items():
            if _varies(vary, name):
                changing.setdefault(value, []).append(name)
    for key, text in plain.items():
        for number in dict.fromkeys(NUMBER.findall(text)):
            if number in changing:
                message = f"{key} says {number}, which varies"
                cure = f"if it is that number, write {{{changing[number][0].text}}} for it"
                yield places.warning("words-that-stay", (key,), message, cure)
        side = SIDES.search(text) if vary.mirror else None
        if side is not None:
            message = f"{key} says {shown(side[0])}, which is not so in a mirrored truss"
            pair = "{left|right}" if side[1].lower() == "left" else "{right|left}"
            yield places.warning("words-that-stay", (key,), message, f"write {pair} for it")


def _varies(vary: Vary, name: GapName) -> bool:
    """Whether the number of a gap's name may change: "C down", "C x", "span"."""
    joint, part = name
    if not joint:
        axis = "x" if part == "span" else "y"
        return any(
            choice.of in ("joints", "scale") and choice.part == axis for choice in vary.choices
        )
    if part == "x" and vary.mirror:
        return True
    return any(
        choice.part == part and (choice.of == "scale" or joint in choice.joints)
        for choice in vary.choices
    )
