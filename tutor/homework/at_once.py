"""Which equations does one line of work hold: a command to solve several, the cases of a system, ΣFx: …; ΣFy: …?

Each is written down as a line of its own, under its own heading or at the place that the page is at.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from tutor.homework.page import Page, Written
from tutor.judge.worked import side_value, value_given
from tutor.notation import Label, Line, Side, Step, Unreadable

Writes = Callable[[Page, str], Written]


def at_once(page: Page, text: str, write: Writes) -> Written | None:
    """The paper with each equation of a line, where it holds several and all of them are taken; else None."""
    line = page.desk.read(text)
    if isinstance(line, Unreadable) or len(line.steps) < 2:
        return None
    if sum(map(_is_equation, line.steps)) < 2 or any(step.follows for step in line.steps):
        return None
    label = line.label
    place = label.point if label is not None and label.kind is None else None
    paper = replace(page.paper, place=place) if isinstance(place, str) else page.paper
    noted: list[str] = []
    had = len(paper.lines)
    for step in line.steps:
        written = write(replace(page, paper=paper), _said(line, step))
        if written.refused:
            return None
        paper, noted = written.paper, [*noted, *written.noted]
    meant = [about for about, _ in paper.lines[had:]]
    if len(set(meant)) < len(meant) or len(meant) < 2:
        return None
    return Written(replace(paper, place=page.paper.place), tuple(noted))


def _is_equation(step: Step) -> bool:
    """Whether a statement is an equation of forces, and not the value of one."""
    named = any(not side.numeric for side in step.sides)
    return len(step.sides) == 2 and named and value_given(step) is None


def _said(line: Line, step: Step) -> str:
    """A statement as typed, with the heading that it has."""
    own = step.label or (line.label if step is line.steps[0] else None)
    sides = " = ".join(_side(line, side) for side in step.sides)
    return f"{_heading(line, own)}{sides}"


def _heading(line: Line, label: Label | None) -> str:
    if label is None or label.kind is None:
        return ""
    return f"{line.text[label.span.start : label.span.end].rstrip(' :')}: "


def _side(line: Line, side: Side) -> str:
    if side.numeric and side_value(side) == 0.0:
        return "0"
    typed = line.text[side.span.start : side.span.end]
    return typed if side.letter is None else f"{typed} {side.letter}"
