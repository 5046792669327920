"""How is what is said beside statements spelled so that they can be told apart?

bc is because, where no force is meant; AB is 12 is AB = 12; about 12 is 12; an equation in a bracket of words
and one behind dots stand for themselves.
"""

from __future__ import annotations

import re

from tutor.notation.elements.lexicon import HEDGES, SPEECH, folded, says
from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import Span
from tutor.notation.formulas.words import FUNCTIONS
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS
from tutor.notation.sentences.aside_said import only_leads
from tutor.notation.sentences.aside_words import BEHIND_BRACKET, complete, worded
from tutor.notation.sentences.put_in import put_in_apart

_BC = re.compile(
    rf"(?<=[\w)\]}}] )(?:bc|bcs|bec|cuz|coz|cos)(?= +(?P<next>[{LETTERS}'][\w{{}}']*))"
)
_GIVES = re.compile(
    rf"(?P<reason>\b(?:because|since)\b(?: +[{LETTERS}][\w{{}}'-]*)+? +)(?:gives?|gave)(?= +(?:an? +|the +)?[-+]?[0-9.]+(?: *[{LETTERS}]+)*[.,;]? *(?:$|\b(?:so|hence|thus)\b))",
    re.IGNORECASE,
)
"""What something does in a reason, and no conclusion: because the support gives 12 kN."""


def reasoned(source: Source, names: Names) -> Source:
    """The source with bc as because, where a word or another force behind it says that no force is meant."""

    def spelled(found: re.Match[str]) -> str | None:
        word = found["next"]
        named = found[0] not in FUNCTIONS and bool(names.meanings(word))
        speaks = named or (len(word) > 1 and folded(word) in SPEECH)
        whole = (
            speaks and not says(word, "is", "so", "and") and complete(found.string[: found.start()])
        )
        return "because" if whole else None

    source = source.rewritten(_BC, spelled)
    source = source.rewritten(_GIVES, lambda found: f"{found['reason']}has")
    return put_in_apart(_given_apart(source, names), names)


_GIVEN = rf"(?P<given>(?P<name>(?<![\w}}])[{LETTERS}][\w{{}}-]*) *= *[-+]? ?[0-9][0-9.,]*(?<![.,])(?: ?(?:k?N|MN|kips?|k|lbs?))?(?: *\(?[TC]\)?)?)"
_IN_HEADING = re.compile(
    rf"^(?P<head>[^=:;]*[^=:; ]) *[(\[] *(?:(?:with|where|using|as|since|mit|da|con|avec|car) +)?{_GIVEN} *[)\]] *:(?=[^:]*=)"
)
"""What is put in, said in the heading of a sum: Joint F, horizontally (F_EF = -6): ..."""
_GIVEN_ALONE = re.compile(rf" *{_GIVEN} *")


def _given_apart(source: Source, names: Names) -> Source:
    """The source with a value in the brackets of a heading as a statement behind it."""
    found = _IN_HEADING.match(source.text)
    if found is None or len(names.meant(found["name"])) != 1:
        return source
    head, given = Span(*found.span("head")), Span(*found.span("given"))
    return source.made_of([head, ": ", given, "; ", Span(found.end(), len(source.text))])


def spelled_apart(text: str, names: Names) -> str:
    """The text, column for column, with what is said around statements as marks and signs."""
    text = _DOTS.sub(lambda found: ";".ljust(len(found[0])), text)
    text = _unhedged(_opened(text, names), names)
    text = _WORDED_MINUS.sub(_minus, text)
    return _SAID_TO_BE.sub(lambda found: _set_equal(found, names), text)


_DOTS = re.compile(rf"(?<=[\w)\]]) *(?:\.{{2,}}|…)(?= *[{LETTERS}])")
_WORDED_MINUS = re.compile(r"(?P<before>(?:^|=) *)(?P<word>minus|negative)(?P<gap> +)(?=[0-9.])")
_SAID_TO_BE = re.compile(
    rf"(?P<name>(?<![\w}}])[{LETTERS}][\w{{}}'-]*) +(?P<words>(?:[{LETTERS}']+ +)+)(?=[-+]?[0-9.])"
)
_BEING = frozenset((
    "is", "was", "are", "be", "must", "has", "have", "carries", "takes", "bears", "comes", "came", "works", "turns", "should", "will",
    "ends", "also", "all", "carry", "take",
))  # fmt: skip


def _minus(found: re.Match[str]) -> str:
    return f"{found['before']}{'-'.rjust(len(found['word'] + found['gap']))}"


def _set_equal(found: re.Match[str], names: Names) -> str:
    """A force and the number it is said to be, as an equation: ay is 105, cd has 260."""
    words = found["words"].split()
    before = found.string[: found.start()].rstrip()
    begins = (
        not before or before[-1] in ",;:∴⇒→" or says(re.split(r"[ ,;]", before)[-1], "so", "and")
    )
    said = words[0].lower() in _BEING and (
        len(words) == 1 or only_leads(" ".join(words[1:])) or words[1:] == ["all"]
    )
    if not (begins and said and names.meanings(found["name"])):
        return found[0]
    return f"{found['name']} =".ljust(len(found[0]))


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


_ALIKE = re.compile(r" *[A-Z][\w{}]+(?: *= *[A-Z][\w{}]+)+ *")
"""Forces that are said to be the same: PR = QR."""


def _opened(text: str, names: Names) -> str:
    """The text with an equation of forces that stands in a bracket with words set apart: (since rs = 9)."""

    def apart(found: re.Match[str]) -> str:
        alike = _ALIKE.fullmatch(found["inner"]) is not None
        alike = alike or (
            _GIVEN_ALONE.fullmatch(found["inner"]) is not None and "=" in text[: found.start()]
        )
        named = names.meanings(found["name"]) and (alike or worded(found["inner"], names))
        stands = complete(text[: found.start()]) and BEHIND_BRACKET.match(text, found.end())
        return f";{found['inner']};" if named and stands else found[0]

    return _SAID_IN.sub(apart, text)
