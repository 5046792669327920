"""Which value does a sentence tell in words: "AC works out at minus 67.6 kN, so the jib is squeezed"?

It is spelled as a value, in its own columns: its force where one is named, or where the equation before it has one alone;
its size; and what is said of T or C, or the way. Asked only where a line cannot be read otherwise.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, replace

from tutor.notation.elements.characters import plain
from tutor.notation.elements.lexicon import says
from tutor.notation.elements.tree import Span
from tutor.notation.last_clause import agrees, only_talks
from tutor.notation.lines.found import Taken, trimmed
from tutor.notation.lines.line import Line
from tutor.notation.lines.reading import MOST_CHARACTERS
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS, NAME
from tutor.notation.sentences.value_words import (
    COMES,
    MEMBERS,
    SUPPORTS,
    SizeTold,
    WayWord,
    leads_to_name,
    meant,
    told_of_size,
)

Reads = Callable[[str], Line | None]

_SIGN = r"[-+]|\b(?:minus|plus)\b"
_UNIT = r"(?:k?N|MN|kips?|k|lbs?|#|pounds|newtons|kilonewtons)(?![\w²])"
_SIZE = re.compile(
    rf"(?:(?P<sign>{_SIGN}) *)?(?<![\w.,}}])(?P<size>[0-9](?:[0-9.,]*[0-9])?) ?{_UNIT}(?! *[-+*/^])"
)
_CLAUSE = re.compile(r"[,;:](?![0-9])|\.(?= )|[∴⇒→]|=>|->")
_BEHIND_SUM = re.compile(
    r"(?<=[\w)}\]] )(?=(?:and +)?(?:so|hence|thus|therefore|making|leaving|which|meaning)\b)"
)
"""Where a clause begins behind an equation without a mark: ... = 0 so the post takes 12."""
_EQUATED = re.compile(
    rf"(?P<name>(?<![\w}}])[{LETTERS}][\w{{}}'-]*)(?P<verb> +{COMES}(?: +(?:about|roughly))?)(?= +(?:minus +)?[-+(]? ?[0-9.])"
)
_SET_BETWEEN = re.compile(
    rf"(?<=[a-z]),(?P<name> [{LETTERS}][\w{{}}]{{1,7}}),(?= +(?:pushes|pulls|carries|takes|is|has|comes|works|bears|holds)\b)"
)
"""The name of a member behind what it is: the last diagonal, DE, pushes."""
MOST_EQUATED = 3
"""So many values of forces by name a sentence may tell."""
_FOLLOWS = re.compile(r" *(?:and +)?(?:so|hence|thus|therefore|then)\b")
_EVEN = {"T": "tens", "C": "comp"}


@dataclass(frozen=True)
class Spelled:
    """A text with the value of its last clause in its own columns; `told` is what stands before that value and was not read.

    `cut` is the column where that clause is set off, `stated` whether equations stand before it.
    """

    text: str
    told: Span
    cut: int
    stated: bool
    clause: SizeTold

    @property
    def taken(self) -> tuple[Taken, ...]:
        """The noun that stands for the force of the equation before it."""
        return (
            (("noun", self.told),)
            if self.stated and self.clause.nouns and self.clause.name is None
            else ()
        )


def value_in_words(text: str, names: Names, reads: Reads) -> Line | None:
    """The line of a value that a text tells in words, behind equations or talk or alone; else None."""
    if len(text) > MOST_CHARACTERS:
        return None
    typed = _SET_BETWEEN.sub(lambda found: f" {found['name']} ", plain(text))
    equated = typed
    if len(_EQUATED.findall(typed)) <= MOST_EQUATED:
        equated = _EQUATED.sub(lambda found: _equals(found, names), typed)
    if equated != typed:
        if (line := reads(equated)) is not None:
            return _as_typed(line, text)
        typed = equated if "=" in typed else typed
    made = value_spelled(typed, names)
    if made is None or (
        made.cut and not made.stated and not only_talks(typed[: made.cut], "", names)
    ):
        return None
    line = reads(made.text)
    if line is None or (made.cut and not made.stated and not _goes_with(line, typed, made, names)):
        return None
    line = _as_typed(line, text)
    if made.stated:
        return replace(line, taken=(*line.taken, *made.taken))
    spans = (made.told,) if len(text[made.told.start : made.told.end].split()) > 1 else ()
    return replace(line, passed=(*line.passed, *spans), unread=(*line.unread, *spans))


def _as_typed(line: Line, text: str) -> Line:
    """The line with its statements quoted as they were typed."""
    return replace(line, text=text, steps=tuple(replace(step, text=text) for step in line.steps))


def _equals(found: re.Match[str], names: Names) -> str:
    """A name and = for the verb between it and its number, where the clause begins with the name."""
    begins = max(
        (mark.end() for mark in _CLAUSE.finditer(found.string, 0, found.start())), default=0
    )
    led = leads_to_name(found.string[begins : found.start()])
    if not led or len(meant(found["name"], names)) != 1:
        return found[0]
    return found["name"] + " =".ljust(len(found["verb"]))


def value_spelled(typed: str, names: Names) -> Spelled | None:
    """The text with what its last clause tells spelled as a value; None where it tells none."""
    sizes = list(_SIZE.finditer(typed, typed.rfind("=") + 1))
    if not sizes:
        return None
    start, end = sizes[-1].span()
    cut, first = _last_clause(typed, start)
    told = told_of_size(typed, first, start, end, names)
    if told is None:
        return None
    stated = "=" in typed[:cut]
    made = _spelled(typed, first if stated else 0, sizes[-1], told, names)
    if made is None:
        return None
    ends = told.verb if told.name is None else told.name.start
    return Spelled(made, Span(*trimmed(typed, first if stated else 0, ends)), cut, stated, told)


def _last_clause(text: str, start: int) -> tuple[int, int]:
    """Where the clause of the size in column `start` is set off, and where it begins."""
    marks = [mark for mark in _CLAUSE.finditer(text, 0, start) if text[mark.end() : start].strip()]
    cut, first = marks[-1].span() if marks else (0, 0)
    behind = [mark.start() for mark in _BEHIND_SUM.finditer(text, first, start)]
    stated = [at for at in behind if "=" in text[first:at]]
    return (stated[-1], stated[-1]) if stated else (cut, first)


def _goes_with(line: Line, text: str, made: Spelled, names: Names) -> bool:
    """Whether talk before a value names no other force, and says nothing against its T or C, or its way."""
    name = made.clause.name
    own = () if name is None else meant(text[name.start : name.end], names)
    words = NAME.findall(text, 0, made.cut)
    others = {name for word in words for name in meant(word, names)} - set(own)
    return not (others and not own) and agrees(line.steps[-1].sides[-1], words, own, names)


def _spelled(
    text: str, first: int, size: re.Match[str], told: SizeTold, names: Names
) -> str | None:
    """What stands before column `first`, and the value in its own columns; None where it has no room or contradicts itself."""
    start, end = size.span()
    made = text[:first]
    if told.name is not None:
        if made.strip() and made.rstrip()[-1] not in ",;:.∴⇒→>":
            made += ";"
        made = made.ljust(told.name.start) + text[told.name.start : told.name.end] + " ="
    elif first:
        led = _led(text, first, told, names)
        if led is None:
            return None
        made = led
    ways = told.along or told.across
    behind = [way for way in ways if way.start >= end]
    if ways and not behind:
        lead = _before(size, ways[0])
        if lead is None:
            return None
        made = made.ljust(start - len(lead) - 1) + lead
    if len(made) >= start:
        return None
    made = made.ljust(start) + text[start:end]
    if behind:
        typed = text[behind[0].start : behind[0].end]
        fits = says(typed, behind[0].means)
        made = made.ljust(behind[0].start) + (typed if fits else _EVEN[behind[0].means])
    return made.ljust(len(text))


def _before(size: re.Match[str], way: WayWord) -> str | None:
    """The word for a way before a size; nothing where its sign says it, None where the sign says another."""
    if size["sign"] is None:
        return _EVEN.get(way.means, way.means)
    negative = size["sign"] in ("-", "minus")
    return "" if way.means == ("C" if negative else "T") else None


def _led(text: str, first: int, told: SizeTold, names: Names) -> str | None:
    """What stands before column `first`, led on to the value of the force that its last equation has alone; else None.

    Behind the working of that force the value goes on with the chain.
    """
    stated = text[:first].rstrip(" ,;:.∴⇒→=>-")
    last = _CLAUSE.split(stated)[-1]
    words = {word for word in NAME.findall(last) if meant(word, names)}
    if len(words) != 1:
        return None
    force = words.pop()
    nouns = (
        MEMBERS if any(name in meant(force, names) for name, _, _ in names.members) else SUPPORTS
    )
    if told.nouns and not told.nouns & nouns:
        return None
    if re.match(rf" *{re.escape(force)} *=", last) is not None:
        return f"{stated} ="
    so = " so" if _FOLLOWS.match(text, first) else ""
    return f"{text[:first]}{so} {force} ="
