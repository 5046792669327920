"""Where does a complete statement end, and which of the words behind it are an aside?

A statement ends where a whole equation or value does. Words of ordinary language behind it lead to the
next statement, say what is put into it, or are a reason or a remark: "ce + 0.8de = 0 sub in de = -10 gives
ce = 8 T", "l2u2 = 0 no load at u2", "= 61 (not 51)". An aside begins at a word of the table `SPEECH` only, so
that a name or a unit that is mistyped is none. What could turn the meaning is never left out.
"""

from __future__ import annotations

import re
from dataclasses import replace

from tutor.notation.elements import units
from tutor.notation.elements.lexicon import SPEECH, folded, says
from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import Span
from tutor.notation.formulas.words import ANGLES, FUNCTIONS
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS
from tutor.notation.sentences.aside_said import (
    AT_END,
    denied,
    joins,
    only_leads,
    understood,
    ways_in,
)
from tutor.notation.sentences.aside_spelled import spelled_apart
from tutor.notation.sentences.aside_words import BEHIND_BRACKET, Token, complete, tokens_of, worded
from tutor.notation.sentences.bracket_said import works_out
from tutor.notation.sentences.talk import BECAUSE, GIVEN
from tutor.notation.sides.ending import COUNTING

_OPERATES = re.compile(r"[+*/^√<>]|(?<![\w-])-(?=[ 0-9.(]|[A-Za-z](?![a-z]))")
_FIGURE = re.compile(r"(?<![\w}.])[0-9]")
REFERS = re.compile(
    r"\b(?:joint|node|pin|eqn?|eq|equation|line|step|part|no|not|number|from|rule|at|row|sheet|page)\.? *[(\[]?[0-9]+(?:[.,][0-9]+)?[a-z]?[)\]]?"
    r"|[0-9]+-[0-9]+-[0-9]+|[0-9.]+ *(?:°|deg(?:rees)?\b|sf\b|dp\b)|[(\[][0-9]{1,2}[)\]]",
    re.IGNORECASE,
)
"""Numbers that are no force in an aside: of a joint or a line, of an angle, of a triangle, of another number."""


def asides_apart(source: Source, names: Names) -> tuple[Source, tuple[Span, ...]] | None:
    """The source with its asides as blanks or as a sign that joins two statements, and their places.

    None where there is none, or one that cannot be left out.
    """
    text = spelled_apart(source.text, names)
    chars, at = list(text), 0
    told: list[Span] = []
    while (begun := _begins(text, at, names)) is not None:
        end = begun.end if begun.kind == "bracket" else _ends(text, begun.start, names)
        if end is None or not _may_go(text, at, begun, end, names):
            return None
        _replace(text, chars, at, begun, end)
        if not understood(text[begun.start : end]):
            told.append(source.span(begun.start, len(text[:end].rstrip())))
        at = end
    made = "".join(chars)
    if made == source.text:
        return None
    return replace(source, text=made), tuple(told)


_MARKED = re.compile(r"[,;:∴⇒→=]|\.(?![0-9])")


def _begins(text: str, at: int, names: Names) -> Token | None:
    """The first word or bracket behind a complete statement that begins an aside."""
    tokens = list(tokens_of(text, at))
    for index, token in enumerate(tokens):
        if token.kind == "word":
            behind = tokens[index + 1] if index + 1 < len(tokens) else None
            begins = _speaks(token, behind, names)
        else:
            begins = token.kind == "bracket" and worded(token.text[1:-1], names)
            begins = begins and BEHIND_BRACKET.match(text, token.end) is not None
            begins = begins and not works_out(text, token, names)
        if begins and complete(text[at : token.start]):
            return token
    return None


def _speaks(token: Token, behind: Token | None, names: Names) -> bool:
    """Whether a word is one of the table; one that names a force too, where another word follows."""
    word = folded(token.text)
    if word not in SPEECH or (len(word) == 1 and not token.text.islower()):
        return False
    if not (names.meanings(token.text) or names.joint(token.text)):
        return True
    return (
        token.text.islower()
        and behind is not None
        and behind.kind == "word"
        and folded(behind.text) in SPEECH
        and not names.meanings(behind.text)
        and not says(behind.text, "is", "so", "and")
    )


def _ends(text: str, start: int, names: Names) -> int | None:
    """The column where the next statement begins, or the text ends; None where that cannot be told."""
    last = start
    words: list[str] = []
    for token in tokens_of(text, start):
        if token.text == "=":
            rest = text[last : token.start].strip()
            return last if rest and rest[-1] not in "+-*/(" else None
        if token.kind == "word" and not _of_formula(token, text, names):
            words.append(token.text)
            last = token.end
        elif token.text in (",", ";", ":", "∴", "⇒", "→") and not text[token.end :][:1].isdigit():
            if words and "=" in text[token.end :]:
                return token.start
            if words:
                value = AT_END.match(text, token.end + 1)
                return len(text) if value is None else token.end
            last = token.end
    value = AT_END.search(text, start)
    if value is not None and only_leads(text[start : value.start()]):
        return value.start()
    return len(text)


def _of_formula(token: Token, text: str, names: Names) -> bool:
    """Whether a word is a piece of a formula: a force, a function, an angle, a unit behind a number."""
    word, before = token.text, text[: token.start].rstrip()[-1:]
    if len(word) == 1 and re.search(rf"(?<!\w){re.escape(word)} *=", text) is not None:
        return True
    if word.lower() in FUNCTIONS or word.lower() in ANGLES:
        return True
    if before.isdigit() and word in units.SPELLED:
        return True
    return bool(names.meanings(word)) and not (
        word.islower() and folded(word) in SPEECH and text[token.end :].lstrip()[:1].isalpha()
    )


def _may_go(text: str, at: int, begun: Token, end: int, names: Names) -> bool:
    """Whether an aside may be left out: nothing is computed in it, and it takes nothing back."""
    said = text[begun.start : end]
    if denied(said, text[at : begun.start], names):
        return False
    if begun.kind == "bracket":
        return True
    bare = re.sub(r"\bw/|[+-]ve\b", " ", said)
    words = re.findall(rf"[{LETTERS}']+", bare)
    reason = bool(words) and (folded(words[0]) in BECAUSE or says(words[0], "because"))
    figures = not reason and _FIGURE.search(REFERS.sub(" ", bare)) is not None
    counts = words and words[-1].lower() in COUNTING - {"minus"}
    return _OPERATES.search(bare) is None and not counts and not figures


def _replace(text: str, chars: list[str], at: int, begun: Token, end: int) -> None:
    """Puts blanks, or the sign that joins what stands around it, in the place of an aside."""
    said = text[begun.start : end]
    chars[begun.start : end] = " " * (end - begun.start)
    behind = text[end:].lstrip()
    if behind and _MARKED.match(behind) is None:
        alone = "=" not in behind
        chars[begun.start] = "∴" if alone else joins(said)
        value = GIVEN.match(text, end) if joins(said) == ";" else None
        if value is not None:
            chars[value.end() - 1] = ";"
        return
    for start, stop in ways_in(said, text[at : begun.start]):
        first = begun.start + start
        chars[first : begun.start + stop] = said[start:stop]
        mark = first - 1 if chars[first - 1] == " " else None
        if mark is not None and mark >= begun.start:
            chars[mark] = ","
