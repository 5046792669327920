"""What can be handed in beside a homework? A report of the check in Markdown.

It says what was checked, when, and what was right. Whatever is wrong is named as place and kind of
mistake only; no value stands in it, right or wrong.
"""

from __future__ import annotations

from datetime import datetime

from tutor.homework.findings import Finding, Review
from tutor.homework.sheet import place_in_words
from tutor.model import Problem
from tutor.model.caution import CAUTION

STATES = {
    "right": "right",
    "wrong": "wrong",
    "follows": "follows from an earlier error",
    "unchecked": "not checked",
}


def markdown(problem: Problem, review: Review, when: datetime) -> str:
    """The report; `when` is the time of the check, shown as it is given."""
    zone = f" {when:%Z}" if when.tzinfo is not None else ""
    parts = [
        f"# Check of a homework: {_plain(problem.title)}",
        "",
        f"Checked {when:%Y-%m-%d %H:%M}{zone} with pinjoint. No value is shown here.",
        "",
        f"**{review.said}**",
        "",
    ]
    parts += _entries(problem, review) + _lines(review) + _mistakes(review) + _bodies(review)
    parts += _left_out(review)
    parts += [f"*{CAUTION}*", ""]
    return "\n".join(parts)


def _entries(problem: Problem, review: Review) -> list[str]:
    values = [f for f in review.findings if isinstance(f.name, str)]
    if not values:
        return []
    parts = ["## Values", ""]
    for state, words in STATES.items():
        names = [_plain(str(f.name)) for f in values if f.state == state]
        if names:
            parts.append(f"- {words}: {', '.join(names)}")
    named = {f.name for f in values}
    blank = [name for name in problem.unknowns if name not in named]
    if blank:
        parts.append(f"- not done: {', '.join(map(_plain, blank))}")
    return [*parts, ""]


def _lines(review: Review) -> list[str]:
    lines = [f for f in review.findings if isinstance(f.name, int)]
    if not lines:
        return []
    return ["## Lines", "", *(_line(f) for f in lines), ""]


def _line(finding: Finding) -> str:
    return f"- line {int(finding.name) + 1}: {STATES[finding.state]}"


def _mistakes(review: Review) -> list[str]:
    if review.first is None:
        return []
    where = " or ".join(place_in_words(place) for place in review.places)
    kinds = list(dict.fromkeys(account.mistake.code for account in review.accounts))
    kind = f"; kind of mistake: {' or '.join(kinds[:3])}" if kinds else "; of no known kind"
    return ["## Where it goes wrong first", "", f"- {where}{kind}", ""]


def _bodies(review: Review) -> list[str]:
    if not review.closures:
        return []
    return ["## Equilibrium with the values handed in", "", *_closures(review), ""]


def _closures(review: Review) -> list[str]:
    return [f"- {_plain(closure.said)}" for closure in review.closures]


def _left_out(review: Review) -> list[str]:
    if not review.refused:
        return []
    names = ", ".join(dict.fromkeys(_plain(r.name) for r in review.refused))
    return ["## Left out", "", f"- could not be read: {names}", ""]


def _plain(text: str) -> str:
    """Text that Markdown and a terminal show as it is, on one line."""
    shown = "".join(c if c.isprintable() else " " for c in text)
    for sign in "\\`*_#[]|":
        shown = shown.replace(sign, "\\" + sign)
    return shown.replace("&", "&amp;").replace("<", "&lt;")
