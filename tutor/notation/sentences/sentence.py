"""How is a sentence of formulas and talk read? As its formulas, their headings and what is said of results.

Each clause is looked at by itself (`spoken`); what says something is kept at its columns, what joins two
formulas is one sign, and the rest is blank. What was left out and might have held something is told.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from tutor.notation.elements.lexicon import WAYS, says
from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import Span
from tutor.notation.elements.unreadable import Broken
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import NAME
from tutor.notation.sentences.aside_said import AT_END, VALUE, leads_to_value
from tutor.notation.sentences.bits import Bit, bits_of
from tutor.notation.sentences.spoken import (
    ending_in,
    heading_of,
    only_ways,
    says_way,
    takes_joint,
    takes_value,
    zero_in,
)
from tutor.notation.sentences.talk import (
    GIVEN,
    Clause,
    claims,
    concludes,
    declares,
    holds,
    introduces,
    piece_of_formula,
    puts_in,
    reverses,
)
from tutor.notation.sentences.talked import speaks, stopped_at
from tutor.notation.sides.turned import makes_another, multiplies

_VALUE_ALONE = re.compile(VALUE)
"""A number with its unit and its T, C or way, and nothing else."""
_WITH_WAY = re.compile(r"[(\[ ](?:[TCtc]|tension|compression)[)\]]? *$")


_ADDS = re.compile(r"[+*/]|- *[0-9.(√]")


def _says_way(word: str) -> bool:
    return says(word, *WAYS)


@dataclass
class _Gap:
    """What stands before, between and behind formulas: what of it goes on, and how it joins them."""

    start: int
    ends: int = 0
    so: bool = False
    premise: bool = False
    heads: list[tuple[int, int]] = field(default_factory=list)
    place: tuple[int, int] | None = None


@dataclass
class Sentence:
    """A sentence on its way to plain formulas: `chars` is what is kept so far, column for column."""

    text: str
    names: Names
    chars: list[str] = field(default_factory=list)
    unread: list[Span] = field(default_factory=list)
    formulas: int = 0
    broken_off: bool = False
    given: str | None = None
    valued: bool = False
    gap: _Gap = field(default_factory=lambda: _Gap(0))

    def take(self, bits: Sequence[Bit]) -> None:
        """Takes in all bits of the sentence. Raises Broken where one takes back what is said."""
        self.chars = [" "] * len(self.text)
        clause: list[Bit] = []
        behind = False
        for bit in bits:
            said = self.text[bit.start : bit.end]
            equation = bit.kind == "formula" and "=" in said
            talks = equation and bool(clause) and self._is_talk(Clause(clause), bit)
            if bit.kind in ("word", "aside") or (bit.kind == "formula" and not equation) or talks:
                clause.append(replace(bit, kind="aside") if talks else bit)
                continue
            if equation and self._goes_on(clause, behind, said):
                raise stopped_at(clause[-1].start, clause[-1].end, self.names)
            self._clause(clause, behind, leads=equation)
            clause, behind = [], equation
            if equation:
                self._formula(bit.start, bit.end, said)
            elif bit.kind == "heading":
                self._headed([(bit.start, bit.end, said)])
            elif bit.kind == "so":
                self.gap.so = True
        self._clause(clause, behind, leads=False)
        for start, end in [*([self.gap.place] if self.gap.place else []), *self.gap.heads]:
            self.chars[start:end] = " " * (end - start)

    def _goes_on(self, clause: list[Bit], behind: bool, said: str) -> bool:
        """Whether what follows an aside goes on with the formula before it: A_y (so that one is done) + ..."""
        if not clause or clause[-1].kind != "aside":
            return False
        if len(clause) > 1:
            return clause[-2].kind == "formula" and said[0] in "+-*/"
        return behind and _ADDS.match(said) is not None

    def _is_talk(self, clause: Clause, bit: Bit) -> bool:
        """Whether an equation of numbers alone is only part of what a clause says in words.

        Raises Broken where it is an equation of forces, and the words before it are one side of it.
        """
        text, names = self.text, self.names
        left = text[bit.start : bit.end].partition("=")[0]
        if any(map(str.isalpha, left)) or not left.strip() or introduces(text, clause):
            return False
        copy = Clause(clause.bits)
        if heading_of(text, copy, names) or takes_joint(text, copy, names):
            return False
        if any(map(names.meanings, NAME.findall(text[bit.start : bit.end]))):
            raise stopped_at(clause.start, clause.end, names)
        return True

    def _formula(self, start: int, end: int, said: str) -> None:
        """Joins a formula to what stands before it."""
        gap = self.gap
        heads = sorted([*([gap.place] if gap.place else []), *gap.heads])
        if said.startswith("="):
            if not self.broken_off:
                raise stopped_at(start, end, self.names)
            said = f" {said[1:]}"
        elif self.formulas:
            self._mark(
                gap.ends or gap.start, "∴" if gap.so and not heads and not gap.premise else ";"
            )
        for index, (_, stop) in enumerate(heads):
            following = heads[index + 1][0] if index + 1 < len(heads) else start
            self._mark(stop, ":", following)
        self.chars[start:end] = said
        if gap.premise and (value := GIVEN.match(said)) is not None:
            self.chars[start + value.end() - 1] = ";"
        self.formulas += 1
        self.broken_off = said.rstrip().endswith("=")
        left = said.partition("=")[0].strip()
        meant = self.names.meant(left)
        self.given = meant[0] if len(meant) == 1 else None
        right = said.rpartition("=")[2].strip()
        self.valued = self.given is not None and _VALUE_ALONE.fullmatch(right) is not None
        self.gap = _Gap(end)

    def _mark(self, column: int, sign: str, until: int | None = None) -> None:
        """A sign at the first free column; there is one wherever a word or a mark stood."""
        last = len(self.chars) if until is None else until
        at = next((at for at in range(column, last) if self.chars[at] == " "), None)
        if at is None:
            raise Broken("order", column, column + 1)
        self.chars[at] = sign

    def _headed(self, pieces: Sequence[tuple[int, int, str]]) -> None:
        for start, end, said in pieces:
            self.chars[start:end] = said
        self.gap.heads = [(pieces[0][0], pieces[-1][1])]

    def _clause(self, bits: list[Bit], behind: bool, leads: bool) -> None:
        """Takes in a clause; `behind` a formula without a mark between, or one that `leads` to the next."""
        if bits and not leads and self._leads_to_a_value(Clause(bits)):
            return
        while bits and behind and self._ends(bits[0]):
            bits = bits[1:]
        if not bits:
            return
        clause = Clause(bits)
        if self._is_no_talk(clause, behind, leads):
            return
        text, names = self.text, self.names
        if not leads and (self._says_a_value(clause) or self._says_its_way(clause)):
            return
        self.gap.so = self.gap.so or concludes(text, clause)
        self.gap.premise = leads and puts_in(text, clause)
        if heading_of(text, clause, names):
            self._headed(clause.pieces)
        elif takes_joint(text, clause, names):
            start, end, said = clause.pieces[0]
            if self.gap.place is None:
                self.chars[start:end] = said
                self.gap.place = (start, end)
        elif holds(text, clause):
            self.unread.append(Span(clause.start, clause.end))
            return
        if claims(text, clause, names):
            self.unread.append(Span(clause.start, clause.end))

    def _is_no_talk(self, clause: Clause, behind: bool, leads: bool) -> bool:
        """Whether a clause only declares names. Raises Broken where it must not be left out."""
        text, names = self.text, self.names
        if (piece := piece_of_formula(text, clause, names, behind, leads)) is not None:
            raise stopped_at(*piece, names)
        if (found := reverses(text, clause)) is not None:
            raise stopped_at(clause.start + found.start(), clause.start + found.end(), names)
        said = text[clause.start : clause.end]
        ends = self.formulas > 0 and not leads
        if (behind and makes_another(said, text[: clause.start])) or (ends and multiplies(said)):
            raise stopped_at(clause.start, clause.end, names)
        declared = declares(text, clause)
        if declared is None:
            raise stopped_at(clause.start, clause.end, names)
        return declared

    def _says_its_way(self, clause: Clause) -> bool:
        """Whether a clause only says T or C, or which way, of the value before it."""
        if not self.formulas or not ending_in(self.text, clause, self.names, self.given):
            return False
        start, end, said = clause.pieces[0]
        self._mark(self.gap.ends or self.gap.start, ",", start)
        self.chars[start:end] = said
        self.gap.ends = end
        return True

    def _ends(self, bit: Bit) -> bool:
        """Whether a word right behind a formula says T or C, or which way; it is kept there."""
        if bit.kind not in ("word", "aside") or not only_ways(self.text, bit):
            return False
        if says_way(self.text, bit):
            self.chars[bit.start : bit.end] = self.text[bit.start : bit.end]
            self.gap.ends = bit.end
        return True

    def _leads_to_a_value(self, clause: Clause) -> bool:
        """Whether words behind a formula do nothing but lead to the value that it gives: so it's 12 kN."""
        said = self.text[clause.start : clause.end]
        led = leads_to_value(said) or (self.gap.so and AT_END.fullmatch(said) is not None)
        value = AT_END.search(said) if self.formulas and led and not self.valued else None
        if value is None or any(map(_says_way, said[: value.start()].split())):
            return False
        self.gap.so = True
        self._formula(clause.start + value.start(), clause.end, said[value.start() :])
        return True

    def _says_a_value(self, clause: Clause) -> bool:
        """Whether a clause gives a value in words, which is a formula then."""
        so = concludes(self.text, clause)
        said = self.text[clause.start : clause.end]
        alone = _VALUE_ALONE.fullmatch(said) is not None
        if self.formulas and alone and (self.gap.so or _WITH_WAY.search(said) is not None):
            self._formula(clause.start, clause.end, said)
            return True
        if not (
            zero_in(self.text, clause, self.names) or takes_value(self.text, clause, self.names)
        ):
            return False
        self.gap.so = self.gap.so or so
        made = [" "] * len(self.text)
        for start, end, said in clause.pieces:
            made[start:end] = said
        first, last = clause.pieces[0][0], max(end for _, end, _ in clause.pieces)
        self._formula(first, last, "".join(made[first:last]))
        return True


def in_clauses(source: Source, names: Names) -> tuple[Source, tuple[Span, ...]] | None:
    """The formulas of a sentence with its talk left out, and the places of talk that may have held more.

    None where it has no formula. Raises Broken where a word takes back what is said.
    """
    bits = bits_of(source.text, names)
    if not speaks(source.text, bits, names):
        return None
    sentence = Sentence(source.text, names)
    sentence.take(bits)
    if not sentence.formulas:
        return None
    unread = tuple(source.place(span) for span in sentence.unread)
    return replace(source, text="".join(sentence.chars)), unread
