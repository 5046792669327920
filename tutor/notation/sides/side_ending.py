"""Where does the formula of a side stop, and what stands in it and behind it in words and letters?"""

from __future__ import annotations

import re
from dataclasses import replace

from tutor.notation.elements.lexicon import WAYS, folded, says
from tutor.notation.elements.tree import Span
from tutor.notation.formulas.words import FUNCTIONS
from tutor.notation.lines.found import Found, trimmed
from tutor.notation.lines.line import Side
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS, PARTNER
from tutor.notation.sides.ending import COUNTING, WORD, last_letter, phrase, tail, wordy
from tutor.notation.sides.heeded import ARROWS, PUSHING, Said

_LONE = frozenset("TC")
_THAT_IS = re.compile(r" *(?:i\.? ?e\.?|d\. ?h\.|so|hence|thus),? +", re.IGNORECASE)
_INNER = re.compile(r" *[-+]?[0-9][0-9.,]*(?: *(?:kN|N|lbs?|kips?|k))? *(?P<letter>[TC]) *")


def ending_of(
    chars: list[str],
    start: int,
    stop: int,
    index: int,
    last: bool,
    found: Found,
    turned: list[int],
    end: int,
) -> tuple[int, Said, bool]:
    """Where the formula of a side stops, what stands behind it, and whether that ends the chain."""
    said = Said()
    _leading(chars, start, stop, found, said)
    _groups(chars, start, stop, found, said, turned)
    text = "".join(chars)
    closed = False
    cut = tail(text, start, stop, found.names) if index or last else None
    if cut is not None:
        words = phrase(text, cut, stop, found.names)
        if words is not None:
            _take(said, words)
            if words.passed:
                found.passed.append(Span(*trimmed(text, cut, end if index else stop)))
            closed = not last and words.passed
            stop = cut
    while (letter := _last(text, start, stop, index, last, found)) is not None:
        said.add(letter["letter"], *letter.span("letter"))
        stop = letter.start()
    _in_words(chars, start, stop, index, last, found, said)
    return stop, said, closed


def _in_words(
    chars: list[str], start: int, stop: int, index: int, last: bool, found: Found, said: Said
) -> None:
    """Takes what a side without a number says: T, the tie AB, zero."""
    text = "".join(chars)
    whole = text[start:stop].strip()
    if not last and _names_a_force(whole, found.names):
        _kind_of_member(chars, start, stop, said)
    elif whole and (whole in _LONE or not any(map(str.isdigit, whole))):
        words = phrase(text, start, stop, found.names)
        if (
            words is not None
            and (words.letter or words.zero or words.sense)
            and not (found.names.meanings(whole) and (not index or whole not in "TC" or last))
        ):
            _take(said, words)
            for column in range(start, stop):
                chars[column] = " "


def _names_a_force(text: str, names: Names) -> bool:
    """Whether words end in a force, so that they say nothing without it: pulls back with Q_x."""
    words = text.split()
    if not all(word.isalpha() for word in words[:-1]):
        return False
    return len(words) > 1 and len(words[-1]) > 1 and bool(names.meanings(words[-1]))


def _kind_of_member(chars: list[str], start: int, stop: int, said: Said) -> None:
    """Takes the word for T or C from before the force that it is said of: strut AB, the tie EF."""
    text = "".join(chars[start:stop])
    *words, _ = (found for found in WORD.finditer(text))
    ways = [word for word in words if says(word[0], *WAYS)]
    if ways and all(_says_way(word[0]) for word in words):
        for word in ways:
            said.add(word[0], start + word.start(), start + word.end())
        _blank(chars, start, start + words[-1].end())


def _says_way(word: str) -> bool:
    return len(word) > 1 and says(word, *WAYS, "filler")


def _last(
    text: str, start: int, stop: int, index: int, last: bool, found: Found
) -> re.Match[str] | None:
    """A T or C at the end of a side, unless a force of that name is meant there."""
    letter = last_letter(text, start, stop)
    if letter is None or not found.names.meanings(letter["letter"]):
        return letter
    found.open.add("named")
    name = (index == 0 and not last) != found.choice.named
    return None if name else letter


