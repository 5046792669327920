"""Which equation stands in a command to solve it, or in the brackets around a solution?

solve([0.6*AD + 15], [AD]), Eq(0.6*AD, -15), eq1 = 0.6*AD + 15; {{AD -> -25}}, [AD = -25], [[AD, -25]].
What is to be solved is zero where it is set equal to nothing.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from tutor.notation.elements.source import Source
from tutor.notation.elements.tree import Span
from tutor.notation.naming.symbols import PARTNER

_MAY = re.compile(
    r"solve|^ *[\[{(].*[\]})][;., ]*$|^ *(?:eq|expr|ans|result|sol)|(?<![A-Za-z])eq ?\(", re.I
)
_FRONT = r" *(?:\w{1,12} *= *)?(?:\w{1,8}\.)?"
_HEAD = r" *(?P<head>(?:(?i:at|for|joint|node|pin|knoten|n[oœ]e?ud|nudo) +)?[A-Z]\w? *: *)?"
"""The joint whose equations a command is to solve."""
_SOLVE = re.compile(_HEAD + _FRONT + r"(?-i:[A-Za-z]{0,8}[Ss]olve[A-Za-z]{0,4}) *(?P<open>[(\[])")
_SET_EQUAL = re.compile(_FRONT + r"Eq *(?P<open>\()")
_CALLED = re.compile(
    r" *(?:eqn?s?|equation|expr(?:ession)?)(?:_\w{1,8}|[A-Z]?[0-9]{0,2}[a-z]?) *= *(?=[^=]*[A-Za-z])",
    re.IGNORECASE,
)
_ANSWER = re.compile(r" *(?:ans|answer|result|sol|solution) *= *(?=[-+]? ?[0-9.]+)", re.IGNORECASE)
_GIVES = re.compile(r" *(?:-+>|→|=+>|⇒|[=:;]) *(?=[^ ])")
_GIVEN = re.compile(
    r" *['\"]?(?P<name>[A-Za-z][\w{}]{0,15})['\"]? *(?:-+>|→|=|:|,) *(?P<value>[-+]? ?[0-9.][^=,]*?) *"
)
_LABEL = re.compile(r" *(?:\(%[io][0-9]{1,4}\)|(?:In|Out) ?\[[0-9]{1,4}\] ?[:=]*) *")
"""What a session puts before what was typed, and before what came of it."""
_END = re.compile(r" *[;.,]? *$")
_ARGUMENT = re.compile(r"(?<![0-9])[,;]|[,;](?![0-9])")
_PART = re.compile(rf"{_ARGUMENT.pattern}|&&|∧")
_COMMA = re.compile(",")
MOST_LAYERS = 4


def uncommanded(source: Source) -> Source:
    """The source with the equations of a command, or of a solution in brackets, as one writes them."""
    if (label := _LABEL.match(source.text)) is not None:
        source = source.made_of([Span(label.end(), len(source.text))])
    text = source.text
    if _MAY.search(text) is None:
        return source
    if (found := _ANSWER.match(text)) is not None:
        return source.made_of([Span(found.end(), len(text))])
    pieces = _solved(text) or _in_brackets(text) or _called(text)
    return source if pieces is None else source.made_of(pieces)


def _called(text: str) -> list[Span | str] | None:
    """An expression that is to be zero, or an equation, behind the name it is given; None without one."""
    found = _CALLED.match(text)
    if found is None:
        return None
    rest = Span(found.end(), len(text.rstrip(" ;")))
    return [rest] if "=" in text[rest.start : rest.end] else [rest, " = 0"]


def _solved(text: str) -> list[Span | str] | None:
    """What a command is to solve, with what stands behind the command; None where it is none."""
    found = _SOLVE.match(text)
    close = found and _closing(text, found.start("open"))
    if found is None or close is None:
        return None
    first, *others = _parts(text, Span(found.end(), close), _ARGUMENT)
    if any("=" in text[other.start : other.end] for other in others):
        return None
    head = [Span(*found.span("head"))] if found["head"] else []
    pieces = [*head, *_statements(text, _unwrapped(text, first))]
    rest = _GIVES.match(text, close + 1)
    if rest is None:
        return pieces if _END.match(text, close + 1) else None
    behind = Span(rest.end(), len(text))
    return [*pieces, " ⇒ ", *(_given(text, behind) or [behind])]


def _in_brackets(text: str) -> list[Span | str] | None:
    """The equations that stand in brackets and nothing besides: {{AD -> -25}}, [AD = -25, AB = 28]."""
    end = len(text.rstrip(" ;.,"))
    if (found := _SET_EQUAL.match(text)) and _closing(text, found.start("open")) == end - 1:
        return list(_statements(text, [Span(found.start(), end)]))
    parts = _unwrapped(text, Span(0, end))
    if all(_SET_EQUAL.match(text, part.start, part.end) for part in parts):
        return list(_statements(text, parts))
    return _given(text, Span(0, end))


def _given(text: str, place: Span) -> list[Span | str] | None:
    """The values or equations in brackets that fill a place; None for anything else."""
    parts = _unwrapped(text, place)
    if parts == _parts(text, place):
        return None
    pieces: list[Span | str] = []
    for part in parts:
        if (given := _GIVEN.fullmatch(text, part.start, part.end)) is not None:
            pieces += [Span(*given.span("name")), " = ", Span(*given.span("value")), "; "]
        elif text.count("=", part.start, part.end) == 1:
            pieces += [part, "; "]
        else:
            return None
    return pieces[:-1]


def _statements(text: str, parts: list[Span]) -> Iterator[Span | str]:
    """Expressions, each set equal to zero where it is set equal to nothing."""
    for n, part in enumerate(parts):
        if n:
            yield "; "
        equal = _SET_EQUAL.match(text, part.start, part.end)
        close = equal and _closing(text, equal.start("open"))
        sides = _parts(text, Span(equal.end(), close), _COMMA) if equal and close else []
        if len(sides) == 2:
            yield from (sides[0], " = ", sides[1])
        else:
            yield part
            yield "" if "=" in text[part.start : part.end] else " = 0"


def _unwrapped(text: str, place: Span) -> list[Span]:
    """The parts within all brackets around them: one pair of a name and its value is one part."""
    for _ in range(MOST_LAYERS):
        start = (
            place.start
            + len(text[place.start : place.end])
            - len(text[place.start : place.end].lstrip())
        )
        close = _closing(text, start) if start < place.end else None
        if close is None or text[close + 1 : place.end].strip():
            break
        place = Span(start + 1, close)
    if _GIVEN.fullmatch(text, place.start, place.end):
        return [place]
    return _parts(text, place)


def _parts(text: str, place: Span, at_marks: re.Pattern[str] = _PART) -> list[Span]:
    """The parts of a place that commas outside brackets set apart."""
    parts, depth, at = [], 0, place.start
    marks = {mark.start(): mark.end() for mark in at_marks.finditer(text, place.start, place.end)}
    for index in range(place.start, place.end):
        char = text[index]
        depth += (char in "([{") - (char in ")]}")
        if depth == 0 and index in marks:
            parts.append(Span(at, index))
            at = marks[index]
    return [*parts, Span(at, place.end)]


def _closing(text: str, at: int) -> int | None:
    """Where the bracket closes that opens there; None where none does, or another one."""
    open_ones: list[str] = []
    for index in range(at, len(text)):
        char = text[index]
        if char in "([{":
            open_ones.append(PARTNER[char])
        elif char in ")]}" and (not open_ones or open_ones.pop() != char):
            return None
        if not open_ones:
            return index if index > at else None
    return None
