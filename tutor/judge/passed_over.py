"""What of a right line was not read as it stands there, and is therefore told?"""

from __future__ import annotations

import re

from tutor.judge.about import Asked, Value
from tutor.judge.desk import Desk
from tutor.judge.going_on import run_on
from tutor.judge.headings import headed_otherwise
from tutor.judge.reasons_said import reasons_checked
from tutor.judge.verdict import Remark, Verdict
from tutor.notation import Label, Line, Unreadable, read_heading
from tutor.notation.elements.lexicon import known_word
from tutor.notation.elements.tree import Span
from tutor.notation.naming.symbols import POINTS
from tutor.notation.pages.copied import as_figures

PASSED = "Passed over without being read: {words}."
TAKEN = {
    "thousands": "The point in {words} is read as one that sets off thousands.",
    "decimals": "The comma in {words} is read as a decimal one.",
    "raised": "{words} is read as {pointed}.",
    "list": "The {words} at the beginning is read as the mark of a list, not as a minus.",
    "figures": "{words} is read as the number {figures}.",
    "nought": "{words} is read as the number {figures}.",
    "noun": "The value behind “{words}” is read as one of the force that the equation before it finds.",
    "dash": "The dash behind “{words}” is read as a dash, not as a minus.",
}
LISTED = (
    "The dash at the beginning may be a minus or the mark of a list, and with a minus this is not right. "
    "Leave it out, or write the minus right before the force."
)
_ON_THE_LINE = str.maketrans(dict.fromkeys(POINTS, "."))
"""A decimal point at half height where it usually stands."""
_BEHIND_HEADING = re.compile(r" *[:.] ")
_NOUGHTS = frozenset("Oo")
LETTER_FOR_ZERO = "The letter {letter} is read as the number 0."


def _heading(desk: Desk, line: Line, span: Span) -> Label | None:
    """The equation that words before a statement name, where only the rest of the line was read."""
    if span not in line.unread or _BEHIND_HEADING.match(line.text, span.end) is None:
        return None
    label = read_heading(line.text[span.start : span.end], desk.names)
    return None if isinstance(label, Unreadable) else label


def listed(about: Asked, line: Line) -> Verdict | None:
    """What is asked of a line that is right only where the dash before it is no minus."""
    marked = any(kind == "list" for kind, _ in line.taken)
    return Verdict("undecided", LISTED, about=about) if marked else None


def _says_nothing_else(line: Line) -> bool:
    """Whether a line is one equation with an unknown, and nothing else stands in it."""
    first, *others = line.steps
    if others or line.passed or line.taken or len(first.sides) != 2:
        return False
    one, other = first.sides
    lettered = line.text[other.span.start : other.span.end] in _NOUGHTS
    return not (one.numeric or lettered) and first.span.end - first.span.start == len(
        line.text.strip()
    )


def remarks_on(desk: Desk, about: Asked, line: Line) -> tuple[Remark, ...]:
    """A remark on words that nothing was made of, on reasons that are not so, on a letter read as a figure."""
    if _says_nothing_else(line):
        return ()
    checked = reasons_checked(desk, about, line)
    headings = {span: label for span in line.passed if (label := _heading(desk, line, span))}
    unread = [
        word
        for span in line.passed
        if span not in headings
        and (word := line.text[span.start : span.end])
        and (span in line.unread or not all(map(known_word, word.split())))
        and not any(place.start < span.end and span.start < place.end for place in checked.places)
    ]
    said = list(checked.told)
    if unread:
        said.append(PASSED.format(words=", ".join(f"“{word}”" for word in unread)))
    sides = (side for step in line.steps for side in step.sides if side.numeric)
    letters = {line.text[side.span.start : side.span.end] for side in sides} & _NOUGHTS
    said += [LETTER_FOR_ZERO.format(letter=letter) for letter in sorted(letters)]
    for kind, span in line.taken:
        words = line.text[span.start : span.end].rstrip(".,")
        pointed = words.translate(_ON_THE_LINE)
        said.append(TAKEN[kind].format(words=words, figures=as_figures(words), pointed=pointed))
    remarks = tuple(Remark("passed", text) for text in dict.fromkeys(said))
    if not isinstance(about, Value):
        sums = (label for label in headings.values() if label.kind is not None)
        otherwise = (headed_otherwise(desk.problem, about, each) for each in sums)
        remarks += tuple(Remark("heading", each) for each in dict.fromkeys(otherwise) if each)
    running = run_on(line)
    return remarks if running is None else (*remarks, Remark("run-on", running))
