"""Which joints close with the student's numbers, and does the whole truss?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from tutor.homework.rounding import Correctness
from tutor.homework.sheet import WHOLE, Sheet

WORDS = (
    (0.05, "a little is left over"),
    (0.2, "less than a fifth of what was added up is left over"),
    (0.4, "about a third of what was added up is left over"),
    (0.6, "about half of what was added up is left over"),
    (2.0, "most of what was added up is left over"),
)


@dataclass(frozen=True)
class Closure:
    """One body: whether its equations hold with the numbers written, None where some are missing.

    `share` is what is left over relative to the sizes that were added up (0 to 1). It is no force, so
    that nothing can be read off it that the student has not found. A body that has all its values and
    leaves something over is `doubtful` where nobody can say whether these are right.
    """

    name: str
    closes: bool | None
    share: float = field(default=0.0, repr=False)
    doubtful: bool = False

    @property
    def said(self) -> str:
        """A sentence for people, without numbers."""
        body = "The whole truss" if self.name == WHOLE else f"Joint {self.name}"
        if self.doubtful:
            return f"{body} does not quite close: rounding may explain what is left over."
        if self.closes is None:
            return f"{body}: not enough values to check it."
        if self.closes:
            return f"{body} closes."
        words = next((words for most, words in WORDS if self.share <= most), WORDS[-1][1])
        return f"{body} does not close: {words}."


def closures(bodies: Mapping[str, Sheet], correctness: Correctness) -> tuple[Closure, ...]:
    """How each body closes, the whole truss first, by how the entries stand.

    Rounding that was carried on over many steps is no reason why a body with nothing but right entries
    on it should not close.
    """
    return tuple(_closure(sheet, correctness) for sheet in bodies.values())


def _closure(sheet: Sheet, correctness: Correctness) -> Closure:
    if sheet.missing:
        return Closure(sheet.name, None)
    wrong, doubtful = (
        not names.isdisjoint(sheet.part) for names in (correctness.wrong, correctness.undecided)
    )
    if not sheet.fails or not (wrong or doubtful):
        return Closure(sheet.name, True)
    worst = max(abs(sheet.left(n)) / sheet.added(n) for n in sheet.axes if not sheet.holds(n))
    return Closure(sheet.name, False if wrong else None, worst, doubtful=not wrong)
