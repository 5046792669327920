"""Which letters does a line bring in before its equation, of forces, of ratios, of loads, of angles?

"call CE x. 0.8x = 150", "write s for 3/5: ...", "P_1 = 9 kN, P_2 = 6 kN: ...", "th = atan(8/15): ...", "P = AB,
Q = BC: ...". Asked only where a line cannot be read otherwise: each letter is spelled as what it is said to be.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from tutor.notation.evaluate import Frame, constant
from tutor.notation.formula import sides_of
from tutor.notation.names import Names, spelling
from tutor.notation.source import Source
from tutor.notation.symbols import LETTERS
from tutor.notation.tree import Span
from tutor.notation.unreadable import Broken
from tutor.notation.words import ANGLES, FUNCTIONS

_LEAD = r"(?:(?:let|call|write|denote|with|where|put|say|set|take|taking|using|use|if|for|and|now|so|then|mit|sei|wobei|avec|con) +)*"
_LETTER = r"(?P<letter>(?-i:[A-Za-z](?:[a-z]{1,2}|_?\{?[0-9a-z]\}?)?))"
_IS = r"(?: *:?= *| +(?:be|is|being|as) +)"
_VALUE = r"(?P<value>[-+(√0-9.a-z][^:;=]*?(?: *= *[-+(√0-9.a-z][^:;=]*?)*)"
_LETTER_FIRST = re.compile(rf" *{_LEAD}{_LETTER}{_IS}{_VALUE} *", re.IGNORECASE)
_FOR = re.compile(rf" *{_LEAD}{_LETTER} +for +{_VALUE} *", re.IGNORECASE)
_FORCE = rf"(?P<force>[{LETTERS}][\w{{}}-]*)"
_FORCE_FIRST = re.compile(rf" *{_LEAD}{_FORCE}{_IS}{_LETTER} *", re.IGNORECASE)
_CALL = re.compile(
    rf" *(?:(?:let(?:'s)?|us|we|i|and|now|so) +)*(?P<lead>call|name|denote|and)(?: +force)? +{_FORCE} +(?:by +|as +)?{_LETTER} *",
    re.IGNORECASE,
)
_SIDE_BY_SIDE = re.compile(rf" *{_FORCE} +(?P<letter>[a-z]) *")
_FOR_FORCE = re.compile(rf" *{_LEAD}{_LETTER}(?:{_IS}| +for +){_FORCE} *", re.IGNORECASE)
_SPOKEN = re.compile(r"^ *(?:let|call|write|denote|with|where|put|say|set)\b| for ", re.IGNORECASE)
_END = re.compile(
    r"[:;]|[,.](?![0-9])|(?<=[0-9])[,](?= )|&|\b(?:and|then|so|we (?:get|have|find|write)|gives)\b|$"
)
_SIZE = re.compile(
    r" *(?P<bare>.*?(?:[0-9.)°]|deg(?:rees?)?)) *(?P<unit>kN|MN|N|lbf?|kips?|k)? *", re.DOTALL
)
_NUMBERS = re.compile(
    rf"(?:[-+*/^√().,°0-9 ]|deg(?:rees?)?\b|(?:{'|'.join(sorted(FUNCTIONS, key=len, reverse=True))})(?![a-z]))+"
)
_NOT_BROUGHT = frozenset(
    ("T", "C", "N", "m", "k", "M", "Fx", "Fy", "F", "mm", "kN", "ft", "lb", "in", "cm")
)
_MAY = re.compile(r"=.*=|\b(?:call|write|denote|let)\b", re.DOTALL)
_THEN = re.compile(
    r"^(?P<let> *(?:let|with|put|say|set|take|taking|if|where)\b[^=:;]*=[^=:;]*?[0-9)°\w]),? +(?:then|we (?:get|have))\b",
    re.IGNORECASE,
)
MOST = 6
"""So many letters are brought in by a line at the most."""
NEAR = 0.005


def then_apart(source: Source) -> Source:
    """The source with what is let be so set apart from what follows: let c = 4/5 then ..."""
    if "then" not in source.text and " we " not in source.text:
        return source
    return source.rewritten(_THEN, lambda found: f"{found['let']};")


def brought_in(source: Source, names: Names) -> Source:
    """The source with the letters that it brings in at its front replaced, without the words that do so."""
    text = source.text
    if _MAY.search(text) is None:
        return source
    said, at = dict[str, str](), 0
    for start, end, behind in _clauses(text):
        if start != at:
            break
        clause = text[start:end]
        made = _said(clause, names, said)
        if made is not None:
            said = {**said, **dict([made])}
        elif not (said and _is_so(clause, said, names)):
            break
        at = behind
    rest = text[at:]
    if not said or len(said) > MOST or "=" not in rest:
        return source
    idle = [Span(*span) for span in _idle(text, at, said, names)]
    edges = [at, *(edge for span in idle for edge in (span.start, span.end)), len(text)]
    source = source.made_of(Span(*pair) for pair in zip(edges[::2], edges[1::2], strict=True))
    for letter, what in said.items():
        source = _replaced(source, letter, what)
    return source


def _idle(text: str, at: int, said: dict[str, str], names: Names) -> Iterator[tuple[int, int]]:
    """The places of clauses further on that only work out a number from the letters, with the mark behind."""
    for found in _CLAUSE.finditer(text, at):
        named = any(re.search(rf"(?<!\w){re.escape(letter)}(?!\w)", found[0]) for letter in said)
        if named and _is_so(found["said"], said, names):
            yield found.span()


_CLAUSE = re.compile(
    r"(?<=[;,]) *(?P<said>(?:[^;,=]|,(?=[0-9]))+=(?:[^;,=]|,(?=[0-9]))+)(?:[;,](?![0-9]))"
)


def _clauses(text: str) -> Iterator[tuple[int, int, int]]:
    """(start, end, where the next one starts) of the clauses, one behind the other."""
    at = 0
    for found in _END.finditer(text):
        if found.end() >= len(text):
            return
        if not text[at : found.start()].strip():
            continue
        yield at, found.start(), found.end()
        at = found.end()


def _said(clause: str, names: Names, before: dict[str, str]) -> tuple[str, str] | None:
    """A letter and what a clause says that it is; None where the clause says something else."""
    for pattern in (_FOR_FORCE, _FORCE_FIRST, _CALL, *([_SIDE_BY_SIDE] if before else ())):
        found = pattern.fullmatch(clause)
        if found is None or not _free(found["letter"], clause, names, before):
            continue
        meant = names.meant(found["force"])
        if len(meant) == 1:
            return found["letter"], spelling(meant[0])
    for pattern in (_LETTER_FIRST, _FOR):
        found = pattern.fullmatch(clause)
        if found is not None and _free(found["letter"], clause, names, before):
            size = _size(found["value"], names)
            return None if size is None else (found["letter"], size)
    return None


def _is_so(clause: str, said: dict[str, str], names: Names) -> bool:
    """Whether a clause only works out a number from the letters: so sin th = 8/17."""
    source = Source.of(re.sub(rf"^ *{_LEAD}", "", clause, flags=re.IGNORECASE))
    for letter, what in said.items():
        source = _replaced(source, letter, what)
    return "=" in clause and _size(source.text, names) is not None


def _free(letter: str, clause: str, names: Names, before: dict[str, str]) -> bool:
    """Whether a letter means nothing yet; a small one may be that of a joint where words bring it in."""
    taken = letter in before or letter in _NOT_BROUGHT or letter.lower() in {*ANGLES, *FUNCTIONS}
    spoken = len(letter) == 1 and letter.islower() and _SPOKEN.search(clause) is not None
    named = names.plainly(letter) if spoken else names.meanings(letter)
    if taken or named or names.joint(letter) == letter:
        return False
    return not (letter[-1:] in "xyvh" and names.joint(letter[0]) == letter[0])


def _size(value: str, names: Names) -> str | None:
    """The number that is said, in brackets; None where it is none, or is said to be two."""
    sides = [_SIZE.fullmatch(side) for side in value.split("=")]
    bare = [side["bare"] for side in sides if side and side["unit"] in (None, names.force)]
    if len(bare) < len(sides) or not all(map(_NUMBERS.fullmatch, bare)):
        return None
    frame = Frame(names.force, names.length)
    try:
        sizes = [_number(side, names, frame) for side in bare]
    except (Broken, ValueError):
        return None
    same = all(abs(size - sizes[0]) <= NEAR * abs(sizes[0]) for size in sizes)
    return f"({bare[0].strip()})" if same else None


def _number(side: str, names: Names, frame: Frame) -> float:
    angle = re.fullmatch(r"([-+0-9., ]+)(?:°|deg(?:rees?)?)", side.strip())
    sides, _ = sides_of(angle[1] if angle else side, names, frame)
    if len(sides) != 1 or not sides[0].numeric:
        raise ValueError(side)
    return constant(sides[0].node, frame).value


def _replaced(source: Source, letter: str, what: str) -> Source:
    """The source with a letter replaced wherever it stands for what it is said to be."""
    times = r"(?! *[0-9(])" if letter in "xX" else ""
    here = re.compile(
        rf"(?<![{LETTERS}_{{'\\]){re.escape(letter)}(?![\w{{'.]){times}|(?<=[0-9)]){re.escape(letter)}(?= [A-Z])"
    )
    return source.rewritten(here, lambda found: None if _is_a_sense(found) else what)


def _is_a_sense(found: re.Match[str]) -> bool:
    """Whether a t or c stands behind a value."""
    before, behind = found.string[: found.start()].rstrip(), found.string[found.end() :].lstrip()
    ends = not behind or behind[0] in ",;.)"
    return found[0] in "TtCc" and ends and before[-1:] in (*"0123456789(", "N", "b", "p")
