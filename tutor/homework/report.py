"""What can be handed in beside a homework? A report of the check in Markdown.

It says of which truss, what was checked, when, and what was right. Whatever is wrong is named as
place, equation and kind of mistake; no value stands in it, right or wrong, but those of the problem.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from tutor.homework.account import Account
from tutor.homework.findings import Finding, Review
from tutor.homework.sheet import WHOLE, place_in_words
from tutor.homework.words import headline, outcome
from tutor.judge import Equation, in_words
from tutor.model import Problem
from tutor.model.caution import CAUTION
from tutor.text import in_markdown, raised

FILL_IN = ("| Name | Course | Date |", "|---|---|---|", "| &nbsp; | &nbsp; | &nbsp; |", "")
AXES = {"x": "to the right or left", "y": "up or down"}
LEVELS = ("the principle", "the place", "the right line")


@dataclass(frozen=True)
class BesideCheck:
    """What a report may say besides the check.

    `truss` describes the truss in sentences, `picture` is the file of its picture beside the report;
    `lines` are the equations of the typed lines, and `numbers` what each is called, where it is not
    its place among them; `aside` says which lines are none of the work; `notes` is what was noted in
    reading it; `hints` says how many hints of each level were given, None where that is not known.
    """

    truss: Sequence[str] = ()
    picture: str = ""
    lines: Sequence[Equation] = ()
    numbers: Sequence[int] = ()
    aside: Sequence[str] = ()
    notes: Sequence[str] = ()
    hints: Sequence[int] | None = None


NOTHING = BesideCheck()


def markdown(
    problem: Problem, review: Review, when: datetime, beside: BesideCheck = NOTHING
) -> str:
    """The report; `when` is the time of the check, shown as it is given."""
    zone = f" {when:%Z}" if when.tzinfo is not None else ""
    parts = [
        f"# Check of a homework: {in_markdown(problem.title)}",
        "",
        *FILL_IN,
        f"Checked {when:%Y-%m-%d %H:%M}{zone} with pinjoint. No value of a result is shown here.",
        "",
        f"**{in_markdown(headline(review))}**",
        "",
        *_left_out(review),
        *(f"{in_markdown(raised(said))}.\n" for said in beside.aside),
        *_section("Entered twice", [in_markdown(note) for note in beside.notes]),
        *_truss(beside),
        *_values(problem, review),
        *_lines(review, beside),
        *_mistakes(review),
        *_bodies(review),
        *_hints(beside),
        f"*{CAUTION}*",
        "",
    ]
    return "\n".join(parts)


def _section(title: str, rows: Sequence[str]) -> list[str]:
    """A heading over a list; nothing where the list is empty."""
    return [f"## {title}", "", *(f"- {row}" for row in rows), ""] if rows else []


def _left_out(review: Review) -> list[str]:
    rows = [f"{in_markdown(r.name)}: {in_markdown(r.message)}" for r in review.refused]
    return _section("Could not be read", list(dict.fromkeys(rows)))


def _truss(beside: BesideCheck) -> list[str]:
    if not beside.truss and not beside.picture:
        return []
    picture = [f"![The truss]({beside.picture})", ""] if beside.picture else []
    return ["## The truss", "", *picture, *(f"- {in_markdown(s)}" for s in beside.truss), ""]


def _values(problem: Problem, review: Review) -> list[str]:
    found = [finding for finding in review.findings if isinstance(finding.name, str)]
    rows = [
        f"{in_markdown(_force(problem, str(f.name)))} "
        f"{in_markdown(outcome(f, _equation(review, f)))}"
        for f in found
    ]
    named = {finding.name for finding in found}
    blank = [name for name in problem.unknowns if name not in named]
    if blank and found:
        rows.append(f"Not done: {in_markdown(', '.join(blank))}.")
    return _section("Values", rows)


def _force(problem: Problem, name: str) -> str:
    """A force by its name and what it is: "A_x, the reaction at A to the right or left,"."""
    reaction = problem.reaction.get(name)
    if reaction is None:
        return f"{name}, the force in this member,"
    axis = f" {AXES[reaction.axis]}" if reaction.axis else ""
    return f"{name}, the reaction at {reaction.joint}{axis},"


def _equation(review: Review, finding: Finding) -> str:
    """The equation in which the mistake behind an entry was made, in words; "" where none is known."""
    cause = finding.cause
    account = next((a for a in review.accounts if a.mistake == cause), None)
    return "" if account is None else _about(account)


def _about(account: Account) -> str:
    return "" if account.about is None else in_words(account.about)


def _lines(review: Review, beside: BesideCheck) -> list[str]:
    rows = []
    for finding in review.findings:
        if isinstance(finding.name, int):
            place = finding.name
            known = place < len(beside.lines)
            number = beside.numbers[place] if place < len(beside.numbers) else place + 1
            equation = f", {in_words(beside.lines[place])}," if known else ""
            rows.append(f"Line {number}{in_markdown(equation)} {in_markdown(outcome(finding))}")
    return _section("Lines", rows)


def _mistakes(review: Review) -> list[str]:
    if review.first is None:
        return []
    where = " or ".join(place_in_words(place) for place in review.places)
    if len(review.places) > 1:
        where += " (the numbers do not tell which of them)"
    told = [
        f"In {_about(account)}: {account.mistake.text}" if _about(account) else account.mistake.text
        for account in review.accounts[:3]
    ]
    rows = [raised(where), *dict.fromkeys(told)]
    if not told:
        rows.append("Of no kind that is known here.")
    return _section("Where it goes wrong first", [in_markdown(row) for row in rows])


def _bodies(review: Review) -> list[str]:
    """Which bodies close with the values handed in: a sentence each for those that do not."""
    closures = review.closures
    rows = [in_markdown(c.said) for c in closures if c.closes is False or c.doubtful]
    for closes, words in ((True, "Closes"), (None, "Not enough values to check")):
        names = [
            "the whole truss" if c.name == WHOLE else c.name
            for c in closures
            if c.closes is closes and not c.doubtful
        ]
        if names:
            rows.append(f"{words}: {in_markdown(', '.join(names))}.")
    return _section("Equilibrium with the values handed in", rows)


def _hints(beside: BesideCheck) -> list[str]:
    if beside.hints is None:
        return []
    used = [
        f"{level} ({count})" for level, count in zip(LEVELS, beside.hints, strict=True) if count
    ]
    return _section("Hints used", [", ".join(used) or "none"])
