"""What result does a student state: which number, and which way?"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Literal

from tutor.notation.angles import check_angles, check_pi
from tutor.notation.digits import figures
from tutor.notation.dimension import check_value
from tutor.notation.evaluate import Frame, constant
from tutor.notation.names import Names
from tutor.notation.parser import parse_equation, parse_expression
from tutor.notation.reading import checked
from tutor.notation.scanner import Scanner
from tutor.notation.symbols import OPERANDS, Symbol
from tutor.notation.tree import Binary, Name, Negative, Node, Number, Span, Unit
from tutor.notation.unreadable import Broken, Unreadable

Letter = Literal["T", "C"]
Sense = Literal["left", "right", "up", "down", "against"]

_LETTER_WORDS: dict[Letter, tuple[str, ...]] = {
    "T": ("t", "tens", "tension", "tensile"),
    "C": ("c", "comp", "compr", "compression", "compressive"),
}
_SENSE_WORDS: dict[Sense, tuple[str, ...]] = {
    "left": ("left", "leftward", "leftwards", "←", "<-", "<--"),
    "right": ("right", "rightward", "rightwards", "→", "->", "-->"),
    "up": ("up", "upward", "upwards", "↑"),
    "down": ("down", "downward", "downwards", "↓"),
    "against": ("against",),
}
_LETTERS = {word: letter for letter, words in _LETTER_WORDS.items() for word in words}
_SENSES = {word: sense for sense, words in _SENSE_WORDS.items() for word in words}
_ANY = "|".join(sorted((*_LETTERS, *_SENSES), key=len, reverse=True))
_WORD = rf"(?:(?:is ++)?in ++(?=[a-z]{{4}}))?(?:to ++(?:the ++)?(?=left|right))?({_ANY})\.?"
_MAY_START = r"(?:(?<![^\W\d])|(?<=kN)|(?<=lb)|(?<=kip)|(?<=[0-9 ]k)|(?=[ (\[,;-]))"
_LAST = re.compile(
    rf"{_MAY_START}(?: *+[,;-])?(?: *+\( *+{_WORD} *+\)| *+\[ *+{_WORD} *+\]| *+{_WORD}) *+$",
    re.IGNORECASE,
)
_FIRST = re.compile(rf" *+(?:[^=]*+= *+)?\(?({_ANY})\)? *+(?:[=,] *+)?[-+]?[0-9.]", re.IGNORECASE)
_NO_EQUALS = re.compile(r" *+(?P<name>[^\W\d][\w{}'-]*)(?: ++is\b)? ++(?=[-+.]?[0-9])")
_NOUGHT = ("zero", "nil", "none", "nothing")
_ZERO = re.compile(r" *+(?:[^=]*+= *+)?(zero|nil)(?![\w-])", re.IGNORECASE)
_ZERO_FORCE = re.compile(
    r"(?<![\w-])(?:zero(?:[- ]?force(?:[- ]member)?)?|zfm)[)\]]?\.? *+$", re.IGNORECASE
)
_NO_WORD = ("unknown-name", "unknown-name/near", "unknown-name/joint", "letter")


@dataclass(frozen=True, slots=True)
class ValueReading:
    """A result as typed, in the problem's units; nothing is judged.

    `value` has the sign that was typed, `radius` is the half width of its rounding interval.
    `letter` is "T" or "C", `sense` a direction, `name` the unknown in front of an = sign, `unit`
    the unit typed; each None where there is none. `span` is the text of the number with its unit,
    `figures` how many significant figures it shows, None for an expression.
    """

    text: str
    value: float
    radius: float
    letter: Letter | None
    sense: Sense | None
    name: str | None
    unit: str | None
    span: Span
    figures: int | None

    @property
    def exact(self) -> bool:
        return self.radius == 0.0


def read_value(text: str, names: Names, unknown: str | None) -> ValueReading | Unreadable:
    """The result in `text`: "12", "-12 kN", "12 C", "F_AB = 12 kN (T)", "12 left".

    `unknown` is the canonical name that is asked for, None if it is open; it decides only which
    example a complaint gives. C after a number is compression, whatever the joints are called.
    """
    try:
        return _value(text, names)
    except Broken as broken:
        reaction = unknown is not None and "_" in unknown
        broken.words.setdefault("example", "12 or 12 left" if reaction else "12 or 12 C")
        return broken.about(text)


def _value(text: str, names: Names) -> ValueReading:
    typed = checked(text, "empty/value")
    if "=" not in typed:
        typed = typed.replace(":", "=", 1)
    _check_order(typed, names)
    typed, said_zero = _with_nought(typed)
    letter, sense, end = _ending(typed)
    frame = Frame(names.force, names.length)
    scanner = Scanner(typed[:end], names)
    symbols = _scanned(scanner)
    scanner.check_closed()
    if not symbols or (symbols[-1].type == "EQUAL" and end < len(typed.rstrip())):
        start = len(typed) - len(typed[end:].lstrip(" (["))
        raise Broken("value/number", start, len(typed.rstrip(" )]")))
    name, node = _named_number(symbols, typed[:end])
    if scanner.has_angles:
        check_angles(node)
    if scanner.has_pi:
        check_pi(node, typed)
    if scanner.has_units:
        check_value(node, frame)
    part = constant(node, frame)
    if said_zero is not None and part.value != 0.0:
        raise Broken("value/not-zero", *said_zero)
    return ValueReading(
        text,
        part.value,
        part.radius,
        letter,
        sense,
        name,
        part.units,
        node.span,
        _figures(node, typed),
    )


def _with_nought(typed: str) -> tuple[str, tuple[int, int] | None]:
    """`typed` with the word zero as a figure and "zero-force member" after a number left out.

    Columns stay as they are. The place of the words left out, None where there are none.
    """
    place = None
    if (note := _ZERO_FORCE.search(typed)) is not None:
        before = typed[: note.start()].rstrip(" ,;([-")
        if before and before[-1] != "=":
            typed, place = before, (note.start(), len(note.group().rstrip(" )].")) + note.start())
        else:
            typed = f"{typed[: note.start()]}0"
    if (word := _ZERO.match(typed)) is not None:
        start, end = word.span(1)
        typed = f"{typed[:start]}{'0':<{end - start}}{typed[end:]}"
    return typed, place


def _check_order(typed: str, names: Names) -> None:
    """Raises Broken for a letter or direction, or an unknown without =, in front of the number."""
    if (found := _FIRST.match(typed)) is not None:
        raise Broken("value/order", found.start(1), found.end(1))
    if (found := _NO_EQUALS.match(typed)) is not None and names.meant(found["name"]):
        raise Broken("value/no-equals", found.start("name"), found.end("name"))


def _scanned(scanner: Scanner) -> list[Symbol]:
    """The symbols; raises Broken, about a word after a number in the words of results."""
    try:
        return scanner.scan()
    except Broken as broken:
        word = scanner.text[broken.start : broken.end].lower()
        key, before = broken.key, scanner.before()
        set_off = before == "OPEN" and len(scanner.symbols) > 1 and word.isalpha()
        if word in _NOUGHT:
            key = "value/zero"
        elif key in _NO_WORD and (before in OPERANDS or set_off):
            key = "value/last" if word in _LETTERS else "value/word"
        raise Broken(key, broken.start, broken.end, **broken.words) from None


def _ending(typed: str) -> tuple[Letter | None, Sense | None, int]:
    """The letter or direction at the end, and where the rest of the text stops."""
    found = _LAST.search(typed)
    if found is None:
        return None, None, len(typed)
    word = next(filter(None, found.groups())).lower()
    if _LAST.search(typed[: found.start()]) is not None:
        start = found.start(found.lastindex or 0)
        raise Broken("value/two", start, found.end(found.lastindex or 0))
    return _LETTERS.get(word), _SENSES.get(word), found.start()


def _named_number(symbols: list[Symbol], typed: str) -> tuple[str | None, Node]:
    """The unknown alone on one side of the = sign, if there is one, and the number."""
    equals = [symbol for symbol in symbols if symbol.type == "EQUAL"]
    if len(equals) > 1:
        raise Broken("two-equals", equals[1].start, equals[1].end)
    if not equals:
        node, name = parse_expression(symbols, typed), None
    else:
        left, right = parse_equation(symbols, typed)
        if isinstance(right, Name) and not isinstance(left, Name):
            left, right = right, left
        if not isinstance(left, Name) and all(symbol.type != "NAME" for symbol in symbols):
            raise Broken("value/sides", equals[0].start, equals[0].end)
        name, node = (left.name, right) if isinstance(left, Name) else (None, right)
        symbols = [symbol for symbol in symbols if symbol.value is not left]
    for symbol in symbols:
        if symbol.type == "NAME":
            raise Broken("value", symbol.start, symbol.end)
    return name, node


def _figures(node: Node, typed: str) -> int | None:
    while isinstance(node, Negative):
        node = node.inner
    if isinstance(node, Binary) and node.operator == "*" and isinstance(node.right, Unit):
        node = node.left
    return figures(typed[node.span.start : node.span.end]) if isinstance(node, Number) else None
