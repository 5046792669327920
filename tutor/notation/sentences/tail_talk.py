"""Which words beside a whole equation only talk: "... = 0, CD flat", "-2869 ?? big but ok", "CD is flat → ... = 0"?

Asked where a line cannot be read with them. What a comma, a semicolon, dots, a bar or a doubt sets off behind a
whole equation, or an arrow or "so" before one, is talk where it computes nothing, gives no value, says no T or C
of the value before it and takes nothing back, as in brackets.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from tutor.notation.elements import lexicon, units
from tutor.notation.elements.lexicon import says
from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import Span
from tutor.notation.elements.unreadable import Broken
from tutor.notation.formulas.words import ANGLES, FUNCTIONS
from tutor.notation.headings.heading import heading_in
from tutor.notation.lines.found import trimmed
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS
from tutor.notation.sentences.aside_said import AT_END
from tutor.notation.sentences.aside_words import complete
from tutor.notation.sentences.asides import REFERS
from tutor.notation.sentences.bracket_said import with_brackets_said
from tutor.notation.sentences.bracket_talk import DOES, says_a_way, takes_back, without_brackets
from tutor.notation.sentences.vectors_said import without_vectors
from tutor.notation.sides.ending import COUNTING
from tutor.notation.sides.turned import makes_another

_MARK = re.compile(r",(?![0-9])|[;|%]|(?<!\.)\.{2,}|…|//+|[?!]+(?= )|(?<= )--(?= )")
_LEADS = re.compile(r"(?:[,;:] *)?(?:→|⇒|∴|=>|->|\b(?:so|hence|thus|therefore)\b),?|[,;:](?![0-9])")
_IN_WORDS = re.compile(r"^ *(?P<said>(?P<one>[^=:;,0-9+*/]*)=(?P<other>[^=:;,0-9+*/]*)):(?=[^:]*=)")
"""An equation in words before the one in symbols: Upthrust of CD = downward forces at D: ..."""
_EQUALS = re.compile(r"=(?!>)")
_WORD = re.compile(rf"[{LETTERS}][\w{{}}'’-]*")
_COMPUTES = re.compile(r"[=+*/^√<>∴⇒→≈]|(?<![\w-])-(?=[ 0-9.(]|[A-Za-z](?![a-z]))")
_SPOKEN_OF = re.compile(
    r"(?:^|\b(?:the|both|and|,)) *[0-9][0-9.,]*(?: ?(?:k?N|MN|kips?|k|lbs?))?"
    r"(?= +(?:(?:and|both|all|only|just|too|load|force|[0-9][0-9.,]*|k?N|MN|kips?|k|lbs?) +)*(?:the\b|go(?:es)?|pass(?:es)?|hangs?|acts?|turns?|points?|has|have|lies?|sits?|stands?|pulls?|push(?:es)?|runs?|through|thru|straight|square)\b)"
)
"""A load by its size, of which something is said: the 10 and the 8 both go through D."""
_CARRIED = re.compile(
    r"\b(?:carr(?:y|ies)|takes?|holds?(?: up)?|bears?) +(?:just +|only +)?the +[0-9][0-9.,]*(?: ?(?:k?N|MN|kips?|k|lbs?))?(?=[ .!]*$)"
)
"""What a member is there for: it just carries the 520."""
_SO_NONE = re.compile(r"\bso +(?:no|none|not|nothing)[ .!]*$")
"""What follows from how a member lies, and no taking back: BD is vertical so no."""
_CONCLUDED = re.compile(
    r" *(?:∴|⇒|→|=>|->|\b(?:so|hence|thus)\b) *[-+]? ?[0-9][0-9.,]*(?: ?[A-Za-z#]{1,4})? *$"
)
_DRAWN = re.compile(
    rf" *(?:(?:[Ww]ith|[Tt]aking|[Dd]rawing|[Aa]ssuming|[Ll]et) +)?(?P<name>[{LETTERS}][\w{{}}]*),? +(?:(?:is|was|be|as) +)?(?:(?:drawn|taken|assumed) +)?"
    r"(?:(?:as|positive|acting|pointing|to|the|be|towards|in|an?) +)*(?:left|right|up|down|tension|compression|ties?|struts?|pulling|pushing)(?:wards?)?\b *[,;:](?=[^=]*[:=])"
)
"""How a force is drawn, before the sum: A_x drawn to the left, →+: ..."""
_ADDS = frozenset((
    "too", "also", "well", "more", "missing", "less", "add", "added", "extra", "another", "forgotten", "forgot", "sign",
    "signs", "swap", "swapped", "flip", "flipped", "turned", "halved", "doubled", "negative", "reversed", "opposite", "scrap",
    "scratch", "ignore", "delete", "cancel", "strike", "redo", "other", "wrongly", "should", "need", "needs",
))  # fmt: skip
"""Words by which what is said beside an equation may be a term of it or turn one."""


def without_talk(source: Source, names: Names) -> Iterator[tuple[Source, tuple[Span, ...]]]:
    """The source without the brackets that only talk, without the talk behind or before it, and without several."""
    made: list[tuple[Source, tuple[Span, ...]]] = [(source, ())]
    ways = (
        without_drawn,
        without_vectors,
        without_brackets,
        with_brackets_said,
        without_tail,
        without_lead,
    )
    for without in ways:
        for before, told in list(made):
            if (bare := without(before, names)) is not None:
                made.append((bare[0], (*told, *bare[1])))
                yield made[-1]


def without_drawn(source: Source, names: Names) -> tuple[Source, tuple[Span, ...]] | None:
    """The source without what it says first of how a force is drawn; the judge reads that in the line itself."""
    found = _DRAWN.match(source.text)
    if found is None or len(names.meanings(found["name"])) != 1:
        return None
    return source.blanked((Span(0, found.end()),)), ()


def without_tail(source: Source, names: Names) -> tuple[Source, tuple[Span, ...]] | None:
    """The source up to a mark behind which it only talks, and the place of the talk; None where there is none."""
    text = source.text
    for mark in _MARK.finditer(text, text.rfind("=") + 1):
        before, said = text[: mark.start()], text[mark.end() :]
        if _whole(before) and _only_talks(said, "?" in mark[0], before, names):
            start = mark.end() + len(said) - len(said.lstrip())
            told = source.span(start, len(text.rstrip()))
            return replace(source, text=before.ljust(len(text))), (told,)
    return None


def without_lead(source: Source, names: Names) -> tuple[Source, tuple[Span, ...]] | None:
    """The source without the talk between its heading and a mark before its equation; None where there is none."""
    text = source.text
    worded = _IN_WORDS.match(text)
    if worded is not None and _worded(worded["one"], names) and _worded(worded["other"], names):
        end = worded.end()
        return replace(source, text=" " * end + text[end:]), (source.span(*worded.span("said")),)
    equals = _EQUALS.search(text)
    for mark in _LEADS.finditer(text, 0, 0 if equals is None else equals.start()):
        start = text.rfind(":", 0, mark.start()) + 1
        said = text[start : mark.start()]
        if _only_talks(said, False, "", names) and not _heads(text, start, mark.start(), names):
            blank = " " * (mark.end() - start)
            told = source.span(*trimmed(text, start, mark.start()))
            return replace(source, text=text[:start] + blank + text[mark.end() :]), (told,)
    return None


def _worded(side: str, names: Names) -> bool:
    """Whether a side of an equation in words has two words or more and says no way and no sum."""
    words = [word for word in _WORD.findall(side) if not names.plainly(word)]
    return len(words) > 1 and sum(_is_word(word.lower(), names) for word in words) > 0


def _heads(text: str, start: int, end: int, names: Names) -> bool:
    """Whether words may say which sum is meant."""
    words = _WORD.findall(text, start, end)
    if any(says(word, "sum", "resolve", "moment") for word in words):
        return True
    if any(map(names.plainly, words)):
        return False
    try:
        head = heading_in(text, start, end, names)
    except Broken:
        return True
    return head is not None and head.label is not None


def _whole(before: str) -> bool:
    """Whether a text ends in a whole equation, or in the number that is concluded from one."""
    value = _CONCLUDED.search(before)
    return complete(before if value is None else before[: value.start()])


def _only_talks(said: str, doubted: bool, before: str, names: Names) -> bool:
    """Whether what stands behind a whole equation is words that leave it as it is."""
    words = _WORD.findall(said)
    if not any(_is_word(word, names) for word in words) or any(map(_changes_terms, words)):
        return False
    named = {name for word in words for name in names.plainly(word)}
    bare = REFERS.sub(" ", _SPOKEN_OF.sub(" ", _CARRIED.sub(" ", said)))
    figures = any(map(str.isdigit, _WORD.sub(" ", bare)))
    if (figures and (named or DOES.search(said) is None)) or _COMPUTES.search(bare) is not None:
        return False
    doubt = "? " if doubted else ""
    settled = f"{doubt}the {_SO_NONE.sub(' ', bare)}"
    if makes_another(said, before) or AT_END.search(bare) or takes_back(settled, before, names):
        return False
    if "=" not in before and not named and _says_otherwise(words, before):
        return False
    return not says_a_way(said, before, named, names)


def _says_otherwise(words: list[str], before: str) -> bool:
    """Whether talk behind a value alone says T or C, and not what stands behind its number."""
    letters = [way for word in _WORD.findall(before) if (way := lexicon.said(word, "T", "C"))]
    ways = {way for word in words if (way := lexicon.said(word, "T", "C"))}
    return bool(ways - set(letters[-1:]))


def _is_word(word: str, names: Names) -> bool:
    """Whether a word can only be one of a language."""
    plain = len(word) > 2 and word.isalpha() and word.islower()
    return plain and not names.plainly(word) and word not in units.SPELLED


def _changes_terms(word: str) -> bool:
    """Whether a word may be a number, an operator or a piece of a formula, or add or turn a term."""
    low = word.lower()
    counts = low in COUNTING or low in _ADDS or low in FUNCTIONS or low in ANGLES
    return counts or _PRESSES.match(word) is not None


_PRESSES = re.compile(r"press|thrust|squeez|stretch|shorte|longer|lengthen|crush", re.IGNORECASE)
"""What may say T or C in another form than the table has."""
