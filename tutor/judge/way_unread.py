"""Do words that were passed over behind a right value say the opposite of what its force does?

"CD = 300 lb, compression lol": nothing was made of the words, but they say T or C all the same.
"""

from __future__ import annotations

from tutor.judge.about import Asked, Value
from tutor.judge.desk import Desk
from tutor.judge.kind import Case
from tutor.judge.mistakes import KINDS
from tutor.judge.values import NEGLIGIBLE, largest_load
from tutor.judge.verdict import Mistake, Verdict
from tutor.judge.worked import value_ended
from tutor.notation import Line, Step
from tutor.notation.elements.lexicon import folded, said
from tutor.notation.elements.tree import Span
from tutor.notation.sides.ending import WORD
from tutor.notation.sides.heeded import denies

LETTER_ONLY = "The words behind it say the opposite of what the force does to the member."
SHORTEST = 4
"""Characters of the shortest word for tension or compression; one letter may be a joint."""
MOST_BEHIND = 5
"""Words behind it as short as this are no others' names: lol, ok, i think."""
LEADING = frozenset(
    ("in", "under", "is", "its", "it's", "it", "so", "a", "and", "hence", "thus", "which", "means")
)


def against_what_is_unread(desk: Desk, about: Asked, line: Line) -> Verdict | None:
    """That the words behind a value of a member say the wrong of T and C; None where they do not."""
    for span in line.unread:
        before = [step for step in line.steps if step.span.end <= span.start]
        way = _way_in(line.text[span.start : span.end])
        name = _value_of(desk, about, before[-1]) if before and way else None
        if name is None or _others_between(line, before[-1], span):
            continue
        true = desk.values()[name]
        if abs(true) > NEGLIGIBLE * largest_load(desk.problem) and (true > 0) != (way == "T"):
            kind, case = KINDS["tension-compression"], Case(desk.problem, Value(name), name)
            told = Mistake(
                kind.code, name, LETTER_ONLY, kind.reason(case), kind.place(case).text, span
            )
            return Verdict("wrong", LETTER_ONLY, (told,), about=about)
    return None


def _way_in(words: str) -> str | None:
    """T or C, where words begin with one of them and say hardly more; else None.

    With more words they may be about another member: "the others are in compression".
    """
    each = [folded(word) for word in WORD.findall(words)]
    while each and each[0] in LEADING:
        del each[0]
    if not each or len(each[0]) < SHORTEST or any(map(denies, each)):
        return None
    return said(each[0], "T", "C") if all(len(word) < MOST_BEHIND for word in each[1:]) else None


def _value_of(desk: Desk, about: Asked, step: Step) -> str | None:
    """The member whose value a statement gives; a number alone is that of the force asked for."""
    name = value_ended(step, desk.own.known)
    if name is None and isinstance(about, Value) and all(side.numeric for side in step.sides):
        name = about.unknown
    member = name if name in desk.problem.member else None
    return None if member is None or step.sides[-1].letter else member


def _others_between(line: Line, step: Step, span: Span) -> bool:
    """Whether other words stand between a value and these, which may be about something else."""
    between = line.text[step.span.end : span.start]
    return any(map(str.isalnum, between))
