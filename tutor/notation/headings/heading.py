"""Which equation does a heading name: ΣF_x, Taking moments about A, R(↑), Joint C, along 30°?

One reader for the heading of a line and for a heading alone, by which an equation is chosen. The
words are in `lexicon`; marks of the positive sense say nothing where the sum is named.
"""

from __future__ import annotations

import re
from dataclasses import replace

from tutor.notation.elements.label import Heading, Label, LabelKind
from tutor.notation.elements.lexicon import known_word
from tutor.notation.elements.tree import Span
from tutor.notation.headings.head import Head
from tutor.notation.naming.names import Names
from tutor.notation.naming.symbols import LETTERS

_NUMBER = r"[-+]?(?:[0-9]+(?:[.,][0-9]+)?|\.[0-9]+)"
_TOKEN = re.compile(
    rf"""\ *+(?:
  (?P<point>\(\ *+{_NUMBER}\ *+(?:[a-z]{{1,2}}\ *+)?[,;]\ *+{_NUMBER}\ *+(?:[a-z]{{1,2}}\ *+)?\))
| (?P<pair>-?[0-9]+(?:\.[0-9]+)?,-?[0-9]+(?:\.[0-9]+)?(?![0-9.,;°]|\ *+[-+]?[0-9]|\ *+deg))
| (?P<zero>=\ *+0(?:[.,]0*+)?(?![0-9.,(]))
| (?P<arrow>[←→↑↓⇒↖↗↘↙]|[-=]++>|<[-=]++|(?<=[+( ])\^(?=[ +):]|$))
| (?P<turn>[↺↻])
| (?P<sum>Σ)
| (?P<number>-?[0-9]+(?:[.,][0-9]+)?(?:\ *+(?:°|deg(?:rees?)?\b))?)
| (?P<member>[A-Z][0-9]*-[A-Z][0-9]*(?!\w))
| (?P<word>@|[{LETTERS}][{LETTERS}0-9'_]*+(?:(?<=_)\{{[^{{}}=]*+\}})?(?:-(?:clockwise|hand|to|direction|dir|axis)\b)?)
| (?P<mark>[-+()\[\]{{}}.,;:^_|*&!=/⊥∥])
)""",
    re.VERBOSE,
)
_IN_BRACKETS = re.compile(r" *\((?P<said>[^()=]+)\)")
_WORD = re.compile(rf"[{LETTERS}]+")


def heading_in(text: str, start: int, end: int, names: Names) -> Heading | None:
    """The heading that fills `text` from `start` to `end`; None where something else stands there.

    Raises Broken where a sum about or at something is named that is no joint.
    """
    head = Head(text, names, end)
    at = start
    while at < end:
        if (over := _beside(head, at)) is not None:
            head.unknown.append(over)
            at = over.end
            continue
        found = _TOKEN.match(text, at, end)
        if found is None:
            if not text[at:end].strip():
                break
            return None
        if not head.take(found, at, prefix=False):
            return None
        at = found.end()
    return _made(head, start, end)


def heading_behind(
    before: Label | None, text: str, start: int, end: int, names: Names
) -> Heading | None:
    """The heading in a clause behind another one; of one that only speaks of a force, nothing but its place."""
    head = heading_in(text, start, end, names)
    if head is not None and before is not None and _only_speaks(head, before):
        return replace(head, label=None, passed=(Span(start, end),))
    return head


def _only_speaks(head: Heading, before: Label) -> bool:
    """Whether a clause changes no sum that is named before it: ..., the gust being square to the rafter."""
    if head.label is None or before.kind in (None, head.label.kind):
        return False
    named = before.kind != "moment" or before.point is not None
    return named and (bool(head.passed) or (before.kind, head.label.kind) == ("moment", "along"))


def _beside(head: Head, at: int) -> Span | None:
    """What stands in brackets behind a complete heading and is no part of it: ΣM_D (H_B goes through D)."""
    complete = head.settled and head.kind and (head.point if head.kind == "moment" else head.joint)
    found = _IN_BRACKETS.match(head.text, at, head.end) if complete else None
    if found is None or all(map(known_word, _WORD.findall(found["said"]))):
        return None
    return Span(found.start("said") - 1, found.end())


def heading_before(text: str, start: int, end: int, names: Names) -> Heading | None:
    """The heading in front of a formula, with nothing between them: "↑ 9 - ...", "@A ΣFy = 0 ..."."""
    head = Head(text, names, end)
    at = good = start
    while at < end and (found := _TOKEN.match(text, at, end)) is not None:
        if not head.take(found, at, prefix=True):
            break
        at = found.end()
        if head.settled:
            good = at
    if good == start:
        return None
    made = _made(head, start, good)
    return made if made is not None and made.label is not None else None


def _made(head: Head, start: int, end: int) -> Heading | None:
    """What the heading comes to; None where it says nothing at all."""
    start += len(head.text[start:end]) - len(head.text[start:end].lstrip())
    stop = max(start, start + len(head.text[start:end].rstrip()))
    span = Span(start, stop)
    if head.turning and head.kind is None:
        head.kind, head.point = "moment", head.point or head.joint
    kind: LabelKind | None = head.kind
    if kind is None and head.level != head.upright:
        kind = "x" if head.level else "y"
    point = head.point if kind == "moment" else head.joint
    if kind == "moment" and point is None:
        point = head.joint
    summed = head.summed or kind is not None
    if kind is None and point is None and not head.whole:
        if not (head.words or head.numbered):
            return None
        return Heading(None, end, summed, (span,))
    label = Label(kind, point, head.degrees, span, head.whole, head.between)
    return Heading(label, end, summed, tuple(head.unknown))
