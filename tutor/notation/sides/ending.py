"""What stands behind a number: T or C, an arrow, a word that says which way, or a remark?"""

from __future__ import annotations

import re

from tutor.notation.elements import units
from tutor.notation.elements.lexicon import MEANINGS, Meaning, folded, says
from tutor.notation.elements.tree import Span
from tutor.notation.elements.unreadable import Broken
from tutor.notation.formulas.words import ANGLES, FUNCTIONS, OTHER_FUNCTIONS, front_piece
from tutor.notation.lines.found import Found
from tutor.notation.lines.line import Step
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS
from tutor.notation.sides.heeded import ARROWS, RESULT, Bit, Said, arrow, heed
from tutor.notation.sides.zero_words import INSPECTION

WORD = re.compile(rf"[{LETTERS}][{LETTERS}0-9_']*+(?:-[{LETTERS}]{{2,}}+)*+")
_BIT = re.compile(rf"{WORD.pattern}|[←→↑↓↖↗↘↙]|<[-=]++|[-=]++>|[0-9.,]+|[^ ]")
_LETTER = re.compile(
    r"(?:(?<=kN)|(?<=lb)|(?<=kip)|(?<=[0-9 ]k)|(?<=[0-9 )\]#°.,;-]))(?: *+[,;-])? *+(?P<letter>[TtCc])\.? *$"
)
_FIGURES = re.compile(
    r" *(?:to |à |auf )?[0-9] *(?:s\.? ?f\.?|d\.? ?p\.?|sig\.? ?fig(?:s|ures?)?\.?|decimals?|decimal places?) *"
)
ADDING = frozenset((
    "and", "or", "plus", "minus", "und", "oder", "et", "ou", "y", "o", "is", "are", "be", "ist", "est", "es",
))  # fmt: skip
"""Words with which a number behind a result is no remark."""
_STARTS: tuple[Meaning, ...] = ("remark", "because", "filler", *RESULT, "where")
_OTHERS: tuple[Meaning, ...] = (
    "so", "and", "is", "number", "about", "joint", "whole", "body", "turn", "positive", "lead",
)  # fmt: skip
_SHORT = ("in", "a", "m", "s", "f", "l", "t", "c", "y", "h", "v", "x", "n")


def phrase(text: str, start: int, end: int, names: Names) -> Said | None:
    """What the words from `start` to `end` say; None where they are a piece of a formula."""
    bits = [(found.group(), *found.span()) for found in _BIT.finditer(text, start, end)]
    if _FIGURES.fullmatch(text, start, end):
        return Said(passed=True)
    words = [bit for bit in bits if bit[0][0].isalpha()]
    heeded = Said()
    if bits and bits[0][0] in "@∠":
        heeded.passed = True
        return heeded
    arrows = [bit for bit in bits if bit[0] in ARROWS or arrow(bit[0])]
    if not words and not arrows:
        return None
    if words and not arrows and not _speak(bits, words, names):
        return None
    if any(word.isdigit() for word, _, _ in bits) and not (
        words
        and folded(words[0][0]) not in ADDING
        and (says(words[0][0], "because", "filler", "remark", "where") or _only_remarks(words))
    ):
        return None
    heeded.passed = not words
    heed(bits, heeded, bool(words) and not arrows and says(words[0][0], "because"))
    heeded.passed = any(not says(word, *RESULT, "filler") for word, _, _ in words)
    return heeded


def _speak(bits: list[Bit], words: list[Bit], names: Names) -> bool:
    """Whether words without an arrow say something that a formula does not."""
    if wordy(words[0][0], names):
        return True
    if any(len(word) > 2 and says(word, *RESULT, "remark") for word, _, _ in words):
        return True
    return len(words) == len(bits) == 1 and words[0][0] in "TCtc"


def _only_remarks(words: list[Bit]) -> bool:
    return all(says(word, "remark", "filler", "number") for word, _, _ in words)


def wordy(word: str, names: Names) -> bool:
    """Whether a word can only be a word: of the lexicon, or one that nothing here is called by."""
    bare = word.rstrip(".")
    if names.plainly(bare) and not (folded(bare) in MEANINGS and len(bare) > 2 and bare.islower()):
        return False
    if bare in units.SPELLED and bare not in ("in",):
        return False
    if folded(bare) in MEANINGS and folded(bare) not in _SHORT:
        return says(bare, *_STARTS, *_OTHERS)
    return unknown(bare, names)


def unknown(word: str, names: Names) -> bool:
    """Whether a word is none of the lexicon and nothing that a formula is made of."""
    core = word.replace("-", "")
    if len(core) < 3 or not core.isalpha() or (core.isupper() and len(core) < 5):
        return False
    low = core.lower()
    if low in FUNCTIONS or low in ANGLES or core in units.SPELLED or low in units.LOOSELY:
        return False
    if core in units.OTHER_UNITS or low in units.OTHER_UNITS or low in OTHER_FUNCTIONS:
        return False
    if names.meanings(core) or names.two_joints(core):
        return False
    try:
        return front_piece(core, names, True) is None
    except Broken:
        return False


