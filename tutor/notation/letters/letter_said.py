"""What does a clause say that a letter is: a force, a ratio, a load, an angle? "call CE x", "s = 3/5", "P_1 = 9 kN"."""

from __future__ import annotations

import re
from collections.abc import Mapping

from tutor.notation.elements.same import are_same
from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import Span
from tutor.notation.elements.unreadable import Broken
from tutor.notation.formulas.evaluate import Frame, constant
from tutor.notation.formulas.words import ANGLES, FUNCTIONS
from tutor.notation.lines.layout import ANGLE
from tutor.notation.naming.names import Names, spelling
from tutor.notation.naming.symbols import LETTERS
from tutor.notation.sides.formula import sides_of

_WORDS = "let|call|name|write|writing|denote|denoting|calling|with|where|put|putting|say|set|setting|take|taking|using|use|if|for|and|now|so|then|mit|sei|wobei|avec|con"
_THINGS = "the|a|total|loads?|unknown|force|weight|angle|slope|short|ratio|forces"
_LEAD = rf"(?:(?:{_WORDS}|{_THINGS}) +)*"
_LETTER = (
    r"(?P<letter>(?-i:(?:sin|cos|tan)[a-z]|[A-Z]_[A-Z]|[A-Za-z](?:[a-z]{1,2}|_?\{?[0-9a-z]\}?)?))"
)
_IS = r"(?: *:?= *| +(?:be|is|being|as) +)"
_VALUE = r"(?P<value>[-+(√0-9.a-z][^:;=]*?(?: *= *[-+(√0-9.a-z][^:;=]*?)*)"
_NOTE = r"(?: +(?:at|on|in) +(?:joint +)?[A-Z]\w{0,2}| *(?:(?:down|up|left|right|to the (?:left|right))(?: +(?:in all|each))?|[←→↑↓])| +\([a-z ]+\))?"
_FORCE = rf"(?:(?:the +)?(?:force|tension|pull) +in +)?(?P<force>[{LETTERS}][\w{{}}-]*)"
_OF_NUMBERS = [
    re.compile(pattern, re.IGNORECASE)
    for pattern in (
        rf" *{_LEAD}{_LETTER}{_IS}{_VALUE}{_NOTE} *",
        rf" *{_LEAD}{_LETTER} +(?:(?:is +)?(?:short|standing|stands) +)?for +{_VALUE}{_NOTE} *",
    )
]
_OF_FORCES = [
    re.compile(pattern, re.IGNORECASE)
    for pattern in (
        rf" *{_LEAD}{_LETTER}(?:{_IS}| +for +){_FORCE} *",
        rf" *{_LEAD}{_FORCE}{_IS}{_LETTER}(?: +(?:kN|N|lb|kip))? *",
        rf" *(?:(?:let(?:'s)?|us|we|i|and|now|so) +)*(?:call|name|denote|and)(?: +force)? +{_FORCE} +(?:by +|as +)?{_LETTER} *",
    )
]
_BESIDE_OTHERS = re.compile(rf" *{_FORCE} +(?P<letter>[a-z]) *")
_OF_AN_ANGLE = re.compile(
    rf" *{_LEAD}(?P<function>sin|cos|tan)(?: +| *\( *)(?P<letter>[a-z]{{1,3}}|[A-Z]) *\)?{_IS}{_VALUE} *"
)
_FUNCTION_SAID = re.compile(
    rf" *(?:the +)?(?:(?:sin|cos|tan)(?:e|ent)?(?: +of)? *\(? *{ANGLE} *\)? *=|(?:co)?sine\b(?: +of +[A-Z]\w+)? *=?|tangent\b *=?) *(?=[0-9.(√])",
    re.IGNORECASE,
)
"""The function that a ratio is, before its size: s for sin α = 3/5."""
_SPOKEN = re.compile(rf"^ *(?:{_WORDS})\b| for ", re.IGNORECASE)
_SIZE = re.compile(
    r" *(?P<bare>.*?(?:[0-9.)°]|deg(?:rees?)?)) *(?P<unit>kN|MN|N|lbf?|kips?|k)? *", re.DOTALL
)
_NUMBERS = re.compile(
    rf"(?:[-+*/^²√().,°0-9 ]|deg(?:rees?)?\b|(?:{'|'.join(sorted(FUNCTIONS, key=len, reverse=True))})(?![a-z]))+"
)
_NOT_BROUGHT = frozenset(
    ("T", "C", "N", "m", "k", "M", "Fx", "Fy", "F", "mm", "kN", "ft", "lb", "in", "cm")
)
_A_RATIO = re.compile(
    r"(?: *(?:let|with|where|put|call))? *[mk] *= *[-+]?(?:0?\.[0-9]+|[0-9]+ ?/ ?[0-9]+)(?: +\([a-z ]+\))? *",
    re.IGNORECASE,
)
"""A plain ratio by a letter that is a unit behind a number."""


