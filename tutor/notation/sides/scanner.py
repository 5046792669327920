"""Which symbols is a typed text made of, given the names of the truss?

A word can be a name, a unit, a function or several of them run together; only the table of names
and what stands before can tell. Symbols carry their tree node, so that the grammar only joins them.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from typing import Any, NoReturn

from tutor.notation.elements import units
from tutor.notation.elements.characters import described, hidden
from tutor.notation.elements.digits import spelled
from tutor.notation.elements.tree import Binary, Name, Node, Number, Pi, Span, Unit, with_span
from tutor.notation.elements.unreadable import Broken
from tutor.notation.formulas.words import Front, american, dashed, front_piece, is_times, letter_of
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import (
    FREE_LETTERS,
    LETTERS,
    LOAD_LETTERS,
    OPERANDS,
    PARTNER,
    STRANGE,
    SYMBOL,
    Applied,
    Symbol,
    raised_number,
)
from tutor.notation.sides.unknown import unknown_word

MOST_SYMBOLS = 128
DEEPEST = 32
_UNIT_JOIN = re.compile(rf"(?:\ *[*]\ *|\ +|-|\.)([{LETTERS}]+)(?![{LETTERS}0-9_'(])")
_POWER = re.compile(r" *(?:(?:\^|\*\*) *(?:(-?[0-9]+)|\( *(-?[0-9]+) *\))|(⁻?[⁰¹²³⁴-⁹]+))")
_GROUPED = re.compile(r"[0-9]+(?:['_][0-9]{3})+(?:\.[0-9]+)?")
_GROUP_MARKS = frozenset("'_")
_CALLED = re.compile(r" *[(\[]")
_TERMINALS = {"+": "PLUS", "-": "MINUS", "*": "TIMES", "×": "TIMES", "/": "OVER", "=": "EQUAL"}
_INVERSE = {"sin": "asin", "cos": "acos", "tan": "atan"}
_POWERED = frozenset({*_INVERSE, "cot", "sec", "csc"})
_MEASURABLE = frozenset({"NUMBER", "PI", "CLOSE", "UNIT", "ANGLE"})


class Scanner:
    """Goes once through `text` and leaves its findings in `symbols`.

    `text` has plain characters (see `characters`); `names` is None where only constants may stand.
    `letters` are the trees of angles and lengths that go by a letter, such as θ or a. With `signed` the components of
    reactions are positive to the right and up, instead of along the reaction.
    """

    def __init__(
        self,
        text: str,
        names: Names | None,
        *,
        letters: Mapping[str, Node] | None = None,
        signed: bool = False,
    ) -> None:
        self.text, self.names, self.at = text, names, 0
        self._letters, self._signed = letters or {}, signed
        self.symbols: list[Symbol] = []
        self._before = ""
        self.has_units = self.has_pi = self.has_angles = self.has_backward = False
        self._open: list[tuple[Symbol, int]] = []
        self._depth = 0

    def scan(self) -> list[Symbol]:
        """All symbols of the text; raises Broken at the first that cannot be read."""
        text, end, match, read = self.text, len(self.text.rstrip(" ")), SYMBOL.match, _GROUPS
        while self.at < end:
            found = match(text, self.at)
            if found is None or (group := found.lastindex) is None:
                self._strange(text[self.at :].lstrip(" "))
            read[group](self, found[group], found.start(group), found.end())
            if len(self.symbols) > MOST_SYMBOLS:
                raise Broken("too-many", self.at, self.at)
        return self.symbols

    def check_closed(self) -> None:
        """Raises Broken if a bracket is still open at the end of the text."""
        if self._open:
            symbol, _ = self._open[-1]
            raise Broken("brackets", symbol.start, symbol.end, partner=PARTNER[symbol.value])

    def _add(self, kind: str, value: Any, start: int, end: int) -> None:
        self.symbols.append(Symbol(kind, value, start, end))
        self._before, self.at = kind, end
        if kind in OPERANDS:
            self._depth = self._open[-1][1] if self._open else 0

    def _deeper(self, start: int, end: int) -> None:
        self._depth += 1
        if self._depth > DEEPEST:
            raise Broken("too-deep", start, end)

    def _number(self, word: str, start: int, end: int) -> None:
        before = self._before
        if before == "NUMBER":
            last = self.symbols[-1]
            one = self.text[last.start : last.end]
            raise Broken("two-numbers", start, end, one=one, other=word)
        if word[0] == "." and before in OPERANDS and self.symbols[-1].end == start:
            raise Broken("number", start, end)
        marked = self.text[end : end + 1] in _GROUP_MARKS
        if marked and (grouped := _GROUPED.match(self.text, start)) is not None:
            one = grouped.group().replace("'", "").replace("_", "")
            raise Broken("comma/grouped", start, grouped.end(), one=one)
        try:
            value, radius = spelled(word)
        except Broken as broken:
            raise broken.moved(start) from None
        self._add("NUMBER", Number(value, radius, Span(start, end)), start, end)
        if before == "OVER" and len(self.symbols) > 3 and self.symbols[-4].type == "FUNCTION":
            self._take_fraction(self.symbols[-4])

    def _take_fraction(self, function: Symbol) -> None:
        """An inverse function takes a ratio without brackets as a whole: atan 3/4, tan⁻¹ 2/3."""
        number, sign, bottom = self.symbols[-3:]
        if function.value.name not in _INVERSE.values() or (number.type, sign.type) != (
            "NUMBER",
            "OVER",
        ):
            return
        del self.symbols[-3:]
        ratio = Binary("/", number.value, bottom.value, Span(number.start, bottom.end))
        self._add("NUMBER", ratio, number.start, bottom.end)

    def _operator(self, sign: str, start: int, end: int) -> None:
        if sign in "+-" and self._before not in OPERANDS:
            self._deeper(start, end)
        elif sign == "=" and self._open:
            symbol, _ = self._open[-1]
            partner = PARTNER[symbol.value]
            key = "brackets/across" if partner in self.text[end:] else "brackets"
            raise Broken(key, symbol.start, symbol.end, partner=partner)
        elif sign == "/" and self._before == "UNIT":
            after = SYMBOL.match(self.text, end)
            if after and after["word"] in units.SPELLED:
                raise Broken("unknown-unit/quotient", self.symbols[-1].start, after.end())
        self._add(_TERMINALS[sign], sign, start, end)

    def _power(self, sign: str, start: int, end: int) -> None:
        if self._before == "UNIT":
            after = SYMBOL.match(self.text, end)
            raise Broken(
                "unknown-unit/quotient", self.symbols[-1].start, after.end() if after else end
            )
        self._add("POWER", sign, start, end)

    def _raised(self, sign: str, start: int, end: int) -> None:
        if self._before == "UNIT":
            raise Broken("unknown-unit/quotient", self.symbols[-1].start, end)
        power = raised_number(sign)
        if abs(power) > 99:
            raise Broken("power", start, end)
        self._add("POWER", sign, start, end)
        if power < 0:
            self._add("MINUS", sign, start, end)
        number = Number(Fraction(abs(power)), Fraction(0), Span(start, end))
        self._add("NUMBER", number, start, end)

    def _opening(self, sign: str, start: int, end: int) -> None:
        if self._before != "FUNCTION":
            self._deeper(start, end)
        self._add("OPEN", sign, start, end)
        self._open.append((self.symbols[-1], self._depth))

    def _closing(self, sign: str, start: int, end: int) -> None:
        if not self._open:
            raise Broken("brackets/unopened", start, end, partner=PARTNER[sign])
        symbol, _ = self._open[-1]
        if PARTNER[symbol.value] != sign:
            opened = symbol.value
            raise Broken("brackets/mixed", start, end, opened=opened, partner=PARTNER[opened])
        if self.symbols[-1] is symbol:
            raise Broken("brackets/empty", symbol.start, end)
        self._open.pop()
        self._add("CLOSE", sign, start, end)

    def _degree(self, sign: str, start: int, end: int) -> None:
        self._measure("ANGLE", "deg", start, end)

    def _word(self, word: str, start: int, end: int) -> None:
        names, measured = self.names, self._before in _MEASURABLE
        crossed = (word == "X" or word[0] == "x") and not (
            names is not None and (names.plainly(word) or names.joint(word))
        )
        if crossed and is_times(word, start, self.text, self._before in OPERANDS, measured):
            self._add("TIMES", "*", start, start + 1)
            return
        if names is not None and self.text[end : end + 1] == "-":
            member = dashed(word, start, self.text, names)
            if member is not None:
                name, end = member
                self._add("NAME", Name(name, Span(start, end)), start, end)
                return
        try:
            piece = None if word in self._letters else front_piece(word, names, measured)
        except Broken as broken:
            raise broken.moved(start) from None
        if piece is None and (letter := letter_of(word, self._letters, names)) is not None:
            end = start + len(letter)
            node = with_span(self._letters[letter], Span(start, end))
            self.has_angles = self.has_angles or letter not in FREE_LETTERS | LOAD_LETTERS
            self._add("NUMBER", node, start, end)
            return
        if piece is None:
            called = _CALLED.match(self.text, end) is not None
            raise unknown_word(word, start, self.text, names, measured, called)
        self._piece(piece, start)

    def _piece(self, piece: Front, start: int) -> None:
        """Add what a word begins with."""
        end = start + piece.length
        if piece.kind == "NAME":
            share = piece.share
            if share is not None and share.backward and "_" in piece.value:
                self.has_backward = True
                share = replace(share, signed=self._signed)
            self._add("NAME", Name(piece.value, Span(start, end), share), start, end)
        elif piece.kind == "FUNCTION":
            self._function(piece.value, start, end)
        elif piece.kind == "PI":
            self.has_pi = True
            self._add("PI", Pi(Span(start, end)), start, end)
        elif piece.kind == "UNIT" and self.names is None:
            raise Broken("unit/constant", start, end)
        elif piece.kind == "UNIT":
            self._unit(piece.value, start, end)
        else:
            self._measure("ANGLE", piece.value, start, end)

    def _function(self, name: str, start: int, end: int) -> None:
        self._deeper(start, end)
        if name != "sqrt" and self.text.startswith("2(", end):
            raise Broken("function-power", start, end + 1)
        power, found = 1, _POWER.match(self.text, end)
        if found is not None:
            plain, bracketed, raised = found.groups()
            end = found.end()
            power = raised_number(raised) if raised else int(plain or bracketed)
            if power == -1 and name in _INVERSE:
                name, power = _INVERSE[name], 1
            elif not 1 <= power <= 6 or name not in _POWERED:
                raise Broken("function-power", start, end)
        self._add("FUNCTION", Applied(name, power), start, end)

    def _unit(self, unit: str, start: int, end: int) -> None:
        """A unit, with the units it is multiplied by: kN m, kN*m, lb-ft."""
        while (found := _UNIT_JOIN.match(self.text, end)) is not None:
            more = units.SPELLED.get(found.group(1)) or american(found.group(1), self.names)
            if more is None or (self.names and self.names.meant(found.group(1))):
                break
            unit, end = f"{unit}*{more}", found.end()
        self.has_units = True
        self._measure("UNIT", unit, start, end)

    def _measure(self, kind: str, unit: str, start: int, end: int) -> None:
        """Adds a unit; a number over a number right before it becomes one FRACTION."""
        self.has_angles = self.has_angles or kind == "ANGLE"
        last = self.symbols[-4:]
        if (
            len(last) >= 3
            and (last[-2].type, last[-1].type) == ("OVER", "NUMBER")
            and last[-3].type in ("NUMBER", "PI")
            and (len(last) < 4 or last[-4].type not in ("OVER", "POWER", "FUNCTION"))
        ):
            top, _, bottom = self.symbols[-3:]
            del self.symbols[-3:]
            fraction = Binary("/", top.value, bottom.value, Span(top.start, bottom.end))
            self._add("FRACTION", fraction, top.start, bottom.end)
        self._add(kind, Unit(unit, Span(start, end)), start, end)

    def _strange(self, rest: str) -> NoReturn:
        """Raises Broken about the first character of `rest`, which begins no symbol."""
        char, at = rest[0], len(self.text) - len(rest)
        if char == ",":
            raise Broken("comma/loose", at, at + 1)
        if hidden(char):
            raise Broken("invisible", at, at + 1, found=described(char))
        raise Broken(STRANGE.get(char, "character"), at, at + 1)


_BY_NAME: dict[str, Any] = {
    "number": Scanner._number,
    "word": Scanner._word,
    "power": Scanner._power,
    "raised": Scanner._raised,
    "operator": Scanner._operator,
    "open": Scanner._opening,
    "close": Scanner._closing,
    "degree": Scanner._degree,
}
_GROUPS = {group: _BY_NAME[name] for name, group in SYMBOL.groupindex.items()}
