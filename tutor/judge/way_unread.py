"""Do words that were passed over behind a right value say the opposite of what its force does?

"CD = 300 lb, compression lol": nothing was made of the words, but they say T or C all the same.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from tutor.judge.about import Asked, Value
from tutor.judge.desk import Desk
from tutor.judge.kind import Case
from tutor.judge.mistakes import KINDS
from tutor.judge.values import is_nothing
from tutor.judge.verdict import Mistake, Verdict
from tutor.judge.worked import side_value, value_ended
from tutor.notation import Line, Step
from tutor.notation.elements.lexicon import folded, known_word, said
from tutor.notation.elements.same import SAME
from tutor.notation.elements.tree import Span
from tutor.notation.elements.units import FORCES_AND_SIGNS
from tutor.notation.sides.ending import WORD
from tutor.notation.sides.heeded import denies

OF_THE_WAY = frozenset(("sign", "tension-compression"))
MAY_SAY = (
    "“{word}” is no word that is known here; if it says whether {unknown} pulls or pushes, "
    "write T or C for it, or a signed number."
)
SIZE_ALONE = (
    "“{word}” gives the size of {unknown} and not its sense; say what it does as well: T or C behind a member's force, "
    "the way behind a reaction, or a signed number alone."
)
_GIVES_SIZE = re.compile(
    r"\b(?P<verb>carr(?:y|ies)|takes?|holds?|bears?|feels?|push(?:es)?|pull(?:s)?|press(?:es)?)\b[^=0-9,;]*[0-9][0-9.,]* ?[A-Za-z#]*$"
)
LETTER_ONLY = "The words behind it say the opposite of what the force does to the member."
SHORTEST = 4
"""Characters of the shortest word for tension or compression; one letter may be a joint."""
MOST_BEHIND = 5
"""Words behind it as short as this are no others' names: lol, ok, i think."""
_AGAIN = re.compile(
    rf"(?:(?:so|thus|hence|therefore|or|ie|i\.e\.|that is|giving) +)?(?P<size>[0-9]+(?:\.[0-9]+)?) ?"
    rf"(?:{FORCES_AND_SIGNS})? ?[(,]? ?(?P<way>[A-Za-z]+)\)?\.?"
)
_TOLD = re.compile(
    r"(?:so|thus|hence|therefore|ie|i\.e\.|that is|which means)[, ]+(?:that +)?(?:the +|this +)?(?:(?!other|next|opposite|second)[a-z]+ +){0,2}"
    r"(?:rafter|bar|member|strut|tie|post|chord|diagonal|brace|rod|hanger|it) +(?:is|gets|must be|has to be|will be) +"
    rf"(?P<told>[^0-9=]*?)(?P<size>[0-9]+(?:\.[0-9]+)?) ?(?:{FORCES_AND_SIGNS})?(?P<behind> ?[(,]? ?[A-Za-z]+\)?)?\.?"
)
"""What is made of a value in a sentence of its own: so the left rafter is pushed together with about 64.6 kN (C)."""
LEADING = frozenset(
    ("in", "under", "is", "its", "it's", "it", "so", "a", "and", "hence", "thus", "which", "means")
)


def against_what_is_unread(desk: Desk, about: Asked, line: Line) -> Verdict | None:
    """That the words behind a value of a member say the wrong of T and C; None where they do not."""
    for step, span in _behind_steps(line):
        words = line.text[span.start : span.end]
        again = _said_again(words, step)
        way = again or _way_in(words)
        name = _value_of(desk, about, step) if way else None
        if name is None or (again is None and _others_between(line, step, span)):
            continue
        true = desk.values()[name]
        if not is_nothing(desk.problem, true) and (true > 0) != (way == "T"):
            kind, case = KINDS["tension-compression"], Case(desk.problem, Value(name), name)
            told = Mistake(
                kind.code, name, LETTER_ONLY, kind.reason(case), kind.place(case).text, span
            )
            return Verdict("wrong", LETTER_ONLY, (told,), about=about)
    return None


def _behind_steps(line: Line) -> Iterator[tuple[Step, Span]]:
    """The words that were passed over behind a statement, each with the last one before it."""
    for span in dict.fromkeys((*line.unread, *line.passed)):
        before = [step for step in line.steps if step.span.end <= span.start]
        if before:
            yield before[-1], span


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


def pushes_again(line: Line) -> bool:
    """Whether words behind a line give the size of its value once more, with a C."""
    behind = (span for _, span in _behind_steps(line))
    return "C" in (_said_again(line.text[span.start : span.end], line.result) for span in behind)


def _said_again(words: str, step: Step) -> str | None:
    """T or C, where words give the size of the value before them once more, with one of them behind it."""
    found = _AGAIN.fullmatch(words) or _TOLD.fullmatch(words)
    size = step.sides[-1].terms[0].value if step.sides[-1].numeric and step.sides[-1].terms else 0.0
    if found is None or abs(float(found["size"]) - abs(size)) > SAME * abs(size):
        return None
    if found.re is _AGAIN:
        return said(found["way"], "T", "C")
    last = said((found["behind"] or "").strip(" (),"), "T", "C")
    each = WORD.findall(found["told"])
    ways = {last} if last else {said(word, "T", "C") for word in each} - {None}
    return ways.pop() if len(ways) == 1 and not any(map(denies, each)) else None


def only_of_the_way(verdict: Verdict) -> bool:
    """Whether all that is wrong is a sign, or T and C."""
    codes = {each.code for each in verdict.mistakes}
    return verdict.kind == "wrong" and bool(codes) and codes <= OF_THE_WAY


def size_alone(line: Line) -> str | None:
    """The verb by which a line ends in the size of a force in words, without its T or C, its way or a sign."""
    last = line.result.sides[-1]
    found = _GIVES_SIZE.search(line.text, 0, last.span.end)
    if found is None or not last.numeric or last.letter or last.sense:
        return None
    return found["verb"] if side_value(last) > 0.0 else None


def may_say_the_way(about: Asked, line: Line, verdict: Verdict) -> Verdict | None:
    """What is asked of a value that is right but for its sign, with one unknown word right behind it.

    "U2-L2 = 975 (press.)" may say in a language of its own what the sign does not.
    """
    if not only_of_the_way(verdict):
        return None
    if (verb := size_alone(line)) is not None:
        name = verdict.mistakes[0].force or ""
        text = SIZE_ALONE.format(word=verb, unknown=name)
        return Verdict("undecided", text, about=about, reading=verdict.reading)
    if not isinstance(about, Value) or verdict.value is None:
        return None
    for step, span in _behind_steps(line):
        words = WORD.findall(line.text[span.start : span.end])
        if len(words) != 1 or step is not line.result:
            continue
        if not known_word(words[0]) and not _others_between(line, step, span):
            text = MAY_SAY.format(word=words[0], unknown=about.unknown)
            return Verdict("undecided", text, about=about, reading=verdict.reading)
    return None


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
