"""What does a line of work hold: which equation, where no heading says so, and which value behind it?"""

from __future__ import annotations

import re
from collections.abc import Collection, Sequence
from dataclasses import replace

from tutor.homework.page import Page, Written
from tutor.homework.work import read_work
from tutor.judge import Equation, Fx, Fy, M
from tutor.judge.known_values import KnownValue, KnownValues
from tutor.judge.nearest import clearly_nearest, plainly, right_for
from tutor.judge.same import SAME
from tutor.judge.typed import typed_equation
from tutor.judge.worked import equation_before_value, named, value_at_end, value_given
from tutor.notation import Line, Unreadable, without_marks
from tutor.statics import Unsolvable

MOST_TRIED = 42
BEHIND = re.compile(r"(?:[-\s,;.→⇒∴−–]|=>|->|\b(?:and|so|or|hence|then)\b)+$")
"""What leads on from one value to the next."""
HEADINGS = {Fx: "ΣFx: ", Fy: "ΣFy: "}


def equation_meant(page: Page, text: str) -> Equation | None:
    """The equation of the body that the paper or the line itself is at, or None where it could be several or none.

    The one that the line is right for; else the one that it is but for its slips.
    """
    reading = equation_before_value(page.desk.read(text))
    if isinstance(reading, Unreadable) or not (said := typed_equation(reading)).names:
        return None
    label = reading.label
    if label is not None and label.kind is None and isinstance(label.point, str):
        page = replace(page, paper=replace(page.paper, place=label.point))
    try:
        own, true = _own(page), page.desk.values()
    except Unsolvable:
        return None
    problem, joint = page.problem, page.paper.place
    offers = _offers(page)
    right = right_for(said, problem, own, offers)
    if len(right) > 1:
        right = tuple(plainly(said, problem, own, right))
    if right or len(offers) > MOST_TRIED:
        return right[0] if len(right) == 1 else None
    return clearly_nearest(said, problem, own, true, offers, few=joint is not None)


def with_heading(about: Equation, text: str) -> str:
    """The line as it is kept, so that it is the same equation wherever it is read again."""
    if isinstance(about, M):
        return f"ΣM_{{{about.at}}}: {text}"
    return f"{HEADINGS[type(about)]}{text}"


def values_in_line(line: Line | Unreadable, known: Collection[str]) -> list[tuple[str, str]]:
    """The values that a line gives, as far as none was written before: …, F_DF = -10 kN, F_NF = 0."""
    if isinstance(line, Unreadable):
        return []
    last = _last_value(line, known)
    return [*_values_between(line, known), *([] if last is None else [last])]


def _last_value(line: Line, known: Collection[str]) -> tuple[str, str] | None:
    """The unknown whose value a line ends in, and that value."""
    single = len(line.steps) == 1 and ":" in line.text  # ΣFx = AB = 0 is a sum that is zero
    name = value_given(line.result) if single else None
    name = name or value_at_end(named(line, known), known)
    if name is None or name in known:
        return None
    start = line.result.sides[-1].span.start
    unnumbered = without_marks(f"{name} = {line.text[start:]}")
    return name, _said(unnumbered)


def _values_between(line: Line, known: Collection[str]) -> list[tuple[str, str]]:
    """The values that stand between a line's equation and its last one."""
    found: list[tuple[str, str]] = []
    starts = [step.sides[0].span.start for step in line.steps]
    for step, end in zip(line.steps[1:-1], starts[2:], strict=True):
        name = value_given(step)
        if name is not None and name not in known and len(step.sides) == 2:
            text = line.text[step.sides[-1].span.start : end]
            found.append((name, BEHIND.sub("", _said(without_marks(f"{name} = {text}")))))
    return found


def _said(statement: str) -> str:
    """What stands behind the = of a statement, without the bars and stops that set it apart."""
    return " ".join(statement.partition("=")[2].replace("|", " ").split()).strip(" .;,")


def likeliest(page: Page, ways: Sequence[Written]) -> Written:
    """Of ways to read a line, one by which it is right, else the first by which it can be read.

    Where it is right by several, the one that gives most values.
    """
    read = [written for written in ways if not written.refused]
    own = _written(page)
    right = [written for written in read if _is_right(page, own, written)]
    most = max(right, key=lambda written: len(written.paper.values), default=None)
    return most or (read[0] if read else ways[0])


def _written(page: Page) -> KnownValues:
    """The student's senses, and the values on the paper."""
    return read_work(page.desk, page.paper.work(page.problem)).own()


def _is_right(page: Page, own: KnownValues, written: Written) -> bool:
    """Whether the line that was written last is a right one, with what else is on the paper."""
    if len(written.paper.lines) == len(page.paper.lines):
        return False
    about, text = written.paper.lines[-1]
    return page.desk.judge(about, text, own).kind == "right"


def _offers(page: Page) -> list[Equation]:
    if page.paper.place is not None:
        return [Fx(page.paper.place), Fy(page.paper.place)]
    return [Fx(), Fy(), *(M(joint.name) for joint in page.problem.joints)]


def _own(page: Page) -> KnownValues:
    """The values on the paper; for what is not there the true ones, which a line may put in already."""
    own = _written(page)
    true = {
        name: KnownValue(own.sign(name) * value, SAME * abs(value))
        for name, value in page.desk.values().items()
    }
    return KnownValues(own.senses, {**true, **own.known})