def letter_said(clause: str, names: Names, before: Mapping[str, str]) -> tuple[str, str] | None:
    """A letter and what a clause says that it is, in a formula; None where it says something else."""
    for pattern in (*_OF_FORCES, *([_BESIDE_OTHERS] if before else ())):
        found = pattern.fullmatch(clause)
        if found is None or not _free(found["letter"], clause, names, before):
            continue
        meant = names.meant(found["force"])
        if len(meant) == 1:
            return found["letter"], spelling(meant[0])
    found = _OF_AN_ANGLE.fullmatch(clause)
    if found is not None and _free(found["letter"], clause, names, before):
        size = _size(found["value"], names)
        return None if size is None else (found["letter"], f"(a{found['function']}{size})")
    for pattern in _OF_NUMBERS:
        found = pattern.fullmatch(clause)
        if found is not None and _free(found["letter"], clause, names, before):
            size = _size(found["value"], names)
            return None if size is None else (found["letter"], size)
    return None


_SO = r"(?:[;,:∴⇒→]|[-=]+>|\b(?:so|hence|thus|then|gives|giving)\b)"
_VALUE_FOUND = r"[-+]? ?[0-9][0-9.,]*(?: ?(?:k?N|MN|kips?|k|lbs?))?"
_FOUND = re.compile(
    rf"{_SO} *(?:(?P<letter>[a-z])(?P<drop> *= *[{LETTERS}][\w{{}}-]*)(?= *= *{_VALUE_FOUND})|(?P<other>[a-z]) *= *{_VALUE_FOUND}(?P<last> *= *[{LETTERS}][\w{{}}-]*(?= *(?:$|[.;,]|\(?[TC]\b))))"
)


def force_found(text: str, names: Names) -> tuple[str, str, Span] | None:
    """A letter, the force that a line says it is where it gives its value, and where it says so: x = DE = -10."""
    for found in _FOUND.finditer(text):
        key, place = ("letter", "drop") if found["letter"] else ("other", "last")
        meant = names.meant(found[place].strip("= "))
        if len(meant) == 1 and _free(found[key], found[0], names, {}):
            return found[key], spelling(meant[0]), Span(*found.span(place))
    return None


def is_so(clause: str, said: Mapping[str, str], names: Names) -> bool:
    """Whether a clause only works out a number from the letters: so sin th = 8/17."""
    source = Source.of(re.sub(rf"^ *{_LEAD}", "", clause, flags=re.IGNORECASE))
    for letter, what in said.items():
        source = letter_replaced(source, letter, what)
    return "=" in clause and _size(source.text, names) is not None


def letter_replaced(source: Source, letter: str, what: str) -> Source:
    """The source with a letter replaced wherever it stands for what it is said to be."""
    times = r"(?! *[0-9(])" if letter in "xX" else ""
    apart = r"(?<![0-9)])(?<![0-9)] )" if letter in "mk" else ""
    here = re.compile(
        rf"{apart}(?<![{LETTERS}_{{'\\]){re.escape(letter)}(?![\w{{'.]){times}|(?<=[0-9)]){re.escape(letter)}(?= [A-Z])"
    )
    return source.rewritten(here, lambda found: None if _is_a_sense(found) else what)


def _free(letter: str, clause: str, names: Names, before: Mapping[str, str]) -> bool:
    """Whether a letter means nothing yet; a small one may be that of a joint where words bring it in."""
    unit = letter in _NOT_BROUGHT and (letter not in "mk" or _A_RATIO.fullmatch(clause) is None)
    taken = letter in before or unit or letter.lower() in {*ANGLES, *FUNCTIONS}
    spoken = len(letter) == 1 and letter.islower() and _SPOKEN.search(clause) is not None
    named = names.plainly(letter) if spoken else names.meanings(letter)
    if taken or named or names.joint(letter) == letter:
        return False
    return not (letter[-1:] in "xyvh" and names.joint(letter[0]) == letter[0])


def _size(value: str, names: Names) -> str | None:
    """The number that is said, in brackets; None where it is none, or is said to be two."""
    sides = [_SIZE.fullmatch(side) for side in _FUNCTION_SAID.sub("", value, count=1).split("=")]
    bare = [side["bare"] for side in sides if side and side["unit"] in (None, names.force)]
    if len(bare) < len(sides) or not all(map(_NUMBERS.fullmatch, bare)):
        return None
    frame = Frame(names.force, names.length)
    try:
        sizes = [_number(side, names, frame) for side in bare]
    except (Broken, ValueError):
        return None
    same = all(are_same(size, sizes[0]) for size in sizes)
    return f"({bare[0].strip()})" if same else None


def _number(side: str, names: Names, frame: Frame) -> float:
    angle = re.fullmatch(r"([-+0-9., ]+)(?:°|deg(?:rees?)?)", side.strip())
    sides, _ = sides_of(angle[1] if angle else side, names, frame)
    if len(sides) != 1 or not sides[0].numeric:
        raise ValueError(side)
    return constant(sides[0].node, frame).value


def _is_a_sense(found: re.Match[str]) -> bool:
    """Whether a t or c stands behind a value."""
    before, behind = found.string[: found.start()].rstrip(), found.string[found.end() :].lstrip()
    ends = not behind or behind[0] in ",;.)"
    return found[0] in "TtCc" and ends and before[-1:] in (*"0123456789(", "N", "b", "p")
