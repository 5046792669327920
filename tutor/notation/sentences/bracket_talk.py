"""Which brackets of a line only talk: "(minus minus = plus!)", "(AE pushes E ↑)", "[wait.. it turns ccw, ok]"?

Asked where a line cannot be read with them. A bracket that may be a factor, an equation or the way of the value
before it, or that takes something back, is none of them.
"""

from __future__ import annotations

import re
from dataclasses import replace

from tutor.notation.elements import units
from tutor.notation.elements.lexicon import MEANINGS, SPEECH, WAYS, folded, says
from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import Span
from tutor.notation.formulas.words import ANGLES, FUNCTIONS
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS
from tutor.notation.sentences.aside_said import denied
from tutor.notation.sentences.aside_words import Token, tokens_of
from tutor.notation.sides.heeded import ARROWS

_WORD = re.compile(rf"[{LETTERS}][\w{{}}'-]*")
_ONLY_SIGNS = re.compile(r"[-+*/= .,!]*[-+*/=][-+*/= .,!]*")
_RULE_OF_SIGNS = re.compile(
    r" *(?:(?:careful|note|two|double|a|of|the|as|and|so|times|x|is|makes?|gives?|equals?|minus(?:es)?|plus|neg(?:ative)?s?|pos(?:itive)?|sign|[-+*=:,.!])(?: +|(?=[.!,:=]|$)))+",
    re.IGNORECASE,
)
_BEHIND = re.compile(r" *(?:$|[-+,;:.!=∴⇒→)\]]|(?<= )[A-Za-z])")
_ARM = re.compile(
    r"\b(?:arms?|levers?|lever arm|distance|times|by|x|mal|hebelarm|of|weg)\b", re.IGNORECASE
)
_LED = re.compile(r" *[-+*/=]? *[0-9.(√]")
DOES = re.compile(
    r"\b(?:goes?|pass(?:es)?|acts?|turns?|has|have|had|is|are|does|gives?|pulls?|pushes|counts?|hangs?|points?|sits?|lies?)\b",
    re.IGNORECASE,
)
_REASSURED = re.compile(
    r"\b(?:ok|okay|yes|yep|yeah|fine|good|right|correct|sure)\b[ .!]*$|✓", re.IGNORECASE
)
_DOUBT = re.compile(r"\?|\b(?:wait|hang on|hold on)\b", re.IGNORECASE)
_ANSWERED = re.compile(r"\?(?= *(?:yes|yep|yeah)\b)", re.IGNORECASE)
_SHARE = re.compile(
    r" *[0-9.]+ *= *(?:[0-9./½⅓¼]+|half|a third)(?: +of +| ?\* ?| )[A-Z][\w{}]* *", re.IGNORECASE
)
"""Where a number is from: 20 = 4/5 of AD."""
_NOT_THAT = re.compile(
    r" *(?:[0-9./]+[ ,]*)?(?:and |but )?not +(?:the )?(?P<other>[0-9./]*[0-9])[ !.]*", re.IGNORECASE
)
"""Which of two numbers stands in the line: 9/15, not 9/12."""
_HAD = re.compile(
    r" *(?:i +)?(?:had|got|wrote) +(?P<other>[0-9.,]*[0-9])(?: ?[A-Za-z]{1,3}\b)? +(?:at )?(?:first|before|earlier)\b[^=+*/]*$",
    re.IGNORECASE,
)
"""What stood there before, and is put right by now: (had 16.2 first, forgot BD)."""
_MEASURE = "|".join(sorted((*units.NEWTONS, *units.METRES), key=len, reverse=True))
_IN_UNITS = re.compile(
    rf" *(?:(?:all|everything|working|work|lengths?|forces?|arms?|distances?|units?) +)*in +(?:{_MEASURE})(?:(?:,| and| &) *(?:{_MEASURE}))* *"
)
"""In which units a line is worked out, where that is all that is said: (in m), (all in kN and m)."""
_DONE_TO_IT = re.compile(
    r" *(?:(?:divid(?:ed?|ing)|multipl(?:y|ied|ying)|times|÷|×|[/:*] ?(?=[0-9(])) *(?:both sides +|through +|throughout +|all +|out +)*(?:by +)?)"
    r"[-0-9./√() ]*[0-9)](?: +(?:throughout|both sides|on both sides|all through|everywhere))? *",
    re.IGNORECASE,
)
_NEXT = re.compile(r" *(?:$|[,;:.∴⇒→]|=>|->)")
"""What is done to both sides of the equation before it, on the way to the next: (÷4/5) →."""
_CORRECTS = re.compile(r"\b(?:should|actually|instead|correction|meant|rather)\b", re.IGNORECASE)
_VALUE = re.compile(
    rf"(?:^|[,;:∴⇒→=]|\b(?:so|hence|thus|gives|and)\b) *(?P<name>[{LETTERS}][\w{{}}'-]*)? *=[^=,;:∴⇒→]*?[-+]? ?(?P<size>[0-9][0-9.,]*) *[{LETTERS}]{{0,4}} *$"
)


def without_brackets(source: Source, names: Names) -> tuple[Source, tuple[Span, ...]] | None:
    """The source with blanks for the brackets that only talk, and their places; None where there is none."""
    text, chars = source.text, list(source.text)
    told: list[Span] = []
    for token in _brackets(text):
        if _talks(text, token, names):
            chars[token.start : token.end] = " " * (token.end - token.start)
            told.append(source.span(token.start, token.end))
    return (replace(source, text="".join(chars)), tuple(told)) if told else None