def _leading(chars: list[str], start: int, stop: int, found: Found, said: Said) -> None:
    """Takes the word that says which way, or T or C, from before a number alone: down 4 kip."""
    led = _LED.fullmatch("".join(chars), start, stop)
    if led is None or (led["word"] not in _LONE and found.names.meanings(led["word"])):
        return
    before = led["before"]
    if before and not all(
        word == "a" or (says(word, "filler", "is", "lead") and not found.names.meanings(word))
        for word in before.split()
    ):
        return
    if says(led["word"], *WAYS):
        said.add(led["word"], *led.span("word"))
        _blank(chars, start, led.end("led"))


_LED = re.compile(
    rf" *(?P<led>(?:(?P<before>[{LETTERS}]+(?: +[{LETTERS}]+)??) +)??(?P<word>[{LETTERS}]{{2,}}|[TC])"
    rf"(?: +(?:force|stress|load))?(?: +of)?) +[0-9.][0-9.,]*(?: *[{LETTERS}#]{{1,4}})? *"
)


def _take(said: Said, words: Said) -> None:
    said.take(words)
    said.zero = said.zero or words.zero


def unpushed(said: Said, side: Side, name: str | None, found: Found) -> Said:
    """What is said of a value without the verb for what a support or no force does: -32 kN, it pulls on the wall.

    Which way a support acts that pushes is not said by that: before a minus it says nothing, else perhaps.
    """
    if not (said.acts and side.numeric):
        return said
    size = sum(term.value for term in side.terms)
    support = name in found.names.reactions and name not in found.names.links
    if size and not support:
        return said
    if size > 0.0:
        found.open.add("pushed")
        if not found.choice.pushed:
            return said
    told = [Span(*place) for place in said.places]
    found.passed += [
        one for one in told if not any(p.start <= one.start < p.end for p in found.passed)
    ]
    return replace(said, letter=None, acts=False, places=[])


def _groups(
    chars: list[str], start: int, stop: int, found: Found, said: Said, turned: list[int]
) -> None:
    """Takes brackets that hold words out of a side: (T), (strut), (acts left), (by inspection)."""
    opened: list[int] = []
    text = "".join(chars)
    for index in range(start, stop):
        char = chars[index]
        if char in "([{":
            opened.append(index)
        elif char in ")]}" and opened:
            begin = opened.pop()
            if PARTNER[char] != chars[begin] or not text[start:begin].strip(" =+-*/(["):
                continue
            words = _worded(text, begin, index, found)
            if words is None:
                _inner_letter(chars, text, begin, index, found, turned)
                continue
            _blank(chars, begin, index + 1)
            rest = _REMARK.sub("", "".join(chars[index + 1 : stop]))
            ended = not _GOES_ON.search(rest) or _talk_alone(rest, found.names)
            if ended and not opened:
                _take(said, words)
            elif words.letter is not None:
                found.open.add("heeded")
                if words.letter == "C" and found.choice.heeded:
                    turned.append(begin)
            if words.passed or not ended:
                found.passed.append(Span(begin, index + 1))


_REMARK = re.compile(
    rf"[(\[] *[{LETTERS}]{{2,}}(?: +[{LETTERS}]+)+ *[)\]]"
    rf"|[(\[](?![^()\[\]]*(?:sin|cos|tan))[^()\[\]=]*[{LETTERS}]{{4}}[^()\[\]=]*[)\]](?! *[*/(])"
    rf"|(?<= )[{LETTERS}]{{3,}} +[(\[][0-9]{{1,2}}[)\]](?= *$)|\[[0-9]{{1,2}}\](?= *$)"
)
"""A bracket of words, or the number of a line."""
_GOES_ON = re.compile(r"[0-9+*/=)\]}^-]|sin|cos|tan")
_SET_OFF = re.compile(rf" *-+ +[{LETTERS}]{{3,}}(?: +[{LETTERS}']+)*[ .!]*")


