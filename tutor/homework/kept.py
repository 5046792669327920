"""Which typed lines write a paper again? What is kept of a homework from one time to the next."""

from __future__ import annotations

from tutor.homework.paper import Paper
from tutor.model import Problem
from tutor.notation.naming.symbols import FREE_LETTERS, LOAD_LETTERS

WORDS = {"T": "pull", "C": "push"}


def lines_of(problem: Problem, paper: Paper) -> tuple[str, ...]:
    """Lines that, typed on a blank paper, write `paper`: senses first, since values need them."""
    lines = [f"{name} drawn {WORDS.get(sense, sense)}" for name, sense in paper.senses.items()]
    lines += [_letter(problem, name, size) for name, size in paper.letters.items()]
    place = None
    for name, text in paper.values.items():
        if (at := paper.found_at.get(name)) != place:
            lines.append(_place(at))
            place = at
        lines.append(f"{name} = {text}")
    for about, text in paper.lines:
        lines.append(_place(about.joint))
        lines.append(text)
    if paper.order:
        lines.append(f"order {' '.join(paper.order)}")
    lines.append(_place(paper.place))
    return tuple(lines)


def _letter(problem: Problem, name: str, size: float) -> str:
    """A length or a load with its unit, since its letter may name a joint as well; or an angle."""
    if name in FREE_LETTERS:
        return f"let {name} = {size!r} {problem.length}"
    if name in LOAD_LETTERS:
        return f"let {name} = {size!r} {problem.force}"
    return f"{name} = {size!r}°"


def _place(joint: str | None) -> str:
    return "whole" if joint is None else f"joint {joint}"