def of_another(text: str, start: int, end: int, step: Step, found: Found) -> bool:
    """Whether words behind a statement begin with the name of a force that is not in it; they are passed over."""
    first = WORD.match(text, start, end)
    named = set() if first is None else set(found.names.plainly(first[0]))
    stated = {term.name for side in step.sides for term in side.terms} - {None}
    if not named or not stated or named & stated:
        return False
    found.passed.append(Span(start, end))
    return True


def tail(text: str, start: int, end: int, names: Names) -> int | None:
    """The column where words begin behind the number or formula that starts at `start`, if they do."""
    for found in re.finditer(rf"[@∠]|[←→↑↓↖↗↘↙]|<[-=]++|[-=]++>|{WORD.pattern}", text[:end]):
        at = found.start()
        if at < start or not text[start:at].strip(" =+-*/("):
            continue
        if _begins(text, found, start, end, names) and not _bracketed(text, start, at, end):
            return _backed(text, start, at)
    return None


def _begins(text: str, found: re.Match[str], start: int, end: int, names: Names) -> bool:
    """Whether an arrow or a word stands there that begins what is no formula."""
    word, at = found.group(), found.start()
    if word[0] in "@∠←→↑↓↖↗↘↙<-=":
        return True
    if text[at - 1 : at] and (text[at - 1].isalnum() or text[at - 1] in "_{"):
        return False
    if INSPECTION.match(text, at) or _words_alone(text, at, end, names):
        return True
    short = len(word) < 5 and folded(word) not in MEANINGS
    if short and text[start:at].rstrip()[-1:].isdigit():
        return False
    return _may_begin(text, word, at, found.end(), end, names)


def _bracketed(text: str, start: int, at: int, end: int) -> bool:
    """Whether a column lies in a bracket that closes behind it."""
    before, behind = text[start:at], text[at:end]
    return any(before.count(one) > before.count(other) and other in behind for one, other in _PAIRS)


_PAIRS = (("(", ")"), ("[", "]"), ("{", "}"))
COUNTING = frozenset((
    "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "half", "twice", "double",
    "plus", "minus", "times", "over",
))  # fmt: skip
"""Words that may stand for a number or an operator: what they stand in is never passed over."""


def _words_alone(text: str, start: int, end: int, names: Names) -> bool:
    """Whether nothing but words of speech stands there, two at least: no number, sign, unit or force."""
    if _SPEECH.fullmatch(text, start, end) is None:
        return False
    words = [word for word in re.split(r"[ ,.;!?'’-]+", text[start:end]) if word]
    if len(words) < 2 or any(word.lower() in COUNTING or names.meanings(word) for word in words):
        return False
    return wordy(words[0], names) and all(
        wordy(word, names) or (folded(word) in MEANINGS and len(word) > 1) or word in SMALL
        for word in words
    )


SMALL = frozenset((
    "a", "an", "as", "at", "be", "by", "do", "i", "if", "in", "is", "it", "no", "of", "on", "or", "so",
    "to", "up", "we",
))  # fmt: skip
"""Words of speech too short to be told from a name by their length."""
_SPEECH = re.compile(rf"[{LETTERS} ,.;!?'’-]+")


def _may_begin(text: str, word: str, at: int, stop: int, end: int, names: Names) -> bool:
    bare = word.rstrip(".")
    if folded(bare) in ("in", "en") or len(bare) == 1:
        following = WORD.match(text, stop + len(text[stop:end]) - len(text[stop:end].lstrip()))
        return (
            folded(bare) in ("in", "en", "a")
            and following is not None
            and len(following.group()) > 3
            and says(following.group(), *RESULT, "filler", "remark")
        )
    if folded(bare) in MEANINGS and wordy(bare, names):
        return says(bare, *_STARTS)
    if not unknown(bare, names):
        return False
    rest = text[stop:end]
    return re.fullmatch(rf"[{LETTERS} ,.;!?'’-]*+", rest) is not None and not any(
        names.plainly(other) and not other.islower() for other in WORD.findall(rest)
    )


def _backed(text: str, start: int, at: int) -> int:
    """`at`, or the dash, comma or semicolon before it."""
    before = text[start:at].rstrip()
    if before.endswith((",", ";")) or (before.endswith("-") and before[-2:-1] in (" ", "")):
        before = before.rstrip(",;-").rstrip()
    return start + len(before)


def last_letter(text: str, start: int, end: int) -> re.Match[str] | None:
    """A T or C alone at the end of a number with or without its unit."""
    found = _LETTER.search(text[:end])
    return (
        found
        if found is not None and found.start() > start - 1 and text[start : found.start()].strip()
        else None
    )
