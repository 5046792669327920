"""What do the pieces of a line say, one after another, once it is laid out?"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace

from tutor.notation.chain import joined, statement, zeroed
from tutor.notation.elements.label import Label
from tutor.notation.elements.lexicon import says
from tutor.notation.elements.same import are_same
from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import Span
from tutor.notation.elements.unreadable import Broken
from tutor.notation.headings.heading import heading_behind, heading_in
from tutor.notation.letters.named_angle import IN_BRACKETS, in_degrees, named_angle, number_said
from tutor.notation.letters.named_length import is_quantity, named_length
from tutor.notation.lines.beside import names_alone, without_side_sums, without_ways_of_parts
from tutor.notation.lines.found import Found, trimmed
from tutor.notation.lines.layout import Piece, pieces
from tutor.notation.lines.line import Line, Step
from tutor.notation.lines.placed import label_placed, placed
from tutor.notation.naming.symbols import FREE_LETTERS, LETTERS, LOAD_LETTERS
from tutor.notation.sentences.set_equal import is_value_said, set_equal
from tutor.notation.sides.ending import WORD, of_another, phrase, unknown, wordy
from tutor.notation.sides.side_ending import unpushed
from tutor.notation.sides.zero_words import zero_members

_SAID_TO_BE = re.compile(r"[-+(.\w{}]+\s*[-+*/^=]")
_IN_WORDS = re.compile(rf"(?:[{LETTERS}0-9_ ,.'°()%&-]|(?<=[0-9])/(?=[0-9]))*")
_COUNTED = re.compile(r"[([]?[0-9]{1,2}[a-z]?[)\]]?")


class Statements:
    """Reads the pieces of one line, from left to right."""

    def __init__(self, text: str, source: Source, found: Found, said: Mapping[str, float]) -> None:
        self.typed, self.source, self.found = text, source, found
        self.text = source.text
        self.label: Label | None = None
        self.own: Label | None = None
        self.steps: list[Step] = []
        self.listing = False
        self.letters: dict[str, float] = {}
        for name, size in said.items():
            number = number_said(size)
            found.letters[name] = (
                number if name in FREE_LETTERS | LOAD_LETTERS else in_degrees(number)
            )

    def line(self) -> Line:
        """The whole line."""
        self._bracketed_letters()
        cut = pieces(self.text, 0, len(self.text.rstrip(" ")), self.found)
        cut = [piece for piece in cut if not self._define(piece.start, piece.end)]
        if not any(self.text[piece.start : piece.end].strip() for piece in cut):
            end = len(self.text.rstrip())
            if cut and cut[0].before_colon:
                raise Broken("label/colon", cut[0].end, cut[0].end + 1)
            whole = trimmed(self.typed, 0, len(self.typed))
            raise Broken("letters", *whole) if self.letters else Broken("empty", end, end)
        if not self._zero_members(0, len(self.text)):
            name: tuple[int, int] | None = None
            for index, piece in enumerate(cut):
                name = self._piece(piece, cut[index + 1 :], name)
        if not self.steps:
            start, end = trimmed(self.text, 0, len(self.text))
            raise Broken("label/alone" if self.label else "no-formula", start, end)
        self._check_whole()
        steps = without_side_sums(
            self.typed, tuple(placed(step, self.source) for step in self.steps)
        )
        steps, told = without_ways_of_parts(steps)
        label = None if self.label is None else label_placed(self.label, self.source)
        return Line(self.typed, label, steps, self.letters, told, unread=told)

    def _check_whole(self) -> None:
        """Raises Broken where something beside a whole statement is none itself."""
        for step in self.steps[:-1]:
            if len(step.sides) == 1 and not step.sides[0].numeric:
                comma = self.text.find(",", step.span.end)
                if comma >= 0:
                    raise Broken("comma/loose", comma, comma + 1)
                raise Broken("no-equals", step.span.end, step.span.end)

    def _piece(
        self, piece: Piece, later: list[Piece], name: tuple[int, int] | None
    ) -> tuple[int, int] | None:
        """Takes in one piece; the place of a name that stood alone before a colon is handed on."""
        start, end = trimmed(self.text, piece.start, piece.end)
        if start == end:
            if piece.before_colon:
                raise Broken("label/colon", end, end + 1)
            return name
        if piece.before_colon:
            return self._before_colon(start, end, later)
        if self._says_zero(piece, start, end):
            return name
        if (
            self._lists(start, end)
            or self._heads(start, end, later)
            or self._ends(start, end)
            or self._remarks(start, end)
        ):
            return name
        if name is not None:
            return self._named(name, piece, start, end)
        self._state(piece, start, end)
        return None

    def _says_zero(self, piece: Piece, start: int, end: int) -> bool:
        """Whether a piece says in words that members are zero, other than as a reason behind a statement."""
        first = WORD.match(self.text, start, end)
        stated = self.steps and first is not None and not says(first[0], "because")
        return bool(piece.end < len(self.text) or stated) and self._zero_members(start, end)

    def _before_colon(self, start: int, end: int, later: list[Piece]) -> tuple[int, int] | None:
        names = self.found.names
        word = self.text[start:end]
        if _COUNTED.fullmatch(word):
            self.found.passed.append(Span(start, end))
            return None
        named = names.meanings(word) if re.fullmatch(r"\w[\w{}'-]*", word) else ()
        one = len(named) == 1 and named[0].share is None and word not in ("Fx", "Fy")
        if one and is_value_said(self.text, word, later, names):
            return start, end
        head = heading_behind(None if self.steps else self.label, self.text, start, end, names)
        if head is None and self._lists(start, end):
            return None
        if head is None:
            words = WORD.findall(word)
            if _IN_WORDS.fullmatch(word) and (
                sum(wordy(one, names) for one in words) > 1
                or any(len(one) > 3 and wordy(one, names) for one in words)
            ):
                self.found.passed.append(Span(start, end))
                return None
            if self._states(start, end, later):
                return None
            raise Broken("label", start, end)
        self.found.passed += head.passed
        if head.label is not None:
            self._headed(head.label)
        return None

    def _states(self, start: int, end: int, later: list[Piece]) -> bool:
        """Whether a whole equation stands before the colon, with remarks or numbers alone behind it."""
        rest = "".join(self.text[piece.start : piece.end] for piece in later)
        if "=" not in self.text[start:end] or ("=" in rest and re.search(r"[^\W\d_]", rest)):
            return False
        self._state(Piece(start, end, ""), start, end)
        return True

    def _headed(self, label: Label) -> None:
        if self.steps:
            self.own = joined(self.own, label)
        else:
            self.label = joined(self.label, label)

    def _heads(self, start: int, end: int, later: list[Piece]) -> bool:
        """Whether a piece is a heading set apart by a semicolon, a comma, an arrow or brackets."""
        if not any(self.text[piece.start : piece.end].strip() for piece in later):
            return False
        head = heading_in(self.text, start, end, self.found.names)
        if head is None or head.label is None or head.passed:
            return False
        if not head.summed and head.label.point is None and not head.label.whole:
            return False
        plain_name = self.found.names.plainly(self.text[start:end])
        if plain_name:
            return False
        self._headed(head.label)
        return True

    def _named(
        self, name: tuple[int, int], piece: Piece, start: int, end: int
    ) -> tuple[int, int] | None:
        """A name, a colon and its value: the colon stands for =."""
        colon = self.text.index(":", name[1])
        self.text = f"{self.text[:colon]}={self.text[colon + 1 :]}"
        self._state(piece, name[0], end)
        return None

    def _lists(self, start: int, end: int) -> bool:
        """Whether a piece only names members that are cut or looked at: "Cut through AB", "CD"."""
        text = self.text[start:end]
        names, words = self.found.names, WORD.findall(text)
        if self.steps or re.search(r"[=+*/]|(?:^| )[0-9]", text) or not words:
            return False
        begins = len(words[0]) > 2 and says(words[0], "body", "resolve") and len(words) > 1
        named = [names.meanings(word) for word in words if not wordy(word, names)]
        self.listing = all(named) and bool(named) and (begins or self.listing)
        if self.listing:
            self.found.passed.append(Span(start, end))
        return self.listing

    def _ends(self, start: int, end: int) -> bool:
        """Whether a piece only says T or C, or which way, of the value before it."""
        if not self.steps or "=" in self.text[start:end]:
            return False
        last = self.steps[-1].sides[-1]
        word = self.text[start:end].rstrip(".")
        said = phrase(self.text, start, end, self.found.names)
        if said is None or any(map(str.isdigit, word)) or not last.numeric:
            return False
        as_typed, said = said, unpushed(said, last, self.steps[-1].sides[0].name, self.found)
        if not (said.letter or said.sense or said.zero):
            return said is not as_typed
        if of_another(self.text, start, end, self.steps[-1], self.found):
            return True
        if last.letter or last.sense:
            same = said.sense == "against" or (last.letter, last.sense) == (said.letter, said.sense)
            if said.places and not same:
                raise Broken("value/two", *said.places[0])
            return True
        if said.zero is not None and any(term.value for term in last.terms):
            raise Broken("value/not-zero", *said.zero)
        ended = replace(last, letter=said.letter, sense=said.sense)
        step = self.steps[-1]
        self.steps[-1] = replace(step, sides=(*step.sides[:-1], ended))
        return True

    def _remarks(self, start: int, end: int) -> bool:
        """Whether a piece is words alone, to be passed over."""
        text = self.text[start:end]
        if "=" in text and self.steps == []:
            return False
        words = WORD.findall(text)
        if not words:
            return False
        names = self.found.names
        named = bool(names.plainly(words[0]))
        says_value = named and (not words[0].islower() or _SAID_TO_BE.match(text) is not None)
        reason = says(words[0], "because", "remark", "number") and not says_value
        only_words = re.fullmatch(rf"[{LETTERS}0-9 ,.!?'’()\[\]-]*", text) is not None
        if reason and (self.steps or "=" not in text):
            self.found.passed.append(Span(start, end))
            return True
        if self.steps and names_alone(text, words, names):
            self.found.unread.append(Span(start, end))
            return True
        if not only_words or any(map(str.isdigit, text)):
            return False
        if all(wordy(word, names) or unknown(word, names) or len(word) < 3 for word in words) and (
            wordy(words[0], names) or unknown(words[0], names)
        ):
            said = None if self.steps else phrase(self.text, start, end, names)
            if said is not None and (said.letter or said.sense or said.zero):
                return False
            self.found.passed.append(Span(start, end))
            return True
        return False

    def _state(self, piece: Piece, start: int, end: int) -> None:
        """Takes in a statement."""
        padded = " " * start + self.text[start:end]
        padded = set_equal(padded, self.found.names)
        made = statement(padded, start, len(padded), self.found)
        beside = piece.joint == "beside" and self.steps
        if beside and len(made.sides) == 1 and made.label is None:
            comma = self.text.rfind(",", 0, start)
            if comma >= 0:
                raise Broken("comma/loose", comma, comma + 1)
        if made.label is not None:
            self._headed(made.label)
        span = Span(made.sides[0].span.start, made.sides[-1].span.end)
        follows = piece.joint == "so"
        own, self.own = self.own, None
        self.steps.append(Step(self.typed, made.sides, own, follows, span, self.found.frame))

    def _bracketed_letters(self) -> None:
        """Takes out of the text what says in brackets how large a letter is: (θ = 33.69°), (a = 3 m)."""
        for found in list(IN_BRACKETS.finditer(self.text)):
            if self._define(*found.span("inner")):
                size = found.end() - found.start()
                self.text = self.text[: found.start()] + " " * size + self.text[found.end() :]

    def _define(self, start: int, end: int) -> bool:
        """Whether a piece says how large a letter is: "where θ = 33.69°", "tan θ = 3/4", "a = 3 m"."""
        names = self.found.names
        angle = named_angle(self.text, start, end, names)
        letter = angle or named_length(self.text, start, end, names)
        if letter is not None:
            name, node, size = letter
            if not are_same(self.letters.get(name, size), size):
                raise Broken("two-sizes", *trimmed(self.text, start, end), name=name)
            self.found.letters[name], self.letters[name] = node, size
        elif is_quantity(self.text, start, end, names):
            self.found.passed.append(Span(*trimmed(self.text, start, end)))
            return True
        return letter is not None

    def _zero_members(self, start: int, end: int) -> bool:
        """Whether words say that members carry nothing; each becomes a statement."""
        members = zero_members(" " * start + self.text[start:end], self.found.names)
        for name, span in members:
            step = Step(self.typed, zeroed(name, span), None, False, span, self.found.frame)
            self.steps.append(step)
        return bool(members)
