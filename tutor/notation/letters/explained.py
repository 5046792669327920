"""Which words of a line only explain a length: "the arm of F_BC about D being 3 × 0.8 = 2.4 m"?

An equation is judged with the arms that stand in it. What is said of an arm in words beside it is taken out
of the text, and told.
"""

from __future__ import annotations

import re
from dataclasses import replace

from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import Span
from tutor.notation.formulas.words import ANGLES, FUNCTIONS
from tutor.notation.letters.introduced import check_goes_on, introduced
from tutor.notation.letters.member_length import without_lengths
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS
from tutor.notation.sentences.spoken_of import without_talk_of_truss

_LENGTH = (
    r"(?:(?:lever|moment|horizontal|vertical|perpendicular|shortest|slant|panel|effective) +)*"
    r"(?:arms?|levers?|distances?|perpendiculars?|depth|heights?|lengths?|width|span|offset|eccentricity|hebelarm|abstand|bras de levier|brazo)"
)
_BEGINS = re.compile(
    r"(?:(?<![\w])(?:where|with|since|because|as|for|and|here|note that|noting that|in which)\b,? +)*"
    rf"(?<![\w-])(?:the +|its +|their +|each +|der +|le +|el +)?{_LENGTH}\b(?P<of>[^=:;.]*?)(?:(?<= )(?:being|is|are|was|measures|equals|ist|est)\b|=)",
    re.IGNORECASE,
)
_ENDS = re.compile(
    r"[;:∴⇒→]|[,.](?= |$)|=>|->|(?<= )(?:so|hence|thus|therefore|whence|then)\b|(?<= )and\b(?=[^,;:]*=)|$"
)
_BESIDE = re.compile(
    r", *[0-9][0-9.]* *(?:mm|cm|m|ft|in|feet|metres|meters)\b *(?=[,;:.∴⇒]|$|so\b|and\b)"
)
_WORD = re.compile(rf"[{LETTERS}][\w{{}}'-]*")
_SO = re.compile(r" *(?:→|⇒|=>|->)(?= *[^ ])")
_MEASURED = re.compile(r" *= *[0-9.√]")
"""Behind it a member stands for its length: arm = AB = 3.464."""
_LETTER = re.compile(r"(?<![\w}])[a-zL] *=")
_OPERATOR_BEFORE, _OPERATOR_BEHIND = re.compile(r"[-+*/^0-9)]$"), re.compile(r" *[-+*/^(]")


_EXPLAINS = re.compile(
    r"[^\W\d_]{3}|C_|^ *[0-9]+ ?[-:] ?[0-9]+ ?[-:] ?[0-9]|(?<!\w)[HVXY] *= *[(\[]?[0-9]"
)
"""What a line has that brings in a symbol or says a length in words."""


def explained_by(source: Source, names: Names) -> tuple[Source, tuple[Span, ...]]:
    """The source with its own symbols as the forces they stand for, without what explains a length."""
    if _EXPLAINS.search(source.text) is None:
        return source, ()
    made = introduced(source, names)
    if not made.text.strip(" .,;:"):
        check_goes_on(source, names)
    made, lengths = without_lengths(made, names)
    made, spoken = without_talk_of_truss(made, names)
    spelled, told = explained(made, names)
    told = (*lengths, *spoken, *told)
    return (spelled, told) if spelled.text.strip() else (source, ())


def explained(source: Source, names: Names) -> tuple[Source, tuple[Span, ...]]:
    """The source without clauses that say how long something is, and their places as typed."""
    told: list[Span] = []
    text, at = source.text, 0
    while (found := _BEGINS.search(text, at)) is not None:
        end = _end_of(text, found.end(), names)
        at = found.end()
        if end is None:
            continue
        if (letter := _LETTER.search(text, found.start(), end)) is not None:
            end = letter.start()
        if not _is_of_a_length(text, found, end, names):
            continue
        told.append(source.span(found.start(), end))
        if not text[: found.start()].strip() and (so := _SO.match(text, end)) is not None:
            end = so.end()
        start, end = _with_brackets(text, found.start(), end)
        apart = "," if letter is not None and text[:start].strip(" :;,") else ""
        text = text[:start] + apart.ljust(end - start) + text[end:]
        at = end
    if not told:
        return source, ()
    return replace(source, text=text), tuple(told)


def _end_of(text: str, start: int, names: Names) -> int | None:
    """Where a clause ends whose length is said from `start` on; None where nothing is said there."""
    end, depth, at = len(text), 0, start
    for mark in _ENDS.finditer(text, start):
        depth += text.count("(", at, mark.start()) - text.count(")", at, mark.start())
        at = mark.start()
        if depth > 0:
            continue
        if depth < 0:
            end = _closing(text, start, mark.start())
            break
        if mark[0] == "and" and re.search(r"[0-9]", text[start : mark.start()]) is None:
            continue
        end = mark.start()
        break
    if not text[start:end].strip():
        return None
    beside = _BESIDE.match(text, end)
    return end if beside is None else beside.end()


def _closing(text: str, start: int, end: int) -> int:
    """Where the bracket closes that was open before `start`."""
    depth = 0
    for at in range(start, end):
        depth += {"(": 1, ")": -1}.get(text[at], 0)
        if depth < 0:
            return at
    return end


def _with_brackets(text: str, start: int, end: int) -> tuple[int, int]:
    """The place of a clause, with the brackets that stand apart and hold nothing else."""
    before, behind = text[:start].rstrip(), text[end:].lstrip()
    if not (before and behind) or before[-1] + behind[0] not in ("()", "[]"):
        return start, end
    if before[:-1] and before[-2] != " ":
        return start, end
    return len(before) - 1, len(text) - len(behind) + 1


def _is_of_a_length(text: str, found: re.Match[str], end: int, names: Names) -> bool:
    """Whether a clause holds words and numbers alone: no force in a formula, no letter that it gives a size."""
    said = text[found.start() : end]
    if _LETTER.search(said) is not None:
        return False
    for word in _WORD.finditer(said):
        if word[0].lower() in FUNCTIONS or word[0].lower() in ANGLES:
            continue
        if not names.meanings(word[0]) or word[0].islower():
            continue
        before, behind = said[: word.start()].rstrip(), said[word.end() :]
        if _OPERATOR_BEFORE.search(before) or _OPERATOR_BEHIND.match(behind):
            return False
        set_apart = not text[: found.start()].rstrip().endswith("(")
        if before.endswith("=") and not (set_apart and _MEASURED.match(behind)):
            return False
    return found["of"].count(",") < 2
