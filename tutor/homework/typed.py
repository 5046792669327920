"""What does one typed line put on the paper? Values, a row of a table, a line with its heading, a word.

One line at a time, as a student types or a work file holds them; `read_paper` reads a whole file.
Nothing here judges: what can be read is written down, and what cannot is told in a sentence and
leaves the paper as it was.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, replace

from tutor.homework.paper import Paper
from tutor.homework.several import PARTING, several
from tutor.homework.table import BYTE_ORDER_MARK, DecimalSign, decimal_sign, read_row
from tutor.homework.work import BLANK, Refused, read_entry
from tutor.judge import Judge, in_words, judge_of
from tutor.judge.given import Given, senses_for
from tutor.judge.headings import headed
from tutor.model import Problem
from tutor.model.text import printable, shown
from tutor.notation import Unreadable, read_equation
from tutor.notation.characters import plain

LONGEST = 500
NOT_DONE = "-"
MOST_LINES = 2_000
MOST_CHARACTERS = 200_000

ASSIGNED = re.compile(r"(?<![\w}])([^\W\d_][\w{}-]*)\s*=(?!=)")
NAMED = re.compile(r"[^\W\d_][\w{}]+")
ROW = re.compile(r"([^\W\d_][\w{}-]*)\s*[\s,;:|]\s*[-+]?[\d.]")
PLACE = re.compile(r"(?:at\s+)?joint\s+(\S+?)\s*[:.]?", re.IGNORECASE)
WHOLE = re.compile(r"(?:the\s+)?whole(?:\s+(?:truss|body))?\s*[:.]?", re.IGNORECASE)
ORDER = re.compile(r"order\b\s*[:=]?\s*(.*)", re.IGNORECASE)
DRAWN = re.compile(
    r"(?:sense|draw|drawn)\s+(?:of\s+)?(\S+)\s+(?:is\s+)?(?:to\s+the\s+)?(\w+)"
    r"|(\S+)\s+(?:is\s+)?drawn\s+(?:to\s+the\s+)?(\w+)"
    r"|(?P<way>push|pull)\s+(?P<member>\S+)",
    re.IGNORECASE,
)
STRIKE = re.compile(r"strike(?:\s+out)?\s+(?:line\s+)?(\d{1,4})", re.IGNORECASE)
BETWEEN = re.compile(r"[\s,;>→-]+")
SENSES = {
    **dict.fromkeys(("pull", "pulls", "pulling", "tension"), "T"),
    **dict.fromkeys(("push", "pushes", "pushing", "compression"), "C"),
}


@dataclass(frozen=True)
class Written:
    """What came of a typed line: the paper after it, what was noted, and what was refused.

    `numbers` says of a whole file in which of its lines each line of the paper stands.
    """

    paper: Paper
    noted: tuple[str, ...] = ()
    refused: tuple[Refused, ...] = ()
    numbers: tuple[int, ...] = ()


@dataclass(frozen=True)
class _Page:
    """The paper with what is needed to write on it."""

    desk: Judge
    paper: Paper
    sign: DecimalSign

    @property
    def problem(self) -> Problem:
        return self.desk.problem

    def noted(self, paper: Paper, *words: str) -> Written:
        return Written(paper, words)

    def refuse(self, text: str, message: str, name: str = "line") -> Written:
        return Written(self.paper, (), (Refused(name, shown(text)[1:-1], printable(message)),))


def write_line(
    problem: Problem, paper: Paper, text: str, sign: DecimalSign | None = None
) -> Written:
    """The paper with what `text` says; blank lines and remarks after # say nothing.

    `sign` is the decimal sign of the table that the line is from, where that is known.
    """
    bare = plain(text).partition("#")[0].strip()
    page = _Page(judge_of(problem), paper, decimal_sign(text) if sign is None else sign)
    if not bare:
        return Written(paper)
    if len(bare) > LONGEST:
        return page.refuse(text, f"A line has {LONGEST} characters at most.")
    for way in WAYS:
        written = way(page, bare, text.partition("#")[0])
        if written is not None:
            return written
    return page.refuse(text, _cannot(page, bare))


def write_row(problem: Problem, paper: Paper, name: str, text: str) -> Written:
    """The paper with `text` as the value of `name`, and with other values that stand behind it.

    What is told of it counts its columns in `text`.
    """
    bare = plain(text).partition("#")[0].strip()
    page = _Page(judge_of(problem), paper, decimal_sign(text))
    if len(bare) > LONGEST:
        return page.refuse(text, f"A line has {LONGEST} characters at most.")
    if "=" in bare:
        return write_line(problem, paper, f"{name} = {text}")
    row = _several(page, f"{name} {bare}", text)
    return row if row is not None else _value(page, name, bare or NOT_DONE)


def read_paper(problem: Problem, text: str) -> Written:
    """The paper that a whole file of typed lines makes; what is refused names its line.

    A heading of a table's columns, before anything was written down, is passed over.
    """
    paper, refused = Paper(), []
    numbers: list[int] = []
    if len(text) > MOST_CHARACTERS or text.count("\n") > MOST_LINES:
        message = f"A file of work has {MOST_LINES} lines at most; is it another file?"
        return Written(paper, (), (Refused("line 1", "", message),))
    sign = decimal_sign(text)
    for number, line in enumerate(text.removeprefix(BYTE_ORDER_MARK).splitlines(), start=1):
        written = write_line(problem, paper, line, sign)
        begun = paper != Paper()
        struck = [i for i, had in enumerate(paper.lines) if had not in written.paper.lines][:1]
        numbers = [n for i, n in enumerate(numbers) if i not in struck]
        paper = written.paper
        numbers += [number] * (len(paper.lines) - len(numbers))
        if begun or any(char.isdigit() for char in line):
            refused += [replace(r, name=f"line {number}") for r in written.refused]
    return Written(paper, (), tuple(refused), tuple(numbers))


def _place(page: _Page, bare: str, text: str) -> Written | None:
    if WHOLE.fullmatch(bare):
        return page.noted(replace(page.paper, place=None), "lines now are of the whole truss")
    found = PLACE.fullmatch(bare)
    if found is None:
        return None
    joint = page.desk.names.joint(found[1])
    if joint is None:
        return page.refuse(text, f"There is no joint {found[1][:40]}; {_joints(page)}.")
    return page.noted(replace(page.paper, place=joint), f"lines now are of joint {joint}")


def _order(page: _Page, bare: str, text: str) -> Written | None:
    found = ORDER.fullmatch(bare)
    if found is None or "=" in found[1]:
        return None
    words = [word for word in BETWEEN.split(found[1]) if word]
    names = ["whole" if w.lower() == "whole" else page.desk.names.joint(w) for w in words]
    for word, name in zip(words, names, strict=True):
        if name is None:
            return page.refuse(text, f"There is no joint {word[:40]}; {_joints(page)}.", "order")
    order = tuple(dict.fromkeys(name for name in names if name is not None))
    said = f"the joints in the order {', '.join(order)}" if order else "no order of joints"
    return page.noted(replace(page.paper, order=order), said)


def _sense(page: _Page, bare: str, text: str) -> Written | None:
    found = DRAWN.fullmatch(bare)
    if found is None:
        return None
    name, word = found[1] or found[3] or found["member"], found[2] or found[4] or found["way"]
    unknown = _unknown(page, name)
    if unknown is None:
        return page.refuse(text, _no_unknown(page, name), "senses")
    sense = SENSES.get(word.lower(), word.upper() if word in "tTcC" else word.lower())
    ways = senses_for(page.problem, unknown)
    if sense not in ways:
        drawn = "pull or push" if unknown in page.problem.member else " or ".join(ways)
        return page.refuse(text, f"{unknown} is drawn {drawn}.", unknown)
    way = {"T": "pulling", "C": "pushing"}.get(sense, sense)
    return page.noted(page.paper.with_sense(unknown, sense), f"{unknown} drawn {way}")


def _strike(page: _Page, bare: str, text: str) -> Written | None:
    found = STRIKE.fullmatch(bare)
    if found is None:
        return None
    number, lines = int(found[1]), page.paper.lines
    if not 1 <= number <= len(lines):
        there = f"there are lines 1 to {len(lines)}" if lines else "there is none"
        return page.refuse(text, f"There is no line {number}; {there}.")
    return page.noted(page.paper.without_line(number - 1), f"line {number} struck out")


def _headed_line(page: _Page, bare: str, text: str) -> Written | None:
    if ":" not in bare or "=" not in bare.rpartition(":")[2]:
        return None
    about = headed(page.desk, text, page.paper.place)
    if about is not None:
        paper = page.paper.with_line(about, text.strip())
        return page.noted(paper, f"line {len(paper.lines)}, {in_words(about)}")
    reading = read_equation(text, page.desk.names)
    if isinstance(reading, Unreadable):
        return page.refuse(text, reading.message)
    return page.refuse(text, "A sum of moments needs its point, like ΣM_A: before the line.")


def _values(page: _Page, bare: str, text: str) -> Written | None:
    found = list(ASSIGNED.finditer(bare))
    if not found or bare[: found[0].start()].strip(PARTING):
        return None
    if len(found) == 1 and _is_equation(page, bare[found[0].end() :]):
        return None
    ends = [*(each.start() for each in found[1:]), len(bare)]
    paper = page.paper
    noted: list[str] = []
    refused: list[Refused] = []
    for each, end in zip(found, ends, strict=True):
        value = bare[each.end() : end].strip(PARTING).removesuffix(" and").strip(PARTING)
        written = _value(replace(page, paper=paper), each[1], value)
        paper = written.paper
        noted += written.noted
        refused += written.refused
    return Written(paper, tuple(noted), tuple(refused))


def _several(page: _Page, bare: str, text: str) -> Written | None:
    """Values in a row, some of them without an equals sign: `AB -7.5, BC 3`.

    Either every one can be read, or commas part them and each begins with a name; then those that
    cannot be read are told.
    """
    found = several(bare, lambda name: _unknown(page, name) is not None)
    if len(found.pieces) < 2:
        return None
    rows = [read_row(page.desk, f"{name} {value}", page.sign, name) for name, value in found.pieces]
    if not found.parted and any(isinstance(row, Refused) for row in rows):
        return None
    paper = page.paper
    noted: list[str] = []
    refused: list[Refused] = []
    for row in rows:
        if isinstance(row, Refused):
            refused.append(row)
            continue
        written = _value(replace(page, paper=paper), *row)
        paper = written.paper
        noted += written.noted
        refused += written.refused
    return Written(paper, tuple(noted), tuple(refused))


def _row(page: _Page, bare: str, text: str) -> Written | None:
    if "=" in bare:
        return None
    read = read_row(page.desk, text, page.sign, "This row")
    if not isinstance(read, Refused):
        return _value(page, *read)
    if read.name:
        return Written(page.paper, (), (read,))
    named = ROW.match(bare)
    return None if named is None else page.refuse(text, _no_unknown(page, named[1]))


WAYS: tuple[Callable[[_Page, str, str], Written | None], ...] = (
    *(_place, _order, _sense, _strike),
    *(_headed_line, _values, _several, _row),
)
"""The ways to read a line, in the order in which they are tried."""


def _value(page: _Page, name: str, value: str) -> Written:
    unknown = _unknown(page, name)
    if unknown is None:
        return page.refuse(f"{name} = {value}", _no_unknown(page, name), name)
    old = page.paper.values.get(unknown)
    if value.lower() in BLANK:
        return page.noted(page.paper.with_value(unknown, ""), f"{unknown} not done")
    read = read_entry(page.desk, unknown, value, Given(dict(page.paper.senses), {}))
    if isinstance(read, Refused):
        return Written(page.paper, (), (replace(read, message=f"{unknown}: {read.message}"),))
    before = f", in the place of {old}" if old not in (None, value) else ""
    return page.noted(page.paper.with_value(unknown, value), f"{unknown} = {value}{before}")


def _unknown(page: _Page, name: str) -> str | None:
    meant = page.desk.names.meant(plain(name)[:80])
    return meant[0] if len(meant) == 1 else None


def _no_unknown(page: _Page, name: str) -> str:
    close = page.desk.names.nearest(name[:40])
    hint = f"did you mean {' or '.join(close)}?" if close else f"there are {_listed(page)}."
    return f"This truss has no member or reaction {shown(name)[1:-1]}; {hint}"


def _listed(page: _Page) -> str:
    names = page.problem.unknowns
    return ", ".join(names[:12]) + (" and so on" if len(names) > 12 else "")


def _joints(page: _Page) -> str:
    return f"the joints are {', '.join(page.desk.names.joints)}"


def _is_equation(page: _Page, after: str) -> bool:
    """Whether an unknown stands behind the = sign, so that the line is no value."""
    return any(_unknown(page, word) is not None for word in NAMED.findall(after))


def _cannot(page: _Page, bare: str) -> str:
    if "=" not in bare:
        return "This is no value, no line and no word known here; a value is like AB = 7.5 C."
    reading = read_equation(bare, page.desk.names)
    if isinstance(reading, Unreadable):
        return reading.message
    at = f" at {page.paper.place}" if page.paper.place else f" at {page.problem.joints[0].name}"
    return f"Say which equation this is, with ΣFx{at}: or ΣFy{at}: or ΣM_A: before it."
