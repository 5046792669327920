"""Which typed lines write a paper again? What is kept of a homework from one time to the next."""

from __future__ import annotations

from tutor.homework.paper import Paper

WORDS = {"T": "pull", "C": "push"}


def lines_of(paper: Paper) -> tuple[str, ...]:
    """Lines that, typed on a blank paper, write `paper`: senses first, since values need them."""
    lines = [f"{name} drawn {WORDS.get(sense, sense)}" for name, sense in paper.senses.items()]
    lines += [f"{name} = {text}" for name, text in paper.values.items()]
    for about, text in paper.lines:
        lines.append("whole" if about.joint is None else f"joint {about.joint}")
        lines.append(text)
    if paper.order:
        lines.append(f"order {' '.join(paper.order)}")
    lines.append("whole" if paper.place is None else f"joint {paper.place}")
    return tuple(lines)
