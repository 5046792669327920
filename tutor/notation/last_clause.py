"""Which clause does a sentence of talk end in that is an equation, or a value: "BD takes it all, so it is 21 kip T"?

The last resort beside `pieces`. What stands before the last mark, or before a word that leads on, is talk: it may
hold numbers, names, distances and ways, but no equals sign, and it takes nothing back. The clause is read as it is.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Collection, Iterator, Sequence
from dataclasses import replace

from tutor.notation.chain import zeroed
from tutor.notation.elements import units
from tutor.notation.elements.characters import plain
from tutor.notation.elements.lexicon import HEDGES, MEANINGS, SPEECH, WAYS, Meaning, folded, said
from tutor.notation.elements.tree import Span
from tutor.notation.lines.found import trimmed
from tutor.notation.lines.line import Line, Side
from tutor.notation.lines.reading import MOST_CHARACTERS
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS, NAME
from tutor.notation.sentences.aside_said import denied
from tutor.notation.sentences.talk import TURNS_NOTHING
from tutor.notation.sides.ending import COUNTING

MOST_TRIED = 3
"""So many marks from the equation back are tried."""
FEWEST = 3
"""So many words beside names and units make talk of a text."""
SHORTEST = 3
"""Characters of the shortest word that says a sense."""
_MARK = re.compile(
    r"[,;:](?![0-9])|\.(?= )|∴|⇒|→|=>|->|\b(?:so|hence|thus|therefore|whence|consequently|meaning|giving|leaving|making)\b"
    r"|\b(?:which|that|this) +(?=(?:gives|makes|leaves|means|is)\b)|\b(?:[Ii]|[Ww]e|[Yy]ou|you'll) +(?=(?:get|have|find|obtain)\b)"
)
_LEADS = re.compile(
    r" *(?:(?:(?:and|but|so|then|hence|thus|therefore|that|which|this|it|its|it's|that's|is|makes?|gives?|means|leaves|comes|to|be|must|has|us|we|get|have)\b|[,:]) *)*"
)
_GOES_ON = re.compile(r"[-+*/=^)]|(?:plus|minus|times|over|with|into|by|of)\b")
_ADDED = re.compile(r" *and\b")
_SIZE = re.compile(r"(?<![\w.])[0-9][0-9.,]*")
_TAKES_BACK = re.compile(
    r"wrong|false|incorrect|mistak|untrue|error|instead|rather|should|scrap|ignore|cancel that|would|n't|≠|\?"
    r"|\b(?:unless|suppose|imagine|pretend)\b|\bif\b[^,;:]*\b(?:were|was|had)\b",
    re.IGNORECASE,
)
_FORBIDS = re.compile(
    r"(?:^|[,;:.!]) *(?:(?:but|and|so|please) +)*(?:do not|don't|dont|never)\b", re.IGNORECASE
)
_CLAUSE_ENDS = re.compile(r"[,;:.](?![0-9])")
_WORD = re.compile(rf"(?<![\w}}])[{LETTERS}][{LETTERS}'-]*(?![\w{{}}])")
_PULL = frozenset(("pull", "pulls", "pulling"))
"""What a force is drawn as, where its minus turns it."""
_ALONG: tuple[Meaning, ...] = ("T", "C")
_ACROSS: tuple[Meaning, ...] = ("left", "right", "up", "down")

_NUMBER = re.compile(r"[0-9]+(?:\.[0-9]+)?")
_OVER = re.compile(r"[*/]")
_WORKED_OUT = re.compile(
    rf"(?<![\w.*/+^=(-])(?P<work>{_NUMBER.pattern}(?: ?[*/] ?{_NUMBER.pattern})+) ?= ?(?P<comes>{_NUMBER.pattern})(?![\w.]|\s*[-+*/^=(])"
)
"""A product of numbers and what it comes to: 0.6 * 49.58 = 29.75."""
NEAR = 0.005
"""So near is what a product in talk comes to."""
_FAR = re.compile(r" *[0-9.]+ ?(?:mm|cm|m|ft|in|feet|metres|meters) *")
"""A distance set apart: the level part has an arm, 5 m, so ..."""

Reads = Callable[[str], Line | None]


def in_last_clause(text: str, names: Names, reads: Reads) -> Line | None:
    """The line of the clause that a sentence ends in, with what stands before it told as unread; else None."""
    if len(text) > MOST_CHARACTERS:
        return None
    typed = plain(text)
    for tried, (end, first) in enumerate(_marks(typed)):
        if tried == MOST_TRIED or not only_talks(typed[:end], typed[end:], names):
            return None
        if first == len(typed) or _GOES_ON.match(typed, first):
            continue
        line = reads(" " * first + typed[first:])
        if line is not None and denied(typed[line.steps[-1].span.end :], typed[:first], names):
            return None
        if line is not None and (line := _with_force(line, typed, end, first, names)) is not None:
            told = Span(*trimmed(text, 0, end))
            passed, unread = (told, *line.passed), (told, *line.unread)
            return replace(line, text=text, passed=passed, unread=unread)
    return None


def _marks(text: str) -> Iterator[tuple[int, int]]:
    """Where talk ends and where the clause behind it begins, from the equation or the value back."""
    last = _WORKED_OUT.sub(_settled, text).find("=")
    last = text.find("=") if last < 0 else last
    if last < 0:
        last = max((found.start() for found in _SIZE.finditer(text)), default=0)
    for mark in reversed(list(_MARK.finditer(text, 0, last))):
        leads = _LEADS.match(text, mark.end())
        assert leads is not None
        yield mark.start(), leads.end()


def only_talks(before: str, behind: str, names: Names) -> bool:
    """Whether a text is words enough, computes nothing and takes nothing back, and ends in no term of a sum."""
    before = _WORKED_OUT.sub(_settled, before)
    if (
        "=" in before
        or _FORBIDS.search(before)
        or _TAKES_BACK.search(TURNS_NOTHING.sub(" ", before))
    ):
        return False
    if denied(before, "", names):
        return False
    clauses = [part for part in _CLAUSE_ENDS.split(before) if part.strip()]
    if clauses and _FAR.fullmatch(clauses[-1]):
        clauses.pop()
    if not clauses:
        return False
    spoken = [[word for word in _WORD.findall(part) if _is_spoken(word, names)] for part in clauses]
    added = _ADDED.match(behind.lstrip(",; ")) is not None
    last = NAME.findall(clauses[-1])[-1:]
    talks = bool(spoken[-1]) and sum(map(len, spoken)) >= FEWEST
    return talks and not (added and any(map(names.plainly, last)))


def _settled(found: re.Match[str]) -> str:
    """What is left of a product in talk: its number, where it comes out so, and all of it where it does not."""
    numbers = [float(number) for number in _NUMBER.findall(found["work"])]
    worked = numbers[0]
    for sign, number in zip(_OVER.findall(found["work"]), numbers[1:], strict=True):
        if sign == "/" and number == 0.0:
            return found[0]
        worked = worked / number if sign == "/" else worked * number
    right = abs(worked - float(found["comes"])) <= NEAR * abs(worked)
    return found["comes"].rjust(len(found[0])) if right else found[0]


def _is_spoken(word: str, names: Names) -> bool:
    """Whether a word is one of a language alone."""
    if len(word) < 2 or word in units.SPELLED or word.lower() in COUNTING:
        return False
    return word.islower() or not names.plainly(word)


def _with_force(line: Line, text: str, end: int, first: int, names: Names) -> Line | None:
    """A value as that of the force that it, or else the talk alone, names; None where its force or sense is not clear."""
    step = line.steps[-1]
    side, named = step.sides[-1], {each.name for each in step.sides if each.name is not None}
    if not side.numeric or not (named or len(step.sides) == 1):
        return line
    words = NAME.findall(text, 0, end)
    if named:
        return line if agrees(side, words, named, names) else None
    named = {name for word in words for name in _meant(word, names)}
    measured = (side.unit or side.letter or side.sense) is not None
    if any(folded(word) not in HEDGES for word in NAME.findall(text, first, step.span.start)):
        return None
    if not measured or len(named) > 1 or not agrees(side, words, named, names):
        return None
    start = Span(step.span.start, step.span.start)
    of = tuple(zeroed(name, start)[0] for name in named)
    return replace(line, steps=(replace(step, sides=(*of, *step.sides)),))


def _meant(word: str, names: Names) -> tuple[str, ...]:
    """The forces that a word of talk may name; in small letters not one that is an everyday word."""
    everyday = word.islower() and (folded(word) in MEANINGS or folded(word) in SPEECH)
    return () if len(word) < 2 or everyday else names.plainly(word)


def agrees(side: Side, words: Sequence[str], own: Collection[str], names: Names) -> bool:
    """Whether the talk says nothing against the T or C, or the way, of a value; of one without, nothing at all."""
    if not any(term.value for term in side.terms):
        return True
    told = {side.letter, side.sense} - {None}
    against: tuple[Meaning, ...] = _ACROSS if side.sense else _ALONG if side.letter else WAYS
    of: Collection[str] = own
    drawn = side.letter == "C" and sum(term.value for term in side.terms) < 0.0
    for word in words:
        meant = _meant(word, names)
        of = meant or of
        way = said(word, *against) if len(word) >= SHORTEST and not meant else None
        if drawn and folded(word) in _PULL:
            continue
        if way is not None and set(of) <= set(own) and way not in told:
            return False
    return True
