"""What is one complaint: a sentence, a cure and the broken inputs that earn it?"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Complaint:
    """One way in which text cannot be read; `placed` says whether the sentence names the column.

    `examples` are equations, `values` are results, `numbers` constants of problem files,
    `headings` equations to be chosen.
    """

    says: str
    cure: str
    examples: tuple[tuple[str, int], ...] = ()
    values: tuple[tuple[str, int], ...] = ()
    numbers: tuple[tuple[str, int], ...] = ()
    headings: tuple[tuple[str, int], ...] = ()
    placed: bool = True
