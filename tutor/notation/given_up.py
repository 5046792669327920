"""Which sum is given up before it is written anew: "3 E_x - 9*4 no C is at 8!! -> 3 E_x - 72 = 0", "A_x + 0.9 R_C XX A_x + 0.5 R_C = 0"?

It is broken off, before an equals sign or with dots for what is missing. It ends at a word or crosses that give it up; what is
said of it ends at a mark, and the whole equation behind that is the line.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace

from tutor.notation.elements.characters import plain
from tutor.notation.elements.tree import Span
from tutor.notation.lines.found import trimmed
from tutor.notation.lines.line import Line
from tutor.notation.lines.reading import MOST_CHARACTERS
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS, NAME
from tutor.notation.sentences.aside_said import denied

Reads = Callable[[str], Line | None]

MOST_TRIED = 4
"""So many marks behind what is given up are tried."""
_GIVES_UP = re.compile(
    r"(?<!\w)(?:no(?= +[A-Z]\w{0,4} +(?:is|has|was|lies|sits|goes|acts|points|pulls|pushes|hangs)\b)"
    r"|[Nn]ope|[Oo]ops|[Ww]ait|[Hh]mm*|[Aa]rgh|[Uu]gh|[Ss]cratch|[Ss]crap|XX+|xx+)(?!\w)"
)
_BROKEN_OFF = re.compile(r"^[^=]*[\w)\]}][^=]*[-+][^=]*$|\.{3}|…")
_MARKS = re.compile(r"(?:(?:[!?;:,→⇒∴…]|[-=]+>|\.(?![0-9])) *)+")
_SPEAKS = re.compile(rf"(?P<word>[{LETTERS}]{{2,}})(?![\w{{}}(])")


def given_up(text: str, names: Names, reads: Reads) -> Line | None:
    """The line of the equation behind a sum that is given up, with that told as unread; else None."""
    if len(text) > MOST_CHARACTERS or "=" not in text:
        return None
    typed = plain(text)
    found = _GIVES_UP.search(typed)
    if found is None:
        return None
    colon = typed.rfind(":", 0, found.start()) + 1
    if _BROKEN_OFF.search(typed[colon : found.start()]) is None:
        return None
    head = typed[:colon] if "=" not in typed[:colon] else ""
    tried = 0
    for mark in _MARKS.finditer(typed, found.end()):
        first = mark.end()
        if tried == MOST_TRIED or _states(typed[found.end() : first], names):
            return None
        if "=" not in typed[first:] or _begins_in_words(typed, first, names):
            continue
        tried += 1
        line = reads(head.ljust(first) + typed[first:])
        if line is None or denied(typed[line.steps[-1].span.end :], typed[:first], names):
            continue
        told = Span(*trimmed(text, len(head), mark.start()))
        return replace(line, text=text, passed=(told, *line.passed), unread=(told, *line.unread))
    return None


def _states(said: str, names: Names) -> bool:
    """Whether an equation of a force stands in what is said of a sum that is given up."""
    clauses = re.split(r"[!;:,→⇒∴]", said)
    return any(
        "=" in clause and any(map(names.meanings, NAME.findall(clause))) for clause in clauses
    )


def _begins_in_words(text: str, at: int, names: Names) -> bool:
    """Whether words of a language stand behind a mark, and no equation yet."""
    word = _SPEAKS.match(text, at)
    return word is not None and not names.meanings(word["word"])
