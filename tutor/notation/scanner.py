"""Which symbols is a typed text made of, given the names of the truss?

A word can be a name, a unit, a function or several of them run together; only the table of names
and what stands before can tell. Symbols carry their tree node, so that the grammar only joins them.
"""

from __future__ import annotations

import re
from fractions import Fraction
from typing import Any, NoReturn

from tutor.notation import units
from tutor.notation.characters import described, hidden
from tutor.notation.digits import spelled
from tutor.notation.names import Names
from tutor.notation.symbols import (
    LETTERS,
    OPERANDS,
    PARTNER,
    SYMBOL,
    Applied,
    Symbol,
    raised_number,
)
from tutor.notation.tree import Binary, Name, Number, Pi, Span, Unit
from tutor.notation.unknown import unknown_word
from tutor.notation.unreadable import Broken
from tutor.notation.words import front_piece

MOST_SYMBOLS = 128
DEEPEST = 32
_FACTOR = re.compile(r" *[0-9(]")
_TAIL = re.compile(rf"-[{LETTERS}0-9']+")
_UNIT_JOIN = re.compile(rf"(?:\ *[*]\ *|\ +|-|\.)([{LETTERS}]+)(?![{LETTERS}0-9_'(])")
_POWER = re.compile(r" *(?:(?:\^|\*\*) *(?:(-?[0-9]+)|\( *(-?[0-9]+) *\))|(⁻?[⁰¹²³⁴-⁹]+))")
_GROUPED = re.compile(r"[0-9]+(?:['_][0-9]{3})+(?:\.[0-9]+)?")
_GROUP_MARKS = frozenset("'_")
_CALLED = re.compile(r" *[(\[]")
_TERMINALS = {"+": "PLUS", "-": "MINUS", "*": "TIMES", "/": "OVER", "=": "EQUAL"}
_INVERSE = {"sin": "asin", "cos": "acos", "tan": "atan"}
_MEASURABLE = frozenset({"NUMBER", "PI", "CLOSE", "UNIT", "ANGLE"})


class Scanner:
    """Goes once through `text`, from column `start`, and leaves its findings in `symbols`.

    `text` has plain characters (see `characters`); `names` is None where only constants may stand.
    """

    def __init__(self, text: str, names: Names | None, start: int = 0) -> None:
        self.text, self.names, self.at = text, names, start
        self.symbols: list[Symbol] = []
        self._before = ""
        self.has_units = self.has_pi = self.has_angles = False
        self._open: list[tuple[Symbol, int]] = []
        self._depth = 0

    def scan(self) -> list[Symbol]:
        """All symbols of the text; raises Broken at the first that cannot be read."""
        text, end, match = self.text, len(self.text.rstrip(" ")), SYMBOL.match
        while self.at < end:
            found = match(text, self.at)
            if found is None or (group := found.lastindex) is None:
                self._strange(text[self.at :].lstrip(" "))
            start, stop = found.span(group)
            _GROUPS[group](self, text[start:stop], start, stop)
            if len(self.symbols) > MOST_SYMBOLS:
                raise Broken("too-many", self.at, self.at)
        return self.symbols

    def check_closed(self) -> None:
        """Raises Broken if a bracket is still open at the end of the text."""
        if self._open:
            symbol, _ = self._open[-1]
            raise Broken("brackets", symbol.start, symbol.end, partner=PARTNER[symbol.value])

    def before(self) -> str:
        """The terminal of the last symbol, "" at the start."""
        return self._before

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
        if len(self.symbols) > 3 and self.symbols[-4].type == "FUNCTION":
            self._check_fraction(self.symbols[-4], word)

    def _check_fraction(self, function: Symbol, bottom: str) -> None:
        """An inverse function of a ratio without brackets, as in atan 3/4, can mean two things."""
        name = function.value.name
        number, sign = self.symbols[-3:-1]
        if name not in _INVERSE.values() or (number.type, sign.type) != ("NUMBER", "OVER"):
            return
        top = self.text[number.start : number.end]
        raise Broken(
            "ambiguous/fraction",
            function.start,
            self.at,
            function=name,
            top=top,
            bottom=bottom,
            fraction=f"{top}/{bottom}",
        )

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
        if (word == "X" or word[0] == "x") and self._is_times(word, start):
            self._add("TIMES", "*", start, start + 1)
            return
        if names is not None and self.text[end : end + 1] == "-":
            tail = _TAIL.match(self.text, end)
            if tail is not None and names.meant(word + tail.group()):
                self._dashed(word, tail.group(), start, tail.end())
                return
        try:
            piece = front_piece(word, names, measured)
        except Broken as broken:
            raise broken.moved(start) from None
        if piece is None:
            called = _CALLED.match(self.text, end) is not None
            raise unknown_word(word, start, self.text, names, measured, called)
        end = start + piece.length
        if piece.kind == "NAME":
            self._add("NAME", Name(piece.value, Span(start, end)), start, end)
        elif piece.kind == "FUNCTION":
            self._function(piece.value, start, end)
        elif piece.kind == "PI":
            self.has_pi = True
            self._add("PI", Pi(Span(start, end)), start, end)
        elif piece.kind == "UNIT" and names is None:
            raise Broken("unit/constant", start, end)
        elif piece.kind == "UNIT":
            self._unit(piece.value, start, end)
        else:
            self._measure("ANGLE", piece.value, start, end)

    def _is_times(self, word: str, start: int) -> bool:
        """Whether an x stands between two numbers, as in 2 x 3 and 2x3, and begins no name."""
        between = self._before in _MEASURABLE and _FACTOR.match(self.text, start + 1) is not None
        if not between or (len(word) > 1 and self.text[start - 1] == " "):
            return False
        return self.names is None or not (self.names.meant(word) or self.names.joint(word))

    def _dashed(self, word: str, tail: str, start: int, end: int) -> None:
        """A member by its joints with a dash, where no difference of two forces can be meant."""
        assert self.names is not None
        found = self.names.meant(word + tail)
        if len(found) > 1 or (self.names.meant(word) and self.names.meant(tail[1:])):
            raise Broken(
                "ambiguous",
                start,
                end,
                one=f"the force in member {found[0]}",
                other=f"the difference {word} - {tail[1:]}",
                cure=f"F_{{{found[0]}}} or spaces around the minus sign",
            )
        self._add("NAME", Name(found[0], Span(start, end)), start, end)

    def _function(self, name: str, start: int, end: int) -> None:
        self._deeper(start, end)
        if self.text.startswith("2(", end):
            raise Broken("function-power", start, end + 1)
        power, found = 1, _POWER.match(self.text, end)
        if found is not None:
            plain, bracketed, raised = found.groups()
            end = found.end()
            power = raised_number(raised) if raised else int(plain or bracketed)
            if power == -1 and name in _INVERSE:
                name, power = _INVERSE[name], 1
            elif not 1 <= power <= 6 or name not in _INVERSE:
                raise Broken("function-power", start, end)
        self._add("FUNCTION", Applied(name, power), start, end)

    def _unit(self, unit: str, start: int, end: int) -> None:
        """A unit, with the units it is multiplied by: kN m, kN*m, lb-ft."""
        while (found := _UNIT_JOIN.match(self.text, end)) is not None:
            more = units.SPELLED.get(found.group(1))
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
        raise Broken("character/inequality" if char in "<>≤≥≈≠≅~≃" else "character", at, at + 1)


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
