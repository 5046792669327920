"""What does a line say that was spoken into a machine, or whose letters stand apart: "A y plus four fifths A D equals zero"?

Numbers, operators, units and names in words are spelled as one types them. All of the line has to be made of
them, of what one types itself, and of the words of headings: where a word may be anything else, nothing is taken.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from tutor.notation.elements import units
from tutor.notation.elements.lexicon import WAYS, says
from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import Span
from tutor.notation.elements.unreadable import Broken
from tutor.notation.formulas.words import ANGLES, FUNCTIONS, american
from tutor.notation.naming.names import Names
from tutor.notation.sentences.names_apart import joint_apart, letters_apart, name_apart, span_of
from tutor.notation.sentences.number_words import NUMBER_WORDS, number_heard
from tutor.notation.sentences.words_taken import operator_said, spoken_words, unit_said
from tutor.notation.sides.unknown import unknown_word

_PLACES = frozenset(("about", "around", "at", "joint", "node", "pin"))
_HEADS = frozenset((
    "sum", "sums", "summing", "summation", "moments", "moment", "taking", "take", "resolving", "resolve", "vertically", "horizontally",
))  # fmt: skip
_TALK = _HEADS | _PLACES | frozenset((
    "so", "therefore", "hence", "thus", "then", "and", "forces", "force", "member", "bar", "reaction", "vertical", "horizontal", "in",
    "direction", "directions", "for", "of", "the", "all", "it",
))  # fmt: skip
_LEADS = re.compile(r"(?:in|of|to the|acting|pointing)(?![\w-])", re.IGNORECASE)
_HEAD_APART = re.compile(r"(?:Σ ?|[Ss]um (?:of )?)(?P<what>[FM]) ?(?P<where>[A-Za-z][0-9]*)")
_HEAD_TYPED = re.compile(r"F_?[xyXYHV]|M_?[A-Z]")
_ENDS = ("number", "name", "close", "unit", "angle")
_VALUE = frozenset(("number", "unit", "sense", "operator", "open", "close"))


def dictated(source: Source, names: Names) -> Source | None:
    """The source with all that is in words or apart as one types it; None where it is not such a line.

    Raises Broken where all but a name is, and no force goes by that.
    """
    taking = _Taking(source.text, names)
    if not taking.all() or not taking.edits:
        return None
    if taking.misnamed is not None:
        raise taking.misnamed.placed(source.place)
    return source.replaced(taking.edits)


class _Taking:
    """A line gone through once, with what is written otherwise, and of what the statement at hand is made.

    What is said in a bracket typed `beside` a number or a name may be its working, and is left alone.
    """

    def __init__(self, text: str, names: Names) -> None:
        self.text, self.names = text, names
        self.tokens = list(spoken_words(text))
        self.words = [("-" if token.hyphened else "") + token.text.lower() for token in self.tokens]
        self.edits: list[tuple[Span, str]] = []
        self.kinds: list[str] = []
        self.at = 0
        self.headed: int | None = None
        self.beside = False
        self.misnamed: Broken | None = None

    def all(self) -> bool:
        """Whether the whole line is such as is dictated."""
        ways = (
            self._sense, self._sign, self._heading, self._operator, self._number, self._measure, self._name, self._known, self._lead, self._no_name,
        )  # fmt: skip
        while self.at < len(self.tokens):
            if not any(way() for way in ways):
                return False
        return self._ended()

    def _is(self, kind: str, tokens: int, written: str | None = None) -> bool:
        """Takes some tokens as a part of the statement, written as one types it where that is given."""
        if self.headed is not None and kind == "equals":
            kind = "heading"
        elif self.headed is not None:
            self.edits.append((Span(self.headed, self.headed), ":"))
        self.headed = None
        if written is not None:
            span = span_of(self.tokens, self.at, self.at + tokens)
            if self.text[span.start : span.end] != written:
                self.edits.append((span, written))
        self.kinds.append(kind)
        self.at += tokens
        return True

    def _until(self, end: int) -> int:
        """How many tokens stand before a column."""
        count = 0
        while self.at + count < len(self.tokens) and self.tokens[self.at + count].span.start < end:
            count += 1
        return count

    def _before(self) -> str:
        return self.kinds[-1] if self.kinds else ""

    def _sign(self) -> bool:
        token = self.tokens[self.at]
        if token.kind == "sign":
            kinds = {"(": "open", "[": "open", "√": "open", "=": "equals"}
            kinds |= dict.fromkeys(")]°²", "close")
            if token.text in "([)]":
                self.beside = token.text in "([" and self._before() in _ENDS
            return self._is(kinds.get(token.text, "operator"), 1)
        if token.kind != "mark":
            return False
        ahead = self.tokens[self.at + 1 : self.at + 2]
        if self._before() in ("number", "unit") and any(_says_way(each.text) for each in ahead):
            return self._is("sense", 2)
        if self._before() == "number" and any(each.kind == "number" for each in ahead):
            return False
        self.headed = None
        whole = self._ended()
        self.at += whole
        return whole

    def _heading(self) -> bool:
        """A heading in letters: ΣFy, Σ M A, Fx."""
        token = self.tokens[self.at]
        typed = token.kind == "word" and not self.names.meanings(token.text)
        headed = token.kind == "head" or (typed and _HEAD_TYPED.fullmatch(token.text))
        if self.kinds or not headed:
            return False
        if " " in token.text and (apart := _HEAD_APART.fullmatch(token.text)) is not None:
            self.edits.append((token.span, f"Σ{apart['what']}{apart['where']}"))
        self.headed, self.at = token.span.end, self.at + 1
        return True

    def _number(self) -> bool:
        word = self.words[self.at].lstrip("-")
        token = self.tokens[self.at]
        worded = token.kind == "word" and not self.beside and (word in NUMBER_WORDS or word == "a")
        if token.kind != "number" and not worded:
            return False
        found = number_heard(self.words, self.at)
        if found is not None and found[1] > self.at + (token.kind == "number"):
            return self._before() not in _ENDS and self._is("number", found[1] - self.at, found[0])
        return token.kind == "number" and self._is("number", 1)

    def _operator(self) -> bool:
        token = self.tokens[self.at]
        if token.text == "of" and self._before() == "number":
            return self._is("operator", 1, "*")
        found = operator_said(self.text, token.span.start)
        if (
            found is None
            or self.beside
            or (found[1] == "equals" and "equals" in self.kinds and token.text == "is")
        ):
            return False
        if found[1] == "open" and self._before() == "sense":
            return False
        return self._is(found[1], self._until(found[2]), found[0])

    def _sense(self) -> bool:
        """What is said of a value behind its number."""
        start = self.tokens[self.at].span.start
        if self._before() not in ("number", "unit", "sense") or operator_said(self.text, start):
            return False
        shown = [token.text for token in self.tokens[self.at : self.at + 3]]
        if len(shown) == 3 and f"{shown[0]}{shown[2]}" in ("()", "[]") and _says_way(shown[1]):
            return self._is("sense", 3)
        ahead = self.at
        while ahead < len(self.tokens) and (
            (lead := _LEADS.match(self.text, self.tokens[ahead].span.start)) is not None
        ):
            start = lead.end()
            ahead = self.at + self._until(start)
        if ahead == len(self.tokens) or not _says_way(self.tokens[ahead].text):
            return False
        if name_apart(self.tokens, ahead, self.names) is not None:
            return False
        return self._is("sense", ahead + 1 - self.at)

    def _measure(self) -> bool:
        """The unit of a number."""
        token = self.tokens[self.at]
        if self._before() not in ("number", "close") or token.kind != "word":
            return False
        if (found := unit_said(self.text, token.span.start)) is not None:
            return self._is("unit", self._until(found[1]), found[0])
        if units.angle_unit(token.text) is not None:
            return self._is("angle", 1)
        if token.text not in units.SPELLED and american(token.text, self.names) is None:
            return False
        return name_apart(self.tokens, self.at, self.names) is None and self._is("unit", 1)

    def _name(self) -> bool:
        found = name_apart(self.tokens, self.at, self.names)
        if found is not None and found[1] > self.at + 1:
            return self._is("name", found[1] - self.at, found[0])
        word = self.tokens[self.at].text
        talks = word.islower() and (word in _TALK or says(word, "filler"))
        return not talks and bool(self.names.meanings(word)) and self._is("name", 1)

    def _known(self) -> bool:
        """What one types: a function, the letter of an angle, an x for times."""
        word = self.words[self.at]
        if word in FUNCTIONS or word in ("pi", "π"):
            return self._is("open" if word in FUNCTIONS else "number", 1)
        if self.tokens[self.at].text == "x" and self._before() in _ENDS:
            return self._is("operator", 1)
        return word in ANGLES and self._is("number", 1)

    def _lead(self) -> bool:
        """A word of a heading, or one that leads on to the next statement."""
        word = self.words[self.at]
        if word not in _TALK or not self._ended():
            return False
        headed = self.headed is not None or word in _HEADS
        self.at += 1
        end = self.tokens[self.at - 1].span.end
        found = joint_apart(self.tokens, self.at, self.names) if word in _PLACES else None
        if found is not None:
            span = span_of(self.tokens, self.at, found[1])
            self.edits += [(span, found[0])] if found[1] > self.at + 1 else []
            self.at, end, headed = found[1], span.end, True
        elif word in ("in", "the") and self.words[self.at : self.at + 1] in (["x"], ["y"]):
            self.at += 1
            end = self.tokens[self.at - 1].span.end
        self.headed = end if headed else None
        return True

    def _no_name(self) -> bool:
        """Letters that stand together and name no force: the line is told of them, where all else of it is read."""
        word, end = letters_apart(self.tokens, self.at)
        if word == "a" or (
            self.names.joint(word[:1]) is None and self.names.joint(word[:2]) is None
        ):
            return False
        span = span_of(self.tokens, self.at, end)
        broken = unknown_word(word, 0, word, self.names, measured=False, called=False)
        self.misnamed = self.misnamed or broken.placed(lambda _: span)
        return self._is("name", end - self.at)

    def _ended(self) -> bool:
        """Whether the statement at hand is whole, or none has begun; the next one begins."""
        kinds, self.kinds = self.kinds, []
        if not kinds:
            return True
        if kinds[-1] in ("operator", "open", "equals", "heading") or not _senses_last(kinds):
            return False
        if kinds[0] in ("equals", "heading"):
            return kinds[0] == "heading" and len(kinds) > 1
        return "equals" in kinds or _VALUE.issuperset(kinds)


def _says_way(word: str) -> bool:
    known = len(word) > 1 and word not in NUMBER_WORDS and word != "tens"
    return word in ("T", "C") or (known and says(word, *WAYS))


def _senses_last(kinds: Sequence[str]) -> bool:
    """Whether all that is said of a value stands behind it."""
    return "sense" not in kinds or set(kinds[kinds.index("sense") :]) == {"sense"}