def _brackets(text: str) -> list[Token]:
    """The outermost brackets that stand apart."""
    return [
        token
        for token in tokens_of(text, 0)
        if token.kind == "bracket"
        and text[token.start - 1 : token.start] in ("", " ")
        and (_BEHIND.match(text, token.end) is not None or not text[: token.start].strip())
    ]


def _talks(text: str, token: Token, names: Names) -> bool:
    inner, before = token.text[1:-1], text[: token.start]
    if _ONLY_SIGNS.fullmatch(inner) or _rule_of_signs(inner):
        return bool(before.strip())
    if _IN_UNITS.fullmatch(inner) is not None:
        return not before.strip()
    if _SHARE.fullmatch(inner) is not None:
        return "=" in before
    if _DONE_TO_IT.fullmatch(inner) is not None:
        return "=" in before and _NEXT.match(text, token.end) is not None
    if (said := _NOT_THAT.fullmatch(inner)) is not None:
        return re.search(rf"(?<![\w.]){re.escape(said['other'])}(?![\w.]*\w)", before) is None
    if (earlier := _HAD.match(inner)) is not None:
        return (
            "=" in before
            and re.search(rf"(?<![\w.]){re.escape(earlier['other'])}\b", before) is None
        )
    spoken = [word for word in _WORD.findall(inner) if is_spoken(word, names)]
    arrows = any(char in ARROWS for char in inner)
    named = {name for word in _WORD.findall(inner) for name in names.plainly(word)}
    if not (_speaks(spoken) or (arrows and (named or spoken))):
        return False
    if "=" in inner and (named or any(map(str.isdigit, inner))):
        return False
    if takes_back(inner, before, names):
        return False
    if _may_be_factor(inner, spoken) and (_COUNTS.search(inner) or not _ends_in_way(before)):
        return False
    return not says_a_way(inner, before, named, names)


def _rule_of_signs(inner: str) -> bool:
    """Whether a bracket only says that two minuses make a plus."""
    words = inner.lower()
    two = len(re.findall(r"minus|neg", words)) > 1 or "minuses" in words or "double" in words
    return two and _RULE_OF_SIGNS.fullmatch(inner) is not None


def is_spoken(word: str, names: Names) -> bool:
    """Whether a word is no force, function, angle or unit."""
    if names.plainly(word) and not (word.islower() and folded(word) in SPEECH):
        return False
    return word.lower() not in {*FUNCTIONS, *ANGLES} and (word not in units.SPELLED or word == "in")


def _speaks(spoken: list[str]) -> bool:
    """Whether words are speech: one that stands in a table, or several."""
    long = [word for word in spoken if len(word) > 1]
    return len(long) > 1 or any(
        folded(word) in SPEECH or folded(word) in MEANINGS or _is_long(word) for word in long
    )


def _is_long(word: str) -> bool:
    """Whether a word that stands in no table is long enough to be one."""
    return len(word) > 4 and word.isalpha() and word.islower()


def _may_be_factor(inner: str, spoken: list[str]) -> bool:
    """Whether a bracket has a number that may be meant as a factor: (4 m), (arm 4), (4 m from A)."""
    if not any(map(str.isdigit, inner)) or (len(spoken) > 1 and DOES.search(inner)):
        return False
    if ", " in inner and re.match(r"[0-9.]+ *,", inner) is None and len(spoken) > 2:
        return False
    return _LED.match(inner) is not None or len(spoken) < 3 or _ARM.search(inner) is not None


def _ends_in_way(before: str) -> bool:
    """Whether a value stands before a bracket whose T or C, or way, is said already: 37.5 kN up (half of 75)."""
    value = _CLOSED.search(before)
    return value is not None and says(value["way"], *WAYS)


_CLOSED = re.compile(
    rf"(?:=|^ *[{LETTERS}][\w{{}}'-]* ) *[-+]? ?[0-9.,]*[0-9] *(?:{'|'.join((*units.NEWTONS, 'lbs', 'kips', 'k'))})?,? +(?:(?:acting|to the|in) +)?(?P<way>[{LETTERS}]+) *$"
)
_COUNTS = re.compile(r"\b(?:times|twice|double|plus|minus|less|more|each|x)\b", re.IGNORECASE)
"""Words by which a number in a bracket may belong to the value before it."""


def takes_back(inner: str, before: str, names: Names) -> bool:
    """Whether a bracket corrects what stands before it; a doubt that it settles itself (big? but ok) corrects nothing."""
    if _CORRECTS.search(inner):
        return True
    doubts = _DOUBT if _REASSURED.search(inner) else _ANSWERED
    return denied(doubts.sub(" ", inner), before, names)


def says_a_way(inner: str, before: str, named: set[str], names: Names) -> bool:
    """Whether a bracket says T or C, or which way, of the value that it stands behind."""
    ways = any(says(word, *WAYS) for word in _WORD.findall(inner))
    if not ways and not any(char in ARROWS for char in inner):
        return False
    value = _VALUE.search(before)
    if value is None or not value["size"].strip("0.,"):
        return False
    return not named or bool(named & set(names.meant(value["name"] or "")))