def _talk_alone(rest: str, names: Names) -> bool:
    """Whether words stand behind a dash, and no force, function or word that counts: - the gulls say so."""
    words = [found[0] for found in WORD.finditer(rest)]
    spoken = not any(
        names.meanings(word) or word.lower() in COUNTING or word.lower() in FUNCTIONS
        for word in words
    )
    return spoken and _SET_OFF.fullmatch(rest) is not None


def _inner_letter(
    chars: list[str], text: str, begin: int, end: int, found: Found, turned: list[int]
) -> None:
    """Takes the letter out of a value in brackets that is a factor: 5/13(6.5 T)."""
    letter = _INNER.fullmatch(text, begin + 1, end)
    if letter is None or found.names.meanings(letter["letter"]):
        return
    at = letter.start("letter")
    chars[at] = " "
    found.open.add("heeded")
    if letter["letter"] == "C" and found.choice.heeded:
        turned.append(at)


def _worded(text: str, begin: int, index: int, found: Found) -> Said | None:
    """What the words in a bracket say, None where it is a factor."""
    inner = text[begin + 1 : index].strip()
    if not inner or text[begin - 1] == "_" or inner[0] in "+-*/.":
        return None
    if inner in ("T", "C") and found.names.meanings(inner) and text[begin - 1] != " ":
        found.open.add("named")
        if found.choice.named:
            return None
    if _of_another(text, begin, inner, found.names):
        return Said(passed=True)
    that_is = _THAT_IS.match(text, begin + 1, index)
    said = phrase(text, that_is.end() if that_is else begin + 1, index, found.names)
    return Said(passed=True) if said is None and _beside(text, begin, index, found) else said


def _of_another(text: str, begin: int, inner: str, names: Names) -> bool:
    """Whether a bracket says something of a force whose value does not stand before it: 25 kN (A_y up), 30 (CE is zero).

    Neither does it behind a sum: A_x - R_E sin 30° = 0 (R_E points up and to the left).
    """
    first, *others = WORD.findall(inner) or [""]
    if len(first) < 2 or not names.plainly(first):
        return False
    named = set(names.plainly(first))
    of_a_sum = not named & _subject(text[:begin], names)
    ways = any(says(word, *WAYS) for word in (others if of_a_sum else others[-1:]))
    if not (ways or _points(inner, others) or any(says(word, "zero") for word in others)):
        return False
    before = {name for word in WORD.findall(text[:begin]) for name in names.plainly(word)}
    return bool(before - named) and (not before & named or of_a_sum)


def _subject(before: str, names: Names) -> set[str]:
    """The force that a statement gives the value of; none of an equation with several terms."""
    statement = _STATEMENT.search(before)
    return set(names.plainly(statement["name"])) if statement else set()


_STATEMENT = re.compile(
    rf"(?:^|[;:,∴⇒→.]|\b(?:so|and|hence|thus)\b) *(?P<name>[{LETTERS}][\w{{}}'-]*) *=[^;:∴⇒→]*$"
)


def _points(inner: str, words: list[str]) -> bool:
    """Whether words behind a force say with an arrow which way it pushes or pulls a joint."""
    return any(map(inner.__contains__, ARROWS)) and any(folded(word) in PUSHING for word in words)


def _beside(text: str, begin: int, index: int, found: Found) -> bool:
    """Whether a bracket at the very end only remarks on a plain number: 12 T (vert equil.)."""
    before = _PLAIN_NUMBER.search(text, 0, begin)
    inner = text[begin + 1 : index]
    if before is None or text[index + 1 :].strip() or re.search(r"[=+*/^]", inner):
        return False
    if any(map(str.isdigit, inner)) and float(before["number"].replace(",", ".")) != 0.0:
        return False
    words = WORD.findall(inner)
    if any(found.names.meanings(word) and len(word) > 1 for word in words):
        return False
    return any(len(word) > 3 and wordy(word, found.names) for word in words)


_PLAIN_NUMBER = re.compile(r"= *[-+]? *(?P<number>[0-9]*[.,]?[0-9]+) *(?:[A-Za-z]+ *){0,2}$")


def _blank(chars: list[str], start: int, stop: int) -> None:
    chars[start:stop] = " " * (stop - start)
