"""Where does a complete statement end, and which of the words behind it are an aside?

A statement ends where a whole equation or value does. Words of ordinary language behind it lead to the
next statement, say what is put into it, or are a reason or a remark: "ce + 0.8de = 0 sub in de = -10 gives
ce = 8 T", "l2u2 = 0 no load at u2", "= 61 (not 51)". An aside begins at a word of the table `SPEECH` only, so
that a name or a unit that is mistyped is none. What could turn the meaning is never left out.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace

from tutor.notation import units
from tutor.notation.aside_said import AT_END, VALUE, denied, joins, only_leads, understood, ways_in
from tutor.notation.ending import COUNTING
from tutor.notation.lexicon import HEDGES, MEANINGS, SPEECH, folded, says
from tutor.notation.names import Names
from tutor.notation.source import Source
from tutor.notation.symbols import LETTERS, PARTNER
from tutor.notation.talk import BECAUSE
from tutor.notation.tree import Span
from tutor.notation.words import ANGLES, FUNCTIONS

_TOKEN = re.compile(
    rf"(?P<word>w/|[{LETTERS}][{LETTERS}0-9_'{{}}]*)|(?P<number>[0-9][0-9.,]*|\.[0-9]+)|(?P<sign>[^ ])"
)
_ALONE = re.compile(rf" *{VALUE} *")
_CUT = re.compile(r"[,;](?![0-9])|∴|⇒|=>|->|→|:")
_FORMULA_ENDS = re.compile(r"[0-9)\]}A-Za-z°']$")
_OPERATES = re.compile(r"[+*/^√<>]|(?<![\w-])-(?=[ 0-9.(])")
_FIGURE = re.compile(r"(?<![\w}.])[0-9]")
_REFERS = re.compile(
    r"\b(?:joint|node|pin|eqn?|eq|equation|line|step|part|no|not|number|from|rule|at|row|sheet|page)\.? *[(\[]?[0-9]+(?:[.,][0-9]+)?[a-z]?[)\]]?"
    r"|[0-9]+-[0-9]+-[0-9]+|[0-9.]+ *(?:°|deg(?:rees)?\b|sf\b|dp\b)|[(\[][0-9]{1,2}[)\]]",
    re.IGNORECASE,
)
"""Numbers that are no force in an aside: of a joint or a line, of an angle, of a triangle, of another number."""
_BEHIND_BRACKET = re.compile(rf" *(?:$|[,;.:∴⇒→]|[{LETTERS}]+\b)")


@dataclass(frozen=True)
class _Token:
    kind: str
    text: str
    start: int
    end: int


def asides_apart(source: Source, names: Names) -> tuple[Source, tuple[Span, ...]] | None:
    """The source with its asides as blanks or as a sign that joins two statements, and their places.

    None where there is none, or one that cannot be left out.
    """
    text = _unhedged(_opened(source.text, names), names)
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


_GIVEN = re.compile(
    rf" *[{LETTERS}][{LETTERS}0-9_{{}}]* *= *[-+]? ?[0-9.,]*[0-9] (?=[{LETTERS}][\w{{}}]* *=)"
)
"""A value that is put in, with the next statement right behind it."""
_MARKED = re.compile(r"[,;:∴⇒→=]|\.(?![0-9])")
_BC = re.compile(rf"(?<=[\w)\]}}] )(?:bc|bcs|bec|cuz|coz)(?= +(?P<next>[{LETTERS}']+))")


def reasoned(source: Source, names: Names) -> Source:
    """The source with bc as because, where a word of ordinary language behind it says that no force is meant."""

    def spelled(found: re.Match[str]) -> str | None:
        word = found["next"]
        speaks = folded(word) in SPEECH and not names.meanings(word)
        whole = (
            speaks and not says(word, "is", "so", "and") and complete(found.string[: found.start()])
        )
        return "because" if whole else None

    return source.rewritten(_BC, spelled)


_LEADS_VALUE = re.compile(
    rf"(?:^|(?<=[=:;,∴])) *(?P<words>(?:~|[{LETTERS}'.]+ +)+)(?=[-+]? ?[0-9.])"
)


def _unhedged(text: str, names: Names) -> str:
    """The text without what is said before a number of how sure it is: about 12, I get 12, ~12."""

    def blank(found: re.Match[str]) -> str:
        words = re.findall(rf"[{LETTERS}']+", found["words"])
        hedge = all(folded(word) in HEDGES and not names.plainly(word) for word in words)
        return " " * len(found[0]) if hedge else found[0]

    return _LEADS_VALUE.sub(blank, text)


_SAID_IN = re.compile(
    rf"[(\[](?P<inner>[^()\[\]]*(?<![\w}}])(?P<name>[{LETTERS}][\w{{}}]*) *=[^()\[\]]*)[)\]]"
)


def _opened(text: str, names: Names) -> str:
    """The text with an equation of forces that stands in a bracket with words set apart: (since rs = 9)."""

    def apart(found: re.Match[str]) -> str:
        named = names.meanings(found["name"]) and _worded(found["inner"], names)
        stands = complete(text[: found.start()]) and _BEHIND_BRACKET.match(text, found.end())
        return f";{found['inner']};" if named and stands else found[0]

    return _SAID_IN.sub(apart, text)


def _tokens(text: str, at: int) -> Iterator[_Token]:
    """Words, numbers and signs from a column on; a bracket with all in it is one."""
    while (found := _TOKEN.search(text, at)) is not None:
        start, end, kind = *found.span(), str(found.lastgroup)
        if found[0] in "([{" and (close := _closed(text, start)) is not None:
            end, kind = close, "bracket"
        yield _Token(kind, text[start:end], start, end)
        at = end


def _closed(text: str, start: int) -> int | None:
    """The column behind the bracket that closes the one at `start`."""
    depth = 0
    for at in range(start, len(text)):
        depth += (text[at] in "([{") - (text[at] in ")]}")
        if depth == 0:
            return at + 1 if text[at] == PARTNER[text[start]] else None
    return None


def _begins(text: str, at: int, names: Names) -> _Token | None:
    """The first word or bracket behind a complete statement that begins an aside."""
    tokens = list(_tokens(text, at))
    for index, token in enumerate(tokens):
        if token.kind == "word":
            behind = tokens[index + 1] if index + 1 < len(tokens) else None
            begins = _speaks(token, behind, names)
        else:
            begins = token.kind == "bracket" and _worded(token.text[1:-1], names)
            begins = begins and _BEHIND_BRACKET.match(text, token.end) is not None
        if begins and complete(text[at : token.start]):
            return token
    return None


def complete(before: str) -> bool:
    """Whether a text ends in a whole equation or in a value alone, with or without a mark behind it."""
    parts = [part for part in _CUT.split(before.rstrip(" .-–…")) if part.strip()]
    if not parts:
        return False
    last = parts[-1].strip()
    left, sign, right = last.rpartition("=")
    if sign:
        return bool(left.strip() and right.strip()) and _FORMULA_ENDS.search(last) is not None
    return len(parts) == 1 and _ALONE.fullmatch(last) is not None


def _speaks(token: _Token, behind: _Token | None, names: Names) -> bool:
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


def _worded(inner: str, names: Names) -> bool:
    """Whether a bracket holds words of ordinary language and not a factor."""
    words = [token.text for token in _tokens(inner, 0) if token.kind == "word"]
    spoken = [word for word in words if len(word) > 1 and not names.meanings(word)]
    return any(folded(word) in SPEECH for word in spoken) or (
        len(words) > 1 and any(folded(word) in MEANINGS for word in spoken)
    )


def _ends(text: str, start: int, names: Names) -> int | None:
    """The column where the next statement begins, or the text ends; None where that cannot be told."""
    last = start
    words: list[str] = []
    for token in _tokens(text, start):
        if token.text == "=":
            rest = text[last : token.start].strip()
            return last if rest and rest[-1] not in "+-*/(" else None
        if token.kind == "word" and not _of_formula(token, text, names):
            words.append(token.text)
            last = token.end
        elif token.text in (",", ";", ":", "∴", "⇒", "→") and not text[token.end :][:1].isdigit():
            if words:
                return token.start if "=" in text[token.end :] else len(text)
            last = token.end
    value = AT_END.search(text, start)
    if value is not None and only_leads(text[start : value.start()]):
        return value.start()
    return len(text)


def _of_formula(token: _Token, text: str, names: Names) -> bool:
    """Whether a word is a piece of a formula: a force, a function, an angle, a unit behind a number."""
    word, before = token.text, text[: token.start].rstrip()[-1:]
    if word.lower() in FUNCTIONS or word.lower() in ANGLES:
        return True
    if before.isdigit() and word in units.SPELLED:
        return True
    return bool(names.meanings(word)) and not (
        word.islower() and folded(word) in SPEECH and text[token.end :].lstrip()[:1].isalpha()
    )


def _may_go(text: str, at: int, begun: _Token, end: int, names: Names) -> bool:
    """Whether an aside may be left out: nothing is computed in it, and it takes nothing back."""
    said = text[begun.start : end]
    if denied(said, text[at : begun.start], names):
        return False
    if begun.kind == "bracket":
        return True
    bare = re.sub(r"\bw/|[+-]ve\b", " ", said)
    words = re.findall(rf"[{LETTERS}']+", bare)
    reason = bool(words) and (folded(words[0]) in BECAUSE or says(words[0], "because"))
    figures = not reason and _FIGURE.search(_REFERS.sub(" ", bare)) is not None
    counts = words and words[-1].lower() in COUNTING - {"minus"}
    return _OPERATES.search(bare) is None and not counts and not figures


def _replace(text: str, chars: list[str], at: int, begun: _Token, end: int) -> None:
    """Puts blanks, or the sign that joins what stands around it, in the place of an aside."""
    said = text[begun.start : end]
    chars[begun.start : end] = " " * (end - begun.start)
    behind = text[end:].lstrip()
    if behind and _MARKED.match(behind) is None:
        alone = "=" not in behind
        chars[begun.start] = "∴" if alone else joins(said)
        value = _GIVEN.match(text, end) if joins(said) == ";" else None
        if value is not None:
            chars[value.end() - 1] = ";"
        return
    for start, stop in ways_in(said, text[at : begun.start]):
        first = begun.start + start
        chars[first : begun.start + stop] = said[start:stop]
        mark = first - 1 if chars[first - 1] == " " else None
        if mark is not None and mark >= begun.start:
            chars[mark] = ","
