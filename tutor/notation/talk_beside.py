"""Where a whole statement can be read, may what stands apart from it on either side be talk?

Asked where a line cannot be read with it: "..., CD flat", "...; B_y, the 10 and the 8 all go through D", "... % 12 kip go
through U2". Talk is set apart by a mark, speaks and computes nothing; it takes nothing back, gives no value and says
no way, T or C.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import replace

from tutor.notation.aside_said import denied
from tutor.notation.aside_words import complete
from tutor.notation.bracket_talk import settled
from tutor.notation.ending import COUNTING
from tutor.notation.lexicon import MEANINGS, SPEECH, WAYS, folded, says
from tutor.notation.line import Line
from tutor.notation.names import Names
from tutor.notation.symbols import LETTERS
from tutor.notation.talk import TURNS_NOTHING, is_speech
from tutor.notation.talked import with_talk_told
from tutor.notation.tree import Span
from tutor.notation.unreadable import Broken
from tutor.notation.words import ANGLES, FUNCTIONS

MOST_MARKS = 6
"""So many marks on either side are tried as the end of talk."""
_MARK = re.compile(
    r"\.{2,}|…|[,;:|](?![0-9])|[?!]+|\.(?= |$)| -{1,3}(?= )| ?[–—]+ ?| [%#](?= )| //|\t|(?<=\S) {3,}(?=\S)"
)
_WORD = re.compile(rf"[{LETTERS}][\w{{}}'’-]*")
_SLOPE = re.compile(
    r"(?<![\w.])[0-9]+(?:[-/:][0-9]+)+(?![\w.])|[0-9.]+ ?°|(?<=[^\W\d])[-/](?=[^\W\d])"
)
_OPERATES = re.compile(r"[-+*/^√<>=·×÷|]")
_FIGURE = re.compile(r"(?<![\w}])[0-9]")
_VERB = re.compile(
    r"\b(?:is|are|was|has|have|go|goes|pass|passes|act|acts|hang|hangs|cancels?|drops?|turns?|stands?|lies?|sits?|cuts?|meets?|points?|makes?|does|do|comes?|needs?|feels?)\b",
    re.IGNORECASE,
)
_PRESSES = re.compile(
    r"press|thrust|squeez|stretch|shorten|lengthen|crush|cm?pr|tns", re.IGNORECASE
)
"""What may say T or C in another form than the table has."""

Reads = Callable[[str], Line | None]


def among_talk(text: str, names: Names, reads: Reads) -> Line | None:
    """A line with the talk left out that stands before or behind what `reads` can read; else None.

    All of the talk is told as unread.
    """
    if "=" not in text:
        return None
    for start in (0, *_beginnings(text, names)):
        for end in (len(text), *_endings(text, start, names)):
            if start == 0 and end == len(text):
                continue
            line = reads(" " * start + text[start:end])
            if line is not None:
                return _told(text, start, end, line, names)
    return None


def _told(text: str, start: int, end: int, line: Line, names: Names) -> Line | None:
    spans = [span for span in (_trimmed(text, 0, start), _trimmed(text, end, len(text))) if span]
    whole = replace(line, text=text, passed=(*line.passed, *spans))
    try:
        with_talk_told(whole, names)
    except Broken:
        return None
    return replace(whole, unread=(*line.unread, *spans))


def _trimmed(text: str, start: int, end: int) -> Span | None:
    said = text[start:end]
    left = len(said) - len(said.lstrip(_MARKS))
    size = len(said.rstrip(_MARKS))
    return Span(start + left, start + size) if left < size else None


_MARKS = " \t.,;:!?|%#/–—-…"


def _beginnings(text: str, names: Names) -> Iterator[int]:
    """Where a statement may begin behind talk, the shortest talk first."""
    for mark in list(_MARK.finditer(text, 0, text.index("=")))[:MOST_MARKS]:
        if is_talk(text[: mark.start()], "", names):
            yield mark.end()


def _endings(text: str, start: int, names: Names) -> Iterator[int]:
    """Where a statement may end before talk, the longest talk first."""
    for mark in list(_MARK.finditer(text, text.rindex("=")))[:MOST_MARKS]:
        before = text[start : mark.start()]
        if complete(before) and is_talk(text[mark.end() :], before, names):
            yield mark.start()


def is_talk(said: str, before: str, names: Names) -> bool:
    """Whether words speak only: nothing in them computes, takes back, gives a value or says a way."""
    words = _WORD.findall(said)
    spoken = [word for word in words if _is_spoken(word, names)]
    named = any(names.plainly(word) for word in words)
    if not spoken or _OPERATES.search(_SLOPE.sub(" ", said)) is not None:
        return False
    if any(says(word, *WAYS, "zero") for word in _WORD.findall(TURNS_NOTHING.sub(" ", said))):
        return False
    if any(_PRESSES.match(word) for word in words):
        return False
    if any(word.lower() in COUNTING - {"one", "two", "three", "four"} for word in words):
        return False
    figures = _FIGURE.search(_SLOPE.sub(" ", said)) is not None
    if figures and (len(spoken) < 2 or _VERB.search(said) is None or _gives(said, names)):
        return False
    if len(spoken) < 2 and not named and folded(spoken[0]) not in MEANINGS.keys() | SPEECH:
        return False
    return not denied(settled(said), before, names)


def _is_spoken(word: str, names: Names) -> bool:
    """Whether a word is one of a language, and no force, function or angle."""
    if names.plainly(word) and not (word.islower() and folded(word) in SPEECH):
        return False
    if word.lower() in FUNCTIONS or word.lower() in ANGLES or len(word) < 2:
        return False
    return folded(word) in SPEECH or is_speech(word, names)


_GIVEN = re.compile(
    rf"(?P<name>[{LETTERS}][\w{{}}'-]*)[ ,]*(?:(?:is|are|was|has|have|of|at|acts|carries|takes|gives|comes|to|out|about|only|just|then|also)[ ,]+)*[0-9]"
)


def _gives(said: str, names: Names) -> bool:
    """Whether words give a force a number: AB is 12, AB comes to 12."""
    return any(bool(names.plainly(found["name"])) for found in _GIVEN.finditer(said))
