"""What did the check of a homework find? Marks and words, what closes, hints so far; never a value."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from textual.content import Content

from tutor.figure import Figure, truss_figure
from tutor.figure.parts import Item, Tag
from tutor.homework import Finding, Review
from tutor.homework.findings import Sure
from tutor.homework.paper import Paper
from tutor.homework.words import headline
from tutor.judge import in_words
from tutor.model import Problem
from tutor.model.caution import CAUTION
from tutor.screens.clean import one_line
from tutor.screens.themes import BADGES
from tutor.screens.widgets.entry_table import EntryRow
from tutor.text import listed, visible

WHOLE = "whole"
SURE: Mapping[Sure, str] = {"certain": "certain", "likely": "likely", "unclear": "cannot tell why"}
CAUSE: Mapping[Sure, str] = {
    "certain": "cause certain",
    "likely": "cause likely",
    "unclear": "cannot tell why",
}
"""That a value is wrong is sure; how it came about may not be."""


@dataclass(frozen=True)
class StateMark:
    """A sign for terminals with many characters, one for ASCII, the word and its badge."""

    sign: str
    plain: str
    word: str
    badge: str


STATES: Mapping[str, StateMark] = {
    "right": StateMark("✓", "+", "right", BADGES["right"]),
    "wrong": StateMark("✗", "x", "wrong", BADGES["wrong"]),
    "follows": StateMark("~", "~", "follows", BADGES["remark"]),
    "unchecked": StateMark("?", "?", "not checked", BADGES["note"]),
    "undecided": StateMark("?", "?", "undecided", BADGES["note"]),
}
CLOSES: Mapping[bool | None, tuple[str, str]] = {
    True: ("✓", "+"),
    False: ("✗", "x"),
    None: ("?", "?"),
}


def state_of(finding: Finding, ascii_only: bool) -> tuple[str, str]:
    """The words and the badge of one finding: "✗ wrong (cause likely)"."""
    mark = STATES["undecided" if finding.undecided else finding.state]
    said = {"wrong": CAUSE, "follows": SURE}.get(finding.state)
    untold = finding.state == "wrong" and finding.cause is None and finding.sure == "certain"
    sure = f" ({said[finding.sure]})" if said and not untold else ""
    sure = " (only its value)" if finding.stands else sure
    sign = mark.plain if ascii_only else mark.sign
    return f"{sign} {mark.word}{sure}", mark.badge


def rows_of(
    problem: Problem,
    paper: Paper,
    result: Review | None,
    changed: Iterable[str | int],
    ascii_only: bool,
) -> list[EntryRow]:
    """A row for each unknown and each line; what was changed since the check says so."""
    stale = set(changed)
    rows: list[EntryRow] = []
    entries: list[tuple[str | int, str, str]] = [
        (name, name, paper.values.get(name, "")) for name in problem.unknowns
    ]
    for index, (about, text) in enumerate(paper.lines):
        entries.append(
            (index, f"line {index + 1}", f"{in_words(about)}: {text.rpartition(':')[2]}")
        )
    for key, name, text in entries:
        finding = None if result is None else result.finding.get(key)
        if key in stale:
            rows.append(EntryRow(name, text, "changed", "$quiet"))
        elif finding is not None:
            rows.append(EntryRow(name, text, *state_of(finding, ascii_only)))
        elif not text:
            rows.append(EntryRow(name, "", "not done", "$quiet"))
        else:
            rows.append(EntryRow(name, text))
    return rows


def outcome_said(result: Review, stale: bool) -> Content:
    """What a check found, and whether it is still of what is on the paper."""
    parts = [Content.styled(one_line(headline(result)), "bold")]
    if stale:
        parts.append(Content("Something was changed since: check again with escape, then c."))
    return Content("\n\n").join(parts)


def hints_said(hints: Sequence[tuple[str, str]]) -> Content:
    """The hints given so far, each with its level."""
    return Content("\n\n").join(
        Content.assemble((f"{level}: ", "bold"), visible(text)) for level, text in hints
    )


def closing_said(result: Review, ascii_only: bool) -> Content:
    """What closes with the numbers entered, and what was left out of the check."""
    parts = [_closing(result, ascii_only)]
    if result.refused:
        rows = [f"{one_line(r.name)}: {visible(r.message)}" for r in result.refused]
        parts.append(Content.assemble(("Left out\n", "bold"), "\n".join(rows)))
    parts.append(Content(one_line(CAUTION)))
    return Content("\n\n").join(part for part in parts if part.plain)


def _closing(result: Review, ascii_only: bool) -> Content:
    """Which bodies close with the numbers entered."""
    if not result.closures:
        return Content("")
    rows: list[Content] = [Content.styled("With your numbers", "bold underline")]
    for state, words in ((True, "closes"), (None, "not enough values to see")):
        names = [_body(c.name) for c in result.closures if c.closes is state and not c.doubtful]
        if names:
            sign = CLOSES[state][ascii_only]
            rows.append(Content(visible(f"{sign} {words}: {listed(names, 40)}")))
    for closure in result.closures:
        if closure.closes is False or closure.doubtful:
            rows.append(Content(visible(f"{CLOSES[closure.closes][ascii_only]} {closure.said}")))
    return Content("\n").join(rows)


def _body(name: str) -> str:
    return "the whole truss" if name == WHOLE else name


def closing_figure(problem: Problem, result: Review | None, ascii_only: bool) -> tuple[str, Figure]:
    """The truss with a mark at each joint: it closes, it does not, or too little is known."""
    if result is None:
        return "The truss", truss_figure(problem)
    closes = {closure.name: closure.closes for closure in result.closures}
    open_joints = [name for name, state in closes.items() if state is False]
    figure = truss_figure(problem, highlight=open_joints, dimensions=False)
    items = tuple(_marked(item, closes, ascii_only) for item in figure.items)
    said = [closure.said for closure in result.closures]
    good, bad = CLOSES[True][ascii_only], CLOSES[False][ascii_only]
    title = f"{good} closes  {bad} not  ? too few"
    return title, replace(figure, items=items, sentences=(*figure.sentences, *said))


def _marked(item: Item, closes: Mapping[str, bool | None], ascii_only: bool) -> Item:
    """A joint's name with the mark of how it closes."""
    if not isinstance(item, Tag) or item.role != "joint":
        return item
    name = item.texts[-1]
    if name not in closes:
        return item
    return replace(item, texts=(f"{name} {CLOSES[closes[name]][ascii_only]}", *item.texts))
